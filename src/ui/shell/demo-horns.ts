import { contentsOrFirstVisit, type BenchContents } from '../../documents/bench-contents.ts';
import type { Instrument } from '../../documents/horn-document.ts';
import type { LibraryRecords } from '../../documents/library-file.ts';
import { REFERENCE_C } from '../../acoustics/index.ts';
import alto from '../../../datasets/horns/demo-alto.json';

/** A horn the workbench brings with it. */
export interface DemoHorn {
  readonly id: string;
  readonly label: string;
  load(): Promise<BenchContents>;
}

/** Tuning of A4 where nobody has said otherwise, Hz. */
export const USUAL_A4_HZ = 440;

/** The day, as a calendar has it where the bench stands. */
export function today(): string {
  const now = new Date();
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

export const makeId = (): string => crypto.randomUUID();

/** The files the workbench brings with it; the alto is there from the start. */
const FILES: Readonly<Record<Instrument, () => Promise<unknown>>> = {
  soprano: async () => (await import('../../../datasets/horns/demo-soprano.json')).default,
  alto: () => Promise.resolve(alto),
  tenor: async () => (await import('../../../datasets/horns/demo-tenor.json')).default,
  baritone: async () => (await import('../../../datasets/horns/demo-baritone.json')).default,
};

// The compiler sees plain words in a JSON file where the shape wants one of a few; a test reads every file as the
// library would, and the worker holds every document against the schema before it computes.
/** An invented horn of a kind, to try things on or to start from. @throws where it cannot be fetched */
export async function fetchExample(instrument: Instrument): Promise<LibraryRecords> {
  return (await FILES[instrument]()) as LibraryRecords;
}

function contentsOf(records: LibraryRecords): BenchContents {
  const airC = records.setups[0].document.airC ?? REFERENCE_C;
  const plan = { date: today(), airC, a4Hz: USUAL_A4_HZ };
  return contentsOrFirstVisit(records, records.horns[0].id, plan, makeId)!;
}

const demo = (instrument: Instrument): DemoHorn => ({
  id: `demo-${instrument}`,
  label: `Demo ${instrument}`,
  load: async () => contentsOf(await fetchExample(instrument)),
});

export const DEMO_HORNS: readonly [DemoHorn, ...DemoHorn[]] = [
  demo('alto'),
  demo('tenor'),
  demo('soprano'),
  demo('baritone'),
];

/** The one that is there before anything else has come. */
export function demoAlto(): BenchContents {
  return contentsOf(alto as LibraryRecords);
}
