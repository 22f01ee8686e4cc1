import { describe, expect, it } from 'vitest';
import {
  asItStands,
  canBeShown,
  centrePerFront,
  compareSetups,
  DEFAULT_PAD_MODEL,
  holeOf,
  isSameHorn,
  keySetupOf,
  makeAirColumn,
  MODEL_CENTS,
  MODEL_STRENGTH,
  NOTICED,
  NOTICES,
  ownPose,
  playWholeHorn,
  standingPad,
  whoNoticesPitch,
  whoNoticesStrength,
  withMouthpiecePulled,
  withOpening,
  type Compared,
  type ComparedNote,
  type Horn,
  type KeyPlusMinus,
  type NoteDifference,
  type PadModel,
  type Setup,
  type SetupComparison,
  type ToneHole,
} from '../../../src/acoustics/index.ts';
import { demoHorn, fingeringOf } from '../demo-horns.ts';
import { seededNormal } from '../seeded.ts';
import { LONG_ROUNDING, POLISHED_CENTS, relative, ROUNDING } from '../tolerances.ts';

const air = makeAirColumn();
const { horn, setup } = demoHorn('alto');

/** A pad model that is taken to be without error, so that only readings are left in a ±. */
const SURE: PadModel = { ...DEFAULT_PAD_MODEL, relativeError: 0 };
/** m, a ± so small that the note answers to it in proportion. */
const SMALL = 1e-6;
/** What a linear ± may differ from a re-played error that small: the notes' own polish, and curvature. */
const LINEAR = 2e-3;
/** How far the spread of this many seeded trials may lie from the ± that foretells it: three standard errors. */
const TRIALS = 300;
const TRIAL_SPREAD = 3 / Math.sqrt(2 * TRIALS);

const side = (label: string, of: Partial<Compared> = {}): Compared => ({ label, horn, setup, air, ...of });

const raised = (id: string, by: number): Setup => {
  const { front } = ownPose(horn, setup, id);
  return withOpening(setup, id, { at: 'front', height: front + by });
};

const withHole = (of: Horn, id: string, change: Partial<ToneHole>): Horn => ({
  ...of,
  holes: of.holes.map((hole) => (hole.id === id ? { ...hole, ...change } : hole)),
});

function differenceOf(comparison: SetupComparison, id: string): NoteDifference {
  const difference = comparison.notes.find((note) => note.fingering.id === id)?.differences[0];
  if (difference === null || difference === undefined) throw new Error(`no difference of ${id}`);
  return difference;
}

function centsOf(of: Horn, as: Setup, id: string): number {
  const [{ outcome }] = playWholeHorn(of, as, air, { answers: false, fingerings: [fingeringOf(id)] });
  if (!outcome.found) throw new Error(`${id} lost`);
  return outcome.cents;
}

describe('what moves every setup of one horn alike', () => {
  /** m and °C, as a calibration may put them. */
  const PULLED = 4e-3;
  const COOLER_C = 2;

  it('leaves their differences within the ± that is told of them', () => {
    const set = raised('e', -2e-3);
    const known = { keys: new Map([['e', { opening: 2e-4 }]]) };
    const compare = (of: Horn, c: number): SetupComparison => {
      const played = { horn: of, air: makeAirColumn({ mouthpieceC: c }), plusMinus: known };
      return compareSetups([side('a', played), side('b', { ...played, setup: set })]);
    };
    const plain = compare(horn, 26.85);
    const moved = compare(withMouthpiecePulled(horn, PULLED), 26.85 - COOLER_C);
    const noteOf = ({ notes }: SetupComparison, id: string): ComparedNote =>
      notes.find(({ fingering }) => fingering.id === id)!;
    for (const { fingering, differences } of plain.notes) {
      const [d] = differences;
      const [other] = noteOf(moved, fingering.id).differences;
      if (d === null || other === null) continue;
      expect(Math.abs(other.cents.value - d.cents.value)).toBeLessThanOrEqual(
        Math.max(d.cents.plusMinus, POLISHED_CENTS),
      );
    }
    const [a, b] = [plain, moved].map((of) => noteOf(of, 'F4').setups[0]);
    expect(a.found && b.found && Math.abs(a.cents - b.cents)).toBeGreaterThan(1);
  });
});

