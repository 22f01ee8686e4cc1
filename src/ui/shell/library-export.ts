import { recordsOf } from '../../documents/bench-contents.ts';
import { writeSheetCsv } from '../../documents/sheet-csv.ts';
import { hornInHand } from '../state/bench-state.ts';
import { fileNameOf } from '../state/file-text.ts';
import { nameIn } from '../state/library-state.ts';
import type { Bench } from './bench.ts';
import { today } from './demo-horns.ts';
import { saveFile, saveRecords } from './files.ts';

/** Gives a person files of what is kept and of what is on the bench. Each tells what it could not write, or null. */
export interface Exports {
  /** the whole library as one file */
  all(): Promise<string | null>;
  horn(hornId: string): Promise<string | null>;
  /** what is on the bench, kept or not */
  bench(): string | null;
  /** the sheet on the bench for spreadsheets */
  sheet(decimalComma: boolean): void;
}

export function exportsOf(bench: Bench): Exports {
  const lostOf = (lost: number): string | null =>
    lost === 0
      ? null
      : `${lost} damaged ${lost === 1 ? 'record' : 'records'} could not be written into the file and ${lost === 1 ? 'is' : 'are'} empty there.`;
  return {
    async all() {
      const records = await (await bench.library()).raw('all');
      return lostOf(saveRecords(`ventwright-library-${today()}.json`, records));
    },
    async horn(hornId) {
      const records = await (await bench.library()).raw([hornId]);
      const name = records.horns.map(({ document }) => nameIn(document))[0] ?? '';
      return lostOf(saveRecords(`${fileNameOf(name)}-${today()}.json`, records));
    },
    bench() {
      const { contents } = hornInHand(bench.store.get());
      const name = fileNameOf(contents.horn.document.name);
      return lostOf(saveRecords(`${name}-${today()}.json`, recordsOf(contents)));
    },
    sheet(decimalComma) {
      const { contents } = hornInHand(bench.store.get());
      const name = fileNameOf(contents.horn.document.name);
      const { date } = contents.visit.document;
      saveFile(`${name}-sheet-${date}.csv`, [writeSheetCsv(contents, { decimalComma })], 'text/csv');
    },
  };
}
