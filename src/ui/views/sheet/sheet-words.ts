import { formatBoth, type LengthUnit } from '../../../documents/length-format.ts';
import { listed, unbroken } from '../../parts/note-names.ts';
import type { Reason } from '../../state/reasons.ts';
import { lackWords, type RowView } from './sheet-rows.model.ts';

/** The answer in words, biggest first. */
export interface SheetAnswer {
  readonly headline: string;
  readonly standing: string;
  readonly sure: string;
  /** of the figures in the headline */
  readonly reasons: readonly Reason[];
}

/** What the words need besides the rows. */
export interface AnswerContext {
  readonly unit: LengthUnit;
  /** whether anything was set on this visit */
  readonly isSet: boolean;
  /** whether the bore is an example’s */
  readonly boreFromExample: boolean;
}

/** So many keys are named in the headline. */
const NAMED = 3;

export function makeSheetAnswer(rows: readonly RowView[], context: AnswerContext): SheetAnswer {
  const known = rows.filter(({ standing }) => standing !== null);
  return {
    headline: unbroken(headline(rows, known, context) + proposedWords(known)),
    standing: unbroken(standing(rows, known, context)),
    sure: unbroken(sure(rows, context)),
    reasons: keysBelow(known)
      .slice(0, NAMED)
      .flatMap(({ reasons }) => (reasons.lack === null ? [] : [reasons.lack])),
  };
}

function headline(rows: readonly RowView[], known: readonly RowView[], { unit }: AnswerContext): string {
  if (rows.every(({ bar }) => bar === null)) return 'Working out how every key stands…';
  if (known.length === 0) return 'Working out where more height stops helping…';
  const below = keysBelow(known);
  const soFar = known.length < rows.length ? 'So far ' : '';
  if (below.length === 0) {
    const none = `${soFar}${soFar === '' ? 'No' : 'no'} key`;
    return known.some(({ standing: s }) => s?.kind === 'about')
      ? `${none} can be shown to stand low.`
      : `${none} stands low: more height would help none.`;
  }
  const [first, ...others] = below;
  const named = [
    `${first.name} by ${lackWords(first.standing!, unit)}`,
    ...others.slice(0, NAMED - 1).map((row) => `${row.name} by ${lackWords(row.standing!, unit)}`),
  ];
  const rest = below.length - named.length;
  return (
    `${soFar}${below.length === 1 ? `${soFar === '' ? 'One' : 'one'} key stands` : `${below.length} keys stand`} ` +
    `low, and more height still helps: ${listed([...named, ...(rest > 0 ? [`${rest} more`] : [])])}.`
  );
}

/** How many would stand low as proposed; empty where nothing is proposed. */
function proposedWords(known: readonly RowView[]): string {
  const proposed = known.flatMap(({ asProposed }) => asProposed ?? []);
  const low = proposed.filter(({ kind }) => kind === 'below').length;
  const isSame = low === 0 && keysBelow(known).length === 0;
  return proposed.length === 0 || isSame ? '' : ` As proposed, ${low === 0 ? 'none' : low} would.`;
}

/** Keys that surely lack height, the most first. */
export function keysBelow(rows: readonly RowView[]): RowView[] {
  return rows
    .filter(({ standing: s }) => s?.kind === 'below')
    .sort((a, b) => b.standing!.lacksMm! - a.standing!.lacksMm!);
}

function standing(rows: readonly RowView[], known: readonly RowView[], { isSet }: AnswerContext): string {
  const count = (kind: string): number => known.filter(({ standing: s }) => s?.kind === kind).length;
  const told = [
    [count('about'), 'within their ± of enough'],
    [count('enough'), 'high enough'],
    [count('open'), 'without an answer in reach'],
  ] as const;
  const parts = told.filter(([n]) => n > 0).map(([n, words]) => `${n} ${words}`);
  const waiting = rows.length - known.length;
  const rest = waiting > 0 ? [`${waiting} still being worked out`] : [];
  const how = isSet ? 'As set, where it was set' : 'As found';
  return parts.length + rest.length === 0 ? `${how}.` : `${how}: ${listed([...parts, ...rest])}.`;
}

function sure(rows: readonly RowView[], { boreFromExample, unit }: AnswerContext): string {
  const resting = rows.filter(({ fromExample }) => fromExample > 0).length;
  const measured =
    resting === 0
      ? ''
      : `On ${resting} of ${rows.length} keys hole, pad, rod or opening is still the example’s, not read on this horn: measure those first. `;
  const bore = boreFromExample ? 'Cents come from the example’s bore; vent share needs no bore. ' : '';
  return (
    `${measured}${bore}Heights are told at the front; ± is the readings’ and the pad model’s together. ` +
    `Enough: another ${formatBoth(0.5, unit)} brings less than a cent and less than 1 % vent share.`
  );
}
