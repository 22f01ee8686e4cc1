export { noteLabel } from '../../documents/note-label.ts';

/** Cents with a sign, to a tenth; a change too small to show is 0.0. */
export function signedCents(cents: number): string {
  const digits = Math.abs(cents).toFixed(1);
  if (Number(digits) === 0) return '0.0';
  return `${cents < 0 ? '−' : '+'}${digits}`;
}

/** `a`, `a and b`, `a, b and c`. */
export function listed(words: readonly string[]): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} and ${words[words.length - 1]}`;
}

/** Keeps a number and its unit on one line. */
export function unbroken(text: string): string {
  return text
    .replace(/(±) (?=\d)/g, '$1\u00a0')
    .replace(/(\d) (?=(?:mm|in|thou|%|cents?|ms|Hz|°C)(?![a-z]))/g, '$1\u00a0');
}
