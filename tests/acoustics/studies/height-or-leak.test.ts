import { describe, expect, it } from 'vitest';
import {
  COMPARED_GAPS,
  decibelsBetween,
  followResonance,
  leaksFor,
  makeAirColumn,
  makeNetwork,
  padStates,
  playWholeHorn,
  ringGap,
  sealedNote,
  seatLeak,
  studyHeightOrLeak,
  studyLeak,
  studyVenting,
  verdictOn,
  withOpening,
  type HeightOrLeak,
  type Horn,
  type PadLeak,
  type Setup,
} from '../../../src/acoustics/index.ts';
import { plusMinusOf } from '../../../src/documents/plus-minus.ts';
import { demoHorn, fingeringOf } from '../demo-horns.ts';

const loaded = demoHorn('alto');
const { horn, setup } = loaded;
const air = makeAirColumn();
const plusMinus = plusMinusOf(loaded);
const [ONE_PAPER, TWO_PAPERS] = COMPARED_GAPS;

/** dB, cents: resonances found from other starting points are polished to a ten-thousandth. */
const POLISHED = 1e-4;
/** A part of a ± against the answer with that reading off by its whole ±, where that bends the answer. */
const BENDS = 0.15;

function study(id: string, on: Setup = setup): HeightOrLeak {
  const found = studyHeightOrLeak(horn, on, fingeringOf(id), air, { plusMinus });
  if (found === null) throw new Error(`${id} sounds`);
  return found;
}

const lowE = study('E4');
const leakAt = ({ leaks }: { leaks: readonly PadLeak[] }, pad: string, gap = TWO_PAPERS) =>
  leaks.find((leak) => leak.pad === pad)!.at.find((each) => each.gap === gap)!.cost!;

describe('what a leak at every pad would cost a note', () => {
  it('is told of exactly the pads on hinges that its fingering shuts', () => {
    const states = padStates(horn.keywork, new Set(fingeringOf('E4').touches));
    const shut = horn.holes.filter(({ id, hinge }) => hinge !== null && !states.get(id)!.open);
    expect(lowE.leaks.map(({ pad }) => pad).sort()).toEqual(shut.map(({ id }) => id).sort());
  });

  it('is what the leak study itself says of each', () => {
    for (const { pad, at } of lowE.leaks) {
      for (const { gap, cost } of at) {
        const leaks = seatLeak(pad, ringGap(gap));
        const { played } = studyLeak(horn, setup, leaks, air, { fingerings: [fingeringOf('E4')] }).notes[0];
        if (!played.found) throw new Error('played');
        expect(cost!.lostDb).toBe(played.loss.lostDb);
        expect(cost!.cents).toBe(played.loss.cents);
      }
    }
  });

  it('is nothing without a leak, and at least as much with a wider one', () => {
    const note = sealedNote(horn, setup, fingeringOf('E4'), air, {})!;
    expect(leaksFor(horn, setup, note, air, { gaps: [0] })).toEqual([]);
    const papers = [0.5, 1, 2, 3, 4].map((count) => count * ONE_PAPER);
    for (const { at } of leaksFor(horn, setup, note, air, { gaps: papers })) {
      const lost = at.map(({ cost }) => cost!.lostDb);
      expect(lost).toEqual([...lost].sort((a, b) => a - b));
      expect(lost[0]).toBeGreaterThan(-POLISHED);
    }
  });

  it('stands worst first by the wider of the two gaps', () => {
    const lost = lowE.leaks.map(({ at }) => at[1].cost!.lostDb);
    expect(lost).toEqual([...lost].sort((a, b) => b - a));
  });

  it('has no ± where nothing is off but the slit’s own error', () => {
    const note = sealedNote(horn, setup, fingeringOf('E4'), air, {})!;
    for (const { at } of leaksFor(horn, setup, note, air, { gaps: [TWO_PAPERS] })) {
      const { lostBudget } = at[0].cost!;
      expect(lostBudget!.readings).toEqual([]);
      expect(lostBudget!.plusMinus).toBeCloseTo(Math.abs(lostBudget!.padModel), 12);
    }
  });

  it('may be off more to one side than to the other: what the horn plays with a rim off either way', () => {
    const pad = 'f-sharp-auxiliary';
    const { lostDb, lostBudget, lostSides } = leakAt(lowE, pad);
    const { rimThickness } = plusMinus.keys.get(pad)!;
    const [thicker, thinner] = [1, -1].map((sign) => {
      const holes = horn.holes.map((hole) =>
        hole.id === pad ? { ...hole, rimThickness: hole.rimThickness + sign * rimThickness! } : hole,
      );
      const other = { ...horn, holes };
      const note = sealedNote(other, setup, fingeringOf('E4'), air, {})!;
      return (
        leakAt({ leaks: leaksFor(other, setup, note, air, { gaps: [TWO_PAPERS] }) }, pad).lostDb - lostDb
      );
    });
    expect(thicker).toBeLessThan(0);
    expect(thinner).toBeGreaterThan(-thicker);
    const part = lostBudget!.readings.find(({ reading }) => reading.kind === 'rimThickness')!;
    expect(Math.abs(Math.abs(part.effect) - thinner)).toBeLessThan(POLISHED);
    expect(lostSides!.more ** 2 - lostSides!.less ** 2).toBeGreaterThan(0.9 * (thinner ** 2 - thicker ** 2));
    for (const { at } of lowE.leaks) {
      const { lostBudget: one, lostSides: two } = at[1].cost!;
      expect(one!.plusMinus).toBeGreaterThanOrEqual(Math.max(two!.more, two!.less) - POLISHED);
    }
  });

  it('has of what all of it hears the part that the horn played anew with that reading off has', () => {
    const pad = 'f-sharp-auxiliary';
    const { lostDb, lostBudget } = leakAt(lowE, pad);
    const off = (change: (hole: Horn['holes'][number]) => Partial<Horn['holes'][number]>): Horn => ({
      ...horn,
      holes: horn.holes.map((hole) => (hole.id === pad ? { ...hole, ...change(hole) } : hole)),
    });
    const { holeRadius, chimney } = plusMinus.keys.get(pad)!;
    const horns = {
      holeRadius: off((hole) => ({ holeRadius: hole.holeRadius + holeRadius! })),
      chimney: off((hole) => ({ chimney: hole.chimney + chimney! })),
    };
    for (const [kind, other] of Object.entries(horns)) {
      const note = sealedNote(other, setup, fingeringOf('E4'), air, {})!;
      const again = leaksFor(other, setup, note, air, { gaps: [TWO_PAPERS] });
      const moved = leakAt({ leaks: again }, pad).lostDb - lostDb;
      const part = lostBudget!.readings.find(({ reading }) => reading.id === pad && reading.kind === kind)!;
      expect([kind, Math.abs(part.effect - moved) <= BENDS * Math.abs(moved)]).toEqual([kind, true]);
    }
  });
});

