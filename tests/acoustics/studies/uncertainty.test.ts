import { describe, expect, it } from 'vitest';
import {
  budgetOf,
  DEFAULT_PAD_MODEL,
  frontSlopes,
  linkName,
  makeAirColumn,
  makeBudget,
  measureNext,
  MODEL_CENTS,
  noteSlopes,
  playWholeHorn,
  prepareReadings,
  scaleBudgets,
  scaledPadModel,
  shareSlopes,
  standingPad,
  standingThere,
  studyVenting,
  asItStands,
  withMouthpiecePulled,
  withOpening,
  type Budget,
  type Horn,
  type PlusMinus,
  type Reading,
  type Setup,
} from '../../../src/acoustics/index.ts';
import { demoHorn, fingeringOf } from '../demo-horns.ts';
import { seededNormal } from '../seeded.ts';
import { relative } from '../tolerances.ts';

const air = makeAirColumn();
const { horn, setup } = demoHorn('alto');

/** Readings as they are taken at the bench, m: small enough that answers stay in proportion within {@link TRIAL}. */
const USUAL = {
  opening: 1e-4,
  padThickness: 1e-4,
  padRadius: 1e-4,
  hingeDistance: 3e-4,
  hingeHeight: 3e-4,
  rimThickness: 1e-4,
  holeRadius: 5e-5,
  chimney: 1e-4,
  place: 3e-4,
} as const;
const VENT = { holeRadius: 2e-5, chimney: 1e-4, place: 3e-4 };

const everything: PlusMinus = {
  keys: new Map(horn.holes.map(({ id, hinge }) => [id, hinge === null ? VENT : USUAL])),
  links: new Map(
    horn.keywork.links.flatMap(({ driver, driven, ratio }) =>
      ratio === undefined ? [] : [[linkName(driver, driven), 0.02 * ratio]],
    ),
  ),
  temperature: 1,
  mouthpieceVolume: 2e-7,
  mouthpiecePlace: 5e-4,
};

/** Every reading off by a draw of its own, or by what is given. */
function off(
  of: { readonly horn: Horn; readonly setup: Setup },
  by: PlusMinus,
  draw: (id: string, kind: string) => number,
): { horn: Horn; setup: Setup; airC: number } {
  const each = (id: string, kind: keyof typeof USUAL): number =>
    (by.keys.get(id)?.[kind] ?? 0) * (by.keys.get(id)?.[kind] === undefined ? 0 : draw(id, kind));
  const holes = of.horn.holes.map((hole) => ({
    ...hole,
    x: hole.x + each(hole.id, 'place'),
    holeRadius: hole.holeRadius + each(hole.id, 'holeRadius'),
    chimney: hole.chimney + each(hole.id, 'chimney'),
    rimThickness: hole.rimThickness + each(hole.id, 'rimThickness'),
    hinge:
      hole.hinge === null
        ? null
        : {
            distance: hole.hinge.distance + each(hole.id, 'hingeDistance'),
            height: hole.hinge.height + each(hole.id, 'hingeHeight'),
          },
  }));
  const links = of.horn.keywork.links.map((link) => {
    const name = linkName(link.driver, link.driven);
    const plusMinus = by.links?.get(name) ?? 0;
    return link.ratio === undefined || plusMinus === 0
      ? link
      : { ...link, ratio: link.ratio + plusMinus * draw(name, 'linkRatio') };
  });
  const keys = new Map(
    [...of.setup.keys].map(([id, key]) => [
      id,
      {
        opening: { ...key.opening, height: key.opening.height + each(id, 'opening') },
        padRadius: key.padRadius + each(id, 'padRadius'),
        padThickness: key.padThickness + each(id, 'padThickness'),
      },
    ]),
  );
  const day = (kind: 'temperature' | 'mouthpieceVolume' | 'mouthpiecePlace'): number =>
    by[kind] === undefined ? 0 : by[kind] * draw('horn', kind);
  const built = {
    ...of.horn,
    holes,
    keywork: { ...of.horn.keywork, links },
    extraMouthpieceVolume: of.horn.extraMouthpieceVolume + day('mouthpieceVolume'),
  };
  return {
    horn: withMouthpiecePulled(built, day('mouthpiecePlace')),
    setup: { keys },
    airC: air.mouthpieceC + day('temperature'),
  };
}

