import { writeFileSync } from 'node:fs';
import { makeDocument, type PlannedHorn } from './planned-horn.ts';
import { PLANS, type HornPlan } from './plans.ts';
import { firstGuess, improveShape, solvePlaces } from './solve.ts';
import { libraryFile } from '../../src/documents/library-file.ts';

/** Solves one plan: places, then shape and places by turns until the octaves settle, then places to the end. */
export function solvePlan(plan: HornPlan): PlannedHorn {
  let at = solvePlaces(plan, firstGuess(plan), 6);
  for (let i = 0; i < 15; i++) at = solvePlaces(plan, improveShape(plan, at), 1);
  return makeDocument(plan, solvePlaces(plan, at, 6));
}

/** A planned horn as a library file of one horn with one setup. */
export function planFile(plan: HornPlan, { horn, setup }: PlannedHorn): unknown {
  const hornId = plan.file.replace('.json', '');
  const file = libraryFile({
    horns: [{ id: hornId, document: horn }],
    setups: [{ id: `${hornId}-setup`, hornId, document: { ...setup, keys: [...setup.keys] } }],
    visits: [],
  });
  return { $schema: '../schemas/library-1.schema.json', ...file };
}

/** Writes the demo horns beside this file. */
export function makeHorns(): void {
  for (const plan of PLANS) {
    const path = new URL(plan.file, import.meta.url);
    writeFileSync(path, `${JSON.stringify(planFile(plan, solvePlan(plan)), null, 2)}\n`);
  }
}
