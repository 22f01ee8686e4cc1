import { formatLength, type LengthUnit } from '../../../../documents/length-format.ts';
import type {
  GapCostReport,
  HeightEffectReport,
  HeightOrLeakReport,
  PadLeakReport,
} from '../../../../documents/height-or-leak-report.ts';
import { costWords, decibels, heightOrLeakSentence } from '../../../../documents/height-or-leak-words.ts';
import { listed, noteLabel } from '../../../parts/note-names.ts';
import {
  centsWithPlusMinus,
  lengthBothWithPlusMinus,
  lengthWithPlusMinus,
} from '../../../parts/plus-minus-words.ts';
import type { Reason } from '../../../state/reasons.ts';
import { costReason, gainReason } from './beside-reasons.model.ts';
import { together } from './leaks-words.ts';

/** A number of a table, and why it is what it is; null where nothing more can be said. */
export interface Figure {
  readonly text: string;
  readonly reason: Reason | null;
}

/** One key whose height the note hears. */
export interface HeightRow {
  readonly pad: string;
  readonly name: string;
  readonly stands: string;
  readonly enough: string;
  readonly gain: Figure;
  readonly cents: string;
  /** length of its bar on the scale of both lists, 0…1 */
  readonly share: number;
}

/** One pad the note shuts. */
export interface LeakRow {
  readonly pad: string;
  readonly name: string;
  readonly shutBy: PadLeakReport['shutBy'];
  readonly one: Figure;
  readonly two: Figure;
  readonly cents: string;
  readonly shareOne: number;
  readonly shareTwo: number;
}

/** Height beside leak as the page tells it. */
export interface BesideView {
  readonly headline: string;
  /** whether its keys can come down; empty where the note hears none */
  readonly standing: string;
  /** of the figures in the headline */
  readonly reasons: readonly Reason[];
  readonly heights: readonly HeightRow[];
  /** the first few, which are shown; the others behind a fold */
  readonly leaks: readonly LeakRow[];
  readonly lesser: readonly LeakRow[];
  /** dB of the longest bar there may be */
  readonly fullDb: string;
}

/** So many pads are shown before the fold. */
const SHOWN = 6;
/** A full bar is no less, dB. */
const LEAST_FULL_DB = 1;

export function makeBeside(report: HeightOrLeakReport, unit: LengthUnit): BesideView {
  const note = noteLabel(report.fingering);
  const fullDb = fullScale(report);
  const shareOf = (db: number | null): number => Math.min(1, Math.max(0, (db ?? Infinity) / fullDb));
  const leaks = report.leaks.map((leak): LeakRow => {
    const [one, two] = leak.at;
    return {
      pad: leak.pad,
      name: leak.name,
      shutBy: leak.shutBy,
      one: costFigure(leak, one, report, unit),
      two: costFigure(leak, two, report, unit),
      cents: centsText(two),
      shareOne: shareOf(one.lostDb),
      shareTwo: shareOf(two.lostDb),
    };
  });
  return {
    headline: together(heightOrLeakSentence(report)),
    standing: together(comeDownSentence(report.heights, note, unit)),
    reasons: headlineReasons(report, unit),
    heights: report.heights.map((height) => ({
      pad: height.pad,
      name: height.name,
      stands: openingText(height.foundMm, height.foundMmBudget.plusMinus, unit),
      enough:
        height.kind === 'none in reach'
          ? together(`more than ${formatLength(height.enoughMm, unit)}`)
          : openingText(height.enoughMm, height.enoughMmBudget?.plusMinus ?? null, unit),
      gain: gainFigure(height, report, unit),
      cents: centsText(height),
      share: shareOf(height.gainDb === null ? 0 : height.gainDb),
    })),
    leaks: leaks.slice(0, SHOWN),
    lesser: leaks.slice(SHOWN),
    fullDb: together(`${fullDb.toFixed(1)} dB`),
  };
}

