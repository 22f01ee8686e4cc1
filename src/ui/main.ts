import './views/workbench/workbench-view.ts';
import { openBench } from './shell/bench.ts';
import { demoAlto, DEMO_HORNS } from './shell/demo-horns.ts';
import type { WorkerPort } from './shell/physics-client.ts';
import { followHash } from './shell/view-hash.ts';
import { makeBenchState } from './state/bench-state.ts';
import { makeStore } from './state/bench-store.ts';

const makeWorker = (): WorkerPort =>
  new Worker(new URL('./shell/physics-worker.ts', import.meta.url), { type: 'module', name: 'physics' });

const shelf = DEMO_HORNS.map(({ id, label }) => ({ id, label }));
const store = makeStore(makeBenchState(shelf, demoAlto()));
followHash(store);

document.querySelector('vw-workbench')!.bench = openBench(store, makeWorker);
