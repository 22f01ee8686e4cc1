/** Named tolerances and why each is what it is. Relative unless the name says otherwise. */

/** The same double-precision numbers by two routes of a few operations. */
export const ROUNDING = 1e-12;
/** The same by routes of many operations, or with cancellation on the way. */
export const LONG_ROUNDING = 1e-9;
/** A slope against a central difference: the difference itself is no better. */
export const DIFFERENCE = 1e-5;
/** Cents: what resonances are polished to. */
export const POLISHED_CENTS = 1e-3;
/** Cents: what cutting a bore finer may change. */
export const CUTTING_CENTS = 0.01;
/** What cutting a bore finer may change in the height of a resonance. */
export const CUTTING_HEIGHT = 1e-3;
/** Passivity: how far below zero rounding may push a real part, as a share of the modulus. */
export const PASSIVE_ROUNDING = 1e-9;

/** Half a unit in the last printed decimal. */
export const printedDecimals = (decimals: number): number => 0.5 * 10 ** -decimals;

/** Distance of two numbers as a share of the second. */
export const relative = (a: number, b: number): number => Math.abs(a - b) / Math.abs(b);

/** Distance of two complex numbers (re, im pairs) as a share of the second's modulus. */
export const relativeComplex = (aRe: number, aIm: number, bRe: number, bIm: number): number =>
  Math.hypot(aRe - bRe, aIm - bIm) / Math.hypot(bRe, bIm);
