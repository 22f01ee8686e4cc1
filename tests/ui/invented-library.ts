import { makeVisit, recordsOf } from '../../src/documents/bench-contents.ts';
import { libraryFile, type LibraryRecords } from '../../src/documents/library-file.ts';
import { withOpeningReading } from '../../src/documents/sheet-edits.ts';
import { demoDocument, type DemoName } from '../acoustics/demo-horns.ts';

const MAKERS = ['Larkfield', 'Ostrava & Söhne', 'Brèche', 'Nørrebro', 'Kestrel'];
const PLAYERS = ['Ada Moss', 'Béla Kőrösi', 'Ines Prado', 'Ole Ødegård', 'Tamsin Reeve', 'Jún Hae'];
const INSTRUMENTS: readonly DemoName[] = ['alto', 'tenor'];

/** Invented horns with so many setups each: one kept beside the visits, and three a visit. */
export function inventedLibrary(hornCount: number, setupsEach = 10): LibraryRecords {
  let count = 0;
  const makeId = (): string => `invented-${++count}`;
  const horns = Array.from({ length: hornCount }, (_, i) => inventedHorn(i, setupsEach, makeId));
  return {
    horns: horns.flatMap((r) => r.horns),
    setups: horns.flatMap((r) => r.setups),
    visits: horns.flatMap((r) => r.visits),
  };
}

function inventedHorn(i: number, setupsEach: number, makeId: () => string): LibraryRecords {
  const { horn, setup } = demoDocument(INSTRUMENTS[i % INSTRUMENTS.length]);
  const maker = MAKERS[i % MAKERS.length];
  const serial = String(1000 + i * 37);
  const record = {
    id: makeId(),
    document: {
      ...horn,
      name: `${maker} ${horn.instrument} ${serial}`,
      maker,
      serial,
      owner: PLAYERS[i % 6],
    },
  };
  const kept = { id: makeId(), hornId: record.id, document: { ...setup, name: 'First bench sheet' } };
  const visits = Array.from({ length: Math.max(1, Math.floor((setupsEach - 1) / 3)) }, (_, v) => {
    const date = `${2019 + v}-0${1 + (i % 9)}-1${v % 10}`;
    const plan = { date, airC: 22, a4Hz: 440, player: PLAYERS[(i + v) % 6] };
    const contents = makeVisit(record, setup, plan, makeId);
    const at = { mm: 6 + v / 10, at: 'front' } as const;
    const asSet = { ...contents.asSet, document: withOpeningReading(contents.asSet.document, 'e', at) };
    return recordsOf({ ...contents, asSet });
  });
  return {
    horns: [record],
    setups: [kept, ...visits.flatMap((r) => r.setups)],
    visits: visits.flatMap((r) => r.visits),
  };
}

/** The same as a file's text. */
export function inventedFile(hornCount: number, setupsEach?: number): string {
  return JSON.stringify(libraryFile(inventedLibrary(hornCount, setupsEach)));
}
