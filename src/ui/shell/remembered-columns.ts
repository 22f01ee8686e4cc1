import type { BenchState } from '../state/bench-state.ts';
import type { Store } from '../state/bench-store.ts';
import { keptShelf, readShelf, shelfInLibrary, type ShelvedHorn } from '../state/shelf.ts';
import { keptSide, readKeptSide } from '../state/side-by-side-kept.ts';
import type { Library } from './library.ts';

const SIDE = 'ventwright.side-by-side';
const SHELF = 'ventwright.shelf';

/**
 * Keeps what stands side by side and the head's list of horns over a reload, and takes up what was kept.
 *
 * @param brought horns that come with the workbench: they are there anyway
 */
export function keepColumns(store: Store<BenchState>, brought: readonly ShelvedHorn[]): void {
  const shelf = readShelf(recalled(SHELF));
  const { chosen, order } = readKeptSide(recalled(SIDE));
  store.update((state) => ({
    ...state,
    shelf: [...state.shelf, ...shelf.filter(({ id }) => !state.shelf.some((s) => s.id === id))],
    sideBySide: { ...state.sideBySide, chosen, order },
  }));
  const remember = { side: remembering(SIDE), shelf: remembering(SHELF) };
  store.subscribe(() => {
    const state = store.get();
    remember.side(keptSide(state.sideBySide, state.horns));
    remember.shelf(keptShelf(state.shelf, brought));
  });
}

/** Takes names from the library into the head's list, and takes out what is gone. */
export async function freshenShelf(
  store: Store<BenchState>,
  library: Library,
  brought: readonly ShelvedHorn[],
): Promise<void> {
  const listed = await library.list();
  store.update((state) => {
    const stays = new Set([...brought.map(({ id }) => id), ...Object.keys(state.horns)]);
    return { ...state, shelf: shelfInLibrary(state.shelf, listed, stays) };
  });
}

function recalled(name: string): unknown {
  try {
    return JSON.parse(localStorage.getItem(name) ?? 'null');
  } catch {
    // What cannot be read, or a browser that keeps nothing: the page starts with the visit on the bench.
    return null;
  }
}

/** Writes where something changed. */
function remembering(name: string): (value: unknown) => void {
  let last: string | null = null;
  return (value) => {
    const text = JSON.stringify(value);
    if (text === last) return;
    last = text;
    try {
      localStorage.setItem(name, text);
    } catch {
      // Only comfort is lost; the library tells whether horns are kept.
    }
  };
}
