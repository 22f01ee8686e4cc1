import { describe, expect, it } from 'vitest';
import { withLockToggled, withPreference } from '../../src/documents/proposal-choices.ts';
import { formatBoth, formatLength } from '../../src/documents/length-format.ts';
import { lengthBothWithPlusMinus } from '../../src/documents/length-plus-minus.ts';
import { answerArrived, answerAsked, answerFailed } from '../../src/ui/state/asked-answer.ts';
import {
  hornInHand,
  makeBenchState,
  proposedInHand,
  type BenchState,
} from '../../src/ui/state/bench-state.ts';
import { undone } from '../../src/ui/state/horn-on-bench.ts';
import { standingDocuments } from '../../src/ui/state/stands-now.ts';
import { withHorn } from '../../src/ui/state/horns-on-bench.ts';
import { withProposed, withSet } from '../../src/ui/state/key-lengths.ts';
import { withAsked } from '../../src/ui/state/proposal-state.ts';
import { takeProposal } from '../../src/ui/state/take-proposal.ts';
import { makePitchPicture } from '../../src/ui/views/proposal/pitch-picture.model.ts';
import { makeProposalView } from '../../src/ui/views/proposal/proposal-view.model.ts';
import { answerProposal } from './demo-proposal.ts';
import { onTheBench, plain } from './demo.ts';

const untouched = makeBenchState([{ id: 'demo-alto', label: 'Demo alto' }], onTheBench('alto'));
const report = answerProposal();

/** As the page stands once the physics has answered. */
function answered(of: BenchState, told = report): BenchState {
  const answer = answerArrived(answerAsked(of.proposal.answer, 1), 1, of.hornId, told);
  return { ...of, proposal: { ...of.proposal, answer } };
}

const shown = answered(untouched);
const view = makeProposalView(shown);
const take = (id: string): (typeof view.takes)[number] => view.takes.find((each) => each.id === id)!;