/** Trials, and three standard errors of the spread of so many, with what proportion leaves open. */
const TRIALS = 400;
const TRIAL = 3 / Math.sqrt(2 * TRIALS) + 0.02;

const spreadOf = (values: readonly number[]): number => {
  const mean = values.reduce((sum, v) => sum + v, 0) / values.length;
  return Math.sqrt(values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / (values.length - 1));
};

/** The E key so low that its arm rules F♯ auxiliary and what hangs on it, and G read at its centre. */
const ruled = (() => {
  const low = withOpening(setup, 'e', { at: 'front', height: 6e-3 });
  const { pose } = standingPad(horn, low, 'g');
  return withOpening(low, 'g', { at: 'centre', height: pose.centre });
})();

describe('the ± of a note', () => {
  const ids = ['D4', 'F4', 'G4', 'G#4', 'A4', 'B4', 'C#5', 'F5', 'D6'];
  const budgets = scaleBudgets(horn, ruled, air, { plusMinus: everything });

  it('is the spread of seeded trials in which every reading of the horn errs on its own', () => {
    expect(standingPad(horn, ruled, 'f-sharp-auxiliary').ruledBy?.driver).toBe('e');
    const random = seededNormal(11);
    const fingerings = ids.map(fingeringOf);
    const trials = Array.from({ length: TRIALS }, () => {
      const { airC, ...there } = off({ horn, setup: ruled }, everything, random);
      return playWholeHorn(there.horn, there.setup, makeAirColumn({ mouthpieceC: airC }), {
        answers: false,
        fingerings,
      }).map(({ outcome }) => {
        if (!outcome.found) throw new Error('lost');
        return outcome.resonance;
      });
    });
    ids.forEach((id, i) => {
      const { cents, logHeight } = budgets.get(id)!;
      const byReadings = (budget: Budget): number => Math.hypot(...budget.readings.map((r) => r.effect));
      const pitch = spreadOf(trials.map((trial) => 1200 * Math.log2(trial[i].frequency)));
      expect(relative(pitch, byReadings(cents))).toBeLessThan(TRIAL);
      const height = spreadOf(trials.map((trial) => Math.log(trial[i].height)));
      expect(relative(height, byReadings(logHeight))).toBeLessThan(TRIAL);
    });
  });

  it('counts the pad model’s error on all pads at once', () => {
    const { relativeError } = DEFAULT_PAD_MODEL;
    const played = [1 - relativeError, 1 + relativeError].map((factor) =>
      playWholeHorn(horn, ruled, air, {
        answers: false,
        padModel: scaledPadModel(DEFAULT_PAD_MODEL, factor),
      }),
    );
    played[0].forEach(({ fingering, outcome }, i) => {
      const high = played[1][i].outcome;
      if (!outcome.found || !high.found) throw new Error('lost');
      const half = Math.abs(high.cents - outcome.cents) / 2;
      const { padModel } = budgets.get(fingering.id)!.cents;
      // Five per cent is no small change: curvature.
      expect(Math.abs(Math.abs(padModel) - half)).toBeLessThan(0.02 * half + 1e-3);
    });
  });

  it('is never below what a plane-wave model may err by, as long as nothing was fitted', () => {
    for (const { cents } of budgets.values()) {
      expect(cents.wholeHorn).toBe(MODEL_CENTS);
      expect(cents.plusMinus).toBeGreaterThanOrEqual(MODEL_CENTS);
    }
    const exact = scaleBudgets(horn, setup, air, {
      padModel: { ...DEFAULT_PAD_MODEL, relativeError: 0 },
      absolute: () => ({}),
    });
    for (const { cents } of exact.values()) expect(cents.plusMinus).toBe(0);
  });
});

