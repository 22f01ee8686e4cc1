import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makeVisit, SETUP_ROLES, type BenchContents } from '../../src/documents/bench-contents.ts';
import { keyedHoles } from '../../src/documents/horn-document.ts';
import {
  LONGEST_SHEET,
  MOST_CELLS,
  MOST_ROWS,
  readSheetCsv,
  writeSheetCsv,
} from '../../src/documents/sheet-csv.ts';
import { harmlessText, plainText, readLengthCell } from '../../src/documents/sheet-csv-cells.ts';
import { LENGTH_COLUMNS, lengthIn, withLength } from '../../src/documents/sheet-csv-columns.ts';
import { knownHornLength, knownSetupLength } from '../../src/documents/sheet-edits.ts';
import { demoDocument } from '../acoustics/demo-horns.ts';

const { horn, setup } = demoDocument('alto');
let ids = 0;
const START = makeVisit(
  { id: 'alto', document: horn },
  setup,
  { date: '2026-05-31', airC: 22, a4Hz: 442 },
  () => `id-${++ids}`,
);
const PADS = keyedHoles(horn).map((h) => h.id);

const openingOf = (contents: BenchContents, role: (typeof SETUP_ROLES)[number], pad: string): unknown => {
  const key = contents[role].document.keys.find((k) => k.pad === pad);
  return key === undefined ? null : [key.openingMm, key.measuredAt];
};
const sheet = (...rows: string[]): string => rows.join('\r\n');

/** Contents with some lengths nudged by a little, of the kind a bench would read; every digit of a double. */
const nudged = fc
  .array(
    fc.record({
      pad: fc.constantFrom(...PADS),
      column: fc.constantFrom(...LENGTH_COLUMNS.filter((c) => c.field !== 'padDiameterMm')),
      by: fc.double({ min: 0.9, max: 1.1, noNaN: true }),
      at: fc.constantFrom('front' as const, 'centre' as const, 'back' as const),
      origin: fc.constantFrom('measured' as const, 'derived' as const),
    }),
    { maxLength: 12 },
  )
  .map((edits) =>
    edits.reduce((contents, { pad, column, by, at, origin }) => {
      const mm = by * (lengthIn(START, pad, column)?.mm ?? 0.5);
      return withLength(contents, pad, column, { mm, at, reading: { origin } });
    }, START),
  );

describe('a sheet as CSV', () => {
  it('has a row a key in the order of pad numbers, and the unit in every header of a number', () => {
    const lines = writeSheetCsv(START).trim().split('\r\n');
    expect(lines).toHaveLength(1 + PADS.length);
    expect(lines[0]).toMatch(
      /^\uFEFF?padNumber,padId,padName,holeDiameterMm,padDiameterMm,hingeMm,asFoundOpeningMm,/,
    );
    expect(lines[7]).toMatch(/^7,e,E,30\.5,/);
    expect(lines.slice(1).map((line) => Number(line.split(',')[0]))).toEqual(
      keyedHoles(horn).map((h) => h.number),
    );
  });

  it('comes back without a change', () => {
    fc.assert(
      fc.property(nudged, fc.boolean(), fc.boolean(), (contents, decimalComma, origins) => {
        const read = readSheetCsv(writeSheetCsv(contents, { decimalComma, origins }), contents);
        expect(read.issues).toEqual([]);
        expect(read.changedCells).toEqual([]);
        expect(read.contents).toBe(contents);
      }),
      { seed: 1201, numRuns: 25 },
    );
  });

  it('read over the horn as it was gives every number, point and origin to the last digit', () => {
    fc.assert(
      fc.property(nudged, fc.boolean(), (contents, decimalComma) => {
        const read = readSheetCsv(writeSheetCsv(contents, { decimalComma, origins: true }), START);
        fc.pre(read.issues.length === 0);
        for (const pad of PADS) {
          for (const column of LENGTH_COLUMNS) {
            expect(lengthIn(read.contents, pad, column)).toEqual(lengthIn(contents, pad, column));
          }
          for (const role of SETUP_ROLES) {
            expect(openingOf(read.contents, role, pad)).toEqual(openingOf(contents, role, pad));
          }
        }
      }),
      { seed: 1202, numRuns: 25 },
    );
  });

  it('tells pads that are proposed and set only where there are any', () => {
    const thicker = withLength(
      START,
      'e',
      LENGTH_COLUMNS.find((c) => c.header === 'asSetPadThicknessMm')!,
      {
        mm: 4.6,
        at: 'front',
        reading: { origin: 'measured' },
      },
    );
    expect(writeSheetCsv(START)).not.toContain('asSetPadThicknessMm');
    expect(writeSheetCsv(thicker)).toContain('asSetPadThicknessMm');
    expect(writeSheetCsv(thicker)).not.toContain('proposedPadThicknessMm');
  });
});

