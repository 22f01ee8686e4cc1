import { describe, expect, it } from 'vitest';
import { findContradictions, linkBudgets } from '../../src/acoustics/index.ts';
import { reportLinks, type LinkReport } from '../../src/documents/links-report.ts';
import { linkedHorn, lostMotionOf } from '../../src/documents/lost-motion.ts';
import { regulationFacts } from '../../src/documents/regulation-facts.ts';
import { loadHorn, type LoadedHorn } from '../../src/documents/to-acoustics.ts';
import { demoDocument } from '../acoustics/demo-horns.ts';
import { LONG_ROUNDING, relative } from '../acoustics/tolerances.ts';

const MM = 1e-3;

/** The demo alto with one key's front read otherwise. */
function withFront(pad: string, openingMm: number): LoadedHorn {
  const { horn, setup } = demoDocument('alto');
  const keys = setup.keys.map((key) =>
    key.pad === pad ? { ...key, openingMm, measuredAt: 'front' as const } : key,
  );
  const loaded = loadHorn({ horn, setup: { ...setup, keys } });
  if (!loaded.ok) throw new Error(loaded.issues[0].message);
  return loaded.value;
}

const report = (loaded: LoadedHorn) => reportLinks(loaded, regulationFacts(loaded));
const onto = (links: readonly LinkReport[], driver: string, driven: string): LinkReport =>
  links.find((link) => link.driver === driver && link.driven === driven)!;

const loaded = withFront('d', 6);
const raised = withFront('d', 9.5);

describe('how sure it is what a link allows and loses', () => {
  it('is told of every link whose ratio is known, and of no other', () => {
    for (const link of report(loaded).links) {
      expect(link.allowsBudget === null).toBe(link.travelRatio === null);
      expect(link.lostAtFrontBudget === null).toBe(link.travelRatio === null);
      if (link.allowsBudget !== null) expect(link.allowsBudget.plusMinus).toBeGreaterThan(0);
    }
  });

  it('is the ± that lost motion has in the key study and on the player’s sheet', () => {
    const late = lostMotionOf(loaded, raised);
    expect(late.length).toBeGreaterThan(0);
    for (const { driver, driven, lostPlusMinusMm } of late) {
      const { lostAtFrontBudget } = onto(report(raised).links, driver, driven);
      expect(relative(lostAtFrontBudget!.plusMinus, lostPlusMinusMm)).toBeLessThan(LONG_ROUNDING);
    }
  });

  it('is the ± of readings that cannot both hold', () => {
    const found = findContradictions(linkedHorn(loaded, regulationFacts(loaded)));
    expect(found.length).toBeGreaterThan(0);
    for (const { driver, driven, budgets } of found) {
      const { links, pads } = report(loaded);
      const { allowsBudget } = onto(links, driver, driven);
      const { belowBudget } = pads.find(({ pad }) => pad === driven)!;
      expect(relative(allowsBudget!.plusMinus, budgets.allows.plusMinus / MM)).toBeLessThan(LONG_ROUNDING);
      expect(relative(belowBudget!.plusMinus, budgets.apart.plusMinus / MM)).toBeLessThan(LONG_ROUNDING);
    }
  });

  it('goes with the touch’s own travel', () => {
    for (const link of report(loaded).links) {
      const { lostAtFrontMm, lostAtTouchMm, lostAtFrontBudget, lostAtTouchBudget } = link;
      if (lostAtTouchMm === null || lostAtFrontMm === null || lostAtFrontMm === 0) continue;
      const touch = lostAtTouchMm / lostAtFrontMm;
      expect(relative(lostAtTouchBudget!.plusMinus, touch * lostAtFrontBudget!.plusMinus)).toBeLessThan(
        LONG_ROUNDING,
      );
    }
  });

  it('is nothing of the motion that a ruling arm loses: none, whatever was read', () => {
    const facts = regulationFacts(loaded);
    const budgets = linkBudgets(linkedHorn(loaded, facts));
    const ruling = report(loaded).links.filter(({ rules }) => rules);
    expect(ruling.length).toBeGreaterThan(0);
    for (const { driver, driven } of ruling) {
      const link = facts.horn.keywork.links.find((l) => l.driver === driver && l.driven === driven)!;
      expect(budgets(link)!.lost.plusMinus).toBeLessThan(LONG_ROUNDING);
    }
  });
});
