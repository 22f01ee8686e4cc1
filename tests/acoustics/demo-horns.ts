import { readFileSync } from 'node:fs';
import { findFingering, type Fingering } from '../../src/acoustics/index.ts';
import { loadHorn, type LoadedHorn } from '../../src/documents/to-acoustics.ts';

/** The demo horns as stored, and as the core sees them. */
export function demoDocument(name: 'alto' | 'tenor'): unknown {
  return JSON.parse(
    readFileSync(new URL(`../../datasets/horns/demo-${name}.json`, import.meta.url), 'utf8'),
  ) as unknown;
}

export function demoHorn(name: 'alto' | 'tenor'): LoadedHorn {
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
