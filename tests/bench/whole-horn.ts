import {
  FINGERINGS,
  makeAirColumn,
  playWholeHorn,
  withOpening,
  ownPose,
  type Horn,
  type Setup,
  type WholeHornNote,
} from '../../src/acoustics/index.ts';
import { demoHorn } from '../acoustics/demo-horns.ts';
import { compare, median, timeRuns, type Comparison } from './timing.ts';

/** The whole horn with all derivatives, against the same derivatives by differences. */

const AIR = makeAirColumn();
const RUNS = 15;
const WARM_UP = 30;
/** Polishing a followed resonance takes about this many evaluations of the chain. */
const EVALUATIONS_PER_RESONANCE = 4;

function demo(): { horn: Horn; setup: Setup } {
  return demoHorn('alto');
}

function nearOf(notes: readonly WholeHornNote[]): Map<string, number> {
  return new Map(
    notes.flatMap((n) => (n.outcome.found ? [[n.fingering.id, n.outcome.resonance.frequency] as const] : [])),
  );
}

/** Every derivative the whole horn gives, by central differences of our own chain (openings, radii, chimneys, air, mouthpiece). */
function byDifferences(horn: Horn, setup: Setup, near: ReadonlyMap<string, number>): number {
  let sum = 0;
  const difference = (
    move: (by: number) => { horn?: Horn; setup?: Setup; airC?: number },
    step: number,
  ): void => {
    const [up, down] = [step, -step].map((by) => {
      const moved = move(by);
      const air = moved.airC === undefined ? AIR : makeAirColumn({ mouthpieceC: moved.airC });
      return playWholeHorn(moved.horn ?? horn, moved.setup ?? setup, air, { near, answers: false });
    });
    up.forEach((note, i) => {
      const other = down[i].outcome;
      if (note.outcome.found && other.found) sum += (note.outcome.cents - other.cents) / (2 * step);
    });
  };
  const withHole = (id: string, change: object): Horn => ({
    ...horn,
    holes: horn.holes.map((h) => (h.id === id ? { ...h, ...change } : h)),
  });
  for (const hole of horn.holes) {
    const key = setup.keys.get(hole.id);
    if (key !== undefined) {
      const { front } = ownPose(horn, setup, hole.id);
      difference((by) => ({ setup: withOpening(setup, hole.id, { at: 'front', height: front + by }) }), 1e-5);
      const keys = (by: number) =>
        new Map(setup.keys).set(hole.id, { ...key, padThickness: key.padThickness + by });
      difference((by) => ({ setup: { keys: keys(by) } }), 1e-5);
    }
    difference((by) => ({ horn: withHole(hole.id, { holeRadius: hole.holeRadius + by }) }), 1e-5);
    difference((by) => ({ horn: withHole(hole.id, { chimney: hole.chimney + by }) }), 1e-5);
  }
  difference((by) => ({ airC: 26.85 + by }), 0.01);
  difference((by) => ({ horn: { ...horn, extraMouthpieceVolume: by } }), 1e-9);
  return sum;
}

/** Ours against our own differences, and against what the same differences would cost elsewhere. */
export function wholeHornAgainst(perEvaluation: {
  readonly mathjs: readonly number[];
  readonly numpy: readonly number[] | null;
}): Comparison[] {
  const { horn, setup } = demo();
  const near = nearOf(playWholeHorn(horn, setup, AIR));
  timeRuns(WARM_UP, () => playWholeHorn(horn, setup, AIR, { near }));
  const ours = timeRuns(2 * RUNS, () => playWholeHorn(horn, setup, AIR, { near }));
  const theirs = timeRuns(5, () => byDifferences(horn, setup, near));
  const derivatives = 2 * horn.holes.length + 2 * setup.keys.size + 2;
  const evaluations = near.size * (1 + 2 * derivatives) * EVALUATIONS_PER_RESONANCE;
  const size = `${near.size} notes, ${derivatives} derivatives each`;
  const scaled = `theirs scaled from the sweep above: ${evaluations} evaluations for central differences`;
  const results = [
    compare(
      'whole horn with all derivatives against central differences of our own chain',
      size,
      ours,
      theirs,
    ),
    compare(
      'whole horn with all derivatives against mathjs',
      scaled,
      ours,
      perEvaluation.mathjs.map((t) => t * evaluations),
    ),
  ];
  if (perEvaluation.numpy !== null) {
    results.push(
      compare(
        'whole horn with all derivatives against vectorised numpy',
        scaled,
        ours,
        perEvaluation.numpy.map((t) => t * evaluations),
      ),
    );
  }
  return results;
}

