import { readFileSync } from 'node:fs';
import type { Kind, PlanRow } from './plan.ts';

/** A row of `table.csv`: a case, its end length and estimated error, all lengths in hole radii. */
export interface TableRow extends PlanRow {
  length: number;
  error: number;
}

export const columns = [
  'kind',
  'rimRadii',
  'padRadii',
  'thickRadii',
  'heightRadii',
  'hingeRadii',
  'rodRadii',
  'bodyRadii',
  'lengthRadii',
  'errorRadii',
] as const;

const numberFrom = (text: string): number => (text === 'inf' ? Infinity : Number(text));

export const textFrom = (x: number): string => (x === Infinity ? 'inf' : String(x));

/** Reads the table beside this file. */
export const readTable = (): TableRow[] =>
  readFileSync(new URL('table.csv', import.meta.url), 'utf8')
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => {
      const [kind, ...cells] = line.split(',');
      const [rim, pad, thick, height, hinge, rod, body, length, error] = cells.map(numberFrom);
      return { kind: kind as Kind, rim, pad, thick, height, hinge, rod, body, length, error };
    });
