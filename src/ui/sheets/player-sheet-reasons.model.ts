import type { BenchContents } from '../../documents/bench-contents.ts';
import type { ComparedKeyReport, ComparisonReport } from '../../documents/comparison-report.ts';
import type { LengthUnit } from '../../documents/length-format.ts';
import { nameOf, type PlayerSheetFacts } from '../../documents/player-sheet-facts.ts';
import { capital, shiftWords, signed } from '../../documents/player-sheet-lengths.ts';
import type { SheetKeyRow, SheetNoteRow } from '../../documents/player-sheet-tables.ts';
import type { PlayerSheet } from '../../documents/player-sheet.ts';
import { openingInput, ventingInputs } from '../state/reason-inputs.ts';
import type { Reason, ReasonInput } from '../state/reasons.ts';
import { makeCurveReasons, type MarkReasons } from './curve-reasons.model.ts';

/** The reasons of a key’s figures. */
export interface KeyRowReasons {
  readonly found: Reason;
  readonly set: Reason;
  readonly vented: Reason;
}

/** The reasons of a note’s figures; null where there is no such figure. */
export interface NoteRowReasons {
  readonly cents: Reason;
  readonly strengthDb: Reason | null;
}

/** Why the figures in the tables of the player’s page are what they are; on the screen only. */
export interface PlayerSheetReasons {
  /** by pad id */
  readonly keys: Readonly<Record<string, KeyRowReasons>>;
  /** by fingering id */
  readonly notes: Readonly<Record<string, NoteRowReasons>>;
  readonly wishNotes: Readonly<Record<string, NoteRowReasons>>;
  readonly curve: MarkReasons;
}

export function makePlayerSheetReasons(
  contents: BenchContents,
  facts: PlayerSheetFacts,
  sheet: PlayerSheet,
  unit: LengthUnit,
): PlayerSheetReasons {
  const { comparison, wishedShift, isProposal } = facts;
  const leaving = leavingWords(facts);
  const keys = sheet.keys.rows.map((row) => [row.pad, keyReasons(row, contents, facts, unit)] as const);
  const notes = (
    rows: readonly SheetNoteRow[],
    of: ComparisonReport,
    sides: readonly [string, string],
    moved: readonly ReasonInput[],
  ): PlayerSheetReasons['notes'] =>
    Object.fromEntries(rows.map((row) => [row.fingering, noteReasons(row, of, sides, moved)]));
  return {
    keys: Object.fromEntries(keys),
    notes: notes(sheet.notes.rows, comparison, ['as found', leaving], []),
    wishNotes:
      wishedShift === null
        ? {}
        : notes(
            sheet.wishNotes!.rows,
            wishedShift.cost,
            [isProposal ? leaving : 'as it leaves', 'as wished'],
            [{ label: 'every key', value: shiftWords(wishedShift.byMm, unit), from: 'as wished' }],
          ),
    curve: makeCurveReasons(contents, facts, sheet.curve, unit),
  };
}

function keyReasons(
  { pad, name, found, set, vented }: SheetKeyRow,
  contents: BenchContents,
  facts: PlayerSheetFacts,
  unit: LengthUnit,
): KeyRowReasons {
  const key = facts.comparison.keys.find(({ id }) => id === pad)!;
  const isRead = facts.setByHand.includes(pad);
  const leaves = facts.isProposal ? 'proposed' : 'asSet';
  const leaving = leavingWords(facts);
  const openings = [
    ...openingInput(contents, pad, 'asFound', unit),
    ...(isRead ? openingInput(contents, pad, leaves, unit) : []),
  ];
  const opening = (figure: string, side: 0 | 1, role: 'asFound' | typeof leaves): Reason => ({
    kind: 'opening',
    figure,
    of: `${name} key ${side === 0 ? 'as found' : leaving}, at the front`,
    inputs: openingInput(contents, pad, role, unit),
    budget: null,
    remarks: [...heldWords(key, side, facts), ...(side === 1 && !isRead ? [NOT_SET[leaves]] : [])],
  });
  return {
    found: opening(found, 0, 'asFound'),
    set: opening(set, 1, leaves),
    vented: {
      kind: 'vent-share',
      figure: vented,
      of: `${name} key, from as found to ${leaving}`,
      inputs: [...openings, ...ventingInputs(contents, pad, unit)],
      budget: null,
      remarks: key.setups.flatMap((_, side) => heldWords(key, side as 0 | 1, facts)),
    },
  };
}

const NOT_SET = {
  asSet: 'Nobody read it as set: it stands where the keys that drive it leave it.',
  proposed: 'It is not proposed by itself: it would stand where the keys that drive it leave it.',
} as const;

function leavingWords({ isProposal }: PlayerSheetFacts): 'as set' | 'as proposed' {
  return isProposal ? 'as proposed' : 'as set';
}

function heldWords({ setups }: ComparedKeyReport, side: 0 | 1, facts: PlayerSheetFacts): string[] {
  const ruledBy = setups[side]?.ruledBy ?? null;
  const when = side === 0 ? 'As found' : capital(leavingWords(facts));
  return ruledBy === null
    ? []
    : [`${when}, the ${nameOf(facts.comparison, ruledBy)} key’s arm holds it down.`];
}

function noteReasons(
  { fingering, label, cents, strengthDb }: SheetNoteRow,
  { notes }: ComparisonReport,
  [first, other]: readonly [string, string],
  moved: readonly ReasonInput[],
): NoteRowReasons {
  const note = notes.find((each) => each.fingering === fingering)!;
  const [a, b] = note.setups;
  const { budget } = note.differences[0]!;
  const of = `${label}, ${other} beside ${first}`;
  const inputs = (value: (side: typeof a) => string): ReasonInput[] => [
    ...moved,
    { label: first, value: value(a), from: '' },
    { label: other, value: value(b), from: '' },
  ];
  const pitch = inputs(({ cents: at }) => `${signed(at!)} cents from equal temperament`);
  const height = inputs(({ heightRatio }) => `height ${heightRatio!.toFixed(1)} ρc/S`);
  return {
    cents: {
      kind: 'difference',
      figure: `${cents} cents`,
      of,
      inputs: pitch,
      budget: { parts: budget, in: 'cents' },
      remarks: ['Both pitches are off alike, so that their difference is far surer than either.'],
    },
    strengthDb:
      strengthDb === ''
        ? null
        : { kind: 'difference', figure: `${strengthDb} dB`, of, inputs: height, budget: null, remarks: [] },
  };
}
