import * as z from 'zod';
import { documentVersion, quantity, text } from './schema-parts.ts';

/** Version of the visit document this program writes. */
export const VISIT_VERSION = 1;

/** One time the horn was on the bench: who and when, the day's air, and the setups it is told by. */
export const visitSchema = z.strictObject({
  $schema: z.string().optional(),
  kind: z.literal('ventwright visit', { error: 'invalid kind; expected "ventwright visit"' }),
  version: documentVersion('visit', VISIT_VERSION),
  date: z.iso.date({
    error: ({ input }) => `invalid date: ${JSON.stringify(input)}; expected a day such as 2026-05-31`,
  }),
  player: z.string().max(200).optional(),
  measuredBy: z.string().max(200).optional(),
  wish: z.string().max(2000).optional().describe('what the player asks for'),
  notes: z.string().max(20_000).optional(),
  airC: quantity('air temperature', 0, 45, '°C'),
  a4Hz: quantity('tuning of A4', 380, 500, 'Hz'),
  asFound: text('setup id').describe('id of the setup the horn came with; it is whole'),
  proposed: text('setup id').describe('id of the setup proposed, read over as found'),
  asSet: text('setup id').describe('id of the setup it leaves with, read over as found'),
});

export type VisitDocument = z.infer<typeof visitSchema>;
