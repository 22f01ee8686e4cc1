import { describe, expect, it } from 'vitest';
import { nextVisit, type BenchContents } from '../../src/documents/bench-contents.ts';
import { withSaid, type DayStepName } from '../../src/documents/day-steps.ts';
import { keyedHoles } from '../../src/documents/horn-document.ts';
import { withOpeningReading } from '../../src/documents/sheet-edits.ts';
import type { VisitDocument } from '../../src/documents/visit-document.ts';
import { makeBenchState, type BenchState } from '../../src/ui/state/bench-state.ts';
import { putOnBench } from '../../src/ui/state/horns-on-bench.ts';
import { pathInHand } from '../../src/ui/state/day-path-in-hand.ts';
import type { DayPath, DayStep } from '../../src/ui/state/day-path.ts';
import { withProposed, withSet } from '../../src/ui/state/key-lengths.ts';
import type { ViewName } from '../../src/ui/state/view-names.ts';
import { withDone, withLeakingSeat } from '../../src/ui/state/work-edits.ts';
import { planWork } from '../../src/ui/state/work-plan.ts';
import { makeDayPathView } from '../../src/ui/parts/day-path-view.model.ts';
import { onTheBench } from './demo.ts';

const DEMO = onTheBench('alto');
const KEYS = keyedHoles(DEMO.horn.document);

/** The demo as an example: no opening of it was read on this horn. */
const UNREAD: BenchContents = {
  ...DEMO,
  asFound: { ...DEMO.asFound, document: { ...DEMO.asFound.document, origin: 'template' } },
};

const told = (contents: BenchContents, change: Partial<VisitDocument>): BenchContents => ({
  ...contents,
  visit: { ...contents.visit, document: { ...contents.visit.document, ...change } },
});

const read = (contents: BenchContents, pads: readonly string[]): BenchContents => ({
  ...contents,
  asFound: {
    ...contents.asFound,
    document: pads.reduce((setup, pad) => {
      const key = setup.keys.find((k) => k.pad === pad)!;
      const opening = { mm: key.openingMm!, at: key.measuredAt! };
      return withOpeningReading(setup, pad, opening, { origin: 'measured' });
    }, contents.asFound.document),
  },
});

const stateOf = (contents: BenchContents, view: ViewName = 'sheet', keyId = 'e'): BenchState => {
  const state = { ...putOnBench(makeBenchState([], contents), contents), view };
  const horn = { ...state.horns[state.hornId], keyId };
  return { ...state, horns: { ...state.horns, [state.hornId]: horn } };
};

const pathOf = (contents: BenchContents, view?: ViewName, keyId?: string): DayPath =>
  pathInHand(stateOf(contents, view, keyId), null);

const stepOf = (path: DayPath, name: DayStepName): DayStep => path.steps.find((step) => step.name === name)!;

/** A step’s standing as it is listed. */
const standingOf = (contents: BenchContents, step: DayStepName): string =>
  makeDayPathView(pathOf(contents)).rows.find(({ name }) => name === step)!.standing;

const say = (contents: BenchContents, step: DayStepName, said: 'done' | 'not needed'): BenchContents => ({
  ...contents,
  visit: { ...contents.visit, document: withSaid(contents.visit.document, step, said) },
});

