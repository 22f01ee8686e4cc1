import type { MeasuringPoint } from '../../acoustics/index.ts';
import type { LengthUnit } from '../../documents/length-format.ts';
import {
  acceptDay,
  acceptEdit,
  chooseKey,
  documentInHand,
  hornInHand,
  isCurrent,
  keepText,
  propose,
  proposedMmOf,
  refuseDay,
  resetKey,
  studyArrived,
  studyAsked,
  studyFailed,
  takeHorn,
  type BenchState,
  type Measure,
} from '../state/bench-state.ts';
import type { Store } from '../state/bench-store.ts';
import { DAY_FIELDS, LENGTH_FIELDS, type DayFieldId, type FieldId } from '../state/fields.ts';
import { DEMO_HORNS } from './demo-horns.ts';
import { makePhysicsClient, type PhysicsClient, type WorkerPort } from './physics-client.ts';

type Reader = typeof import('../state/read-field.ts');

/** Everything a person can do at the bench, as calls. */
export interface Bench {
  readonly store: Store<BenchState>;
  takeHorn(hornId: string): Promise<void>;
  chooseKey(keyId: string): void;
  propose(frontMm: number | null): void;
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

/** Joins the store to the physics: what the study depends on changes, a study is asked for. */
export function openBench(store: Store<BenchState>, makeWorker: () => WorkerPort): Bench {
  const client: PhysicsClient = makePhysicsClient(makeWorker, {
    study: (id, outcome) =>
      store.update((state) =>
        outcome.ok ? studyArrived(state, id, outcome.value) : studyFailed(state, id, outcome.message),
      ),
    point: (_id, outcome) => {
      if (outcome.ok) store.update((state) => ({ ...state, point: outcome.value }));
    },
    broken: (message) =>
      store.update((state) => ({
        ...state,
        alert: `The page’s physics stopped and was started again: ${message}`,
      })),
  });

  let asked: readonly unknown[] = [];
  let askedMm: number | null = null;
  const follow = (): void => {
    const state = store.get();
    const horn = hornInHand(state);
    const wanted = [horn.document, horn.edits, horn.keyId, state.day];
    if (wanted.some((part, i) => part !== asked[i])) {
      asked = wanted;
      askedMm = null;
      const { airC, a4Hz } = state.day;
      const id = client.askStudy({ document: documentInHand(state), keyId: horn.keyId, airC, a4Hz });
      store.update((s) => studyAsked(s, id));
      return;
    }
    const { report } = state.study;
    if (report === null || !isCurrent(state)) return;
    const frontMm = Math.min(proposedMmOf(state, report), report.reachMm);
    if (frontMm === askedMm) return;
    askedMm = frontMm;
    client.askPoint(frontMm);
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
        const document = await demo.load();
        store.update((state) => takeHorn(state, hornId, document));
      } catch (error) {
        fail(`${demo.label} could not be fetched`, error);
      }
    },
    chooseKey: (keyId) => store.update((state) => chooseKey(state, keyId)),
    propose: (frontMm) => store.update((state) => propose(state, frontMm)),
    setUnit: (unit) => store.update((state) => ({ ...state, unit })),
    setReadAt: (readAt) => store.update((state) => ({ ...state, readAt })),
    setMeasure: (measure) => store.update((state) => ({ ...state, measure })),
    expectTyping: () => void withReader(() => undefined),
    type: (field, text) =>
      withReader(({ readKeyLength, readProposed }) =>
        store.update((state) => {
          const { document, edits, keyId } = hornInHand(state);
          const inHand = { document, edits, keyId };
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
          const { document, edits, keyId } = hornInHand(state);
          const problem = problemWith({ document, edits, keyId }, { measuredAt: at });
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
