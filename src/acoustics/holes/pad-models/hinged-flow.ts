import { dual, expOf, over, plus, times, type Dual } from '../../numerics/dual.ts';
import {
  bodyTerm,
  openLength,
  padTerm,
  parallelTerm,
  shapeWithin,
  slitLength,
  tiltExponent,
  type GapShape,
} from '../pad-gap/end-length-terms.ts';
import { rangeWarnings } from '../pad-gap/range-warnings.ts';
import {
  makePadEnd,
  type MovingPad,
  type PadEnd,
  type PadLengths,
  type PadModel,
  type PadOverHole,
} from './pad-model.ts';

/**
 * A pad that swings about its rod, or stays parallel, from our own solved flows.
 *
 *   length = b·(N + G e^T + B)     → pad-gap/end-length-terms.ts
 *
 * `length` falls steadily as the pad rises, from the thin slit's b² ln(r₂/b)/(2h) towards `noPadLength`. The
 * cup and the pad's resonator are left out: on an open hole a resonator changes nothing measurable (Eveno et
 * al. 2015), and a cup is part of the pad's thickness.
 *
 * **Source:** our own solved flows → datasets/pad-gap; Eveno et al. 2015 (abstract read).
 * **Holds for:** wavelengths much longer than the hole is wide; centre height 0.03–2, pad radius 1.03–1.5, rim
 * 0.03–0.35, rod height −0.5…1, pad thickness 0.1–1.5 (fitted to 0.5), body from 0.2 below, all in hole radii, rod at least
 * 0.03 beyond the pad's edge. Errors of fit and flows: notes/physics/hinged-pad.md. Outside it goes on smoothly
 * and warns.
 */
export const hingedFlow: PadModel = Object.freeze({
  id: 'hinged-flow',
  name: 'Solved flow under a hinged pad',
  source: 'our own solved flows, datasets/pad-gap',
  // Flow and fit are good to 1 % of the whole end length; the rest is our estimate for what a real key adds to
  // a plain disc over a free chimney: cup, resonator, the body's curve.
  relativeError: 0.05,
  endOf,
});

function endOf(pad: PadOverHole): PadEnd {
  return makePadEnd(pad, lengthsOf, {
    equivalentParallel: () => equivalentParallel(pad),
    warnings: () => rangeWarnings(pad),
  });
}

/** The shape in hole radii, as it moves. */
function shapeOf(pad: MovingPad): GapShape {
  const b = pad.holeRadius;
  const radii = (x: Dual): Dual => (x.value === Infinity ? dual(Infinity) : over(x, b));
  return {
    rim: radii(pad.rimThickness),
    pad: radii(pad.padRadius),
    thick: radii(pad.padThickness),
    hinge: radii(pad.hingeDistance),
    rod: radii(pad.hingeHeight),
    body: radii(pad.bodyBelow),
  };
}

function lengthsOf(pad: MovingPad): PadLengths<Dual> {
  const b = pad.holeRadius;
  const given = shapeOf(pad);
  const shape = shapeWithin(given);
  const free = plus(openLength(given.rim), bodyTerm(shape, dual(Infinity)));
  const noPadLength = times(b, free);
  if (pad.centreHeight.value === Infinity) return { length: noPadLength, noPadLength, gapShare: dual(0) };
  const height = over(pad.centreHeight, b);
  const length = times(b, plus(free, padTerm(shape, height)));
  // The thin slit's length, raised as the tilt raises the pad's share, and never more than that share.
  const whole = parallelTerm(shape, height);
  const slit = slitLength(shape, height);
  const narrow = slit.value < whole.value ? slit : whole;
  return { length, noPadLength, gapShare: times(b, times(narrow, expOf(tiltExponent(shape, height)))) };
}

/** Height at which a parallel pad adds as much, m, by Newton's method on logarithms inside a shrinking bracket. */
function equivalentParallel(pad: PadOverHole): number {
  if (pad.hingeDistance === Infinity || !(pad.centreHeight > 0)) return pad.centreHeight;
  const still = shapeWithin(
    shapeOf({
      holeRadius: dual(pad.holeRadius),
      rimThickness: dual(pad.rimThickness),
      padRadius: dual(pad.padRadius),
      padThickness: dual(pad.padThickness),
      hingeDistance: dual(pad.hingeDistance),
      hingeHeight: dual(pad.hingeHeight),
      centreHeight: dual(pad.centreHeight),
      bodyBelow: dual(pad.bodyBelow ?? Infinity),
    }),
  );
  const start = pad.centreHeight / pad.holeRadius;
  const added = padTerm(still, dual(start)).value;
  const parallel: GapShape = { ...still, hinge: dual(Infinity) };
  let low = -30;
  let high = 30;
  let x = Math.log(start);
  for (let pass = 0; pass < 80; pass++) {
    const height = Math.exp(x);
    const { value, slope } = padTerm(parallel, dual(height, 1));
    const miss = Math.log(value / added);
    if (Math.abs(miss) < 1e-13) break;
    if (miss > 0) low = x;
    else high = x;
    const next = x - (miss * value) / (slope * height);
    const moved = next > low && next < high ? next : (low + high) / 2;
    if (Math.abs(moved - x) < 1e-14 * Math.max(1, Math.abs(x))) break;
    x = moved;
  }
  return pad.holeRadius * Math.exp(x);
}
