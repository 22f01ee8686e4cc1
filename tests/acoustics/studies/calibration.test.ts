import { describe, expect, it } from 'vitest';
import {
  airWith,
  calibrate,
  calibratedParts,
  EXPECTED,
  findCauses,
  FINGERINGS,
  hornWith,
  inOrder,
  makeAirColumn,
  MODEL_CENTS,
  octavesFromA4,
  playWholeHorn,
  slopeOf,
  standingPad,
  UNKNOWNS,
  withOpening,
  type Amounts,
  type Calibration,
  type Fingering,
  type LoggedNote,
  type Setup,
  type Unknown,
} from '../../../src/acoustics/index.ts';
import { demoHorn, fingeringOf, type DemoName } from '../demo-horns.ts';
import { seededNormal } from '../seeded.ts';
import { LONG_ROUNDING, relative } from '../tolerances.ts';

const air = makeAirColumn();
const { horn, setup } = demoHorn('alto');
const USUAL = FINGERINGS.filter(({ way }) => way === '');
/** Every third note, for tests that play often. */
const SOME = USUAL.filter((_, i) => i % 3 === 0);
const OF_THE_HORN = UNKNOWNS.slice(0, 4);

interface Planted {
  readonly truth: Amounts;
  readonly fingerings?: readonly Fingering[];
  /** cents of noise, and where it comes from */
  readonly noise?: number;
  readonly normal?: () => number;
  readonly setup?: Setup;
  readonly name?: DemoName;
}

/** A log as a horn with that truth would be played, each take stated to ±3 cents. */
function planted({ truth, fingerings = USUAL, noise = 0, normal, ...more }: Planted): LoggedNote[] {
  const played = more.name === undefined ? horn : demoHorn(more.name).horn;
  const there = more.setup ?? (more.name === undefined ? setup : demoHorn(more.name).setup);
  const notes = playWholeHorn(hornWith(played, truth), there, airWith(air, truth), {
    fingerings,
    answers: false,
  });
  return notes.map(({ fingering, outcome }) => {
    if (!outcome.found) throw new Error(`no resonance for ${fingering.id}`);
    const trend = (truth['player’s trend'] ?? 0) * octavesFromA4(fingering.note);
    return { fingering, cents: outcome.cents + trend + noise * (normal?.() ?? 0), plusMinus: 3 };
  });
}

const drawn = (unknowns: readonly Unknown[], normal: () => number): Amounts =>
  Object.fromEntries(unknowns.map((unknown) => [unknown, EXPECTED[unknown] * normal()]));

const amountOf = ({ fitted }: Calibration, unknown: Unknown) =>
  fitted.find((each) => each.unknown === unknown)!;

const TRUTH: Amounts = {
  'mouthpiece volume': 0.7e-6,
  'mouthpiece place': 3e-3,
  temperature: -2,
  'bell end': 6e-3,
};

/** What was known beforehand draws towards itself; cents left of that where takes are stated to ±0.3. */
const DRAWN_CENTS = 0.03;

