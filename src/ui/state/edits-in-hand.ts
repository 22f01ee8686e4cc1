import { hornInHand, proposedInHand, type BenchState } from './bench-state.ts';
import type { DayFieldId, FieldId, HeadFieldId } from './fields.ts';
import { accepted, stepped, type TypedText } from './horn-on-bench.ts';
import { withHorn } from './horns-on-bench.ts';
import { withFoundLengths, withoutProposals, withProposed, type KeyLengths } from './key-lengths.ts';
import { isOfKeyInHand } from './study-in-hand.ts';

// What is typed, measured and proposed on the horn in hand: each takes a state and gives the next.

/** Takes checked lengths of the key in hand into use, as measured. */
export function acceptEdit(
  state: BenchState,
  field: FieldId | 'measuredAt',
  lengths: KeyLengths,
  text: string | null,
): BenchState {
  const next = withHorn(state, (horn) =>
    stepped(horn, withFoundLengths(horn.contents, horn.keyId, lengths), null),
  );
  const value = field === 'measuredAt' || field === 'proposed' || field === 'asSet' ? null : lengths[field];
  return text === null ? forgetText(next, field) : keepText(next, field, accepted(text, value ?? null));
}

/** Keeps a text as typed on the key in hand, in use or refused. */
export function keepText(state: BenchState, field: FieldId | 'measuredAt', typed: TypedText): BenchState {
  return withHorn(state, (horn) => ({
    ...horn,
    typed: { ...horn.typed, [horn.keyId]: { ...horn.typed[horn.keyId], [field]: typed } },
  }));
}

/** The field shows what is in use again. */
export function forgetText(state: BenchState, field: FieldId | 'measuredAt'): BenchState {
  return withHorn(state, (horn) => {
    if (horn.typed[horn.keyId]?.[field] === undefined) return horn;
    const rest = { ...horn.typed[horn.keyId] };
    delete rest[field];
    return { ...horn, typed: { ...horn.typed, [horn.keyId]: rest } };
  });
}

/**
 * Proposes an opening for the key in hand; null follows the answer. While the screen still shows the key before,
 * a hand on its slider proposes nothing for the next. A slider's whole movement is one step of the history.
 */
export function propose(state: BenchState, frontMm: number | null): BenchState {
  if (!isOfKeyInHand(state)) return state;
  const { keyId } = hornInHand(state);
  if ((proposedInHand(state)[keyId] ?? null) === frontMm) return forgetText(state, 'proposed');
  return forgetText(
    withHorn(state, (horn) =>
      stepped(
        horn,
        withProposed(horn.contents, keyId, frontMm),
        frontMm === null ? null : `propose ${keyId}`,
      ),
    ),
    'proposed',
  );
}

/** Every key as found again. */
export function withdrawProposals(state: BenchState): BenchState {
  if (Object.keys(proposedInHand(state)).length === 0) return state;
  return withHorn(state, (horn) => ({
    ...stepped(horn, withoutProposals(horn.contents), null),
    typed: Object.fromEntries(
      Object.entries(horn.typed).map(([id, typed]) => {
        const rest = { ...typed };
        delete rest.proposed;
        return [id, rest];
      }),
    ),
  }));
}

/** A number of the day, written into the visit. */
export function acceptDay(state: BenchState, field: DayFieldId, value: number, text: string): BenchState {
  return withHorn(state, (horn) => {
    const { visit } = horn.contents;
    const next =
      visit.document[field] === value
        ? horn
        : stepped(
            horn,
            { ...horn.contents, visit: { ...visit, document: { ...visit.document, [field]: value } } },
            null,
          );
    return { ...next, dayTyped: { ...horn.dayTyped, [field]: accepted(text, value) } };
  });
}

export function keepDayText(
  state: BenchState,
  field: DayFieldId | HeadFieldId,
  typed: TypedText | null,
): BenchState {
  return withHorn(state, (horn) => {
    const rest = { ...horn.dayTyped };
    delete rest[field];
    return { ...horn, dayTyped: typed === null ? rest : { ...rest, [field]: typed } };
  });
}
