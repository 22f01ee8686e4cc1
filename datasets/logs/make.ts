import { readFileSync, writeFileSync } from 'node:fs';
import {
  airWith,
  FINGERINGS,
  hornWith,
  makeAirColumn,
  playWholeHorn,
  withOpening,
  type Amounts,
} from '../../src/acoustics/index.ts';
import { presentHorn, readLibrary } from '../../src/documents/library-file.ts';
import { writePitchCsv } from '../../src/documents/pitch-log-csv.ts';
import type { Take } from '../../src/documents/pitch-log.ts';
import { loadHorn } from '../../src/documents/to-acoustics.ts';

/** What the demo log was made with: what a calibration of it has to find. */
export const PLANTED: Amounts = { 'mouthpiece place': 3e-3, temperature: -2, 'mouthpiece volume': 0.3e-6 };

/** m at the front: how the E key stood while it was played, which the horn's file does not know. */
const E_STOOD_AT = 4e-3;

/** One note slipped, cents. */
export const SLIPPED = { fingering: 'D5', cents: 48 } as const;

/** cents, of a single take */
const REPEAT = 3;

/** The demo alto as an invented player plays it: every usual fingering twice. @param normal seeded deviates */
export function makeDemoLog(normal: () => number): Take[] {
  const file: unknown = JSON.parse(readFileSync(new URL('../horns/demo-alto.json', import.meta.url), 'utf8'));
  const { records } = readLibrary(file, () => 'no id is missing');
  const loaded = loadHorn(presentHorn(records, records.horns[0]));
  if (!loaded.ok) throw new Error(loaded.issues[0].message);
  const fingerings = FINGERINGS.filter(({ way }) => way === '');
  const notes = playWholeHorn(
    hornWith(loaded.value.horn, PLANTED),
    withOpening(loaded.value.setup, 'e', { at: 'front', height: E_STOOD_AT }),
    airWith(makeAirColumn(), PLANTED),
    { fingerings, answers: false },
  );
  return notes.flatMap(({ fingering: { id }, outcome }) => {
    if (!outcome.found) return [];
    const slipped = id === SLIPPED.fingering ? SLIPPED.cents : 0;
    return [1, 2].map((): Take => {
      const cents = Number((outcome.cents + slipped + REPEAT * normal()).toFixed(1));
      return { fingering: id, cents, setup: 'as found', heard: 'tuner' };
    });
  });
}

/** Normal deviates from a seeded generator of 32 bits (mulberry32, in the public domain) by Box and Muller. */
export function demoNoise(): () => number {
  let state = 4;
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return (((t ^ (t >>> 14)) >>> 0) + 0.5) / 4294967296;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

/** Writes the log beside this file. */
export function makeLogs(): void {
  writeFileSync(new URL('demo-alto.csv', import.meta.url), writePitchCsv(makeDemoLog(demoNoise())));
}
