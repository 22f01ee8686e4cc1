import { describe, expect, it } from 'vitest';
import { INSTRUMENTS, keyedHoles } from '../../src/documents/horn-document.ts';
import { readLibrary, type LibraryRecords } from '../../src/documents/library-file.ts';
import { parseLength } from '../../src/documents/length.ts';
import { makeDraft, makeNewHornView } from '../../src/ui/views/new-horn/new-horn-view.model.ts';
import { fetchExample } from '../../src/ui/shell/demo-horns.ts';
import { demoFile, type DemoName } from '../acoustics/demo-horns.ts';

const DRAFT = makeDraft('2026-05-31');

function example(name: DemoName): LibraryRecords {
  return readLibrary(demoFile(name), () => 'no id is missing').records;
}

/** The screen shows tenths of a millimetre or thousandths of an inch. */
const SHOWN_MM = { mm: 0.05 + 1e-9, thou: 0.0005 * 25.4 + 1e-9 };

describe('an example to start from', () => {
  it('is there of every instrument, and is read by the library without an issue', async () => {
    for (const instrument of INSTRUMENTS) {
      const file = await fetchExample(instrument);
      const { records, issues } = readLibrary(file, () => 'no id is missing');
      expect([instrument, issues]).toEqual([instrument, []]);
      expect(records.horns.map((h) => h.document.instrument)).toEqual([instrument]);
    }
  });
});

describe('the page of a new horn', () => {
  it('shows every key once, the lower stack first', () => {
    for (const instrument of INSTRUMENTS) {
      const file = example(instrument);
      const { groups } = makeNewHornView({ ...DRAFT, instrument }, file, 'mm');
      const shown = groups.flatMap((g) => g.keys.map((k) => k.id));
      expect(shown.toSorted()).toEqual(
        keyedHoles(file.horns[0].document)
          .map((h) => h.id)
          .toSorted(),
      );
      expect(groups[0].keys.map((k) => k.id)).toEqual(['f-sharp-auxiliary', 'f', 'e', 'd']);
    }
  });

  it('shows the example’s four lengths of each key in the page’s unit', () => {
    const file = example('tenor');
    const { horns, setups } = file;
    for (const unit of ['mm', 'thou'] as const) {
      const { groups } = makeNewHornView({ ...DRAFT, instrument: 'tenor' }, file, unit);
      for (const { id, lengths } of groups.flatMap((g) => g.keys)) {
        const hole = keyedHoles(horns[0].document).find((h) => h.id === id)!;
        const key = setups[0].document.keys.find((k) => k.pad === id)!;
        const wanted = [hole.diameterMm, key.padDiameterMm!, hole.key.hingeMm, key.openingMm!];
        lengths.forEach((text, i) => {
          const read = parseLength(unit === 'mm' ? text : `${text} in`, 'length', 'mm');
          expect(read.ok && Math.abs(read.mm - wanted[i])).toBeLessThanOrEqual(SHOWN_MM[unit]);
        });
      }
    }
  });

  it('says how far an example may be off, in the page’s unit', () => {
    const inMm = makeNewHornView(DRAFT, null, 'mm');
    expect(inMm.readings.map((r) => r.plusMinus)).toEqual(['±2.0', '±2.0', '±4.0', '±1.5']);
    expect(makeNewHornView(DRAFT, null, 'thou').readings[3].plusMinus).toBe('±0.059');
  });

  it('is there before the example has come', () => {
    const view = makeNewHornView(DRAFT, null, 'mm');
    expect([view.groups, view.picture]).toEqual([[], null]);
    expect(view.fields).toHaveLength(6);
  });

  it('says what the horn will be called as long as nobody calls it anything', () => {
    const told = { ...DRAFT.told, maker: 'Larkfield', serial: '77' };
    const [name] = makeNewHornView({ ...DRAFT, told }, null, 'mm').fields;
    expect(name.hint).toBe('left blank: Larkfield alto 77');
  });

  it('tells what is wrong under its field, and the rest apart', () => {
    const issues = [
      { path: 'date', code: 'invalid', message: 'no such day' },
      { path: 'a4Hz', code: 'range', message: 'no such tuning' },
    ];
    const { fields, problems } = makeNewHornView({ ...DRAFT, issues }, null, 'mm');
    expect(fields.map((f) => f.problem)).toEqual([null, null, null, null, null, 'no such day']);
    expect(problems).toEqual(['no such tuning']);
  });

  it('marks the key looked at in the table and in the picture', () => {
    const view = makeNewHornView({ ...DRAFT, keyId: 'bis' }, example('alto'), 'mm');
    expect(view.groups.flatMap((g) => g.keys.filter((k) => k.selected).map((k) => k.id))).toEqual(['bis']);
    expect(view.picture?.pads.filter((p) => p.selected).map((p) => p.id)).toEqual(['bis']);
  });
});
