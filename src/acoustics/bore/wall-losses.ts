import type { Air } from '../air/air.ts';
import { besselRatioAt, HANKEL_COEFFICIENTS, HANKEL_TERMS } from '../numerics/bessel-ratio.ts';

/**
 * Viscous and thermal layers in a round tube, in the exact form.
 *
 *   Z'·S = jωρ·P,   P = 1/(1 − F(x_v))          series impedance per length
 *   Y'/S = (jω/ρc²)·y,  y = 1 + (γ−1)F(x_t)      shunt admittance per length
 *   F(x) = 2J₁(x)/(x J₀(x)),  x = s·e^{−jπ/4},  s_v = r√(ρω/η),  s_t = ν s_v
 *   Γ = √(Z'Y'),  Z_c·S = z = √(Z'S·S/Y')        both with positive real part
 *
 * **Source:** Zwikker & Kosten 1949; Keefe 1984, JASA 75, 58 (from memory, confirmed by the exact values in
 * the tests). The slopes are ours, from Bessel's equation.
 * **Holds for:** any radius below the first cross mode.
 */
export interface Walls {
  /** r, m */
  readonly radius: number;
  readonly air: Air;
  /** s_v/√f */
  readonly layersPerRootHz: number;
  /** 2πρ */
  readonly inertancePerHz: number;
  /** 2π/ρc² */
  readonly compliancePerHz: number;
}

/**
 * Makes a round tube's walls ready to compute.
 *
 * @param radius r, m, > 0
 */
export function makeWalls(radius: number, air: Air): Walls {
  const { density, soundSpeed, viscosity } = air;
  return {
    radius,
    air,
    layersPerRootHz: radius * Math.sqrt((2 * Math.PI * density) / viscosity),
    inertancePerHz: 2 * Math.PI * density,
    compliancePerHz: (2 * Math.PI) / (density * soundSpeed * soundSpeed),
  };
}

/**
 * Where {@link lineTermsAt} writes: complex numbers as re, im pairs.
 *
 *   0, 1  Z'·S      series impedance per length times area, Pa·s/m²
 *   2, 3  Y'/S      shunt admittance per length over area, 1/(Pa·s)
 *   4, 5  d(Z'S)/df     6, 7  d(Y'/S)/df
 */
export type LineTerms = Float64Array;

/** Room for one tube's line terms. */
export function makeLineTerms(): LineTerms {
  return new Float64Array(8);
}

/**
 * Above this s_v the layers are thin against the tube, and P and y are plain power series in 1/s:
 * the Hankel expansion of F, put through 1/(1 − F) once and for all. The terms kept bound the error at
 * 1e-15; the exact route serves below.
 */
const THIN_FROM = 32;

/** Coefficients of F and of P in powers of 1/s: re F, im F, re P, im P for each power. */
const SERIES = makeSeries();

function makeSeries(): Float64Array {
  const out = new Float64Array(4 * (HANKEL_TERMS + 1));
  out[2] = 1;
  for (let n = 1; n <= HANKEL_TERMS; n++) {
    // F = 2g/x and 1/x = e^{jπ/4}/s.
    const bRe = HANKEL_COEFFICIENTS[2 * n - 2];
    const bIm = HANKEL_COEFFICIENTS[2 * n - 1];
    out[4 * n] = Math.SQRT2 * (bRe - bIm);
    out[4 * n + 1] = Math.SQRT2 * (bRe + bIm);
    // P(1 − F) = 1, power by power.
    for (let i = 1; i <= n; i++) {
      const j = n - i;
      out[4 * n + 2] += out[4 * i] * out[4 * j + 2] - out[4 * i + 1] * out[4 * j + 3];
      out[4 * n + 3] += out[4 * i] * out[4 * j + 3] + out[4 * i + 1] * out[4 * j + 2];
    }
  }
  return out;
}

/** How many powers of 1/s are needed for the next one to stay below 1e-15. */
function powersAt(s: number): number {
  if (s >= 128) return s >= 1000 ? 5 : s >= 320 ? 6 : 7;
  if (s >= 64) return 9;
  return s >= 48 ? 10 : 13;
}

