import type { Complex } from '../numerics/complex.ts';
import type { OnePort } from '../two-port.ts';
import { holeTermsAt, makeHoleMotion, makeHoleTerms, writeHoleSlope, type HoleTerms } from './hole-terms.ts';
import type { HoleTube } from './hole-tube.ts';
import { writeLeakMotion } from './leak-terms.ts';

const terms = makeHoleTerms();
const perHz = makeHoleMotion();

/**
 * Shunt admittance of a hole 1/Z_s, open or closed, in Pa⁻¹·s⁻¹·m³, with its slope.
 *
 * The chimney is a lossy tube of length l = t + t_m. Open, it ends in the lumped impedance
 * jωρ·endLength/S_h + ρck²/4π: an inertance, and the radiation resistance of a source small against the
 * wavelength in free space; the thin gap adds its friction, loud playing a resistance of its own. Closed, it ends in
 * nothing, or in the slit of a leak and that radiation resistance, written as an admittance so that a leak of no
 * width is a closed hole. Writing the end as a length inside tan(k·length)
 * instead would put a false resonance into a nearly closed hole; the two agree to third order in k·length. The formulas
 * stand in {@link HoleTerms}.
 *
 * **Source:** Keefe 1990, JASA 88, 35; Dalmont et al. 2002, Acta Acustica 88, 567; radiation resistance of
 * a monopole, Pierce, Acoustics, ch. 4 (all from memory).
 * **Holds for:** holes small against the wavelength (kb < 0.5).
 *
 * @param f     Hz
 * @param out   Y_s and dY_s/df
 * @param extra Pa·s/m, what stands outside the opening besides, times S_h; taken as constant in the slope
 */
export function holeAdmittanceAt(
  tube: HoleTube,
  f: number,
  out: OnePort,
  withSlope: boolean,
  extra?: Complex,
): void {
  holeTermsAt(tube, f, terms, withSlope, extra);
  out[0] = tube.area * terms.ends[10];
  out[1] = tube.area * terms.ends[11];
  if (!withSlope) return;
  setPerHz(tube, f, terms);
  writeHoleSlope(tube, terms, perHz, out, 2);
}

/** What a Hz more moves. */
function setPerHz(tube: HoleTube, f: number, { perMetre, friction, leak }: HoleTerms): void {
  for (let i = 0; i < 4; i++) perHz[i] = perMetre[4 + i] * tube.length;
  // Friction's K goes as √f in ln u: half its slope.
  perHz[4] = 2 * tube.radiationPerHz2 * f - tube.gapPerHz * (friction[1] + 0.5 * friction[3]);
  perHz[5] = tube.endPerHz + tube.gapPerHz * (friction[0] + 0.5 * friction[2]);
  perHz[6] = tube.innerPerHz;
  // u goes as √f.
  if (tube.leak !== null) {
    writeLeakMotion(leak, { log: -1 / f, friction: 0.5 / f, radius: 0, radiation: 2 / f }, perHz, 4);
  }
}

/**
 * Chimney two-port of an open hole, as velocities: (p, v) at the bore from (p, v) at the rim plane.
 *
 *   p = χ p_o + zσ v_o + jωρt_i·v,  v = yσ p_o + χ v_o
 */
export interface ChimneyLine {
  /** χ */
  readonly ch: Complex;
  /** zσ */
  readonly zs: Complex;
  /** yσ */
  readonly ys: Complex;
  /** ωρt_i, imaginary part of the inner impedance times S_h */
  readonly inner: number;
  /** Z_e·S_h: what ends the chimney */
  readonly end: Complex;
}

/** The chimney of an open hole taken apart, for what happens outside it. */
export function chimneyLineAt(tube: HoleTube, f: number): ChimneyLine {
  holeTermsAt(tube, f, terms, false, undefined);
  const { chimney, ends } = terms;
  return {
    ch: { re: chimney[8], im: chimney[9] },
    zs: { re: ends[13], im: ends[14] },
    ys: { re: ends[0], im: ends[1] },
    inner: ends[12],
    end: { re: ends[2], im: ends[3] },
  };
}
