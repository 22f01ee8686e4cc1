import type { MeasuringPoint } from '../../acoustics/index.ts';
import type { LengthUnit } from '../../documents/length-format.ts';
import {
  acceptDay,
  acceptEdit,
  forgetText,
  keepDayText,
  keepText,
  propose,
  withdrawProposals,
} from '../state/edits-in-hand.ts';
import { accepted, redone, refused, undone } from '../state/horn-on-bench.ts';
import { chooseKey, endMovements, putOnBench, takeUp, withHorn } from '../state/horns-on-bench.ts';
import {
  documentsInHand,
  hornInHand,
  type BenchState,
  type Measure,
  type NoteNaming,
  type NoteSpan,
  type SheetColumns,
} from '../state/bench-state.ts';
import type { Store } from '../state/bench-store.ts';
import { DAY_FIELDS, lengthPlan, type DayFieldId, type FieldId, type HeadFieldId } from '../state/fields.ts';
import { typedLength } from '../state/key-lengths.ts';
import {
  acceptCells,
  acceptHead,
  pointOf,
  proposeAll,
  refusedBeside,
  restoreCell,
} from '../state/sheet-acts.ts';
import type { CellText } from '../state/read-sheet.ts';
import { nextVisit } from '../../documents/bench-contents.ts';
import { DEMO_HORNS } from './demo-horns.ts';
import { followPhysics } from './follow-physics.ts';
import { fetchSideBySide } from './follow-side-by-side.ts';
import type { SideBySideState } from '../state/side-by-side-state.ts';
import type { ContentsKeeper } from './keep-contents.ts';
import type { Library } from './library.ts';
import { makeLeaksActs, type LeaksActs } from './leaks-acts.ts';
import { makeLinksActs, type LinksActs } from './links-acts.ts';
import { makePadsActs, type PadsActs } from './pads-acts.ts';
import { makeCalibrationActs, type CalibrationActs } from './calibration-acts.ts';
import { makePlayedActs, type PlayedActs } from './played-acts.ts';
import type { WorkerPort } from './physics-client.ts';
import { makePlayerSheetActs, type PlayerSheetActs } from './player-sheet-acts.ts';
import { makeSheetActs, type SheetActs } from './sheet-acts.ts';
import { makeProposalActs, type ProposalActs } from './proposal-acts.ts';
import { makeWorkActs, type WorkActs } from './work-acts.ts';

type Reader = typeof import('../state/read-field.ts');
type SheetReader = typeof import('../state/read-sheet.ts');

/** Everything a person can do at the bench, as calls. */
export interface Bench {
  readonly store: Store<BenchState>;
  /** The horns of this browser, opened when first asked for. */
  library(): Promise<Library>;
  /** Puts a horn of the library on the bench, its latest visit unless one is named; null, or why it cannot. */
  openHorn(hornId: string, visitId?: string): Promise<string | null>;
  /** A visit today over the horn as it stands. */
  newVisit(): void;
  /** After another tab wrote over what is here: takes its work, or keeps this beside it. */
  settleConflict(how: 'theirs' | 'copy'): Promise<void>;
  setColumns(columns: SheetColumns): void;
  /** Reads texts into cells of the sheet, all as one step. */
  typeCells(entries: readonly CellText[]): Promise<void>;
  restoreCell(pad: string, cell: FieldId): void;
  typeHead(field: HeadFieldId, text: string): Promise<void>;
  restoreHead(field: HeadFieldId): void;
  /** Proposes openings for several keys in one step, mm at the front by pad id. */
  proposeAll(frontsMm: Readonly<Record<string, number>>): void;
  /** Changes what stands side by side, or how it is sorted. */
  sideBySide(change: (side: SideBySideState) => SideBySideState): void;
  takeHorn(hornId: string): Promise<void>;
  chooseKey(keyId: string): void;
  propose(frontMm: number | null): void;
  /** Every key as found again. */
  withdrawProposals(): void;
  chooseNote(fingeringId: string): void;
  setNaming(naming: NoteNaming): void;
  setSpan(span: NoteSpan): void;
  setA4(hz: number): void;
  setUnit(unit: LengthUnit): void;
  setReadAt(at: MeasuringPoint): void;
  setMeasure(measure: Measure): void;
  /** Fetches what reading a field needs, ahead of the first word typed. */
  expectTyping(): void;
  type(field: FieldId, text: string): Promise<void>;
  typeDay(field: DayFieldId, text: string): Promise<void>;
  setMeasuredAt(at: MeasuringPoint): Promise<void>;
  /** Shows what is in use instead of a refused text. */
  restore(field: FieldId): void;
  restoreDay(field: DayFieldId): void;
  undo(): void;
  redo(): void;
  /** Tells a browser failure. */
  tell(message: string): void;
  dismissAlert(): void;
  /** Takes a newer program that waits, once all that was done here is saved; or puts it off. */
  newer(how: 'take' | 'put off'): Promise<void>;
  readonly links: LinksActs;
  readonly leaks: LeaksActs;
  readonly pads: PadsActs;
  readonly work: WorkActs;
  readonly playerSheet: PlayerSheetActs;
  readonly sheet: SheetActs;
  readonly played: PlayedActs;
  readonly proposal: ProposalActs;
  readonly calibration: CalibrationActs;
}

