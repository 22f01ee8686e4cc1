import type { MeasuringPoint } from '../../../acoustics/index.ts';
import { contradictionSentence } from '../../../documents/contradicting-readings.ts';
import type { LengthUnit } from '../../../documents/length-format.ts';
import { makeHornPicture, type HornPicture } from '../../parts/horn-picture.model.ts';
import {
  dayInHand,
  documentsInHand,
  hornInHand,
  type BenchState,
  type SheetColumns,
} from '../../state/bench-state.ts';
import type { HeadFieldId } from '../../state/fields.ts';
import { memoLast } from '../../state/memo-last.ts';
import { unbroken } from '../../parts/note-names.ts';
import { proposedFronts } from '../../state/proposed-fronts.ts';
import type { SheetReport } from '../../state/sheet-report.ts';
import { isSheetCurrent, nextUnknown } from '../../state/sheet-state.ts';
import { makeWishEntry, type WishEntry } from '../../sheets/wish-entry.model.ts';
import { makeMeasuredFields, sentence, type FieldView } from '../key-study/measured-fields.model.ts';
import type { DayFieldId } from '../../state/fields.ts';
import { labelOf, MEASURE_CELLS, OPENING_CELLS } from './sheet-cells.model.ts';
import { makeRowGroups, type RowGroup } from './sheet-rows.model.ts';
import { enoughAct, keysBelow, leadingRows, makeSheetAnswer, type SheetAnswer } from './sheet-words.ts';

/** A text of the head. */
export interface HeadView {
  readonly id: HeadFieldId;
  readonly label: string;
  readonly text: string;
  readonly problem: string | null;
}

/** A visit that can be looked at. */
export interface VisitChoice {
  readonly id: string;
  readonly label: string;
}

/** What can be done to all keys at once, and what was. */
export interface ActsOnAll {
  /** a refused text for how much all keys are to move, else empty */
  readonly text: string;
  readonly problem: string | null;
  /** openings that can be withdrawn */
  readonly proposed: number;
  /** what was last done to all keys; empty once anything else was done */
  readonly told: string;
}

/** Everything the sheet shows. */
export interface SheetView {
  readonly hornName: string;
  /** the head in one line, for when it is folded and for paper */
  readonly headLine: string;
  readonly head: readonly HeadView[];
  readonly dayFields: readonly FieldView<DayFieldId>[];
  readonly wish: WishEntry;
  readonly visits: readonly VisitChoice[];
  readonly visitId: string;
  readonly answer: SheetAnswer;
  readonly problem: string | null;
  /** readings that cannot both hold, a sentence each */
  readonly contradictions: readonly string[];
  readonly busy: boolean;
  readonly columns: SheetColumns;
  readonly columnHeads: readonly string[];
  readonly unitWords: string;
  readonly unit: LengthUnit;
  readonly readAt: MeasuringPoint;
  readonly groups: readonly RowGroup[];
  /** whether an opening is shown that was read on a visit before */
  readonly hasBefore: boolean;
  /** where the axis of the bars begins, % */
  readonly barFromPercent: number;
  /** mm at the front by pad id: what would bring each key the answer tells to be low to where height stops helping */
  readonly enoughForAll: Readonly<Record<string, number>>;
  /** what the button says that proposes it */
  readonly enoughAct: string;
  readonly all: ActsOnAll;
  readonly picture: HornPicture;
}

const HEAD: readonly { readonly id: HeadFieldId; readonly label: string }[] = [
  { id: 'name', label: 'Horn' },
  { id: 'maker', label: 'Maker' },
  { id: 'serial', label: 'Serial number' },
  { id: 'owner', label: 'Owner' },
  { id: 'player', label: 'Player' },
  { id: 'date', label: 'Date' },
  { id: 'measuredBy', label: 'Measured by' },
  { id: 'wish', label: 'The player’s wish' },
  { id: 'notes', label: 'Notes' },
];

/** Proposals are rounded up to what a bench can set, mm. */
const PROPOSED_STEP_MM = 0.1;

const pictureMemo = memoLast(
  (
    documents: ReturnType<typeof documentsInHand>,
    selected: string,
    report: SheetReport | null,
    unit: LengthUnit,
  ): HornPicture =>
    makeHornPicture(documents.horn, documents.setup, {
      selected,
      unit,
      ventShareOf: (pad) => report?.keys.find((k) => k.pad === pad)?.asSet.ventShare ?? null,
    }),
);

