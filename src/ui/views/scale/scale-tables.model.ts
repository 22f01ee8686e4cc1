import { usualFingerings } from '../../../acoustics/index.ts';
import { signedCents } from '../../parts/note-names.ts';
import type { NoteNaming } from '../../state/bench-state.ts';
import type { ScaleNumbers, ScaleReport } from '../../state/scale-report.ts';
import { centsWithPlusMinus } from '../../parts/plus-minus-words.ts';
import type { ScaleSureness } from '../../state/scale-sureness.ts';
import { makeNamer, signedPercent, type Namer } from './scale-words.ts';

/** Another way of fingering a note, beside its usual one. */
export interface AlternateRow {
  readonly id: string;
  readonly label: string;
  /** `side`: the usual way */
  readonly against: string;
  /** from the usual way, cents; with an arrow where a proposal changes it */
  readonly cents: string;
  /** strength against the usual way's */
  readonly strength: string;
}

/** One fingering of the table behind the chart. */
export interface ScaleRow {
  readonly id: string;
  readonly label: string;
  readonly cells: readonly string[];
}

/** Every note with more than one fingering. */
export function makeAlternates(
  report: ScaleReport,
  proposed: ScaleNumbers,
  moved: boolean,
  nameOf: Namer,
): AlternateRow[] {
  const usual = usualFingerings(report.fingerings);
  return report.fingerings.flatMap((fingering, i) => {
    if (usual[i]) return [];
    const u = report.fingerings.findIndex(({ note }) => note === fingering.note);
    const both = (of: (numbers: ScaleNumbers) => number, show: (value: number) => string): string => {
      const before = shownOr(of(report.found), show);
      const after = shownOr(of(proposed), show);
      return moved && after !== before ? `${before} → ${after}` : before;
    };
    return [
      {
        id: fingering.id,
        label: nameOf(fingering),
        against: report.fingerings[u].way === '' ? 'usual' : report.fingerings[u].way,
        cents: both(({ cents }) => cents[i] - cents[u], signedCents),
        strength: both(({ heights }) => heights[i] / heights[u] - 1, signedPercent),
      },
    ];
  });
}

export const SCALE_HEAD = [
  'written',
  'concert',
  'cents as found',
  'cents as proposed',
  'moves',
  'strength as found',
  'as proposed',
  'cutoff as found, Hz',
  'as proposed, Hz',
] as const;

/** The numbers behind the chart. */
export function makeScaleRows(
  report: ScaleReport,
  proposed: ScaleNumbers,
  moved: boolean,
  nameOf: Namer,
  naming: NoteNaming,
  sure: ScaleSureness | null,
): ScaleRow[] {
  const other = makeNamer(naming === 'written' ? 'concert' : 'written', report.transpositionSemitones);
  const { found } = report;
  const fixed = (digits: number) => (value: number) => value.toFixed(digits);
  return report.fingerings.map((fingering, i) => {
    const mine = nameOf(fingering);
    const theirs = other(fingering);
    const within = (half: number | undefined) => (cents: number) =>
      half === undefined ? signedCents(cents) : centsWithPlusMinus(cents, half);
    const later = (value: number, show: (v: number) => string): string => (moved ? shownOr(value, show) : '');
    return {
      id: fingering.id,
      label: naming === 'written' ? mine : theirs,
      cells: [
        naming === 'written' ? theirs : mine,
        shownOr(found.cents[i], within(sure?.found[i]?.budget.plusMinus)),
        later(proposed.cents[i], signedCents),
        later(proposed.cents[i] - found.cents[i], within(sure?.moves[i]?.budget.plusMinus)),
        shownOr(found.heights[i], fixed(1)),
        later(proposed.heights[i], fixed(1)),
        shownOr(found.cutoffHz[i], fixed(0)),
        later(proposed.cutoffHz[i], fixed(0)),
      ],
    };
  });
}

function shownOr(value: number, show: (value: number) => string): string {
  return Number.isNaN(value) ? '–' : show(value);
}
