import { describe, expect, it } from 'vitest';
import {
  findFingering,
  impedanceSweep,
  makeAirColumn,
  makeNetwork,
  playWholeHorn,
  studyVenting,
} from '../../src/acoustics/index.ts';
import { loadHorn } from '../../src/documents/to-acoustics.ts';
import { demoDocument } from '../acoustics/demo-horns.ts';
import { run, runAsStarted } from './run.ts';

const ALTO = 'datasets/horns/demo-alto.json';

function demoAlto() {
  const read = loadHorn(demoDocument('alto'));
  if (!read.ok) throw new Error('the demo alto does not load');
  return read.value;
}

const HOLE = { boreMm: 40, holeMm: 30, chimneyMm: 4, rimMm: 1, padMm: 34, padThicknessMm: 4 };

describe('hole', () => {
  it('answers each hole in order, in bench units', () => {
    const holes = [
      { ...HOLE, hingeMm: null, centreMm: 5 },
      { ...HOLE, hingeMm: 21.5, frontMm: 8 },
      { ...HOLE, hingeMm: 21.5, hingeHeightMm: 3, centreMm: 0 },
    ];
    const { code, out } = runAsStarted(['hole'], JSON.stringify(holes));
    expect(code).toBe(0);
    const [parallel, hinged, closed] = JSON.parse(out);
    expect(parallel).toMatchObject({ frontMm: 5, centreMm: 5, backMm: 5, equivalentParallelMm: 5 });
    expect(parallel.endCorrectionMm).toBeGreaterThan(parallel.noPadEndCorrectionMm);
    expect(parallel.ventShare).toBeGreaterThan(0);
    expect(parallel.ventShare).toBeLessThan(1);
    for (const hole of [parallel, hinged]) {
      const { tiInnerLengthMm, tmMatchingLengthMm, teHoleLengthMm, noPadTeHoleLengthMm } = hole;
      const withinRim = tiInnerLengthMm + HOLE.chimneyMm + tmMatchingLengthMm;
      expect(teHoleLengthMm).toBeCloseTo(withinRim + hole.endCorrectionMm, 9);
      expect(noPadTeHoleLengthMm).toBeCloseTo(withinRim + hole.noPadEndCorrectionMm, 9);
      expect(hole.ventShare).toBeCloseTo(noPadTeHoleLengthMm / teHoleLengthMm, 9);
    }
    // With the rod in the rim plane heights go as the distance from the rod.
    expect(hinged.centreMm).toBeCloseTo((8 * 21.5) / (21.5 + 17), 9);
    expect(hinged.backMm).toBeCloseTo((8 * (21.5 - 17)) / (21.5 + 17), 9);
    expect(closed).toMatchObject({ endCorrectionMm: null, teHoleLengthMm: null, ventShare: 0 });
  });

  it('says the same in words, each length by its symbol and with its unit', () => {
    const holes = JSON.stringify([
      { ...HOLE, hingeMm: 21.5, frontMm: 8 },
      { ...HOLE, hingeMm: 21.5, centreMm: 0 },
    ]);
    const [{ tiInnerLengthMm, tmMatchingLengthMm, teHoleLengthMm, ventShare }] = JSON.parse(
      run(['hole', '-'], holes).out,
    );
    const { out } = run(['hole', '-', '--text'], holes);
    expect(out).toMatch(new RegExp(`t_i, inner length, .*: ${tiInnerLengthMm.toFixed(2)} mm\n`));
    expect(out).toMatch(new RegExp(`t_m, matching length, .*: ${tmMatchingLengthMm.toFixed(2)} mm\n`));
    expect(out).toMatch(new RegExp(`t_e, .*: ${teHoleLengthMm.toFixed(2)} mm; with no pad `));
    expect(out).toContain(`vent share, t_e with no pad over t_e: ${(100 * ventShare).toFixed(1)} %`);
    expect(out).toMatch(/Hole 2:[^]*t_e, .*: endless, the hole is closed; with no pad \d/);
  });

  it('names every fault of every hole and leaves with code 2', () => {
    const holes = [
      { ...HOLE, hingeMm: null, centreMm: 5, holeMm: -3 },
      { ...HOLE, hingeMm: null, centreMm: 'wide' },
    ];
    const { code, out, err } = run(['hole', '-'], JSON.stringify(holes));
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toContain('invalid holeMm, hole diameter: -3 mm; expected 0.5 to 200 mm');
    expect(err).toContain('invalid centreMm, centre opening: "wide" mm; expected 0 to 500 mm');
  });

  it.each([
    ['no opening', { ...HOLE, hingeMm: null }, 'exactly one opening'],
    ['two openings', { ...HOLE, hingeMm: null, centreMm: 1, frontMm: 1 }, 'exactly one opening'],
    [
      'a pad smaller than its hole',
      { ...HOLE, padMm: 20, hingeMm: null, centreMm: 1 },
      'expected more than holeMm',
    ],
    ['a rod under the pad', { ...HOLE, hingeMm: 10, centreMm: 1 }, 'invalid hinge distance: 10 mm'],
    [
      'an opening the hinge cannot swing',
      { ...HOLE, hingeMm: 20, centreMm: 30 },
      'invalid centre opening: 30 mm',
    ],
    ['an unknown field', { ...HOLE, hingeMm: null, centreMm: 1, colour: 1 }, 'unknown field "colour"'],
  ])('refuses %s in a sentence', (_, hole, sentence) => {
    const { code, err } = run(['hole', '-'], JSON.stringify([hole]));
    expect(code).toBe(2);
    expect(err).toContain(sentence);
  });

  it('reads a file as well, and refuses two', () => {
    expect(run(['hole', 'nowhere.json']).err).toContain('nowhere.json: cannot be read');
    expect(run(['hole', 'a.json', 'b.json']).err).toContain('expected at most one file of holes; got 2');
  });

  it('refuses what is not JSON', () => {
    expect(runAsStarted(['hole'], '{').err).toContain('standard input: the file is not JSON');
  });
});

