import { describe, expect, it } from 'vitest';
import {
  FINGERINGS,
  findFingering,
  makeAirColumn,
  makeNetwork,
  noteAt,
  noteFrequency,
  noteNumber,
  openHolesOf,
  padStates,
  usualFingerings,
} from '../../../src/acoustics/index.ts';
import { DEMO_NAMES, demoHorn, fingeringOf } from '../demo-horns.ts';
import { relative, ROUNDING } from '../tolerances.ts';

/** What a pad sounds when it is the first one open, counted from the mouthpiece; octave vents not counted. */
const SOUNDS: Readonly<Record<number, string>> = {
  1: 'B', 2: 'C', 3: 'C#', 4: 'D', 5: 'Eb', 6: 'E', 7: 'F', 8: 'F#', 9: 'F#', 10: 'G', 11: 'G#', 12: 'A',
  13: 'Bb', 14: 'Bb', 15: 'B', 16: 'C', 17: 'C', 18: 'C#', 19: 'D', 20: 'Eb', 21: 'E', 22: 'F', 25: 'F#',
}; // prettier-ignore
const PALM = new Set([19, 20, 21, 22, 25]);
const VENTS = new Set(['body-vent', 'neck-vent']);

describe.each(DEMO_NAMES)('the keywork of the demo %s', (name) => {
  const { horn, setup } = demoHorn(name);
  const air = makeAirColumn();
  const numberOf = (id: string): number => horn.holes.find((h) => h.id === id)!.number;
  const state = (id: string) => padStates(horn.keywork, new Set(fingeringOf(id).touches));
  const isOpen = (touches: string[], pad: string): boolean =>
    padStates(horn.keywork, new Set(touches)).get(pad)!.open;

  it.each(FINGERINGS.filter((f) => f.register < 3).map((f) => [f.id, f] as const))(
    '%s sounds the note of its first open pad',
    (_, fingering) => {
      const open = openHolesOf(makeNetwork(horn, setup, fingering, air)).filter((id) => !VENTS.has(id));
      if (open.length === 0) {
        expect(fingering.note).toBe('Bb3');
        return;
      }
      const first = numberOf(open[0]);
      expect(SOUNDS[first]).toBe(fingering.note.slice(0, -1));
      const octave = Number(fingering.note.slice(-1));
      if (PALM.has(first)) expect(octave).toBe(6);
    },
  );

  it('has every pad of the table, each first open in some fingering', () => {
    const first = new Set(
      FINGERINGS.map((f) => openHolesOf(makeNetwork(horn, setup, f, air)).filter((id) => !VENTS.has(id))[0])
        .filter((id) => id !== undefined)
        .map(numberOf),
    );
    expect([...Object.keys(SOUNDS)].map(Number).filter((n) => !first.has(n))).toEqual([]);
  });

  it('locks low C♯ shut under low B and low B♭', () => {
    const low = ['L1', 'L2', 'L3', 'R1', 'R2', 'R3', 'low C'];
    expect(isOpen([...low, 'low C#'], 'low-c-sharp')).toBe(true);
    expect(isOpen([...low, 'low C#', 'low B'], 'low-c-sharp')).toBe(false);
    expect(isOpen([...low, 'low C#', 'low Bb'], 'low-c-sharp')).toBe(false);
  });

  it('closes low B with low B♭', () => {
    expect(isOpen(['low Bb'], 'low-b')).toBe(false);
    expect(isOpen(['low B'], 'low-b-flat')).toBe(true);
  });

  it.each(['R1', 'R2', 'R3'])(
    'holds G♯ shut and closes bis and the F♯ auxiliary while %s is down',
    (finger) => {
      expect(isOpen(['L1', 'L2', 'L3', 'G#'], 'g-sharp')).toBe(true);
      expect(isOpen(['L1', 'L2', 'L3', 'G#', finger], 'g-sharp')).toBe(false);
      expect(isOpen(['L1'], 'bis')).toBe(true);
      expect(isOpen(['L1', finger], 'bis')).toBe(false);
      expect(isOpen([finger], 'f-sharp-auxiliary')).toBe(false);
    },
  );

  it.each(['low C#', 'low B', 'low Bb'])(
    'opens G♯ by %s only while no right-hand finger is down',
    (touch) => {
      expect(isOpen([touch], 'g-sharp')).toBe(true);
      expect(isOpen([touch, 'R2'], 'g-sharp')).toBe(false);
    },
  );

  it('closes bis and small C with the A key, and small C with the B key', () => {
    expect(isOpen(['L2'], 'bis')).toBe(false);
    expect(isOpen(['L2'], 'small-c')).toBe(false);
    expect(isOpen(['L1'], 'small-c')).toBe(false);
    expect(isOpen(['L3'], 'small-c')).toBe(true);
  });

  it('opens the body vent under the thumb with L3 down and the neck vent with L3 up, never both', () => {
    expect([isOpen(['thumb', 'L3'], 'body-vent'), isOpen(['thumb', 'L3'], 'neck-vent')]).toEqual([
      true,
      false,
    ]);
    expect([isOpen(['thumb'], 'body-vent'), isOpen(['thumb'], 'neck-vent')]).toEqual([false, true]);
    expect([isOpen(['L3'], 'body-vent'), isOpen([], 'neck-vent')]).toEqual([false, false]);
  });

  it('opens the palm F pad only a millimetre by front F, and fully by its own touch, whichever came first', () => {
    expect(state('F6 front').get('palm-f')).toEqual({ open: true, front: 0.001 });
    expect(padStates(horn.keywork, new Set(['front F', 'palm F'])).get('palm-f')).toEqual({ open: true });
    expect(padStates(horn.keywork, new Set(['palm F', 'front F'])).get('palm-f')).toEqual({ open: true });
    const network = makeNetwork(horn, setup, fingeringOf('F6 front'), air);
    const full = makeNetwork(horn, setup, fingeringOf('F6'), air);
    const end = (n: typeof network): number => {
      const e = n.elements.find((x) => x.kind === 'hole' && x.hole.id === 'palm-f');
      return e !== undefined && e.kind === 'hole' ? e.end.ventShare : NaN;
    };
    expect(end(network)).toBeGreaterThan(0);
    expect(end(network)).toBeLessThan(end(full));
  });

  it('refuses a touch it does not have', () => {
    expect(() => padStates(horn.keywork, new Set(['L4']))).toThrow(/invalid touch: "L4"/);
  });
});