describe('what the heights of its keys can still bring', () => {
  it('is what the venting study of each key says, from as found to enough', () => {
    expect(lowE.heights[0].pad).toBe('d');
    for (const { pad, enough, change } of lowE.heights) {
      const venting = studyVenting(horn, setup, pad, air, { plusMinus, points: 2 });
      const i = venting.context.governed.findIndex(({ fingering }) => fingering.id === 'E4');
      if (venting.diminishingReturn.kind !== 'reached') throw new Error('reached');
      const { pose, notes } = venting.diminishingReturn.at;
      expect(enough).toBe(pose.front);
      const gain = decibelsBetween(venting.present.notes[i]!.height, notes[i]!.height);
      expect(Math.abs(change!.gainDb - gain)).toBeLessThan(POLISHED);
      expect(Math.abs(change!.cents - notes[i]!.cents)).toBeLessThan(POLISHED);
      expect(change!.centsBudget!.plusMinus).toBeCloseTo(venting.budgets.changes.get('E4')!.plusMinus, 6);
    }
  });

  it('is what the note played anew with the key set to enough has', () => {
    const [{ enough, change }] = lowE.heights;
    const e4 = fingeringOf('E4');
    const set = withOpening(setup, 'd', { at: 'front', height: enough });
    const outcome = followResonance(makeNetwork(horn, set, e4, air), lowE.sealed.frequency);
    if (!outcome.found) throw new Error('E4 sounds');
    const gain = decibelsBetween(lowE.sealed.height, outcome.resonance.height);
    expect(Math.abs(change!.gainDb - gain)).toBeLessThan(POLISHED);
  });

  it('falls as the key is read higher by what its ± says', () => {
    const [{ change }] = lowE.heights;
    const step = plusMinus.keys.get('d')!.opening!;
    const higher = study(
      'E4',
      withOpening(setup, 'd', { at: 'front', height: lowE.heights[0].present + step }),
    );
    const moved = higher.heights[0].change!.gainDb - change!.gainDb;
    const part = change!.gainBudget!.readings.find(
      ({ reading }) => reading.id === 'd' && reading.kind === 'opening',
    )!;
    expect(moved).toBeLessThan(0);
    expect(Math.abs(part.effect - moved)).toBeLessThan(BENDS * Math.abs(moved));
  });

  it('leaves out keys that the note does not hear', () => {
    const deaf = playWholeHorn(horn, setup, air, { fingerings: [fingeringOf('E4')], answers: true })[0];
    if (!deaf.outcome.found) throw new Error('E4 sounds');
    const slopes = new Map(
      deaf.outcome.answers!.keys.map(({ id, opening }) => [id, Math.abs(opening.cents)]),
    );
    const told = lowE.heights.map(({ pad }) => slopes.get(pad)!);
    expect(Math.min(...told)).toBeGreaterThan(slopes.get('low-b')!);
    expect(study('Bb3').heights).toEqual([]);
  });
});

describe('what to look for first', () => {
  const measured = (value: number, plusMinusDb = 0.1) => ({ value, plusMinus: plusMinusDb });

  it('is a leak on the demo alto’s low E as found, and height once D hardly opens', () => {
    expect(lowE.verdict).toBe('leak');
    const shut = study('E4', withOpening(setup, 'd', { at: 'front', height: 0.7e-3 }));
    expect(shut.verdict).toBe('height');
  });

  it('is the greater of the two where they differ by more than their ±', () => {
    expect(verdictOn(measured(0.1), measured(1.5))).toBe('leak');
    expect(verdictOn(measured(3), measured(1.5))).toBe('height');
    expect(verdictOn(measured(0), measured(Infinity, 0))).toBe('leak');
  });

  it('cannot be told apart within their ±', () => {
    expect(verdictOn(measured(1.5, 0.3), measured(1.8, 0.3))).toBe('alike');
  });

  it('is neither where neither would be noticed', () => {
    expect(verdictOn(measured(0.4), measured(0.9))).toBe('neither');
  });
});

it('a note without a resonance where it is looked for has no answer', () => {
  const farAway: Horn = { ...horn, transposition: horn.transposition + 60 };
  expect(studyHeightOrLeak(farAway, setup, fingeringOf('E4'), air)).toBeNull();
});
