import * as z from 'zod';
import { FINGERINGS, UNKNOWNS, type Unknown } from '../acoustics/index.ts';
import { choice, quantity } from './schema-parts.ts';
import type { VisitDocument } from './visit-document.ts';

/** Which setup of a visit was played. */
export const PLAYED_SETUPS = ['as found', 'as set'] as const;
export type PlayedSetup = (typeof PLAYED_SETUPS)[number];

/** Where a take's cents come from: read off a tuner, a table, or listened to. */
export const HEARD = ['tuner', 'table', 'microphone', 'recording'] as const;
export type Heard = (typeof HEARD)[number];

/** As many takes as a visit holds. */
export const MOST_TAKES = 2000;

/** Cents from equal temperament that are still a take of the note it was fingered for. */
export const FARTHEST_CENTS = 200;

const KNOWN = new Set(FINGERINGS.map(({ id }) => id));

/** One note played once. */
export const take = z.strictObject({
  fingering: z
    .string()
    .refine((id) => KNOWN.has(id), {
      error: ({ input }) =>
        `invalid fingering: ${JSON.stringify(input)}; expected one such as "F4" or "Bb4 bis"`,
    })
    .describe('the fingering it was played with'),
  cents: quantity('pitch from equal temperament at the visit’s A4', -FARTHEST_CENTS, FARTHEST_CENTS, 'cents'),
  setup: choice('setup that was played', PLAYED_SETUPS),
  heard: choice('way the pitch was taken', HEARD),
  spreadCents: quantity('spread of the pitch within the take', 0, 100, 'cents').optional(),
  leftOut: z.boolean().optional().describe('set aside by a person: kept, but counted in nothing'),
});
export type Take = z.infer<typeof take>;

/** What can be fitted to the notes played. */
export const CALIBRATION_UNKNOWNS = UNKNOWNS;
export type CalibrationUnknown = Unknown;

/** What a person chose about calibration; what comes of it is worked out from the log each time. */
export const calibrationChoice = z.strictObject({
  unknowns: z
    .array(choice('unknown of the calibration', CALIBRATION_UNKNOWNS))
    .max(CALIBRATION_UNKNOWNS.length, `expected at most ${CALIBRATION_UNKNOWNS.length} unknowns`)
    .refine((unknowns) => new Set(unknowns).size === unknowns.length, {
      error: 'invalid unknowns of the calibration: one is named twice; expected each once',
    })
    .describe('which unknowns are fitted'),
  inUse: z.boolean().describe('whether pitches are shown with the calibration'),
});
export type CalibrationChoice = z.infer<typeof calibrationChoice>;

/** One fingering as played: its takes and what they come to. */
export interface PlayedNote {
  readonly fingering: string;
  /** every take, those left out too */
  readonly takes: readonly Take[];
  /** how many of them count */
  readonly count: number;
  /** mean of one or two, the median of more; null where every take is left out */
  readonly cents: number | null;
  /** standard deviation of single takes about it; null of fewer than two */
  readonly spreadCents: number | null;
}

/** The takes of one setup of a visit, in the order they were taken. */
export function takesIn(visit: VisitDocument, setup: PlayedSetup): Take[] {
  return (visit.played ?? []).filter((each) => each.setup === setup);
}

/**
 * Takes note by note, in the order of the fingerings.
 *
 * Two takes are averaged; of three and more the middle one counts, so that one wrong take does no harm.
 */
export function notesPlayed(takes: readonly Take[]): PlayedNote[] {
  return FINGERINGS.flatMap(({ id }): PlayedNote[] => {
    const ofNote = takes.filter(({ fingering }) => fingering === id);
    if (ofNote.length === 0) return [];
    const counted = ofNote.filter(({ leftOut }) => leftOut !== true).map(({ cents }) => cents);
    return [
      {
        fingering: id,
        takes: ofNote,
        count: counted.length,
        cents: counted.length === 0 ? null : middleOf(counted),
        spreadCents: counted.length < 2 ? null : spreadOf(counted),
      },
    ];
  });
}

/** Mean of two, median of more. */
function middleOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = Math.floor(sorted.length / 2);
  return sorted.length % 2 === 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
}

function spreadOf(values: readonly number[]): number {
  const mean = values.reduce((sum, v) => sum + v, 0) / values.length;
  return Math.sqrt(values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / (values.length - 1));
}

/** A visit with takes added at the end of its log. */
export function withTakes(visit: VisitDocument, takes: readonly Take[]): VisitDocument {
  return takes.length === 0 ? visit : { ...visit, played: [...(visit.played ?? []), ...takes] };
}

/** A visit with one take of its log otherwise; null takes it out. @param index in the visit's whole log */
export function withTake(visit: VisitDocument, index: number, changed: Take | null): VisitDocument {
  const { played: before = [], ...rest } = visit;
  const played = before.flatMap((each, i) => (i !== index ? [each] : changed === null ? [] : [changed]));
  return played.length === 0 ? rest : { ...rest, played };
}
