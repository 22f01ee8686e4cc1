import { describe, expect, it } from 'vitest';
import { visitSchema } from '../../src/documents/visit-document.ts';
import { recordsOf } from '../../src/documents/bench-contents.ts';
import { columnSources, hornInHand, makeBenchState, proposedInHand } from '../../src/ui/state/bench-state.ts';
import { undone } from '../../src/ui/state/horn-on-bench.ts';
import { withHorn } from '../../src/ui/state/horns-on-bench.ts';
import { compareColumns } from '../../src/ui/state/side-by-side-answer.ts';
import { columnsOf, documentsOf, standingOf } from '../../src/ui/state/side-by-side-columns.ts';
import {
  chooseColumns,
  hornFetched,
  sideArrived,
  sideAsked,
  type Column,
} from '../../src/ui/state/side-by-side-state.ts';
import type { BenchState } from '../../src/ui/state/bench-state.ts';
import { takeLike, takeProposal } from '../../src/ui/state/take-proposal.ts';
import { makeSideBySideView } from '../../src/ui/views/side-by-side/side-by-side-view.model.ts';
import { foundDocuments, withoutProposals } from '../../src/ui/state/key-lengths.ts';
import { onTheBench, plain } from './demo.ts';

/** Half of the last digit written, mm. */
const WRITTEN_MM = 0.005 + 1e-9;

const alto = onTheBench('alto');
/** Another alto whose stacks stand lower. */
const other = {
  ...alto,
  horn: { id: 'other', document: { ...alto.horn.document, name: 'Second alto' } },
  asFound: {
    ...alto.asFound,
    id: 'other-found',
    hornId: 'other',
    document: {
      ...alto.asFound.document,
      keys: alto.asFound.document.keys.map((key) =>
        ['d', 'e', 'f'].includes(key.pad) ? { ...key, openingMm: key.openingMm! - 2 } : key,
      ),
    },
  },
};
const columns: Column[] = [
  { hornId: alto.horn.id, setupId: alto.asFound.id },
  { hornId: 'other', setupId: 'other-found' },
];

/** As the page stands once the physics has answered. */
function answered(state: BenchState): BenchState {
  const sources = columnSources(state);
  const documents = columnsOf(state.sideBySide.chosen, sources).map((column) => {
    const standing = standingOf(sources, column);
    return standing.kind === 'there' ? documentsOf(standing.source) : null;
  });
  const answer = compareColumns(documents, 26.85, 440, foundDocuments(hornInHand(state).contents));
  return { ...state, sideBySide: sideArrived(sideAsked(state.sideBySide, 1), 1, answer) };
}

const records = { ...recordsOf(other), setups: [other.asFound], visits: [] };
const bench = makeBenchState([], alto);
const fetched = hornFetched(bench.sideBySide, 'other', { kind: 'fetched', records });
const shown = answered({ ...bench, sideBySide: chooseColumns(fetched, columns) });
const like = makeSideBySideView(shown).like!;

