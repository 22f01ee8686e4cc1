import type { MeasuringPoint } from '../../acoustics/index.ts';
import type { LengthUnit } from '../../documents/length-format.ts';
import {
  acceptDay,
  acceptEdit,
  chooseKey,
  documentsInHand,
  hornInHand,
  isCurrent,
  isScaleCurrent,
  keepText,
  propose,
  proposedMmOf,
  refuseDay,
  resetKey,
  studyArrived,
  studyAsked,
  studyFailed,
  takeHorn,
  withdrawProposals,
  type BenchState,
  type Measure,
  type NoteNaming,
  type NoteSpan,
} from '../state/bench-state.ts';
import type { Store } from '../state/bench-store.ts';
import { DAY_FIELDS, LENGTH_FIELDS, type DayFieldId, type FieldId } from '../state/fields.ts';
import type { ProposedOpenings, ScaleNumbers } from '../state/scale-report.ts';
import {
  handRested,
  loudArrived,
  moveArrived,
  moveFailed,
  scaleArrived,
  scaleAsked,
  scaleFailed,
} from '../state/scale-state.ts';
import { DEMO_HORNS } from './demo-horns.ts';
import { makePhysicsClient, type PhysicsClient, type WorkerPort } from './physics-client.ts';

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
  resetKey(): void;
  /** Tells a browser failure. */
  tell(message: string): void;
  dismissAlert(): void;
}

/** A hand that has not moved for so long rests, ms. */
const REST_MS = 150;

