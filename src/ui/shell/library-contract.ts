import type { BenchContents, VisitPlan } from '../../documents/bench-contents.ts';
import type { LibraryReading, LibraryRecords } from '../../documents/library-file.ts';
import type { DocumentIssue } from '../../documents/schema-parts.ts';
import type { KeptKind, UnreadLibraryFile, UnreadRecords } from '../state/library-records.ts';
import type { ShelfEntry } from '../state/library-state.ts';

/** What became of a save. */
export type SaveOutcome =
  | { readonly kind: 'saved' }
  | {
      /** another tab wrote meanwhile; nothing of this save was written */
      readonly kind: 'conflict';
      readonly hornId: string;
    }
  | { readonly kind: 'refused'; readonly message: string };

/** A horn taken from the library, with everything about it that could not be read. */
export type OpenOutcome =
  | {
      readonly ok: true;
      readonly contents: BenchContents;
      /** the visit and its setups were made just now and are in the library only once all five are saved */
      readonly isNewVisit: boolean;
      readonly issues: readonly DocumentIssue[];
    }
  | { readonly ok: false; readonly message: string; readonly issues: readonly DocumentIssue[] };

/** Who changed a horn: a hand in the library of this tab, or another tab. What {@link Library.save} writes is not told. */
export type ChangedBy = 'this tab' | 'another tab';

/** Whether what is saved stays: for good, until the browser needs room, or only while the page is open. */
export type Standing = 'kept' | 'may be cleared' | 'only while open';

/** The horns of this browser. Nothing is written silently over what another tab wrote. */
export interface Library {
  /** why nothing lasting can be written, or null */
  readonly refusal: string | null;
  standing(): Promise<Standing>;
  /** Asks the browser to keep the library when space runs short; best on a person's act. */
  askToKeep(): Promise<Standing>;
  list(): Promise<readonly ShelfEntry[]>;
  /**
   * @param isWanted asked when the horn has been read. What is no longer wanted counts as not seen by this tab, so
   *                 that what was done here meanwhile does not write over it.
   */
  open(hornId: string, visitId?: string, isWanted?: () => boolean): Promise<OpenOutcome>;
  /** Writes records of one horn, all or none. With the first, the browser is asked to keep the library. */
  save(changed: LibraryRecords): Promise<SaveOutcome>;
  /** Writes records of any horns under ids that are not in use, all or none. */
  add(records: UnreadRecords): Promise<SaveOutcome>;
  /** Writes one record anew as it stands, whoever wrote it last: for what the library itself changes, as a name. */
  amend(record: RecordName, change: (document: unknown) => unknown): Promise<SaveOutcome>;
  /** Takes away some records of one horn, or all of them. Adding or saving them again brings them back. */
  remove(records: { readonly hornId: string; readonly ids: readonly string[] | 'all' }): Promise<SaveOutcome>;
  /** Every record of some horns, read with care; to write over them they have to be opened. */
  read(hornIds: readonly string[] | 'all'): Promise<LibraryReading>;
  /** The same as it is kept, unread, so that what is damaged can be carried away too. */
  raw(hornIds: readonly string[] | 'all'): Promise<UnreadLibraryFile>;
  /** Forgets what this tab knew of a horn: its next save writes over what another tab wrote, on a person's word. */
  yieldTo(hornId: string): Promise<void>;
  /** Calls back when a horn was changed other than by a save of this tab; returns how to stop. */
  watch(listener: (hornId: string, by: ChangedBy) => void): () => void;
}

/** Which record is meant. */
export interface RecordName {
  readonly kind: KeptKind;
  readonly id: string;
  readonly hornId: string;
}

/** What the library needs of the day and of chance. */
export interface LibraryMeans {
  readonly now: () => number;
  readonly makeId: () => string;
  readonly plan: () => VisitPlan;
  /** told when the browser takes the library away */
  readonly onGone: (sentence: string) => void;
}
