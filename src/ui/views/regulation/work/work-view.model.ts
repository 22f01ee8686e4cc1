import { saidOf } from '../../../../documents/day-steps.ts';
import { lostMotionSentences } from '../../../../documents/lost-motion-words.ts';
import type { MoveReport, RegulationReport } from '../../../../documents/regulation-report.ts';
import { setupIn, type BenchContents } from '../../../../documents/bench-contents.ts';
import type { LengthUnit } from '../../../../documents/length-format.ts';
import type { VisitDocument } from '../../../../documents/visit-document.ts';
import { unbroken } from '../../../parts/note-names.ts';
import { hornInHand, type BenchState } from '../../../state/bench-state.ts';
import { keysWithNewPads } from '../../../state/new-pads.ts';
import { planWork, type KnownWork, type WorkPlan } from '../../../state/work-plan.ts';
import { fineBoth, fineLength } from '../pads/fine-lengths.ts';
import { moveWords, testWords, valueWords, type MoveContext, type MoveWords } from './work-words.ts';
import { makeSeats, type SeatView } from './seats.model.ts';

/** One move on the list. */
export interface MoveRow extends MoveWords {
  readonly move: MoveReport;
  readonly number: number;
  /** another each time the move was made, so that its field starts empty again */
  readonly key: string;
  /** the pass of the work it belongs to, where a new one begins; null inside one */
  readonly pass: string | null;
  /** what was typed and refused */
  readonly text: string;
  readonly problem: string | null;
  readonly ask: string;
  readonly hint: string;
}

/** One move that was made. */
export interface DoneRow {
  readonly index: number | null;
  readonly what: string;
  readonly came: string;
  readonly within: boolean;
}

/** The page of the work on a horn. */
export interface WorkView {
  readonly headline: string;
  readonly standing: string;
  readonly reasons: readonly string[];
  readonly warnings: readonly string[];
  readonly moves: readonly MoveRow[];
  readonly done: readonly DoneRow[];
  readonly seats: readonly SeatView[];
  readonly head: string;
}

const PASSES: Readonly<Record<string, string>> = {
  seat: 'Seats',
  link: 'Links',
  height: 'Heights',
  again: 'Links again',
  test: 'Links never read',
};

export function makeWorkView(state: BenchState): WorkView {
  const { contents } = hornInHand(state);
  const plan = planWork(contents);
  const { unit, hornId } = state;
  const { holes } = contents.horn.document;
  const nameOf = (pad: string): string => holes.find((h) => h.id === pad)?.name ?? pad;
  const isHold: MoveContext['isHold'] = (driver, driven) =>
    contents.horn.document.links.some(
      (l) => l.driver === driver && l.driven === driven && l.effect === 'holds shut',
    );
  const context: MoveContext = { nameOf, unit, newPad: newPadWords(contents, unit), isHold };
  const typed = state.work.typed[hornId] ?? {};
  const moves = plan.ok ? makeRows(plan, context, typed) : [];
  const done = plan.ok ? makeDone(plan, context) : [];
  const { date, player } = contents.visit.document;
  return {
    ...answer(plan, moves, done, areSeatsTested(contents.visit.document)),
    reasons: [ORDER, unreadWords(plan)].filter((words) => words !== ''),
    warnings: plan.ok ? cautions(plan.report, unit) : [],
    moves,
    done,
    seats: makeSeats(contents, typed, unit),
    head: [contents.horn.document.name, player, date].filter((part) => part !== undefined).join(' · '),
  };
}

function newPadWords(contents: BenchContents, unit: LengthUnit): MoveContext['newPad'] {
  const keys = new Map(keysWithNewPads(contents).map((key) => [key.pad, key]));
  const whole = setupIn(contents, 'proposed');
  return (pad) => {
    const key = keys.get(pad);
    if (key === undefined) return null;
    const { padDiameterMm, padThicknessMm, adhesiveBedMm } = {
      ...whole.keys.find((k) => k.pad === pad),
      ...key,
    };
    const bed = adhesiveBedMm === undefined ? '' : ` on a bed of ${fineLength(adhesiveBedMm, unit)}`;
    return `${padDiameterMm!.toFixed(1)} mm × ${fineBoth(padThicknessMm!, unit)}${bed}`;
  };
}

/** The moves, and after them the links that nobody read. */
function makeRows(
  { report: { moves, untested }, done }: WorkPlan & { readonly ok: true },
  context: MoveContext,
  typed: BenchState['work']['typed'][string],
): MoveRow[] {
  const made = done.map((entry) => entry.move);
  const rows = [
    ...moves.map((move) => ({
      move,
      words: moveWords(move, context),
      pass: move.again ? 'again' : move.kind,
    })),
    ...untested.map((move) => ({ move, words: testWords(move, context), pass: 'test' })),
  ];
  return rows.map(({ move, words, pass }, i): MoveRow => {
    const text = typed[move.id];
    return {
      ...words,
      what: unbroken(words.what),
      from: unbroken(words.from),
      move,
      key: `${move.id} ${pass} ${made.filter((m) => m === move.id).length}`,
      number: i + 1,
      pass: i === 0 || rows[i - 1].pass !== pass ? PASSES[pass] : null,
      text: text?.text ?? '',
      problem: text?.problem ?? null,
      ask: move.kind === 'height' ? 'came back' : 'came back, papers',
      hint: move.kind === 'height' ? '' : move.kind === 'seat' ? '0 is sealed' : '0 is both at once',
    };
  });
}

