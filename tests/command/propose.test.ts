import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { makeAirColumn } from '../../src/acoustics/index.ts';
import { reportProposal, type ProposalReport } from '../../src/documents/proposal-report.ts';
import { demoHorn } from '../acoustics/demo-horns.ts';
import { run as runProgram } from './run.ts';

const run = (...words: readonly string[]) => runProgram(['propose', ...words]);

const ALTO = 'datasets/horns/demo-alto.json';

describe('propose', () => {
  it('prints as JSON what the study says, with locks and reach by pad number or id', () => {
    const { code, out } = run(ALTO, '--lock', '7,bis', '--most-mm', '8=6', '--prefer', 'low-keys', '--json');
    expect(code).toBe(0);
    const report = reportProposal(demoHorn('alto'), {
      air: makeAirColumn(),
      neighbours: false,
      locked: ['e', 'bis'],
      mostMm: new Map([['side-f-sharp', 6]]),
      prefer: 'low keys',
    });
    expect(JSON.parse(out) as ProposalReport).toEqual(JSON.parse(JSON.stringify(report)));
    expect(report.keys.filter(({ reason }) => reason === 'locked').map(({ number }) => number)).toEqual([
      7, 15,
    ]);
  });

  it('prints for a technician: the answer, every key in mm and inches with why, the cautions', () => {
    const { code, out } = run(ALTO);
    expect(code).toBe(0);
    expect(out).toContain(reportProposal(demoHorn('alto'), { air: makeAirColumn() }).answer);
    expect(out).toMatch(
      /^11 G♯ +6\.2 ± 0\.\d mm \(0\.244 in\) +7\.\d mm \(0\.\d+ in\) +\+1\.\d mm +Under-vented/m,
    );
    expect(out).toContain('! Seal first');
  });

  it('starts from a table of played notes', () => {
    const log = join(mkdtempSync(join(tmpdir(), 'ventwright-')), 'played.csv');
    writeFileSync(log, 'fingering,cents\nE4,-20\nF4,4\nG4,2\n');
    const { code, out } = run(ALTO, '--log', log, '--json');
    expect(code).toBe(0);
    const report = JSON.parse(out) as ProposalReport;
    expect(report.pitchFrom).toBe('playing');
    const counted = report.notes.filter(({ weight }) => weight > 0);
    expect(counted.map(({ fingering, foundCents }) => [fingering, Math.round(foundCents)])).toEqual([
      ['E4', -20],
      ['F4', 4],
      ['G4', 2],
    ]);
  });

  it.each([
    [['--lock', '99'], /invalid --lock: "99"; expected 1 \(low-b-flat\)/],
    [['--most-mm', '7=0'], /invalid --most-mm: 0 mm; expected 0\.5 to 60 mm/],
    [['--prefer', 'loud'], /invalid --prefer: "loud"; expected balanced, in tune, low keys, few moves/],
    [['--weights', 'noise=1'], /invalid --weights: "noise"; expected pitch, venting/],
    [['--tuned-by', 'ear'], /invalid --tuned-by: "ear"; expected register, all, equal/],
  ])('refuses %j in a sentence', (args, sentence) => {
    const { code, out, err } = run(ALTO, ...args);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(sentence);
  });
});
