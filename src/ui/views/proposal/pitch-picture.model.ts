import type { ProposedNoteReport } from '../../../documents/proposal-report.ts';
import { tenths } from '../../../documents/tenths.ts';
import { listed, noteLabel, signedCents } from '../../parts/note-names.ts';

/** Every note beside the mean of its register, as the horn stands and as proposed: where each mark stands. */
export interface PitchPicture {
  readonly width: number;
  readonly height: number;
  /** what it shows, with its numbers */
  readonly label: string;
  /** cents, evenly spaced, nought in the middle */
  readonly lines: readonly { readonly y: number; readonly label: string }[];
  readonly marks: readonly {
    readonly x: number;
    readonly found: number;
    readonly proposed: number;
    readonly label: string;
    /** where its name is written: not on every one, or they would touch */
    readonly named: 'always' | 'where wide' | 'never';
  }[];
}

const WIDTH = 720;
const HEIGHT = 240;
const LEFT = 56;
const TOP = 16;
const BOTTOM = 34;
/** Names closer than this touch. */
const NAME_WIDTH = 34;
/** Cents the picture spans at least, either way. */
const LEAST_SPAN = 10;

/** Notes that count in full; ways that are seldom taken are in the table only. */
export function makePitchPicture(notes: readonly ProposedNoteReport[]): PitchPicture {
  const shown = notes.filter(({ weight }) => weight === 1);
  const furthest = Math.max(
    LEAST_SPAN,
    ...shown.flatMap((n) => [Math.abs(n.foundAboutCents), Math.abs(n.proposedAboutCents)]),
  );
  const span = 10 * Math.ceil(furthest / 10);
  const y = (cents: number): number =>
    TOP + ((HEIGHT - TOP - BOTTOM) / 2) * (1 - Math.max(-1, Math.min(1, cents / span)));
  const step = (WIDTH - LEFT) / Math.max(shown.length, 1);
  const every = Math.ceil(NAME_WIDTH / step);
  return {
    width: WIDTH,
    height: HEIGHT,
    label: labelOf(shown),
    lines: [span, span / 2, 0, -span / 2, -span].map((cents) => ({
      y: y(cents),
      label: cents === 0 ? '0' : `${cents < 0 ? '−' : '+'}${Math.abs(cents)}`,
    })),
    marks: shown.map((note, i) => ({
      x: LEFT + (i + 0.5) * step,
      found: y(note.foundAboutCents),
      proposed: y(note.proposedAboutCents),
      label: noteLabel(note.fingering),
      named: i % (2 * every) === 0 ? 'always' : i % every === 0 ? 'where wide' : 'never',
    })),
  };
}

/** So many notes are told in words: those furthest out as it stands. */
const TOLD = 5;

/** The picture in words: how many notes, and the furthest with their numbers. */
function labelOf(shown: readonly ProposedNoteReport[]): string {
  const furthest = [...shown]
    .sort((a, b) => Math.abs(b.foundAboutCents) - Math.abs(a.foundAboutCents))
    .slice(0, TOLD)
    .map(
      (n) =>
        `${noteLabel(n.fingering)} ${signedCents(n.foundAboutCents)}, then ${signedCents(n.proposedAboutCents)}`,
    );
  const moved = [...shown].sort((a, b) => Math.abs(b.changeCents) - Math.abs(a.changeCents))[0];
  const most =
    moved === undefined
      ? ''
      : ` Moves most: ${noteLabel(moved.fingering)}, by ${signedCents(moved.changeCents)} ± ${tenths(moved.changePlusMinusCents)} cents.`;
  return `Cents of ${shown.length} notes from what they are tuned by, as the horn stands, then as proposed. Furthest out: ${listed(furthest)} cents.${most} Every number stands below.`;
}
