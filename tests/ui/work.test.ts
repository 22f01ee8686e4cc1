import { describe, expect, it } from 'vitest';
import type { BenchContents } from '../../src/documents/bench-contents.ts';
import { withSaid } from '../../src/documents/day-steps.ts';
import { readWith } from '../../src/documents/schema-parts.ts';
import { visitSchema } from '../../src/documents/visit-document.ts';
import { makeBenchState, type BenchState } from '../../src/ui/state/bench-state.ts';
import { withProposed, withSet } from '../../src/ui/state/key-lengths.ts';
import { withProposedPads } from '../../src/ui/state/new-pads.ts';
import { readBack } from '../../src/ui/state/read-work.ts';
import { withDone, withLeakingSeat, withoutDone } from '../../src/ui/state/work-edits.ts';
import { planWork } from '../../src/ui/state/work-plan.ts';
import { makeWorkView } from '../../src/ui/views/regulation/work/work-view.model.ts';
import { onTheBench, plain } from './demo.ts';

/** Papers are counted in 0.025 mm, which binary digits round. */
const ROUNDING_DIGITS = 12;

const FOUND = onTheBench('alto');
const E_FOUND_MM = FOUND.asFound.document.keys.find((k) => k.pad === 'e')!.openingMm!;

const moves = (contents: BenchContents): string[] => {
  const plan = planWork(contents);
  if (!plan.ok) throw new Error(plan.message);
  return plan.report.moves.map((move) => move.id);
};
const stateOf = (contents: BenchContents): BenchState => ({
  ...makeBenchState([{ id: contents.horn.id, label: 'Alto' }], contents),
  view: 'work',
});
const setOf = (contents: BenchContents, pad: string) =>
  contents.asSet.document.keys.find((k) => k.pad === pad);