describe('a setup beside another', () => {
  const other = raised('e', 1.5e-3);
  const comparison = compareSetups([side('as found'), side('as set', { setup: other })]);

  it('differs by what both play on their own, links at work', () => {
    for (const name of ['alto', 'tenor'] as const) {
      const demo = demoHorn(name);
      const low = withOpening(demo.setup, 'e', { at: 'front', height: 4e-3 });
      expect(standingPad(demo.horn, low, 'f-sharp-auxiliary').ruledBy?.driver).toBe('e');
      const pair = compareSetups([side('a', demo), side('b', { ...demo, setup: low })]);
      const before = playWholeHorn(demo.horn, demo.setup, air, { answers: false });
      playWholeHorn(demo.horn, low, air, { answers: false }).forEach(({ fingering, outcome, cutoff }, i) => {
        const from = before[i];
        if (!outcome.found || !from.outcome.found) throw new Error(`${fingering.id} lost`);
        const { cents, strengthDb, cutoff: cutoffMove } = differenceOf(pair, fingering.id);
        expect(Math.abs(cents.value - (outcome.cents - from.outcome.cents))).toBeLessThan(POLISHED_CENTS);
        const ratio = outcome.resonance.height / from.outcome.resonance.height;
        expect(Math.abs(10 ** (strengthDb!.value / 20) - ratio)).toBeLessThan(LONG_ROUNDING);
        if (cutoff.found && from.cutoff.found) {
          expect(Math.abs(cutoffMove! - (cutoff.frequency - from.cutoff.frequency))).toBeLessThan(
            LONG_ROUNDING,
          );
        } else expect(cutoffMove).toBeNull();
      });
    }
  });

  it('changes its differences’ signs and keeps their ± when the two change places', () => {
    const back = compareSetups([side('as set', { setup: other }), side('as found')]);
    for (const { fingering } of comparison.notes) {
      const there = differenceOf(comparison, fingering.id);
      const again = differenceOf(back, fingering.id);
      expect(again.cents.value + there.cents.value).toBe(0);
      expect(Math.abs(again.strengthDb!.value + there.strengthDb!.value)).toBeLessThan(LONG_ROUNDING);
      expect(again.cents.plusMinus).toBe(there.cents.plusMinus);
    }
  });

  it('comes with what can be shown to differ most first, in units of what would be noticed', () => {
    // The E key moves its notes further than palm E♭ does, but by less than its reading is worth.
    const unsure = compareSetups([
      side('a'),
      side('b', {
        setup: withOpening(raised('e', 1e-4), 'palm-e-flat', {
          at: 'front',
          height: ownPose(horn, setup, 'palm-e-flat').front + 2e-5,
        }),
        plusMinus: { keys: new Map([['e', { opening: 2e-4 }]]) },
      }),
    ]);
    const parts = (note: ComparedNote): { size: number; shown: boolean }[] => {
      const { cents, strengthDb } = note.differences[0]!;
      return [
        { size: Math.abs(cents.value) / NOTICED.cents, shown: canBeShown(cents) },
        { size: Math.abs(strengthDb!.value) / NOTICED.strengthDb, shown: canBeShown(strengthDb!) },
      ];
    };
    for (const { notes } of [comparison, unsure]) {
      const shown = notes.map((note) => Math.max(0, ...parts(note).flatMap((p) => (p.shown ? p.size : []))));
      expect(shown).toEqual([...shown].sort((a, b) => b - a));
      const hidden = notes.slice(shown.indexOf(0)).map((note) => Math.max(...parts(note).map((p) => p.size)));
      expect(hidden).toEqual([...hidden].sort((a, b) => b - a));
      expect(shown[0]).toBeGreaterThan(0);
    }
    const sizes = unsure.notes.map((note) => Math.max(...parts(note).map((p) => p.size)));
    expect(sizes).not.toEqual([...sizes].sort((a, b) => b - a));
    expect(comparison.keys[0].setups[0]?.id).toBe('e');
  });

  it('shows nothing beside itself, whatever the ± of its readings', () => {
    const keys = new Map(horn.holes.map(({ id }) => [id, { opening: 2e-4, holeRadius: 1e-4 }] as const));
    const plusMinus = { keys };
    const same = compareSetups([side('a', { plusMinus }), side('b', { plusMinus })]);
    expect(same.sameHorn).toEqual([true]);
    for (const { differences } of same.notes) {
      expect(differences[0]).toMatchObject({
        cents: { value: 0, plusMinus: 0 },
        strengthDb: { value: 0, plusMinus: 0 },
        noticedBy: 'cannot be shown',
      });
    }
    for (const { setups, differences } of same.keys) {
      expect(setups[0]!.frontPlusMinus).toBeGreaterThan(0);
      expect(differences[0]).toMatchObject({
        front: { value: 0, plusMinus: 0 },
        ventShare: { value: 0, plusMinus: 0 },
      });
    }
  });

  it('has the openings, shares and equivalent parallel opening of its pads as they stand', () => {
    for (const { setups } of comparison.keys) {
      setups.forEach((key, i) => {
        const { pose } = standingPad(horn, [setup, other][i], key!.id);
        expect(key!.pose).toEqual(pose);
        expect(key!.holeDiameter).toBe(2 * holeOf(horn, key!.id).holeRadius);
        // A hinged pad vents no better than a parallel one at its front, nor worse than one at its back.
        expect(key!.equivalentParallel).toBeLessThan(pose.front);
        expect(key!.equivalentParallel).toBeGreaterThan(pose.back);
        expect(key!.ventShare.value).toBeGreaterThan(0);
        expect(key!.ventShare.value).toBeLessThan(1);
      });
    }
  });
});

