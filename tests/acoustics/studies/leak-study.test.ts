import { describe, expect, it } from 'vitest';
import {
  arcGap,
  findLargestLeak,
  followResonance,
  hangingGap,
  holeOf,
  keySetupOf,
  leakAtPlace,
  leakEnd,
  leakPlaces,
  makeAirColumn,
  makeNetwork,
  makePadPose,
  mapLeaks,
  padStates,
  playWholeHorn,
  resonanceNear,
  ringGap,
  seatLeak,
  studyLeak,
  tiltedGap,
  withHoleEnds,
  type LeakingNote,
  type Leaks,
} from '../../../src/acoustics/index.ts';
import { demoHorn, fingeringOf } from '../demo-horns.ts';
import { DIFFERENCE, LONG_ROUNDING, POLISHED_CENTS, relative, ROUNDING } from '../tolerances.ts';

const { horn, setup } = demoHorn('alto');
const air = makeAirColumn();
const PAPER = 0.025e-3;
const AUXILIARY = 'f-sharp-auxiliary';
const DRIVERS = ['d', 'e', 'f'];

/** dB: what a bisection to 0.01 µm is good to. */
const FOUND_DB = 0.005;

const late = (left: number, ...drivers: string[]): Leaks => ({
  seats: new Map(),
  screws: drivers.map((driver) => ({ driver, driven: AUXILIARY, left })),
});

const lossOf = (notes: readonly LeakingNote[], id: string): number => {
  const played = notes.find((n) => n.fingering.id === id)?.played;
  if (played === undefined || !played.found) throw new Error(`${id} is not played`);
  return played.loss.lostDb;
};

describe('a leak at a pad', () => {
  const study = studyLeak(horn, setup, seatLeak(AUXILIARY, ringGap(2 * PAPER)), air);

  it('touches exactly the notes that shut the pad', () => {
    const all = playWholeHorn(horn, setup, air, { answers: false });
    const shut = all.filter(
      (n) => n.outcome.found && !padStates(horn.keywork, new Set(n.fingering.touches)).get(AUXILIARY)!.open,
    );
    expect(study.notes.map((n) => n.fingering.id)).toEqual(shut.map((n) => n.fingering.id));
  });

  it('costs every one of them height, quickens its fading and raises it', () => {
    for (const { played } of study.notes) {
      if (!played.found) throw new Error('every note is played');
      expect(played.loss.lostDb).toBeGreaterThan(0);
      expect(played.loss.riseTime).toBeLessThan(0);
      expect(played.loss.cents).toBeGreaterThan(-POLISHED_CENTS);
    }
  });

  it('costs the first register more the further below it the note sounds', () => {
    const order = ['F#4', 'F4', 'E4', 'Eb4', 'D4', 'C4', 'Bb3'].map((id) => lossOf(study.notes, id));
    expect([...order].sort((a, b) => a - b)).toEqual(order);
  });

  it('costs more the wider it is, and an arc less than a ring', () => {
    const lost = [1, 2, 4].map((papers) =>
      lossOf(studyLeak(horn, setup, seatLeak('g', ringGap(papers * PAPER)), air).notes, 'D4'),
    );
    expect(lost[1]).toBeGreaterThan(2 * lost[0]);
    expect(lost[2]).toBeGreaterThan(lost[1]);
    const arc = studyLeak(horn, setup, seatLeak('g', arcGap(2 * PAPER, Math.PI / 2, 'front')), air);
    expect(lossOf(arc.notes, 'D4')).toBeLessThan(lost[1] / 2);
  });

  it('of no width changes nothing', () => {
    expect(studyLeak(horn, setup, seatLeak('g', ringGap(0)), air).notes).toEqual([]);
    const tiny = studyLeak(horn, setup, seatLeak('g', ringGap(1e-8)), air);
    for (const id of ['D4', 'G5']) expect(Math.abs(lossOf(tiny.notes, id))).toBeLessThan(LONG_ROUNDING);
  });

  it('is followed to the same resonance where it moves the note far', () => {
    const e4 = fingeringOf('E4');
    const [note] = studyLeak(horn, setup, seatLeak('a', ringGap(0.3e-3)), air, { fingerings: [e4] }).notes;
    if (!note.played.found) throw new Error('played');
    const network = makeNetwork(horn, setup, e4, air);
    let near = note.sealed.frequency;
    for (let step = 1; step <= 60; step++) {
      const end = leakEnd(horn, setup, 'a', ringGap((0.3e-3 * step) / 60));
      const outcome = followResonance(withHoleEnds(network, new Map([['a', end]])), near);
      if (!outcome.found) throw new Error('followed');
      near = outcome.resonance.frequency;
    }
    expect(relative(note.played.resonance.frequency, near)).toBeLessThan(LONG_ROUNDING);
    expect(note.played.loss.cents).toBeGreaterThan(300);
  });

  it('is heard the same by the whole horn', () => {
    const leaks = seatLeak(AUXILIARY, tiltedGap(3 * PAPER, PAPER));
    const fingerings = ['D4', 'E5', 'G4'].map(fingeringOf);
    const whole = playWholeHorn(horn, setup, air, { leaks, fingerings });
    for (const note of studyLeak(horn, setup, leaks, air, { fingerings }).notes) {
      const { outcome } = whole.find((n) => n.fingering === note.fingering)!;
      const network = makeNetwork(horn, setup, note.fingering, air, { leaks });
      const alone = resonanceNear(network, note.target);
      if (!outcome.found || !note.played.found || !alone.found) throw new Error('played');
      for (const { height } of [outcome.resonance, alone.resonance]) {
        expect(relative(height, note.played.resonance.height)).toBeLessThan(LONG_ROUNDING);
      }
    }
  });

  it('leaves the whole horn’s answers to temperature, hole and chimney exact', () => {
    const leaks = seatLeak(AUXILIARY, tiltedGap(4 * PAPER, PAPER));
    const fingerings = [fingeringOf('D4'), fingeringOf('E5')];
    const play = (by: { radius?: number; chimney?: number; degrees?: number }) =>
      playWholeHorn(
        {
          ...horn,
          holes: horn.holes.map((h) =>
            h.id === AUXILIARY
              ? { ...h, holeRadius: h.holeRadius + (by.radius ?? 0), chimney: h.chimney + (by.chimney ?? 0) }
              : h,
          ),
        },
        setup,
        makeAirColumn({ mouthpieceC: 27 + (by.degrees ?? 0), bellC: 27 + (by.degrees ?? 0) }),
        { leaks, fingerings },
      ).map(({ outcome }) => {
        if (!outcome.found) throw new Error('played');
        return outcome;
      });
    const check = (field: 'radius' | 'chimney' | 'degrees', h: number): void => {
      const [here, up, down] = [0, h, -h].map((by) => play({ [field]: by }));
      here.forEach(({ answers }, i) => {
        const key = answers!.keys.find((k) => k.id === AUXILIARY)!;
        const answer = { radius: key.holeRadius, chimney: key.chimney, degrees: answers!.temperature }[field];
        const cents = (up[i].cents - down[i].cents) / (2 * h);
        const height = Math.log(up[i].resonance.height / down[i].resonance.height) / (2 * h);
        expect(relative(answer.cents, cents)).toBeLessThan(DIFFERENCE);
        expect(relative(answer.logHeight, height)).toBeLessThan(DIFFERENCE);
      });
    };
    check('radius', 2e-6);
    check('chimney', 2e-6);
    check('degrees', 0.01);
  });

  it('says where the gap is wider than a leak', () => {
    expect(study.warnings).toEqual([]);
    const wide = studyLeak(horn, setup, seatLeak('small-c', ringGap(0.6e-3)), air, {
      fingerings: [fingeringOf('C5')],
    });
    expect(wide.warnings).toEqual([
      'The gap under small C is 0.60 mm; leaks are reckoned up to 0.40 mm on this hole, beyond that the pad stands open.',
    ]);
  });

  it('is refused where there is no such pad or link', () => {
    expect(() => studyLeak(horn, setup, seatLeak('nowhere', ringGap(PAPER)), air)).toThrow('invalid key');
    const screws = [{ driver: 'g', driven: 'bis', left: PAPER }];
    expect(() => studyLeak(horn, setup, { seats: new Map(), screws }, air)).toThrow(
      'invalid link: "g to bis"',
    );
  });
});

