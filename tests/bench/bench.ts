/**
 * How fast one impedance sweep is (2,000 frequencies of one fingering of the demo alto) and how fast the whole
 * horn with all its answers, against the same chain elsewhere. `npm run bench`, or `npm run --silent bench -- --json` for machines: an array of
 *
 *   name    what was timed against what
 *   ours    median time of our sweep, ms
 *   theirs  median time of the other's sweep of the same 2,000 frequencies, ms
 *   ratio   theirs / ours, no unit
 *   spread  {ours, theirs}: half the range of the middle half of the runs, as a share of the median
 *   note    what was scaled or left out
 *
 * and, for the built site in a real browser, {name, ours, spread, note}: ours in ms, as the note says; a built
 * site and a browser are needed, and where one is missing the note says so,
 * and, for how cost grows, {name, exponent, note}: cost ∝ size^exponent.
 *
 * Every other program is checked to give the same numbers before it is timed.
 */
import { spawnSync } from 'node:child_process';
import { findFingering, impedanceSweep, makeAirColumn, makeNetwork } from '../../src/acoustics/index.ts';
import { demoHorn } from '../acoustics/demo-horns.ts';
import { chainOf, type Chain } from './chain.ts';
import { mathjsImpedance } from './mathjs-chain.ts';
import { liveRows } from './live.ts';
import { proposalAgainst } from './proposal.ts';
import { compare, timeRuns, type Comparison } from './timing.ts';
import { costGrowth, wholeHornAgainst } from './whole-horn.ts';

const FREQUENCIES = 2000;
/** mathjs is timed on this many of them, evenly spread, and scaled. */
const MATHJS_FREQUENCIES = 40;
const RUNS = 15;
const WARM_UP = 30;
/** The worst relative difference allowed before timing means anything. */
const SAME_NUMBERS = 1e-9;

function demoNetwork() {
  const { horn, setup } = demoHorn('alto');
  return makeNetwork(horn, setup, findFingering('F4')!, makeAirColumn());
}

const network = demoNetwork();
const chain = chainOf(network);
const frequencies = Float64Array.from({ length: FREQUENCIES }, (_, i) => 80 + (i * 1920) / (FREQUENCIES - 1));

function assertSame(
  name: string,
  at: (i: number) => { re: number; im: number },
  indices: readonly number[],
): void {
  const z = impedanceSweep(network, frequencies);
  for (const i of indices) {
    const other = at(i);
    const apart = Math.hypot(other.re - z.re[i], other.im - z.im[i]) / Math.hypot(z.re[i], z.im[i]);
    if (!(apart < SAME_NUMBERS)) {
      throw new Error(`${name} differs by ${apart} at ${frequencies[i]} Hz; expected under ${SAME_NUMBERS}`);
    }
  }
}

interface NumpyAnswer {
  readonly re: readonly number[];
  readonly im: readonly number[];
  readonly milliseconds: readonly number[];
}

/** Runs the numpy script, or says why it cannot. */
function runNumpy(given: Chain): NumpyAnswer | string {
  const probe = spawnSync('python3', ['-c', 'import numpy'], { encoding: 'utf8' });
  if (probe.status !== 0) return 'python3 with numpy is not here';
  const script = new URL('./sweep.py', import.meta.url).pathname;
  const input = JSON.stringify({ chain: given, frequencies: [...frequencies], runs: RUNS });
  const run = spawnSync('python3', [script], { input, encoding: 'utf8', maxBuffer: 1 << 28 });
  if (run.status !== 0) throw new Error(`sweep.py failed: ${run.stderr}`);
  return JSON.parse(run.stdout) as NumpyAnswer;
}

const everyIndex = Array.from(frequencies, (_, i) => i);
const fewIndices = everyIndex.filter((i) => i % (FREQUENCIES / MATHJS_FREQUENCIES) === 0);

timeRuns(WARM_UP, () => impedanceSweep(network, frequencies));
const numpy = runNumpy(chain);
const ours = timeRuns(2 * RUNS, () => impedanceSweep(network, frequencies));
const results: Comparison[] = [];

assertSame('mathjs', (i) => mathjsImpedance(chain, frequencies[i]), fewIndices.slice(0, 10));
const mathjsTimes = timeRuns(7, () => {
  for (const i of fewIndices) mathjsImpedance(chain, frequencies[i]);
}).map((t) => (t * FREQUENCIES) / MATHJS_FREQUENCIES);
results.push(
  compare(
    'impedance sweep against mathjs complex matrices',
    `theirs measured on ${MATHJS_FREQUENCIES} frequencies and scaled to ${FREQUENCIES}`,
    ours,
    mathjsTimes,
  ),
);
if (typeof numpy !== 'string') {
  assertSame('numpy', (i) => ({ re: numpy.re[i], im: numpy.im[i] }), everyIndex);
  results.push(
    compare('impedance sweep against vectorised numpy', 'time inside Python only', ours, numpy.milliseconds),
  );
}

const perEvaluation = {
  mathjs: mathjsTimes.map((t) => t / FREQUENCIES),
  numpy: typeof numpy === 'string' ? null : numpy.milliseconds.map((t) => t / FREQUENCIES),
};
results.push(...wholeHornAgainst(perEvaluation));
results.push(proposalAgainst());
const growth = costGrowth();
const live = await liveRows();

if (process.argv.includes('--json')) {
  console.log(JSON.stringify([...results, ...(typeof live === 'string' ? [] : live), ...growth], null, 2));
  if (typeof live === 'string') console.error(`live left out: ${live}`);
} else {
  console.log(`${chain.elements.length} elements, ${FREQUENCIES} frequencies`);
  for (const r of results) {
    console.log(
      `${r.name}: ${r.ours.toFixed(1)} ms ours (±${(100 * r.spread.ours).toFixed(0)} %), ` +
        `${r.theirs.toFixed(0)} ms theirs (±${(100 * r.spread.theirs).toFixed(0)} %), ` +
        `${r.ratio.toFixed(1)} times (${r.note})`,
    );
  }
  if (typeof live === 'string') console.log(`live left out: ${live}`);
  else for (const r of live) console.log(`${r.name}: ${r.ours.toFixed(1)} ms (${r.note})`);
  for (const g of growth) console.log(`${g.name}: exponent ${g.exponent.toFixed(2)} (${g.note})`);
  if (typeof numpy === 'string') console.log(`numpy left out: ${numpy}`);
}
