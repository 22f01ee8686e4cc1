import { flangedEndLength, flangedEndSlope } from '../../bore/open-end.ts';
import type { PadEnd, PadModel, PadOverHole } from './pad-model.ts';

/**
 * The published fit for a parallel pad, taken at the height of the pad's centre.
 *
 *   ℓ/b = (flange of the rim) + 1/[3.5(h/b)^0.8 (h/b + 3w/b)^−0.4 + 30(h/d)^2.6]
 *
 * **Source:** Dalmont, Nederveen & Joly 2001, J. Sound Vib. 244, 505 (from memory; independent finite
 * elements agree within about 2 % in its range).
 * **Holds for:** a parallel pad at least as wide as the outer rim, h/b ≥ 0.15. It comes out up to 12 % high
 * where the pad is smaller than the rim, up to 20 % off below h/b = 0.05, and knows nothing of tilt.
 */
export const publishedParallelFit: PadModel = Object.freeze({
  id: 'published-parallel-fit',
  name: 'Published fit for a parallel pad, at the pad’s centre',
  source: 'Dalmont, Nederveen & Joly 2001',
  // Up to 12 % for a parallel pad smaller than the rim; what tilt adds is our estimate.
  relativeError: 0.15,
  endOf,
});

function endOf(pad: PadOverHole): PadEnd {
  const { holeRadius: b, rimThickness: w, padRadius: d, centreHeight: h } = pad;
  const noPadLength = flangedEndLength(b, w);
  const warnings = warningsFor(pad);
  const noPadHoleRadiusSlope = flangedEndSlope(b, w);
  const shared = { noPadLength, noPadHoleRadiusSlope, padThicknessSlope: 0, equivalentParallel: h, warnings };
  // A rotation's rounding can leave a shut pad a hair below the rim.
  if (!(h > 0)) return { ...shared, length: Infinity, slope: -Infinity, holeRadiusSlope: 0 };
  const x = h / b;
  const rim = x + (3 * w) / b;
  const curtain = 3.5 * x ** 0.8 * rim ** -0.4;
  const free = 30 * (h / d) ** 2.6;
  const sum = curtain + free;
  const dSum = (curtain * (0.8 / x - 0.4 / rim) + (2.6 * free) / x) / b;
  return {
    ...shared,
    length: noPadLength + b / sum,
    slope: (-b * dSum) / (sum * sum),
    // With h and w held the curtain term goes as b^−0.4.
    holeRadiusSlope: noPadHoleRadiusSlope + 1 / sum + (0.4 * curtain) / (sum * sum),
  };
}

function warningsFor(pad: PadOverHole): string[] {
  const { holeRadius: b, rimThickness: w, padRadius: d, centreHeight: h } = pad;
  const warnings: string[] = [];
  if (h < 0.15 * b) {
    warnings.push(
      `The opening at the pad’s centre, ${mm(h)} mm, is under 0.15 of the hole’s radius (${mm(b)} mm): ` +
        'the published fit can be up to 20 % off there.',
    );
  }
  if (d < b + w) {
    warnings.push(
      `The pad (${mm(2 * d)} mm across) is smaller than the outer rim (${mm(2 * (b + w))} mm): ` +
        'the published fit comes out up to 12 % high.',
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
