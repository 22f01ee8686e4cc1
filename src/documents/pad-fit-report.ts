import { fitPads, orderPads, type FittedPad, type PadFit, type PadStock } from '../acoustics/index.ts';
import { keyedHoles } from './horn-document.ts';
import type { KnownCup } from './regulation-facts.ts';
import type { LoadedHorn } from './to-acoustics.ts';

/** A pad for a cup, bench units. */
export interface FittedPadReport {
  readonly diameterMm: number;
  readonly thicknessMm: number;
  readonly thicknessThou: number;
  readonly bedMm: number;
}

/** What fits one cup, bench units. */
export interface PadFitReport {
  readonly pad: string;
  readonly floorMm: number;
  readonly floorFrom: 'measured' | 'derived';
  readonly fits: boolean;
  /** the pad to take, or the nearest */
  readonly choice: FittedPadReport;
  /** whether the bed stays in range for every pad of the batch */
  readonly wholeBatch: boolean;
  /** what is left over: proud of the rim, or, minus, short of it; 0 where it fits */
  readonly leftOverMm: number;
  /** where it touches first, and what gapes on the other side */
  readonly touches: string;
  readonly gapMm: number;
  /** gaps the thickest and the thinnest of a batch would leave on this bed; null where nothing fits */
  readonly thickestGapMm: number | null;
  readonly thinnestGapMm: number | null;
  /** where nothing fits: the thicknesses that would */
  readonly wantedMm: { readonly from: number; readonly to: number } | null;
  readonly others: readonly FittedPadReport[];
}

/** Pads for a horn's cups, bench units. */
export interface PadFitsReport {
  readonly horn: string;
  readonly cups: readonly PadFitReport[];
  readonly order: readonly {
    readonly diameterMm: number;
    readonly thicknessMm: number;
    readonly thicknessThou: number;
    readonly count: number;
    readonly pads: readonly string[];
  }[];
  /** pads whose cup floor is not known */
  readonly notMeasured: readonly string[];
  readonly caution: string;
}

const MM = 1e-3;
const THOU = 0.0254e-3;

/** **Source:** common practice, no source. */
const CAUTION =
  'Warm the cup, not the pad, and no more than the adhesive needs: heat dulls lacquer, shrinks leather and loosens what was glued before. Let the bed set before the seat is judged.';

/** Fits every cup whose floor is known, in bench units. */
export function reportPadFit(loaded: LoadedHorn, cups: readonly KnownCup[], stock: PadStock): PadFitsReport {
  const fits = fitPads(
    loaded.horn,
    cups.map((c) => c.cup),
    stock,
  );
  const known = new Set(cups.map((c) => c.cup.pad));
  return {
    horn: loaded.horn.name,
    cups: fits.map((fit, i) => reportFit(fit, cups[i])),
    order: orderPads(fits).map(({ diameter, thickness, pads }) => ({
      diameterMm: rounded(diameter / MM),
      thicknessMm: rounded(thickness / MM),
      thicknessThou: rounded(thickness / THOU),
      count: pads.length,
      pads,
    })),
    notMeasured: keyedHoles(loaded.documents.horn).flatMap((h) => (known.has(h.id) ? [] : [h.id])),
    caution: CAUTION,
  };
}

/** Sizes are steps and classes: without the rounding of SI. */
function rounded(value: number): number {
  return Number(value.toFixed(6));
}

function reportFitted({ diameter, thickness, bed }: FittedPad): FittedPadReport {
  return {
    diameterMm: rounded(diameter / MM),
    thicknessMm: rounded(thickness / MM),
    thicknessThou: rounded(thickness / THOU),
    bedMm: rounded(bed / MM),
  };
}

function reportFit(fit: PadFit, { cup, floorFrom }: KnownCup): PadFitReport {
  const common = { pad: fit.pad, floorMm: cup.floor / MM, floorFrom };
  if (fit.fits) {
    return {
      ...common,
      fits: true,
      choice: reportFitted(fit.choice),
      wholeBatch: fit.wholeBatch,
      ...{ leftOverMm: 0, touches: 'all round', gapMm: 0 },
      thickestGapMm: fit.thickest.gap / MM,
      thinnestGapMm: fit.thinnest.gap / MM,
      wantedMm: null,
      others: fit.others.map(reportFitted),
    };
  }
  return {
    ...common,
    fits: false,
    choice: reportFitted(fit.nearest),
    wholeBatch: false,
    leftOverMm: fit.leftOver / MM,
    touches: fit.contact.touches,
    gapMm: fit.contact.gap / MM,
    thickestGapMm: null,
    thinnestGapMm: null,
    wantedMm: { from: fit.wanted.from / MM, to: fit.wanted.to / MM },
    others: [],
  };
}