describe('the ± of a difference on one horn', () => {
  const sure = { padModel: SURE };
  const two = (id: string, by: KeyPlusMinus, as: Setup, of: Horn = horn): SetupComparison =>
    compareSetups(
      [side('exact'), side('read', { horn: of, setup: as, plusMinus: { keys: new Map([[id, by]]) } })],
      sure,
    );

  it.each(['front', 'centre', 'back'] as const)(
    'from an opening read at the %s is the pitch that a re-played error moves',
    (at) => {
      const base = raised('g', 1e-3);
      const height = ownPose(horn, base, 'g')[at];
      const read = withOpening(setup, 'g', { at, height });
      const off = withOpening(setup, 'g', { at, height: height + SMALL });
      const { plusMinus } = differenceOf(two('g', { opening: SMALL }, read), 'A4').cents;
      expect(plusMinus).toBeGreaterThan(0);
      expect(relative(plusMinus, centsOf(horn, off, 'A4') - centsOf(horn, read, 'A4'))).toBeLessThan(LINEAR);
    },
  );

  it('follows a link from the stop that rules to the pads it holds down, and leaves their own stops out', () => {
    const low = withOpening(setup, 'e', { at: 'front', height: 4e-3 });
    const off = withOpening(setup, 'e', { at: 'front', height: 4e-3 + SMALL });
    // G vents through F♯ auxiliary, which the E key's arm holds down.
    const byDriver = two('e', { opening: SMALL }, low);
    const moved = centsOf(horn, off, 'G4') - centsOf(horn, low, 'G4');
    expect(moved).not.toBe(0);
    expect(relative(differenceOf(byDriver, 'G4').cents.plusMinus, Math.abs(moved))).toBeLessThan(LINEAR);
    const ownReading = two('f-sharp-auxiliary', { opening: 1e-3 }, low);
    expect(differenceOf(ownReading, 'G4').cents.plusMinus).toBe(0);
    const driven = byDriver.keys.find((key) => key.setups[0]?.id === 'f-sharp-auxiliary')!.setups[1]!;
    const ratio = driven.pose.front / 4e-3;
    expect(relative(driven.frontPlusMinus, ratio * SMALL)).toBeLessThan(LONG_ROUNDING);
  });

  it('from a pad’s thickness holds the opening, which was read with the pad in place', () => {
    const key = keySetupOf(setup, 'g');
    const thicker = (by: number): Setup => ({
      keys: new Map(setup.keys).set('g', { ...key, padThickness: key.padThickness + by }),
    });
    const read = thicker(1e-4);
    const moved = centsOf(horn, thicker(1e-4 + 10 * SMALL), 'A4') - centsOf(horn, read, 'A4');
    const { plusMinus } = differenceOf(two('g', { padThickness: 10 * SMALL }, read), 'A4').cents;
    expect(relative(plusMinus, Math.abs(moved))).toBeLessThan(LINEAR);
    // The same thickness at the same stop would move it many times as far.
    const { pose } = standingPad(horn, setup, 'g');
    const sunk = withOpening(setup, 'g', { at: 'centre', height: pose.centre - 10 * SMALL });
    expect(Math.abs(centsOf(horn, sunk, 'A4') - centsOf(horn, setup, 'A4'))).toBeGreaterThan(5 * plusMinus);
  });

  it('takes the same reading in both as one error, which all but cancels', () => {
    const by = { keys: new Map([['g', { opening: 2e-4, holeRadius: 2e-4, chimney: 2e-4 }]]) };
    const changed = raised('f', 1e-3);
    const once = compareSetups(
      [side('a', { plusMinus: by }), side('b', { setup: changed, plusMinus: by })],
      sure,
    );
    const { height } = keySetupOf(changed, 'g').opening;
    const again = withOpening(changed, 'g', { at: 'front', height: height + 1e-9 });
    const twice = compareSetups(
      [side('a', { plusMinus: by }), side('b', { setup: again, plusMinus: by })],
      sure,
    );
    const one = differenceOf(once, 'A4').cents.plusMinus;
    expect(one).toBeGreaterThan(0);
    expect(differenceOf(twice, 'A4').cents.plusMinus).toBeGreaterThan(20 * one);
  });

  it('takes the same number read at another point as another reading', () => {
    const plusMinus = { keys: new Map([['g', { opening: 2e-4 }]]) };
    const { front } = ownPose(horn, setup, 'g');
    const atFront = withOpening(setup, 'g', { at: 'front', height: front });
    const atCentre = withOpening(setup, 'g', { at: 'centre', height: front });
    const spread = (a: Partial<Compared>): number =>
      differenceOf(compareSetups([side('a', a), side('b', { setup: atCentre, plusMinus })], sure), 'A4').cents
        .plusMinus;
    expect(spread({ setup: atFront, plusMinus })).toBeGreaterThan(spread({ setup: atFront }));
    expect(spread({ setup: atCentre, plusMinus })).toBe(0);
  });

  it('of a hole that was read once is what is left when both re-play its error', () => {
    const by = { keys: new Map([['e', { holeRadius: SMALL }]]) };
    const changed = raised('e', 2e-3);
    const pair = compareSetups(
      [side('a', { plusMinus: by }), side('b', { setup: changed, plusMinus: by })],
      sure,
    );
    const wide = withHole(horn, 'e', { holeRadius: holeOf(horn, 'e').holeRadius + SMALL });
    const before = centsOf(horn, changed, 'F4') - centsOf(horn, setup, 'F4');
    const after = centsOf(wide, changed, 'F4') - centsOf(wide, setup, 'F4');
    expect(relative(differenceOf(pair, 'F4').cents.plusMinus, Math.abs(after - before))).toBeLessThan(LINEAR);
  });

  it('is the spread of many seeded trials in which every reading errs on its own', () => {
    const spread = 5e-5;
    const again = [...setup.keys].reduce(
      (as, [id, { opening }]) => withOpening(as, id, { ...opening, height: opening.height + 1e-9 }),
      raised('f', 1e-3),
    );
    const keys = new Map([...setup.keys.keys()].map((id) => [id, { opening: spread }] as const));
    const plusMinus = { keys };
    const pair = compareSetups([side('a', { plusMinus }), side('b', { setup: again, plusMinus })], sure);
    const random = seededNormal(7);
    const err = (as: Setup): Setup =>
      [...as.keys].reduce(
        (now, [id, { opening }]) =>
          withOpening(now, id, { ...opening, height: opening.height + spread * random() }),
        as,
      );
    const ids = ['F4', 'A4', 'C#5', 'G5'];
    const fingerings = ids.map(fingeringOf);
    const trials = Array.from({ length: TRIALS }, () => {
      const [a, b] = [setup, again].map((as) =>
        playWholeHorn(horn, err(as), air, { answers: false, fingerings }),
      );
      return ids.map((_, i) => {
        const [from, to] = [a[i].outcome, b[i].outcome];
        if (!from.found || !to.found) throw new Error('lost');
        return to.cents - from.cents;
      });
    });
    ids.forEach((id, i) => {
      const mean = trials.reduce((sum, trial) => sum + trial[i], 0) / TRIALS;
      const deviation = Math.sqrt(trials.reduce((s, trial) => s + (trial[i] - mean) ** 2, 0) / (TRIALS - 1));
      expect(relative(deviation, differenceOf(pair, id).cents.plusMinus)).toBeLessThan(TRIAL_SPREAD);
    });
  });

  it('holds a part for the pad model, the greater the more the setups differ and the more it may err', () => {
    const partOf = (by: number, relativeError: number): number =>
      differenceOf(
        compareSetups([side('a'), side('b', { setup: raised('e', by) })], {
          padModel: { ...DEFAULT_PAD_MODEL, relativeError },
        }),
        'F4',
      ).cents.plusMinus;
    expect(partOf(1e-3, 0)).toBe(0);
    expect(partOf(1e-3, 0.05)).toBeGreaterThan(0);
    expect(partOf(2e-3, 0.05)).toBeGreaterThan(partOf(1e-3, 0.05));
    expect(partOf(1e-3, 0.1)).toBeGreaterThan(partOf(1e-3, 0.05));
  });
});

