/** Meanings by word, as the table of `notes/glossary.md` has them, without the marks of its setting. */
export function glossaryOf(text: string): ReadonlyMap<string, string> {
  return new Map(
    text
      .split('\n')
      .filter((line) => line.startsWith('| ') && !/^\|\s*-/.test(line))
      .slice(1)
      .map((line) => line.split('|').map((cell) => cell.trim()))
      .map(([, word, meaning]) => [word, meaning.replace(/[_*`]/g, '')]),
  );
}
