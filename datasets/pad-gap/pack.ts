import { readFileSync, writeFileSync } from 'node:fs';
import { kinds, planOf, type PlanRow } from './plan.ts';
import { columns, textFrom } from './table.ts';

/** Packs the solved rows of `rows.jsonl` with their cases into `table.csv`, in the order of the plan. */
const solved = new Map<string, { length: number | null; error: number | null }>();
for (const line of readFileSync(new URL('rows.jsonl', import.meta.url), 'utf8').split('\n')) {
  if (line === '') continue;
  const { kind, index, length, error } = JSON.parse(line) as {
    kind: string;
    index: number;
    length: number | null;
    error: number | null;
  };
  solved.set(`${kind} ${index}`, { length, error });
}
const lines: string[] = [columns.join(',')];
let folded = 0;
for (const kind of kinds) {
  planOf(kind).forEach((row: PlanRow, index) => {
    const answer = solved.get(`${kind} ${index}`);
    if (!answer) return;
    if (answer.length === null || answer.error === null) {
      folded++;
      return;
    }
    const { rim, pad, thick, height, hinge, rod, body } = row;
    const numbers = [rim, pad, thick, height, hinge, rod, body, answer.length, answer.error];
    lines.push([kind, ...numbers.map(textFrom)].join(','));
  });
}
writeFileSync(new URL('table.csv', import.meta.url), `${lines.join('\n')}\n`);
console.log(`${lines.length - 1} rows packed, ${folded} positions left out because the map folds`);
