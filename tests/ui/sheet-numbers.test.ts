import { describe, expect, it } from 'vitest';
import {
  DEFAULT_PAD_MODEL,
  makeAirColumn,
  standingThere,
  studyVenting,
  withOpening,
  type Horn,
  type Setup,
} from '../../src/acoustics/index.ts';
import { withFoundLengths, withProposed, withSet } from '../../src/ui/state/key-lengths.ts';
import { findEnough, makeSheetReport } from '../../src/ui/state/sheet-numbers.ts';
import {
  enoughArrived,
  enoughParts,
  isKnown,
  makeSheetState,
  nextUnknown,
} from '../../src/ui/state/sheet-state.ts';
import { plusMinusOf } from '../../src/documents/plus-minus.ts';
import { demoHorn } from '../acoustics/demo-horns.ts';
import { onTheBench, preparedSheet } from './demo.ts';

const contents = onTheBench('alto');
const { horn, setup }: { horn: Horn; setup: Setup } = demoHorn('alto');
const shareOf = ({ setup: as }: { setup: Setup }, id: string): number =>
  standingThere(horn, as, id, DEFAULT_PAD_MODEL).ventShare;

describe('the sheet’s numbers', () => {
  it('are the core’s, as found, as proposed and as set', () => {
    const changed = withSet(withProposed(contents, 'e', 9), 'a', { mm: 4.5, at: 'front' });
    const { keys } = makeSheetReport(preparedSheet(changed));
    const of = (pad: string) => keys.find((k) => k.pad === pad)!;
    const shareWith = (key: string, mm: number, id: string): number =>
      shareOf({ setup: withOpening(setup, key, { at: 'front', height: mm / 1000 }) }, id);
    expect(of('e').asFound.plusMinusMm).toBeCloseTo(0.2, 9);
    expect(of('e').asFound.ventShare).toBe(shareOf({ setup }, 'e'));
    expect(of('e').proposed.ventShare).toBe(shareWith('e', 9, 'e'));
    expect(of('e').asSet).toEqual(of('e').asFound);
    expect(of('bis').asSet.ventShare).toBe(shareWith('a', 4.5, 'bis'));
    expect(of('bis').asSet.ruledBy!.driverName).toBe('A');
    expect(of('bis').proposed.ruledBy).toBeNull();
  });

  it('find where height stops helping as the study does, on the horn as it was set', () => {
    const air = makeAirColumn({ mouthpieceC: 26.85 });
    const changed = preparedSheet(withSet(contents, 'e', { mm: 9.5, at: 'front' }));
    const wanted = studyVenting(horn, withOpening(setup, 'e', { at: 'front', height: 9.5e-3 }), 'e', air, {
      plusMinus: plusMinusOf(changed.loaded.asSet.loaded),
    });
    const got = findEnough(changed, 'e');
    if (wanted.diminishingReturn.kind !== 'reached' || got.kind !== 'reached')
      throw new Error('has an answer');
    expect(got.frontMm).toBe(wanted.diminishingReturn.at.pose.front / 1e-3);
    expect(got.plusMinusMm).toBe(wanted.budgets.diminishingReturn!.plusMinus / 1e-3);
    expect(got.plusMinusMm).toBeGreaterThan(0.1);
  });
});

describe('what is worked out again', () => {
  const all = ['e', 'bis', 'g-sharp', 'low-b', 'g'].reduce(
    (sheet, pad) =>
      enoughArrived(sheet, pad, {
        report: { kind: 'none in reach', reason: '' },
        parts: enoughParts(contents, pad),
      }),
    makeSheetState('demo-alto'),
  );
  const stale = (changed: typeof contents): string[] =>
    ['e', 'bis', 'g-sharp', 'low-b', 'g'].filter((pad) => !isKnown(all, changed, pad));

  it('is the key that changed and those it may rule through links, no others', () => {
    expect(stale(contents)).toEqual([]);
    expect(stale(withFoundLengths(contents, 'e', { openingMm: 7.8 }))).toEqual(['e', 'bis', 'g-sharp']);
    expect(stale(withSet(contents, 'g', { mm: 7, at: 'front' }))).toEqual(['g']);
    expect(stale(withProposed(contents, 'g', 7))).toEqual([]);
  });

  it('is everything when a key is nearly shut, and again when that was a slip', () => {
    expect(stale(withFoundLengths(contents, 'd', { openingMm: 0.2 }))).toHaveLength(5);
  });

  it('is everything when the day changes', () => {
    const { visit } = contents;
    const warm = { ...contents, visit: { ...visit, document: { ...visit.document, airC: 30 } } };
    expect(stale(warm)).toHaveLength(5);
  });

  it('begins with the key in hand', () => {
    const fresh = makeSheetState('demo-alto');
    expect(nextUnknown(fresh, contents, 'g')).toBe('g');
    expect(nextUnknown(all, contents, 'g')).toBe('low-b-flat');
  });
});

describe('other keys’ openings', () => {
  it('move a key’s point of diminishing return by less than the bench can read', () => {
    const before = findEnough(preparedSheet(contents), 'b');
    const after = findEnough(preparedSheet(withSet(contents, 'g', { mm: 7.2, at: 'front' })), 'b');
    if (before.kind !== 'reached' || after.kind !== 'reached') throw new Error('has an answer');
    const READ_MM = 0.05;
    expect(Math.abs(after.frontMm - before.frontMm)).toBeLessThan(READ_MM);
  });
});