/**
 * Writes a tube's line terms at a frequency.
 *
 * @param f   Hz, > 0
 * @param out see {@link LineTerms}
 */
export function lineTermsAt(walls: Walls, f: number, out: LineTerms, withSlope: boolean): void {
  const s = walls.layersPerRootHz * Math.sqrt(f);
  if (s < THIN_FROM) {
    thickLayers(walls, s, f, out, withSlope);
    return;
  }
  const { air } = walls;
  const heat = air.heatRatio - 1;
  const v = 1 / s;
  const t = v / air.prandtlRoot;
  const last = 4 * powersAt(s);
  let pRe = 0;
  let pIm = 0;
  let fRe = 0;
  let fIm = 0;
  for (let i = last; i > 0; i -= 4) {
    fRe = (fRe + SERIES[i]) * t;
    fIm = (fIm + SERIES[i + 1]) * t;
    pRe = (pRe + SERIES[i + 2]) * v;
    pIm = (pIm + SERIES[i + 3]) * v;
  }
  const inertance = walls.inertancePerHz * f;
  const compliance = walls.compliancePerHz * f;
  out[0] = -inertance * pIm;
  out[1] = inertance * (1 + pRe);
  out[2] = -compliance * heat * fIm;
  out[3] = compliance * (1 + heat * fRe);
  if (!withSlope) return;
  // f·d/df of s⁻ⁿ is −n/2·s⁻ⁿ.
  let dpRe = 0;
  let dpIm = 0;
  let dfRe = 0;
  let dfIm = 0;
  for (let i = last; i > 0; i -= 4) {
    const half = -i / 8;
    dfRe = (dfRe + half * SERIES[i]) * t;
    dfIm = (dfIm + half * SERIES[i + 1]) * t;
    dpRe = (dpRe + half * SERIES[i + 2]) * v;
    dpIm = (dpIm + half * SERIES[i + 3]) * v;
  }
  out[4] = -walls.inertancePerHz * (pIm + dpIm);
  out[5] = walls.inertancePerHz * (1 + pRe + dpRe);
  out[6] = -walls.compliancePerHz * heat * (fIm + dfIm);
  out[7] = walls.compliancePerHz * (1 + heat * (fRe + dfRe));
}

const g = new Float64Array(2);

/** The exact route: two Bessel ratios. ω·dF/dω = 1 + g² − F with g = J₁/J₀. */
function thickLayers(walls: Walls, s: number, f: number, out: LineTerms, withSlope: boolean): void {
  const { prandtlRoot, heatRatio } = walls.air;
  besselRatioAt(s, g);
  // F = 2g/x with 1/x = (1 + j)/(√2 s)
  const scaleV = Math.SQRT2 / s;
  const fvRe = scaleV * (g[0] - g[1]);
  const fvIm = scaleV * (g[0] + g[1]);
  const slopeV = 1 + g[0] * g[0] - g[1] * g[1] - fvRe;
  const slopeVIm = 2 * g[0] * g[1] - fvIm;
  const norm = (1 - fvRe) * (1 - fvRe) + fvIm * fvIm;
  const pRe = (1 - fvRe) / norm;
  const pIm = fvIm / norm;

  besselRatioAt(prandtlRoot * s, g);
  const scaleT = Math.SQRT2 / (prandtlRoot * s);
  const ftRe = scaleT * (g[0] - g[1]);
  const ftIm = scaleT * (g[0] + g[1]);
  const heat = heatRatio - 1;
  const yRe = 1 + heat * ftRe;
  const yIm = heat * ftIm;

  out[0] = -walls.inertancePerHz * f * pIm;
  out[1] = walls.inertancePerHz * f * pRe;
  out[2] = -walls.compliancePerHz * f * yIm;
  out[3] = walls.compliancePerHz * f * yRe;
  if (!withSlope) return;
  // ω dP/dω = P²·ω dF/dω
  const p2Re = pRe * pRe - pIm * pIm;
  const p2Im = 2 * pRe * pIm;
  const dpRe = p2Re * slopeV - p2Im * slopeVIm;
  const dpIm = p2Re * slopeVIm + p2Im * slopeV;
  const dyRe = heat * (1 + g[0] * g[0] - g[1] * g[1] - ftRe);
  const dyIm = heat * (2 * g[0] * g[1] - ftIm);
  out[4] = -walls.inertancePerHz * (pIm + dpIm);
  out[5] = walls.inertancePerHz * (pRe + dpRe);
  out[6] = -walls.compliancePerHz * (yIm + dyIm);
  out[7] = walls.compliancePerHz * (yRe + dyRe);
}

