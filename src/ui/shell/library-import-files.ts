import { readJsonText } from '../../documents/json-text.ts';
import { readLibrary } from '../../documents/library-file.ts';
import { readSheetCsv } from '../../documents/sheet-csv.ts';
import { hornInHand } from '../state/bench-state.ts';
import { withHorn } from '../state/horns-on-bench.ts';
import { stepped } from '../state/horn-on-bench.ts';
import { toldIssues, type FileReport } from '../state/library-desk-state.ts';
import { planImport, type ImportPlan } from '../state/library-import.ts';
import { keptList } from '../state/library-records.ts';
import type { Bench } from './bench.ts';
import { makeId } from './demo-horns.ts';
import { readFile } from './files.ts';
import type { Library } from './library.ts';

/** Brings in files one after another: library files into the library, sheets onto the horn on the bench. */
export async function bringIn(
  files: readonly File[],
  library: Library,
  bench: Bench,
): Promise<readonly FileReport[]> {
  const reports: FileReport[] = [];
  for (const file of files) reports.push(await bringInOne(file, library, bench));
  return reports;
}

async function bringInOne(file: File, library: Library, bench: Bench): Promise<FileReport> {
  const fileName = file.name;
  const read = await readFile(file);
  if (!read.ok) return { fileName, told: [], issues: [{ where: '', message: read.message }] };
  // A sheet starts with its headers, a library file with a brace, whatever they are called.
  return /^\s*[{[]/.test(read.text) || /\.json$/i.test(fileName)
    ? bringInRecords(fileName, read.text, library)
    : bringInSheet(fileName, read.text, bench);
}

async function bringInRecords(fileName: string, text: string, library: Library): Promise<FileReport> {
  const json = readJsonText(text);
  if (!json.ok) return { fileName, told: [], issues: toldIssues(json.issues) };
  const { records, issues } = readLibrary(json.value, makeId);
  const report = (
    told: readonly string[],
    more: readonly FileReport['issues'][number][] = [],
  ): FileReport => ({
    fileName,
    told,
    issues: [...toldIssues(issues), ...more],
  });
  if (records.horns.length === 0) return report(['Nothing was added.']);
  const held = await library.raw(records.horns.map(({ id }) => id));
  const heldIds = new Set(keptList(held).map(([, { id }]) => id));
  const plan = (isTaken: (id: string) => boolean): ImportPlan =>
    planImport(records, { fileName, held, isTaken, makeId });
  const add = async ({ add: adding, told }: ImportPlan): Promise<FileReport | null> => {
    if (keptList(adding).length === 0) return report(told);
    const outcome = await library.add(adding);
    if (outcome.kind === 'saved') return report(told);
    return outcome.kind === 'conflict'
      ? null
      : report(['Nothing was added.'], [{ where: '', message: outcome.message }]);
  };
  // An id that is in use under another horn is rare, and found only by trying.
  return (
    (await add(plan(() => false))) ??
    (await add(plan((id) => !heldIds.has(id)))) ??
    report(
      ['Nothing was added.'],
      [{ where: '', message: 'the library was changed meanwhile; try once more' }],
    )
  );
}

/** One step of the horn in hand: undone with the rest of what was done to it. */
function bringInSheet(fileName: string, text: string, { store }: Bench): FileReport {
  const { contents } = hornInHand(store.get());
  const { name } = contents.horn.document;
  const reading = readSheetCsv(text, contents);
  const cells = reading.changedCells.length;
  if (cells > 0) {
    store.update((state) => withHorn(state, (horn) => stepped(horn, reading.contents, null)));
  }
  const counted = `${cells} ${cells === 1 ? 'number' : 'numbers'}`;
  return {
    fileName,
    told: [
      cells === 0
        ? `No number of “${name}” on the bench was changed.`
        : `${counted} of “${name}” on the bench came from this sheet; Undo takes them back.`,
    ],
    issues: reading.issues.map(({ row, field, message }) => ({
      where: [row === null ? '' : `row ${row}`, field].filter((part) => part !== '').join(', '),
      message,
    })),
  };
}
