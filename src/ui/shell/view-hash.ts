import type { BenchState } from '../state/bench-state.ts';
import type { Store } from '../state/bench-store.ts';
import { viewOfHash } from '../state/view-names.ts';

/** The view is the page's hash, so that a reload or the way back keeps it. */
export function followHash(store: Store<BenchState>): void {
  const take = (): void => {
    const view = viewOfHash(location.hash);
    store.update((state) => (state.view === view ? state : { ...state, view }));
  };
  addEventListener('hashchange', take);
  take();
}