describe('a horn set like a column side by side', () => {
  it('is offered for what is not the visit in hand itself', () => {
    expect([like.chosen, like.columns.map(({ label }) => label)]).toEqual(['1', ['B']]);
    expect(like.act).toBe(`Propose ${Object.keys(like.frontsMm).length} openings of B`);
    expect(like.disabled).toBe(false);
    // Of one make but lower: what travels alike vents alike.
    expect(like.meaning).toMatch(/^The same under the fingers: .* both come to the same\.$/);
    const byShare = makeSideBySideView({
      ...shown,
      sideBySide: { ...shown.sideBySide, likeBy: 'vent share' },
    });
    expect(byShare.like!.meaning).toMatch(/^The same in the sound: .* both come to the same\.$/);
    const tight = {
      ...shown.sideBySide.answer!.matches[1]!,
      'vent share': { frontsMm: { e: 9 }, alike: 0, left: [] },
    };
    const answer = { ...shown.sideBySide.answer!, matches: [null, tight] };
    const apart = makeSideBySideView({ ...shown, sideBySide: { ...shown.sideBySide, answer } });
    expect(apart.like!.meaning).not.toContain('both come');
    const own = chooseColumns(shown.sideBySide, [columns[0], columns[0]]);
    expect(makeSideBySideView({ ...shown, sideBySide: own }).like).toBeNull();
  });

  it('is proposed in one step that undo takes back, and stands beside as found and that column', () => {
    const taken = takeLike(shown, like.frontsMm, like.column, like.keeps);
    expect(hornInHand(taken).past).toHaveLength(1);
    const proposed = proposedInHand(taken);
    for (const [pad, mm] of Object.entries(like.frontsMm)) expect(proposed[pad]).toBeCloseTo(mm, 2);
    expect(taken.sideBySide.chosen).toEqual([
      columns[0],
      { hornId: alto.horn.id, setupId: alto.proposed.id },
      columns[1],
    ]);
    expect(undone(hornInHand(taken)).contents).toBe(alto);
    const after = makeSideBySideView(answered(taken));
    expect(after.like).toMatchObject({ taken: true, disabled: true, chosen: '2' });
    expect(plain(after.like!.words)).toMatch(
      /^Taken: \d+ openings of Second alto.* are proposed on Larkfield alto, demo, visit of 2026-05-04\. Undo takes it back\.$/,
    );
    const reloaded = answered(withHorn(taken, (horn) => ({ ...horn, past: [] })));
    expect(plain(makeSideBySideView(reloaded).like!.words)).toMatch(/^Taken: .* visit of 2026-05-04\.$/);
    // The visit keeps whose openings they are, until something else is proposed or all is withdrawn.
    const { setLike } = hornInHand(taken).contents.visit.document;
    expect(setLike).toMatchObject({ horn: 'Second alto', by: 'front' });
    for (const { pad, frontMm } of setLike!.pads) {
      if (pad in proposed) expect(Math.abs(frontMm - proposed[pad])).toBeLessThanOrEqual(WRITTEN_MM);
    }
    expect(visitSchema.parse(hornInHand(taken).contents.visit.document).setLike).toEqual(setLike);
    const others = takeProposal(taken, { e: 7 });
    expect(hornInHand(others).contents.visit.document).toEqual(alto.visit.document);
    expect(withoutProposals(hornInHand(taken).contents).visit.document).toEqual(alto.visit.document);
    // What the fingers feel of it is what they feel of the other horn.
    expect(after.comparison!.sentences[0]).toContain('the lower stack stands');
  });

  it('says of a proposal that says nothing that nothing is proposed', () => {
    const empty = chooseColumns(shown.sideBySide, [
      columns[0],
      { hornId: alto.horn.id, setupId: alto.proposed.id },
      columns[1],
    ]);
    const { comparison } = makeSideBySideView(answered({ ...shown, sideBySide: empty }));
    expect(plain(comparison!.sentences[0]).replaceAll('\u2011', '-')).toBe(
      'B: nothing is proposed on Larkfield alto, demo, visit of 2026-05-04: it stands as found.',
    );
    expect(comparison!.sentences[1]).toContain('Second alto');
  });

  it('tells horn, setup and side beside what to measure next', () => {
    const { sureness } = makeSideBySideView(shown);
    const told = [
      ...sureness!.panel.parts.map(({ label }) => label),
      ...sureness!.panel.next.map(({ text }) => text),
    ];
    expect(told.some((label) => /of [AB] “(Larkfield alto, demo|Second alto), As found/.test(label))).toBe(
      true,
    );
  });

  it('has a reason for every figure’s own column, and a ± on every pitch', () => {
    const { notes, keys } = makeSideBySideView(shown).comparison!;
    for (const { heads, kind } of [...notes.groups, ...keys.groups]) {
      for (const { letter, reason } of heads) {
        if (reason === null) continue;
        expect(reason.of).toContain(`${letter} “`);
        if (kind === 'state') expect(reason.of).not.toContain('beside');
      }
    }
    const pitch = notes.groups.findIndex(({ title }) => title.startsWith('Cents from'));
    for (const { cells } of notes.rows)
      for (const cell of cells[pitch])
        if (cell.text !== 'lost') expect(Number(cell.plusMinus)).toBeGreaterThanOrEqual(10);
  });
});
