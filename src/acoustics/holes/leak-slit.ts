import type { Air } from '../air/air.ts';
import { gapFrictionAt, type GapFriction } from './pad-gap/gap-viscosity.ts';
import { gapStretches, type GapStretch, type SeatGap } from './leak-gap.ts';

/**
 * Sound through the gap that a shut pad leaves.
 *
 *        pad  ▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔      The air crosses the rim from b to r₂ = min(d, b + w), between two
 *                    g ↕    →        walls so near that it rubs (K, pad-gap/gap-viscosity.ts). On the way in
 *        bore  │ chimney ▐▔▔▔▌       it turns the corner from the chimney, on the way out it spreads from a
 *              b ─▶      b   r₂      thin ring-shaped mouth: two end corrections that grow as ln 1/g.
 *
 *   stretch of the ring, width dφ    dY = g dφ/(jωρ[KΛ + g E]),   Λ = ln(r₂/b)
 *   within and without               E = (2/πb)(ln(b/g) − 0.7104) + (1/πr₂)(ln(r₂/g) + ln(1 + o/g) + 2.5)
 *
 * o = |d − b − w| is the step between pad edge and outer rim. All stretches hear one pressure in the chimney:
 * a leak's impedance is far above what it costs the air to cross the hole. (For an open pad that is not so,
 * and adding up the ring would be wrong.) Slow or narrow, K → 12η/(jωρg²), and a whole ring becomes
 * Δp = 6ηQ ln(r₂/b)/(πg³). The gap's own volume is left out: it is a thousandth of the chimney's.
 *
 * **Source:** K as in gap-viscosity.ts; both end corrections ours (notes/physics/regulation.md): their
 * logarithms and the corner's constant derived, the mouth's constant taken from our solved flows.
 * **Holds for:** gaps up to {@link WIDEST_LEAK} hole radii: at 0.02 to 0.1 the end length is within −2…+4 % of
 * our solved flows of a parallel pad.
 */
export interface LeakSlit {
  /** b, m */
  readonly holeRadius: number;
  /** r₂, m */
  readonly outerRadius: number;
  /** dr₂/db: 1 where the rim ends the slit, 0 where the pad's edge does */
  readonly outerFollows: 0 | 1;
  /** o, m, and how it moves with the hole's radius */
  readonly step: number;
  readonly stepPerRadius: -1 | 0 | 1;
  readonly stretches: readonly GapStretch[];
}

/** m: below this a gap counts as shut. The whole ring would let through less than 1e-13 of what a chimney takes up. */
const SHUT_BELOW = 1e-9;

/** Hole radii: up to here the gap is a leak; above it is an opening, and the pad models serve. */
export const WIDEST_LEAK = 0.1;

/** What a leak's admittance may err by, as a share: our solved flows of a parallel pad differ by −2…+4 %. */
export const LEAK_ERROR = 0.04;

/** The corner inside: 1 − ln 4 + Σ(π/j₁ₙ − 1/n), j₁ₙ the zeros of J₁. */
const CORNER = -0.7104;

/** The mouth outside: mean over solved flows, 2.2 to 2.7. */
const MOUTH = 2.5;

/** Makes the slit of a leak. @param padRadius d, m; Infinity where the pad is known to end with the rim */
export function makeLeakSlit(
  hole: { readonly holeRadius: number; readonly rimThickness: number },
  padRadius: number,
  gap: SeatGap,
): LeakSlit {
  const { holeRadius, rimThickness } = hole;
  if (!(padRadius > holeRadius)) {
    throw new RangeError(
      `invalid pad radius: ${padRadius * 1000} mm; expected more than the hole's, ${holeRadius * 1000} mm`,
    );
  }
  const rim = holeRadius + rimThickness;
  return {
    holeRadius,
    outerRadius: Math.min(padRadius, rim),
    outerFollows: rim <= padRadius ? 1 : 0,
    step: padRadius === Infinity ? 0 : Math.abs(padRadius - rim),
    stepPerRadius: padRadius === Infinity ? 0 : rim <= padRadius ? -1 : 1,
    stretches: gapStretches(gap).filter((s) => s.gap > SHUT_BELOW),
  };
}

/**
 * Where {@link leakAdmittanceAt} writes: Y (0, 1), its slope in ln u with the rest held (2, 3), its slope in
 * hole radius (4, 5), re and im, m³/(Pa·s). u is that of the friction: ln u grows by half of ln(fρ/η).
 */
export type LeakAdmittance = Float64Array;

const friction: GapFriction = new Float64Array(4);

/**
 * Admittance of a leak from the chimney's end to the open air, radiation resistance left out.
 *
 * @param f Hz, > 0
 */
export function leakAdmittanceAt(slit: LeakSlit, f: number, air: Air, out: LeakAdmittance): void {
  const { holeRadius: b, outerRadius: r2, outerFollows, step, stepPerRadius, stretches } = slit;
  const lambda = Math.log(r2 / b);
  const lambdaPerRadius = outerFollows / r2 - 1 / b;
  const perInertance = 1 / (2 * Math.PI * f * air.density);
  out.fill(0, 0, 6);
  for (const { gap, width } of stretches) {
    gapFrictionAt(f, gap, air, friction);
    const inner = (2 / (Math.PI * b)) * (Math.log(b / gap) + CORNER);
    const outer = (Math.log(r2 / gap) + Math.log1p(step / gap) + MOUTH) / (Math.PI * r2);
    // D = KΛ + gE; its reciprocal, and t = −j·width·g/(ωρD).
    const dRe = (1 + friction[0]) * lambda + gap * (inner + outer);
    const dIm = friction[1] * lambda;
    const norm = dRe * dRe + dIm * dIm;
    const iRe = dRe / norm;
    const iIm = -dIm / norm;
    const size = width * gap * perInertance;
    const tRe = size * iIm;
    const tIm = -size * iRe;
    out[0] += tRe;
    out[1] += tIm;
    // dt = −t·dD/D
    const sRe = -(tRe * iRe - tIm * iIm);
    const sIm = -(tRe * iIm + tIm * iRe);
    out[2] += lambda * (sRe * friction[2] - sIm * friction[3]);
    out[3] += lambda * (sRe * friction[3] + sIm * friction[2]);
    const innerPerRadius = (2 / (Math.PI * b) - inner) / b;
    const outerPerRadius =
      (outerFollows * (1 / (Math.PI * r2) - outer)) / r2 + stepPerRadius / ((gap + step) * Math.PI * r2);
    const endsPerRadius = gap * (innerPerRadius + outerPerRadius);
    const radRe = (1 + friction[0]) * lambdaPerRadius + endsPerRadius;
    const radIm = friction[1] * lambdaPerRadius;
    out[4] += sRe * radRe - sIm * radIm;
    out[5] += sRe * radIm + sIm * radRe;
  }
}
