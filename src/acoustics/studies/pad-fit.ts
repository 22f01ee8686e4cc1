import { holeOf, type Horn, type ToneHole } from '../horn.ts';
import { closingContact, type ClosingContact } from '../keywork/closing-contact.ts';

/**
 * Which pad goes into which cup, and how thick a bed of adhesive under it.
 *
 *      ▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔   cup floor      A pad of thickness t on a bed a, into which the rim sinks by the
 *      ░░░░░░░ bed a ░░░░░░░                   seat's depth q, fills a cup whose floor lies D above the rim, cup
 *      ▓▓▓▓▓▓▓ pad t ▓▓▓▓▓▓▓   D               parallel to it, when
 *      ───▌           ▐───   rim                      t + a − q = D
 *
 * **Source:** plain geometry; thickness classes, bed and seat as common practice (no source) gives them.
 */

/** One cup as measured. Metres. */
export interface CupToFit {
  readonly pad: string;
  /** D, cup floor to rim with the cup parallel to it */
  readonly floor: number;
  /** inner diameter of the cup where measured; else the pad it has says the size */
  readonly cupDiameter?: number;
  readonly padDiameter: number;
  /** q where it differs from the stock's */
  readonly seat?: number;
}

/** What lies in the drawer. Metres. */
export interface PadStock {
  readonly thicknesses: readonly number[];
  /** ± of a batch's thickness */
  readonly tolerance: number;
  /** step between sizes */
  readonly diameterStep: number;
  /** how much smaller than the cup a pad is chosen */
  readonly clearance: number;
  readonly bed: { readonly least: number; readonly most: number };
  /** q, how deep the rim sinks into the pad */
  readonly seat: number;
}

/**
 * A stock to begin with: classes of 0.125, 0.160, 0.180 and 0.200 in, batches ±0.1 mm, sizes in 0.5 mm steps,
 * bed 0.2–1.0 mm, a firm seat.
 *
 * **Source:** common practice, no source; thicknesses and tolerance from memory.
 */
export const USUAL_STOCK: PadStock = Object.freeze({
  thicknesses: [0.125, 0.16, 0.18, 0.2].map((inches) => inches * 0.0254),
  tolerance: 0.1e-3,
  diameterStep: 0.5e-3,
  clearance: 0,
  bed: { least: 0.2e-3, most: 1e-3 },
  seat: 0.2e-3,
});

/** A pad for a cup. Metres. */
export interface FittedPad {
  readonly diameter: number;
  readonly thickness: number;
  readonly bed: number;
}

/** What fits a cup, or why nothing does and what the nearest leaves. */
export type PadFit = { readonly pad: string } & (
  | {
      readonly fits: true;
      readonly choice: FittedPad;
      /** whether the bed stays in its range for every pad of the batch */
      readonly wholeBatch: boolean;
      /** where the thickest and the thinnest of the batch touch first if the bed is left as it is */
      readonly thickest: ClosingContact;
      readonly thinnest: ClosingContact;
      /** the other classes that would fit, with their beds */
      readonly others: readonly FittedPad[];
    }
  | {
      readonly fits: false;
      /** the nearest class, with the bed at the end of its range */
      readonly nearest: FittedPad;
      /** m, what is left over: how far it stands proud of the rim, or, negative, short of it */
      readonly leftOver: number;
      /** where it touches first */
      readonly contact: ClosingContact;
      /** thickness that would fit: from, to */
      readonly wanted: { readonly from: number; readonly to: number };
    }
);

/**
 * Fits every cup from a stock. Among classes that fit, the thickest whose bed stays in range for the whole
 * batch: a thick pad serves better than a thick bed. Where no class does that, the one with most room.
 *
 * @throws RangeError for a cup, pad or stock that is none
 */
export function fitPads(horn: Horn, cups: readonly CupToFit[], stock: PadStock): PadFit[] {
  checkStock(stock);
  return cups.map((cup) => fitPad(holeOf(horn, cup.pad), cup, stock));
}

