import { beforeAll, describe, expect, it } from 'vitest';
import {
  makeAirColumn,
  ownPose,
  playScale,
  playWholeHorn,
  withBellLonger,
  withMouthpiecePulled,
  withOpening,
  type AirColumn,
  type Answer,
  type Geometry,
  type Horn,
  type NoteAnswers,
  type Setup,
  type ToneHole,
  type WholeHornNote,
  type WholeHornOptions,
} from '../../../src/acoustics/index.ts';
import { demoHorn } from '../demo-horns.ts';

/**
 * What a derivative may differ from a five-point central difference: relative 1e-6, or the difference's own
 * rounding (cents and log heights are good to about 1e-9 and 1e-11 here).
 */
const RELATIVE = 1e-6;
const CENTS_ROUNDING = 1e-9;
const HEIGHT_ROUNDING = 1e-11;

interface Case {
  readonly horn: Horn;
  readonly setup: Setup;
  readonly air: AirColumn;
}

/** Moist air that cools towards the bell, and an E key set so low that its arm rules F♯ auxiliary and what hangs on it. */
function ruledCase(name: 'alto' | 'tenor'): Case {
  const { horn, setup } = demoHorn(name);
  return {
    horn,
    setup: withOpening(setup, 'e', { at: 'front', height: 7e-3 }),
    air: makeAirColumn({ mouthpieceC: 29, bellC: 24, humidity: 0.6 }),
  };
}

function play(c: Case, options: WholeHornOptions): WholeHornNote[] {
  return playWholeHorn(c.horn, c.setup, c.air, options);
}

/** Worst disagreement between derivative and difference, in units of what is allowed. */
function worstOf(
  base: readonly WholeHornNote[],
  options: WholeHornOptions,
  move: (by: number) => Case,
  step: number,
  answerOf: (answers: NoteAnswers) => Answer,
  relativeError = RELATIVE,
): number {
  const runs = [1, -1, 2, -2].map((k) => play(move(k * step), options));
  let worst = 0;
  base.forEach((note, i) => {
    if (!note.outcome.found) return;
    const moved = runs.map((run) => {
      const { outcome } = run[i];
      if (!outcome.found) throw new Error(`${note.fingering.id} lost`);
      return outcome;
    });
    const difference = (of: (o: (typeof moved)[number]) => number): number =>
      (8 * (of(moved[0]) - of(moved[1])) - (of(moved[2]) - of(moved[3]))) / (12 * step);
    const { cents, logHeight } = answerOf(note.outcome.answers!);
    const centsByDifference = difference((o) => o.cents);
    const heightByDifference = difference((o) => Math.log(o.resonance.height));
    worst = Math.max(
      worst,
      Math.abs(cents - centsByDifference) /
        (relativeError * Math.abs(centsByDifference) + CENTS_ROUNDING / step),
      Math.abs(logHeight - heightByDifference) /
        (relativeError * Math.abs(heightByDifference) + HEIGHT_ROUNDING / step),
    );
  });
  return worst;
}