describe('a calibration', () => {
  it.each(['alto', 'tenor'] as const)(
    'of a clean log plays every note of the %s as it was played',
    (name) => {
      const one = demoHorn(name);
      const notes = planted({ truth: TRUTH, name }).map((n) => ({ ...n, plusMinus: 0.3 }));
      const found = calibrate([{ ...one, notes }], air, OF_THE_HORN);
      expect(found.problem).toBeNull();
      expect(found.unexplained).toBe(0);
      for (const { standing, fit } of found.notes) {
        expect(standing).toBe('fitted');
        expect(Math.abs(fit!.residual)).toBeLessThan(DRAWN_CENTS);
      }
    },
  );

  it('is off by as much as it says, over many noisy logs', () => {
    const normal = seededNormal(20);
    const ratios: number[] = [];
    for (let i = 0; i < 30; i++) {
      const truth = drawn(OF_THE_HORN, normal);
      const notes = planted({ truth, fingerings: SOME, noise: 3, normal });
      const found = calibrate([{ horn, setup, notes }], air, OF_THE_HORN);
      ratios.push(...found.fitted.map((f) => (f.amount - truth[f.unknown]!) / f.plusMinus));
    }
    const rms = Math.hypot(...ratios) / Math.sqrt(ratios.length);
    // Three standard errors of a standard deviation, the amounts of one fit counted as two numbers.
    const THREE_ERRORS = 3 / Math.sqrt(ratios.length);
    expect(ratios).toHaveLength(120);
    expect(Math.abs(rms - 1)).toBeLessThan(THREE_ERRORS);
  });

  it('finds scatter that nobody stated, and widens its ± by it', () => {
    const normal = seededNormal(3);
    const calm = calibrate([{ horn, setup, notes: planted({ truth: TRUTH }) }], air, OF_THE_HORN);
    const notes = planted({ truth: TRUTH, noise: 12, normal });
    const rough = calibrate([{ horn, setup, notes }], air, OF_THE_HORN);
    expect(rough.unexplainedFrom).toBe('notes');
    // 12 cents in all, of which 3 were stated; of some thirty notes to a third.
    expect(relative(rough.unexplained, Math.sqrt(12 ** 2 - 3 ** 2))).toBeLessThan(1 / 3);
    expect(amountOf(rough, 'temperature').plusMinus).toBeGreaterThan(
      1.5 * amountOf(calm, 'temperature').plusMinus,
    );
  });

  it('survives two notes that are wrong by fifty cents, and names them', () => {
    const normal = seededNormal(5);
    const clean = planted({ truth: TRUTH, noise: 3, normal });
    const wrong: Readonly<Record<string, number>> = { D5: 50, 'G#4': -50 };
    const spoilt = clean.map((n) => ({ ...n, cents: n.cents + (wrong[n.fingering.id] ?? 0) }));
    const without = clean.filter(({ fingering }) => wrong[fingering.id] === undefined);
    const found = calibrate([{ horn, setup, notes: spoilt }], air, OF_THE_HORN);
    const reference = calibrate([{ horn, setup, notes: without }], air, OF_THE_HORN);
    const leftOut = found.notes.filter(({ standing }) => standing === 'left out');
    expect(leftOut.map(({ note }) => note.fingering.id).sort()).toEqual(['D5', 'G#4']);
    for (const { note, fit } of leftOut) {
      expect(Math.abs(fit!.residual - wrong[note.fingering.id])).toBeLessThan(
        3 * Math.hypot(3, fit!.plusMinus),
      );
    }
    for (const { unknown, amount } of reference.fitted) {
      expect(Math.abs(amountOf(found, unknown).amount - amount)).toBeLessThan(
        LONG_ROUNDING * EXPECTED[unknown],
      );
    }
  });

  it('is the same in whatever order notes and unknowns come', () => {
    const normal = seededNormal(8);
    const notes = planted({ truth: TRUTH, fingerings: SOME, noise: 4, normal });
    const there = calibrate([{ horn, setup, notes }], air, UNKNOWNS);
    const shuffled = [...notes].sort((a, b) => a.cents - b.cents);
    const other = calibrate([{ horn, setup, notes: shuffled }], air, [...UNKNOWNS].reverse());
    expect(other.fitted.map(({ unknown }) => unknown)).toEqual([...UNKNOWNS]);
    for (const { unknown, amount, plusMinus } of there.fitted) {
      const again = amountOf(other, unknown);
      expect(Math.abs(again.amount - amount)).toBeLessThan(LONG_ROUNDING * EXPECTED[unknown]);
      expect(relative(again.plusMinus, plusMinus)).toBeLessThan(LONG_ROUNDING);
    }
    expect(Math.abs(other.unexplained - there.unexplained)).toBeLessThan(1e-6);
  });

  it('of no notes leaves everything as described, to within what was known', () => {
    const found = calibrate([{ horn, setup, notes: [] }], air, UNKNOWNS);
    for (const { unknown, amount, plusMinus } of found.fitted) {
      expect(amount).toBe(0);
      expect(relative(plusMinus, EXPECTED[unknown])).toBeLessThan(LONG_ROUNDING);
    }
    expect(found.told).toMatchObject({ ways: 0, alike: [] });
    expect(found.told.unknowns.map(({ standing }) => standing)).toEqual(UNKNOWNS.map(() => 'not told'));
    expect([found.unexplained, found.unexplainedFrom]).toEqual([MODEL_CENTS, 'model']);
  });

  it('that fits nothing says how far every note is from the horn as described', () => {
    const notes = planted({ truth: { temperature: 1 } });
    const found = calibrate([{ horn, setup, notes }], air, []);
    const described = planted({ truth: {} });
    expect(found.fitted).toEqual([]);
    found.notes.forEach(({ fit }, i) => {
      expect(fit!.residual).toBe(notes[i].cents - described[i].cents);
      expect(fit!.plusMinus).toBe(3);
    });
    expect(hornWith(horn, found.amounts)).toBe(horn);
    expect(airWith(air, found.amounts)).toBe(air);
  });

  it('shares its unknowns between two setups of a horn', () => {
    const normal = seededNormal(9);
    const lower = withOpening(setup, 'e', { at: 'front', height: 4e-3 });
    const [first, second] = [SOME.filter((_, i) => i % 2 === 0), SOME.filter((_, i) => i % 2 === 1)];
    const notes = (of: Setup, fingerings: readonly Fingering[]) =>
      planted({ truth: TRUTH, setup: of, fingerings, noise: 1, normal });
    const both = calibrate(
      [
        { horn, setup, notes: notes(setup, first) },
        { horn, setup: lower, notes: notes(lower, second) },
      ],
      air,
      ['temperature', 'mouthpiece place'],
    );
    expect(both.notes.map((n) => n.setup)).toEqual([...first.map(() => 0), ...second.map(() => 1)]);
    const one = calibrate([{ horn, setup, notes: notes(setup, first) }], air, [
      'temperature',
      'mouthpiece place',
    ]);
    expect(amountOf(both, 'temperature').plusMinus).toBeLessThan(amountOf(one, 'temperature').plusMinus);
  });

  it('of one note tells one thing at most', () => {
    const notes = planted({ truth: TRUTH, fingerings: [fingeringOf('A4')] });
    const { told, unexplainedFrom } = calibrate([{ horn, setup, notes }], air, OF_THE_HORN);
    expect(unexplainedFrom).toBe('model');
    expect(told.ways).toBe(1);
    // One number has one variance to take away among them all.
    const taken = told.unknowns.reduce((sum, { narrowed }) => sum + 1 - narrowed ** 2, 0);
    expect(taken).toBeLessThanOrEqual(1);
    expect(told.unknowns.filter(({ standing }) => standing === 'not told').length).toBeGreaterThanOrEqual(2);
  });

  it('says of two unknowns that play alike that only both together are told', () => {
    // High notes alone: warmer air and a mouthpiece pushed on both sharpen them, nearly in one proportion.
    const high = ['D6', 'Eb6', 'E6', 'F6', 'D5', 'E5', 'F5', 'G5', 'A5', 'B5'].map(fingeringOf);
    const notes = planted({ truth: {}, fingerings: high }).map((n) => ({ ...n, plusMinus: 1 }));
    const { told, covariance } = calibrate([{ horn, setup, notes }], air, [
      'mouthpiece volume',
      'mouthpiece place',
    ]);
    expect(told.alike).toHaveLength(1);
    const [pair] = told.alike;
    expect(pair).toMatchObject({ first: 'mouthpiece volume', second: 'mouthpiece place' });
    // More volume and further out both flatten: more of one is undone by less of the other.
    expect(pair.correlation).toBeLessThan(-0.9);
    expect(pair.secondPerFirst).toBeLessThan(0);
    expect(covariance[0][1]).toBeLessThan(0);
  });

  it('refuses cents that are no number, and a take without ±', () => {
    const note = { fingering: fingeringOf('A4'), cents: 3, plusMinus: 3 };
    const of = (more: Partial<LoggedNote>) => () =>
      calibrate([{ horn, setup, notes: [{ ...note, ...more }] }], air, []);
    expect(of({ cents: NaN })).toThrow('invalid pitch of A4: NaN cents');
    expect(of({ plusMinus: 0 })).toThrow('invalid ± of A4: 0 cents; expected more than 0');
  });

  it('that runs into air the formulas do not have stops at the best so far and says so', () => {
    const hot = makeAirColumn({ mouthpieceC: 44 });
    const notes = planted({ truth: {}, fingerings: SOME }).map((n) => ({
      ...n,
      cents: n.cents + 150,
      plusMinus: 0.5,
    }));
    const found = calibrate([{ horn, setup, notes }], hot, ['temperature']);
    expect(found.problem).not.toBeNull();
    expect(44 + amountOf(found, 'temperature').amount).toBeLessThanOrEqual(45);
  });
});

