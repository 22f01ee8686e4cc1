import type { MeasuringPoint } from '../../acoustics/index.ts';
import { recordsOf, SETUP_ROLES, type BenchContents } from '../../documents/bench-contents.ts';
import { keyedHoles, type HornDocument } from '../../documents/horn-document.ts';
import type { LibraryRecords } from '../../documents/library-file.ts';
import type { SetupDocument } from '../../documents/setup-document.ts';
import type { HornAndSetup } from '../../documents/to-acoustics.ts';
import type { DayFieldId, FieldId, HeadFieldId } from './fields.ts';
import { foundDocuments } from './key-lengths.ts';
import { memoLast } from './memo-last.ts';

/** A text as typed, and what became of it. */
export interface TypedText {
  readonly text: string;
  /** what is wrong with it, or null */
  readonly problem: string | null;
  /** what was read from it, in the field's own unit; null where it was refused */
  readonly value: number | null;
}

/** A text that was understood. */
export function accepted(text: string, value: number | null): TypedText {
  return { text, problem: null, value };
}

/** A text that was refused. */
export function refused(text: string, problem: string): TypedText {
  return { text, problem, value: null };
}

/** Texts typed on one key. */
export type KeyTexts = Readonly<Partial<Record<FieldId | 'measuredAt', TypedText>>>;

/** One horn on the bench with all that was done to it. */
export interface HornOnBench {
  readonly contents: BenchContents;
  /** what it was before, oldest first; nothing is ever dropped */
  readonly past: readonly BenchContents[];
  /** what was undone, the next to redo last */
  readonly future: readonly BenchContents[];
  /** names a movement of the hand that is still under way, and counts as one step; null between movements */
  readonly movement: string | null;
  readonly keyId: string;
  /** by pad id */
  readonly typed: Readonly<Record<string, KeyTexts>>;
  /** texts about the day, the horn and the visit */
  readonly dayTyped: Readonly<Partial<Record<DayFieldId | HeadFieldId, TypedText>>>;
  /** where an opening was read, for cells that have a choice of their own, by pad id */
  readonly ownPoint: Readonly<Record<string, Readonly<Partial<Record<FieldId, MeasuringPoint>>>>>;
}

/** The lower-stack E key: the one the bench opens with. */
const FIRST_KEY = 'e';

export function onBench(contents: BenchContents): HornOnBench {
  const keys = keyedHoles(contents.horn.document);
  const keyId = keys.some((k) => k.id === FIRST_KEY) ? FIRST_KEY : keys[0].id;
  return { contents, past: [], future: [], movement: null, keyId, typed: {}, dayTyped: {}, ownPoint: {} };
}

/**
 * The next step of a horn's history.
 *
 * @param movement a name the step shares with the ones that follow it in one movement of the hand; the whole
 *                 movement is undone at once
 */
export function stepped(horn: HornOnBench, contents: BenchContents, movement: string | null): HornOnBench {
  if (contents === horn.contents) return horn;
  const goesOn = movement !== null && movement === horn.movement;
  return {
    ...horn,
    contents,
    past: goesOn ? horn.past : [...horn.past, horn.contents],
    future: [],
    movement,
  };
}

/** The hand rests: what it does next is a step of its own. */
export function rested(horn: HornOnBench): HornOnBench {
  return horn.movement === null ? horn : { ...horn, movement: null };
}

/** One step back; the key it was done on is taken in hand. */
export function undone(horn: HornOnBench): HornOnBench {
  const contents = horn.past[horn.past.length - 1];
  if (contents === undefined) return horn;
  return {
    ...horn,
    contents,
    past: horn.past.slice(0, -1),
    future: [...horn.future, horn.contents],
    movement: null,
    keyId: keyToTake(horn, contents),
  };
}

/** Whether the next step back is the one that wrote what is proposed: none is after a reload. */
export function undoTakesBackProposal({ past, contents }: HornOnBench): boolean {
  const before = past[past.length - 1];
  return before !== undefined && before.proposed !== contents.proposed;
}

/** One step forward again. */
export function redone(horn: HornOnBench): HornOnBench {
  const contents = horn.future[horn.future.length - 1];
  if (contents === undefined) return horn;
  return {
    ...horn,
    contents,
    past: [...horn.past, horn.contents],
    future: horn.future.slice(0, -1),
    movement: null,
    keyId: keyToTake(horn, contents),
  };
}

/** The key in hand where a step changed it or none, else the first that it changed. */
function keyToTake({ contents, keyId }: HornOnBench, after: BenchContents): string {
  const changed = [
    ...SETUP_ROLES.flatMap((role) => changedSettings(contents[role].document, after[role].document)),
    ...changedHoles(contents.horn.document, after.horn.document),
  ];
  return changed.includes(keyId) ? keyId : (changed[0] ?? keyId);
}

function changedSettings(before: SetupDocument, after: SetupDocument): string[] {
  if (before === after) return [];
  const was = new Map(before.keys.map((k) => [k.pad, k]));
  const is = new Map(after.keys.map((k) => [k.pad, k]));
  return [...new Set([...was.keys(), ...is.keys()])].filter((pad) => was.get(pad) !== is.get(pad));
}

function changedHoles(before: HornDocument, after: HornDocument): string[] {
  if (before === after) return [];
  return after.holes.flatMap((hole, i) => (hole === before.holes[i] || hole.key === null ? [] : [hole.id]));
}

const changedMemo = memoLast(
  (before: HornAndSetup, after: HornAndSetup): ReadonlySet<string> =>
    new Set([...changedSettings(before.setup, after.setup), ...changedHoles(before.horn, after.horn)]),
);

const firstMemo = memoLast((horn: HornDocument, setup: SetupDocument): HornAndSetup => ({ horn, setup }));

/** Keys whose measurements are no longer what they were when the horn came to the bench: the same set while none changes. */
export function changedSince({ past, contents }: HornOnBench): ReadonlySet<string> {
  const first = past[0] ?? contents;
  return changedMemo(firstMemo(first.horn.document, first.asFound.document), foundDocuments(contents));
}

/** The records that differ between two states of a horn; all where there is none before. */
export function changedRecords(before: BenchContents | null, after: BenchContents): LibraryRecords {
  const all = recordsOf(after);
  if (before === null) return all;
  const known = recordsOf(before);
  const isNew = (list: readonly object[]) => (record: object) => !list.includes(record);
  return {
    horns: all.horns.filter(isNew(known.horns)),
    setups: all.setups.filter(isNew(known.setups)),
    visits: all.visits.filter(isNew(known.visits)),
  };
}
