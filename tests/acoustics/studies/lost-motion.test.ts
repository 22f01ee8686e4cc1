import { describe, expect, it } from 'vitest';
import {
  askedBudgets,
  askOpening,
  compareLostMotion,
  findContradictions,
  heldDownBy,
  holdsDownFrom,
  linkName,
  studyLinks,
  withOpening,
  type Horn,
  type LinkedHorn,
  type LostMotion,
  type Setup,
} from '../../../src/acoustics/index.ts';
import { plusMinusOf } from '../../../src/documents/plus-minus.ts';
import { demoHorn } from '../demo-horns.ts';
import { LONG_ROUNDING, relative } from '../tolerances.ts';

const loaded = demoHorn('alto');
const { horn, setup } = loaded;
const plusMinus = plusMinusOf(loaded);
const PAPER = 0.025e-3;
const AUXILIARY = 'f-sharp-auxiliary';
/** Central differences over a hundredth of a ±: lost motion is all but straight in every reading. */
const SLOPE = 1e-6;

const found: LinkedHorn = { horn, setup, screws: [], plusMinus };
const front = (id: string, mm: number, on: Setup = setup): Setup =>
  withOpening(on, id, { at: 'front', height: mm * 1e-3 });
const linkOf = (links: readonly LostMotion[], driver: string, driven = AUXILIARY): LostMotion =>
  links.find(({ link }) => link.driver === driver && link.driven === driven)!;

function withRatio(on: Horn, driver: string, driven: string, more: number): Horn {
  const links = on.keywork.links.map((link) =>
    link.driver === driver && link.driven === driven ? { ...link, ratio: link.ratio! + more } : link,
  );
  return { ...on, keywork: { ...on.keywork, links } };
}

/** The root of the sum of squares of what each reading’s ± does, by moving one after another. */
function movedByHand(answer: (on: LinkedHorn) => number, on: LinkedHorn): number {
  const step = 0.01;
  const effects = [...on.setup.keys].map(([id, { opening }]) => {
    const by = plusMinus.keys.get(id)!.opening! * step;
    const at = (way: number): number =>
      answer({ ...on, setup: withOpening(on.setup, id, { ...opening, height: opening.height + way * by }) });
    return (at(1) - at(-1)) / (2 * step);
  });
  const ofLinks = on.horn.keywork.links.flatMap(({ driver, driven }) => {
    const by = plusMinus.links!.get(linkName(driver, driven));
    if (by === undefined) return [];
    const at = (way: number): number =>
      answer({ ...on, horn: withRatio(on.horn, driver, driven, way * by * step) });
    return [(at(1) - at(-1)) / (2 * step)];
  });
  return Math.hypot(...effects, ...ofLinks);
}

describe('the motion that links lose', () => {
  it('is what the link study finds', () => {
    const after = {
      ...found,
      setup: front('d', 9),
      screws: [{ driver: 'e', driven: AUXILIARY, left: PAPER }],
    };
    const study = studyLinks(horn, after.setup, { screws: after.screws });
    for (const { link, after: lost, allows } of compareLostMotion(found, after)) {
      const known = study.links.find(
        ({ link: { driver, driven } }) => driver === link.driver && driven === link.driven,
      )!;
      expect(relative(lost + 1, known.lostAtFront! + 1)).toBeLessThan(LONG_ROUNDING);
      expect(relative(allows, known.allows!)).toBeLessThan(LONG_ROUNDING);
    }
  });

  it('grows by what a driver alone is raised by, whatever the ratio', () => {
    const raised = compareLostMotion(found, { ...found, setup: front('d', 9) });
    const { before, after, budgets } = linkOf(raised, 'd');
    expect(relative(after - before, 1e-3)).toBeLessThan(LONG_ROUNDING);
    expect(budgets.more.readings.map(({ reading }) => `${reading.kind} of ${reading.id}`)).not.toContain(
      `linkRatio of ${linkName('d', AUXILIARY)}`,
    );
    for (const other of ['e', 'f']) {
      const kept = linkOf(raised, other);
      expect(kept.after).toBe(kept.before);
      expect(kept.budgets.more.plusMinus).toBe(0);
    }
  });

  it('is as sure as its readings, moved one by one', () => {
    const raised = { ...found, setup: front('d', 9) };
    for (const driver of ['d', 'e', AUXILIARY]) {
      const driven = driver === AUXILIARY ? 'bis' : AUXILIARY;
      const { after } = linkOf(compareLostMotion(found, raised), driver, driven).budgets;
      const byHand = movedByHand((on) => linkOf(compareLostMotion(on, on), driver, driven).after, raised);
      expect(relative(after.plusMinus, byHand)).toBeLessThan(SLOPE);
    }
  });

  it('grows in the other drivers too where one brings their driven pad down', () => {
    const lowered = compareLostMotion(found, { ...found, setup: front('d', 6) });
    expect(linkOf(lowered, 'd').after).toBe(0);
    for (const other of ['e', 'f']) {
      expect(linkOf(lowered, other).after).toBeGreaterThan(linkOf(lowered, other).before);
    }
  });
});