describe('impedance', () => {
  it('prints the core’s own numbers as CSV', () => {
    const { code, out } = run([
      'impedance',
      ALTO,
      '--note',
      'F4',
      '--from',
      '200',
      '--to',
      '210',
      '--step',
      '2.5',
    ]);
    expect(code).toBe(0);
    const [head, ...lines] = out.trim().split('\n');
    expect(head).toBe('frequencyHz,realPaSPerM3,imaginaryPaSPerM3');
    const rows = lines.map((l) => l.split(',').map(Number));
    expect(rows.map((r) => r[0])).toEqual([200, 202.5, 205, 207.5, 210]);
    const { horn, setup } = demoAlto();
    const network = makeNetwork(horn, setup, findFingering('F4')!, makeAirColumn());
    const { re, im } = impedanceSweep(
      network,
      rows.map((r) => r[0]),
    );
    expect(rows.map((r) => r[1])).toEqual([...re]);
    expect(rows.map((r) => r[2])).toEqual([...im]);
  });

  it('names an unknown note and lists the known ones', () => {
    const { code, err } = run(['impedance', ALTO, '--note', 'H4', '--from', '1', '--to', '2', '--step', '1']);
    expect(code).toBe(2);
    expect(err).toContain('invalid --note: "H4"; expected one of Bb3, B3');
  });
});

describe('scale', () => {
  it('gives every fingering its holes, target, resonances and cutoff', () => {
    const { code, out } = run(['scale', ALTO, '--json']);
    expect(code).toBe(0);
    const notes = JSON.parse(out);
    const f4 = notes.find((n: { fingering: string }) => n.fingering === 'F4');
    expect(f4.fingers).toEqual(['L1', 'L2', 'L3', 'R1']);
    expect(f4.openHoles[0]).toBe('e');
    expect(Object.keys(f4.played)).toEqual(['hz', 'cents', 'heightRatio', 'q', 'riseMs']);
    expect(f4.resonances.length).toBeGreaterThan(2);
    expect(f4.cutoffHz).toBeGreaterThan(300);
    const lowBFlat = notes.find((n: { fingering: string }) => n.fingering === 'Bb3');
    expect(lowBFlat.cutoffHz).toBeNull();
    expect(lowBFlat.cutoffReason).toContain('two open holes');
  });

  it('takes another setup, and lists what is wrong with it', () => {
    const { documents } = demoAlto();
    const [first, ...keys] = documents.setup.keys;
    const setup = { ...documents.setup, keys: [{ ...first, openingMm: 99 }, ...keys] };
    const { code, err } = run(['scale', ALTO, '--setup', '-'], JSON.stringify(setup));
    expect(code).toBe(2);
    expect(err).toContain('keys[0].openingMm');
  });
});