function fullScale({ heights, leaks }: HeightOrLeakReport): number {
  const all = [
    ...heights.map(({ gainDb }) => gainDb ?? 0),
    ...leaks.flatMap(({ at }) => at.map(({ lostDb }) => lostDb ?? 0)),
  ];
  return Math.max(LEAST_FULL_DB, ...all);
}

function gainFigure(height: HeightEffectReport, report: HeightOrLeakReport, unit: LengthUnit): Figure {
  if (height.gainDb === null) return { text: 'lost on the way', reason: null };
  const text = together(decibels(height.gainDb, height.gainDbBudget?.plusMinus));
  return { text, reason: gainReason(height, report, { figure: text, unit }) };
}

function costFigure(
  leak: PadLeakReport,
  cost: GapCostReport,
  report: HeightOrLeakReport,
  unit: LengthUnit,
): Figure {
  const text = together(costWords(cost));
  return {
    text,
    reason: cost.lostDb === null ? null : costReason(leak, cost, report, { figure: text, unit }),
  };
}

/** Those of the worst leak and the best height, as the headline has them. */
function headlineReasons(report: HeightOrLeakReport, unit: LengthUnit): Reason[] {
  const [best] = report.heights;
  const [worst] = report.leaks;
  const figures = [
    ...(worst === undefined ? [] : [costFigure(worst, worst.at[worst.at.length - 1], report, unit)]),
    ...(best === undefined ? [] : [gainFigure(best, report, unit)]),
  ];
  const inOrder = report.verdict === 'leak' || report.verdict === 'neither' ? figures : figures.reverse();
  return inOrder.flatMap(({ reason }) => reason ?? []);
}

function centsText({
  changeCents,
  changeCentsBudget,
}: Pick<GapCostReport, 'changeCents' | 'changeCentsBudget'>): string {
  if (changeCents === null) return '';
  const half = changeCentsBudget?.plusMinus ?? null;
  return half === null ? changeCents.toFixed(1) : centsWithPlusMinus(changeCents, half);
}

function openingText(mm: number, plusMinusMm: number | null, unit: LengthUnit): string {
  return together(plusMinusMm === null ? formatLength(mm, unit) : lengthWithPlusMinus(mm, plusMinusMm, unit));
}

/** Whether the keys a note hears can come down: only what stands above enough by more than its ± can for nothing. */
export function comeDownSentence(
  heights: readonly HeightEffectReport[],
  note: string,
  unit: LengthUnit,
): string {
  if (heights.length === 0) return '';
  const apart = heights.map((height) => {
    const half = Math.hypot(height.foundMmBudget.plusMinus, height.enoughMmBudget?.plusMinus ?? 0);
    const mm = height.foundMm - height.enoughMm;
    return { height, mm, half, stands: mm > half ? 'above' : mm < -half ? 'below' : 'at' };
  });
  const names = (stands: string): string[] =>
    apart.filter((each) => each.stands === stands).map(({ height }) => height.name);
  const [below, at] = [names('below'), names('at')];
  const low = [
    ...(below.length === 0
      ? []
      : [`${listed(below)} ${below.length === 1 ? 'stands' : 'stand'} below enough`]),
    ...(at.length === 0 ? [] : [`${listed(at)} ${at.length === 1 ? 'stands' : 'stand'} at enough`]),
  ].join(', ');
  const high = apart.filter(({ stands }) => stands === 'above');
  if (high.length === 0) return `No key can come down for nothing on ${note}: ${low}.`;
  const down = high.map(({ height, mm, half }) => {
    const cost =
      height.gainDb === null ? '' : `, for ${decibels(-height.gainDb, height.gainDbBudget?.plusMinus)}`;
    return `${height.name} by ${lengthBothWithPlusMinus(mm, half, unit)}${cost}`;
  });
  return `To enough may come down: ${listed(down)}.${low === '' ? '' : ` Not the others: ${low}.`}`;
}
