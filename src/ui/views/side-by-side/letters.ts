import type { ComparisonReport } from '../../../documents/comparison-report.ts';

/** `A` for the reference, then `B`, `C`, `D`. */
export function letterOf(column: number): string {
  return String.fromCharCode(65 + column);
}

/**
 * What a column is called beside its letter: by its horn where no other column is of it, else by its setup, and
 * by both where two horns have several columns.
 */
export function shortNames({ setups }: Pick<ComparisonReport, 'setups'>): string[] {
  const countOf = (horn: string): number => setups.filter((s) => s.horn === horn).length;
  const main = setups.find(({ horn }) => countOf(horn) > 1)?.horn;
  const names = setups.map(({ label, horn }) => {
    if (countOf(horn) === 1) return horn;
    return horn === main && label.startsWith(`${horn}, `) ? label.slice(horn.length + 2) : label;
  });
  const isAlone = (name: string): boolean => names.filter((n) => n === name).length === 1;
  return names.map((name, i) => (isAlone(name) ? name : setups[i].label));
}

/** A sentence of the report with the letters of the page: `B “Proposed” beside A “As found”: …`. */
export function lettered(
  sentence: string,
  { setups }: Pick<ComparisonReport, 'setups'>,
  columns: readonly number[],
): string {
  const names = shortNames({ setups });
  const order = [...setups.keys()].sort((a, b) => setups[b].label.length - setups[a].label.length);
  return order.reduce(
    (text, i) => text.replaceAll(`“${setups[i].label}”`, `${letterOf(columns[i])} “${names[i]}”`),
    sentence,
  );
}
