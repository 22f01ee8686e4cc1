import type { HornAndSetup } from '../../documents/to-acoustics.ts';
import type { LibraryRecords } from '../../documents/library-file.ts';
import alto from '../../../datasets/horns/demo-alto.json';

/** A horn the workbench brings with it. */
export interface DemoHorn {
  readonly id: string;
  readonly label: string;
  load(): Promise<HornAndSetup>;
}

// The compiler sees plain words in a JSON file where the shape wants one of a few; the worker holds every
// document against the schema before it computes.
const documentsOf = (file: unknown): HornAndSetup => {
  const { horns, setups } = file as LibraryRecords;
  return { horn: horns[0].document, setup: setups[0].document };
};

export const DEMO_ALTO = documentsOf(alto);

export const DEMO_HORNS: readonly DemoHorn[] = [
  { id: 'demo-alto', label: 'Demo alto', load: () => Promise.resolve(DEMO_ALTO) },
  {
    id: 'demo-tenor',
    label: 'Demo tenor',
    load: async () => documentsOf((await import('../../../datasets/horns/demo-tenor.json')).default),
  },
];