/**
 * Turns the slopes in a tube's line terms from per Hz into per metre of radius.
 *
 * P and y depend on f and r through s = r√f·const only, so r·∂P/∂r = 2f·∂P/∂f.
 *
 * @param line as {@link lineTermsAt} wrote it with slopes; 4…7 are overwritten
 */
export function turnSlopesToRadius(walls: Walls, f: number, line: LineTerms): void {
  for (let i = 0; i < 4; i++) line[i + 4] = (2 / walls.radius) * (f * line[i + 4] - line[i]);
}

/**
 * Turns the slopes in a tube's line terms from per Hz into per °C.
 *
 * @param logSlopes of the air, per °C
 * @param line      as {@link lineTermsAt} wrote it with slopes; 4…7 are overwritten
 */
export function turnSlopesToTemperature(walls: Walls, f: number, logSlopes: Air, line: LineTerms): void {
  const { density, soundSpeed, viscosity, prandtlRoot, heatRatio } = logSlopes;
  const sv = 0.5 * (density - viscosity);
  const st = sv + prandtlRoot;
  const compliance = walls.compliancePerHz * f;
  const stiffness = -density - 2 * soundSpeed;
  // y = 1 + (γ−1)F: what a change of γ alone does.
  const { heatRatio: gamma } = walls.air;
  const perGamma = (gamma * heatRatio) / (gamma - 1);
  for (let i = 0; i < 2; i++) {
    line[i + 4] = density * line[i] + 2 * sv * (f * line[i + 4] - line[i]);
    const plain = i === 1 ? compliance : 0;
    line[i + 6] =
      stiffness * line[i + 2] + 2 * st * (f * line[i + 6] - line[i + 2]) + perGamma * (line[i + 2] - plain);
  }
}

/**
 * Where {@link wallTermsAt} writes: complex numbers as re, im pairs.
 *
 *   0, 1  Γ        propagation constant, 1/m
 *   2, 3  z        specific characteristic impedance Z_c·S, Pa·s/m
 */
export type WallTerms = Float64Array;

/** Room for one piece's wall terms. */
export function makeWallTerms(): WallTerms {
  return new Float64Array(4);
}

const line = makeLineTerms();

/**
 * Propagation constant and characteristic impedance of a round tube.
 *
 * @param radius    r, m, > 0
 * @param frequency f, Hz, > 0
 * @param out       see {@link WallTerms}
 *
 * **Source:** as {@link Walls}.
 */
export function wallTermsAt(radius: number, frequency: number, air: Air, out: WallTerms): void {
  lineTermsAt(makeWalls(radius, air), frequency, line, false);
  const [zRe, zIm, yRe, yIm] = line;
  // Γ² = Z'Y' lies in the second quadrant, so Γ's imaginary part is safe to divide by.
  const wRe = zRe * yRe - zIm * yIm;
  const wIm = zRe * yIm + zIm * yRe;
  const gammaIm = Math.sqrt(0.5 * (Math.hypot(wRe, wIm) - wRe));
  const gammaRe = wIm / (2 * gammaIm);
  const norm = gammaRe * gammaRe + gammaIm * gammaIm;
  out[0] = gammaRe;
  out[1] = gammaIm;
  // z = Z'S/Γ
  out[2] = (zRe * gammaRe + zIm * gammaIm) / norm;
  out[3] = (zIm * gammaRe - zRe * gammaIm) / norm;
}