describe('the path of the day', () => {
  it('begins with who plays the horn, then what they ask for', () => {
    const begun = told(DEMO, { player: 'Runa' });
    const done = told(begun, { wish: 'lower keys' });
    const step = (contents: BenchContents): DayStep => stepOf(pathOf(contents), 'horn in');
    expect([DEMO, begun, done].map((c) => step(c).standing)).toEqual(['not begun', 'begun', 'done']);
    expect(step(DEMO).goal.field).toEqual({ kind: 'head', id: 'player' });
    expect(step(begun).goal.field).toEqual({ kind: 'head', id: 'wish' });
    expect(pathOf(DEMO).next!.name).toBe('horn in');
    expect(pathOf(done).next!.name).toBe('seals and links');
  });

  it('counts the openings read on this horn, and leads to the first that is not', () => {
    const some = read(UNREAD, ['low-b-flat', 'low-c', 'e']);
    const all = read(
      UNREAD,
      KEYS.map(({ id }) => id),
    );
    const step = (contents: BenchContents): DayStep => stepOf(pathOf(contents), 'as found');
    expect(step(UNREAD)).toMatchObject({
      standing: 'not begun',
      count: { done: 0, of: KEYS.length },
      act: `Read ${KEYS.length} openings`,
    });
    expect(step(some)).toMatchObject({
      standing: 'begun',
      count: { done: 3, of: KEYS.length },
      told: `3 of ${KEYS.length} openings are read; low B, low C♯ and ${KEYS.length - 5} more are not.`,
      act: `Read ${KEYS.length - 3} more openings`,
      goal: { view: 'sheet', keyId: 'low-b', field: { kind: 'cell', pad: 'low-b', id: 'openingMm' } },
    });
    expect(step(all)).toMatchObject({ standing: 'done', told: `All ${KEYS.length} openings are read.` });
  });

  it('tells openings that came with an example from those read here', () => {
    const step = (contents: BenchContents): DayStep => stepOf(pathOf(contents), 'as found');
    expect(step(DEMO).told).toBe(`All ${KEYS.length} openings came with the horn; none was read here.`);
    expect(step(read(DEMO, ['d'])).told).toBe(
      `1 opening was read here; the other ${KEYS.length - 1} came with the horn.`,
    );
  });

  it('asks for seals and links until a leak is sealed or a person says all is in order', () => {
    const step = (contents: BenchContents): DayStep => stepOf(pathOf(contents), 'seals and links');
    const leaking = ['f', 'g'].reduce((now, pad) => withLeakingSeat(now, pad, { gapMm: 0.05 }), DEMO);
    const one = withDone(leaking, { move: 'seat f', valueMm: 0, read: true });
    const both = withDone(one, { move: 'seat g', valueMm: 0, read: true });
    expect(step(DEMO).standing).toBe('not begun');
    expect(step(leaking)).toMatchObject({
      standing: 'begun',
      told: 'F and G still leak.',
      act: 'Seal 2 pads',
    });
    expect(step(one)).toMatchObject({ standing: 'begun', count: { done: 1, of: 2 } });
    expect(step(one).told).toBe('G still leaks.');
    expect(step(both)).toMatchObject({ standing: 'done', told: '2 pads leaked and are sealed.' });
    expect(step(say(DEMO, 'seals and links', 'done')).standing).toBe('done');
  });

  it('gives every move but seats to one stack, and counts those made', () => {
    const proposed = ['d', 'e', 'a', 'low-c'].reduce((now, pad) => withProposed(now, pad, 9.6), DEMO);
    const stacks = (contents: BenchContents): (readonly [string, string])[] =>
      (['lower stack', 'upper stack', 'other keys'] as const).map((name) => {
        const { standing, count } = stepOf(pathOf(contents), name);
        return [standing, count === null ? '' : `${count.done} of ${count.of}`];
      });
    expect(stacks(DEMO).map(([standing]) => standing)).toEqual(['not begun', 'not begun', 'not begun']);
    const plan = planWork(proposed);
    if (!plan.ok) throw new Error(plan.message);
    const all = stacks(proposed).map(([, count]) => Number(count.split(' of ')[1] ?? 0));
    expect(all.reduce((a, b) => a + b)).toBe(plan.report.moves.length);
    expect(all.every((n) => n > 0)).toBe(true);
    const made = plan.report.moves.reduce(
      (now, { id, toMm }) => withDone(now, { move: id, valueMm: toMm, read: true }),
      proposed,
    );
    const left = planWork(made);
    const again = left.ok ? left.report.moves : [];
    const through = again.reduce(
      (now, { id, toMm }) => withDone(now, { move: id, valueMm: toMm, read: true }),
      made,
    );
    expect(stacks(through).map(([standing]) => standing)).toEqual(['done', 'done', 'done']);
    const onlyLow = withProposed(DEMO, 'd', 9.1);
    expect(stacks(onlyLow).map(([standing]) => standing)).toEqual(['not begun', 'not needed', 'not needed']);
    const first = withDone(onlyLow, { move: 'height d', valueMm: 9.1, read: true });
    expect(stacks(first)[0][0]).toBe('begun');
  });

  it('asks for a reading as set of every key that was to be moved', () => {
    const step = (contents: BenchContents): DayStep => stepOf(pathOf(contents), 'as set');
    const proposed = ['d', 'e'].reduce((now, pad) => withProposed(now, pad, 9.1), DEMO);
    const one = withSet(proposed, 'd', { mm: 9, at: 'front' });
    const both = withSet(one, 'e', { mm: 9, at: 'front' });
    expect(step(DEMO).standing).toBe('not begun');
    expect(step(proposed)).toMatchObject({ standing: 'not begun', act: 'Read 2 openings as set' });
    expect(step(one)).toMatchObject({
      standing: 'begun',
      told: 'Proposed and not read as set: E.',
      goal: { field: { kind: 'cell', pad: 'e', id: 'asSet' } },
    });
    expect(standingOf(one, 'as set')).toBe('1 set, 1 to read');
    expect(step(both)).toMatchObject({
      standing: 'done',
      told: `Set: D and E, all that was proposed; the other ${KEYS.length - 2} keys as found.`,
    });
    expect(standingOf(both, 'as set')).toBe(`2 of ${KEYS.length} set`);
    const stays = (['lower stack', 'upper stack', 'other keys'] as const).reduce(
      (now, name) => say(now, name, 'not needed'),
      DEMO,
    );
    expect(step(stays)).toMatchObject({ standing: 'not needed', told: 'It leaves as it was found.' });
  });

  it('does not take one key set, with nothing proposed, for all of them', () => {
    const one = withSet(DEMO, 'e', { mm: 9, at: 'front' });
    const step = (contents: BenchContents): DayStep => stepOf(pathOf(contents), 'as set');
    expect(step(one)).toMatchObject({
      standing: 'begun',
      told: `Set: E. Mark the step done if the other ${KEYS.length - 1} keys leave as found.`,
      act: `Read ${KEYS.length - 1} openings as set`,
    });
    expect(standingOf(one, 'as set')).toBe(`1 of ${KEYS.length} set`);
    expect(step(say(one, 'as set', 'done'))).toMatchObject({
      standing: 'done',
      told: 'Marked as done. Set: E.',
    });
    const all = KEYS.reduce((now, { id }) => withSet(now, id, { mm: 6, at: 'front' }), DEMO);
    expect(step(all).standing).toBe('done');
  });

  it('tells openings of a visit before from those read today, until they are read again or said to hold', () => {
    let count = 0;
    const plan = { date: '2027-06-01', airC: 22, a4Hz: 440 };
    const back = nextVisit(told(DEMO, { date: '2026-05-12' }), plan, () => `next-${++count}`);
    const step = (contents: BenchContents): DayStep => stepOf(pathOf(contents), 'as found');
    expect(step(back)).toMatchObject({
      standing: 'begun',
      count: { done: 0, of: KEYS.length },
      told: `${KEYS.length} openings are from last time, 2026-05-12. Read them again, or mark the step done where they still hold.`,
      act: `Read ${KEYS.length} openings again`,
    });
    expect(standingOf(back, 'as found')).toBe('from before');
    const some = read(back, ['e', KEYS[0].id]);
    expect(step(some)).toMatchObject({
      standing: 'begun',
      count: { done: 2, of: KEYS.length },
      act: `Read ${KEYS.length - 2} more openings again`,
      goal: { field: { pad: KEYS[1].id, id: 'openingMm' } },
    });
    expect(standingOf(some, 'as found')).toBe(`2 of ${KEYS.length} read again`);
    expect(step(say(back, 'as found', 'done'))).toMatchObject({
      standing: 'done',
      told: `Marked as done. ${KEYS.length} openings are from last time, 2026-05-12.`,
    });
    expect(
      step(
        read(
          back,
          KEYS.map(({ id }) => id),
        ),
      ).standing,
    ).toBe('done');
  });

  it('says what the player’s sheet still lacks', () => {
    const step = (contents: BenchContents): DayStep => stepOf(pathOf(contents), 'player’s sheet');
    const named = told(DEMO, { player: 'Runa', wish: 'lower keys' });
    expect(step(DEMO).told).toBe(
      'Not on it yet: who plays it, what they ask for and what is proposed or set. Printing it marks it done.',
    );
    expect(step(named).told).toMatch(/^Not on it yet: what is proposed or set\./);
    expect(step(withProposed(named, 'd', 9.1)).told).toMatch(/^All it needs is written down\./);
    expect(step(say(DEMO, 'player’s sheet', 'done'))).toMatchObject({
      standing: 'done',
      told: 'Marked as done.',
    });
  });

  it('counts notes logged, as set where anything was set, and none that was set aside', () => {
    const take = (fingering: string, setup: 'as found' | 'as set', leftOut = false) =>
      ({ fingering, cents: 3, setup, heard: 'tuner', ...(leftOut ? { leftOut } : {}) }) as const;
    const step = (contents: BenchContents): DayStep => stepOf(pathOf(contents), 'played');
    const found = told(DEMO, {
      played: [take('E4', 'as found'), take('E4', 'as found'), take('F4', 'as found')],
    });
    const set = withSet(found, 'd', { mm: 9, at: 'front' });
    const both = told(set, { played: [take('E4', 'as found'), take('E4', 'as set')] });
    expect(step(DEMO).standing).toBe('not begun');
    expect(step(told(DEMO, { played: [take('E4', 'as found', true)] })).standing).toBe('not begun');
    expect(step(found)).toMatchObject({ standing: 'done', told: 'Logged: 2 notes as found.' });
    expect(step(set)).toMatchObject({ standing: 'begun', act: 'Log how it plays as set' });
    expect(step(both)).toMatchObject({
      standing: 'done',
      told: 'Logged: 1 note as found, 1 note as set.',
      goal: { view: 'played' },
    });
  });

  it('takes a person’s word before what was counted, and does not hide what was counted', () => {
    const some = say(read(UNREAD, ['e']), 'as found', 'done');
    const step = stepOf(pathOf(some), 'as found');
    expect(step.standing).toBe('done');
    expect(step.told).toMatch(/^Marked as done\. 1 of /);
    expect(pathOf(some).next!.name).toBe('horn in');
    const waived = say(UNREAD, 'as found', 'not needed');
    expect(stepOf(pathOf(waived), 'as found').told).toBe('Marked as not needed.');
  });

  it('puts a visit of a day before where it is of use: after what was read today', () => {
    const { hornId } = stateOf(DEMO);
    const list = [
      { id: DEMO.visit.id, date: '2026-05-04', player: null },
      { id: 'same-day', date: '2026-05-04', player: null },
      { id: 'spring', date: '2025-04-20', player: 'Runa' },
    ];
    const state = { ...stateOf(DEMO), visits: { hornId, list } };
    const names = pathInHand(state, null).steps.map(({ name }) => name);
    expect(names.slice(0, 3)).toEqual(['horn in', 'as found', 'last visit']);
    const last = stepOf(pathInHand(state, null), 'last visit');
    expect(last).toMatchObject({ standing: 'not begun', act: 'Compare with 2025-04-20' });
    expect(last.told).toBe('It was here on 2025-04-20 for Runa. See what has moved since it left.');
    expect(pathOf(DEMO).steps.at(-1)).toMatchObject({ name: 'last visit', standing: 'not needed' });
  });

  it('tells that a library that may be cleared wants a file', () => {
    const state: BenchState = { ...stateOf(DEMO), keeping: { kind: 'saved' } };
    expect(stepOf(pathInHand(state, true), 'shop’s file').told).toContain('may clear it');
    expect(stepOf(pathInHand(state, false), 'shop’s file').told).not.toContain('may clear it');
    const refused: BenchState = { ...state, keeping: { kind: 'refused', message: 'full' } };
    expect(stepOf(pathInHand(refused, null), 'shop’s file').told).toContain('not saved');
  });

  it('knows where the page is: the step a view serves, and at a key its stack', () => {
    expect(pathOf(DEMO, 'key', 'd').here).toBe('lower stack');
    expect(pathOf(DEMO, 'key', 'bis').here).toBe('upper stack');
    expect(pathOf(DEMO, 'key', 'low-b').here).toBe('other keys');
    expect(pathOf(DEMO, 'sheet').here).toBe('horn in');
    expect(pathOf(read(UNREAD, ['e']), 'sheet').here).toBe('as found');
    expect(pathOf(DEMO, 'proposal').here).toBe('lower stack');
    expect(pathOf(DEMO, 'player-sheet').here).toBe('player’s sheet');
    expect(pathOf(told(DEMO, { player: 'Runa', wish: 'ease' }), 'work').here).toBe('seals and links');
    for (const view of ['links', 'leaks', 'pads'] as const) {
      expect(pathOf(DEMO, view).here).toBe('seals and links');
    }
    expect(pathOf(DEMO, 'new').here).toBe(null);
  });

  it('is through when every step is done or not needed, and only then', () => {
    const names = pathOf(DEMO).steps.map(({ name }) => name);
    const all = names.reduce((now, name) => say(now, name, 'done'), DEMO);
    expect(pathOf(all).next).toBe(null);
    expect(makeDayPathView(pathOf(all))).toMatchObject({ next: null, through: '11 of 11' });
    for (const name of names.filter((n) => n !== 'as found' && n !== 'last visit')) {
      const others = names.filter((n) => n !== name).reduce((now, n) => say(now, n, 'done'), DEMO);
      expect([name, pathOf(others).next?.name]).toEqual([name, name]);
    }
  });
});

describe('the drawing of the day', () => {
  it('shuts a key the further its step is, and never shows a begun step as one that is not', () => {
    const counts = [0, 1, 12, KEYS.length - 1, KEYS.length];
    const openings = counts.map((n) => {
      const contents = read(
        UNREAD,
        KEYS.slice(0, n).map(({ id }) => id),
      );
      return makeDayPathView(pathOf(contents)).rows.find(({ name }) => name === 'as found')!.key.openDeg;
    });
    expect([...openings].sort((a, b) => b - a)).toEqual(openings);
    expect(new Set(openings).size).toBe(counts.length);
    expect(openings.at(-1)).toBe(0);
  });

  it('says where the page is and what is next in the step’s own words', () => {
    const view = makeDayPathView(pathOf(read(UNREAD, ['e']), 'work'));
    expect(view.where).toBe('Seals and links: not begun');
    expect(view.next).toBe('Next: say who plays it');
    expect(view.rows.filter(({ key }) => key.isNext).map(({ name }) => name)).toEqual(['horn in']);
  });
});
