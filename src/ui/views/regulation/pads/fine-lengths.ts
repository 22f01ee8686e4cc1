import { formatFine as fineLength, type LengthUnit } from '../../../../documents/length-format.ts';

export { fineLength };

/** The same in both units, the chosen one first. */
export function fineBoth(mm: number, first: LengthUnit): string {
  return `${fineLength(mm, first)} (${fineLength(mm, first === 'mm' ? 'thou' : 'mm')})`;
}

/** The other unit’s words: an echo below what is shown in the chosen one. */
export function fineEcho(mm: number, shownIn: LengthUnit): string {
  return fineLength(mm, shownIn === 'mm' ? 'thou' : 'mm');
}

/** A change with its sign. */
export function signedLength(mm: number, as: LengthUnit): string {
  const text = fineLength(mm, as);
  return mm > 0 && !/^0[.0]* /.test(text) ? `+${text}` : text;
}

/** From, to: `0.31 to 0.74 mm`, or one where both read the same. */
export function fineRange(lowMm: number, highMm: number, as: LengthUnit): string {
  const [low, high] = [fineLength(lowMm, as), fineLength(highMm, as)];
  return low === high ? low : `${low.replace(/ \w+$/, '')} to ${high}`;
}
