import { all, create, type Complex, type Matrix } from 'mathjs';
import type { Network } from '../../src/acoustics/index.ts';
import { published } from '../published/published-values.ts';

/**
 * The whole chain once more, slowly and by other routes, in mathjs complex matrices:
 *
 *   Bessel ratio   backward continued fraction at every argument (the core: a series in 1/s for thin layers)
 *   cone           outgoing and incoming spherical waves, M = W(x₁)·W(x₂)⁻¹ (the core: entire functions of Z'Y'L²)
 *   hole           impedances in series and parallel with tanh (the core: one admittance quotient)
 *   corrections    evaluated from the published coefficients
 *
 * Only geometry, air and the pad's lengths are taken from the network.
 */
const m = create(all, {});
type Number_ = Complex | number;
const times = (...x: Number_[]): Complex => x.reduce((a, b) => m.multiply(a, b) as Number_) as Complex;
const plus = (...x: Number_[]): Complex => x.reduce((a, b) => m.add(a, b) as Number_) as Complex;
const over = (a: Number_, b: Number_): Complex => m.divide(a, b) as Complex;
const minus = (a: Number_, b: Number_): Complex => m.subtract(a, b) as Complex;
const functions = {
  exp: (x: Complex) => m.exp(x) as Number_,
  sqrt: (x: Complex) => m.sqrt(x) as Number_,
  tanh: (x: Complex) => m.tanh(x) as Number_,
};
const fn = (f: keyof typeof functions, x: Number_): Complex => functions[f](x as Complex) as Complex;
const j = m.complex(0, 1);
const matrix = (rows: Number_[][]): Matrix => m.matrix(rows as never) as Matrix;

interface Gas {
  readonly soundSpeed: number;
  readonly density: number;
  readonly viscosity: number;
  readonly heatRatio: number;
  readonly prandtlRoot: number;
}

/** F(x) = 2J₁(x)/(xJ₀(x)) at x = s·√(−j). */
function lossFunction(s: number): Complex {
  const x = times(s, fn('sqrt', m.complex(0, -1)));
  let ratio: Complex = m.complex(0, 0);
  for (let n = Math.ceil(s) + 60; n >= 1; n--) ratio = over(1, minus(over(2 * n, x), ratio));
  return over(times(2, ratio), x);
}

function walls(r: number, omega: number, gas: Gas): { gamma: Complex; z: Complex } {
  const rv = r * Math.sqrt((gas.density * omega) / gas.viscosity);
  const series = over(times(j, omega * gas.density), minus(1, lossFunction(rv)));
  const shunt = times(
    j,
    omega / (gas.density * gas.soundSpeed ** 2),
    plus(1, times(gas.heatRatio - 1, lossFunction(gas.prandtlRoot * rv))),
  );
  const gamma = fn('sqrt', times(series, shunt));
  return { gamma, z: over(series, gamma) };
}

function bore(length: number, r1: number, r2: number, omega: number, gas: Gas): Matrix {
  const straight = Math.abs(r2 / r1 - 1) < 1e-9;
  const { gamma, z } = walls(straight ? r1 : (r2 - r1) / Math.log(r2 / r1), omega, gas);
  const out = (x: number): Complex => fn('exp', times(-x, gamma));
  const back = (x: number): Complex => fn('exp', times(x, gamma));
  const waves = (at: number): Matrix => {
    if (straight) {
      const y = over(Math.PI * r1 * r1, z);
      return matrix([
        [out(at), back(at)],
        [times(y, out(at)), times(-1, y, back(at))],
      ]);
    }
    // p = (a·e^{−Γx} + b·e^{Γx})/x and u = −(σx²/Γz)·dp/dx, exponents counted from the small end.
    const x1 = (r1 * length) / (r2 - r1);
    const x = x1 + at;
    const flow = over(Math.PI * (r1 / x1) ** 2, times(gamma, z));
    return matrix([
      [over(out(at), x), over(back(at), x)],
      [times(flow, plus(times(gamma, x), 1), out(at)), times(flow, minus(1, times(gamma, x)), back(at))],
    ]);
  };
  return m.multiply(waves(0), m.inv(waves(length))) as Matrix;
}

