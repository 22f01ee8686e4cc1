import { describe, expect, it } from 'vitest';
import { makeVisit, setupIn, type BenchContents } from '../../src/documents/bench-contents.ts';
import { readLibrary } from '../../src/documents/library-file.ts';
import { keepContents } from '../../src/ui/shell/keep-contents.ts';
import { makeMemoryStore } from '../../src/ui/shell/library-memory.ts';
import { makeLibrary, type Library } from '../../src/ui/shell/library.ts';
import type { KeptStore } from '../../src/ui/shell/library-store.ts';
import { hornInHand, makeBenchState } from '../../src/ui/state/bench-state.ts';
import { putOnBench, withHorn } from '../../src/ui/state/horns-on-bench.ts';
import { makeStore } from '../../src/ui/state/bench-store.ts';
import { rested, stepped, undone } from '../../src/ui/state/horn-on-bench.ts';
import { withSet } from '../../src/ui/state/key-lengths.ts';
import { onTheBench } from './demo.ts';

let count = 0;
const makeId = (): string => `made-${++count}`;
const day = { date: '2026-06-01', airC: 26.85, a4Hz: 440 };
const means = { now: () => ++count, makeId, plan: () => day, onGone: () => undefined };

/** A tab: a bench with the demo alto as it came, over a store that tabs may share. */
function openTab(kept: KeptStore, refusal: string | null = null) {
  const contents = onTheBench('alto');
  const store = makeStore(makeBenchState([], contents));
  const library = makeLibrary(kept, means, refusal);
  const keeper = keepContents(store, { library: () => Promise.resolve(library), makeId });
  keeper.untouched(contents);
  const here = (): BenchContents => hornInHand(store.get()).contents;
  return {
    store,
    library,
    keeper,
    here,
    set(pad: string, mm: number, movement: string | null = null) {
      store.update((state) =>
        withHorn(state, (horn) => stepped(horn, withSet(horn.contents, pad, { mm, at: 'front' }), movement)),
      );
    },
    setMm: (pad: string) => setMmOf(here(), pad),
    keeping: () => store.get().keeping.kind,
  };
}

const setMmOf = (contents: BenchContents, pad: string): number =>
  setupIn(contents, 'asSet').keys.find((key) => key.pad === pad)!.openingMm!;

/** What the library holds of a visit, opened by somebody who never saw it. */
async function storedIn(kept: KeptStore, hornId: string, visitId?: string): Promise<BenchContents | null> {
  const outcome = await makeLibrary(kept, means, null).open(hornId, visitId);
  return outcome.ok && !outcome.isNewVisit ? outcome.contents : null;
}

const idle = (): Promise<void> => new Promise((done) => setTimeout(done, 25));

/** A store whose next writes wait until they are let through. */
function slowStore(kept: KeptStore): KeptStore & { letThrough(): void } {
  let go: () => void = () => undefined;
  const gate = new Promise<void>((done) => (go = done));
  return { ...kept, write: (work) => gate.then(() => kept.write(work)), letThrough: () => go() };
}

describe('what is on the bench', () => {
  it('is not written as long as nothing was done to it', async () => {
    const kept = makeMemoryStore();
    const tab = openTab(kept);
    tab.store.update((state) => ({ ...state, unit: 'thou' }));
    await idle();
    expect(tab.keeping()).toBe('untouched');
    expect(await kept.list()).toEqual([]);
  });

  it('is kept whole with the first change, and each change after it', async () => {
    const kept = makeMemoryStore();
    const tab = openTab(kept);
    tab.set('e', 7.125);
    expect(tab.keeping()).toBe('saving');
    await idle();
    expect(tab.keeping()).toBe('saved');
    tab.set('f', 6.25);
    await idle();
    const stored = (await storedIn(kept, tab.here().horn.id))!;
    expect([setMmOf(stored, 'e'), setMmOf(stored, 'f')]).toEqual([7.125, 6.25]);
  });

  it('counts as saved only when it is on the disk', async () => {
    const kept = slowStore(makeMemoryStore());
    const tab = openTab(kept);
    tab.set('e', 7);
    await idle();
    tab.set('e', 8);
    await idle();
    expect(tab.keeping()).toBe('saving');
    kept.letThrough();
    await idle();
    expect(tab.keeping()).toBe('saved');
    expect(setMmOf((await storedIn(kept, tab.here().horn.id))!, 'e')).toBe(8);
  });

  it('is kept when a step is undone, back to how it came too', async () => {
    const kept = makeMemoryStore();
    const tab = openTab(kept);
    const came = tab.setMm('e');
    tab.set('e', came + 1);
    await idle();
    tab.store.update((state) => withHorn(state, undone));
    await idle();
    expect(setMmOf((await storedIn(kept, tab.here().horn.id))!, 'e')).toBe(came);
  });

  it('is kept when a movement of the hand has ended, not sixty times a second', async () => {
    const kept = makeMemoryStore();
    const tab = openTab(kept);
    tab.set('e', 7, 'slide');
    tab.set('e', 7.5, 'slide');
    await idle();
    expect(await kept.list()).toEqual([]);
    expect(tab.keeping()).toBe('saving');
    tab.store.update((state) => withHorn(state, rested));
    await idle();
    expect(setMmOf((await storedIn(kept, tab.here().horn.id))!, 'e')).toBe(7.5);
  });

  it('is kept though another visit takes its place before it could be written', async () => {
    const kept = slowStore(makeMemoryStore());
    const tab = openTab(kept);
    tab.set('e', 7);
    const first = tab.here();
    tab.store.update((state) =>
      putOnBench(state, makeVisit(first.horn, setupIn(first, 'asSet'), day, makeId)),
    );
    kept.letThrough();
    await idle();
    expect(setMmOf((await storedIn(kept, first.horn.id, first.visit.id))!, 'e')).toBe(7);
    expect(await storedIn(kept, first.horn.id, tab.here().visit.id)).not.toBeNull();
  });

  it('is kept whole where the library had the horn without a visit', async () => {
    const kept = makeMemoryStore();
    const tab = openTab(kept);
    const { horn, asFound } = onTheBench('tenor');
    await tab.library.add({ horns: [horn], setups: [asFound], visits: [] });
    expect(await tab.keeper.open(horn.id)).toBeNull();
    expect(tab.here().horn.document.instrument).toBe('tenor');
    expect(await storedIn(kept, horn.id)).toBeNull();
    tab.set('e', 9);
    await idle();
    expect(setMmOf((await storedIn(kept, horn.id))!, 'e')).toBe(9);
  });
});

