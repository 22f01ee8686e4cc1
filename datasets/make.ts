/**
 * Remakes the datasets that scripts of ours make.
 *
 *   npm run datasets              schemas, demo horns and the demo log (seconds)
 *   npm run datasets -- pad-gap   the flow under a pad: solves what is missing of the table (about an hour from
 *                                 nothing, resumable), packs it, fits the model to it and draws its picture
 */
import { makeHorns } from './horns/make.ts';
import { makeLogs } from './logs/make.ts';
import { makeSchemas } from './schemas/make.ts';

const wanted = process.argv[2];
if (wanted === undefined) {
  makeSchemas();
  makeHorns();
  makeLogs();
} else if (wanted === 'pad-gap') {
  for (const step of ['make', 'pack', 'fit', 'draw']) await import(`./pad-gap/${step}.ts`);
} else {
  console.error(`unknown dataset "${wanted}"; expected pad-gap, or nothing for schemas, horns and the log`);
  process.exitCode = 2;
}
