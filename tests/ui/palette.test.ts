import {
  converter,
  differenceCiede2000,
  filterDeficiencyDeuter,
  filterDeficiencyProt,
  filterDeficiencyTrit,
  wcagContrast,
  wcagLuminance,
} from 'culori';
import { describe, expect, it } from 'vitest';
import { MARKS, paletteOf, SERIES, TEXTS, THEMES } from './palette.ts';

/** WCAG 2.2, success criterion 1.4.3: text of any size. */
const TEXT_RATIO = 4.5;
/** WCAG 2.2, success criterion 1.4.11: marks that carry meaning. */
const MARK_RATIO = 3;
/** CIEDE2000 between any two series for any eye; about 2 is just seen side by side, 10 at a glance (common practice). */
const LEAST_DIFFERENCE = 11;

const rgb = converter('rgb');
const difference = differenceCiede2000();

/** Eyes that lack one kind of cone, simulated as Machado et al. 2009 do at full severity. */
const EYES = {
  all: rgb,
  protan: filterDeficiencyProt(1),
  deutan: filterDeficiencyDeuter(1),
  tritan: filterDeficiencyTrit(1),
} as const;

const pairs = <T>(list: readonly T[]): [T, T][] =>
  list.flatMap((a, i) => list.slice(i + 1).map((b): [T, T] => [a, b]));

describe.each(THEMES)('the palette, %s', (theme) => {
  const palette = paletteOf(theme);
  const tooWeak = (table: Readonly<Record<string, readonly string[]>>, least: number): string[] =>
    Object.entries(table).flatMap(([over, grounds]) =>
      grounds
        .map((under) => ({ under, ratio: wcagContrast(palette[over], palette[under]) }))
        .filter(({ ratio }) => !(ratio >= least))
        .map(({ under, ratio }) => `${over} on ${under}: ${ratio.toFixed(2)}`),
    );

  it('lets every text be read on every ground it stands on', () => {
    expect(tooWeak(TEXTS, TEXT_RATIO)).toEqual([]);
  });

  it('lets every mark that says something be seen', () => {
    expect(tooWeak(MARKS, MARK_RATIO)).toEqual([]);
  });

  it.each(Object.entries(EYES))('tells any two series apart for %s', (_, eye) => {
    const near = pairs(SERIES)
      .map(([a, b]) => ({ a, b, apart: difference(eye(rgb(palette[a])!), eye(rgb(palette[b])!)) }))
      .filter(({ apart }) => !(apart >= LEAST_DIFFERENCE))
      .map(({ a, b, apart }) => `${a}, ${b}: ${apart.toFixed(1)}`);
    expect(near).toEqual([]);
  });

  it.each(Object.entries(EYES))('tells sharper from flatter at every depth for %s', (_, eye) => {
    for (const depth of [2, 3, 4, 5, 6, 7, 8]) {
      const [rise, fall] = [palette[`rise-${depth}`], palette[`fall-${depth}`]].map((c) => eye(rgb(c)!));
      expect([depth, difference(rise, fall) >= LEAST_DIFFERENCE]).toEqual([depth, true]);
    }
  });

  it.each(['rise', 'fall'])('deepens %s evenly away from the sheet', (hue) => {
    const depths = ['sheet', ...[1, 2, 3, 4, 5, 6, 7, 8].map((n) => `${hue}-${n}`)];
    const lights = depths.map((name) => wcagLuminance(palette[name]));
    const sorted = [...lights].sort((a, b) => (theme === 'light' ? b - a : a - b));
    expect(lights).toEqual(sorted);
  });
});

describe('the two themes', () => {
  it('have the same names, and differ in every ground', () => {
    const [light, dark] = THEMES.map(paletteOf);
    expect(Object.keys(dark).sort()).toEqual(Object.keys(light).sort());
    for (const ground of [
      'ground',
      'sheet',
      'well',
      'ink',
      'caution-ground',
      'wrong-ground',
      'unsure-ground',
    ]) {
      expect(dark[ground]).not.toBe(light[ground]);
    }
  });
});
