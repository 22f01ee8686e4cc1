/** A complex number, for the places where reading matters more than speed. */
export interface Complex {
  readonly re: number;
  readonly im: number;
}

export const add = (a: Complex, b: Complex): Complex => ({ re: a.re + b.re, im: a.im + b.im });
export const sub = (a: Complex, b: Complex): Complex => ({ re: a.re - b.re, im: a.im - b.im });
export const mul = (a: Complex, b: Complex): Complex => ({
  re: a.re * b.re - a.im * b.im,
  im: a.re * b.im + a.im * b.re,
});

/** a/b; b must not be zero. */
export function div(a: Complex, b: Complex): Complex {
  const norm = b.re * b.re + b.im * b.im;
  return { re: (a.re * b.re + a.im * b.im) / norm, im: (a.im * b.re - a.re * b.im) / norm };
}

/** tanh(x + jy), without overflow. **Source:** Abramowitz & Stegun 1964, 4.5.51. */
export function tanhOf(x: number, y: number): Complex {
  if (Math.abs(x) > 300) return { re: Math.sign(x), im: 0 };
  const bottom = Math.cosh(2 * x) + Math.cos(2 * y);
  return { re: Math.sinh(2 * x) / bottom, im: Math.sin(2 * y) / bottom };
}
