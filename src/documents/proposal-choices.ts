import * as z from 'zod';
import { choice, text } from './schema-parts.ts';
import type { VisitDocument } from './visit-document.ts';

/** What a person may ask of a proposal, in a word or two; `balanced` where nothing is said. */
export const PREFERENCES = ['balanced', 'in tune', 'low keys', 'few moves'] as const;
export type Preference = (typeof PREFERENCES)[number];

/** What is asked of a visit's proposal; left out is as usual. */
export const proposalChoices = z.strictObject({
  prefer: choice('preference of the proposal', PREFERENCES).optional(),
  locked: z
    .array(text('pad id of a locked key'))
    .max(60, 'expected at most 60 locked keys')
    .refine((pads) => new Set(pads).size === pads.length, {
      error: 'invalid locked keys: one is told twice; expected each once',
    })
    .optional()
    .describe('pads whose stop is not to move'),
});

const NONE: readonly string[] = [];

/** What a visit's proposal leans to. */
export const preferenceOf = ({ proposal }: VisitDocument): Preference => proposal?.prefer ?? 'balanced';

/** The pads locked on a visit; the same list as long as none changes. */
export const lockedOn = ({ proposal }: VisitDocument): readonly string[] => proposal?.locked ?? NONE;

/** A visit whose proposal leans otherwise. */
export function withPreference(visit: VisitDocument, prefer: Preference): VisitDocument {
  return prefer === preferenceOf(visit) ? visit : withChoices(visit, prefer, lockedOn(visit));
}

/** Locks a pad, or lets it move again. */
export function withLockToggled(visit: VisitDocument, pad: string): VisitDocument {
  const locked = lockedOn(visit);
  const next = locked.includes(pad) ? locked.filter((each) => each !== pad) : [...locked, pad];
  return withChoices(visit, preferenceOf(visit), next);
}

/** What is as usual is not written. */
function withChoices(visit: VisitDocument, prefer: Preference, locked: readonly string[]): VisitDocument {
  const { proposal: _before, ...rest } = visit;
  const choices = {
    ...(prefer === 'balanced' ? {} : { prefer }),
    ...(locked.length === 0 ? {} : { locked: [...locked] }),
  };
  return Object.keys(choices).length === 0 ? rest : { ...rest, proposal: choices };
}
