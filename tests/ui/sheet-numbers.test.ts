import { describe, expect, it } from 'vitest';
import {
  makeAirColumn,
  standingPad,
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
import { shareOf, standingWorth, type FourReadings } from '../../src/ui/state/standing-worth.ts';
import { demoHorn } from '../acoustics/demo-horns.ts';
import { onTheBench, preparedSheet } from './demo.ts';

const contents = onTheBench('alto');
const { horn, setup }: { horn: Horn; setup: Setup } = demoHorn('alto');
const NONE: FourReadings = { opening: 0, holeRadius: 0, padRadius: 0, hingeDistance: 0 };
const worth = (id: string, readings: Partial<FourReadings>, at = setup) =>
  standingWorth({ horn, setup: at }, id, () => ({ ...NONE, ...readings }));

/** A change worked out twice differs by rounding only. */
const ROUNDING = 1e-12;

describe('the ± of a standing key', () => {
  it('is nothing where every reading is exact', () => {
    expect(worth('e', {})).toMatchObject({ frontPlusMinus: 0, sharePlusMinus: 0 });
  });

  it('is a front reading’s own ± at the front, and what that moves vent share by', () => {
    const { frontPlusMinus, sharePlusMinus } = worth('e', { opening: 0.2e-3 });
    expect(frontPlusMinus).toBeCloseTo(0.2e-3, 12);
    const lower = shareOf({ horn, setup: withOpening(setup, 'e', { at: 'front', height: 7.8e-3 }) }, 'e');
    expect(Math.abs(sharePlusMinus! - (shareOf({ horn, setup }, 'e') - lower))).toBeLessThan(ROUNDING);
  });

  it('adds independent readings as squares', () => {
    const parts = (['opening', 'holeRadius', 'padRadius', 'hingeDistance'] as const).map(
      (name) => worth('e', { [name]: 0.1e-3 }).sharePlusMinus!,
    );
    const all = worth('e', { opening: 1e-4, holeRadius: 1e-4, padRadius: 1e-4, hingeDistance: 1e-4 });
    expect(Math.abs(all.sharePlusMinus! - Math.hypot(...parts))).toBeLessThan(ROUNDING);
    for (const part of parts) expect(part).toBeGreaterThan(0);
  });

  it('of a key that a link rules is the driver’s reading’s, by the link’s ratio', () => {
    const low = withOpening(setup, 'a', { at: 'front', height: 4e-3 });
    const { ruledBy } = standingPad(horn, low, 'bis');
    expect(ruledBy!.driver).toBe('a');
    const { ratio } = horn.keywork.links.find((l) => l.driver === 'a' && l.driven === 'bis')!;
    expect(worth('bis', { opening: 0.1e-3 }, low).frontPlusMinus).toBeCloseTo(ratio! * 0.1e-3, 9);
  });

  it('scales up a smaller try where the key could not stand with the whole of it', () => {
    const wide = worth('e', { hingeDistance: 6e-3 });
    const part = worth('e', { hingeDistance: 3e-3 });
    expect(wide.sharePlusMinus! / part.sharePlusMinus!).toBeCloseTo(2, 9);
    expect(worth('e', { hingeDistance: 1 }).sharePlusMinus).toBeNull();
  });
});

describe('the sheet’s numbers', () => {
  it('are the core’s, as found, as proposed and as set', () => {
    const changed = withSet(withProposed(contents, 'e', 9), 'a', { mm: 4.5, at: 'front' });
    const { keys } = makeSheetReport(preparedSheet(changed));
    const of = (pad: string) => keys.find((k) => k.pad === pad)!;
    const shareWith = (key: string, mm: number, id: string): number =>
      shareOf({ horn, setup: withOpening(setup, key, { at: 'front', height: mm / 1000 }) }, id);
    expect(of('e').asFound.ventShare).toBe(shareOf({ horn, setup }, 'e'));
    expect(of('e').proposed.ventShare).toBe(shareWith('e', 9, 'e'));
    expect(of('e').asSet).toEqual(of('e').asFound);
    expect(of('bis').asSet.ventShare).toBe(shareWith('a', 4.5, 'bis'));
    expect(of('bis').asSet.ruledBy!.driverName).toBe('A');
    expect(of('bis').proposed.ruledBy).toBeNull();
  });

  it('find where height stops helping as the study does, on the horn as it was set', () => {
    const air = makeAirColumn({ mouthpieceC: 26.85 });
    const changed = preparedSheet(withSet(contents, 'e', { mm: 9.5, at: 'front' }));
    const wanted = studyVenting(horn, withOpening(setup, 'e', { at: 'front', height: 9.5e-3 }), 'e', air);
    const got = findEnough(changed, 'e');
    if (wanted.diminishingReturn.kind !== 'reached' || got.kind !== 'reached')
      throw new Error('has an answer');
    expect(got.frontMm).toBe(wanted.diminishingReturn.at.pose.front / 1e-3);
    const { low, high } = wanted.returnSpread;
    expect(got.plusMinusMm).toBeCloseTo(500 * (high! - low!), 9);
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