describe('a link that shuts its pad late', () => {
  it('spares the notes in which another finger shuts the pad well', () => {
    const { notes } = studyLeak(horn, setup, late(2 * PAPER, 'e'), air);
    // Only R2 alone shuts the auxiliary pad by E.
    expect(notes.map((n) => n.fingering.id)).toEqual(['F#4', 'F#5']);
  });

  it('hurts them all where no finger shuts it well', () => {
    const { notes } = studyLeak(horn, setup, late(2 * PAPER, ...DRIVERS), air);
    expect(notes.map((n) => n.fingering.id)).toContain('D4');
    const seat = studyLeak(horn, setup, seatLeak(AUXILIARY, ringGap(2 * PAPER)), air);
    // It hangs at the front only: less than the ring.
    expect(lossOf(notes, 'D4')).toBeLessThan(lossOf(seat.notes, 'D4'));
  });

  it('that is early instead leaves its driver leaking in every note that driver shuts', () => {
    const { notes } = studyLeak(horn, setup, late(-2 * PAPER, 'e'), air);
    const ids = notes.map((n) => n.fingering.id);
    expect(ids).toContain('D4');
    expect(ids).toContain('E4');
    expect(ids).not.toContain('F4');
    expect(notes.every((n) => n.gaps.has('e') && !n.gaps.has(AUXILIARY))).toBe(true);
  });

  it('leaves a gap that narrows towards the rod as the hinge does', () => {
    const hole = holeOf(horn, AUXILIARY);
    const { padRadius } = keySetupOf(setup, AUXILIARY);
    const gap = hangingGap(hole, padRadius, 4 * PAPER);
    const pose = makePadPose(hole.hinge!, padRadius, { at: 'front', height: 4 * PAPER });
    expect(gap.front).toBeLessThan(pose.front);
    expect(gap.back).toBeGreaterThan(pose.back);
    expect(relative(gap.front + gap.back, pose.front + pose.back)).toBeLessThan(ROUNDING);
  });

  it('far out of regulation is the open pad it has become', () => {
    const fingerings = [fingeringOf('F#4')];
    const [note] = studyLeak(horn, setup, late(4e-3, 'e'), air, { fingerings }).notes;
    expect(note.played.found).toBe(true);
    const network = makeNetwork(horn, setup, note.fingering, air);
    // Wide open, the pad vents: the note is G's neighbour, not a choked F♯.
    const asLeak = withHoleEnds(
      network,
      new Map([[AUXILIARY, leakEnd(horn, setup, AUXILIARY, ringGap(4e-3))]]),
    );
    const open = resonanceNear(
      makeNetwork(horn, setup, note.fingering, air, { leaks: late(4e-3, 'e') }),
      note.target,
    );
    const leak = resonanceNear(asLeak, note.target);
    if (!open.found || !leak.found) throw new Error('played');
    expect(open.resonance.frequency).not.toBeCloseTo(leak.resonance.frequency, 1);
  });
});