/** How the cost of the whole horn grows with one size: cost ∝ size^exponent. */
export interface Growth {
  readonly name: string;
  readonly exponent: number;
  readonly note: string;
}

/** Growth of the cost with notes, bore pieces and holes, each over a factor of eight. */
export function costGrowth(): Growth[] {
  const { horn, setup } = demo();
  const near = nearOf(playWholeHorn(horn, setup, AIR));
  const time = (h: Horn, s: Setup, options: object): number => {
    const run = (): unknown => playWholeHorn(h, s, AIR, { near, ...options });
    timeRuns(6, run);
    return median(timeRuns(RUNS, run));
  };
  const notes = [1 / 8, 1 / 4, 1 / 2, 1].map((share) => {
    const fingerings = FINGERINGS.filter((_, i) => i % Math.round(1 / share) === 0);
    return [fingerings.length, time(horn, setup, { fingerings })] as const;
  });
  const pieces = [1, 2, 4, 8].map(
    (finer) => [finer, time(horn, setup, { longestPiece: 0.05 / finer / 4 })] as const,
  );
  const holes = [1, 2, 4, 8].map((times) => {
    const grown = manyHoles(horn, 10 * times);
    return [grown.horn.holes.length, time(grown.horn, grown.setup, {})] as const;
  });
  return [
    {
      name: 'cost with notes',
      exponent: slopeOf(notes),
      note: `${notes[0][0]} to ${notes[3][0]} fingerings`,
    },
    { name: 'cost with bore pieces', exponent: slopeOf(pieces), note: 'longest piece 12.5 mm to 1.6 mm' },
    { name: 'cost with holes', exponent: slopeOf(holes), note: `${holes[0][0]} to ${holes[3][0]} holes` },
  ];
}

/** The horn with its holes and as many closed side holes again as make up the wanted count beyond its own. */
function manyHoles(horn: Horn, extra: number): { horn: Horn; setup: Setup } {
  const { setup } = demo();
  const model = horn.holes.find((h) => h.id === 'side-c')!;
  const keys = new Map(setup.keys);
  const rests = new Map(horn.keywork.rests);
  const added = Array.from({ length: extra }, (_, i) => {
    const id = `more-${i}`;
    keys.set(id, setup.keys.get(model.id)!);
    rests.set(id, 'closed');
    return { ...model, id, holeRadius: 1e-3, x: 0.3 + (0.5 * i) / extra };
  });
  const holes = [...horn.holes, ...added].sort((a, b) => a.x - b.x);
  return { horn: { ...horn, holes, keywork: { ...horn.keywork, rests } }, setup: { keys } };
}

/** Least-squares slope of log time against log size. */
function slopeOf(points: readonly (readonly [number, number])[]): number {
  const logs = points.map(([n, t]) => [Math.log(n), Math.log(t)]);
  const mean = (k: 0 | 1): number => logs.reduce((sum, p) => sum + p[k], 0) / logs.length;
  const [mx, my] = [mean(0), mean(1)];
  const top = logs.reduce((sum, [x, y]) => sum + (x - mx) * (y - my), 0);
  return top / logs.reduce((sum, [x]) => sum + (x - mx) ** 2, 0);
}
