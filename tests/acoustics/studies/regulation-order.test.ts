import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  ownPose,
  planRegulation,
  standingPad,
  withOpening,
  type BenchState,
  type DoneMove,
  type Move,
  type RegulationPlan,
  type Setup,
} from '../../../src/acoustics/index.ts';
import { demoHorn } from '../demo-horns.ts';

const { horn, setup } = demoHorn('alto');
const PAPER = 0.025e-3;
const AUXILIARY = 'f-sharp-auxiliary';

const front = (id: string, mm: number, on: Setup = setup): Setup =>
  withOpening(on, id, { at: 'front', height: mm * 1e-3 });
const bench = (more: Partial<BenchState> = {}): BenchState => ({
  setup,
  screws: [],
  seats: new Map(),
  ...more,
});
const ids = (plan: RegulationPlan): string[] => plan.moves.map((m) => m.id);
const goal = bench();

/** Does the next move with a value, as a technician would, until the list is empty. */
function work(
  asFound: BenchState,
  asSet: BenchState,
  valueOf: (move: Move, turn: number) => number,
): DoneMove[] {
  const done: DoneMove[] = [];
  for (let turn = 0; turn < 400; turn++) {
    const [next] = planRegulation(horn, asFound, asSet, done).moves;
    if (next === undefined) return done;
    done.push({ id: next.id, value: valueOf(next, turn) });
  }
  throw new Error('the list never ends');
}

