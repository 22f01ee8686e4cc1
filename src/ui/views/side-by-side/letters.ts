import type { ComparisonReport } from '../../../documents/comparison-report.ts';

/** `A` for the reference, then `B`, `C`, `D`. */
export function letterOf(column: number): string {
  return String.fromCharCode(65 + column);
}

/** What a column is called beside its letter: by its setup on the reference’s horn, else by its horn. */
export function shortNames({ setups }: Pick<ComparisonReport, 'setups'>): string[] {
  const [first] = setups;
  const names = setups.map(({ label, horn }) => {
    const setup = label.startsWith(`${horn}, `) ? label.slice(horn.length + 2) : label;
    return horn === first.horn ? setup : horn;
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