describe('different horns', () => {
  const tenor = demoHorn('tenor');
  const comparison = compareSetups([side('alto'), side('tenor', tenor), side('alto again')]);

  it('carry the model’s whole error, each on its own, and one horn does not', () => {
    expect(comparison.sameHorn).toEqual([false, true]);
    for (const { differences } of comparison.notes) {
      expect(differences[0]!.cents.plusMinus).toBeGreaterThanOrEqual(
        MODEL_CENTS * Math.SQRT2 * (1 - ROUNDING),
      );
      expect(differences[1]!.cents.plusMinus).toBe(0);
    }
  });

  it('of different pitch have no strengths to compare', () => {
    for (const { differences } of comparison.notes) {
      expect(differences[0]).toMatchObject({ strengthDb: null, byStrength: null });
      expect(differences[0]!.noticedBy).toBe(differences[0]!.byPitch);
      expect(differences[1]!.strengthDb).not.toBeNull();
    }
  });

  it('of one pitch carry an error of strength too', () => {
    const longer: Horn = { ...horn, reedVolume: horn.reedVolume * 1.05 };
    const pair = compareSetups([side('a'), side('b', { horn: longer })], { padModel: SURE });
    for (const { differences } of pair.notes) {
      const { plusMinus } = differences[0]!.strengthDb!;
      const both = Math.SQRT2 * 20 * Math.log10(1 + MODEL_STRENGTH);
      expect(relative(plusMinus, both)).toBeLessThan(ROUNDING);
    }
  });

  it('align by written note and by key', () => {
    const { notes, keys } = comparison;
    expect(new Set(notes.map(({ fingering }) => fingering.id)).size).toBe(notes.length);
    for (const { setups } of keys) {
      expect(setups[1]?.id).toBe(setups[0]?.id);
      expect(setups[2]?.id).toBe(setups[0]?.id);
    }
    expect(keys.length).toBe(setup.keys.size);
  });

  it('align by the pad’s number where its id is another, and leave a key alone that has no like', () => {
    const rename = (id: string): string => (id === 'palm-d' ? 'upper-d' : id);
    const named: Horn = {
      ...horn,
      holes: horn.holes.map((hole) => ({
        ...hole,
        id: rename(hole.id),
        number: hole.id === 'palm-f' ? 77 : hole.number,
      })),
      keywork: {
        ...horn.keywork,
        rests: new Map([...horn.keywork.rests].map(([id, rest]) => [rename(id), rest])),
        touches: horn.keywork.touches.map((touch) => ({
          ...touch,
          closes: touch.closes.map(rename),
          opens: touch.opens.map((o) => ({ ...o, pad: rename(o.pad) })),
        })),
      },
    };
    const strange = withHole(named, 'palm-f', {});
    const renamedAgain: Horn = {
      ...strange,
      holes: strange.holes.map((hole) => (hole.id === 'palm-f' ? { ...hole, id: 'extra' } : hole)),
      keywork: {
        ...strange.keywork,
        rests: new Map(
          [...strange.keywork.rests].map(([id, rest]) => [id === 'palm-f' ? 'extra' : id, rest]),
        ),
        touches: strange.keywork.touches.map((touch) => ({
          ...touch,
          opens: touch.opens.map((o) => ({ ...o, pad: o.pad === 'palm-f' ? 'extra' : o.pad })),
        })),
        links: strange.keywork.links.filter(({ driver, driven }) => ![driver, driven].includes('palm-f')),
      },
    };
    const keys = new Map(
      [...setup.keys].map(([id, key]) => [id === 'palm-f' ? 'extra' : rename(id), key] as const),
    );
    const rows = compareSetups([side('a'), side('b', { horn: renamedAgain, setup: { keys } })]).keys.map(
      (key) => key.setups.map((one) => one?.id ?? null),
    );
    expect(rows).toContainEqual(['palm-d', 'upper-d']);
    expect(rows).toContainEqual(['palm-f', null]);
    expect(rows).toContainEqual([null, 'extra']);
    expect(rows).toContainEqual(['e', 'e']);
  });

  it('say of a note that one of them has no touch for', () => {
    const short: Horn = {
      ...horn,
      keywork: { ...horn.keywork, touches: horn.keywork.touches.filter(({ id }) => id !== 'high F#') },
    };
    const { notes } = compareSetups([side('a'), side('b', { horn: short })]);
    const lost = notes.find(({ fingering }) => fingering.id === 'F#6')!;
    expect(lost.setups[1]).toMatchObject({
      found: false,
      reason: expect.stringContaining('high F#') as string,
    });
    expect(lost.differences).toEqual([null]);
    expect(notes.filter(({ differences }) => differences[0] === null)).toHaveLength(1);
  });

  it('are told from one horn whose hole was measured anew', () => {
    expect(isSameHorn(horn, structuredClone(horn))).toBe(true);
    expect(isSameHorn(horn, withHole(horn, 'e', { chimney: 4e-3 }))).toBe(true);
    expect(isSameHorn(horn, withHole(horn, 'e', { x: holeOf(horn, 'e').x + 1e-3 }))).toBe(false);
    expect(isSameHorn(horn, { ...horn, reedVolume: horn.reedVolume * 1.1 })).toBe(false);
    expect(isSameHorn(horn, tenor.horn)).toBe(false);
    // Begun from one example, and two horns all the same.
    expect(isSameHorn(horn, { ...horn, name: 'another' })).toBe(false);
  });
});