/** What links will not allow, and what they lose. */
function cautions({ warnings, lostMotion }: RegulationReport, unit: LengthUnit): string[] {
  return [...warnings, ...lostMotionSentences(lostMotion, unit)].map(unbroken);
}

function makeDone({ report, done }: WorkPlan & { readonly ok: true }, context: MoveContext): DoneRow[] {
  return done.map((entry, i): DoneRow => {
    const kind = entry.move.split(' ')[0] as MoveReport['kind'];
    return {
      index: entry.index,
      what: doneWords(entry, context),
      came: `${valueWords(kind, entry.valueMm, context.unit)}${origin(entry)}`,
      within: report.done[i].within,
    };
  });
}

function origin({ read, index }: KnownWork): string {
  if (index === null) return ', from the sheet';
  return read ? '' : ', as asked';
}

function doneWords({ move }: KnownWork, { nameOf, isHold }: MoveContext): string {
  const [kind, ...words] = move.split(' ');
  const name = words.join(' ');
  if (kind !== 'link') return `${kind === 'seat' ? 'Seat' : 'Height of'} ${nameOf(name)}`;
  const [driver, driven] = name.split(' > ');
  const holds = isHold(driver, driven);
  return `${nameOf(driver)} ${holds ? 'holds' : 'shuts'} ${nameOf(driven)}${holds ? ' shut' : ''}`;
}

function answer(
  plan: WorkPlan,
  rows: readonly MoveRow[],
  done: readonly DoneRow[],
  areSeatsTested: boolean,
): Pick<WorkView, 'headline' | 'standing'> {
  if (!plan.ok) return { headline: 'The work on this horn cannot be planned yet.', standing: plan.message };
  const { moves, untested } = plan.report;
  const out = done.filter((row) => !row.within).length;
  const made = done.length === 0 ? '' : `${count(done.length, 'move')} made`;
  if (moves.length === 0) return nothingLeft(made, untested.length);
  const kinds = ['seat', 'link', 'height', 'again'].flatMap((kind) => {
    const n = moves.filter((move) => (move.again ? 'again' : move.kind) === kind).length;
    return n === 0 ? [] : [kind === 'again' ? `${count(n, 'link')} once more` : count(n, kind)];
  });
  const left = `${count(moves.length, 'move')} left: ${kinds.join(', ')}.`;
  const back = out === 0 ? '' : ` ${count(out, 'value')} came back outside the tolerance.`;
  const first = `${lowerFirst(rows[0].what)}.`;
  // Of seats that nobody looked at nothing is known: they come before whatever is on the list.
  const lead = done.length > 0 ? 'Next: ' : areSeatsTested ? 'Start: ' : `Start: ${TEST_SEATS}, then `;
  return {
    headline: `${lead}${first}`,
    standing: `${left}${made === '' ? '' : ` ${made}.`}${back}`,
  };
}

/** @param made empty where nothing was @param untested how many links nobody read */
function nothingLeft(made: string, untested: number): Pick<WorkView, 'headline' | 'standing'> {
  if (made !== '') {
    const standing = 'Seats, heights and the links that were read are within their tolerances.';
    return { headline: `All done: ${made}.`, standing };
  }
  return {
    headline:
      untested === 0
        ? 'Nothing to do: nothing leaks, no link is out, and no height is to change.'
        : `Nothing is known to be out: ${untested === 1 ? 'a link was' : `${untested} links were`} never read, test ${untested === 1 ? 'it' : 'them'} first.`,
    standing:
      'Mark seats that leak below, and propose openings on the sheet, the key or the scale; the work appears here in its order.',
  };
}

/** Whether a person marked a seat that leaks, or spoke of the step. */
function areSeatsTested(visit: VisitDocument): boolean {
  return (visit.leakingSeats ?? []).length > 0 || saidOf(visit, 'seals and links') !== null;
}

const TEST_SEATS = 'test every seat with a light, none is marked below yet';

const ORDER =
  'Seats first, since every link is set to a seat; heights move links, so those come once more. So group by group, the greatest of linked keys first, the lower stack.';

function unreadWords(plan: WorkPlan): string {
  const unread = plan.ok ? plan.report.untested.length : 0;
  if (unread === 0) return '';
  return `${count(unread, 'link')} that nobody read ${unread === 1 ? 'counts' : 'count'} as shutting both at once until ${unread === 1 ? 'it is' : 'they are'} tested with papers.`;
}

function count(n: number, one: string): string {
  return `${n} ${one}${n === 1 ? '' : 's'}`;
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
