import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FINGERINGS } from '../../src/acoustics/index.ts';
import { readPitchCsv, writePitchCsv } from '../../src/documents/pitch-log-csv.ts';
import {
  HEARD,
  notesPlayed,
  PLAYED_SETUPS,
  takesIn,
  withTake,
  withTakes,
  type Take,
} from '../../src/documents/pitch-log.ts';
import { visitSchema, type VisitDocument } from '../../src/documents/visit-document.ts';
import { onTheBench } from '../ui/demo.ts';

const visit: VisitDocument = onTheBench('alto').visit.document;
const tuner = (fingering: string, cents: number, more: Partial<Take> = {}): Take => ({
  fingering,
  cents,
  setup: 'as found',
  heard: 'tuner',
  ...more,
});

const anyTake: fc.Arbitrary<Take> = fc.record(
  {
    fingering: fc.constantFrom(...FINGERINGS.map(({ id }) => id)),
    cents: fc.double({ min: -200, max: 200, noNaN: true }).map((c) => Math.round(c * 100) / 100 + 0),
    setup: fc.constantFrom(...PLAYED_SETUPS),
    heard: fc.constantFrom(...HEARD),
    spreadCents: fc.integer({ min: 0, max: 100 }),
    leftOut: fc.constant(true),
  },
  { requiredKeys: ['fingering', 'cents', 'setup', 'heard'] },
);

describe('the pitch log of a visit', () => {
  it('is kept by the visit, and every fault of a take is named', () => {
    const logged = withTakes(visit, [tuner('F4', -3), tuner('Bb4 bis', 4.5, { spreadCents: 2 })]);
    expect(visitSchema.safeParse(logged).success).toBe(true);
    const wrong = { ...logged, played: [tuner('H4', 0), tuner('F4', 300)] };
    const messages = visitSchema.safeParse(wrong).error!.issues.map(({ message }) => message);
    expect(messages[0]).toMatch(/invalid fingering: "H4"; expected one such as "F4"/);
    expect(messages[1]).toMatch(/300 cents; expected -200 to 200 cents/);
  });

  it('names an unknown of the calibration that is named twice', () => {
    const twice = { ...visit, calibration: { unknowns: ['temperature', 'temperature'], inUse: false } };
    expect(visitSchema.safeParse(twice).error!.issues[0].message).toContain('named twice');
  });

  it('tells the setups apart', () => {
    const logged = withTakes(visit, [tuner('F4', 1), tuner('F4', 5, { setup: 'as set' })]);
    expect(takesIn(logged, 'as found').map(({ cents }) => cents)).toEqual([1]);
    expect(takesIn(logged, 'as set').map(({ cents }) => cents)).toEqual([5]);
  });

  it('loses nothing and keeps the order when one take is changed or taken out', () => {
    const logged = withTakes(visit, [tuner('F4', 1), tuner('G4', 2), tuner('A4', 3)]);
    expect(withTake(logged, 1, tuner('G4', 9)).played!.map(({ cents }) => cents)).toEqual([1, 9, 3]);
    expect(withTake(logged, 1, null).played!.map(({ cents }) => cents)).toEqual([1, 3]);
    const emptied = [0, 0, 0].reduce((now, index) => withTake(now, index, null), logged);
    expect(emptied).toEqual(visit);
  });
});

describe('a note’s takes', () => {
  it('come to their mean, or from three on to the middle one, whatever their order', () => {
    expect(notesPlayed([tuner('F4', 1), tuner('F4', 4)])[0]).toMatchObject({ count: 2, cents: 2.5 });
    fc.assert(
      fc.property(fc.shuffledSubarray([3, -40, 5], { minLength: 3 }), (cents) => {
        expect(notesPlayed(cents.map((c) => tuner('F4', c)))[0].cents).toBe(3);
      }),
      { seed: 3 },
    );
  });

  it('spread as single takes do, and one alone has no spread', () => {
    expect(notesPlayed([tuner('F4', 1)])[0].spreadCents).toBeNull();
    expect(notesPlayed([tuner('F4', 1), tuner('F4', 5)])[0].spreadCents).toBeCloseTo(Math.sqrt(8), 12);
  });

  it('that are left out are kept and count in nothing', () => {
    const [note] = notesPlayed([tuner('F4', 1), tuner('F4', 60, { leftOut: true })]);
    expect(note).toMatchObject({ count: 1, cents: 1, spreadCents: null });
    expect(note.takes).toHaveLength(2);
    expect(notesPlayed([tuner('F4', 60, { leftOut: true })])[0].cents).toBeNull();
  });

  it('stand in the order of the fingerings', () => {
    expect(notesPlayed([tuner('A4', 0), tuner('D4', 0)]).map(({ fingering }) => fingering)).toEqual([
      'D4',
      'A4',
    ]);
  });
});

describe('a log as a table', () => {
  it('comes back as it was, with points or commas', () => {
    fc.assert(
      fc.property(fc.array(anyTake, { minLength: 1, maxLength: 20 }), fc.boolean(), (takes, comma) => {
        expect(readPitchCsv(writePitchCsv(takes, comma), 'as set')).toEqual({ takes, issues: [] });
      }),
      { seed: 11 },
    );
  });

  it('may be two columns without a header, as a tuner’s owner types them', () => {
    const { takes, issues } = readPitchCsv('f♯4;−3,5\nB♭4 bis;+4 cents\n', 'as set');
    expect(issues).toEqual([]);
    expect(takes).toEqual([
      { fingering: 'F#4', cents: -3.5, setup: 'as set', heard: 'table' },
      { fingering: 'Bb4 bis', cents: 4, setup: 'as set', heard: 'table' },
    ]);
  });

  it('gets a sentence for every row that is no take, and keeps the others', () => {
    const text = 'fingering,cents,setup\nF4,3,\nH4,2,\nG4,flat,\nA4,1,before\nB4,-4,as set\n';
    const { takes, issues } = readPitchCsv(text, 'as found');
    expect(takes.map(({ fingering }) => fingering)).toEqual(['F4', 'B4']);
    expect(issues).toEqual([
      { row: 3, message: 'invalid fingering: "H4"; expected one such as F4 or Bb4 bis' },
      { row: 4, message: 'invalid cents of G4: "flat"; expected −200 to 200 cents' },
      { row: 5, message: 'invalid setup of A4: "before"; expected as found or as set' },
    ]);
  });

  it('that is none is refused in a sentence', () => {
    expect(readPitchCsv('', 'as found').issues[0].message).toContain('empty');
    expect(readPitchCsv('a,b\n1,2\n', 'as found').issues[0].message).toContain(
      'expected "fingering" and "cents"',
    );
    expect(readPitchCsv('fingering,cents\n"F4,3\n', 'as found').issues[0].message).toContain('quotes');
  });

  it('is never an exception, whatever it holds', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 200 }), (text) => {
        const { takes } = readPitchCsv(text, 'as found');
        expect(visitSchema.safeParse({ ...visit, played: takes }).success).toBe(true);
      }),
      { seed: 5, numRuns: 300 },
    );
  });
});
