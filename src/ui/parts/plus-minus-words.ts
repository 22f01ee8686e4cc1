import { signedCents } from './note-names.ts';
import { tenths } from '../../documents/tenths.ts';

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
  return `${signedCents(cents)}\u00a0±\u00a0${tenths(plusMinusCents)}`;
}