describe.each([
  ['alto', false],
  ['tenor', false],
  ['alto', true],
] as const)('on the demo %s, neighbours heard: %s', (name, neighbours) => {
  const here = ruledCase(name);
  let base: WholeHornNote[];
  let options: WholeHornOptions;
  beforeAll(() => {
    base = play(here, { neighbours });
    // A note without a resonance would be passed over below, and prove nothing.
    expect(base.every((note) => note.outcome.found)).toBe(true);
    options = {
      neighbours,
      near: new Map(
        base.flatMap((n) =>
          n.outcome.found ? [[n.fingering.id, n.outcome.resonance.frequency] as const] : [],
        ),
      ),
    };
  });

  // With neighbours every evaluation solves a dense system; a few keys stand for all.
  const ids = neighbours ? ['e', 'd', 'body-vent'] : here.horn.holes.map((h) => h.id);
  const withHole = (id: string, change: { holeRadius?: number; chimney?: number }): Case => ({
    ...here,
    horn: {
      ...here.horn,
      holes: here.horn.holes.map((h) =>
        h.id === id
          ? {
              ...h,
              holeRadius: h.holeRadius + (change.holeRadius ?? 0),
              chimney: h.chimney + (change.chimney ?? 0),
            }
          : h,
      ),
    },
  });

  it.each(ids)('the answers to %s are central differences: opening, hole radius, chimney', (id) => {
    const index = here.horn.holes.findIndex((h) => h.id === id);
    if (here.setup.keys.has(id)) {
      const { front } = ownPose(here.horn, here.setup, id);
      const open = (by: number): Case => ({
        ...here,
        setup: withOpening(here.setup, id, { at: 'front', height: front + by }),
      });
      expect(worstOf(base, options, open, 5e-6, (a) => a.keys[index].opening)).toBeLessThan(1);
    }
    const widen = (by: number): Case => withHole(id, { holeRadius: by });
    const raise = (by: number): Case => withHole(id, { chimney: by });
    expect(worstOf(base, options, widen, 5e-6, (a) => a.keys[index].holeRadius)).toBeLessThan(1);
    expect(worstOf(base, options, raise, 5e-6, (a) => a.keys[index].chimney)).toBeLessThan(1);
  });

  const lone = ['d', 'g', 'b', 'palm-d', 'low-c'].filter((id) => !neighbours || id === 'd');
  it.each(lone)('the answer to the pad thickness of %s is that of a face sunk along its own normal', (id) => {
    const index = here.horn.holes.findIndex((h) => h.id === id);
    const key = here.setup.keys.get(id)!;
    const { centre, angle } = ownPose(here.horn, here.setup, id);
    const thicken = (by: number): Case => ({
      ...here,
      setup: {
        keys: new Map(here.setup.keys).set(id, {
          ...key,
          padThickness: key.padThickness + by,
          opening: { at: 'centre', height: centre - by * Math.cos(angle) },
        }),
      },
    });
    expect(worstOf(base, options, thicken, 5e-6, (a) => a.keys[index].padThickness)).toBeLessThan(1);
  });

  const keyed = neighbours ? ['e'] : [...here.setup.keys.keys()];
  it.each(keyed)('the answers to the pad, hinge and rim of %s are central differences', (id) => {
    const index = here.horn.holes.findIndex((h) => h.id === id);
    const key = here.setup.keys.get(id)!;
    const widerPad = (by: number): Case => ({
      ...here,
      setup: { keys: new Map(here.setup.keys).set(id, { ...key, padRadius: key.padRadius + by }) },
    });
    const withChange = (change: (hole: ToneHole) => Partial<ToneHole>): Case => ({
      ...here,
      horn: {
        ...here.horn,
        holes: here.horn.holes.map((h) => (h.id === id ? { ...h, ...change(h) } : h)),
      },
    });
    const rodAway = (by: number): Case =>
      withChange(({ hinge }) => ({ hinge: { ...hinge!, distance: hinge!.distance + by } }));
    const rodUp = (by: number): Case =>
      withChange(({ hinge }) => ({ hinge: { ...hinge!, height: hinge!.height + by } }));
    const thickRim = (by: number): Case =>
      withChange(({ rimThickness }) => ({ rimThickness: rimThickness + by }));
    const worst = (move: (by: number) => Case, of: Geometry): number =>
      worstOf(base, options, move, 5e-6, (a) => a.keys[index].geometry(of));
    expect(worst(widerPad, 'padRadius')).toBeLessThan(1);
    expect(worst(rodAway, 'hingeDistance')).toBeLessThan(1);
    expect(worst(rodUp, 'hingeHeight')).toBeLessThan(1);
    expect(worst(thickRim, 'rimThickness')).toBeLessThan(1);
  });

  it('the answer to the bell end is a central difference', () => {
    const longer = (by: number): Case => ({ ...here, horn: withBellLonger(here.horn, by) });
    expect(worstOf(base, options, longer, 1e-4, (a) => a.bell)).toBeLessThan(1);
  });

  it('the answers to temperature and mouthpiece volume are central differences', () => {
    const warm = (by: number): Case => ({
      ...here,
      air: makeAirColumn({ mouthpieceC: 29 + by, bellC: 24 + by, humidity: 0.6 }),
    });
    const swell = (by: number): Case => ({ ...here, horn: { ...here.horn, extraMouthpieceVolume: by } });
    expect(worstOf(base, options, warm, 0.02, (a) => a.temperature)).toBeLessThan(1);
    expect(worstOf(base, options, swell, 2e-9, (a) => a.mouthpieceVolume)).toBeLessThan(1);
  });
});