describe('the order of work', () => {
  it('is empty where everything is within its tolerance', () => {
    const nearly = bench({
      setup: front('e', 8.1),
      screws: [{ driver: 'e', driven: AUXILIARY, left: 0.9 * PAPER }],
      seats: new Map([['e', 0.01e-3]]),
    });
    expect(planRegulation(horn, nearly, goal)).toMatchObject({ done: [], moves: [], warnings: [] });
  });

  it('lists for a test every link that nobody read and no move sets', () => {
    const read = [{ driver: 'e', driven: AUXILIARY, left: 0 }];
    const linked = horn.keywork.links.map(({ driver, driven }) => `link ${driver} > ${driven}`);
    const untested = (plan: RegulationPlan): string[] => plan.untested.map(({ id }) => id);
    const without = (...some: readonly string[]): string[] => linked.filter((id) => !some.includes(id));
    const plan = planRegulation(horn, bench({ screws: read }), goal);
    expect(untested(plan).sort()).toEqual(without(`link e > ${AUXILIARY}`).sort());
    const done = [{ id: `link d > ${AUXILIARY}`, value: 0 }];
    const later = planRegulation(horn, bench({ screws: read, setup: front('f', 7) }), goal, done);
    expect(untested(later).sort()).toEqual(
      without(`link d > ${AUXILIARY}`, `link e > ${AUXILIARY}`, `link f > ${AUXILIARY}`).sort(),
    );
  });

  it('says of a link that is set once more after which heights', () => {
    const asFound = bench({ setup: front('e', 7, front('bis', 6)) });
    const afterOf = (plan: RegulationPlan, id: string) => plan.moves.findLast((m) => m.id === id)?.after;
    const first = planRegulation(horn, asFound, goal);
    expect(afterOf(first, `link e > ${AUXILIARY}`)).toEqual([{ pad: 'e', raised: true }]);
    expect(afterOf(first, 'link a > bis')).toEqual([{ pad: 'bis', raised: false }]);
    expect(first.moves.filter(({ again }) => !again).every(({ after }) => after.length === 0)).toBe(true);
    const then = planRegulation(horn, asFound, goal, [{ id: 'height bis', value: 5e-3 }]);
    expect(afterOf(then, 'link a > bis')).toEqual([{ pad: 'bis', raised: false }]);
  });

  it('seats each pad singly, a driven one just before the links that meet it, as common practice has it', () => {
    const linked = ['d', 'e', 'f', AUXILIARY, 'g-sharp', 'a', 'bis', 'b', 'small-c'];
    const asFound = bench({ seats: new Map(linked.map((id) => [id, 4 * PAPER])) });
    expect(ids(planRegulation(horn, asFound, goal))).toEqual([
      ...['seat d', 'seat e', 'seat f', 'seat a', 'seat b'],
      `seat ${AUXILIARY}`,
      ...[`link f > ${AUXILIARY}`, `link e > ${AUXILIARY}`, `link d > ${AUXILIARY}`],
      ...['seat g-sharp', `link ${AUXILIARY} > g-sharp`, 'seat bis', `link ${AUXILIARY} > bis`],
      ...['link a > bis', 'seat small-c', 'link b > small-c', 'link a > small-c'],
    ]);
  });

  it('sets heights after links, drivers before what they drive, and then those links again', () => {
    const asFound = bench({
      setup: front('e', 7, front('bis', 4)),
      screws: [{ driver: 'a', driven: 'small-c', left: 3 * PAPER }],
    });
    const { moves } = planRegulation(horn, asFound, goal);
    expect(moves.map((m) => m.id)).toEqual([
      ...['link a > small-c', 'height e', 'height bis'],
      ...[`link e > ${AUXILIARY}`, `link ${AUXILIARY} > bis`, 'link a > bis'],
    ]);
    expect(moves.filter((m) => m.again).map((m) => m.from)).toEqual([null, null, null]);
    expect(moves[0]).toMatchObject({ from: 3 * PAPER, to: 0, again: false, test: 'papers under both' });
    expect(moves[1].from).toBeCloseTo(7e-3, 9);
    expect(moves[1].to).toBeCloseTo(8e-3, 9);
  });

  it('sets the height of a driver first also where it lies further from the bell', () => {
    const links = [{ driver: 'g', driven: 'd', effect: 'closes' as const, ratio: 1 }];
    const other = { ...horn, keywork: { ...horn.keywork, links } };
    const asFound = bench({ setup: front('g', 5, front('d', 7, front('e', 7))) });
    const heights = ids(planRegulation(other, asFound, goal)).filter((id) => id.startsWith('height'));
    expect(heights).toEqual(['height g', 'height d', 'height e']);
  });

  it('starts with the stacks, then the other linked keys, then keys that rest open, sprung ones, vents', () => {
    const asFound = bench({ seats: new Map(horn.holes.map((h) => [h.id, PAPER])) });
    const seats = ids(planRegulation(horn, asFound, goal)).filter((id) => id.startsWith('seat'));
    const place = (id: string): number => seats.indexOf(`seat ${id}`);
    const order = ['d', AUXILIARY, 'small-c', 'low-b-flat', 'low-c', 'e-flat', 'palm-d', 'body-vent'].map(
      place,
    );
    expect([...order].sort((a, b) => a - b)).toEqual(order);
    expect(seats).toHaveLength(horn.holes.length);
  });

  it('strikes off what came within its tolerance and goes on', () => {
    const asFound = bench({ setup: front('e', 7), seats: new Map([['e', 2 * PAPER]]) });
    const before = planRegulation(horn, asFound, goal);
    expect(ids(before)).toEqual([
      ...['seat e', `link e > ${AUXILIARY}`, 'height e', `link e > ${AUXILIARY}`],
    ]);
    const after = planRegulation(horn, asFound, goal, [{ id: 'seat e', value: 0 }]);
    expect(after.done).toEqual([{ id: 'seat e', value: 0, within: true }]);
    expect(ids(after)).toEqual(ids(before).slice(1));
    const linked = planRegulation(horn, asFound, goal, [
      { id: 'seat e', value: 0 },
      { id: `link e > ${AUXILIARY}`, value: 0 },
    ]);
    expect(ids(linked)).toEqual(['height e', `link e > ${AUXILIARY}`]);
  });

  it('brings a move back whose value came out different, and what it puts out with it', () => {
    const asFound = bench({ setup: front('e', 7) });
    const missed = planRegulation(horn, asFound, goal, [{ id: 'height e', value: 7.5e-3 }]);
    expect(missed.done[0].within).toBe(false);
    expect(ids(missed)).toEqual(['height e', `link e > ${AUXILIARY}`]);
    expect(missed.moves[0].from).toBe(7.5e-3);
    // A height touched by the way, though it was right: its links must be read again.
    const touched = planRegulation(horn, asFound, goal, [
      { id: 'height e', value: 8e-3 },
      { id: `link e > ${AUXILIARY}`, value: 0 },
      { id: 'height bis', value: 5e-3 },
    ]);
    expect(ids(touched)).toEqual([`link ${AUXILIARY} > bis`, 'link a > bis']);
    // A seat that opens again late sends its links back.
    const reopened = planRegulation(horn, bench(), goal, [{ id: 'seat bis', value: 2 * PAPER }]);
    expect(ids(reopened)).toEqual(['seat bis', `link ${AUXILIARY} > bis`, 'link a > bis']);
  });

  it('ends, with everything as wanted, and no move more than twice when every move succeeds', () => {
    const pads = horn.holes.filter((h) => h.hinge !== null).map((h) => h.id);
    const some = fc.subarray(pads);
    const lefts = fc.array(fc.double({ min: -2e-4, max: 2e-4, noNaN: true }), {
      minLength: horn.keywork.links.length,
      maxLength: horn.keywork.links.length,
    });
    fc.assert(
      fc.property(some, some, lefts, (leaking, moved, left) => {
        const asFound = bench({
          seats: new Map(leaking.map((id) => [id, 2 * PAPER])),
          setup: moved.reduce((s, id) => front(id, 0.8e3 * ownPose(horn, setup, id).front, s), setup),
          screws: horn.keywork.links.map(({ driver, driven }, i) => ({ driver, driven, left: left[i] })),
        });
        const first = planRegulation(horn, asFound, goal);
        const done = work(asFound, goal, (move) => move.to);
        // What was planned at the start is what was done: success brings nothing new.
        expect(done.map((d) => d.id)).toEqual(ids(first));
        for (const { id } of done) expect(done.filter((d) => d.id === id).length).toBeLessThan(3);
        expect(planRegulation(horn, asFound, goal, done).moves).toEqual([]);
      }),
      { seed: 10, numRuns: 25 },
    );
  });

  it('ends too where moves come out wrong now and then', () => {
    const asFound = bench({
      setup: front('e', 7, front('a', 5)),
      seats: new Map([['bis', 3 * PAPER]]),
      screws: [{ driver: 'f', driven: AUXILIARY, left: -5 * PAPER }],
    });
    const clumsy = work(asFound, goal, (move, turn) =>
      turn % 3 === 1 ? move.to + 2 * move.tolerance : move.to,
    );
    expect(clumsy.length).toBeGreaterThan(work(asFound, goal, (m) => m.to).length);
    expect(planRegulation(horn, asFound, goal, clumsy).moves).toEqual([]);
  });

  it('says which wanted openings their links will not allow', () => {
    const asSet = bench({ setup: front('a', 4) });
    const { warnings } = planRegulation(horn, bench(), asSet);
    expect(warnings).toEqual([
      'bis is to open 5.0 mm, but A at 4.0 mm allows 3.6 mm.',
      'small C is to open 3.8 mm, but A at 4.0 mm allows 2.7 mm.',
    ]);
  });

  it('follows the chain: a lower stack holds down what its auxiliary drives, each pad told once by the arm that rules', () => {
    const low = front('d', 6, front('e', 6, front('f', 6)));
    const { warnings } = planRegulation(horn, bench(), bench({ setup: low }));
    const stands = standingPad(horn, low, 'bis').pose.front * 1000;
    expect(warnings).toEqual([
      'F♯ auxiliary is to open 7.2 mm, but E at 6.0 mm allows 5.6 mm.',
      'G♯ is to open 6.2 mm, but F♯ auxiliary at 5.6 mm allows 4.9 mm.',
      `bis is to open 5.0 mm, but F♯ auxiliary at 5.6 mm allows ${stands.toFixed(1)} mm.`,
    ]);
  });

  it('refuses a done move that the horn does not have', () => {
    expect(() => planRegulation(horn, bench(), goal, [{ id: 'height neck-vent', value: 0 }])).toThrow(
      'invalid move',
    );
    expect(() => planRegulation(horn, bench(), goal, [{ id: 'link g > bis', value: 0 }])).toThrow(
      'invalid move',
    );
  });
});
