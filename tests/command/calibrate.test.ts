import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { airWith, FINGERINGS, hornWith, makeAirColumn, playWholeHorn } from '../../src/acoustics/index.ts';
import type { CalibrationReport } from '../../src/documents/calibration-report.ts';
import { demoHorn } from '../acoustics/demo-horns.ts';
import { run as runProgram } from './run.ts';

const run = (...words: readonly string[]) => runProgram(['calibrate', ...words]);

const ALTO = 'datasets/horns/demo-alto.json';
const folder = mkdtempSync(join(tmpdir(), 'ventwright-log-'));
afterAll(() => rmSync(folder, { recursive: true }));

const { horn, setup } = demoHorn('alto');
const TRUTH = { 'mouthpiece place': 3e-3, temperature: -2 };

/** A table of the usual fingerings as a horn with that truth plays them. */
function logFile(name: string, more = ''): string {
  const fingerings = FINGERINGS.filter(({ way }) => way === '');
  const air = airWith(makeAirColumn(), TRUTH);
  const rows = playWholeHorn(hornWith(horn, TRUTH), setup, air, { fingerings, answers: false }).map(
    ({ fingering, outcome }) => `${fingering.id},${outcome.found ? outcome.cents.toFixed(2) : ''}`,
  );
  const path = join(folder, name);
  writeFileSync(path, ['fingering,cents', ...rows, more].join('\n'));
  return path;
}

describe('calibrate', () => {
  it('recovers what a table of notes was played with', () => {
    const { code, out } = run(
      ALTO,
      '--log',
      logFile('clean.csv'),
      '--unknowns',
      'temperature,place',
      '--json',
    );
    expect(code).toBe(0);
    const { unknowns, notes } = JSON.parse(out) as CalibrationReport;
    expect(unknowns.map(({ unknown }) => unknown)).toEqual(['mouthpiece place', 'temperature']);
    const [place, temperature] = unknowns;
    expect(Math.abs(place.amount - 3)).toBeLessThan(place.plusMinus);
    expect(Math.abs(temperature.amount + 2)).toBeLessThan(temperature.plusMinus);
    expect(notes).toHaveLength(FINGERINGS.filter(({ way }) => way === '').length);
  });

  it('prints the answer first, then every note', () => {
    const { code, out } = run(ALTO, '--log', logFile('clean.csv'));
    expect(code).toBe(0);
    expect(out).toMatch(/^The log puts the mouthpiece/);
    expect(out).toMatch(/^F4 +as found/m);
    expect(out).toMatch(/^note +setup +played cents +left cents +±$/m);
  });

  it('refuses a table with a wrong row, an unknown that is none and a missing table, each in a sentence', () => {
    const wrong = run(ALTO, '--log', logFile('wrong.csv', 'H4,3\nA4,much'));
    expect(wrong.code).toBe(2);
    expect(wrong.err).toContain('invalid fingering: "H4"');
    expect(wrong.err).toContain('invalid cents of A4: "much"');
    const unknown = run(ALTO, '--log', logFile('clean.csv'), '--unknowns', 'reed');
    expect(unknown.err).toBe(
      'invalid --unknowns: "reed"; expected some of volume, place, temperature, bell, trend\n',
    );
    expect(run(ALTO, '--log', join(folder, 'none.csv')).err).toContain('cannot be read (ENOENT)');
    expect(run(ALTO).code).toBe(2);
  });
});
