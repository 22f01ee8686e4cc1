import { contentsOrFirstVisit, type BenchContents } from '../../documents/bench-contents.ts';
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

// The compiler sees plain words in a JSON file where the shape wants one of a few; the worker holds every
// document against the schema before it computes.
const contentsOf = (file: unknown): BenchContents => {
  const records = file as LibraryRecords;
  const airC = records.setups[0].document.airC ?? REFERENCE_C;
  const plan = { date: today(), airC, a4Hz: USUAL_A4_HZ };
  return contentsOrFirstVisit(records, records.horns[0].id, plan, makeId)!;
};

export const DEMO_HORNS: readonly [DemoHorn, ...DemoHorn[]] = [
  { id: 'demo-alto', label: 'Demo alto', load: () => Promise.resolve(demoAlto()) },
  {
    id: 'demo-tenor',
    label: 'Demo tenor',
    load: async () => contentsOf((await import('../../../datasets/horns/demo-tenor.json')).default),
  },
  {
    id: 'demo-soprano',
    label: 'Demo soprano',
    load: async () => contentsOf((await import('../../../datasets/horns/demo-soprano.json')).default),
  },
  {
    id: 'demo-baritone',
    label: 'Demo baritone',
    load: async () => contentsOf((await import('../../../datasets/horns/demo-baritone.json')).default),
  },
];

/** The one that is there before anything else has come. */
export function demoAlto(): BenchContents {
  return contentsOf(alto);
}
