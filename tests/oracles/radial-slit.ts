import { complex, divide, multiply, add, subtract, sqrt, tanh, type Complex } from 'mathjs';
import type { Air } from '../../src/acoustics/index.ts';

/** A ring-shaped slit, m. */
export interface RadialSlit {
  readonly gap: number;
  readonly inner: number;
  readonly outer: number;
}

const asComplex = (x: unknown): Complex => x as Complex;

/**
 * Impedance at the inner edge of a radial slit, by stepping outwards through the equations of a slit of local
 * width 2πr, its volume and the heat it loses included:
 *
 *   dp/dr = −jωρ/(2πrg(1 − F_v))·q     dq/dr = −jω·2πrg/(ρc²)·(1 + (γ − 1)F_t)·p,   F = tanh(u)/u
 *
 * Slow and plain on purpose: complex numbers of another library, a Riccati equation stepped by Runge–Kutta.
 *
 * @param load   impedance at the outer edge, Pa·s/m³
 * @param volume whether the slit's own volume counts
 */
export function radialSlitImpedance(
  slit: RadialSlit,
  f: number,
  air: Air,
  load: Complex,
  volume: boolean,
): Complex {
  const omega = 2 * Math.PI * f;
  const steps = 400;
  const { gap, inner, outer } = slit;
  const share = (perU: number): Complex => {
    const u = multiply(perU * (gap / 2), asComplex(sqrt(complex(0, (omega * air.density) / air.viscosity))));
    return asComplex(divide(tanh(asComplex(u)), u));
  };
  const rub = asComplex(subtract(1, share(1)));
  const heat = asComplex(add(1, multiply(air.heatRatio - 1, share(air.prandtlRoot))));
  // dZ/dr = −series + shunt·Z², from the outside in.
  const slope = (r: number, z: Complex): Complex => {
    const series = divide(complex(0, (omega * air.density) / (2 * Math.PI * r * gap)), rub);
    const shunt = multiply(
      complex(0, volume ? (omega * 2 * Math.PI * r * gap) / (air.density * air.soundSpeed ** 2) : 0),
      heat,
    );
    return asComplex(subtract(multiply(shunt, multiply(z, z)), series));
  };
  let z = load;
  const h = (inner - outer) / steps;
  for (let i = 0; i < steps; i++) {
    const r = outer + i * h;
    const k1 = slope(r, z);
    const k2 = slope(r + h / 2, asComplex(add(z, multiply(h / 2, k1))));
    const k3 = slope(r + h / 2, asComplex(add(z, multiply(h / 2, k2))));
    const k4 = slope(r + h, asComplex(add(z, multiply(h, k3))));
    const sum = add(add(k1, multiply(2, k2)), add(multiply(2, k3), k4));
    z = asComplex(add(z, multiply(h / 6, sum)));
  }
  return z;
}
