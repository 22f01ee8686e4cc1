import { writeFileSync } from 'node:fs';
import { ALTO, TENOR, type HornPlan } from './plans.ts';
import { firstGuess, improveShape, makeDocument, solvePlaces } from './solve.ts';
import type { HornDocument } from '../../src/documents/horn-document.ts';

/** Solves one plan: places, then shape and places by turns until the octaves settle, then places to the end. */
export function solvePlan(plan: HornPlan): HornDocument {
  let at = solvePlaces(plan, firstGuess(plan), 6);
  for (let i = 0; i < 15; i++) at = solvePlaces(plan, improveShape(plan, at), 1);
  return makeDocument(plan, solvePlaces(plan, at, 6));
}

/** Writes the demo horns beside this file. */
export function makeHorns(): void {
  for (const plan of [ALTO, TENOR]) {
    const path = new URL(plan.file, import.meta.url);
    writeFileSync(path, `${JSON.stringify(solvePlan(plan), null, 2)}\n`);
  }
}
