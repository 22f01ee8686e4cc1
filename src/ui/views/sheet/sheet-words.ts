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
  const leading = leadingRows(rows);
  const known = leading.filter(({ standing }) => standing !== null);
  return {
    headline: unbroken(headline(rows, known, context) + proposedWords(known)),
    standing: unbroken(standing(rows, known, context)),
    sure: unbroken(sure(rows, context)),
    reasons: keysBelow(known)
      .slice(0, NAMED)
      .flatMap(({ reasons }) => (reasons.lack === null ? [] : [reasons.lack])),
  };
}

/** The keys that lead the answer: those read on this horn, or all where none is. */
export function leadingRows(rows: readonly RowView[]): readonly RowView[] {
  const read = rows.filter(({ isRead }) => isRead);
  return read.length === 0 ? rows : read;
}

/** Of which keys the answer is, where not every key was read; empty where all were. */
function ofWhich(rows: readonly RowView[]): string {
  const read = rows.filter(({ isRead }) => isRead).length;
  if (read === rows.length) return '';
  if (read === 0) return 'as the example stands';
  return `of the ${read} keys read`;
}

function headline(rows: readonly RowView[], known: readonly RowView[], { unit }: AnswerContext): string {
  if (rows.every(({ bar }) => bar === null)) return 'Working out how every key stands…';
  if (known.length === 0) return 'Working out where more height stops helping…';
  const below = keysBelow(known);
  const all = leadingRows(rows).length;
  const isPart = all < rows.length;
  if (all === 1 && isPart) return ofOneKey(known[0], below.length === 1, unit);
  const which = ofWhich(rows);
  const soFar = known.length === all ? '' : which === '' ? 'so far ' : 'so far, ';
  const begun = (words: string): string => capital(`${soFar}${which === '' ? '' : `${which}, `}${words}`);
  if (below.length === 0) {
    const none = isPart ? 'none' : 'no key';
    return known.some(isOpenQuestion)
      ? begun(`${none} can be shown to stand low.`)
      : begun(`${none} stands low: more height would help none.`);
  }
  const named = below.slice(0, NAMED).map((row) => lackingWords(row, unit));
  const rest = below.length - named.length;
  const count = below.length === 1 ? 'one' : String(below.length);
  const keys = isPart ? '' : below.length === 1 ? ' key' : ' keys';
  return (
    begun(`${count}${keys} ${below.length === 1 ? 'stands' : 'stand'} low, `) +
    `and more height still helps: ${listed([...named, ...(rest > 0 ? [`${rest} more`] : [])])}.`
  );
}

/** The answer where a single key was read. */
function ofOneKey(row: RowView, isLow: boolean, unit: LengthUnit): string {
  if (isLow) return `The one key read stands low, and more height still helps: ${lackingWords(row, unit)}.`;
  return isOpenQuestion(row)
    ? `The one key read, ${row.name}, cannot be shown to stand low.`
    : `The one key read, ${row.name}, does not stand low: more height would not help it.`;
}

/** Whether it may yet stand low: within its ± of enough, or with no enough in reach. */
const isOpenQuestion = ({ standing: s }: RowView): boolean => s?.kind === 'about' || s?.kind === 'open';

const lackingWords = ({ name, standing: s }: RowView, unit: LengthUnit): string =>
  `${name} by ${lackWords(s!, unit)}`;

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** How many would stand low as proposed, and how many of those lower than now; empty where nothing is proposed. */
function proposedWords(known: readonly RowView[]): string {
  const proposed = known.filter(({ asProposed }) => asProposed !== null);
  const low = proposed.filter(({ asProposed }) => asProposed!.kind === 'below');
  const lower = low.filter(({ goesLower }) => goesLower).length;
  const isSame = low.length === 0 && keysBelow(known).length === 0;
  if (proposed.length === 0 || isSame) return '';
  const worse = lower === 0 ? '' : `, ${lower === low.length ? '' : `${lower} of them `}lower than now`;
  return ` As proposed, ${low.length === 0 ? 'none' : low.length} would${worse}.`;
}

/** Keys that surely lack height, the most first. */
export function keysBelow(rows: readonly RowView[]): RowView[] {
  return rows
    .filter(({ standing: s }) => s?.kind === 'below')
    .sort((a, b) => b.standing!.lacksMm! - a.standing!.lacksMm!);
}

/** What the button says that proposes enough for the keys the answer tells to be low. */
export function enoughAct(rows: readonly RowView[]): string {
  const lacking = keysBelow(leadingRows(rows)).length;
  if (lacking === 0) return 'Propose enough';
  const keys = lacking === 1 ? 'this key' : `these ${lacking} keys`;
  return `Propose enough for ${keys}${rows.every(({ isRead }) => !isRead) ? ' of the example' : ''}`;
}

function standing(rows: readonly RowView[], known: readonly RowView[], { isSet }: AnswerContext): string {
  const count = (kind: string): number => known.filter(({ standing: s }) => s?.kind === kind).length;
  const leading = leadingRows(rows).length;
  const unread = rows.filter(({ isRead }) => !isRead).length;
  const parts = [
    [count('about'), 'within their ± of enough'],
    [count('enough'), 'high enough'],
    [count('open'), 'without an answer in reach'],
    [leading - known.length, 'still being worked out'],
  ] as const;
  const told = listed(parts.filter(([n]) => n > 0).map(([n, words]) => `${n} ${words}`));
  const how = isSet ? 'As set, where it was set' : 'As found';
  const rest = unread === rows.length ? 'No opening was read on this horn' : `${unread} rest on the example`;
  return `${how}${told === '' ? '' : `: ${told}`}.` + (unread === 0 ? '' : ` ${rest}: read them to know.`);
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