describe('the order of work', () => {
  it('is empty where nothing leaks, no link is out and nothing is proposed', () => {
    expect(moves(FOUND)).toEqual([]);
    const read = FOUND.horn.document.links.map(({ driver, driven }) => ({ driver, driven, drivenGapMm: 0 }));
    const asFound = { ...FOUND.asFound, document: { ...FOUND.asFound.document, links: read } };
    const view = makeWorkView(stateOf({ ...FOUND, asFound }));
    expect(view.headline).toContain('Nothing to do');
    expect(view.moves).toEqual([]);
  });

  it('lists the links that nobody read, each until it is tested', () => {
    const { links } = FOUND.horn.document;
    const view = makeWorkView(stateOf(FOUND));
    expect(view.headline).toBe(
      `Nothing is known to be out: ${links.length} links were never read, test them first.`,
    );
    expect(view.moves.map(({ move }) => move.id).sort()).toEqual(
      links.map(({ driver, driven }) => `link ${driver} > ${driven}`).sort(),
    );
    expect(view.moves[0]).toMatchObject({ pass: 'Links never read', number: 1 });
    expect(view.moves.map(({ what }) => what)).toContain('Test this link: D shuts F♯ auxiliary');
    const move = 'link d > f-sharp-auxiliary';
    const tested = makeWorkView(stateOf(withDone(FOUND, { move, valueMm: 0, read: true })));
    expect(tested.moves.map((row) => row.move.id)).not.toContain(move);
    const out = makeWorkView(stateOf(withDone(FOUND, { move, valueMm: 0.1, read: true })));
    expect(out.moves[0]).toMatchObject({ pass: 'Links', what: 'Regulate: D shuts F♯ auxiliary with itself' });
  });

  it('sets the links of a raised key after it, and says what motion they lose', () => {
    const raised = withProposed(FOUND, 'd', 9);
    const view = makeWorkView(stateOf(raised));
    const [height, link, ...rest] = view.moves;
    expect(height.move.id).toBe('height d');
    expect(link.what).toBe('Set after raising D: D shuts F♯ auxiliary with itself');
    expect(plain(link.from)).toMatch(
      /^D goes 1\.2 ± 0\.\d mm \(0\.049 in\) at the front before F♯ auxiliary stirs, 1\.0 ± 0\.2 mm more than as found/,
    );
    expect(rest.every(({ what }) => what.startsWith('Test this link'))).toBe(true);
    expect(view.warnings.map(plain)).toEqual([
      expect.stringContaining('F♯ auxiliary at 8.1 mm (foot cork 0.23 mm thinner) takes it up'),
    ]);
    const done = makeWorkView(stateOf(withDone(raised, { move: 'height d', valueMm: 9, read: true })));
    expect(done.moves[0].what).toBe('Set after raising D: D shuts F♯ auxiliary with itself');
  });

  it('starts with a leaking seat, then its links; a proposed height brings its links once more', () => {
    const leaking = withLeakingSeat(FOUND, 'e', { gapMm: 0.05 });
    expect(moves(leaking)[0]).toBe('seat e');
    expect(moves(leaking)).toContain('link e > f-sharp-auxiliary');
    const contents = withProposed(leaking, 'e', E_FOUND_MM - 1);
    const list = moves(contents);
    expect(list.indexOf('height e')).toBeGreaterThan(list.indexOf('link e > f-sharp-auxiliary'));
    expect(list.lastIndexOf('link e > f-sharp-auxiliary')).toBeGreaterThan(list.indexOf('height e'));
  });

  it('tells a link that only holds shut from one that shuts', () => {
    const { moves: rows } = makeWorkView(stateOf(withLeakingSeat(FOUND, 'f-sharp-auxiliary', {})));
    const what = (id: string): string => rows.find(({ move }) => move.id === id)!.what;
    expect(what('link f-sharp-auxiliary > g-sharp')).toContain('F♯ auxiliary holds G♯ shut with itself');
    expect(what('link f-sharp-auxiliary > bis')).toContain('F♯ auxiliary shuts bis with itself');
  });

  it('counts a seat that leaks nobody knows how wide as one to make', () => {
    const view = makeWorkView(stateOf(withLeakingSeat(FOUND, 'low-b', {})));
    expect(view.headline).toBe('Start: seat low B.');
    expect(view.moves[0].from).toBe('leaks');
  });

  it('starts with the seats as long as nobody looked at them, and with the first move of the list after that', () => {
    const contents = withProposed(FOUND, 'd', 9.1);
    const startOf = (of: BenchContents): string => plain(makeWorkView(stateOf(of)).headline);
    const { visit } = contents;
    const looked = { ...visit, document: withSaid(visit.document, 'seals and links', 'done') };
    expect(startOf({ ...contents, visit: looked })).toMatch(/^Start: raise D to 9\.1 mm/);
    expect(startOf(contents)).toMatch(
      /^Start: test every seat with a light, none is marked below yet, then raise D to 9\.1 mm/,
    );
    expect(startOf(withLeakingSeat(contents, 'd', { gapMm: 0.05 }))).toBe('Start: seat D.');
    const next = withDone(contents, { move: 'height d', valueMm: 9.1, read: true });
    expect(startOf(next)).toMatch(/^Next: (?!test)/);
  });

  it('takes a value back as set, with how it was read, and plans on from it', () => {
    const contents = withProposed(FOUND, 'e', E_FOUND_MM - 1);
    const done = withDone(contents, { move: 'height e', valueMm: E_FOUND_MM - 1.1, read: true });
    expect(moves(done)).not.toContain('height e');
    expect(setOf(done, 'e')).toMatchObject({ openingMm: E_FOUND_MM - 1.1, measuredAt: 'front' });
    expect(setOf(done, 'e')!.readings!.openingMm!.origin).toBe('measured');
    const asked = withDone(contents, { move: 'height e', valueMm: E_FOUND_MM - 1, read: false });
    expect(setOf(asked, 'e')!.readings!.openingMm!.origin).toBe('derived');
  });

  it('brings a move back whose value lies outside its tolerance', () => {
    const contents = withProposed(FOUND, 'e', E_FOUND_MM - 1);
    const done = withDone(contents, { move: 'height e', valueMm: E_FOUND_MM - 0.5, read: true });
    expect(moves(done)).toContain('height e');
    const view = makeWorkView(stateOf(done));
    expect(view.done.map((row) => row.within)).toEqual([false]);
    expect(plain(view.standing)).toContain('1 value came back outside the tolerance');
  });

  it('takes a move back: the value before it is as set again, or nothing is', () => {
    const contents = withProposed(FOUND, 'e', E_FOUND_MM - 1);
    const once = withDone(contents, { move: 'height e', valueMm: E_FOUND_MM - 0.5, read: true });
    const twice = withDone(once, { move: 'height e', valueMm: E_FOUND_MM - 1, read: true });
    expect(setOf(withoutDone(twice, 1), 'e')!.openingMm).toBe(E_FOUND_MM - 0.5);
    const none = withoutDone(once, 0);
    expect(none.asSet.document).toEqual(contents.asSet.document);
    expect(none.visit.document).toEqual(contents.visit.document);
  });

  it('writes a link’s gap as set, and takes it out again', () => {
    const contents = withLeakingSeat(FOUND, 'e', {});
    const move = 'link e > f-sharp-auxiliary';
    const done = withDone(contents, { move, valueMm: -0.025, read: true });
    expect(done.asSet.document.links).toEqual([
      { driver: 'e', driven: 'f-sharp-auxiliary', drivenGapMm: -0.025 },
    ]);
    expect(withoutDone(done, 0).asSet.document).toEqual(contents.asSet.document);
  });

  it('counts an opening that was set on the sheet as done', () => {
    const contents = withProposed(FOUND, 'e', E_FOUND_MM - 1);
    const set = withSet(contents, 'e', { mm: E_FOUND_MM - 1, at: 'front' });
    expect(moves(set)).not.toContain('height e');
    const view = makeWorkView(stateOf(set));
    expect(view.done.map(({ index, came }) => [index, plain(came).endsWith('from the sheet')])).toEqual([
      [null, true],
    ]);
  });

  it('is finished when every move came to what was asked, and ends whatever comes back in between', () => {
    let contents = withLeakingSeat(withProposed(withProposed(FOUND, 'e', E_FOUND_MM - 1), 'f', 7), 'a', {});
    let steps = 0;
    const asked = moves(contents).length;
    for (let list = moves(contents); list.length > 0; list = moves(contents)) {
      const plan = planWork(contents);
      const [move] = plan.ok ? plan.report.moves : [];
      // The third comes back wrong once.
      const wrong = steps === 2 ? 0.4 : 0;
      contents = withDone(contents, { move: move.id, valueMm: move.toMm + wrong, read: wrong !== 0 });
      expect(++steps).toBeLessThan(60);
    }
    expect(steps).toBeGreaterThan(asked);
    expect(readWith(visitSchema, contents.visit.document).ok).toBe(true);
    expect(makeWorkView(stateOf(contents)).headline).toMatch(/^All done: \d+ moves made\.$/);
  });

  it('starts a key with a new pad from where that pad will leave it, and sets the stop back', () => {
    const { padDiameterMm, padThicknessMm } = FOUND.asFound.document.keys.find((k) => k.pad === 'e')!;
    const thick = { pad: 'e', diameterMm: padDiameterMm!, thicknessMm: padThicknessMm! + 0.5, bedMm: 0.3 };
    const contents = withProposedPads(FOUND, [thick], 0.1);
    const plan = planWork(contents);
    const height = plan.ok ? plan.report.moves.find((m) => m.id === 'height e') : undefined;
    expect(height!.toMm).toBeCloseTo(E_FOUND_MM, 9);
    // Levelled, the front loses Δt(L + d)/L: between Δt and 2Δt.
    expect(E_FOUND_MM - height!.fromMm!).toBeGreaterThan(0.5);
    expect(E_FOUND_MM - height!.fromMm!).toBeLessThan(1);
    expect(moves(contents)[0]).toBe('seat e');
    const done = withDone(contents, { move: 'seat e', valueMm: 0, read: false });
    expect(setOf(done, 'e')!.padThicknessMm).toBe(thick.thicknessMm);
    expect(withoutDone(done, 0).asSet.document).toEqual(contents.asSet.document);
  });

  it('leaves out what the horn no longer has', () => {
    const done = withDone(FOUND, { move: 'height gone', valueMm: 3, read: true });
    const odd = withDone(FOUND, { move: 'polish', valueMm: 3, read: true });
    for (const contents of [done, odd]) {
      const kept = { ...contents, asSet: FOUND.asSet };
      expect(makeWorkView(stateOf(kept)).done).toEqual([]);
    }
  });
});

describe('a value that comes back', () => {
  it('is papers or a length for a gap, and a length for a height', () => {
    expect(readBack('link', '2', 'mm')).toEqual({ ok: true, value: 0.05 });
    const early = readBack('link', '−1,5 papers', 'mm');
    expect(early.ok && early.value).toBeCloseTo(-0.0375, ROUNDING_DIGITS);
    expect(readBack('seat', '0.05 mm', 'mm')).toEqual({ ok: true, value: 0.05 });
    const height = readBack('height', '0.310 in', 'mm');
    expect(height.ok && height.value).toBeCloseTo(0.31 * 25.4, ROUNDING_DIGITS);
  });

  it('is refused with what was expected', () => {
    const told = (kind: 'link' | 'seat' | 'height', text: string): string => {
      const read = readBack(kind, text, 'mm');
      return read.ok ? '' : read.message;
    };
    expect(told('link', 'some')).toContain('or papers such as 1.5');
    expect(told('height', '90 mm')).toBe(
      'invalid opening that came back, at the front: 90.0 mm (3.543 in); expected 0 to 60.0 mm (2.362 in)',
    );
    expect(told('seat', '-2')).toContain('invalid gap under the shut pad');
  });
});
