export { listed } from '../../documents/listed.ts';
export { noteLabel } from '../../documents/note-label.ts';

/** Cents with a sign, to a tenth; a change too small to show is 0.0. */
export function signedCents(cents: number): string {
  const digits = Math.abs(cents).toFixed(1);
  if (Number(digits) === 0) return '0.0';
  return `${cents < 0 ? '−' : '+'}${digits}`;
}

/** Keeps a number, its ± and its unit on one line. */
export function unbroken(text: string): string {
  return text
    .replace(/(\d) (?=±)/g, '$1\u00a0')
    .replace(/(±) (?=\d)/g, '$1\u00a0')
    .replace(/(\d) (?=(?:mm|cm³|in|thou|%|cents?|ms|Hz|°C)(?![a-z]))/g, '$1\u00a0');
}
