/**
 * The unflanged pipe by Levine & Schwinger's own integrals, evaluated numerically from nothing but
 * integral representations and power series of Bessel functions. Independent of src.
 *
 *   |R| = exp{−(2ka/π) ∫₀^{ka} atan(−J₁/N₁) / (x√((ka)² − x²)) dx}
 *   ℓ/a = (1/π) ∫₀^{ka} log[πJ₁√(J₁² + N₁²)] / (x√((ka)² − x²)) dx
 *       + (1/π) ∫₀^∞ log[1/(2 I₁K₁)] / (x√(x² + (ka)²)) dx
 */

const EULER = 0.5772156649015329;

/** J₁(x) by its power series, x ≤ 5. */
export function besselJ1(x: number): number {
  let term = x / 2;
  let sum = term;
  for (let k = 1; k < 40; k++) {
    term *= -((x / 2) ** 2) / (k * (k + 1));
    sum += term;
  }
  return sum;
}

/** N₁(x) by its power series, 0 < x ≤ 5. */
export function besselN1(x: number): number {
  let harmonicK = 0;
  let term = x / 2;
  let sum = 0;
  for (let k = 0; k < 40; k++) {
    if (k > 0) {
      harmonicK += 1 / k;
      term *= -((x / 2) ** 2) / (k * (k + 1));
    }
    // ψ(k+1) + ψ(k+2) = −2γ + 2H_k + 1/(k+1)
    sum += term * (-2 * EULER + 2 * harmonicK + 1 / (k + 1));
  }
  return (-2 / (Math.PI * x)) + (2 / Math.PI) * Math.log(x / 2) * besselJ1(x) - sum / Math.PI; // prettier-ignore
}

/** I₁(x)K₁(x): the product of the scaled functions, each by the trapezoid rule, which converges exponentially. */
export function besselI1K1(x: number): number {
  if (x > 60) {
    const y = 1 / (x * x);
    // A&S 9.7.5 with μ = 4.
    return (1 / (2 * x)) * (1 - (3 / 8) * y - (45 / 128) * y * y);
  }
  const n = 200;
  let i1 = 0;
  for (let i = 0; i < n; i++) {
    const theta = (Math.PI * (i + 0.5)) / n;
    i1 += Math.exp(x * (Math.cos(theta) - 1)) * Math.cos(theta);
  }
  i1 /= n;
  const top = Math.acosh(1 + 40 / x) + 1;
  const h = top / 400;
  let k1 = 0.5 * h;
  for (let i = 1; i <= 400; i++) {
    const t = i * h;
    k1 += h * Math.exp(-x * (Math.cosh(t) - 1)) * Math.cosh(t);
  }
  return i1 * k1;
}

/** ∫₀^{π/2} g(ka·sin φ)/(ka·sin φ) dφ: the root under the bar taken up by the substitution. */
function overPipe(ka: number, g: (x: number) => number): number {
  const n = 400;
  let sum = 0;
  for (let i = 0; i < n; i++) {
    const x = ka * Math.sin((Math.PI / 2) * ((i + 0.5) / n));
    sum += g(x) / x;
  }
  return (sum * Math.PI) / 2 / n;
}

/** Modulus of the reflection coefficient. */
export function levineSchwingerModulus(ka: number): number {
  return Math.exp(((-2 * ka) / Math.PI) * overPipe(ka, (x) => Math.atan2(besselJ1(x), -besselN1(x))));
}

/** End correction over radius. */
export function levineSchwingerLength(ka: number): number {
  const inside = overPipe(ka, (x) => {
    const j1 = besselJ1(x);
    return Math.log(Math.PI * j1 * Math.hypot(j1, besselN1(x)));
  });
  // x = eᵗ
  const h = 0.05;
  let outside = 0;
  for (let t = -16; t <= 30; t += h) {
    const x = Math.exp(t);
    outside += (h * -Math.log(2 * besselI1K1(x))) / Math.hypot(x, ka);
  }
  return (inside + outside) / Math.PI;
}
