import { readFileSync } from 'node:fs';
import { findFingering, type Fingering } from '../../src/acoustics/index.ts';
import { presentHorn, readLibrary } from '../../src/documents/library-file.ts';
import { loadHorn, type HornAndSetup, type LoadedHorn } from '../../src/documents/to-acoustics.ts';

/** The demo horns, from the smallest to the largest. */
export const DEMO_NAMES = ['soprano', 'alto', 'tenor', 'baritone'] as const;
export type DemoName = (typeof DEMO_NAMES)[number];

/** A demo horn's file as stored. */
export function demoFile(name: DemoName): unknown {
  return JSON.parse(
    readFileSync(new URL(`../../datasets/horns/demo-${name}.json`, import.meta.url), 'utf8'),
  ) as unknown;
}

/** A demo horn and its setup as stored. */
export function demoDocument(name: DemoName): HornAndSetup {
  const { records, issues } = readLibrary(demoFile(name), () => 'no id is missing');
  if (issues.length > 0) throw new Error(issues[0].message);
  return presentHorn(records, records.horns[0]);
}

/** The same as the core sees them. */
export function demoHorn(name: DemoName): LoadedHorn {
  const loaded = loadHorn(demoDocument(name));
  if (!loaded.ok) throw new Error(loaded.issues[0].message);
  return loaded.value;
}

/** A fingering that must exist. */
export function fingeringOf(id: string): Fingering {
  const fingering = findFingering(id);
  if (fingering?.id !== id) throw new Error(`no fingering ${id}`);
  return fingering;
}
