/**
 * Lets a service worker keep the whole program once the page has loaded, so that the next time no network is needed.
 * A newer program it fetches waits until no tab has this one open.
 *
 * @returns whether the browser took it
 */
export async function keepForOffline(): Promise<boolean> {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return false;
  if (document.readyState !== 'complete') {
    await new Promise((loaded) => addEventListener('load', loaded, { once: true }));
  }
  try {
    await navigator.serviceWorker.register('./sw.js');
    return true;
  } catch {
    // A private window may refuse: then the bench needs its network, and everything else works.
    return false;
  }
}
