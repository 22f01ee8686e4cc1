import { appendFileSync, existsSync, readFileSync } from 'node:fs';
import { kinds, planOf, type PlanRow } from './plan.ts';
import { solveRow } from './solver/row.ts';

/**
 * Makes the pad-gap rows. Resumable: finished rows are kept in `rows.jsonl` beside this file and never computed again.
 *
 * Run with `npx tsx datasets/pad-gap/make.ts`, then `npx tsx datasets/pad-gap/pack.ts`.
 */
const file = new URL('rows.jsonl', import.meta.url);

export interface StoredRow {
  kind: string;
  index: number;
  length: number | null;
  error: number | null;
}

const done = new Set<string>();
if (existsSync(file)) {
  for (const line of readFileSync(file, 'utf8').split('\n')) {
    if (line === '') continue;
    const row = JSON.parse(line) as StoredRow;
    done.add(`${row.kind} ${row.index}`);
  }
}
// All kinds advance together, so that a table stopped early is still balanced; the parallel rows, the quickest, run ahead.
const work: { row: PlanRow; index: number; turn: number }[] = [];
for (const kind of kinds) {
  const rows = planOf(kind);
  rows.forEach((row, index) =>
    work.push({
      row,
      index,
      turn: ((kind === 'parallel' || kind === 'thin' ? 0.4 : 1) * (index + 0.5)) / rows.length,
    }),
  );
}
work.sort((a, b) => a.turn - b.turn);
const began = Date.now();
let made = 0;
for (const { row, index } of work) {
  if (done.has(`${row.kind} ${index}`)) continue;
  const answer = solveRow(row);
  const stored: StoredRow = {
    kind: row.kind,
    index,
    length: answer ? Number(answer.length.toFixed(5)) : null,
    error: answer ? Number(answer.error.toFixed(5)) : null,
  };
  appendFileSync(file, `${JSON.stringify(stored)}\n`);
  made++;
  if (made % 100 === 0)
    console.log(`${made + done.size} of ${work.length} rows, ${((Date.now() - began) / 1000).toFixed(0)} s`);
}
