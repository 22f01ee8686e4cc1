import { dual, linear, over, plus, times, type Dual } from '../../numerics/dual.ts';
import { lnOuterEnd, publishedOpenLength, publishedParallelPad } from '../pad-gap/published-parallel.ts';
import {
  makePadEnd,
  type MovingPad,
  type PadEnd,
  type PadLengths,
  type PadModel,
  type PadOverHole,
} from './pad-model.ts';

/**
 * The published fit for a parallel pad, taken at the height of the pad's centre.
 *
 *   ℓ/b = (flange of the rim) + 1/[3.5(h/b)^0.8 (h/b + 3w/b)^−0.4 + 30(h/d)^2.6]
 *
 * **Source:** Dalmont, Nederveen & Joly 2001, J. Sound Vib. 244, 505 (from memory).
 * **Holds for:** a parallel pad that overhangs the outer rim, h/b ≥ 0.15: within −5…+3 % of our solved flow,
 * 1 % rms. It comes out up to 19 % high where the pad is smaller than the rim, up to 18 % low below h/b = 0.15,
 * far off where both meet, and knows nothing of tilt (notes/physics/hinged-pad.md).
 */
export const publishedParallelFit: PadModel = Object.freeze({
  id: 'published-parallel-fit',
  name: 'Published fit for a parallel pad, at the pad’s centre',
  source: 'Dalmont, Nederveen & Joly 2001',
  // 5 % of the whole is some 15 % of the pad's part; smaller pads and tilt are told by warnings.
  relativeError: 0.15,
  endOf,
});

function endOf(pad: PadOverHole): PadEnd {
  return makePadEnd(pad, lengthsOf, {
    equivalentParallel: () => pad.centreHeight,
    warnings: () => warningsFor(pad),
  });
}

function lengthsOf(pad: MovingPad): PadLengths<Dual> {
  const b = pad.holeRadius;
  const rim = over(pad.rimThickness, b);
  const noPadLength = times(b, publishedOpenLength(rim));
  if (pad.centreHeight.value === Infinity) return { length: noPadLength, noPadLength, gapShare: dual(0) };
  const height = over(pad.centreHeight, b);
  const wide = over(pad.padRadius, b);
  const added = times(b, publishedParallelPad(height, rim, wide));
  const slit = times(b, over(linear(lnOuterEnd(rim, wide), 0.5), height));
  return {
    length: plus(noPadLength, added),
    noPadLength,
    gapShare: slit.value < added.value ? slit : added,
  };
}

function warningsFor(pad: PadOverHole): string[] {
  const { holeRadius: b, rimThickness: w, padRadius: d, centreHeight: h } = pad;
  const warnings: string[] = [];
  if (h < 0.15 * b) {
    warnings.push(
      `The opening at the pad’s centre, ${mm(h)} mm, is under 0.15 of the hole’s radius (${mm(b)} mm): ` +
        'the published fit can be up to 18 % off there, more where the pad is smaller than the rim.',
    );
  }
  if (d < b + w) {
    warnings.push(
      `The pad (${mm(2 * d)} mm across) is smaller than the outer rim (${mm(2 * (b + w))} mm): ` +
        'the published fit comes out up to 19 % high.',
    );
  }
  if (pad.hingeDistance !== Infinity) {
    warnings.push(
      'The published fit knows parallel pads only; this pad’s tilt is counted by its centre height alone.',
    );
  }
  if (pad.bodyBelow !== undefined) {
    warnings.push(
      `The body ${mm(pad.bodyBelow)} mm below the rim is left out by the published fit; it adds up to 15 % where it is near.`,
    );
  }
  return warnings;
}

function mm(metres: number): string {
  return (metres * 1000).toFixed(2).replace(/\.?0+$/, '');
}