describe('what a spreadsheet makes of a sheet', () => {
  it('is read with semicolons, tabs or commas, decimal commas, quotes, marks and any line ends', () => {
    const texts = [
      '\uFEFFpadNumber;asSetOpeningMm\r\n7;7,9\r\n',
      'padNumber\tasSetOpeningMm\n7\t7.9\n',
      'padNumber,asSetOpeningMm\r"7","7,9"\r',
      'sep=;\r\nPADNUMBER;assetopeningmm\r\n7;7,9',
      '\r\n"padNumber","padName","asSetOpeningMm"\n\n7,"E",7.9\n,,\n',
      'asSetOpeningMm;padId;padNumber\n" 7,9 mm ";e;7',
    ];
    for (const text of texts) {
      const { contents, issues, changedCells } = readSheetCsv(text, START);
      expect([text, issues]).toEqual([text, []]);
      expect(openingOf(contents, 'asSet', 'e')).toEqual([7.9, 'front']);
      expect(changedCells.map((c) => [c.field, c.pad])).toEqual([['asSetOpeningMm', 'e']]);
    }
  });

  it('may carry units of its own in a cell', () => {
    const text = sheet('padNumber,asSetOpeningMm,padThicknessMm', '7,0.310 in,160 thou', '6,5/16,"0,4 cm"');
    const { contents, issues } = readSheetCsv(text, START);
    expect(issues).toEqual([]);
    expect(openingOf(contents, 'asSet', 'e')).toEqual([expect.closeTo(7.874, 9), 'front']);
    expect(openingOf(contents, 'asSet', 'd')).toEqual([expect.closeTo(7.9375, 9), 'front']);
    expect(knownSetupLength(contents.asFound.document, 'e', 'padThicknessMm')?.mm).toBeCloseTo(4.064, 9);
    expect(knownSetupLength(contents.asFound.document, 'd', 'padThicknessMm')?.mm).toBeCloseTo(4, 9);
  });

  it('leaves alone what is blank, and all keys without a row', () => {
    const read = readSheetCsv(sheet('padNumber,holeDiameterMm,asSetOpeningMm', '7,,8.1'), START);
    expect(read.contents.horn).toBe(START.horn);
    expect(read.contents.asFound).toBe(START.asFound);
    expect(read.contents.asSet.document.keys).toHaveLength(1);
  });

  it('keeps signs, minus of either kind', () => {
    for (const [cell, mm] of [
      ['-2.5', -2.5],
      ['−2,5', -2.5],
      ['+2.5', 2.5],
      ['-0.1 in', -2.54],
    ] as const) {
      const { contents, issues } = readSheetCsv(sheet('padNumber;hingeHeightMm', `7;${cell}`), START);
      expect([cell, issues]).toEqual([cell, []]);
      expect(knownHornLength(contents.horn.document, 'e', 'hingeHeightMm')?.mm).toBeCloseTo(mm, 9);
    }
  });

  it('counts as measured where a number differs, unless it says otherwise', () => {
    const example = {
      ...START,
      horn: { ...START.horn, document: { ...horn, origin: 'template' as const } },
    };
    const text = sheet(
      'padNumber,holeDiameterMm,rimMm,rimOrigin,chimneyMm',
      `7,30.2,1.4,derived,${knownHornLength(horn, 'e', 'chimneyMm')!.mm}`,
    );
    const { document } = readSheetCsv(text, example).contents.horn;
    expect(knownHornLength(document, 'e', 'diameterMm')).toMatchObject({ mm: 30.2, origin: 'measured' });
    expect(knownHornLength(document, 'e', 'rimMm')).toMatchObject({ mm: 1.4, origin: 'derived' });
    expect(knownHornLength(document, 'e', 'chimneyMm')).toMatchObject({ origin: 'template' });
  });

  it('reads an opening where the sheet says, else where it was read as found', () => {
    const text = sheet(
      'padNumber,asFoundMeasuredAt,asSetOpeningMm,asSetMeasuredAt',
      '7,,5.5,Center',
      '6,centre,4.5,',
    );
    const { contents, issues, changedCells } = readSheetCsv(text, START);
    expect(issues).toEqual([]);
    expect(openingOf(contents, 'asSet', 'e')).toEqual([5.5, 'centre']);
    expect(openingOf(contents, 'asSet', 'd')).toEqual([4.5, 'centre']);
    expect(openingOf(contents, 'asFound', 'd')).toEqual([
      (openingOf(START, 'asFound', 'd') as number[])[0],
      'centre',
    ]);
    expect(changedCells.map((c) => c.field)).toEqual([
      'asSetOpeningMm',
      'asSetMeasuredAt',
      'asFoundMeasuredAt',
      'asSetOpeningMm',
    ]);
  });
});

