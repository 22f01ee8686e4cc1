import type { ComparisonReport } from '../../../documents/comparison-report.ts';
import { unbroken } from '../../parts/note-names.ts';

/** `A` for the reference, then `B`, `C`, `D`. */
export function letterOf(column: number): string {
  return String.fromCharCode(65 + column);
}

/** What a column is called beside its letter where there is little room: by its horn where no other column is of
 * it, else by its setup. */
export function shortNames({ setups }: Pick<ComparisonReport, 'setups'>): string[] {
  return setups.map((setup) => (isLone(setup, setups) ? setup.horn : ofSetup(setup)));
}

const isLone = ({ horn }: { readonly horn: string }, setups: ComparisonReport['setups']): boolean =>
  setups.filter((s) => s.horn === horn).length === 1;

/** A column's name without its horn. */
const ofSetup = ({ label, horn }: ComparisonReport['setups'][number]): string =>
  label.startsWith(`${horn}, `) ? label.slice(horn.length + 2) : label;

/** A sentence of the report with the letters of the page: `B “Proposed” beside A “As found”: …`. */
export function lettered(
  sentence: string,
  { setups }: Pick<ComparisonReport, 'setups'>,
  columns: readonly number[],
  names: readonly string[] = setups.map(({ label }) => label),
): string {
  const order = [...setups.keys()].sort((a, b) => setups[b].label.length - setups[a].label.length);
  return order.reduce(
    (text, i) => text.replaceAll(`“${setups[i].label}”`, `${letterOf(columns[i])} “${names[i]}”`),
    sentence,
  );
}

/** The sentence on a setup beside the first: of one horn its name need not be said, of a horn that stands once its setup. */
export function letteredBeside(
  sentence: string,
  { setups }: Pick<ComparisonReport, 'setups'>,
  columns: readonly number[],
  index: number,
): string {
  const names = setups[index + 1].sameHornAsFirst
    ? setups.map(ofSetup)
    : setups.map((setup) => (isLone(setup, setups) ? setup.horn : setup.label));
  return lettered(sentence, { setups }, columns, names);
}

/** Numbers stay with their units, and days on one line. */
export function kept(sentence: string): string {
  return unbroken(sentence)
    .replace(/(\d) dB/g, '$1\u00a0dB')
    .replace(/(\d{4})-(\d\d)-(\d\d)/g, '$1\u2011$2\u2011$3');
}
