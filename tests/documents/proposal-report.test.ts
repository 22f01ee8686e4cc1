import { describe, expect, it } from 'vitest';
import { makeAirColumn, MODEL_CENTS, studyVenting, withOpening } from '../../src/acoustics/index.ts';
import { compareLoaded } from '../../src/documents/compare-loaded.ts';
import { plusMinusOf } from '../../src/documents/plus-minus.ts';
import { PREFERENCES } from '../../src/documents/proposal-choices.ts';
import { reportProposal } from '../../src/documents/proposal-report.ts';
import { loadHorn, type LoadedHorn } from '../../src/documents/to-acoustics.ts';
import { demoHorn } from '../acoustics/demo-horns.ts';
import { POLISHED_CENTS, relative } from '../acoustics/tolerances.ts';

const air = makeAirColumn();
const alto = demoHorn('alto');
const report = reportProposal(alto, { air });
const keyIn = (r: typeof report, pad: string): (typeof report.keys)[number] =>
  r.keys.find((k) => k.pad === pad)!;
const MM = 1e-3;
/** m, and a share: what the quick search of a proposal may differ from a study's, and its ± with it. */
const QUICK_ENOUGH = 0.2e-3;
const QUICK_PLUS_MINUS = 0.15;

/** The alto with some stops put elsewhere, mm at the front. */
function withFronts(loaded: LoadedHorn, frontsMm: Readonly<Record<string, number>>): LoadedHorn {
  const setup = Object.entries(frontsMm).reduce(
    (whole, [pad, mm]) => withOpening(whole, pad, { at: 'front', height: mm * MM }),
    loaded.setup,
  );
  return { ...loaded, setup };
}

