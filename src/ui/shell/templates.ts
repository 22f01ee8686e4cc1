import { REFERENCE_C } from '../../acoustics/index.ts';
import { contentsOf } from '../../documents/bench-contents.ts';
import type { LibraryRecords } from '../../documents/library-file.ts';
import type { DocumentIssue } from '../../documents/schema-parts.ts';
import { templateRecords, type NewHorn } from '../../documents/template-horn.ts';
import { putOnBench } from '../state/horns-on-bench.ts';
import type { Bench } from './bench.ts';
import { makeId, USUAL_A4_HZ } from './demo-horns.ts';

/**
 * Takes a new horn into the library, puts it on the bench and shows its sheet; what is wrong with what was told comes
 * back instead. Where the library cannot take it, it is on the bench all the same, and why is told.
 */
export async function startHorn(
  bench: Bench,
  example: LibraryRecords,
  told: NewHorn,
): Promise<readonly DocumentIssue[]> {
  const day = {
    startedMs: Date.now(),
    airC: example.setups[0].document.airC ?? REFERENCE_C,
    a4Hz: USUAL_A4_HZ,
  };
  const outcome = templateRecords(example, told, day, makeId);
  if (!outcome.ok) return outcome.issues;
  const problem = await takeIn(bench, outcome.value);
  if (problem !== null) {
    const contents = contentsOf(outcome.value, outcome.value.horns[0].id)!;
    bench.store.update((state) => putOnBench(state, contents));
    bench.tell(problem);
  }
  location.hash = '#sheet';
  return [];
}

/** Adds a horn to the library and opens it from there; null, or why it cannot be. */
async function takeIn(bench: Bench, records: LibraryRecords): Promise<string | null> {
  const { id, document } = records.horns[0];
  try {
    const added = await (await bench.library()).add(records);
    if (added.kind === 'refused') return added.message;
    if (added.kind === 'conflict') return `The library has a horn under the id of ${document.name} already.`;
    return await bench.openHorn(id);
  } catch (error) {
    return `${document.name} could not be put in the library: ${String(error)}`;
  }
}
