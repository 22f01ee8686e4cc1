import { recordsOf } from '../../documents/bench-contents.ts';
import { LONGEST_TEXT } from '../../documents/json-text.ts';
import { writeSheetCsv } from '../../documents/sheet-csv.ts';
import { hornInHand } from '../state/bench-state.ts';
import { fileNameOf, inParts } from '../state/file-text.ts';
import type { SavedFile } from '../state/library-desk-state.ts';
import type { UnreadRecords } from '../state/library-records.ts';
import { nameIn } from '../state/library-state.ts';
import type { Bench } from './bench.ts';
import { today } from './demo-horns.ts';
import { saveFile, saveRecords } from './files.ts';

/** Gives a person files of what is kept and of what is on the bench. */
export interface Exports {
  /** the whole library as one file, or as several where one would be too long to be brought in again */
  all(): Promise<SavedFile>;
  horn(hornId: string): Promise<SavedFile>;
  /** what is on the bench, kept or not */
  bench(): SavedFile;
  /** the sheet on the bench for spreadsheets */
  sheet(decimalComma: boolean): SavedFile;
}

export function exportsOf(bench: Bench): Exports {
  const records = (what: string, of: UnreadRecords): SavedFile => {
    const fileName = `${what}-${today()}.json`;
    return { fileName, lost: saveRecords(fileName, of) };
  };
  const contents = () => hornInHand(bench.store.get()).contents;
  return {
    async all() {
      const parts = inParts(await (await bench.library()).raw('all'), LONGEST_TEXT * 0.95);
      const files = parts.map((part, i) =>
        records(`ventwright-library${parts.length === 1 ? '' : `-${i + 1}-of-${parts.length}`}`, part),
      );
      return {
        fileName: files.map(({ fileName }) => fileName).join(' and '),
        lost: files.reduce((sum, { lost }) => sum + lost, 0),
      };
    },
    async horn(hornId) {
      const kept = await (await bench.library()).raw([hornId]);
      return records(fileNameOf(kept.horns.map(({ document }) => nameIn(document))[0] ?? ''), kept);
    },
    bench: () => records(fileNameOf(contents().horn.document.name), recordsOf(contents())),
    sheet(decimalComma) {
      const { horn, visit } = contents();
      const fileName = `${fileNameOf(horn.document.name)}-sheet-${visit.document.date}.csv`;
      saveFile(fileName, [writeSheetCsv(contents(), { decimalComma })], 'text/csv');
      return { fileName, lost: 0 };
    },
  };
}