function fitPad(hole: ToneHole, cup: CupToFit, stock: PadStock): PadFit {
  const { pad, floor } = cup;
  check(`cup floor of ${hole.name}`, floor);
  check(`pad diameter of ${hole.name}`, cup.padDiameter);
  const { bed, tolerance } = stock;
  const seat = cup.seat ?? stock.seat;
  const diameter = diameterFor(cup, stock);
  const bedFor = (thickness: number): number => floor + seat - thickness;
  const contact = (proud: number): ClosingContact =>
    closingContact(hole.hinge ?? PARALLEL, seatRadius(hole, diameter), proud);
  /** how far the bed stays inside its range */
  const room = (thickness: number): number =>
    Math.min(bedFor(thickness) - bed.least, bed.most - bedFor(thickness));
  const fitting = stock.thicknesses.filter((t) => room(t) >= -ROUNDING).sort((a, b) => b - a);
  const made = (thickness: number): FittedPad => ({ diameter, thickness, bed: bedFor(thickness) });
  if (fitting.length > 0) {
    const whole = fitting.find((t) => room(t) >= tolerance - ROUNDING);
    const chosen = whole ?? fitting.reduce((a, b) => (room(b) > room(a) ? b : a));
    return {
      pad,
      fits: true,
      choice: made(chosen),
      wholeBatch: whole !== undefined,
      thickest: contact(tolerance),
      thinnest: contact(-tolerance),
      others: fitting.filter((t) => t !== chosen).map(made),
    };
  }
  const clamped = (thickness: number): number => Math.min(bed.most, Math.max(bed.least, bedFor(thickness)));
  const over = (thickness: number): number => clamped(thickness) - bedFor(thickness);
  const nearest = stock.thicknesses.reduce((a, b) => (Math.abs(over(b)) < Math.abs(over(a)) ? b : a));
  return {
    pad,
    fits: false,
    nearest: { diameter, thickness: nearest, bed: clamped(nearest) },
    leftOver: over(nearest),
    contact: contact(over(nearest)),
    wanted: { from: floor + seat - bed.most, to: floor + seat - bed.least },
  };
}

const PARALLEL = { distance: Infinity, height: 0 };

/** m: thicknesses that differ by less are the same. */
const ROUNDING = 1e-9;

/** The largest size that goes into the cup, or the size nearest to the pad it has. */
function diameterFor({ cupDiameter, padDiameter }: CupToFit, { diameterStep, clearance }: PadStock): number {
  if (cupDiameter === undefined) return Math.round(padDiameter / diameterStep) * diameterStep;
  return Math.floor((cupDiameter - clearance + ROUNDING) / diameterStep) * diameterStep;
}

function seatRadius({ holeRadius, rimThickness }: ToneHole, diameter: number): number {
  return Math.min(diameter / 2, holeRadius + rimThickness);
}

function check(name: string, value: number): void {
  if (!(value > 0 && value < Infinity))
    throw new RangeError(`invalid ${name}: ${value * 1000} mm; expected more than 0 mm`);
}

function checkStock({ thicknesses, tolerance, diameterStep, bed }: PadStock): void {
  if (thicknesses.length === 0) throw new RangeError('invalid stock: no thickness; expected one at least');
  thicknesses.forEach((t) => check('pad thickness in stock', t));
  check('step of pad diameters', diameterStep);
  if (!(tolerance >= 0))
    throw new RangeError(`invalid pad tolerance: ${tolerance * 1000} mm; expected 0 mm or more`);
  if (!(bed.least >= 0 && bed.most >= bed.least))
    throw new RangeError(
      `invalid adhesive bed: ${bed.least * 1000} to ${bed.most * 1000} mm; expected a range from 0 mm up`,
    );
}

/** One line of an order: so many pads of a size and thickness. Metres. */
export interface OrderLine {
  readonly diameter: number;
  readonly thickness: number;
  readonly pads: readonly string[];
}

/** What to order, by size and thickness, large pads first; cups that nothing fits are left out. */
export function orderPads(fits: readonly PadFit[]): OrderLine[] {
  const lines = new Map<string, OrderLine & { readonly pads: string[] }>();
  for (const fit of fits) {
    if (!fit.fits) continue;
    const { diameter, thickness } = fit.choice;
    const name = `${Math.round(diameter * 1e6)} ${Math.round(thickness * 1e6)}`;
    const line = lines.get(name) ?? { diameter, thickness, pads: [] };
    line.pads.push(fit.pad);
    lines.set(name, line);
  }
  return [...lines.values()].sort((a, b) => b.diameter - a.diameter || b.thickness - a.thickness);
}
