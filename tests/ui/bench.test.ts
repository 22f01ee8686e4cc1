import { describe, expect, it } from 'vitest';
import { openBench } from '../../src/ui/shell/bench.ts';
import { keepContents } from '../../src/ui/shell/keep-contents.ts';
import { makeLibrary, type Library } from '../../src/ui/shell/library.ts';
import { makeMemoryStore } from '../../src/ui/shell/library-memory.ts';
import type { WorkerPort } from '../../src/ui/shell/physics-client.ts';
import type { PhysicsKind, PhysicsReply } from '../../src/ui/shell/physics-protocol.ts';
import { makeBenchState, type BenchState } from '../../src/ui/state/bench-state.ts';
import { makeStore } from '../../src/ui/state/bench-store.ts';
import { compareColumns } from '../../src/ui/state/side-by-side-answer.ts';
import { findEnough, makeSheetReport } from '../../src/ui/state/sheet-numbers.ts';
import { moveScale, playLoud } from '../../src/ui/state/whole-scale.ts';
import { answerProposal } from './demo-proposal.ts';
import { calibrationOf } from './demo-calibration.ts';
import { playerSheetFacts } from './demo-player-sheet.ts';
import { answerRegulation } from './demo-regulation.ts';
import { onTheBench, preparedSheet, report, scale, scaleSureness } from './demo.ts';

const { prepared, report: whole } = scale();
const surenessOf = scaleSureness();
const study = report('e');
const sheet = preparedSheet(onTheBench('alto'));
const sheetReport = makeSheetReport(sheet);

/** A worker that answers at once with what the core says, and can be broken. */
function promptWorkers(): { readonly kinds: PhysicsKind[]; make(): WorkerPort; breakLast(): void } {
  const kinds: PhysicsKind[] = [];
  const ports: WorkerPort[] = [];
  return {
    kinds,
    make() {
      const port: WorkerPort = {
        onmessage: null,
        onerror: null,
        terminate: () => undefined,
        postMessage(request) {
          kinds.push(request.kind);
          const value = {
            study: () => study,
            point: () => study.present,
            scale: () => whole,
            move: () => moveScale(prepared, request.kind === 'move' ? request.proposedMm : {}),
            loud: () => playLoud(prepared, {}, 'F4'),
            sure: () => (request.kind === 'sure' ? surenessOf(request.proposedMm, request.from) : null),
            sheet: () => sheetReport,
            enough: () => findEnough(sheet, request.kind === 'enough' ? request.pad : 'e'),
            follow: () => answerRegulation('follow'),
            leak: () => answerRegulation('leak'),
            'leak map': () => answerRegulation('leak map'),
            'height or leak': () => answerRegulation('height or leak'),
            'pad change': () => answerRegulation('pad change'),
            proposal: () => answerProposal(),
            calibration: () => calibrationOf([]),
            'player sheet': () => playerSheetFacts(onTheBench('alto')),
            compare: () => compareColumns(request.kind === 'compare' ? request.columns : [], 26.85, 440),
          }[request.kind]();
          const data = { kind: request.kind, id: request.id, outcome: { ok: true, value }, tookMs: 1 };
          queueMicrotask(() => port.onmessage!({ data: data as PhysicsReply } as MessageEvent<PhysicsReply>));
        },
      };
      ports.push(port);
      return port;
    },
    breakLast: () => ports[ports.length - 1].onerror!({ message: 'out of memory' } as ErrorEvent),
  };
}

let count = 0;
const makeId = (): string => `made-${++count}`;
const means = {
  now: () => 0,
  makeId,
  plan: () => ({ date: '2026-06-01', airC: 26.85, a4Hz: 440 }),
  onGone: () => undefined,
};
const contents = onTheBench('alto');

async function openAt(view: BenchState['view']) {
  const workers = promptWorkers();
  const state = makeBenchState([{ id: 'demo-alto', label: 'Demo alto' }], contents);
  const store = makeStore<BenchState>({ ...state, view });
  const library = (): Promise<Library> => Promise.resolve(inMemory);
  const inMemory = makeLibrary(makeMemoryStore(), means, null);
  const keeper = keepContents(store, { library, makeId });
  keeper.untouched(contents);
  const bench = openBench(store, {
    makeWorker: workers.make,
    keeper,
    takeNewer: () => undefined,
    library,
    makeId,
    today: () => '2026-06-01',
  });
  await settled();
  return { workers, store, bench, library: inMemory };
}

const settled = (): Promise<void> => new Promise((done) => setTimeout(done, 20));

describe('the bench and its physics', () => {
  it('plays no whole horn while nobody looks at it', async () => {
    const { workers } = await openAt('key');
    expect(workers.kinds).toContain('study');
    expect(workers.kinds).not.toContain('scale');
  });

  it('plays the whole horn first, then what the slider and the loud picture need', async () => {
    const { workers, store } = await openAt('scale');
    expect(workers.kinds.slice(0, 3)).toEqual(['scale', 'study', 'loud']);
    expect(new Set(workers.kinds.slice(3))).toEqual(new Set(['sure']));
    expect(store.get().scale.report).toBe(whole);
  });

  it('moves the horn with a proposal, and back to as found', async () => {
    const { store, bench } = await openAt('scale');
    bench.propose(11);
    await settled();
    expect(store.get().scale.proposed!.cents).toEqual(moveScale(prepared, { e: 11 }).cents);
    bench.withdrawProposals();
    await settled();
    expect(store.get().scale.proposed!.cents).toEqual(whole.found.cents);
  });

  it('learns how sure every note is, and every move once the hand rests', async () => {
    const { store, bench } = await openAt('scale');
    await expect.poll(() => store.get().scale.sure?.found.length).toBe(whole.fingerings.length);
    expect(store.get().scale.sure!.moves.every((move) => move === null)).toBe(true);
    bench.propose(11);
    await settled();
    const moving = store.get().scale;
    expect(moving.sure!.of).not.toBe(moving.proposed);
    await expect.poll(() => store.get().scale.sure!.of === store.get().scale.rested).toBe(true);
    await expect.poll(() => store.get().scale.sure!.of === store.get().scale.proposed).toBe(true);
    const at = whole.fingerings.findIndex(({ id }) => id === 'F4');
    expect(store.get().scale.sure!.moves[at]!.budget.plusMinus).toBeGreaterThan(0);
  });

  it('takes up its work again at the next act after the physics broke, not in a circle', async () => {
    const { workers, store, bench } = await openAt('scale');
    const before = workers.kinds.length;
    workers.breakLast();
    await settled();
    expect(workers.kinds).toHaveLength(before);
    expect(store.get().alert).toContain('out of memory');
    bench.propose(9);
    await settled();
    expect(workers.kinds.slice(before)).toContain('scale');
    expect(store.get().scale.proposed!.cents).toEqual(moveScale(prepared, { e: 9 }).cents);
  });
});
