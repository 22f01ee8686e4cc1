import { describe, expect, it } from 'vitest';
import {
  airAtTemperature,
  centsBetween,
  makeAirColumn,
  makeNetwork,
  noteFrequency,
  resonanceNear,
  REFERENCE_C,
} from '../../src/acoustics/index.ts';
import { cramerSoundSpeed } from '../../src/acoustics/air/cramer-1993.ts';
import { demoHorn, fingeringOf } from '../acoustics/demo-horns.ts';
import { DIFFERENCE, printedDecimals, relative, ROUNDING } from '../acoustics/tolerances.ts';
import { published } from './published-values.ts';

/** The linear fits of dry air against standards, within their range: model. */
const LINEAR_FIT = 0.0015;
/** Whole horn against the textbook figure, cents per °C: printed to one digit. */
const ONE_DIGIT = printedDecimals(0);

describe('air against published values', () => {
  const cramer = published<{
    values: { airC: number; humidity: number; carbonDioxide: number; soundSpeed: number }[];
  }>('cramer-1993/sound-speed');

  it.each(cramer.values)(
    'moist air at $airC °C carries sound at the $soundSpeed m/s that Cramer 1993 gives',
    ({ airC, humidity, carbonDioxide, soundSpeed }) => {
      expect(Math.abs(cramerSoundSpeed(airC, humidity, carbonDioxide) - soundSpeed)).toBeLessThan(
        printedDecimals(3),
      );
    },
  );

  it('dry air agrees with ISO 9613-1 over 15–37 °C', () => {
    const iso = published<{ referenceSpeed: number; referenceKelvin: number; zeroCelsiusKelvin: number }>(
      'iso-9613-1-1993/sound-speed',
    );
    for (let t = 15; t <= 37; t++) {
      const standard = iso.referenceSpeed * Math.sqrt((t + iso.zeroCelsiusKelvin) / iso.referenceKelvin);
      expect(relative(airAtTemperature(t).soundSpeed, standard)).toBeLessThan(LINEAR_FIT);
    }
  });

  it('dry air at 15 °C has the sound speed, density and viscosity of ISO 2533', () => {
    const iso = published<{ airC: number; soundSpeed: number; density: number; viscosity: number }>(
      'iso-2533-1975/sea-level',
    );
    const air = airAtTemperature(iso.airC);
    expect(relative(air.soundSpeed, iso.soundSpeed)).toBeLessThan(LINEAR_FIT);
    expect(relative(air.density, iso.density)).toBeLessThan(LINEAR_FIT);
    expect(relative(air.viscosity, iso.viscosity)).toBeLessThan(LINEAR_FIT);
  });

  it('dry air at 26.85 °C is what Keefe 1984 gives, and changes with temperature as given', () => {
    const keys = ['density', 'viscosity', 'heatRatio', 'prandtlRoot', 'soundSpeed'] as const;
    const keefe = published<
      { airC: number; slopes: Record<string, number> } & Record<(typeof keys)[number], number>
    >('keefe-1984/air');
    expect(REFERENCE_C).toBe(keefe.airC);
    const centre = airAtTemperature(keefe.airC);
    const warmer = airAtTemperature(keefe.airC + 1);
    for (const key of keys) {
      expect(relative(centre[key], keefe[key])).toBeLessThan(ROUNDING);
      expect(Math.abs(warmer[key] / centre[key] - 1 - keefe.slopes[key])).toBeLessThan(ROUNDING);
    }
  });

  it('the written A of a concert-pitch horn sounds at the A4 of ISO 16', () => {
    const { a4 } = published<{ a4: number }>('iso-16-1975/tuning');
    expect(noteFrequency('A4', 0)).toBe(a4);
    expect(relative(noteFrequency('F#5', -9), a4)).toBeLessThan(ROUNDING);
  });

  it.each(['alto', 'tenor'] as const)('a whole %s rises about 3 cents per °C', (name) => {
    const { centsPerDegree } = published<{ centsPerDegree: number }>('common-knowledge/temperature');
    const { horn, setup } = demoHorn(name);
    for (const id of ['D4', 'G4', 'C5', 'D5', 'A5']) {
      const fingering = fingeringOf(id);
      const target = noteFrequency(fingering.note, horn.transposition);
      const at = (c: number): number => {
        const played = resonanceNear(
          makeNetwork(horn, setup, fingering, makeAirColumn({ mouthpieceC: c })),
          target,
        );
        return played.found ? played.resonance.frequency : NaN;
      };
      expect(Math.abs(centsBetween(at(20), at(30)) / 10 - centsPerDegree)).toBeLessThan(ONE_DIGIT);
    }
  });

  it('moist or breathed air keeps ρc² of dry air, as the pressure is the same', () => {
    const bulk = ({ density, soundSpeed }: { density: number; soundSpeed: number }): number =>
      density * soundSpeed ** 2;
    const dry = bulk(airAtTemperature(27));
    expect(relative(bulk(airAtTemperature(27, 1, null)), dry)).toBeLessThan(ROUNDING);
    expect(relative(bulk(airAtTemperature(27, 0.5, 0.03)), dry)).toBeLessThan(ROUNDING);
  });

  it('humidity raises the pitch and carbon dioxide lowers it, by amounts that nearly cancel', () => {
    const dry = airAtTemperature(27).soundSpeed;
    const cents = (c: number): number => centsBetween(dry, c);
    const moist = cents(airAtTemperature(27, 1, null).soundSpeed);
    const breath = cents(airAtTemperature(27, null, 0.025).soundSpeed);
    expect(moist).toBeGreaterThan(5);
    expect(breath).toBeLessThan(-5);
    expect(Math.abs(cents(airAtTemperature(27, 1, 0.025).soundSpeed))).toBeLessThan(Math.min(moist, -breath));
    const ordinary = airAtTemperature(27, 0, 0.0004).soundSpeed;
    expect(relative(ordinary, dry)).toBeLessThan(DIFFERENCE);
  });
});