export function makeSheetView(state: BenchState): SheetView {
  const { contents, keyId } = hornInHand(state);
  const { groups, barFrom } = makeRowGroups(state);
  const rows = groups.flatMap((group) => group.rows);
  const { sheet, unit } = state;
  const isOfHorn = sheet.hornId === state.hornId;
  const isReady = isSheetCurrent(sheet, state.hornId) && nextUnknown(sheet, contents, keyId) === null;
  const head = makeHead(state);
  const cells = state.columns === 'openings' ? OPENING_CELLS : MEASURE_CELLS;
  return {
    hornName: contents.horn.document.name,
    headLine: headLine(state),
    head,
    dayFields: makeMeasuredFields(state).dayFields,
    wish: makeWishEntry(state),
    visits: visitChoices(state),
    visitId: contents.visit.id,
    answer: makeSheetAnswer(rows, {
      unit,
      isSet: contents.asSet.document.keys.length > 0,
      boreFromExample: contents.horn.document.origin === 'template',
    }),
    problem: isOfHorn && sheet.problem !== null ? sentence(sheet.problem) : null,
    contradictions: isOfHorn
      ? (sheet.report?.contradictions ?? []).map((each) => contradictionSentence(each, unit))
      : [],
    busy: sheet.problem === null && !isReady,
    columns: state.columns,
    columnHeads: cells.map((cell) => labelOf(cell, state.columns)),
    unitWords: unit === 'mm' ? 'mm' : 'inch',
    unit,
    readAt: state.readAt,
    groups,
    hasBefore: rows.some((row) => row.cells.some(({ readOn }) => readOn !== null)),
    barFromPercent: Math.round(100 * barFrom),
    enoughForAll: Object.fromEntries(
      keysBelow(leadingRows(rows)).map(({ pad, standing }) => [
        pad,
        Number((Math.ceil(standing!.frontMm! / PROPOSED_STEP_MM - 1e-6) * PROPOSED_STEP_MM).toFixed(2)),
      ]),
    ),
    enoughAct: enoughAct(rows),
    all: actsOnAll(state),
    picture: pictureMemo(documentsInHand(state), keyId, isOfHorn ? sheet.report : null, unit),
  };
}

function actsOnAll(state: BenchState): ActsOnAll {
  const { contents } = hornInHand(state);
  const { shiftTyped, told } = state.sheet;
  return {
    text: shiftTyped?.text ?? '',
    problem: shiftTyped === null || shiftTyped.problem === null ? null : sentence(shiftTyped.problem),
    proposed: Object.keys(proposedFronts(contents)).length,
    told: told?.after === contents ? unbroken(told.text) : '',
  };
}

function makeHead(state: BenchState): HeadView[] {
  const { contents, dayTyped } = hornInHand(state);
  const { name, maker, serial, owner } = contents.horn.document;
  const { player, date, measuredBy, wish, notes } = contents.visit.document;
  const values: Readonly<Record<HeadFieldId, string | undefined>> = {
    name,
    maker,
    serial,
    owner,
    player,
    date,
    measuredBy,
    wish,
    notes,
  };
  return HEAD.map(({ id, label }) => {
    const typed = dayTyped[id];
    const problem = typed?.problem ?? null;
    return {
      id,
      label,
      text: problem === null ? (values[id] ?? '') : typed!.text,
      problem: problem === null ? null : sentence(problem),
    };
  });
}

function headLine(state: BenchState): string {
  const { contents } = hornInHand(state);
  const { owner } = contents.horn.document;
  const { player, date, measuredBy, airC, a4Hz } = dayInHand(state);
  return [
    date,
    player === undefined ? '' : `for ${player}`,
    owner === undefined || owner === player ? '' : `owned by ${owner}`,
    measuredBy === undefined ? '' : `measured by ${measuredBy}`,
    `${Math.round(airC * 10) / 10} °C`,
    `A4 ${Math.round(a4Hz * 10) / 10} Hz`,
  ]
    .filter((part) => part !== '')
    .join(' · ');
}

function visitChoices(state: BenchState): VisitChoice[] {
  const { contents } = hornInHand(state);
  const { id, document } = contents.visit;
  const known = state.visits.hornId === state.hornId ? state.visits.list : [];
  const here = { id, date: document.date, player: document.player ?? null };
  const all = known.some((visit) => visit.id === id)
    ? known.map((visit) => (visit.id === id ? here : visit))
    : [here, ...known];
  return all.map((visit) => ({
    id: visit.id,
    label: visit.player === null ? visit.date : `${visit.date}, ${visit.player}`,
  }));
}
