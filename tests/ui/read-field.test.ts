import { describe, expect, it } from 'vitest';
import { makePadPose } from '../../src/acoustics/index.ts';
import { DAY_FIELDS, LENGTH_FIELDS, type LengthFieldPlan } from '../../src/ui/state/fields.ts';
import { problemWith, readDayNumber, readKeyLength, readProposed } from '../../src/ui/state/read-field.ts';
import { ALTO, typedOver } from './demo.ts';

const E = { documents: ALTO, keyId: 'e' };
const field = (id: LengthFieldPlan['id']): LengthFieldPlan => LENGTH_FIELDS.find((f) => f.id === id)!;
const [AIR, A4] = DAY_FIELDS;

describe('a typed length', () => {
  it.each([
    ['0.310 in', 7.874],
    ['5/16', 7.9375],
    ['7,9 mm', 7.9],
    ['310 thou', 7.874],
    ['7.9', 7.9],
  ])('%s is understood', (typed, mm) => {
    const read = readKeyLength(E, field('openingMm'), typed, 'mm');
    expect(read.ok && read.value).toBeCloseTo(mm, 12);
  });

  it('without a unit is in the unit chosen', () => {
    const read = readKeyLength(E, field('openingMm'), '310', 'thou');
    expect(read.ok && read.value).toBeCloseTo(7.874, 12);
  });

  it.each(['eight', '', '8 furlongs', '-3', '1/0'])(
    '“%s” is refused with the field’s name and an example',
    (typed) => {
      const read = readKeyLength(E, field('padThicknessMm'), typed, 'mm');
      expect(read.ok).toBe(false);
      expect(!read.ok && read.message).toMatch(
        /^invalid pad thickness: “.*”; expected a length such as 7\.9 mm/,
      );
    },
  );

  it('out of range is refused with value, unit and what was expected', () => {
    const read = readKeyLength(E, field('padThicknessMm'), '40 mm', 'mm');
    expect(!read.ok && read.message).toBe('invalid pad thickness: 40 mm; expected 0.5 to 12 mm');
  });

  it('that contradicts the key’s other measurements is refused with the reason', () => {
    const read = readKeyLength(E, field('hingeMm'), '10 mm', 'mm');
    expect(!read.ok && read.message).toContain(
      'expected more than the pad’s radius, 17 mm'.replace('’', "'"),
    );
  });

  it('may be minus where the rod can lie below the rim, and nowhere else', () => {
    const below = readKeyLength(E, field('hingeHeightMm'), '−1,5 mm', 'mm');
    expect(below).toEqual({ ok: true, value: -1.5, plusMinusMm: null });
    expect(readKeyLength(E, field('hingeHeightMm'), '-1.5 ± 0.2', 'mm')).toEqual({
      ok: true,
      value: -1.5,
      plusMinusMm: 0.2,
    });
    expect(readKeyLength(E, field('chimneyMm'), '-1.5 mm', 'mm').ok).toBe(false);
  });
});

describe('a measuring point', () => {
  it('is refused where the key could not stand so', () => {
    expect(problemWith(E, { measuredAt: 'centre' })).toBeNull();
    const wide = { ...E, documents: typedOver(ALTO, { e: { openingMm: 25 } }) };
    expect(problemWith(wide, { measuredAt: 'back' })).toMatch(/back opening: 25 mm; expected at most/);
  });
});

describe('a proposed opening', () => {
  it('is taken at its measuring point and kept as the front’s', () => {
    const read = readProposed(E, 'centre', 15.25, '5.0 mm', 'mm');
    const pose = makePadPose({ distance: 0.0215, height: 0.001 }, 0.017, { at: 'centre', height: 0.005 });
    expect(read.ok && read.value).toBeCloseTo(pose.front * 1000, 9);
  });

  it('beyond what the study looks at is refused with the ends in both units', () => {
    const read = readProposed(E, 'front', 15.25, '30 mm', 'mm');
    expect(!read.ok && read.message).toBe(
      'invalid proposed opening: 30.0 mm (1.181 in) at the front; expected 0.3 mm (0.010 in) to 15.3 mm (0.600 in), as far as this study looks',
    );
    expect(readProposed(E, 'front', 15.25, '0', 'mm').ok).toBe(false);
  });

  it('may be typed as the ends are written', () => {
    expect(readProposed(E, 'front', 15.25, '15.3', 'mm')).toEqual({ ok: true, value: 15.25 });
  });
});

describe('a number of the day', () => {
  it.each([
    ['27', 27],
    ['26,9 °C', 26.9],
    ['80.6 F', 27],
  ])('%s is understood', (typed, celsius) => {
    const read = readDayNumber(AIR, typed);
    expect(read.ok && read.value).toBeCloseTo(celsius, 9);
  });

  it('is refused out of range, in the unit typed, and in the wrong unit', () => {
    expect(readDayNumber(AIR, '200 °F')).toEqual({
      ok: false,
      message: 'invalid air temperature: 200 °F; expected 0 to 45 °C',
    });
    expect(readDayNumber(A4, '440 C').ok).toBe(false);
    expect(readDayNumber(A4, '300')).toEqual({
      ok: false,
      message: 'invalid A4: 300 Hz; expected 390 to 470 Hz',
    });
    expect(readDayNumber(AIR, 'warm').ok).toBe(false);
  });
});