describe('who would notice', () => {
  it('rises with the difference, and is nobody to be shown inside the ±', () => {
    const sizes = [0.1, 1.7, 7.5, 10].map((value) => whoNoticesPitch({ value: -value, plusMinus: 0 }));
    expect(sizes).toEqual(NOTICES.slice(1));
    for (const value of [0, 3, 30]) {
      expect(whoNoticesPitch({ value, plusMinus: value })).toBe('cannot be shown');
      expect(whoNoticesStrength({ value, plusMinus: value })).toBe('cannot be shown');
    }
    expect(whoNoticesStrength({ value: -1, plusMinus: 0.5 })).toBe('the player');
    expect(whoNoticesStrength({ value: 0.9, plusMinus: 0.5 })).toBe('nobody');
  });
});

describe('what cannot be compared', () => {
  it('is fewer than two or more than four setups', () => {
    for (const count of [0, 1, 5]) {
      expect(() => compareSetups(Array.from({ length: count }, () => side('a')))).toThrow(/expected 2 to 4/);
    }
  });

  it('is a ± of a hole the horn does not have', () => {
    const plusMinus = { keys: new Map([['no-such', { opening: 1e-4 }]]) };
    expect(() => compareSetups([side('a'), side('b', { plusMinus })])).toThrow(/"no-such"/);
  });

  it('is a ± that is negative or no number', () => {
    for (const opening of [-1e-3, NaN, Infinity]) {
      const plusMinus = { keys: new Map([['e', { opening }]]) };
      expect(() => compareSetups([side('a', { plusMinus }), side('b')])).toThrow(/±.*E.*opening/);
    }
  });
});

describe('a horn as it stands', () => {
  it('has every pad where it was, and no link that rules', () => {
    const low = withOpening(setup, 'e', { at: 'front', height: 4e-3 });
    const standing = asItStands(horn, low);
    for (const id of setup.keys.keys()) {
      const { pose, ruledBy } = standingPad(standing.horn, standing.setup, id);
      expect(ruledBy).toBeNull();
      const before = standingPad(horn, low, id).pose;
      expect(Math.abs(pose.centre - before.centre)).toBeLessThan(LONG_ROUNDING * before.front);
      expect(centrePerFront(holeOf(horn, id).hinge!, keySetupOf(low, id).padRadius, pose)).toBeGreaterThan(0);
    }
  });
});