describe('note names', () => {
  it('turn into numbers and back', () => {
    for (let n = 0; n < 120; n++) expect(noteNumber(noteAt(n))).toBe(n);
  });

  it('are found by id, by note and with the printed signs', () => {
    expect(findFingering('Bb4 bis')?.way).toBe('bis');
    expect(findFingering('B♭4')?.note).toBe('Bb4');
    expect(findFingering('F♯4')?.note).toBe('F#4');
    expect(findFingering('H4')).toBeUndefined();
    expect(() => noteNumber('H4')).toThrow(RangeError);
  });

  it('sound a major sixth lower on an alto, a major ninth on a tenor', () => {
    expect(relative(noteFrequency('C5', -9), noteFrequency('Eb4', 0))).toBeLessThan(ROUNDING);
    expect(relative(noteFrequency('D5', -14), noteFrequency('C4', 0))).toBeLessThan(ROUNDING);
  });

  it('have fingerings with ids of their own', () => {
    expect(new Set(FINGERINGS.map((f) => f.id)).size).toBe(FINGERINGS.length);
  });

  it('have one usual fingering each, in whatever order they come', () => {
    const usual = FINGERINGS.filter((_, i) => usualFingerings(FINGERINGS)[i]).map(({ id }) => id);
    expect(usual).toHaveLength(new Set(FINGERINGS.map(({ note }) => note)).size);
    expect(usual).toEqual(expect.arrayContaining(['E6', 'F6', 'F#6', 'Bb4 side', 'C#6']));
    const turned = [...FINGERINGS].reverse();
    expect(
      turned
        .filter((_, i) => usualFingerings(turned)[i])
        .map(({ id }) => id)
        .reverse(),
    ).toEqual(usual);
    const alone = FINGERINGS.filter(({ id }) => id !== 'F#6');
    expect(usualFingerings(alone)[alone.findIndex(({ id }) => id === 'F#6 front')]).toBe(true);
  });
});