/** Joins the store to the physics: what an answer on screen depends on changes, that answer is asked for. */
export function openBench(store: Store<BenchState>, makeWorker: () => WorkerPort): Bench {
  const client: PhysicsClient = makePhysicsClient(makeWorker, {
    study: (id, outcome) =>
      store.update((state) =>
        outcome.ok ? studyArrived(state, id, outcome.value) : studyFailed(state, id, outcome.message),
      ),
    point: (_id, outcome) => {
      if (outcome.ok) store.update((state) => ({ ...state, point: outcome.value }));
    },
    scale: (id, outcome) =>
      store.update((state) => ({
        ...state,
        scale: outcome.ok
          ? scaleArrived(state.scale, id, state.hornId, outcome.value)
          : scaleFailed(state.scale, id, outcome.message),
      })),
    move: (id, outcome) => {
      store.update((state) => ({
        ...state,
        scale: outcome.ok
          ? moveArrived(state.scale, outcome.value)
          : moveFailed(state.scale, outcome.message),
      }));
      if (id === lastMove) restLater();
    },
    loud: (_id, outcome) => {
      if (outcome.ok) {
        store.update((state) => ({ ...state, scale: loudArrived(state.scale, outcome.value) }));
      }
    },
    broken: (message) => {
      store.update((state) => ({
        ...state,
        alert: `The page’s physics stopped and was started again: ${message}`,
      }));
      // What it had prepared is gone; it is asked for again at a person's next act, not in a circle.
      asked = [];
      scaleOf = [];
    },
  });

  let asked: readonly unknown[] = [];
  let askedMm: number | null = null;
  const followKey = (): void => {
    const state = store.get();
    const horn = hornInHand(state);
    const wanted = [horn.documents, horn.edits, horn.keyId, state.day];
    if (wanted.some((part, i) => part !== asked[i])) {
      asked = wanted;
      askedMm = null;
      const { airC, a4Hz } = state.day;
      const id = client.askStudy({ documents: documentsInHand(state), keyId: horn.keyId, airC, a4Hz });
      store.update((s) => studyAsked(s, id));
      return;
    }
    const { report } = state.study;
    if (state.view !== 'key' || report === null || !isCurrent(state)) return;
    const frontMm = Math.min(proposedMmOf(state, report), report.reachMm);
    if (frontMm === askedMm) return;
    askedMm = frontMm;
    client.askPoint(frontMm);
  };

  let scaleOf: readonly unknown[] = [];
  let movedTo: ProposedOpenings = {};
  let lastMove = 0;
  let loudOf: readonly [ScaleNumbers, string] | null = null;
  let resting: ReturnType<typeof setTimeout> | undefined;
  const restLater = (): void => {
    clearTimeout(resting);
    resting = setTimeout(
      () => store.update((state) => ({ ...state, scale: handRested(state.scale) })),
      REST_MS,
    );
  };
  const followScale = (): void => {
    const state = store.get();
    if (state.view !== 'scale') return;
    const horn = hornInHand(state);
    const wanted = [horn.documents, horn.edits, state.day];
    if (wanted.some((part, i) => part !== scaleOf[i])) {
      scaleOf = wanted;
      movedTo = {};
      loudOf = null;
      const { airC, a4Hz } = state.day;
      const id = client.askScale({ documents: documentsInHand(state), airC, a4Hz });
      store.update((s) => ({ ...s, scale: scaleAsked(s.scale, id) }));
      return;
    }
    if (!isScaleCurrent(state)) return;
    if (horn.proposedMm !== movedTo && !(isEmpty(horn.proposedMm) && isEmpty(movedTo))) {
      movedTo = horn.proposedMm;
      lastMove = client.askMove(movedTo);
      return;
    }
    const { rested, proposed } = state.scale;
    if (rested === null || rested !== proposed) return;
    if (loudOf !== null && loudOf[0] === rested && loudOf[1] === state.noteId) return;
    loudOf = [rested, state.noteId];
    client.askLoud(movedTo, state.noteId);
  };

  // The scale first: it answers what the page says biggest.
  const follow = (): void => {
    followScale();
    followKey();
  };
  store.subscribe(follow);
  follow();

  const fail = (what: string, error: unknown): void =>
    store.update((state) => ({ ...state, alert: `${what}: ${String(error)}` }));

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
      const demo = DEMO_HORNS.find((d) => d.id === hornId);
      if (demo === undefined) return;
      try {
        const documents = await demo.load();
        store.update((state) => takeHorn(state, hornId, documents));
      } catch (error) {
        fail(`${demo.label} could not be fetched`, error);
      }
    },
    chooseKey: (keyId) => store.update((state) => chooseKey(state, keyId)),
    propose: (frontMm) => store.update((state) => propose(state, frontMm)),
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
          const { documents, edits, keyId } = hornInHand(state);
          const inHand = { documents, edits, keyId };
          if (field === 'proposed') {
            const { report } = state.study;
            if (report === null) return state;
            const read = readProposed(inHand, state.readAt, report.reachMm, text, state.unit);
            return read.ok
              ? keepText(propose(state, read.value), field, { text, problem: null })
              : keepText(state, field, { text, problem: read.message });
          }
          const plan = LENGTH_FIELDS.find((f) => f.id === field)!;
          const read = readKeyLength(inHand, plan, text, state.unit);
          return read.ok
            ? acceptEdit(state, field, { [field]: read.value }, text)
            : keepText(state, field, { text, problem: read.message });
        }),
      ),
    typeDay: (field, text) =>
      withReader(({ readDayNumber }) => {
        const plan = DAY_FIELDS.find((f) => f.id === field)!;
        const read = readDayNumber(plan, text);
        store.update((state) =>
          read.ok
            ? acceptDay(state, field, read.value, text)
            : refuseDay(state, field, { text, problem: read.message }),
        );
      }),
    setMeasuredAt: (at) =>
      withReader(({ problemWith }) =>
        store.update((state) => {
          const { documents, edits, keyId } = hornInHand(state);
          const problem = problemWith({ documents, edits, keyId }, { measuredAt: at });
          return problem === null
            ? acceptEdit(state, 'measuredAt', { measuredAt: at }, null)
            : keepText(state, 'measuredAt', { text: at, problem });
        }),
      ),
    resetKey: () => store.update(resetKey),
    tell: (alert) => store.update((state) => ({ ...state, alert })),
    dismissAlert: () => store.update((state) => ({ ...state, alert: null })),
  };
}

function isEmpty(openings: ProposedOpenings): boolean {
  return Object.keys(openings).length === 0;
}
