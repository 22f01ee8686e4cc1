import type { HeightOrLeakReport } from '../../documents/height-or-leak-report.ts';
import type { LeakMapReport } from '../../documents/leak-report.ts';
import { nothingAsked, type AskedAnswer } from './asked-answer.ts';
import type { TypedText } from './horn-on-bench.ts';
import type { LeakAnswer, LeakFault, LeakLimit } from './leak-fault.ts';

/** Thicknesses the map is drawn at, mm: one paper, two, four. */
export const MAP_GAPS_MM = [0.025, 0.05, 0.1] as const;

/** The leak in hand, and what is known of it. */
export interface LeaksState {
  readonly fault: LeakFault;
  /** the note the player asks about, and what it may lose to the leak in hand */
  readonly limit: LeakLimit;
  /** what was in hand when the note was last followed; null before that */
  readonly followed: InHand | null;
  /** a typed gap, and what became of it */
  readonly gapText: TypedText | null;
  readonly mapGapMm: number;
  readonly beside: AskedAnswer<HeightOrLeakReport>;
  readonly answer: AskedAnswer<LeakAnswer>;
  readonly map: AskedAnswer<LeakMapReport>;
}

/** Common practice tests the F♯ auxiliary first; where a horn has no such pad its lowest pad is taken. */
const FIRST_PAD = 'f-sharp-auxiliary';
const FIRST_NOTE = 'D4';

/** What the bench has in hand elsewhere: a key that is studied, a note that is picked on the scale. */
export interface InHand {
  readonly hornId: string;
  readonly keyId: string;
  readonly noteId: string;
}

export function makeLeaksState(hornId: string): LeaksState {
  return {
    fault: { pad: FIRST_PAD, source: { kind: 'seat' }, shape: 'ring', arcDeg: 90, gapMm: 0.05 },
    limit: { fingeringId: FIRST_NOTE, lostDb: 3 },
    followed: null,
    gapText: null,
    mapGapMm: 0.05,
    beside: nothingAsked(hornId),
    answer: nothingAsked(hornId),
    map: nothingAsked(hornId),
  };
}

/**
 * The note asked about follows what was last taken up elsewhere on the same horn: a note picked on the scale, or the
 * note under a key that is studied. What is chosen on the page of leaks itself stays until then.
 */
export function followInHand(
  leaks: LeaksState,
  now: InHand,
  noteUnder: (keyId: string) => string | undefined,
): LeaksState {
  const { followed } = leaks;
  if (followed !== null && followed.keyId === now.keyId && followed.noteId === now.noteId) return leaks;
  const other = followed !== null && followed.hornId !== now.hornId;
  const isPicked = followed !== null && followed.keyId === now.keyId;
  const note = other ? undefined : isPicked ? now.noteId : noteUnder(now.keyId);
  return { ...(note === undefined ? leaks : askedAbout(leaks, note)), followed: now };
}

/** The player asks about another note. */
export function askedAbout(leaks: LeaksState, fingeringId: string): LeaksState {
  return { ...leaks, limit: { ...leaks.limit, fingeringId } };
}

/** Pads and links a fault may be at. */
export interface FaultPlaces {
  readonly pads: readonly string[];
  readonly links: readonly { readonly driver: string; readonly driven: string }[];
}

/** The fault in hand as this horn can have it: another horn may lack the pad or the link. */
export function faultOn(fault: LeakFault, { pads, links }: FaultPlaces): LeakFault {
  const pad = pads.includes(fault.pad) ? fault.pad : pads[0];
  const { source } = fault;
  const onto = links.filter((l) => l.driven === pad);
  const isThere =
    source.kind === 'seat' ||
    (source.driver === null ? onto.length > 0 : onto.some((l) => l.driver === source.driver));
  if (pad === fault.pad && isThere) return fault;
  return { ...fault, pad, source: isThere ? source : { kind: 'seat' } };
}

/** A fault at another pad: its own seat, as it was shaped. */
export function atPad(leaks: LeaksState, pad: string): LeaksState {
  return { ...leaks, fault: { ...leaks.fault, pad, source: { kind: 'seat' } } };
}

/** A fault of a link. */
export function atLink(leaks: LeaksState, driver: string | null, driven: string): LeaksState {
  const { source } = leaks.fault;
  const shuts = source.kind === 'link' ? source.shuts : 'late';
  return { ...leaks, fault: { ...leaks.fault, pad: driven, source: { kind: 'link', driver, shuts } } };
}

/** A gap checked, with the text it was typed as. */
export function withGap(leaks: LeaksState, gapMm: number, text: TypedText | null): LeaksState {
  return { ...leaks, gapText: text, fault: { ...leaks.fault, gapMm } };
}
