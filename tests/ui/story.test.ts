import { describe, expect, it } from 'vitest';
import { decibels, heightOrLeakSentence } from '../../src/documents/height-or-leak-words.ts';
import { formatBoth, formatLength } from '../../src/documents/length-format.ts';
import { reportProposal } from '../../src/documents/proposal-report.ts';
import { loadHorn } from '../../src/documents/to-acoustics.ts';
import { decibelsBetween, makeAirColumn } from '../../src/acoustics/index.ts';
import { answerArrived } from '../../src/ui/state/asked-answer.ts';
import { chooseKey } from '../../src/ui/state/horns-on-bench.ts';
import { makeBenchState, type BenchState } from '../../src/ui/state/bench-state.ts';
import { studyArrived, studyAsked } from '../../src/ui/state/study-in-hand.ts';
import { lengthBothWithPlusMinus } from '../../src/ui/parts/plus-minus-words.ts';
import { askedAbout } from '../../src/ui/state/leaks-state.ts';
import { STORY, STORY_HORN } from '../../src/ui/state/story-cards.ts';
import { makeStoryView } from '../../src/ui/state/story.ts';
import type { StudyReport } from '../../src/ui/state/study-report.ts';
import { VIEW_NAMES } from '../../src/ui/state/view-names.ts';
import { answerRegulation, REGULATION_REQUESTS } from './demo-regulation.ts';
import { ALTO, onTheBench, plain, report, sureReport, type Typed } from './demo.ts';

const DEMO = onTheBench('alto');

/** The page as a card wants it, nothing worked out yet. */
function atCard(card: number): BenchState {
  const state = makeBenchState([], DEMO);
  const { place } = STORY[card];
  if (place === null) return state;
  const there = { ...state, view: place.view };
  return place.keyId === null ? there : chooseKey(there, place.keyId);
}

/** The same with the story's key worked out. */
function studied(card: number, study: StudyReport): BenchState {
  const before = chooseKey(atCard(card), 'd');
  return studyArrived(studyAsked(before, 1), 1, study);
}

const textOf = (state: BenchState, card: number): string => plain(makeStoryView(state, card).text);
const cardOf = (title: string): number => STORY.findIndex((card) => card.title === title);

const VENTS = cardOf('Low E speaks under the D key');
const RAISE = cardOf('Is the key too low, then?');
const LOWER = cardOf('And if the keys came down?');
const LEANS = cardOf('One key leans on another');
const LEAK = cardOf('Height, or a leak?');
const ALL = cardOf('All keys at once');
const TOLD = cardOf('What Runa is told');

const D = report('d');

