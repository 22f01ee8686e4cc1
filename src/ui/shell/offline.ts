import { whenSettled } from './settled.ts';

/** A newer program that the browser has fetched whole, and that waits. */
export interface NewerProgram {
  /** Lets it take over, and loads the page anew with it. */
  take(): void;
}

/** How long a page that comes back into sight lets pass before it looks for a newer program again, ms. */
const LOOK_AGAIN_MS = 3_600_000;

/**
 * Lets a service worker keep the whole program once the first picture is there, so that the next time no network is needed.
 * A newer program it fetches waits: nothing is reloaded under a person's hands.
 *
 * @param onNewer called once for each newer program that waits
 * @returns whether the browser took it
 */
export async function keepForOffline(onNewer: (newer: NewerProgram) => void): Promise<boolean> {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return false;
  await whenSettled();
  try {
    watch(await navigator.serviceWorker.register('./sw.js'), onNewer);
    return true;
  } catch {
    // A private window may refuse: then the bench needs its network, and everything else works.
    return false;
  }
}

function watch(registration: ServiceWorkerRegistration, onNewer: (newer: NewerProgram) => void): void {
  let told: ServiceWorker | null = null;
  const offer = (): void => {
    const { waiting } = registration;
    // The first worker of all waits for nothing, and is not newer than anything.
    if (waiting === null || waiting === told || navigator.serviceWorker.controller === null) return;
    told = waiting;
    onNewer({ take: () => takeOver(waiting) });
  };
  registration.addEventListener('updatefound', () => {
    registration.installing?.addEventListener('statechange', offer);
  });
  offer();
  let looked = performance.now();
  document.addEventListener('visibilitychange', () => {
    if (document.hidden || performance.now() - looked < LOOK_AGAIN_MS) return;
    looked = performance.now();
    // Without a network there is nothing newer to be had, and nothing to say.
    registration.update().catch(() => undefined);
  });
}

/** The waiting worker takes every page over; only the one whose person asked is loaded anew. */
function takeOver(waiting: ServiceWorker): void {
  navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
  waiting.postMessage({ type: 'SKIP_WAITING' });
}
