import type { BenchState } from '../state/bench-state.ts';
import type { Store } from '../state/bench-store.ts';
import { placeOfHash, viewOfHash } from '../state/view-names.ts';

/** The view is the page's hash, so that a reload or the way back keeps it. */
export function followHash(store: Store<BenchState>): void {
  const take = (): void => {
    const [view, place] = [viewOfHash(location.hash), placeOfHash(location.hash)];
    store.update((state) =>
      state.view === view && state.place === place ? state : { ...state, view, place },
    );
  };
  addEventListener('hashchange', take);
  take();
}