describe('a sheet with faults', () => {
  it('tells every one with its row and column, and takes the good rows whole', () => {
    const text = sheet(
      'padNumber,padId,holeDiameterMm,asSetOpeningMm,asSetMeasuredAt,colour',
      '7,e,30.2,8.2,front,red',
      '6,d,wide,7.9,toe,',
      '5,,,"=1+2",,',
      '4,,999,,,',
      '41,,,7,,',
      '3,d,,7,,',
      '7,e,,9,,',
      '2,,,,front,',
      '1,,,7,front,,7',
    );
    const { contents, issues, changedCells } = readSheetCsv(text, START);
    expect(issues.map((i) => [i.row, i.field])).toEqual([
      [1, 'colour'],
      [3, 'asSetMeasuredAt'],
      [3, 'holeDiameterMm'],
      [4, 'asSetOpeningMm'],
      [5, 'holeDiameterMm'],
      [6, 'padNumber'],
      [7, 'padId'],
      [8, 'padId'],
      [9, 'asSetMeasuredAt'],
      [10, ''],
    ]);
    expect(issues[2].message).toMatch(/invalid hole diameter of pad 6: “wide”; expected a length such as/);
    expect(issues[3].message).toMatch(/“=1\+2”.*not a formula/);
    expect(issues[4].message).toBe('invalid hole diameter: 999 mm; expected 0.5 to 100 mm');
    expect(changedCells.map((c) => [c.row, c.field])).toEqual([
      [2, 'holeDiameterMm'],
      [2, 'asSetOpeningMm'],
      [2, 'asSetMeasuredAt'],
    ]);
    expect(openingOf(contents, 'asSet', 'e')).toEqual([8.2, 'front']);
    expect(contents.asSet.document.keys).toHaveLength(1);
  });

  it('is told where numbers cannot be together', () => {
    const text = sheet('padNumber,holeDiameterMm,asSetOpeningMm', '7,60,', '6,31,59', '5,,8.2');
    const { contents, issues } = readSheetCsv(text, START);
    expect(issues.map((i) => [i.row, i.field])).toEqual([
      [2, 'holeDiameterMm'],
      [3, 'asSetOpeningMm'],
    ]);
    expect(knownHornLength(contents.horn.document, 'd', 'diameterMm')?.mm).toBe(
      knownHornLength(horn, 'd', 'diameterMm')!.mm,
    );
    expect(openingOf(contents, 'asSet', 'e-flat')).toEqual([8.2, 'front']);
  });

  it('takes no number beyond all numbers', () => {
    for (const cell of [
      '1e999',
      '9'.repeat(400),
      '1/0',
      'NaN',
      'Infinity',
      `${'9'.repeat(320)} cm`,
      '1.234,5',
    ]) {
      expect([cell, readLengthCell(cell, 'hole diameter').ok]).toEqual([cell, false]);
      expect(readSheetCsv(sheet('padNumber;holeDiameterMm', `7;"${cell}"`), START).issues).toHaveLength(1);
    }
  });

  it('is refused whole where it is no sheet: too long, too many rows or cells, no headers, quotes that never close', () => {
    const refused = (text: string): string => {
      const { contents, issues, changedCells } = readSheetCsv(text, START);
      expect(contents).toBe(START);
      expect(changedCells).toEqual([]);
      return issues.map((i) => i.message).join('; ');
    };
    expect(refused('x'.repeat(LONGEST_SHEET + 1))).toMatch(/too long: 4\.0 million/);
    expect(refused('padNumber\n' + '7\n'.repeat(MOST_ROWS + 5))).toMatch(/more than 500 rows/);
    expect(refused('padNumber' + ','.repeat(MOST_CELLS))).toMatch(/more than 300 cells/);
    expect(refused('')).toMatch(/no row of headers/);
    expect(refused('{"kind":"ventwright library"}')).toMatch(/no row of headers/);
    expect(refused('padNumber,asSetOpeningMm\n7,"8.1\n6,8.2')).toMatch(/quotes/);
  });

  it('never throws and never lets in a number that is none', () => {
    const cell = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 12 }),
      fc.double().map(String),
      fc.constantFrom(
        '=1+1',
        '@x',
        '-',
        '+',
        "'",
        '"',
        ';',
        'front',
        'measured',
        '7',
        'e',
        '1/0',
        '1e400',
        '',
      ),
    );
    const header = fc.constantFrom('padNumber', 'padId', 'padName', ...LENGTH_COLUMNS.map((c) => c.header));
    const table = fc
      .tuple(fc.array(header, { maxLength: 6 }), fc.array(fc.array(cell, { maxLength: 7 }), { maxLength: 6 }))
      .chain(([headers, rows]) =>
        fc
          .constantFrom(',', ';', '\t')
          .map((d) =>
            [['padNumber', ...headers], ...rows.map((row, i) => [String(i + 1), ...row])]
              .map((row) => row.join(d))
              .join('\n'),
          ),
      );
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'binary' }), table), (text) => {
        const { contents, issues } = readSheetCsv(text, START);
        for (const pad of PADS) {
          for (const column of LENGTH_COLUMNS) {
            const mm = lengthIn(contents, pad, column)?.mm ?? 0;
            expect(Number.isFinite(mm)).toBe(true);
          }
        }
        expect(issues.every((i) => i.message !== '')).toBe(true);
      }),
      { seed: 1203, numRuns: 400 },
    );
  });
});

describe('a text cell', () => {
  it('is harmless to a spreadsheet, and comes back as it was', () => {
    for (const text of ['=1+1', '+1', '-1', '@SUM(A1)', '\tx', "'=x", "''-y"]) {
      expect(harmlessText(text)).toBe(`'${text}`);
    }
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.stringMatching(/^'{0,3}[=+\-@\t\r].*$/)), (text) => {
        expect(plainText(harmlessText(text))).toBe(text);
        expect(harmlessText(text)).not.toMatch(/^[=+\-@\t\r]/);
      }),
      { seed: 1204 },
    );
  });

  it('of a name goes out harmless and comes in as the name', () => {
    const named = readSheetCsv(sheet('padNumber,padName', '7,"=HYPERLINK(""x"")"'), START).contents;
    const written = writeSheetCsv(named);
    expect(written).toContain(`7,e,"'=HYPERLINK(""x"")",`);
    expect(readSheetCsv(written, named).contents).toBe(named);
    expect(readSheetCsv(written, START).contents.horn.document.holes.find((h) => h.id === 'e')?.name).toBe(
      '=HYPERLINK("x")',
    );
  });
});
