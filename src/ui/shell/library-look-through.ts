import type { Store } from '../state/bench-store.ts';
import { troubleWith, type LibraryDeskState } from '../state/library-desk-state.ts';
import type { ShelfEntry } from '../state/library-state.ts';
import type { Library } from './library.ts';

/**
 * Reads every listed horn that was not read as it is now, one after another while other things go on, and notes
 * which cannot be read.
 */
export function makeLookThrough(store: Store<LibraryDeskState>): (library: Library) => Promise<void> {
  const looked = new Map<string, number>();
  let isLooking = false;
  const next = (): ShelfEntry | undefined =>
    store.get().entries?.find(({ id, changedMs }) => looked.get(id) !== changedMs);
  return async (library) => {
    if (isLooking) return;
    isLooking = true;
    try {
      for (let entry = next(); entry !== undefined; entry = next()) {
        const { id, changedMs } = entry;
        looked.set(id, changedMs);
        const trouble = troubleWith(id, await library.read([id]));
        store.update((state) =>
          (state.troubles[id] ?? null) === trouble
            ? state
            : { ...state, troubles: { ...state.troubles, [id]: trouble } },
        );
        // Whatever else waits goes first.
        await new Promise((rest) => setTimeout(rest));
      }
    } finally {
      isLooking = false;
    }
  };
}
