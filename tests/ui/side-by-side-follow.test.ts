import { describe, expect, it } from 'vitest';
import { recordsOf, type BenchContents } from '../../src/documents/bench-contents.ts';
import { fetchSideBySide, makeSideFollower } from '../../src/ui/shell/follow-side-by-side.ts';
import { makeLibrary } from '../../src/ui/shell/library.ts';
import { makeMemoryStore } from '../../src/ui/shell/library-memory.ts';
import type { PhysicsClient } from '../../src/ui/shell/physics-client.ts';
import type { CompareRequest } from '../../src/ui/shell/physics-protocol.ts';
import { makeBenchState, type BenchState } from '../../src/ui/state/bench-state.ts';
import { putOnBench } from '../../src/ui/state/horns-on-bench.ts';
import { makeStore, type Store } from '../../src/ui/state/bench-store.ts';
import { withProposed } from '../../src/ui/state/key-lengths.ts';
import { chooseColumns, type Column } from '../../src/ui/state/side-by-side-state.ts';
import { onTheBench } from './demo.ts';

const alto = onTheBench('alto');
const tenor = onTheBench('tenor');
const column = ({ horn, asFound }: BenchContents, setupId: string | null = asFound.id): Column => ({
  hornId: horn.id,
  setupId,
});

/** The store with what follows it, over a library that holds the tenor. */
async function following(): Promise<{
  store: Store<BenchState>;
  asked: Omit<CompareRequest, 'kind' | 'id'>[];
  choose(...columns: Column[]): Promise<void>;
}> {
  let count = 0;
  const means = {
    now: () => 0,
    makeId: () => `made-${++count}`,
    plan: () => ({ date: '2026-06-01', airC: 26.85, a4Hz: 440 }),
    onGone: () => undefined,
  };
  const library = makeLibrary(makeMemoryStore(), means, null);
  await library.save(recordsOf(tenor));
  const store = makeStore<BenchState>({ ...makeBenchState([], alto), view: 'key' });
  const asked: Omit<CompareRequest, 'kind' | 'id'>[] = [];
  const client = {
    askCompare: (request: Omit<CompareRequest, 'kind' | 'id'>) => asked.push(request),
  } as unknown as PhysicsClient;
  fetchSideBySide(store, () => Promise.resolve(library));
  const follower = makeSideFollower(store, client);
  store.subscribe(() => follower.follow());
  const choose = async (...columns: Column[]): Promise<void> => {
    store.update((state) => ({ ...state, sideBySide: chooseColumns(state.sideBySide, columns) }));
    await settled();
  };
  return { store, asked, choose };
}

const settled = (): Promise<void> => new Promise((done) => setTimeout(done, 20));
const look = async (store: Store<BenchState>): Promise<void> => {
  store.update((state) => ({ ...state, view: 'side-by-side' }));
  await settled();
};

describe('what follows the columns', () => {
  it('asks nothing before somebody looks, and then once', async () => {
    const { store, asked } = await following();
    store.update((state) => putOnBench(state, withProposed(alto, 'e', 6)));
    expect(asked).toEqual([]);
    await look(store);
    expect(asked).toHaveLength(1);
    expect(asked[0].columns.map((documents) => documents!.setup.name)).toEqual([
      alto.asFound.document.name,
      alto.proposed.document.name,
    ]);
    expect(asked[0].columns[1]!.setup.keys.find(({ pad }) => pad === 'e')!.openingMm).toBe(6);
    store.update((state) => ({ ...state, unit: 'thou' }));
    await settled();
    expect(asked).toHaveLength(1);
  });

  it('asks again when a proposal or the day changes', async () => {
    const { store, asked } = await following();
    await look(store);
    store.update((state) => putOnBench(state, withProposed(alto, 'e', 5)));
    const { visit } = alto;
    const colder = { ...visit, document: { ...visit.document, airC: 20 } };
    store.update((state) => putOnBench(state, { ...alto, visit: colder }));
    expect(asked).toHaveLength(3);
    expect(asked.map(({ airC }) => airC)).toEqual([26.85, 26.85, 20]);
  });

  it('waits for a horn of the library, and takes it as it was left', async () => {
    const { store, asked, choose } = await following();
    await look(store);
    expect(store.get().sideBySide.shelf).toEqual([{ id: tenor.horn.id, label: tenor.horn.document.name }]);
    await choose(column(alto), column(tenor, null));
    expect(asked).toHaveLength(2);
    expect(asked[1].columns[1]).toEqual({ horn: tenor.horn.document, setup: tenor.asFound.document });
  });

  it('goes on without a horn that is gone, and says so', async () => {
    const { store, asked, choose } = await following();
    await look(store);
    await choose(column(alto), column(tenor), { hornId: 'nobody', setupId: null });
    expect(asked[1].columns.map((documents) => documents?.horn.name ?? null)).toEqual([
      alto.horn.document.name,
      tenor.horn.document.name,
      null,
    ]);
    expect(store.get().sideBySide.fetched.nobody).toMatchObject({
      kind: 'failed',
      message: expect.stringContaining('no longer in the library'),
    });
  });

  it('fetches a horn afresh when the view is entered again', async () => {
    const { store, choose } = await following();
    await look(store);
    await choose(column(alto), column(tenor));
    const before = store.get().sideBySide.fetched[tenor.horn.id];
    store.update((state) => ({ ...state, view: 'key' }));
    await look(store);
    const after = store.get().sideBySide.fetched[tenor.horn.id];
    expect(after).not.toBe(before);
    expect(after).toEqual(before);
  });
});