describe('readings of linked pads', () => {
  it('do not contradict each other where every pad stands at its own stop', () => {
    expect(findContradictions(found)).toEqual([]);
  });

  it('contradict each other by what a pad was read above its arm, as sure as those readings', () => {
    const on = { ...found, setup: front('d', 7.2) };
    const apartOf = (there: LinkedHorn): number => {
      const [{ read, allows }] = findContradictions(there);
      return read - allows;
    };
    const contradictions = findContradictions(on);
    // Bis and G♯ stand lower with the auxiliary, which is a consequence and no reading of its own.
    expect(contradictions.map(({ driver, driven }) => [driver, driven])).toEqual([['d', AUXILIARY]]);
    const [{ read, driverFront, allows, budgets }] = contradictions;
    expect(relative(read, 7.2e-3)).toBeLessThan(LONG_ROUNDING);
    expect(relative(driverFront, 7.2e-3)).toBeLessThan(LONG_ROUNDING);
    expect(relative(allows, 0.927 * 7.2e-3)).toBeLessThan(LONG_ROUNDING);
    expect(relative(budgets.apart.plusMinus, movedByHand(apartOf, on))).toBeLessThan(SLOPE);
    expect(relative(budgets.read.plusMinus, plusMinus.keys.get(AUXILIARY)!.opening!)).toBeLessThan(
      LONG_ROUNDING,
    );
  });
});

describe('where an arm begins to hold a pad down', () => {
  it('is where the venting study has it, and where the link loses nothing', () => {
    for (const setupThere of [setup, front('d', 7), front(AUXILIARY, 8)]) {
      const on = { ...found, setup: setupThere };
      for (const driver of ['d', AUXILIARY, 'a']) {
        const from = holdsDownFrom(on, driver);
        const known = heldDownBy(horn, setupThere, driver);
        expect(from.map(({ driven }) => driven)).toEqual(known.map(({ driven }) => driven));
        from.forEach(({ driven, below }, i) => {
          expect(relative(below, known[i].below)).toBeLessThan(LONG_ROUNDING);
          const just = {
            ...on,
            setup: withOpening(setupThere, driver, { at: 'front', height: below + 1e-9 }),
          };
          expect(linkOf(compareLostMotion(just, just), driver, driven).after).toBeLessThan(1e-8);
        });
      }
    }
  });

  it('is as sure as its readings, and says which other arm holds the pad anyway', () => {
    const on = { ...found, setup: front('e', 7) };
    const [from] = holdsDownFrom(on, 'd');
    expect(from).toMatchObject({ driven: AUXILIARY, heldBy: 'e' });
    expect(holdsDownFrom(found, 'd')[0].heldBy).toBeNull();
    const byHand = movedByHand((there) => holdsDownFrom(there, 'd')[0].below, on);
    expect(relative(from.budget.plusMinus, byHand)).toBeLessThan(SLOPE);
  });
});

describe('how sure it is what an asked opening needs', () => {
  const screws = [
    { driver: AUXILIARY, driven: 'bis', left: 4 * PAPER },
    { driver: 'e', driven: AUXILIARY, left: -4 * PAPER },
  ];
  const low: LinkedHorn = { ...found, setup: front('d', 6, front('f', 6, front('a', 4))), screws };
  const ask = (on: LinkedHorn) => askOpening(on.horn, on.setup, 'bis', 4.8e-3, on.screws);
  const there = ask(low);
  const budgets = askedBudgets(low, there);

  it('of every stop on the way is what moving each reading gives', () => {
    expect(there.stops.length).toBeGreaterThan(4);
    there.stops.forEach(({ pad }, i) => {
      const stop = (on: LinkedHorn) => ask(on).stops.find((s) => s.pad === pad)!;
      const { needed, raise } = budgets.stops[i];
      const lacks = movedByHand((on) => stop(on).needed - stop(on).ownFront, low);
      expect(relative(raise.plusMinus, lacks)).toBeLessThan(SLOPE);
      const needs = movedByHand((on) => stop(on).needed, low);
      if (pad === 'bis') expect([needs, needed.plusMinus]).toEqual([0, 0]);
      else expect(relative(needed.plusMinus, needs)).toBeLessThan(SLOPE);
    });
  });

  it('of a ratio that would do instead is what moving each reading gives', () => {
    expect(there.ratios.length).toBeGreaterThan(0);
    there.ratios.forEach(({ driver }, i) => {
      const needs = movedByHand((on) => ask(on).ratios.find((r) => r.driver === driver)!.needed, low);
      expect(relative(budgets.ratios[i].plusMinus, needs)).toBeLessThan(SLOPE);
    });
  });
});
