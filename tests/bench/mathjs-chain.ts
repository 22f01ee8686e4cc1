import { all, create, type Complex, type Matrix } from 'mathjs';
import type { Chain, ChainAir, ChainBore, ChainHole } from './chain.ts';

const m = create(all, { predictable: false });
const add = (...terms: (Complex | number)[]): Complex =>
  terms.reduce((a, b) => m.add(a, b) as Complex) as Complex;
const mul = (...terms: (Complex | number)[]): Complex =>
  terms.reduce((a, b) => m.multiply(a, b) as Complex) as Complex;
const sub = (a: Complex | number, b: Complex | number): Complex => m.subtract(a, b) as Complex;
const div = (a: Complex | number, b: Complex | number): Complex => m.divide(a, b) as Complex;
const j = m.complex(0, 1);

/** J₁/J₀ at s·e^{−jπ/4}: the Hankel series in plain numbers above s = 26, Miller's recurrence below. */
function besselRatio(s: number): Complex {
  if (s >= 26) {
    let sum = HANKEL[HANKEL.length - 1];
    for (let k = HANKEL.length - 2; k >= 0; k--) sum = add(mul(sum, 1 / s), HANKEL[k]);
    return sum;
  }
  const inverse = div(m.complex(Math.SQRT1_2, Math.SQRT1_2), s);
  let g: Complex = m.complex(0, 0);
  for (let n = Math.ceil(s) + 24; n >= 1; n--) g = div(1, sub(mul(2 * n, inverse), g));
  return g;
}

const HANKEL: readonly Complex[] = makeHankel();

function makeHankel(): Complex[] {
  const a: Complex[] = [m.complex(0, -1)];
  for (let k = 1; k < 14; k++) {
    let sum = mul(2 - k, a[k - 1]);
    for (let i = 1; i < k; i++) sum = sub(sum, mul(a[i], a[k - i]));
    a.push(div(sum, mul(2, a[0])));
  }
  return a.map((c, k) => mul(c, m.exp(m.complex(0, (k * Math.PI) / 4)) as unknown as Complex));
}

function wallTerms(radius: number, f: number, air: ChainAir): { gamma: Complex; z: Complex } {
  const omega = 2 * Math.PI * f;
  const s = radius * Math.sqrt((air.density * omega) / air.viscosity);
  const loss = (at: number): Complex => mul(m.complex(Math.SQRT2 / at, Math.SQRT2 / at), besselRatio(at));
  const v = sub(1, loss(s));
  const y = add(1, mul(air.heatRatio - 1, loss(air.prandtlRoot * s)));
  const q = m.sqrt(div(y, v)) as unknown as Complex;
  return { gamma: mul(j, omega / air.soundSpeed, q), z: div(air.density * air.soundSpeed, mul(v, q)) };
}

const matrix = (a: Complex | number, b: Complex | number, c: Complex | number, d: Complex | number): Matrix =>
  m.matrix([
    [a, b],
    [c, d],
  ] as never);

function boreMatrix(e: ChainBore, f: number): Matrix {
  const { length, r1, r2 } = e;
  const ratio = r2 / r1 - 1;
  const rEq =
    Math.abs(ratio) < 1e-4 ? r1 * (1 + ratio / 2 - (ratio * ratio) / 12) : (r2 - r1) / Math.log(r2 / r1);
  const { gamma, z } = wallTerms(rEq, f, e.air);
  const s = mul(gamma, length);
  const sh = m.sinh(s) as unknown as Complex;
  const ch = m.cosh(s) as unknown as Complex;
  const m0 = div(sh, s);
  const m1 = div(sub(ch, m0), s);
  const t1 = (r2 - r1) / r1;
  const t2 = (r2 - r1) / r2;
  const area = Math.PI * r1 * r2;
  return matrix(
    sub(mul(r2 / r1, ch), mul(t1, m0)),
    div(mul(z, sh), area),
    mul(div(area, z), add(sh, mul(t1 * t2, m1))),
    add(mul(r1 / r2, ch), mul(t2, m0)),
  );
}

function holeMatrix(e: ChainHole, f: number): Matrix {
  const omega = 2 * Math.PI * f;
  const area = Math.PI * e.radius * e.radius;
  const { gamma, z } = wallTerms(e.radius, f, e.air);
  const t = m.tanh(mul(gamma, e.tube)) as unknown as Complex;
  let line = div(t, z);
  if (e.end !== null) {
    const resistance = (e.air.density * omega * omega * area) / (4 * Math.PI * e.air.soundSpeed);
    let end = m.complex(resistance, omega * e.air.density * e.end);
    if (e.gap > 0) {
      // Friction: the gap's share times 1/(1 − tanh u/u) − 1, u = (g/2)√(jωρ/η).
      const u = mul(e.gap / 2, m.sqrt(m.complex(0, (omega * e.air.density) / e.air.viscosity)) as Complex);
      const k = div(1, sub(1, div(m.tanh(u) as unknown as Complex, u)));
      end = add(end, mul(m.complex(0, omega * e.air.density * e.gapShare), sub(k, 1)));
    }
    line = div(add(z, mul(end, t)), mul(z, add(end, mul(z, t))));
  }
  const shunt = div(mul(area, line), add(1, mul(m.complex(0, omega * e.air.density * e.inner), line)));
  const series = matrix(1, m.complex(0, e.halfSeriesPerHz * f), 0, 1);
  return m.multiply(m.multiply(series, matrix(1, 0, shunt, 1)), series) as Matrix;
}

function bellImpedance(chain: Chain, f: number): Complex {
  const { bellAir: air, bellRadius: a } = chain;
  const k = (2 * Math.PI * f) / air.soundSpeed;
  const x = (k * a) ** 2;
  const modulus = (1 + 0.8 * x) / (1 + x * (1.3 + x * (0.266 + x * 0.0263)));
  const length =
    (0.6133 * a * (1 + 0.0599 * x)) / (1 + x * (0.238 + x * (-0.0153 + x * 0.0015))) + chain.bellCorrection;
  const r = mul(-modulus, m.exp(m.complex(0, -2 * k * length)) as unknown as Complex);
  return mul((air.density * air.soundSpeed) / (Math.PI * a * a), div(add(1, r), sub(1, r)));
}

/** Input impedance of a chain at one frequency as a product of mathjs complex matrices, Pa·s/m³. */
export function mathjsImpedance(chain: Chain, f: number): { re: number; im: number } {
  let product = matrix(1, 0, 0, 1);
  for (const e of chain.elements) {
    product = m.multiply(product, e.kind === 'bore' ? boreMatrix(e, f) : holeMatrix(e, f)) as Matrix;
  }
  const state = m.multiply(product, m.matrix([[bellImpedance(chain, f)], [1]] as never)) as Matrix;
  const z = div(state.get([0, 0]) as Complex, state.get([1, 0]) as Complex);
  return { re: z.re, im: z.im };
}