describe('two tabs on one horn', () => {
  /** Both tabs on the demo alto as the first has saved it. */
  async function twoTabs() {
    const kept = makeMemoryStore();
    const [mine, theirs] = [openTab(kept), openTab(kept)];
    mine.set('e', 7);
    await idle();
    await theirs.keeper.comeBack(null);
    await idle();
    expect(theirs.here().visit.id).toBe(mine.here().visit.id);
    return { kept, mine, theirs };
  }

  it('show each other’s changes while nothing is unsaved, and say so; an undo takes it back in both', async () => {
    const { mine, theirs } = await twoTabs();
    theirs.set('e', 8);
    await idle();
    expect(mine.setMm('e')).toBe(8);
    expect(mine.store.get().alert).toContain('Another tab changed');
    expect(mine.keeping()).toBe('saved');
    mine.store.update((state) => withHorn(state, undone));
    await idle();
    expect(theirs.setMm('e')).toBe(7);
  });

  it('never write over one another: what came second waits for a person', async () => {
    const { kept, mine, theirs } = await twoTabs();
    // Both change the key in the same moment.
    mine.set('e', 8);
    theirs.set('e', 9);
    await idle();
    const kinds = [mine.keeping(), theirs.keeping()].sort();
    expect(kinds).toEqual(['conflict', 'saved']);
    const [winner, loser] = mine.keeping() === 'saved' ? [mine, theirs] : [theirs, mine];
    expect(setMmOf((await storedIn(kept, mine.here().horn.id))!, 'e')).toBe(winner.setMm('e'));
    // What is done meanwhile is not lost either.
    loser.set('f', 5.5);
    await loser.keeper.settle('copy');
    await idle();
    expect(loser.keeping()).toBe('saved');
    const copy = loser.here();
    expect(copy.visit.id).not.toBe(winner.here().visit.id);
    const again = (await storedIn(kept, copy.horn.id, copy.visit.id))!;
    expect([setMmOf(again, 'e'), setMmOf(again, 'f')]).toEqual([loser.setMm('e'), 5.5]);
    expect(again.asSet.document.name).toContain('kept from another tab');
    expect(setMmOf((await storedIn(kept, copy.horn.id, winner.here().visit.id))!, 'e')).toBe(
      winner.setMm('e'),
    );
  });

  it('let a person take the other tab’s', async () => {
    const { mine, theirs } = await twoTabs();
    mine.set('e', 8);
    theirs.set('e', 9);
    await idle();
    const [winner, loser] = mine.keeping() === 'saved' ? [mine, theirs] : [theirs, mine];
    await loser.keeper.settle('theirs');
    await idle();
    expect(loser.setMm('e')).toBe(winner.setMm('e'));
    expect(loser.keeping()).toBe('saved');
    loser.set('e', 6);
    await idle();
    expect(winner.setMm('e')).toBe(6);
  });

  it('keep what was done to a horn that the other tab removed, as a copy', async () => {
    const { kept, mine, theirs } = await twoTabs();
    const { id } = mine.here().horn;
    await theirs.library.remove({ hornId: id, ids: 'all' });
    await idle();
    expect(mine.store.get().alert).toContain('Another tab removed');
    mine.set('e', 10);
    await idle();
    expect(mine.keeping()).toBe('conflict');
    await mine.keeper.settle('copy');
    await idle();
    const { horn } = mine.here();
    expect(horn.id).not.toBe(id);
    expect(setMmOf((await storedIn(kept, horn.id))!, 'e')).toBe(10);
    expect(mine.store.get().horns[id]).toBeUndefined();
  });

  it('a conflict on one horn keeps no other horn from being saved', async () => {
    const { kept, mine, theirs } = await twoTabs();
    mine.set('e', 8);
    theirs.set('e', 9);
    await idle();
    const loser = mine.keeping() === 'saved' ? theirs : mine;
    loser.store.update((state) => putOnBench(state, onTheBench('tenor')));
    loser.set('e', 11);
    await idle();
    expect(setMmOf((await storedIn(kept, loser.here().horn.id))!, 'e')).toBe(11);
    expect(loser.keeping()).toBe('conflict');
  });
});

