import type { LibraryReading } from '../../documents/library-file.ts';
import type { DocumentIssue } from '../../documents/schema-parts.ts';
import type { UnreadRecords } from './library-records.ts';
import type { ShelfEntry } from './library-state.ts';

/** What became of one file that was brought in. */
export interface FileReport {
  readonly fileName: string;
  /** what came of it, a sentence each */
  readonly told: readonly string[];
  /** everything wrong with it: where, and what */
  readonly issues: readonly { readonly where: string; readonly message: string }[];
}

/** A file that was given to a person. */
export interface SavedFile {
  readonly fileName: string;
  /** how many damaged records no file can hold */
  readonly lost: number;
}

/** Issues as a report lists them; what only follows from another, and is said of many, is said once. */
export function toldIssues(issues: readonly DocumentIssue[]): FileReport['issues'] {
  const isFirst = ({ code, message }: DocumentIssue, i: number): boolean =>
    code !== 'reference' || issues.findIndex((other) => other.message === message) === i;
  return issues.filter(isFirst).map(({ path, code, message }) => {
    const more = code === 'reference' ? issues.filter((other) => other.message === message).length - 1 : 0;
    return { where: more === 0 ? path : `${path} and ${more} more`, message };
  });
}

/** Something taken out of the library that can be put back. */
export interface Removed {
  /** as a sentence names it */
  readonly words: string;
  readonly records: UnreadRecords;
}

/** The name of a horn or setup being written anew. */
export interface Renaming {
  readonly kind: 'horns' | 'setups';
  readonly id: string;
  readonly text: string;
  readonly problem: string | null;
}

/** Everything the view of the library depends on. */
export interface LibraryDeskState {
  /** the last changed first; null before the first listing */
  readonly entries: readonly ShelfEntry[] | null;
  readonly search: string;
  /** what of a horn cannot be read, by its id; null where all of it can */
  readonly troubles: Readonly<Record<string, string | null>>;
  /** the horn whose setups and visits are shown */
  readonly shownId: string | null;
  /** what could be read of it; null until it has come */
  readonly shown: LibraryReading | null;
  readonly renaming: Renaming | null;
  /** what is being done that takes a while, or null */
  readonly busy: string | null;
  /** what was last taken out last */
  readonly removed: readonly Removed[];
  /** what was last done, or null */
  readonly done: string | null;
  readonly problem: string | null;
  readonly reports: readonly FileReport[];
  /** how safe the library lies: why it is not kept, or may not be; null where it is or that is not known yet */
  readonly caution: string | null;
}

export const EMPTY_DESK: LibraryDeskState = {
  entries: null,
  search: '',
  troubles: {},
  shownId: null,
  shown: null,
  renaming: null,
  busy: null,
  removed: [],
  done: null,
  problem: null,
  reports: [],
  caution: null,
};

/** Shown while the browser has not promised to keep the library. @param filed the day all of it last went into a file */
export function mayBeCleared(filed: string | null): string {
  const last = filed === null ? 'keep a file of it.' : `all of it was last saved as a file on ${filed}.`;
  return `This browser may clear the library when space runs short: ${last}`;
}

/** The longest name, letters. */
const LONGEST = 200;

/** What is wrong with a name, or null. */
export function problemWithName(what: string, text: string): string | null {
  const letters = text.trim().length;
  return letters >= 1 && letters <= LONGEST
    ? null
    : `invalid ${what}: ${letters} letters; expected 1 to ${LONGEST}`;
}

/** What of a horn's records cannot be read, a phrase each; what only follows from that is left out. */
export function unreadOf(hornId: string, { records, issues }: LibraryReading): readonly string[] {
  const isHornRead = records.horns.some(({ id }) => id === hornId);
  const own = issues.filter(
    ({ code, path }) => isHornRead || code !== 'reference' || path.startsWith('horns'),
  );
  return [...new Set(own.map(phraseOf))];
}

/** Where something is wrong, without the numbers of a list nobody sees. */
function phraseOf({ path, code, message }: DocumentIssue): string {
  const [, what, , field] = /^(horn|setup|visit)s\[(\d+)\]\.document\.?(.*)$/.exec(path) ?? [];
  if (what === undefined) return message;
  const record = what === 'horn' ? 'the horn’s record' : `a ${what}`;
  if (field === '' && code === 'invalid_type') return `${record} is damaged`;
  // A version and a kind are told in a sentence of their own.
  return field === '' || field === 'version' || field === 'kind'
    ? `${record}: ${message}`
    : `${record}, ${field}: ${message}`;
}

/** What of a horn cannot be read, in a sentence; null where all of it can. */
export function troubleWith(hornId: string, reading: LibraryReading): string | null {
  const [first, ...others] = unreadOf(hornId, reading);
  if (first === undefined) return null;
  const isHornRead = reading.records.horns.some(({ id }) => id === hornId);
  const more = others.length === 0 ? '' : `, and ${others.length} more`;
  return `${isHornRead ? 'A part of it' : 'It'} cannot be read: ${first}${more}.`;
}

/** Something was done: what it was is told, and an older problem is not told any more. */
export function withDone(state: LibraryDeskState, done: string): LibraryDeskState {
  return { ...state, done, problem: null };
}

/** A file was given; what it could not hold is told as a problem. */
export function withSavedFile(state: LibraryDeskState, { fileName, lost }: SavedFile): LibraryDeskState {
  if (lost === 0) return withDone(state, `Saved as ${fileName}.`);
  const records = lost === 1 ? 'one damaged record is' : `${lost} damaged records are`;
  return withProblem(state, `Saved as ${fileName}; ${records} empty there, because no file can hold them.`);
}

export function withProblem(state: LibraryDeskState, problem: string): LibraryDeskState {
  return { ...state, problem, done: null };
}

export function withRemoved(state: LibraryDeskState, removed: Removed): LibraryDeskState {
  const next = withDone(state, `${removed.words} was removed.`);
  return { ...next, removed: [...state.removed, removed] };
}
