/** Every view says its first picture as a mark of this beginning. */
const FIRST_PICTURE = 'first-';
/** A view without a picture has had its time, ms. */
const LONGEST_MS = 4000;

/**
 * Resolves once the first picture has been drawn, or when a view without one has had its time: what is fetched for
 * later waits until then, so that it never stands in the way of what is looked at now.
 */
export function whenSettled(): Promise<void> {
  return new Promise((resolve) => {
    const watch = new PerformanceObserver((list) => {
      if (list.getEntries().some(({ name }) => name.startsWith(FIRST_PICTURE))) settle();
    });
    const settle = (): void => {
      watch.disconnect();
      clearTimeout(late);
      resolve();
    };
    const late = setTimeout(settle, LONGEST_MS);
    // What was drawn before this was asked counts as well.
    watch.observe({ type: 'mark', buffered: true });
  });
}