describe('a hand in the library of this tab', () => {
  it('renames the horn on the bench too, without a word of other tabs', async () => {
    const tab = openTab(makeMemoryStore());
    tab.set('e', 7);
    await idle();
    const { id } = tab.here().horn;
    await tab.library.amend({ kind: 'horns', id, hornId: id }, (document) => ({
      ...(document as object),
      name: 'Renamed',
    }));
    await idle();
    expect(tab.here().horn.document.name).toBe('Renamed');
    expect(tab.store.get().alert).toBeNull();
    tab.set('e', 8);
    await idle();
    expect(tab.keeping()).toBe('saved');
  });

  it('removes a horn: it stays on the bench, and goes back whole once something is done to it', async () => {
    const kept = makeMemoryStore();
    const tab = openTab(kept);
    tab.set('e', 7);
    await idle();
    const { id } = tab.here().horn;
    await tab.library.remove({ hornId: id, ids: 'all' });
    await idle();
    expect(await kept.list()).toEqual([]);
    tab.set('e', 8);
    await idle();
    expect(tab.keeping()).toBe('saved');
    expect(setMmOf((await storedIn(kept, id))!, 'e')).toBe(8);
  });
});

describe('a browser that refuses', () => {
  it('has its reason shown, and is tried again with the next change', async () => {
    const good = makeMemoryStore();
    let isFull = true;
    const kept: KeptStore = {
      ...good,
      write: (work) =>
        isFull ? Promise.reject(new DOMException('full', 'QuotaExceededError')) : good.write(work),
    };
    const tab = openTab(kept);
    tab.set('e', 7);
    await idle();
    expect(tab.store.get().keeping).toMatchObject({ kind: 'refused' });
    const { keeping } = tab.store.get();
    expect(keeping.kind === 'refused' ? keeping.message : '').toMatch(/^Not saved: this browser has no/);
    tab.store.update((state) => withHorn(state, undone));
    await idle();
    expect(tab.store.get().keeping).toMatchObject({ kind: 'refused' });
    isFull = false;
    tab.set('e', 7);
    tab.set('f', 6);
    await idle();
    expect(tab.keeping()).toBe('saved');
    const stored = (await storedIn(good, tab.here().horn.id))!;
    expect([setMmOf(stored, 'e'), setMmOf(stored, 'f')]).toEqual([7, 6]);
    isFull = true;
    tab.set('f', 5);
    await idle();
    expect(tab.keeping()).toBe('refused');
    tab.store.update((state) => withHorn(state, undone));
    await idle();
    expect(tab.keeping()).toBe('saved');
  });

  it('never lets the page say saved where the library only lasts as long as the page', async () => {
    const tab = openTab(makeMemoryStore(), 'This browser refuses.');
    tab.set('e', 7);
    await idle();
    expect(tab.store.get().keeping).toEqual({ kind: 'refused', message: 'This browser refuses.' });
    const { records, issues } = readLibrary(await tab.library.raw('all'), makeId);
    expect(issues).toEqual([]);
    expect(records.visits).toHaveLength(1);
  });

  it('to fetch what keeps the library is told, and is asked again with the next change', async () => {
    const library = makeLibrary(makeMemoryStore(), means, null);
    let tries = 0;
    const flaky = (): Promise<Library> =>
      ++tries === 1 ? Promise.reject(new Error('no such file')) : Promise.resolve(library);
    const store = makeStore(makeBenchState([], onTheBench('alto')));
    keepContents(store, { library: flaky, makeId });
    store.update((state) => ({ ...state, unit: 'thou' }));
    await idle();
    expect(store.get().keeping).toEqual({
      kind: 'refused',
      message: 'Not saved: the library failed: no such file',
    });
    store.update((state) => withHorn(state, (horn) => stepped(horn, { ...horn.contents }, null)));
    await idle();
    expect(store.get().keeping).toEqual({ kind: 'saved' });
  });
});