describe('the ± of a standing key', () => {
  it('is the spread of seeded trials, front and vent share, by its own stop, its hinge and the links', () => {
    const ids = ['e', 'f-sharp-auxiliary', 'g-sharp', 'bis', 'g'];
    const readings = prepareReadings(horn, ruled, air, everything);
    const random = seededNormal(5);
    const trials = Array.from({ length: TRIALS }, () => off({ horn, setup: ruled }, everything, random));
    for (const id of ids) {
      const sure = { ...DEFAULT_PAD_MODEL, relativeError: 0 };
      const there = trials.map((trial) => standingThere(trial.horn, trial.setup, id, DEFAULT_PAD_MODEL));
      const front = budgetOf(readings, frontSlopes(id), sure).plusMinus;
      expect(relative(spreadOf(there.map((t) => t.front)), front)).toBeLessThan(TRIAL);
      const share = budgetOf(readings, shareSlopes(horn, ruled, id, DEFAULT_PAD_MODEL), sure).plusMinus;
      expect(relative(spreadOf(there.map((t) => t.ventShare)), share)).toBeLessThan(TRIAL);
    }
  });
});

describe('the ± of the point of diminishing return', () => {
  /** m: what bisection leaves, over the whole of a step either way. */
  const BISECTED = 1e-5;
  /** Another note may come to decide, and a hinge's arm bends the answer a little. */
  const BENT = 0.1;
  const SURE = { ...DEFAULT_PAD_MODEL, relativeError: 0 };
  const pointOf = (of: { horn: Horn; setup: Setup }, id: string, padModel = DEFAULT_PAD_MODEL): number => {
    const found = studyVenting(of.horn, of.setup, id, air, { points: 2, padModel }).diminishingReturn;
    if (found.kind === 'none in reach') throw new Error(`${id} has an answer`);
    return found.at.pose.front;
  };

  it.each([
    ['e', 'vent share'],
    ['b', 'pitch'],
  ] as const)('of %s, decided by %s, is what each of its readings moves it by', (id, by) => {
    const study = studyVenting(horn, setup, id, air, { points: 2, plusMinus: everything });
    if (study.diminishingReturn.kind === 'none in reach') throw new Error(`${id} has an answer`);
    expect(study.diminishingReturn.decidedBy.by).toBe(by);
    const { readings } = study.budgets.diminishingReturn!;
    const own = readings.filter(({ reading }) => reading.id === id);
    expect(own.length).toBeGreaterThan(4);
    for (const { reading, effect } of own) {
      const one = (way: number) =>
        off({ horn, setup }, everything, (of, kind) => (of === id && kind === reading.kind ? way : 0));
      const moved = (pointOf(one(1), id) - pointOf(one(-1), id)) / 2;
      expect(Math.abs(effect - moved)).toBeLessThan(BENT * Math.abs(moved) + BISECTED);
    }
    // Where the key stands now does not matter to where it should.
    expect(own.map(({ reading }) => reading.kind)).not.toContain('opening');
  });

  it('counts what the pad model may be off by', () => {
    const study = studyVenting(horn, setup, 'e', air, { points: 2 });
    const { padModel, plusMinus } = study.budgets.diminishingReturn!;
    expect(plusMinus).toBe(Math.abs(padModel));
    const { relativeError } = DEFAULT_PAD_MODEL;
    const [low, high] = [1 - relativeError, 1 + relativeError].map((factor) =>
      pointOf({ horn, setup }, 'e', scaledPadModel(DEFAULT_PAD_MODEL, factor)),
    );
    expect(Math.abs(padModel - (high - low) / 2)).toBeLessThan((BENT * Math.abs(high - low)) / 2 + BISECTED);
    expect(
      studyVenting(horn, setup, 'e', air, { points: 2, padModel: SURE }).budgets.diminishingReturn,
    ).toEqual(makeBudget([]));
  });

  it('is not said where the least opening decides', () => {
    const study = studyVenting(horn, setup, 'e', air, {
      points: 2,
      thresholds: { step: 0.5e-3, cents: 1e3, share: 10 },
    });
    expect(study.diminishingReturn).toMatchObject({ decidedBy: { by: 'least opening' } });
    expect(study.budgets.diminishingReturn).toBeNull();
  });
});

