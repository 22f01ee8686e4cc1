import { signedCents } from './note-names.ts';

export {
  barePlusMinus,
  lengthBothWithPlusMinus,
  lengthWithPlusMinus,
  other,
  plusMinusBoth,
  sign,
} from '../../documents/length-plus-minus.ts';

/** `+2.0 ± 0.3`. */
export function centsWithPlusMinus(cents: number, plusMinusCents: number): string {
  return `${signedCents(cents)}\u00a0±\u00a0${bareCents(plusMinusCents)}`;
}

/** A ± in cents to a tenth, never rounded to nothing where it is something. */
export function bareCents(plusMinusCents: number): string {
  const text = plusMinusCents.toFixed(1);
  if (Number(text) !== 0 || plusMinusCents === 0) return text;
  const finer = plusMinusCents.toFixed(2);
  return Number(finer) === 0 ? '<0.01' : finer;
}
