/**
 * Kills a real browser in the middle of a stream of edits and looks for every acknowledged edit afterwards:
 * `npm run torture`, or `npm run torture -- --rounds 20 --seed 7`. Needs a built site.
 */
import { parseArgs } from 'node:util';
import { serveBuiltSite } from '../browser/built-site.ts';
import { torture } from './torture.ts';

const { values } = parseArgs({ options: { rounds: { type: 'string' }, seed: { type: 'string' } } });
const rounds = Number(values.rounds ?? 200);
const seed = Number(values.seed ?? 1);
if (!(Number.isInteger(rounds) && rounds > 0)) {
  throw new RangeError(`invalid rounds: ${values.rounds}; expected a whole number over 0`);
}
if (!Number.isInteger(seed)) throw new RangeError(`invalid seed: ${values.seed}; expected a whole number`);

const site = await serveBuiltSite();
try {
  const report = await torture({
    rounds,
    seed,
    url: site.url,
    onRound: (round, sentence) => console.log(`${String(round).padStart(4)}  ${sentence}`),
  });
  const { kills, made, acknowledged, found, midway, cameBack, lost } = report;
  console.log(
    `${kills} kills, ${midway} of them in the middle of a write: ${made} edits made, ${acknowledged} acknowledged, ` +
      `${found} found again; the bench came back to the visit ${cameBack} times; ${lost.length === 0 ? 'nothing lost' : `${lost.length} LOST`}`,
  );
  for (const sentence of lost) console.log(sentence);
  process.exitCode = lost.length === 0 ? 0 : 1;
} finally {
  await site.close();
}