describe('the unknowns', () => {
  it.each(UNKNOWNS)('%s moves every note as its slope says', (unknown) => {
    const at = 0.4 * EXPECTED[unknown];
    const by = 0.02 * EXPECTED[unknown];
    const cents = (amount: number) => planted({ truth: { [unknown]: amount }, fingerings: SOME });
    const [below, above] = [cents(at - by), cents(at + by)];
    const truth = { [unknown]: at };
    const there = playWholeHorn(hornWith(horn, truth), setup, airWith(air, truth), { fingerings: SOME });
    there.forEach(({ fingering, outcome }, i) => {
      if (!outcome.found) throw new Error(`no resonance for ${fingering.id}`);
      const slope = slopeOf(unknown, outcome.answers!, fingering.note) * EXPECTED[unknown];
      const difference = ((above[i].cents - below[i].cents) / (2 * by)) * EXPECTED[unknown];
      // Pulled further out, the mouthpiece's bore is cut anew: cents per whole ± of the place.
      const CUT_ANEW = 2e-3;
      expect(Math.abs(slope - difference)).toBeLessThan(CUT_ANEW);
    });
  });

  it('come in one order, each once', () => {
    expect(inOrder(['temperature', 'mouthpiece volume', 'temperature'])).toEqual([
      'mouthpiece volume',
      'temperature',
    ]);
  });
});

