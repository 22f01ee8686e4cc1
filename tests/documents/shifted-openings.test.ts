import { describe, expect, it } from 'vitest';
import { makeAirColumn } from '../../src/acoustics/index.ts';
import { compareLoaded } from '../../src/documents/compare-loaded.ts';
import { shiftedOpenings, withEveryKeyShifted } from '../../src/documents/shifted-openings.ts';
import { loadHorn, type HornAndSetup, type LoadedHorn } from '../../src/documents/to-acoustics.ts';
import { ALTO, typedOver } from '../ui/demo.ts';

const air = makeAirColumn({ mouthpieceC: 26.85 });
/** mm: what two routes through the hinge leave. */
const ROUNDING_MM = 1e-9;
/** cents: a pitch found twice. */
const FOUND_TWICE = 1e-6;
/** cents: a note that has open holes above the bell moves by more. */
const MOVED_CENTS = 0.01;

function loaded(documents: HornAndSetup): LoadedHorn {
  const read = loadHorn(documents);
  if (!read.ok) throw new Error(read.issues[0].message);
  return read.value;
}

const alto = loaded(ALTO);

function shifted(horn: LoadedHorn, byMm: number) {
  const outcome = withEveryKeyShifted(horn, byMm, 'as wished');
  if (!outcome.ok) throw new Error(outcome.message);
  return outcome;
}

describe('every own stop moved by the same amount', () => {
  it('goes that far at the front, wherever it was read', () => {
    const centre = loaded(typedOver(ALTO, { d: { openingMm: 5.5, measuredAt: 'centre' } }));
    for (const byMm of [-1, 0.5, 2]) {
      for (const { fromMm, toMm, endedBy } of shiftedOpenings(centre, byMm)) {
        expect(Math.abs(toMm - fromMm - byMm)).toBeLessThan(ROUNDING_MM);
        expect(endedBy).toBeNull();
      }
    }
  });

  it('never goes below shut, and says which keys would not open', () => {
    const ended = shiftedOpenings(alto, -6).filter(({ endedBy }) => endedBy !== null);
    const low = ALTO.setup.keys.filter(({ openingMm }) => openingMm! < 6).map(({ pad }) => pad);
    expect(ended.map(({ pad }) => pad).sort()).toEqual(low.sort());
    expect(ended.every(({ toMm, endedBy }) => toMm === 0 && endedBy === 'shut')).toBe(true);
    expect(shifted(alto, -6).value.setup.keys.get('a')!.opening.height).toBe(0);
  });

  it('never goes further than hinge or foot cork let it, and says which of them ended it', () => {
    const d = (horn: LoadedHorn, byMm: number) => shiftedOpenings(horn, byMm).find(({ pad }) => pad === 'd')!;
    const far = d(alto, 45);
    expect(far.endedBy).toBe('hinge');
    expect(far.toMm).toBeLessThan(far.fromMm + 45);
    const keys = ALTO.setup.keys.map((key) => (key.pad === 'd' ? { ...key, footCorkMm: 0.5 } : key));
    const corked = loaded({ horn: ALTO.horn, setup: { ...ALTO.setup, keys } });
    const { key, id } = ALTO.horn.holes.find((hole) => hole.id === 'd')!;
    const { padDiameterMm } = ALTO.setup.keys.find(({ pad }) => pad === id)!;
    const cork = d(corked, 3);
    expect(cork.endedBy).toBe('foot cork');
    // The front rises with its arm, the cork with the foot’s.
    const frontArmMm = key!.hingeMm + padDiameterMm! / 2;
    expect(Math.abs(cork.toMm - cork.fromMm - (0.5 * frontArmMm) / key!.footArmMm!)).toBeLessThan(
      ROUNDING_MM,
    );
  });

  it('is the comparison with each opening typed by hand, only surer: what was read errs alike before and after', () => {
    const typed = Object.fromEntries(
      ALTO.setup.keys.map(({ pad, openingMm }) => [pad, { openingMm: openingMm! - 1 }]),
    );
    const byHand = compareLoaded([alto, loaded(typedOver(ALTO, typed))], { air, a4Hz: 440 });
    const atOnce = compareLoaded([alto, shifted(alto, -1).value], { air, a4Hz: 440 });
    let moved = 0;
    for (const { fingering, differences } of atOnce.notes) {
      const other = byHand.notes.find((note) => note.fingering === fingering)!.differences[0]!;
      const [own] = differences;
      expect(Math.abs(own!.cents - other.cents)).toBeLessThan(FOUND_TWICE);
      expect(own!.centsPlusMinus).toBeLessThanOrEqual(other.centsPlusMinus);
      if (Math.abs(other.cents) < MOVED_CENTS) continue;
      moved++;
      expect(own!.centsPlusMinus).toBeLessThan(other.centsPlusMinus);
      expect(own!.centsPlusMinus).toBeGreaterThan(0);
    }
    expect(moved).toBeGreaterThan(atOnce.notes.length / 2);
    for (const { differences } of atOnce.keys) expect(differences[0]!.frontPlusMinusMm).toBe(0);
  });

  it('leaves everything as it is when it goes nowhere', () => {
    const { notes } = compareLoaded([alto, shifted(alto, 0).value], { air, a4Hz: 440 });
    for (const { differences } of notes) {
      expect(Math.abs(differences[0]!.cents)).toBeLessThan(FOUND_TWICE);
      expect(differences[0]!.centsPlusMinus).toBeLessThan(FOUND_TWICE);
    }
  });
});