describe('the page of the proposed setup', () => {
  it('says that it is working until the physics answers', () => {
    const before = makeProposalView(untouched);
    expect([before.waiting, before.rows, before.takes]).toEqual([true, [], []]);
    expect(before.headline).toContain('Working out');
  });

  it('keeps the last answer, dimmed, while another is worked out, and tells why there is none', () => {
    const asked = {
      ...shown,
      proposal: { ...shown.proposal, answer: answerAsked(shown.proposal.answer, 2) },
    };
    expect(makeProposalView(asked)).toMatchObject({ waiting: true, headline: report.answer, problem: null });
    const failed = answerFailed(asked.proposal.answer, 2, 'the rod is under the pad');
    const wrong = makeProposalView({ ...shown, proposal: { ...shown.proposal, answer: failed } });
    expect(wrong).toMatchObject({ waiting: false, problem: 'the rod is under the pad' });
  });

  it('shows every key in both units with what the report says of it', () => {
    expect(view.headline).toBe(report.answer);
    expect(view.rows.map(({ pad }) => pad)).toEqual(report.keys.map(({ pad }) => pad));
    report.keys.forEach((key, i) => {
      const row = view.rows[i];
      expect(plain(row.found)).toBe(plain(lengthBothWithPlusMinus(key.foundMm, key.foundPlusMinusMm, 'mm')));
      expect(row.proposed).toBe(key.moveMm === 0 ? '' : formatBoth(key.proposedMm, 'mm'));
      expect(row.why).toBe(key.why);
    });
    const inches = makeProposalView({ ...shown, unit: 'thou' });
    expect(plain(inches.rows[0].found)).toMatch(/^0\.\d{3} ± 0\.0\d\d in \(\d+\.\d mm\)$/);
    expect(inches.rows[0].move).toMatch(/^−0\.\d{3} in$/);
  });

  it('numbers the keys of the short list in its order', () => {
    const places = view.rows.flatMap(({ pad, place }) => (place === null ? [] : [[pad, place] as const]));
    expect(new Map(places)).toEqual(new Map(report.shortList.map(({ pad }, i) => [pad, i + 1])));
  });

  it('tells the moves of the headline in the table too, where the first few alone move otherwise', () => {
    const first = report.shortList.slice(0, 3);
    for (const { pad, name, foundMm } of first) {
      const alone = `+${formatLength(first[2].togetherMm[pad] - foundMm, 'mm')}`;
      const off = report.keys.find((key) => key.pad === pad)!.foundPlusMinusMm;
      expect(view.headline).toContain(`${name} ${alone.replace(' mm', '')} ± ${formatLength(off, 'mm')}`);
      const { move, few } = view.rows.find((row) => row.pad === pad)!;
      expect(few === null ? move : few.split(' if ')[0]).toBe(alone);
    }
    expect(view.gain).toMatch(/^Gain: /);
    expect(view.rows.filter(({ few }) => few !== null).length).toBeLessThanOrEqual(3);
  });

  it('offers the first three of a long list, the list and all', () => {
    expect(view.takes.map(({ id }) => id)).toEqual(['first', 'list', 'all']);
    expect(Object.keys(take('first').frontsMm)).toEqual(report.shortList.slice(0, 3).map(({ pad }) => pad));
    expect(Object.keys(take('list').frontsMm)).toHaveLength(report.shortList.length);
    expect(Object.keys(take('all').frontsMm)).toHaveLength(
      report.keys.filter(({ moveMm }) => moveMm !== 0).length,
    );
  });

  it('says how many of what is taken were not read on this horn', () => {
    const labelsWith = (isRead: (pad: string) => boolean): string[] => {
      const keys = report.keys.map((key) => ({ ...key, isRead: isRead(key.pad) }));
      return makeProposalView(answered(untouched, { ...report, keys })).takes.map(({ label }) => label);
    };
    const listed = report.shortList.map(({ pad }) => pad);
    const moves = report.keys.filter(({ moveMm }) => moveMm !== 0).length;
    const some = labelsWith((pad) => listed.includes(pad));
    expect(some[0]).toBe('Take the first three');
    expect(some[2]).toMatch(new RegExp(`, ${moves - listed.length} not read here$`));
    for (const label of labelsWith(() => false)) expect(label).toMatch(/, none read here$/);
    for (const { label } of view.takes) expect(label).not.toContain('read');
  });

  it('takes them as what is proposed and nothing else, in one step that is undone at once', () => {
    const other = answered({
      ...untouched,
      horns: {
        [untouched.hornId]: {
          ...hornInHand(untouched),
          contents: withProposed(hornInHand(untouched).contents, 'low-c', 8.2),
        },
      },
    });
    expect(makeProposalView(other).takenWords).toMatch(/^Other 1 opening is proposed/);
    const taken = takeProposal(other, take('first').frontsMm);
    const openings = proposedInHand(taken);
    expect(Object.keys(openings).sort()).toEqual(Object.keys(take('first').frontsMm).sort());
    for (const [pad, mm] of Object.entries(take('first').frontsMm)) expect(openings[pad]).toBeCloseTo(mm, 1);
    const after = makeProposalView(taken);
    expect(after.takes.map(({ id, taken: is }) => [id, is])).toEqual([
      ['first', true],
      ['list', false],
      ['all', false],
    ]);
    expect(after.takenWords).toMatch(/^Taken: 3 openings are proposed.* Undo takes it back\.$/);
    // After a reload there is nothing to undo.
    const reloaded = withHorn(taken, (horn) => ({ ...horn, past: [] }));
    expect(makeProposalView(reloaded).takenWords).toBe('Taken: 3 openings are proposed on the sheet now.');
    expect(hornInHand(taken).past).toHaveLength(1);
    const back = undone(hornInHand(taken));
    expect(back.contents).toBe(hornInHand(other).contents);
  });

  it('takes with them the openings set that they were worked out from', () => {
    const contents = withSet(hornInHand(untouched).contents, 'd', { mm: 9.1, at: 'front' });
    const from = withHorn(untouched, (horn) => ({ ...horn, contents }));
    const told = answerProposal({ standing: standingDocuments(contents), locked: ['d'] });
    const { takes } = makeProposalView(answered(from, told));
    expect(takes.length).toBeGreaterThan(0);
    for (const { frontsMm, taken } of takes) {
      expect(frontsMm['d']).toBeCloseTo(9.1, 6);
      expect(taken).toBe(false);
      expect(proposedInHand(takeProposal(from, frontsMm))['d']).toBeCloseTo(9.1, 6);
    }
    const free = answerProposal({ standing: standingDocuments(contents) });
    const all = makeProposalView(answered(from, free)).takes.find(({ id }) => id === 'all')!;
    expect(all.frontsMm['d']).toBe(free.keys.find(({ pad }) => pad === 'd')!.proposedMm);
  });

  it('keeps locks and preference with the visit, each a step that is undone at once', () => {
    const horn = hornInHand(shown);
    const locked = withAsked(horn, (visit) => withLockToggled(visit, 'e'));
    const low = withAsked(locked, (visit) => withPreference(visit, 'low keys'));
    expect(withAsked(low, (visit) => withPreference(visit, 'low keys'))).toBe(low);
    const seen = makeProposalView(
      answered(
        { ...shown, horns: { [shown.hornId]: low } },
        answerProposal({ locked: ['e'], prefer: 'low keys' }),
      ),
    );
    expect(seen.prefer).toBe('low keys');
    expect(seen.rows.find(({ pad }) => pad === 'e')).toMatchObject({
      locked: true,
      reason: 'locked',
      proposed: '',
    });
    expect(low.past).toHaveLength(2);
    expect(undone(low).contents).toBe(locked.contents);
    expect(undone(undone(low)).contents).toBe(horn.contents);
  });

  it('draws every note that counts in full within the picture, sharper higher', () => {
    const picture = makePitchPicture(report.notes);
    expect(picture.label).toMatch(
      /^Cents of \d+ notes .* [+−]\d+\.\d, then [+−]?\d+\.\d.* Moves most: .* ± \d+\.\d cents\./,
    );
    const full = report.notes.filter(({ weight }) => weight === 1);
    expect(picture.marks).toHaveLength(full.length);
    full.forEach((note, i) => {
      const { x, found, proposed } = picture.marks[i];
      for (const y of [found, proposed]) expect(y).toBeGreaterThanOrEqual(0);
      for (const y of [found, proposed]) expect(y).toBeLessThan(picture.height);
      expect(x).toBeLessThan(picture.width);
      const rises = note.proposedAboutCents - note.foundAboutCents;
      if (Math.abs(rises) > 0.01) expect(Math.sign(found - proposed)).toBe(Math.sign(rises));
    });
  });
});

it('opens for every key that moves why it moves, with the report’s own numbers', () => {
  for (const row of view.rows) {
    const key = report.keys.find(({ pad }) => pad === row.pad)!;
    if (key.moveMm === 0) expect(row.opens).toBeNull();
    else {
      expect(plain(row.opens!.figure)).toBe(formatBoth(key.proposedMm, 'mm'));
      expect(row.opens!.remarks).toEqual([key.why]);
      expect(plain(row.opens!.inputs[0].value)).toBe(
        plain(lengthBothWithPlusMinus(key.foundMm, key.foundPlusMinusMm, 'mm')),
      );
    }
  }
  expect(view.rows.some(({ opens }) => opens !== null)).toBe(true);
});
