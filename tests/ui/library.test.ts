import 'fake-indexeddb/auto';
import { beforeEach, describe, expect, it } from 'vitest';
import { makeVisit, recordsOf, type BenchContents } from '../../src/documents/bench-contents.ts';
import { withOpeningReading } from '../../src/documents/sheet-edits.ts';
import { makeMemoryStore } from '../../src/ui/shell/library-memory.ts';
import { openKeptStore, type KeptStore } from '../../src/ui/shell/library-store.ts';
import { makeLibrary, openLibrary, type Library } from '../../src/ui/shell/library.ts';
import { demoDocument } from '../acoustics/demo-horns.ts';

let count = 0;
const makeId = (): string => `id-${++count}`;
const plan = { date: '2026-05-31', airC: 22, a4Hz: 440 };
const means = { now: () => 1000, makeId, plan: () => plan, onGone: () => undefined };

const { horn, setup } = demoDocument('alto');
const NONE = { horns: [], setups: [], visits: [] };

function contents(): BenchContents {
  return makeVisit({ id: makeId(), document: horn }, setup, { ...plan, player: 'Invented Player' }, makeId);
}

/** The horn with its E key set to so much. */
function withSet(c: BenchContents, mm: number): BenchContents {
  const document = withOpeningReading(c.asSet.document, 'e', { mm, at: 'front' });
  return { ...c, asSet: { ...c.asSet, document } };
}

const stores: readonly (readonly [string, () => Promise<KeptStore>])[] = [
  ['the browser’s database', () => openKeptStore(() => undefined)],
  ['memory', () => Promise.resolve(makeMemoryStore())],
];