describe('the story', () => {
  it('is told in six to eight cards on the example alto, in views there are', () => {
    expect(STORY.length).toBeGreaterThanOrEqual(6);
    expect(STORY.length).toBeLessThanOrEqual(8);
    expect(DEMO.horn.id).toBe(STORY_HORN);
    for (const { place } of STORY) if (place !== null) expect(VIEW_NAMES).toContain(place.view);
  });

  it('tells no number before it is worked out', () => {
    STORY.forEach((card, i) => {
      if (card.place !== null)
        expect([card.title, textOf(atCard(i), i)]).toEqual([card.title, expect.not.stringMatching(/\d/)]);
    });
  });

  it('says where it goes on when something else is looked at, and tells nothing there', () => {
    const away: BenchState = { ...studied(VENTS, D), view: 'library' };
    const other = chooseKey(studied(VENTS, D), 'g');
    for (const state of [away, other]) {
      expect(makeStoryView(state, VENTS)).toMatchObject({ isThere: false, mark: null });
      expect(textOf(state, VENTS)).not.toMatch(/\d/);
    }
  });

  it('tells how the D key vents by the core’s own study', () => {
    const { present } = D;
    const text = textOf(studied(VENTS, D), VENTS);
    expect(text).toContain(`stands at ${formatBoth(present.frontMm, 'mm')} at the front`);
    expect(text).toContain(`lifted straight up by ${formatLength(present.equivalentParallelMm, 'mm')}`);
    expect(text).toContain(`${Math.round(100 * present.ventShare)} %`);
  });

  it('tells what raising brings low E, in dB and cents with their ±, and says no where the key stands high enough', () => {
    const sure = sureReport('d');
    if (sure.answer.kind !== 'reached') throw new Error('the D key has an answer');
    const e4 = sure.governed.findIndex(({ id }) => id === 'E4');
    const { point } = sure.answer;
    const text = textOf(studied(RAISE, sure), RAISE);
    expect(text).toMatch(/^For its pitch perhaps, not for the stuffiness\./);
    expect(text).toContain(
      plain(lengthBothWithPlusMinus(point.frontMm, sure.budgets.answerMm!.plusMinus, 'mm')),
    );
    expect(text).toContain(
      `rises by ${point.notes[e4]!.fromPresentCents.toFixed(1)} ± ${sure.budgets.changeCents[e4]!.plusMinus.toFixed(1)} cents`,
    );
    const [height] = answerRegulation('height or leak').heights;
    expect(height.pad).toBe('d');
    expect(text).toContain(`gains ${decibels(height.gainDb!, height.gainDbBudget!.plusMinus)}`);
    const shut: Typed = { d: { openingMm: 1, measuredAt: 'front' } };
    expect(textOf(studied(RAISE, report('d', shut)), RAISE)).toMatch(/^Yes\. /);
    const high: Typed = { d: { openingMm: 12, measuredAt: 'front' } };
    expect(textOf(studied(RAISE, report('d', high)), RAISE)).toMatch(/^No: /);
    expect(textOf(studied(TOLD, report('d', high)), TOLD)).toContain('may stay at 12.0 mm');
  });

  it('tells what lowering costs at an opening the study itself answered for', () => {
    const e4 = D.governed.findIndex(({ id }) => id === 'E4');
    const text = textOf(studied(LOWER, D), LOWER);
    const told = D.curve.filter(({ frontMm }) => text.includes(formatBoth(frontMm, 'mm')));
    expect(told).toHaveLength(1);
    expect(told[0].frontMm).toBeLessThan(D.present.frontMm);
    expect(text).toContain(`${Math.abs(told[0].notes[e4]!.fromPresentCents).toFixed(1)} cents`);
    expect(text).toContain(`to ${Math.round(100 * told[0].ventShare)} %`);
    const loses = decibelsBetween(told[0].notes[e4]!.heightRatio, D.present.notes[e4]!.heightRatio);
    const bound = Number(/loses less than (\d\.\d) dB/.exec(text)![1]);
    expect(loses).toBeLessThan(bound);
    expect(bound - loses).toBeLessThanOrEqual(0.1);
  });

  it('tells below which height the D key’s arm holds others down', () => {
    const [first] = D.holdsDown;
    const text = textOf({ ...studied(LEANS, D), view: 'links' }, LEANS);
    expect(text).toContain(`below ${formatBoth(first.belowMm, 'mm')}`);
    expect(text).toContain(first.drivenName);
    const low = report('d', { d: { openingMm: 6, measuredAt: 'front' } });
    expect(textOf({ ...studied(LEANS, low), view: 'links' }, LEANS)).toContain('already');
  });

  /** The story at a card, with height and leaks compared. */
  const compared = (card: number, fingeringId = 'E4', d: StudyReport = D): BenchState => {
    const before = studied(card, d);
    const asked = { ...REGULATION_REQUESTS['height or leak'], fingeringId };
    const beside = answerArrived(
      before.leaks.beside,
      0,
      before.hornId,
      answerRegulation('height or leak', asked),
    );
    return { ...before, leaks: { ...askedAbout(before.leaks, fingeringId), beside } };
  };

  it('tells height or leak as the page of leaks does, and what is done first', () => {
    const text = textOf(compared(LEAK), LEAK);
    expect(text).toContain(heightOrLeakSentence(answerRegulation('height or leak'), 'low E'));
    expect(text).toContain('A tuner would not tell');
    expect(text).toMatch(/So seals are checked first, and heights judged after\.$/);
    expect(textOf(compared(LEAK, 'G4'), LEAK)).toMatch(/^For G4, /);
  });

  it('waits until height and leaks have been compared for the note asked about', () => {
    const other = compared(LEAK, 'G4');
    const asked = { ...other, leaks: askedAbout(other.leaks, 'E4') };
    expect(textOf(asked, LEAK)).not.toMatch(/\d/);
  });

  it('sends to the seals first in the end, where the comparison does, and the key up for its pitch', () => {
    const text = textOf(compared(TOLD), TOLD);
    expect(text).toMatch(
      /^Seals first: that is where the stuffiness is looked for\. Then the D key goes up for its pitch/,
    );
  });

  it('tells which keys may come down and how the D key goes, by the proposal’s own report', () => {
    const loaded = loadHorn(ALTO);
    if (!loaded.ok) throw new Error(loaded.issues[0].message);
    const proposal = reportProposal(loaded.value, { air: makeAirColumn({ mouthpieceC: 26.85 }), a4Hz: 440 });
    const before = atCard(ALL);
    const answer = answerArrived(before.proposal.answer, 0, before.hornId, proposal);
    const state = { ...before, proposal: { ...before.proposal, answer } };
    const text = textOf(state, ALL);
    const down = proposal.keys.filter(({ moveMm }) => moveMm < 0);
    expect(down.length).toBeGreaterThan(0);
    for (const { name } of down.slice(0, 3)) expect(text).toContain(name);
    const key = proposal.keys.find(({ pad }) => pad === 'd')!;
    expect(text).toContain(`The D key goes to ${formatBoth(key.proposedMm, 'mm')}. ${plain(key.why)}`);
    const told = { ...studied(TOLD, D), proposal: state.proposal };
    expect(textOf(told, TOLD)).toContain(`to ${formatBoth(key.proposedMm, 'mm')}, not down`);
    const none = { ...proposal, keys: proposal.keys.map((k) => ({ ...k, moveMm: Math.max(k.moveMm, 0) })) };
    const still = answerArrived(before.proposal.answer, 0, before.hornId, none);
    expect(textOf({ ...state, proposal: { ...state.proposal, answer: still } }, ALL)).toContain(
      'none may come down',
    );
  });

  it('follows the unit of the bench', () => {
    const inches: BenchState = { ...studied(VENTS, D), unit: 'thou' };
    expect(textOf(inches, VENTS)).toContain(formatBoth(D.present.frontMm, 'thou'));
  });

  it('has a first and a last card, and stays on them', () => {
    const state = atCard(0);
    expect(makeStoryView(state, -3)).toMatchObject({ card: 0, isFirst: true, isLast: false });
    expect(makeStoryView(state, 99)).toMatchObject({ card: STORY.length - 1, isLast: true });
  });
});
