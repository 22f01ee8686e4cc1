import * as z from 'zod';
import { daySteps } from './day-steps.ts';
import { calibrationChoice, MOST_TAKES, take } from './pitch-log.ts';
import { sheetWords } from './player-sheet-edits.ts';
import { proposalChoices } from './proposal-choices.ts';
import { documentVersion, quantity, text } from './schema-parts.ts';
import { setLike } from './set-like.ts';

/** Version of the visit document this program writes. */
export const VISIT_VERSION = 1;

/** A move of the regulation that was made, and what it came to. */
const doneWork = z.strictObject({
  move: text('move, such as “height e” or “link e > bis”'),
  valueMm: quantity('value after the move', -10, 60, 'mm'),
  read: z.boolean().describe('whether the value was read; false where it was checked off as asked'),
});

const leakingSeat = z.strictObject({
  pad: text('pad id'),
  gapMm: quantity('gap found under the shut pad', 0, 3, 'mm').optional(),
});

const visitShape = z.strictObject({
  $schema: z.string().optional(),
  kind: z.literal('ventwright visit', { error: 'invalid kind; expected "ventwright visit"' }),
  version: documentVersion('visit', VISIT_VERSION),
  date: z.iso.date({
    error: ({ input }) => `invalid date: ${JSON.stringify(input)}; expected a day such as 2026-05-31`,
  }),
  startedMs: quantity('moment the visit was begun, since 1970', 0, 1e14, 'ms').optional(),
  player: z.string().max(200).optional(),
  measuredBy: z.string().max(200).optional(),
  wish: z.string().max(2000).optional().describe('what the player asks for'),
  wishKey: text('pad the wish is about').optional(),
  wishOpeningMm: quantity('opening wished for, at the front', 0, 60, 'mm').optional(),
  wishShiftMm: quantity('how much higher all keys are wished, at the front', -20, 20, 'mm')
    .optional()
    .describe(
      'the wish is about all keys: how much higher, minus for lower; 0 where it was not said how far',
    ),
  sheetWords: sheetWords.optional().describe('sentences of the player’s sheet that a person wrote otherwise'),
  notes: z.string().max(20_000).optional(),
  airC: quantity('air temperature', 0, 45, '°C'),
  a4Hz: quantity('tuning of A4', 380, 500, 'Hz'),
  leakingSeats: z
    .array(leakingSeat)
    .max(60, 'expected at most 60 leaking seats')
    .optional()
    .describe('pads that do not seal as found, each alone on its rim'),
  work: z
    .array(doneWork)
    .max(5000, 'expected at most 5000 moves')
    .optional()
    .describe('moves made towards the setup proposed, in the order they were made'),
  daySteps: daySteps.optional().describe('steps of the day that a person said are done or not needed'),
  proposal: proposalChoices.optional().describe('what is asked of the proposed setup'),
  setLike: setLike.optional().describe('the horn whose openings or vent shares the proposal was made from'),
  played: z
    .array(take)
    .max(MOST_TAKES, `expected at most ${MOST_TAKES} takes`)
    .optional()
    .describe('notes played and measured, one entry a take, in the order they were taken'),
  calibration: calibrationChoice
    .optional()
    .describe('what is fitted to the notes played, and whether it is in use; the fit itself is worked out'),
  asFound: text('setup id').describe('id of the setup the horn came with; it is whole'),
  proposed: text('setup id').describe('id of the setup proposed, read over as found'),
  asSet: text('setup id').describe('id of the setup it leaves with, read over as found'),
});

/** One time the horn was on the bench: who and when, the day's air, and the setups it is told by. */
export const visitSchema = visitShape.refine(
  ({ wishKey, wishShiftMm }) => wishKey === undefined || wishShiftMm === undefined,
  {
    path: ['wishShiftMm'],
    error: 'invalid wish: it names one key and all keys at once; expected one or the other',
  },
);

export type VisitDocument = z.infer<typeof visitSchema>;
export type DoneWork = NonNullable<VisitDocument['work']>[number];
export type LeakingSeat = NonNullable<VisitDocument['leakingSeats']>[number];