describe.each(stores)('a library in %s', (_, open) => {
  let store: KeptStore;
  let mine: Library;
  let theirs: Library;

  beforeEach(async () => {
    store = await open();
    mine = makeLibrary(store, means, null);
    theirs = makeLibrary(store, means, null);
  });

  it('gives back what was saved, and lists it', async () => {
    const c = contents();
    expect(await mine.save(recordsOf(c))).toEqual({ kind: 'saved' });
    const opened = await theirs.open(c.horn.id);
    expect(opened).toEqual({ ok: true, contents: c, isNewVisit: false, issues: [] });
    const entry = (await theirs.list()).find((e) => e.id === c.horn.id)!;
    expect(entry).toMatchObject({
      name: horn.name,
      instrument: 'alto',
      players: ['Invented Player'],
      lastVisit: '2026-05-31',
      visitCount: 1,
      changedMs: 1000,
    });
    expect(entry.setupNames).toHaveLength(3);
  });

  it('never writes silently over what another tab wrote: nothing of the second save is kept', async () => {
    const c = contents();
    await mine.save(recordsOf(c));
    await theirs.open(c.horn.id);
    const a = withSet(c, 9);
    const b = withSet({ ...c, visit: { ...c.visit, document: { ...c.visit.document, notes: 'late' } } }, 8.5);
    expect(await mine.save({ ...NONE, setups: [a.asSet] })).toEqual({ kind: 'saved' });
    expect(await theirs.save({ ...NONE, setups: [b.asSet], visits: [b.visit] })).toEqual({
      kind: 'conflict',
      hornId: c.horn.id,
    });
    const kept = await mine.open(c.horn.id);
    expect(kept.ok && kept.contents).toEqual(a);
    await theirs.yieldTo(c.horn.id);
    expect(await theirs.save({ ...NONE, setups: [b.asSet], visits: [b.visit] })).toEqual({ kind: 'saved' });
    const now = await mine.open(c.horn.id);
    expect(now.ok && now.contents).toEqual(b);
  });

  it('does not bring back in pieces a horn that another tab removed', async () => {
    const c = contents();
    await mine.save(recordsOf(c));
    await theirs.open(c.horn.id);
    await mine.remove({ hornId: c.horn.id, ids: 'all' });
    expect((await theirs.save({ ...NONE, setups: [withSet(c, 9).asSet] })).kind).toBe('conflict');
    expect((await theirs.list()).some((e) => e.id === c.horn.id)).toBe(false);
    expect((await theirs.open(c.horn.id)).ok).toBe(false);
    expect(await mine.save(recordsOf(c))).toEqual({ kind: 'saved' });
    expect((await theirs.open(c.horn.id)).ok).toBe(true);
  });

  it('keeps a damaged record and one of a newer program as they are, tells of them, and opens the rest', async () => {
    const c = contents();
    await mine.save(recordsOf(c));
    const newer = {
      id: makeId(),
      hornId: c.horn.id,
      document: { kind: 'ventwright setup', version: 9 },
      revision: 'r1',
    };
    const damaged = { id: makeId(), hornId: c.horn.id, document: { keys: 'gnawed' }, revision: 'r1' };
    await store.write(async (w) => {
      await w.put('setups', newer);
      await w.put('visits', damaged);
    });
    const opened = await mine.open(c.horn.id);
    expect(opened.ok && opened.contents).toEqual(c);
    expect(opened.issues.some((i) => i.message.includes('newer Ventwright, in version 9'))).toBe(true);
    expect(JSON.stringify(await mine.raw([c.horn.id]))).toContain('gnawed');
    expect((await mine.read('all')).records.horns.map((h) => h.id)).toContain(c.horn.id);
  });

  it('says so when the horn itself cannot be read, and lets it be carried away', async () => {
    const id = makeId();
    await store.write(async (w) =>
      w.put('horns', { id, hornId: id, document: { name: 'Half' }, revision: 'r1' }),
    );
    const opened = await mine.open(id);
    expect(opened.ok ? '' : opened.message).toMatch(
      /cannot be read: .*expected "ventwright horn"\. It is kept as it is/,
    );
    expect(JSON.stringify(await mine.raw([id]))).toContain('Half');
  });

  it('lets no setup be written without its horn, whoever removed the horn', async () => {
    const c = contents();
    await mine.save(recordsOf(c));
    await mine.remove({ hornId: c.horn.id, ids: 'all' });
    const outcome = await mine.save({ ...NONE, setups: [withSet(c, 9).asSet] });
    expect(outcome).toEqual({ kind: 'conflict', hornId: c.horn.id });
    expect((await store.all()).setups.some((s) => s.hornId === c.horn.id)).toBe(false);
  });

  it('tells a horn removed and made anew from the one it was', async () => {
    const c = contents();
    await mine.save(recordsOf(c));
    await theirs.open(c.horn.id);
    await mine.remove({ hornId: c.horn.id, ids: 'all' });
    await mine.save(recordsOf(withSet(c, 7)));
    expect((await theirs.save({ ...NONE, setups: [withSet(c, 9).asSet] })).kind).toBe('conflict');
  });

  it('does not count as seen what was opened but not wanted any more', async () => {
    const c = contents();
    await mine.save(recordsOf(c));
    await theirs.open(c.horn.id);
    await mine.save({ ...NONE, setups: [withSet(c, 9).asSet] });
    expect((await theirs.open(c.horn.id, c.visit.id, () => false)).ok).toBe(false);
    await theirs.read([c.horn.id]);
    expect((await theirs.save({ ...NONE, setups: [withSet(c, 8).asSet] })).kind).toBe('conflict');
  });

  it('makes a first visit of a horn that came without one, and says that it is new', async () => {
    const hornId = makeId();
    const added = await mine.add({
      ...NONE,
      horns: [{ id: hornId, document: horn }],
      setups: [{ id: makeId(), hornId, document: setup }],
    });
    expect(added).toEqual({ kind: 'saved' });
    const opened = await mine.open(hornId);
    if (!opened.ok) throw new Error(opened.message);
    expect(opened.isNewVisit).toBe(true);
    expect((await mine.read([hornId])).records.visits).toEqual([]);
    const { horns, ...more } = recordsOf(opened.contents);
    expect(await mine.save({ ...more, horns: [] })).toEqual({ kind: 'saved' });
    expect(await mine.open(hornId)).toEqual({ ...opened, isNewVisit: false });
    expect(horns).toHaveLength(1);
  });

  it('adds many horns in one go, or none where an id is in use', async () => {
    const [a, b] = [contents(), contents()];
    await mine.save(recordsOf(a));
    const both = [a, b].map(recordsOf);
    const all = { horns: both.flatMap((r) => r.horns), setups: both.flatMap((r) => r.setups), visits: [] };
    expect((await mine.add(all)).kind).toBe('conflict');
    expect((await mine.list()).some((e) => e.id === b.horn.id)).toBe(false);
  });

  it('amends a name as the record stands, tells the bench, and keeps it from writing over that unseen', async () => {
    const c = contents();
    await mine.save(recordsOf(c));
    const told: string[] = [];
    mine.watch((hornId, by) => told.push(`${hornId} ${by}`));
    const name = { kind: 'horns', id: c.horn.id, hornId: c.horn.id } as const;
    await mine.amend(name, (document) => ({ ...(document as object), name: 'Renamed' }));
    expect(told).toEqual([`${c.horn.id} this tab`]);
    expect((await mine.list()).find((e) => e.id === c.horn.id)!.name).toBe('Renamed');
    const changed = { ...c.horn, document: { ...c.horn.document, remark: 'typed meanwhile' } };
    expect((await mine.save({ ...NONE, horns: [changed] })).kind).toBe('conflict');
  });

  it('lists a horn even where its line in the list was lost', async () => {
    const c = contents();
    await mine.save(recordsOf(c));
    await store.write((w) => w.unshelve(c.horn.id));
    expect((await mine.list()).find((e) => e.id === c.horn.id)).toMatchObject({
      name: horn.name,
      visitCount: 1,
    });
  });

  it('reads a horn as it is at one moment, whatever is written meanwhile', async () => {
    const c = contents();
    const reading = store.ofHorn(c.horn.id);
    const all = store.all();
    await mine.save(recordsOf(c));
    const { horns, setups, visits } = await reading;
    expect([horns.length, setups.length, visits.length]).toEqual([0, 0, 0]);
    const there = await all;
    const own = [there.setups, there.visits].flat().filter((r) => r.hornId === c.horn.id);
    expect(own).toEqual([]);
  });

  it('writes all of a save or none of it', async () => {
    const c = contents();
    await expect(
      store.write(async (w) => {
        await w.put('horns', { id: c.horn.id, hornId: c.horn.id, document: horn, revision: 'r1' });
        throw new Error('the lamp went out');
      }),
    ).rejects.toThrow('the lamp went out');
    expect((await mine.open(c.horn.id)).ok).toBe(false);
  });
});

describe('a browser that refuses', () => {
  it('storage altogether leaves a library that works while the page is open, and says why', async () => {
    const real = globalThis.indexedDB;
    globalThis.indexedDB = {
      open: () => {
        throw new DOMException('denied', 'SecurityError');
      },
    } as unknown as IDBFactory;
    const library = await openLibrary(means);
    globalThis.indexedDB = real;
    expect(library.refusal).toContain('refuses to keep a library here, as in a private window');
    expect(await library.standing()).toBe('only while open');
    const c = contents();
    expect(await library.save(recordsOf(c))).toEqual({ kind: 'saved' });
    expect((await library.open(c.horn.id)).ok).toBe(true);
  });

  it('more room gives a sentence, and the save did not happen', async () => {
    const store = makeMemoryStore();
    const full: KeptStore = {
      ...store,
      write: () => Promise.reject(new DOMException('full', 'QuotaExceededError')),
    };
    const outcome = await makeLibrary(full, means, null).save(recordsOf(contents()));
    expect(outcome.kind === 'refused' ? outcome.message : '').toContain(
      'no more room. Save the library as a file',
    );
    expect(await store.list()).toEqual([]);
  });
});
