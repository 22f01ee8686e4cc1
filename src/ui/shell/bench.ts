import type { MeasuringPoint } from '../../acoustics/index.ts';
import type { LengthUnit } from '../../documents/length-format.ts';
import {
  acceptDay,
  acceptEdit,
  accepted,
  chooseKey,
  documentsInHand,
  forgetText,
  hornInHand,
  keepDayText,
  keepText,
  propose,
  putOnBench,
  refused,
  takeUp,
  withdrawProposals,
  withHorn,
  type BenchState,
  type Measure,
  type NoteNaming,
  type NoteSpan,
} from '../state/bench-state.ts';
import type { Store } from '../state/bench-store.ts';
import { DAY_FIELDS, lengthPlan, type DayFieldId, type FieldId } from '../state/fields.ts';
import { redone, rested, undone } from '../state/horn-on-bench.ts';
import { DEMO_HORNS } from './demo-horns.ts';
import { followPhysics } from './follow-physics.ts';
import type { WorkerPort } from './physics-client.ts';

type Reader = typeof import('../state/read-field.ts');

/** Everything a person can do at the bench, as calls. */
export interface Bench {
  readonly store: Store<BenchState>;
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
}

/** A hand that has not moved for so long has ended its movement: the next is a step of its own, ms. */
const MOVEMENT_MS = 600;

/** Opens the bench: acts on the store, and the physics behind it. */
export function openBench(store: Store<BenchState>, makeWorker: () => WorkerPort): Bench {
  followPhysics(store, makeWorker);

  const fail = (what: string, error: unknown): void =>
    store.update((state) => ({ ...state, alert: `${what}: ${String(error)}` }));

  let ending: ReturnType<typeof setTimeout> | undefined;
  const endMovementLater = (): void => {
    clearTimeout(ending);
    ending = setTimeout(() => store.update(endMovement), MOVEMENT_MS);
  };

  // Reading typed lengths needs the unit library; it is fetched when a hand first goes to a field.
  const withReader = async (work: (reader: Reader) => void): Promise<void> => {
    let reader: Reader;
    try {
      reader = await import('../state/read-field.ts');
    } catch (error) {
      fail('What reads the fields could not be fetched', error);
      return;
    }
    work(reader);
  };

  return {
    store,
    async takeHorn(hornId) {
      if (store.get().horns[hornId] !== undefined) {
        store.update((state) => takeUp(state, hornId));
        return;
      }
      const demo = DEMO_HORNS.find((d) => d.id === hornId);
      if (demo === undefined) return;
      try {
        const contents = await demo.load();
        store.update((state) => putOnBench(state, contents));
      } catch (error) {
        fail(`${demo.label} could not be fetched`, error);
      }
    },
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
    expectTyping: () => void withReader(() => undefined),
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
              ? endMovement(keepText(propose(state, read.value), field, accepted(text, read.value)))
              : keepText(state, field, refused(text, read.message));
          }
          const read = readKeyLength(inHand, lengthPlan(field), text, state.unit);
          return read.ok
            ? acceptEdit(state, field, { [field]: read.value }, text)
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
  };
}

function endMovement(state: BenchState): BenchState {
  return withHorn(state, rested);
}