describe('the largest leak a note bears', () => {
  const d4 = fingeringOf('D4');

  it('costs exactly what was asked', () => {
    const found = findLargestLeak(horn, setup, (g) => late(g, ...DRIVERS), air, { fingering: d4, lostDb: 3 });
    if (!found.found) throw new Error(found.reason);
    expect(found.gap).toBeGreaterThan(PAPER);
    expect(found.gap).toBeLessThan(6 * PAPER);
    const { notes } = studyLeak(horn, setup, late(found.gap, ...DRIVERS), air, { fingerings: [d4] });
    expect(Math.abs(lossOf(notes, 'D4') - 3)).toBeLessThan(FOUND_DB);
  });

  it('is smaller for fewer dB, and at a seat smaller than at a link', () => {
    const seat = (lostDb: number): number => {
      const found = findLargestLeak(horn, setup, (g) => seatLeak(AUXILIARY, ringGap(g)), air, {
        fingering: d4,
        lostDb,
      });
      if (!found.found) throw new Error(found.reason);
      return found.gap;
    };
    expect(seat(1)).toBeLessThan(seat(3));
    const link = findLargestLeak(horn, setup, (g) => late(g, ...DRIVERS), air, { fingering: d4, lostDb: 3 });
    expect(link.found && link.gap > seat(3)).toBe(true);
  });

  it('is none where another finger shuts the pad, and the answer says so', () => {
    expect(findLargestLeak(horn, setup, (g) => late(g, 'e'), air, { fingering: d4, lostDb: 3 })).toEqual({
      found: false,
      reason: 'D4 is not touched: it does not shut the pad, or shuts it well by another way',
    });
  });

  it('is none where the note bears all that was looked at', () => {
    const outcome = findLargestLeak(horn, setup, (g) => seatLeak('low-b-flat', ringGap(g)), air, {
      ...{ fingering: fingeringOf('Bb3'), lostDb: 20, widest: PAPER },
    });
    expect(outcome.found).toBe(false);
    expect(!outcome.found && outcome.reason).toMatch(/^Bb3 loses only \d\.\d dB at 0\.0[23] mm$/);
  });

  it('refuses to lose nothing', () => {
    expect(() =>
      findLargestLeak(horn, setup, (g) => late(g, 'e'), air, { fingering: d4, lostDb: 0 }),
    ).toThrow('invalid lost height: 0 dB');
  });
});

describe('the leak map', () => {
  const fingerings = ['Bb3', 'D4', 'F#4', 'B4', 'D5', 'F#5'].map(fingeringOf);
  const map = mapLeaks(horn, setup, 2 * PAPER, air, { fingerings });

  it('has a row for every pad and every link', () => {
    const pads = horn.holes.filter((h) => h.hinge !== null).length;
    expect(map.rows).toHaveLength(pads + horn.keywork.links.length);
    expect(map.rows.map((r) => r.place)).toEqual(leakPlaces(horn));
  });

  it('says of each place what the leak study says', () => {
    for (const { place, cells } of map.rows) {
      const { notes } = studyLeak(horn, setup, leakAtPlace(place, 2 * PAPER), air, { fingerings });
      cells.forEach((cell, i) => {
        const note = notes.find((n) => n.fingering === map.fingerings[i]);
        if (note === undefined) expect(cell).toBeNull();
        else expect(cell).toEqual(note.played.found ? note.played.loss : 'lost');
      });
    }
  });

  it('names the note that each fault hurts most', () => {
    for (const { cells, worst } of map.rows) {
      const losses = cells.map((c) => (c === null ? -Infinity : c === 'lost' ? Infinity : c.lostDb));
      if (worst === null) expect(Math.max(...losses)).toBe(-Infinity);
      else expect([losses[worst.index], worst.lostDb]).toEqual([Math.max(...losses), Math.max(...losses)]);
    }
  });

  it('refuses a gap that is none', () => {
    expect(() => mapLeaks(horn, setup, 0, air)).toThrow('invalid gap: 0 mm; expected more than 0 mm');
  });
});