describe('what moves pieces of bore', () => {
  // The bore is cut anew, and each of its pieces has the losses of one radius.
  const RECUT = 2e-4;
  const { horn, setup } = demoHorn('alto');
  const here: Case = { horn, setup, air: makeAirColumn() };
  const base = play(here, {});
  const near = new Map(
    base.flatMap((n) => (n.outcome.found ? [[n.fingering.id, n.outcome.resonance.frequency] as const] : [])),
  );

  it('the answer to the place of the mouthpiece is a central difference', () => {
    const pull = (by: number): Case => ({ ...here, horn: withMouthpiecePulled(horn, by) });
    expect(worstOf(base, { near }, pull, 1e-4, (a) => a.mouthpiecePlace, RECUT)).toBeLessThan(1);
  });

  // A hole that moves shifts every cut between its neighbours: 3 cents per m are 0.003 cent per mm.
  const RECUT_CENTS_PER_METRE = 3;

  it.each(['e', 'bis', 'palm-d', 'neck-vent'])(
    'the answer to the place of %s is a central difference',
    (id) => {
      const index = horn.holes.findIndex((h) => h.id === id);
      const step = 1e-4;
      const centsAt = (by: number): number[] => {
        const holes = horn.holes.map((h) => (h.id === id ? { ...h, x: h.x + by } : h));
        return play({ ...here, horn: { ...horn, holes } }, { near, answers: false }).map(({ outcome }) =>
          outcome.found ? outcome.cents : NaN,
        );
      };
      const [before, after] = [centsAt(-step), centsAt(step)];
      base.forEach(({ outcome }, i) => {
        if (!outcome.found) throw new Error('every note has a resonance');
        const difference = (after[i] - before[i]) / (2 * step);
        const { cents } = outcome.answers!.keys[index].geometry('place');
        expect(Math.abs(cents - difference)).toBeLessThan(
          0.01 * Math.abs(difference) + RECUT_CENTS_PER_METRE,
        );
      });
    },
  );

  it('a mouthpiece pulled out and pushed back leaves the horn as it was', () => {
    const back = withMouthpiecePulled(withMouthpiecePulled(horn, 3e-3), -3e-3);
    const cents = (of: Horn): number[] =>
      play({ ...here, horn: of }, { answers: false }).map((n) => (n.outcome.found ? n.outcome.cents : NaN));
    const before = cents(horn);
    cents(back).forEach((c, i) => expect(c).toBeCloseTo(before[i], 6));
  });

  it('a mouthpiece pulled out flattens every note, the high ones most', () => {
    const answers = base.flatMap(({ outcome }) => (outcome.found ? [outcome.answers!.mouthpiecePlace] : []));
    for (const { cents } of answers) expect(cents).toBeLessThan(0);
    expect(answers[answers.length - 1].cents).toBeLessThan(2 * answers[0].cents);
  });

  it('a mouthpiece cannot be pushed on by half of itself', () => {
    expect(() => withMouthpiecePulled(horn, -horn.neckStart / 2)).toThrow(RangeError);
  });
});

describe('the whole horn', () => {
  it('plays the same notes as the scale', () => {
    const { horn, setup } = demoHorn('alto');
    const air = makeAirColumn();
    const whole = playWholeHorn(horn, setup, air);
    playScale(horn, setup, air).forEach((note, i) => {
      const { outcome } = whole[i];
      expect(outcome.found).toBe(note.played.found);
      if (outcome.found && note.played.found) {
        expect(outcome.resonance.frequency / note.played.resonance.frequency).toBeCloseTo(1, 9);
      }
    });
  });

  it('passes a lower-stack opening on to the pads it rules, and to none where the link has slack', () => {
    const { horn, setup } = demoHorn('alto');
    const air = makeAirColumn();
    const opening = (s: Setup): number => {
      const g4 = playWholeHorn(horn, s, air).find((n) => n.fingering.id === 'G4')!;
      if (!g4.outcome.found) throw new Error('G4 has a resonance');
      return g4.outcome.answers!.keys.find((k) => k.id === 'e')!.opening.cents;
    };
    const slack = opening(setup);
    const ruled = opening(withOpening(setup, 'e', { at: 'front', height: 7e-3 }));
    // G is first vented by F♯ auxiliary, which E's arm holds down when E stands at 7 mm.
    expect(ruled).toBeGreaterThan(4 * slack);
  });

  it('a pad that gains thickness acts as one that loses opening', () => {
    const { horn, setup } = demoHorn('alto');
    const f4 = playWholeHorn(horn, setup, makeAirColumn()).find((n) => n.fingering.id === 'F4')!;
    if (!f4.outcome.found) throw new Error('F4 has a resonance');
    const e = f4.outcome.answers!.keys.find((k) => k.id === 'e')!;
    expect(e.padThickness.cents).toBeLessThan(0);
    // The centre falls by the full thickness but rises by less than the front does.
    expect(Math.abs(e.padThickness.cents)).toBeGreaterThan(e.opening.cents);
  });

  it('rises by about three cents per degree on every note, as common practice has it', () => {
    const { horn, setup } = demoHorn('tenor');
    for (const note of playWholeHorn(horn, setup, makeAirColumn())) {
      if (!note.outcome.found) throw new Error(`${note.fingering.id} has a resonance`);
      expect(note.outcome.answers!.temperature.cents).toBeGreaterThan(2.7);
      expect(note.outcome.answers!.temperature.cents).toBeLessThan(3.1);
    }
  });
});
