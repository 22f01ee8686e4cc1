import { describe, expect, it } from 'vitest';
import type { BenchContents } from '../../src/documents/bench-contents.ts';
import { heardIn } from '../../src/documents/proposal-rows.ts';
import type { Take } from '../../src/documents/pitch-log.ts';
import { loadHorn, type HornAndSetup } from '../../src/documents/to-acoustics.ts';
import { makeProposalFollower } from '../../src/ui/shell/follow-proposal.ts';
import { makeRegulationFollower } from '../../src/ui/shell/follow-regulation.ts';
import type { PhysicsClient } from '../../src/ui/shell/physics-client.ts';
import { makeBenchState, type BenchState } from '../../src/ui/state/bench-state.ts';
import { makeStore } from '../../src/ui/state/bench-store.ts';
import { foundDocuments, withProposed, withSet } from '../../src/ui/state/key-lengths.ts';
import {
  playedInStanding,
  standingDocuments,
  startSentence,
  toldOver,
} from '../../src/ui/state/stands-now.ts';
import { makeLeaksView } from '../../src/ui/views/regulation/leaks/leaks-view.model.ts';
import { makeProposalView } from '../../src/ui/views/proposal/proposal-view.model.ts';
import { answerProposal } from './demo-proposal.ts';
import { answerRegulation, REGULATION_REQUESTS } from './demo-regulation.ts';
import { onTheBench } from './demo.ts';

/** Millimetres as they were typed. */
const DIGITS = 6;

const found = onTheBench('alto');
const set = (contents: BenchContents, pad: string, mm: number): BenchContents =>
  withSet(contents, pad, { mm, at: 'front' });
const worked = set(withProposed(found, 'e', 9.3), 'd', 9.1);

const openingOf = ({ setup }: HornAndSetup, pad: string) => {
  const { openingMm, measuredAt } = setup.keys.find((key) => key.pad === pad)!;
  return [openingMm, measuredAt];
};

/** What leaks, height beside leak, the map of leaks and the proposal are asked of. */
function askedOf(contents: BenchContents): HornAndSetup[] {
  const asked: HornAndSetup[] = [];
  const client: Pick<PhysicsClient, 'askRegulation' | 'askProposal'> = {
    askRegulation: ({ documents }) => asked.push(documents),
    askProposal: ({ standing }) => asked.push(standing),
  };
  for (const view of ['leaks', 'proposal'] as const) {
    const store = makeStore<BenchState>({ ...makeBenchState([], contents), view });
    makeRegulationFollower(store, client as PhysicsClient).follow();
    makeProposalFollower(store, client as PhysicsClient).follow();
  }
  return asked;
}

