import type { PlayedSetup } from '../../documents/pitch-log.ts';
import type { Hearing } from './heard-note.ts';

/** What the view of played notes is about to do, and what it hears. */
export interface PlayedState {
  /** the visit all this is of; null before any */
  readonly visitId: string | null;
  readonly setup: PlayedSetup;
  /** the fingering that is played whatever is heard; null names what is heard */
  readonly fingering: string | null;
  readonly listening: 'off' | 'asking' | 'on';
  readonly hearing: Hearing;
  /** the take that hearing logged last, in words; null before any */
  readonly logged: string | null;
  /** why nothing can be heard or a file not be read; null where nothing is wrong */
  readonly problem: string | null;
  /** what a table or recording held that could not be taken */
  readonly issues: readonly string[];
  /** the fingering whose takes are laid open; null where none are */
  readonly open: string | null;
  /** cents typed and refused, by visit and fingering: they wait while another horn is in hand */
  readonly typed: Readonly<Record<string, RefusedCents>>;
}

/** Cents typed and refused, by fingering id. */
export type RefusedCents = Readonly<Record<string, { readonly text: string; readonly problem: string }>>;

export function makePlayedState(): PlayedState {
  return {
    visitId: null,
    setup: 'as found',
    fingering: null,
    listening: 'off',
    hearing: { now: null, tone: [], gap: 0, notes: [] },
    logged: null,
    problem: null,
    issues: [],
    open: null,
    typed: {},
  };
}

/** What holds for a visit: what was heard or told of another is none of its own. */
export function playedIn(played: PlayedState, visitId: string): PlayedState {
  return played.visitId === visitId ? played : { ...makePlayedState(), visitId, typed: played.typed };
}