/** What friction adds to the length that lies in a thin gap: share·(1/(1 − tanh u/u) − 1), u = (g/2)√(jωρ/η). */
function rubbing(
  gap: { readonly share: number; readonly opening: number } | undefined,
  omega: number,
  air: { readonly density: number; readonly viscosity: number },
): Complex {
  if (gap === undefined) return m.complex(0, 0);
  const u = times(gap.opening / 2, fn('sqrt', m.complex(0, (omega * air.density) / air.viscosity)));
  return times(gap.share, minus(over(1, minus(1, over(fn('tanh', u), u))), 1));
}

const polynomial = (c: readonly number[], x: number): number => c.reduceRight((s, a) => s * x + a, 0);

/** Input impedance, bare mouthpiece tip, Pa·s/m³. */
export function slowImpedance(network: Network, f: number): { re: number; im: number } {
  const omega = 2 * Math.PI * f;
  const inner = published<{ coefficients: number[] }>('lefebvre-scavone-2012/inner-length');
  const matching = published<{ divisor: number; c: number }>('nederveen-1998/matching-length');
  const ends = published<Record<'open' | 'closed', { level: number; rise: number; rate: number }>>(
    'lefebvre-scavone-2012/series-length',
  );
  let product: Matrix = matrix([
    [1, 0],
    [0, 1],
  ]);
  for (const e of network.elements) {
    let next: Matrix;
    if (e.kind === 'bore') {
      next = bore(e.piece.length, e.piece.r1, e.piece.r2, omega, e.piece.air);
    } else if (e.kind === 'volume') {
      next = matrix([
        [1, 0],
        [m.complex(0, omega * e.compliance), 1],
      ]);
    } else {
      const { boreRadius: a, holeRadius: b, chimney: t } = e.hole;
      const d = b / a;
      const area = Math.PI * b * b;
      const { gamma, z } = walls(b, omega, e.air);
      const zc = over(z, area);
      const tube = fn('tanh', times(gamma, t + ((b * d) / matching.divisor) * (1 + matching.c * d ** 3)));
      let below: Complex;
      if (e.end.endLength === Infinity) below = over(zc, tube);
      else {
        const k = omega / e.air.soundSpeed;
        const inertance = m.complex(0, (omega * e.air.density) / area);
        const end = plus(
          (e.air.density * e.air.soundSpeed * k * k) / (4 * Math.PI),
          times(inertance, plus(e.end.endLength, rubbing(e.end.gap, omega, e.air))),
        );
        below = times(zc, over(plus(end, times(zc, tube)), plus(zc, times(end, tube))));
      }
      const shunt = plus(
        m.complex(0, (omega * e.air.density * b * polynomial(inner.coefficients, d)) / area),
        below,
      );
      const lengthOf = ({ level, rise, rate }: { level: number; rise: number; rate: number }): number =>
        -b * d * d * (level + rise * Math.tanh((rate * t) / b));
      const ta = lengthOf(ends.closed) + e.end.ventShare * (lengthOf(ends.open) - lengthOf(ends.closed));
      const half = matrix([
        [1, m.complex(0, (omega * e.air.density * ta) / (2 * Math.PI * a * a))],
        [0, 1],
      ]);
      next = m.multiply(m.multiply(half, matrix([[1, 0], [over(1, shunt), 1]])), half) as Matrix; // prettier-ignore
    }
    product = m.multiply(product, next) as Matrix;
  }
  const gas = network.bellAir;
  const a = network.bellRadius;
  const x = ((omega / gas.soundSpeed) * a) ** 2;
  const modulus = (1 + 0.8 * x) / (1 + 1.3 * x + 0.266 * x ** 2 + 0.0263 * x ** 3);
  const length =
    (0.6133 * a * (1 + 0.0599 * x)) / (1 + 0.238 * x - 0.0153 * x ** 2 + 0.0015 * x ** 3) +
    network.bellCorrection;
  // (1 + R)/(1 − R) with R = −|R|e^{−2jkℓ} is tanh(jkℓ − ½ln|R|).
  const bell = times(
    (gas.density * gas.soundSpeed) / (Math.PI * a * a),
    fn('tanh', m.complex(-0.5 * Math.log(modulus), (omega / gas.soundSpeed) * length)),
  );
  const state = m.multiply(product, matrix([[bell], [1]])) as Matrix;
  const answer = over(state.get([0, 0]) as Complex, state.get([1, 0]) as Complex);
  return { re: answer.re, im: answer.im };
}
