/** `a`, `a and b`, `a, b and c`; with another last word, `a, b or c`. */
export function listed(words: readonly string[], last = 'and'): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} ${last} ${words[words.length - 1]}`;
}
