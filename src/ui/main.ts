import './views/workbench/workbench-view.ts';
import { REFERENCE_C } from '../acoustics/index.ts';
import { openBench } from './shell/bench.ts';
import { demoAlto, DEMO_HORNS, makeId, today, USUAL_A4_HZ } from './shell/demo-horns.ts';
import { takeWorker } from './shell/first-worker.ts';
import { keepContents } from './shell/keep-contents.ts';
import type { Library } from './shell/library.ts';
import { keepForOffline, type NewerProgram } from './shell/offline.ts';
import { freshenShelf, keepColumns } from './shell/remembered-columns.ts';
import { mayHaveLibrary, rememberedBench, rememberedUnit, rememberUnit } from './shell/remembered.ts';
import { recallStock } from './shell/remembered-stock.ts';
import { followHash } from './shell/view-hash.ts';
import { endMovements } from './state/horns-on-bench.ts';
import { makeBenchState } from './state/bench-state.ts';
import { makeStore } from './state/bench-store.ts';

const shelf = DEMO_HORNS.map(({ id, label }) => ({ id, label }));
const alto = demoAlto();
const store = makeStore({ ...makeBenchState(shelf, alto), unit: rememberedUnit() });

const tell = (alert: string): void => store.update((state) => ({ ...state, alert }));
let opening: Promise<Library> | null = null;
/** The library, opened when somebody first needs it. */
const library = (): Promise<Library> => {
  opening ??= import('./shell/library.ts').then(({ openLibrary }) =>
    openLibrary({
      now: Date.now,
      makeId,
      plan: () => ({ date: today(), startedMs: Date.now(), airC: REFERENCE_C, a4Hz: USUAL_A4_HZ }),
      onGone: tell,
    }),
  );
  // What could not be fetched is asked for again the next time.
  opening.catch(() => (opening = null));
  return opening;
};
const keeper = keepContents(store, { library, makeId });
keeper.untouched(alto);

followHash(store);
recallStock(store);
keepColumns(store, shelf);
let { unit } = store.get();
store.subscribe(() => {
  if (store.get().unit === unit) return;
  unit = store.get().unit;
  rememberUnit(unit);
});

// A page that goes out of sight may not come back: what a hand is still moving is saved as it is.
document.addEventListener('visibilitychange', () => {
  if (document.hidden) store.update(endMovements);
});

let newer: NewerProgram | null = null;
const start = (): void => {
  document.querySelector('vw-workbench')!.bench = openBench(store, {
    makeWorker: takeWorker,
    keeper,
    makeId,
    today,
    library,
    takeNewer: () => newer?.take(),
  });
};

// A horn that was saved comes back; where none was, nothing is waited for.
const failed = (error: unknown): void => tell(`The library could not be opened: ${String(error)}`);
const freshen = async (): Promise<void> => freshenShelf(store, await library(), shelf);
const last = rememberedBench();
if (last === null) {
  start();
  void mayHaveLibrary()
    .then((may) => (may ? keeper.comeBack(null).then(freshen) : undefined))
    .catch(failed);
} else void keeper.comeBack(last).catch(failed).finally(start).then(freshen).catch(failed);
void keepForOffline((program) => {
  newer = program;
  store.update((state) => ({ ...state, newer: 'ready' }));
});
