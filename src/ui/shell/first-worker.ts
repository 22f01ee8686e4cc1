import type { WorkerPort } from './physics-client.ts';

const makeWorker = (): WorkerPort =>
  new Worker(new URL('./physics-worker.ts', import.meta.url), { type: 'module', name: 'physics' });

/** Begun as soon as this file is read, so that the acoustics are ready when the page is. */
let first: WorkerPort | null = makeWorker();
// One that fell before anybody asked it is no use: the next is made when it is needed, and says what is wrong.
first.onerror = () => (first = null);

/** The worker that was begun first; after that a new one each time. */
export function takeWorker(): WorkerPort {
  const worker = first ?? makeWorker();
  first = null;
  return worker;
}