describe('the ± of a calibrated pitch', () => {
  it('has the fit’s part by its covariance and the scatter nobody explained', () => {
    const normal = seededNormal(6);
    const notes = planted({ truth: TRUTH, noise: 8, normal });
    const found = calibrate([{ horn, setup, notes }], air, UNKNOWNS);
    const { answers } = found.notes[4].fit!;
    const parts = calibratedParts(found)(answers, 'cents');
    const g = found.fitted.map(({ unknown }) =>
      unknown === 'player’s trend' ? 0 : slopeOf(unknown, answers, 'A4'),
    );
    const square = found.covariance.flatMap((row, j) => row.map((c, k) => g[j] * c * g[k]));
    expect(relative(parts.calibration!, Math.sqrt(square.reduce((a, b) => a + b)))).toBeLessThan(
      LONG_ROUNDING,
    );
    expect(parts.wholeHorn).toBe(found.unexplained);
    expect(parts.wholeHorn).toBeLessThan(MODEL_CENTS);
  });
});

describe('the key that could explain a note', () => {
  const lowered = (mm: number): Setup => {
    const { pose } = standingPad(horn, setup, 'e');
    return withOpening(setup, 'e', { at: 'front', height: pose.front - mm * 1e-3 });
  };

  it('is the one that was lowered without being told, and by how much', () => {
    const normal = seededNormal(2);
    const notes = planted({ truth: TRUTH, setup: lowered(4.5), noise: 0.5, normal }).map((n) => ({
      ...n,
      plusMinus: 1,
    }));
    const played = [{ horn, setup, notes }];
    const found = calibrate(played, air, OF_THE_HORN);
    const causes = findCauses(found, played, air);
    const f4 = found.notes.findIndex(({ note }) => note.fingering.id === 'F4');
    const [best] = causes.get(f4)!;
    expect(best.key).toBe('e');
    expect(best.governs).toContain('F5');
    // The fit takes a part of it for itself: up to a third.
    expect(Math.abs(best.change * 1e3 + 4.5)).toBeLessThan(1.5);
  });

  it('is none where every note is within its ±, and none where no key can', () => {
    const notes = planted({ truth: TRUTH });
    const played = [{ horn, setup, notes }];
    expect([...findCauses(calibrate(played, air, OF_THE_HORN), played, air).values()].flat()).toEqual([]);
    // All holes shut: no key's venting reaches low B♭ but that of none.
    const flat = notes.map((n) => (n.fingering.id === 'Bb3' ? { ...n, cents: n.cents - 60 } : n));
    const bad = [{ horn, setup, notes: flat }];
    const found = calibrate(bad, air, OF_THE_HORN);
    const at = found.notes.findIndex(({ note }) => note.fingering.id === 'Bb3');
    expect(found.notes[at].standing).toBe('left out');
    expect(findCauses(found, bad, air).get(at)).toEqual([]);
  });
});
