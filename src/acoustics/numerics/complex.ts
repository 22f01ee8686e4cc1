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