describe('a proposal in bench units', () => {
  it('has every pad with a hinge once, from the bell up, each with a reason in a sentence', () => {
    const numbers = report.keys.map(({ number }) => number);
    expect(numbers).toEqual([...numbers].sort((a, b) => a - b));
    expect(numbers).toHaveLength(alto.setup.keys.size);
    for (const { why } of report.keys) expect(why).toMatch(/^[A-Z].*\.$/);
  });

  it('adds up: found and move make proposed, changes are those of the notes', () => {
    for (const { foundMm, moveMm, proposedMm } of report.keys)
      expect(foundMm + moveMm).toBeCloseTo(proposedMm, 9);
    for (const { foundCents, proposedCents, changeCents, changePlusMinusCents } of report.notes) {
      expect(proposedCents - foundCents).toBeCloseTo(changeCents, 9);
      if (Math.abs(changeCents) > 0.01) expect(changePlusMinusCents).toBeGreaterThan(0);
    }
  });

  it('gives a spread’s change with the ± of a difference, not of an absolute', () => {
    expect(report.spread.changePlusMinusCents).toBeLessThan(2);
    expect(report.spread.changeCents).toBeCloseTo(report.spread.proposedCents - report.spread.foundCents, 9);
  });

  it('is as sure of every note’s change as setups side by side are: the proposed openings are meant', () => {
    const meant = new Set(report.keys.filter(({ moveMm }) => moveMm !== 0).map(({ pad }) => pad));
    const setup = {
      ...alto.documents.setup,
      name: 'as proposed',
      keys: alto.documents.setup.keys.map((key) => {
        if (!meant.has(key.pad)) return key;
        const reading = { openingMm: keyIn(report, key.pad).proposedMm, measuredAt: 'front' } as const;
        const openingMm = { origin: 'derived', plusMinusMm: 0 } as const;
        return { ...key, ...reading, readings: { ...key.readings, openingMm } };
      }),
    };
    const read = loadHorn({ horn: alto.documents.horn, setup });
    if (!read.ok) throw new Error(read.issues[0].message);
    const beside = compareLoaded([alto, read.value], { air, a4Hz: 440 });
    for (const { fingering, changeCents, changePlusMinusCents } of report.notes) {
      const d = beside.notes.find((note) => note.fingering === fingering)!.differences[0]!;
      expect(Math.abs(d.cents - changeCents)).toBeLessThan(POLISHED_CENTS);
      expect(Math.abs(d.centsPlusMinus - changePlusMinusCents)).toBeLessThan(POLISHED_CENTS);
    }
    const [, heard] = report.spreadSentence.split('By the pitch of single notes, ');
    expect(heard).toContain('notice');
  });

  it('is as sure of enough as the study of that key is, and of every pitch by itself no better than the model', () => {
    const { keys: known, ...rest } = plusMinusOf(alto);
    const isMeant = (pad: string): boolean => keyIn(report, pad)?.moveMm !== 0;
    const plusMinus = {
      ...rest,
      keys: new Map([...known].map(([id, key]) => [id, isMeant(id) ? { ...key, opening: 0 } : key])),
    };
    for (const pad of ['e', 'g', 'low-c']) {
      const { enoughMm, enoughPlusMinusMm } = keyIn(report, pad);
      const { diminishingReturn, budgets } = studyVenting(alto.horn, reportSetup(report), pad, air, {
        plusMinus,
      });
      if (diminishingReturn.kind === 'none in reach') throw new Error(`${pad} is nowhere enough`);
      expect(Math.abs(enoughMm! * MM - diminishingReturn.at.pose.front)).toBeLessThan(QUICK_ENOUGH);
      const { plusMinus: sure } = budgets.diminishingReturn!;
      expect(relative(enoughPlusMinusMm! * MM, sure)).toBeLessThan(QUICK_PLUS_MINUS);
    }
    for (const { foundPlusMinusCents, proposedPlusMinusCents } of report.notes) {
      expect(foundPlusMinusCents!).toBeGreaterThanOrEqual(MODEL_CENTS);
      expect(proposedPlusMinusCents!).toBeGreaterThanOrEqual(MODEL_CENTS);
    }
    for (const { enoughMm, proposedMm, proposedPlusMinusMm, enoughPlusMinusMm } of report.keys) {
      const isThere = enoughMm !== null && Math.abs(enoughMm - proposedMm) < 0.05;
      expect(proposedPlusMinusMm).toBe(isThere ? enoughPlusMinusMm : null);
    }
  });

  it('names what holds a key', () => {
    const held = reportProposal(alto, { air, mostMm: new Map([['side-f-sharp', 6]]) });
    expect(keyIn(held, 'side-f-sharp')).toMatchObject({ reason: 'reach' });
    expect(keyIn(held, 'side-f-sharp').why).toContain('the most it may open, 6.0 mm (0.236 in)');
    expect(keyIn(held, 'g-sharp')).toMatchObject({ reason: 'link' });
    expect(keyIn(held, 'g-sharp').why).toContain('as far as the arm of F♯ auxiliary lets it');
  });

  it('says locked of a locked key, and that an arm holds a pad when neither may move', () => {
    const low = withFronts(alto, { 'f-sharp-auxiliary': 5 });
    const locked = [...alto.setup.keys.keys()];
    const nothing = reportProposal(low, { air, locked });
    expect(nothing.keys.every(({ reason, moveMm }) => reason === 'locked' && moveMm === 0)).toBe(true);
    expect(nothing.answer).toBe('No key needs to move by more than a reading can tell.');
    expect(nothing.heldApart[0]).toMatch(/^The arm of F♯ auxiliary holds G♯ at 4\.4 mm/);
    expect(nothing.spreadSentence).toContain('no difference that can be shown');
  });

  it('says of a pad under a locked arm that the arm lets it no higher, not that nothing is short', () => {
    const held = reportProposal(alto, { air, locked: ['e', 'f-sharp-auxiliary'] });
    const { reason, why, enoughMm, foundMm } = keyIn(held, 'g-sharp');
    expect(enoughMm! - foundMm).toBeGreaterThan(1);
    expect(reason).toBe('link');
    expect(why).toMatch(
      /^Stays, though under-vented: the arm of F♯ auxiliary lets it no higher; it helps up to 8\.1 ± 0\.\d mm/,
    );
  });

  it('heads a short list of a few keys with them, and a long one with the first three', () => {
    expect(report.answer).toMatch(
      /^Three keys bring \d+ % of the gain if only they move: .*\. \w+ of the \d+ moves bring \d+ %\.$/,
    );
    const nearly = { ...alto, setup: reportSetup(report) };
    const put = reportProposal(withFronts(nearly, { d: 6 }), { air });
    expect(put.answer).toMatch(
      /^One key brings \d+ % of the gain if only it moves: D \+\d\.\d ± \d\.\d mm\.$/,
    );
  });

  it('lists and leads with keys that were read where some were, and says so of the others', () => {
    const { documents } = alto;
    const read = ['d', 'e', 'g'];
    const reportOf = (pads: readonly string[]): typeof report => {
      const keys = documents.setup.keys.map((key) => {
        const origin = pads.includes(key.pad) ? ('measured' as const) : ('template' as const);
        return { ...key, readings: { ...key.readings, openingMm: { origin } } };
      });
      const some = loadHorn({ ...documents, setup: { ...documents.setup, keys } });
      if (!some.ok) throw new Error(some.issues[0].message);
      return reportProposal(some.value, { air });
    };
    const some = reportOf(read);
    expect(some.keys.filter(({ isRead }) => isRead).map(({ pad }) => pad)).toEqual(read);
    expect(some.shortList.length).toBeGreaterThan(0);
    for (const { pad } of some.shortList) expect(read).toContain(pad);
    expect(some.answer).toMatch(
      /^Of the 3 keys read: \w+ keys? brings? \d+ % of the gain .* ± 0\.\d mm\. \w+ moves are of keys not read on this horn: read them to know\.$/,
    );
    const none = reportOf([]);
    expect(none.shortList.length).toBeGreaterThan(0);
    expect(none.answer).toMatch(/^As the example stands, .* ± 1\.5 mm.* No opening was read on this horn: /);
  });

  it('starts from the notes played as found, and says so', () => {
    const takes = [
      { fingering: 'E4', cents: -21, setup: 'as found', heard: 'tuner' },
      { fingering: 'E4', cents: -19, setup: 'as found', heard: 'tuner' },
      { fingering: 'F4', cents: 4, setup: 'as found', heard: 'tuner' },
      { fingering: 'G4', cents: 40, setup: 'as set', heard: 'tuner' },
    ] as const;
    const played = reportProposal(alto, { air, takes });
    expect(played.pitchFrom).toBe('playing');
    expect(played.notes.find(({ fingering }) => fingering === 'E4')!.foundCents).toBeCloseTo(-20, 9);
    expect(played.notes.filter(({ weight }) => weight > 0).map(({ fingering }) => fingering)).toEqual([
      'E4',
      'F4',
    ]);
    expect(played.spread.foundCents).toBeCloseTo(12, 9);
    expect(played.spreadSentence).toContain('12.0 cents as played');
    expect([report.pitchFrom, reportProposal(alto, { air, takes: [] }).answer]).toEqual([
      'model',
      report.answer,
    ]);
  });

  it('bends to what is preferred', () => {
    const [, inTune, low, few] = PREFERENCES.map((prefer) => reportProposal(alto, { air, prefer }));
    const travel = (r: typeof report): number => r.keys.reduce((sum, { proposedMm }) => sum + proposedMm, 0);
    const moves = (r: typeof report): number => r.keys.filter(({ moveMm }) => moveMm !== 0).length;
    expect(inTune.spread.proposedCents).toBeLessThan(report.spread.proposedCents);
    expect(travel(low)).toBeLessThan(travel(report));
    expect(moves(few)).toBeLessThan(moves(report));
  });
});

/** The setup that a report proposes, SI. */
function reportSetup({ keys }: typeof report): LoadedHorn['setup'] {
  return keys.reduce(
    (whole, { pad, proposedMm }) => withOpening(whole, pad, { at: 'front', height: proposedMm * MM }),
    alto.setup,
  );
}