/** A hand that has not moved for so long has ended its movement: the next is a step of its own, ms. */
const MOVEMENT_MS = 600;

/** What the bench needs besides its state. */
export interface BenchMeans {
  readonly makeWorker: () => WorkerPort;
  readonly keeper: ContentsKeeper;
  readonly library: () => Promise<Library>;
  readonly makeId: () => string;
  /** such as 2026-05-31 */
  readonly today: () => string;
  /** loads the page anew with the newer program that waits */
  readonly takeNewer: () => void;
}

/** Opens the bench: acts on the store, and the physics behind it. */
export function openBench(
  store: Store<BenchState>,
  { makeWorker, keeper, makeId, today, library, takeNewer }: BenchMeans,
): Bench {
  followPhysics(store, makeWorker);
  fetchSideBySide(store, library);

  const fail = (what: string, error: unknown): void =>
    store.update((state) => ({ ...state, alert: `${what}: ${String(error)}` }));

  let ending: ReturnType<typeof setTimeout> | undefined;
  const endMovementLater = (): void => {
    clearTimeout(ending);
    ending = setTimeout(() => store.update(endMovements), MOVEMENT_MS);
  };

  // Reading typed lengths needs the unit library; it is fetched when a hand first goes to a field.
  const reading = async <R>(fetch: () => Promise<R>, work: (reader: R) => void): Promise<void> => {
    let reader: R;
    try {
      reader = await fetch();
    } catch (error) {
      fail('What reads the fields could not be fetched', error);
      return;
    }
    work(reader);
  };
  const withReader = (work: (reader: Reader) => void): Promise<void> =>
    reading(() => import('../state/read-field.ts'), work);
  const withSheetReader = (work: (reader: SheetReader) => void): Promise<void> =>
    reading(() => import('../state/read-sheet.ts'), work);

  return {
    store,
    library,
    sideBySide: (change) => store.update((state) => ({ ...state, sideBySide: change(state.sideBySide) })),
    async takeHorn(hornId) {
      if (store.get().horns[hornId] !== undefined) {
        store.update((state) => takeUp(state, hornId));
        return;
      }
      const missing = await keeper.open(hornId);
      if (missing === null) return;
      const demo = DEMO_HORNS.find((d) => d.id === hornId);
      if (demo === undefined) {
        store.update((state) => ({ ...state, alert: missing }));
        return;
      }
      try {
        const contents = await demo.load();
        keeper.untouched(contents);
        store.update((state) => putOnBench(state, contents));
      } catch (error) {
        fail(`${demo.label} could not be fetched`, error);
      }
    },
    openHorn: (hornId, visitId) => keeper.open(hornId, visitId),
    newVisit: () =>
      store.update((state) => {
        const { contents } = hornInHand(state);
        const { airC, a4Hz, player, measuredBy } = contents.visit.document;
        const told = {
          ...(player === undefined ? {} : { player }),
          ...(measuredBy === undefined ? {} : { measuredBy }),
        };
        const plan = { date: today(), startedMs: Date.now(), airC, a4Hz, ...told };
        return putOnBench(state, nextVisit(contents, plan, makeId));
      }),
    settleConflict: (how) => keeper.settle(how),
    setColumns: (columns) => store.update((state) => ({ ...state, columns })),
    typeCells: (entries) =>
      withSheetReader(({ readCells }) =>
        store.update((state) => {
          const { contents, typed } = hornInHand(state);
          const manner = {
            unit: state.unit,
            pointOf: (pad: string, cell: FieldId) => pointOf(state, pad, cell),
          };
          return acceptCells(state, readCells(contents, entries, manner, refusedBeside(entries, typed)));
        }),
      ),
    restoreCell: (pad, cell) => store.update((state) => restoreCell(state, pad, cell)),
    typeHead: (field, text) =>
      withSheetReader(({ readHead }) =>
        store.update((state) =>
          acceptHead(state, field, text, readHead(hornInHand(state).contents, field, text)),
        ),
      ),
    restoreHead: (field) => store.update((state) => keepDayText(state, field, null)),
    proposeAll: (frontsMm) => store.update((state) => proposeAll(state, frontsMm)),
    chooseKey: (keyId) => store.update((state) => chooseKey(state, keyId)),
    propose: (frontMm) => {
      store.update((state) => propose(state, frontMm));
      endMovementLater();
    },
    withdrawProposals: () => store.update(withdrawProposals),
    chooseNote: (noteId) => store.update((state) => ({ ...state, noteId })),
    setNaming: (naming) => store.update((state) => ({ ...state, naming })),
    setSpan: (span) => store.update((state) => ({ ...state, span })),
    setA4: (hz) => store.update((state) => acceptDay(state, 'a4Hz', hz, `${hz} Hz`)),
    setUnit: (unit) => store.update((state) => ({ ...state, unit })),
    setReadAt: (readAt) => store.update((state) => ({ ...state, readAt })),
    setMeasure: (measure) => store.update((state) => ({ ...state, measure })),
    expectTyping: () => {
      void withReader(() => undefined);
      void withSheetReader(() => undefined);
    },
    type: (field, text) =>
      withReader(({ readKeyLength, readProposed }) =>
        store.update((state) => {
          const inHand = { documents: documentsInHand(state), keyId: hornInHand(state).keyId };
          if (field === 'asSet') return state;
          if (field === 'proposed') {
            const { report } = state.study;
            if (report === null) return state;
            const read = readProposed(inHand, state.readAt, report.reachMm, text, state.unit);
            return read.ok
              ? endMovements(keepText(propose(state, read.value), field, accepted(text, read.value)))
              : keepText(state, field, refused(text, read.message));
          }
          const read = readKeyLength(inHand, lengthPlan(field), text, state.unit);
          return read.ok
            ? acceptEdit(state, field, typedLength(field, read.value, read.plusMinusMm), text)
            : keepText(state, field, refused(text, read.message));
        }),
      ),
    typeDay: (field, text) =>
      withReader(({ readDayNumber }) => {
        const plan = DAY_FIELDS.find((f) => f.id === field)!;
        const read = readDayNumber(plan, text);
        store.update((state) =>
          read.ok
            ? acceptDay(state, field, read.value, text)
            : keepDayText(state, field, refused(text, read.message)),
        );
      }),
    setMeasuredAt: (at) =>
      withReader(({ problemWith }) =>
        store.update((state) => {
          const inHand = { documents: documentsInHand(state), keyId: hornInHand(state).keyId };
          const problem = problemWith(inHand, { measuredAt: at });
          return problem === null
            ? acceptEdit(state, 'measuredAt', { measuredAt: at }, null)
            : keepText(state, 'measuredAt', refused(at, problem));
        }),
      ),
    restore: (field) => store.update((state) => forgetText(state, field)),
    restoreDay: (field) => store.update((state) => keepDayText(state, field, null)),
    undo: () => store.update((state) => withHorn({ ...state, point: null }, undone)),
    redo: () => store.update((state) => withHorn({ ...state, point: null }, redone)),
    tell: (alert) => store.update((state) => ({ ...state, alert })),
    dismissAlert: () => store.update((state) => ({ ...state, alert: null })),
    async newer(how) {
      store.update((state) => ({ ...endMovements(state), newer: how === 'take' ? 'ready' : 'put off' }));
      if (how === 'put off') return;
      if (await keeper.allSaved()) takeNewer();
      else {
        const alert =
          'Something done here is not saved yet; the newer Ventwright can be taken once that is settled.';
        store.update((state) => ({ ...state, alert }));
      }
    },
    links: makeLinksActs(store, reading),
    leaks: makeLeaksActs(store, reading),
    pads: makePadsActs(store, reading),
    work: makeWorkActs(store, reading),
    playerSheet: makePlayerSheetActs(store, reading),
    sheet: makeSheetActs(store, reading),
    played: makePlayedActs(store, reading),
    proposal: makeProposalActs(store),
    calibration: makeCalibrationActs(store),
  };
}
