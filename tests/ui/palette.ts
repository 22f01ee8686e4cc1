import { readFileSync } from 'node:fs';

export type Theme = 'light' | 'dark';
export const THEMES: readonly Theme[] = ['light', 'dark'];

/** Every colour of a theme by its name without `--vw-`, as written in the tokens; dark has light's where it says none. */
export function paletteOf(theme: Theme): Readonly<Record<string, string>> {
  const text = readFileSync(new URL('../../src/ui/tokens.css', import.meta.url), 'utf8');
  const [light, dark] = text.split('@media screen');
  const read = (part: string): Record<string, string> =>
    Object.fromEntries(
      [...part.matchAll(/--vw-([\w-]+): (#[0-9a-f]{6});/g)].map(([, name, hex]) => [name, hex]),
    );
  return theme === 'light' ? read(light) : { ...read(light), ...read(dark) };
}

const PAGE = ['ground', 'sheet', 'well'];
const steps = (from: number, to: number): number[] =>
  Array.from({ length: to - from + 1 }, (_, i) => from + i);
const shades = (from: number, to: number): string[] =>
  ['rise', 'fall'].flatMap((hue) => steps(from, to).map((depth) => `${hue}-${depth}`));

/** Which text stands on which grounds: each pair has to be read at 4.5 : 1. */
export const TEXTS: Readonly<Record<string, readonly string[]>> = {
  ink: [
    ...PAGE,
    'try-weak',
    'enough-weak',
    'caution-ground',
    'wrong-ground',
    'unsure-ground',
    'felt',
    'air',
    'filled',
    ...shades(1, 4),
  ],
  sheet: shades(5, 8),
  soft: [...PAGE, 'try-weak', 'air'],
  found: [...PAGE, 'try-weak'],
  try: [...PAGE, 'try-weak', 'air'],
  set: [...PAGE, 'try-weak'],
  played: [...PAGE, 'try-weak'],
  enough: [...PAGE, 'enough-weak'],
  other: PAGE,
  caution: ['caution-ground', ...PAGE],
  wrong: ['wrong-ground', ...PAGE],
  unsure: ['unsure-ground', ...PAGE],
  'on-try': ['try'],
  'head-ink': ['head'],
  'head-soft': ['head'],
  'head-wrong': ['head'],
  ...Object.fromEntries(steps(1, 8).map((n) => [`line-${n}`, ['sheet']])),
};

/** Marks and edges that carry meaning: each is seen at 3 : 1 on its ground. */
export const MARKS: Readonly<Record<string, readonly string[]>> = {
  soft: PAGE,
  field: PAGE,
  'head-mark': ['head'],
  'head-edge': ['head'],
  leather: ['ink'],
  'rise-8': ['well'],
  'fall-6': ['well'],
};

/** What stands for what in charts and tables: each has a mark or a dash of its own too. */
export const SERIES = ['found', 'try', 'set', 'played', 'enough', 'other'] as const;
