import { REFERENCE_C } from '../../acoustics/index.ts';
import { contentsOf } from '../../documents/bench-contents.ts';
import type { Instrument } from '../../documents/horn-document.ts';
import type { LibraryRecords } from '../../documents/library-file.ts';
import type { DocumentIssue } from '../../documents/schema-parts.ts';
import { templateRecords, type NewHorn } from '../../documents/template-horn.ts';
import alto from '../../../datasets/horns/demo-alto.json';
import { putOnBench } from '../state/bench-state.ts';
import type { Bench } from './bench.ts';
import { makeId, USUAL_A4_HZ } from './demo-horns.ts';

/** The files that examples come from; the alto is there from the start. */
const FILES: Readonly<Record<Instrument, () => Promise<unknown>>> = {
  soprano: async () => (await import('../../../datasets/horns/demo-soprano.json')).default,
  alto: () => Promise.resolve(alto),
  tenor: async () => (await import('../../../datasets/horns/demo-tenor.json')).default,
  baritone: async () => (await import('../../../datasets/horns/demo-baritone.json')).default,
};

// The compiler sees plain words in a JSON file where the shape wants one of a few; a test reads every file as the
// library would.
/** An invented horn of a kind, to start from. @throws where it cannot be fetched */
export async function fetchExample(instrument: Instrument): Promise<LibraryRecords> {
  return (await FILES[instrument]()) as LibraryRecords;
}

/** Puts a new horn on the bench and shows its sheet; what is wrong with what was told comes back instead. */
export function startHorn(bench: Bench, example: LibraryRecords, told: NewHorn): readonly DocumentIssue[] {
  const day = { airC: example.setups[0].document.airC ?? REFERENCE_C, a4Hz: USUAL_A4_HZ };
  const outcome = templateRecords(example, told, day, makeId);
  if (!outcome.ok) return outcome.issues;
  const contents = contentsOf(outcome.value, outcome.value.horns[0].id)!;
  bench.store.update((state) => putOnBench(state, contents));
  location.hash = '#sheet';
  return [];
}