describe('the horn as it stands', () => {
  it('is the horn as found until something is set, whatever is proposed', () => {
    const proposed = withProposed(found, 'd', 9);
    expect(standingDocuments(proposed)).toBe(foundDocuments(proposed));
    expect(playedInStanding(proposed)).toBe('as found');
    expect(startSentence(proposed)).toBe('Starts from the openings as found.');
  });

  it('has what was set over what was found, and can be read', () => {
    const standing = standingDocuments(worked);
    expect(openingOf(standing, 'd')).toEqual([9.1, 'front']);
    expect(openingOf(standing, 'e')).toEqual(openingOf(foundDocuments(worked), 'e'));
    expect(loadHorn(standing).ok).toBe(true);
    expect(standingDocuments(worked)).toBe(standing);
    expect(playedInStanding(worked)).toBe('as set');
  });

  it('is told as found, as proposed until all of that is set, and then as set', () => {
    expect(toldOver(found).told).toBe('as found');
    const proposed = withProposed(withProposed(found, 'd', 9), 'e', 9.3);
    expect(toldOver(proposed)).toMatchObject({ told: 'as proposed', over: proposed.proposed.document });
    expect([...toldOver(proposed).proposed]).toEqual(['d', 'e']);
    const half = set(proposed, 'd', 9);
    expect(toldOver(half).told).toBe('as proposed');
    const fronts = (contents: BenchContents) =>
      Object.fromEntries(toldOver(contents).over.keys.map(({ pad, openingMm }) => [pad, openingMm]));
    expect(fronts(half)).toEqual({ d: 9, e: 9.3 });
    expect(toldOver(half).over).toBe(toldOver(half).over);
    const whole = set(half, 'e', 9.3);
    expect(toldOver(whole)).toMatchObject({ told: 'as set', over: whole.asSet.document });
    expect([...toldOver(whole).proposed]).toEqual([]);
    expect(toldOver(whole).frontsMm).toEqual({ d: 9, e: 9.3 });
    expect(toldOver(set(found, 'd', 9)).told).toBe('as set');
    expect(toldOver(withProposed(whole, 'e', 8.8)).told).toBe('as proposed');
    expect(fronts(withProposed(whole, 'e', 8.8))).toEqual({ d: 9, e: 8.8 });
    // An opening is read to 0.2 mm: within that it is set as proposed, and told as it was set.
    expect(toldOver(set(whole, 'e', 9.1)).told).toBe('as set');
    expect(fronts(set(whole, 'e', 9.1))).toEqual({ d: 9, e: 9.1 });
    expect(toldOver(set(whole, 'e', 9.05)).told).toBe('as proposed');
    expect([...toldOver(set(whole, 'e', 9.05)).proposed]).toEqual(['e']);
  });

  it('with a pad of another thickness proposed is open until that pad is in', () => {
    const pads = (contents: BenchContents, role: 'proposed' | 'asSet'): BenchContents => ({
      ...contents,
      [role]: {
        ...contents[role],
        document: { ...contents[role].document, keys: [{ pad: 'e', padThicknessMm: 4.6 }] },
      },
    });
    expect(toldOver(pads(found, 'proposed')).told).toBe('as proposed');
    expect(toldOver(pads(pads(found, 'proposed'), 'asSet')).told).toBe('as set');
  });

  it('is what leaks, height beside leak, the map and the proposal start from', () => {
    const asked = askedOf(worked);
    expect(asked).toHaveLength(4);
    for (const documents of asked) expect(openingOf(documents, 'd')).toEqual([9.1, 'front']);
    for (const documents of askedOf(found)) expect(documents).toBe(foundDocuments(found));
  });

  it('is said where they stand: which keys are as set, the others as found', () => {
    const start = 'Starts from D as set, the other keys as found.';
    const state = makeBenchState([], worked);
    expect(makeLeaksView(state).start).toBe(start);
    expect(makeProposalView(state).start).toBe(start);
    expect(startSentence(set(worked, 'e', 8.5))).toContain('from D and E as set');
    const keys = found.asFound.document.keys.map(({ pad }) => pad);
    const five = keys.slice(0, 5).reduce((contents, pad) => set(contents, pad, 8), found);
    expect(startSentence(five)).toBe('Starts from 5 keys as set, the other keys as found.');
    expect(startSentence(keys.reduce((contents, pad) => set(contents, pad, 8), found))).toBe(
      'Starts from the openings as set.',
    );
  });
});

describe('what starts from the horn as it stands', () => {
  const standing = standingDocuments(worked);

  it('tells a key’s height from where it was set', () => {
    const asked = { ...REGULATION_REQUESTS['height or leak'], fingeringId: 'E4' };
    const height = (documents: HornAndSetup) =>
      answerRegulation('height or leak', { ...asked, documents }).heights.find(({ pad }) => pad === 'd')!;
    const [was, is] = [height(foundDocuments(worked)), height(standing)];
    expect(is.foundMm).toBeCloseTo(9.1, DIGITS);
    expect(is.foundMm - is.enoughMm).toBeGreaterThan(was.foundMm - was.enoughMm);
  });

  it('proposes from where a key was set, and leaves a locked one there', () => {
    const d = answerProposal({ standing, locked: ['d'] }).keys.find(({ pad }) => pad === 'd')!;
    expect(d.foundMm).toBeCloseTo(9.1, DIGITS);
    expect(d.proposedMm).toBeCloseTo(9.1, DIGITS);
    expect(d.why).toBe('Locked: left where it stands.');
  });

  it('takes for its pitch what was played on the horn as it stands, and no other', () => {
    const take = (setup: Take['setup'], cents: number): Take => ({
      fingering: 'E4',
      cents,
      setup,
      heard: 'tuner',
    });
    const takes = [take('as found', -12), take('as set', 3)];
    expect(heardIn(takes, 'as set').get('E4')!.cents).toBe(3);
    expect(heardIn(takes).get('E4')!.cents).toBe(-12);
  });
});
