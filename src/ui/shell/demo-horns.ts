import type { HornDocument } from '../../documents/horn-document.ts';
import alto from '../../../datasets/horns/demo-alto.json';

/** A horn the workbench brings with it. */
export interface DemoHorn {
  readonly id: string;
  readonly label: string;
  load(): Promise<HornDocument>;
}

// The compiler sees plain words in a JSON file where the shape wants one of a few; the worker holds every
// document against the schema before it computes.
export const DEMO_ALTO = alto as HornDocument;

export const DEMO_HORNS: readonly DemoHorn[] = [
  { id: 'demo-alto', label: 'Demo alto', load: () => Promise.resolve(DEMO_ALTO) },
  {
    id: 'demo-tenor',
    label: 'Demo tenor',
    load: async () => (await import('../../../datasets/horns/demo-tenor.json')).default as HornDocument,
  },
];
