import type { MeasuringPoint } from '../../acoustics/index.ts';
import type { BenchContents } from '../../documents/bench-contents.ts';
import { hornInHand, type BenchState } from './bench-state.ts';
import { keepDayText } from './edits-in-hand.ts';
import { withHorn } from './horns-on-bench.ts';
import type { FieldId, HeadFieldId } from './fields.ts';
import { stepped, type HornOnBench, type KeyTexts } from './horn-on-bench.ts';
import { withProposed } from './key-lengths.ts';
import type { CellText, HeadOutcome, SheetReading } from './read-sheet.ts';

// What is done on the sheet: each takes a state and gives the next.

/** Takes what was read from typed cells into use, all as one step. */
export function acceptCells(state: BenchState, { contents, kept, named, unit }: SheetReading): BenchState {
  const next = withHorn(state, (horn) => {
    const texts = kept.reduce((now, { pad, cell, typed }) => withText(now, pad, cell, typed), horn.typed);
    const ownPoint = named.reduce(
      (now, { pad, cell, at }) => ({ ...now, [pad]: { ...now[pad], [cell]: at } }),
      horn.ownPoint,
    );
    return { ...stepped(horn, contents, null), typed: texts, ownPoint };
  });
  return unit === null ? next : { ...next, unit };
}

/** Texts refused before on the keys of some cells, other than those cells' own. */
export function refusedBeside(entries: readonly CellText[], typed: HornOnBench['typed']): CellText[] {
  return [...new Set(entries.map(({ pad }) => pad))].flatMap((pad) =>
    Object.entries(typed[pad] ?? {}).flatMap(([cell, text]) =>
      text.problem === null || cell === 'measuredAt' || entries.some((e) => e.pad === pad && e.cell === cell)
        ? []
        : [{ pad, cell: cell as FieldId, text: text.text }],
    ),
  );
}

/** A cell shows what is in use again. */
export function restoreCell(state: BenchState, pad: string, cell: FieldId): BenchState {
  return withHorn(state, (horn) =>
    horn.typed[pad]?.[cell] === undefined ? horn : { ...horn, typed: withText(horn.typed, pad, cell, null) },
  );
}

function withText(
  typed: HornOnBench['typed'],
  pad: string,
  cell: FieldId,
  text: KeyTexts[FieldId] | null,
): HornOnBench['typed'] {
  const rest = { ...typed[pad] };
  if (text === null || text === undefined) delete rest[cell];
  else rest[cell] = text;
  return { ...typed, [pad]: rest };
}

/** Where a cell’s opening is read: by its own choice, else as the whole sheet. */
export function pointOf(state: BenchState, pad: string, cell: FieldId): MeasuringPoint {
  return hornInHand(state).ownPoint[pad]?.[cell] ?? state.readAt;
}

/** Takes a text about the horn or the visit into use, or keeps it with what is wrong with it. */
export function acceptHead(
  state: BenchState,
  field: HeadFieldId,
  text: string,
  outcome: HeadOutcome,
): BenchState {
  if (!outcome.ok) {
    return keepDayText(state, field, { text, problem: outcome.message, value: null });
  }
  return keepDayText(
    withHorn(state, (horn) => stepped(horn, outcome.contents, null)),
    field,
    null,
  );
}

/** Proposes openings for several keys in one step, mm at the front by pad id. */
export function proposeAll(state: BenchState, frontsMm: Readonly<Record<string, number>>): BenchState {
  const proposed = (contents: BenchContents): BenchContents =>
    Object.entries(frontsMm).reduce((now, [pad, mm]) => withProposed(now, pad, mm), contents);
  return withHorn(state, (horn) => stepped(horn, proposed(horn.contents), null));
}
