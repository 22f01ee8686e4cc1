import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import {
  airAtTemperature,
  impedanceSweep,
  innerLength,
  makeAirColumn,
  makeBore,
  makeNetworkWithEnds,
  matchingLength,
  openEndImpedanceAt,
  type BoreStation,
  type Horn,
  type HoleEnd,
} from '../../src/acoustics/index.ts';
import { inviscid, lossless } from '../acoustics/lossless.ts';
import { relativeComplex } from '../acoustics/tolerances.ts';

const available = spawnSync('ngspice', ['--version'], { encoding: 'utf8' }).status === 0;
/** ngspice prints 13 digits and holds its matrix in double precision. */
const CIRCUIT = 1e-10;
/** Impedances are divided by this, so that the circuit's numbers are near one. */
const UNIT = 1e7;

/** A staircase of cylinders with two open holes and two closed ones: what a circuit of ideal lines can be. */
const stations: BoreStation[] = [0.006, 0.0075, 0.009, 0.011, 0.013].flatMap((radius, i) => [
  { x: 0.12 * i, radius },
  { x: 0.12 * (i + 1), radius },
]);
const hole = (id: string, x: number, boreRadius: number, holeRadius: number) => ({
  id, number: 1, name: id, x, boreRadius, holeRadius, chimney: 0.004, rimThickness: 0.001, hinge: null,
}); // prettier-ignore
const horn: Horn = {
  name: 'staircase',
  transposition: 0,
  bore: makeBore(stations, 0.006),
  neckStart: 0,
  extraMouthpieceVolume: 0,
  reedVolume: 2e-6,
  holes: [
    hole('a', 0.2, 0.0075, 0.004),
    hole('b', 0.3, 0.009, 0.006),
    hole('c', 0.4, 0.011, 0.008),
    hole('d', 0.52, 0.013, 0.01),
  ],
  keywork: { rests: new Map(), touches: [], links: [] },
};
const ends = new Map<string, HoleEnd>([
  ['a', { endLength: Infinity, ventShare: 0 }],
  ['b', { endLength: 0.009, ventShare: 0.7 }],
  ['c', { endLength: Infinity, ventShare: 0 }],
  ['d', { endLength: 0.012, ventShare: 0.8 }],
]);
const column = makeAirColumn({ mouthpieceC: 22 });
const air = inviscid(airAtTemperature(22));
const network = lossless(makeNetworkWithEnds(horn, ends, column));

/** The same horn as a circuit: T lines, L and R, one frequency at a time as the radiation resistances ask. */
function circuitAt(f: number): string {
  const rhoC = air.density * air.soundSpeed;
  const lines: string[] = ['staircase horn', 'I1 0 n0 AC 1'];
  let node = 0;
  let count = 0;
  const name = (): string => `x${count++}`;
  const number = (v: number): string => v.toExponential(16);
  const line = (from: string, to: string, radius: number, length: number): void => {
    const z = rhoC / (Math.PI * radius ** 2) / UNIT;
    lines.push(`T${name()} ${from} 0 ${to} 0 Z0=${number(z)} TD=${number(length / air.soundSpeed)}`);
  };
  const inertance = (from: string, to: string, length: number, radius: number): void => {
    lines.push(`L${name()} ${from} ${to} ${number((air.density * length) / (Math.PI * radius ** 2) / UNIT)}`);
  };
  lines.push(`Creed n0 0 ${number(network.reedCompliance * UNIT)}`);
  for (const e of network.elements) {
    const here = `n${node}`;
    if (e.kind === 'bore') {
      line(here, `n${++node}`, e.piece.r1, e.piece.length);
    } else if (e.kind === 'hole') {
      const half = e.halfSeriesPerHz / (2 * Math.PI) / UNIT;
      const middle = `m${node}`;
      const far = `n${++node}`;
      lines.push(
        `L${name()} ${here} ${middle} ${number(half)}`,
        `L${name()} ${middle} ${far} ${number(half)}`,
      );
      const top = `t${node}`;
      const rim = `r${node}`;
      inertance(middle, top, innerLength(e.hole), e.hole.holeRadius);
      line(top, rim, e.hole.holeRadius, e.hole.chimney + matchingLength(e.hole));
      if (e.end.endLength === Infinity) lines.push(`R${name()} ${rim} 0 1e15`);
      else {
        const k = (2 * Math.PI * f) / air.soundSpeed;
        inertance(rim, `e${node}`, e.end.endLength, e.hole.holeRadius);
        lines.push(`R${name()} e${node} 0 ${number((rhoC * k * k) / (4 * Math.PI) / UNIT)}`);
      }
    }
  }
  const bell = new Float64Array(4);
  openEndImpedanceAt(network.bellRadius, f, air, 0, bell);
  lines.push(
    `Lbell n${node} bell ${number(bell[1] / (2 * Math.PI * f) / UNIT)}`,
    `Rbell bell 0 ${number(bell[0] / UNIT)}`,
    '.control',
    'set numdgt=13',
    `ac lin 1 ${number(f)} ${number(f)}`,
    'print real(v(n0)) imag(v(n0))',
    'quit',
    '.endc',
    '.end',
  );
  return lines.join('\n');
}

function ngspiceImpedance(f: number): { re: number; im: number } {
  const folder = mkdtempSync(join(tmpdir(), 'ventwright-'));
  try {
    const file = join(folder, 'horn.cir');
    writeFileSync(file, circuitAt(f));
    const { stdout, stderr } = spawnSync('ngspice', ['-b', file], { encoding: 'utf8' });
    const value = (part: string): number => {
      const match = new RegExp(`^${part}\\(v\\(n0\\)\\) = (\\S+)`, 'm').exec(stdout);
      if (match === null) throw new Error(`no answer from ngspice: ${stdout}${stderr}`);
      return UNIT * Number(match[1]);
    };
    return { re: value('real'), im: value('imag') };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

// The one check that may be left out: ngspice is not part of this project's packages.
describe.skipIf(!available)(
  available
    ? 'the network against ngspice'
    : 'the network against ngspice (left out: no ngspice on the path)',
  () => {
    it.each([110, 173.5, 260, 415, 640, 987])('has the same input impedance at %d Hz, losses off', (f) => {
      const { re, im } = impedanceSweep(network, [f], 'with reed');
      const theirs = ngspiceImpedance(f);
      expect(relativeComplex(re[0], im[0], theirs.re, theirs.im)).toBeLessThan(CIRCUIT);
    });
  },
);