describe('study', () => {
  it('gives the core’s answer for a pad by number and by id', () => {
    const byNumber = JSON.parse(run(['study', ALTO, '--key', '7', '--json']).out);
    const byId = JSON.parse(run(['study', ALTO, '--key', 'e', '--json']).out);
    expect(byNumber).toEqual(byId);
    const { horn, setup } = demoAlto();
    const study = studyVenting(horn, setup, 'e', makeAirColumn());
    if (study.diminishingReturn.kind !== 'reached') throw new Error('the demo E key reaches its point');
    expect(byNumber.diminishingReturn.point.frontMm).toBe(1000 * study.diminishingReturn.at.pose.front);
    expect(byNumber.governed.map((n: { fingering: string }) => n.fingering)).toContain('F4');
    expect(byNumber.curve).toHaveLength(41);
  });

  it('says in words what it found', () => {
    const { out } = run(['study', ALTO, '--key', '7']);
    expect(out).toContain('Pad 7, E: stands at 8.0 mm (0.315 in) front');
    expect(out).toContain('More height stops helping at');
  });

  it('takes option names written as the documents write theirs', () => {
    const asOption = run(['study', ALTO, '--key', 'e', '--reach-mm', '8', '--json']);
    expect(run(['study', ALTO, '--key', 'e', '--reachMm', '8', '--json']).out).toBe(asOption.out);
    expect(run(['study', ALTO, '--key', 'e', '--reachMm=8', '--json']).out).toBe(asOption.out);
    expect(run(['study', ALTO, '--keyName', 'e']).err).toContain("Unknown option '--key-name'");
  });

  it('names an unknown key, and a vent as no key', () => {
    expect(run(['study', ALTO, '--key', '99']).err).toContain('invalid --key: "99"; expected 1 (low-b-flat)');
    expect(run(['study', ALTO, '--key', '23']).code).toBe(2);
  });

  it('passes an honest “none in reach” on', () => {
    const report = JSON.parse(run(['study', ALTO, '--key', '7', '--reach-mm', '8', '--json']).out);
    expect(report.diminishingReturn.kind).toBe('none in reach');
    expect(report.diminishingReturn.reason).toContain('still');
  });
});

describe('answers', () => {
  it('gives each note its answer to each pad, in cents per mm', () => {
    const { code, out } = run(['answers', ALTO]);
    expect(code).toBe(0);
    const report = JSON.parse(out);
    expect(report.pads).toHaveLength(23);
    const f4 = report.notes.find((n: { fingering: string }) => n.fingering === 'F4');
    const { horn, setup } = demoAlto();
    const note = playWholeHorn(horn, setup, makeAirColumn()).find((n) => n.fingering.id === 'F4')!;
    if (!note.outcome.found) throw new Error('F4 has a resonance');
    const e = note.outcome.answers!.keys.find((k) => k.id === 'e')!;
    expect(f4.perOpeningMm[report.pads.indexOf('e')].cents).toBe(e.opening.cents / 1000);
  });
});

it('prints what it can do when asked', () => {
  const { code, out } = runAsStarted(['--help']);
  expect(code).toBe(0);
  for (const name of ['hole', 'impedance', 'scale', 'answers', 'study']) expect(out).toContain(`-- ${name} `);
});

describe('a command line that is wrong', () => {
  it.each([
    [[], 'missing command'],
    [['whistle'], 'unknown command "whistle"'],
    [['scale', ALTO, '--colour'], "Unknown option '--colour'"],
    [['scale'], 'expected one horn file'],
    [['scale', 'nowhere.json'], 'nowhere.json: cannot be read'],
    [['scale', ALTO, '--a4', 'high'], 'invalid --a4: high Hz; expected 400 to 480 Hz'],
  ])('%j gets a sentence and code 2', (args, sentence) => {
    const { code, err } = run(args);
    expect(code).toBe(2);
    expect(err).toContain(sentence);
  });

  it('ends a process so, its sentence on standard error', () => {
    expect(runAsStarted(['whistle'])).toMatchObject({
      code: 2,
      out: '',
      err: expect.stringContaining('whistle'),
    });
  });
});