describe('the change that a study promises', () => {
  it('is surer than either pitch, and off by the opening it starts from', () => {
    const study = studyVenting(horn, setup, 'e', air, { points: 2, plusMinus: everything });
    for (const [id, change] of study.budgets.changes) {
      expect(change.wholeHorn).toBe(0);
      expect(change.plusMinus).toBeLessThan(0.1 * study.budgets.notes.get(id)!.plusMinus);
    }
    const f4 = study.budgets.changes.get('F4')!;
    const { readings } = f4;
    expect(readings[0].reading).toMatchObject({ id: 'e' });
    const played = playWholeHorn(...standing(), air, { fingerings: [fingeringOf('F4')] });
    const { outcome } = played[0];
    if (!outcome.found) throw new Error('lost');
    const slope = noteSlopes(outcome.answers!, 'cents').keys.get('e')!.front!;
    const opening = readings.find(({ reading }) => reading.id === 'e' && reading.kind === 'opening')!;
    expect(opening.effect).toBeCloseTo(-slope * USUAL.opening, 6);
  });

  function standing(): [Horn, Setup] {
    const there = asItStands(horn, setup);
    return [there.horn, there.setup];
  }
});

describe('what to measure next', () => {
  const reading = (id: string, plusMinus: number): Reading => ({
    id,
    kind: 'hingeDistance',
    value: 0.02,
    at: null,
    plusMinus,
  });
  const budget = makeBudget(
    [
      { reading: reading('a', 4), effect: -0.6 },
      { reading: reading('b', 1), effect: 0.3 },
      { reading: reading('c', 1), effect: 0.001 },
      { reading: reading('d', 0.1), effect: 0.2 },
    ],
    { padModel: 0.1 },
  );

  it('ranks by how much of the ± goes, alone and together', () => {
    const next = measureNext(budget, ({ id }) => (id === 'a' ? 0.4 : 0.5));
    expect(next.map((n) => n.reading.id)).toEqual(['a', 'b']);
    const rest = (a: number, b: number): number => Math.hypot(a, b, 0.001, 0.2, 0.1);
    expect(next[0].alone).toBeCloseTo(rest(0.06, 0.3), 12);
    expect(next[0].together).toBe(next[0].alone);
    expect(next[1].alone).toBeCloseTo(rest(0.6, 0.15), 12);
    expect(next[1].together).toBeCloseTo(rest(0.06, 0.15), 12);
  });

  it('names nothing that cannot be measured better, or that would not show', () => {
    expect(measureNext(budget, () => null)).toEqual([]);
    expect(measureNext(budget, ({ plusMinus }) => plusMinus)).toEqual([]);
    expect(measureNext(makeBudget([]), () => 0)).toEqual([]);
  });

  it('tells of a horn known from an example only to measure what the answer hangs on, and keeps its promise', () => {
    const wide: PlusMinus = {
      keys: new Map([['d', { hingeDistance: 4e-3, holeRadius: 1e-3, chimney: 1e-3, rimThickness: 4e-4 }]]),
    };
    const study = studyVenting(horn, setup, 'd', air, { points: 2, plusMinus: wide });
    const next = measureNext(study.budgets.diminishingReturn!, ({ kind }) =>
      kind === 'hingeDistance' ? 5e-4 : 1e-4,
    );
    const [best] = next;
    const narrowed: PlusMinus = {
      keys: new Map([['d', { ...wide.keys.get('d'), [best.reading.kind]: best.becomes }]]),
    };
    const again = studyVenting(horn, setup, 'd', air, { points: 2, plusMinus: narrowed });
    expect(again.budgets.diminishingReturn!.plusMinus).toBeCloseTo(best.alone, 9);
    for (let i = 1; i < next.length; i++) expect(next[i].alone).toBeGreaterThanOrEqual(next[i - 1].alone);
  });
});

describe('a ± that is no ±', () => {
  it.each([-1e-3, NaN, Infinity])('%s is refused with its name', (hingeDistance) => {
    const by: PlusMinus = { keys: new Map([['e', { hingeDistance }]]) };
    expect(() => prepareReadings(horn, setup, air, by)).toThrow(/± of E, hinge distance/);
  });

  it('of a link or of the day is refused with its name and unit', () => {
    expect(() => prepareReadings(horn, setup, air, { keys: new Map(), temperature: -1 })).toThrow(
      /air temperature: -1 °C/,
    );
    const links = new Map([['e > nothing', 0.1]]);
    expect(() => prepareReadings(horn, setup, air, { keys: new Map(), links })).toThrow(/"e > nothing"/);
  });
});
