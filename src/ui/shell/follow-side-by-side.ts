import { recordsOf } from '../../documents/bench-contents.ts';
import type { LibraryRecords } from '../../documents/library-file.ts';
import { columnSources, dayInHand, documentsInHand, type BenchState } from '../state/bench-state.ts';
import type { Store } from '../state/bench-store.ts';
import { columnsOf, documentsOf, standingOf } from '../state/side-by-side-columns.ts';
import {
  hornFetched,
  hornForgotten,
  hornsListed,
  sideAsked,
  type FetchedHorn,
  type SideBySideState,
} from '../state/side-by-side-state.ts';
import { DEMO_HORNS } from './demo-horns.ts';
import type { Library } from './library.ts';
import type { PhysicsClient } from './physics-client.ts';

/** Follows the store with the question what differs side by side. */
export function makeSideFollower(
  store: Store<BenchState>,
  client: PhysicsClient,
): { follow(): void; forget(): void } {
  let asked: readonly unknown[] | null = null;
  return {
    forget: () => {
      asked = null;
    },
    follow: () => {
      const state = store.get();
      if (state.view !== 'side-by-side') return;
      const sources = columnSources(state);
      const standings = columnsOf(state.sideBySide.chosen, sources).map((c) => standingOf(sources, c));
      if (standings.some(({ kind }) => kind === 'on its way')) return;
      const found = standings.map((s) => (s.kind === 'there' ? s.source : null));
      const { airC, a4Hz } = dayInHand(state);
      const parts = found.flatMap((s) =>
        s === null ? [null] : [s.horn.document, s.setup.document, s.under],
      );
      const bench = documentsInHand(state);
      const wanted = [...parts, bench, airC, a4Hz];
      if (asked !== null && wanted.length === asked.length && wanted.every((p, i) => p === asked![i])) return;
      asked = wanted;
      const columns = found.map((source) => (source === null ? null : documentsOf(source)));
      const id = client.askCompare({ columns, bench, airC, a4Hz });
      store.update((s) => ({ ...s, sideBySide: sideAsked(s.sideBySide, id) }));
    },
  };
}

/** Fetches the horns that stand side by side from the library, whenever the view is entered or one is chosen. */
export function fetchSideBySide(store: Store<BenchState>, library: () => Promise<Library>): void {
  const under = new Set<string>();
  let entered = false;
  let opened: Promise<Library> | null = null;

  const change = (next: (side: SideBySideState) => SideBySideState): void =>
    store.update((state) => ({ ...state, sideBySide: next(state.sideBySide) }));
  const opening = (): Promise<Library> => {
    opened ??= library().then((kept) => {
      kept.watch((hornId) => change((side) => hornForgotten(side, hornId)));
      return kept;
    });
    return opened;
  };

  const list = async (): Promise<void> => {
    try {
      const shelf = await (await opening()).list();
      change((side) =>
        hornsListed(
          side,
          shelf.map(({ id, name }) => ({ id, label: name })),
        ),
      );
    } catch (error) {
      store.update((state) => ({ ...state, alert: `The library could not be listed: ${String(error)}` }));
    }
  };
  const fetch = async (hornId: string): Promise<void> => {
    under.add(hornId);
    let fetched: FetchedHorn;
    try {
      fetched = await fetchHorn(await opening(), hornId, store.get().horns[hornId] !== undefined);
    } catch (error) {
      fetched = { kind: 'failed', message: `This horn could not be fetched: ${String(error)}` };
    }
    under.delete(hornId);
    change((side) => hornFetched(side, hornId, fetched));
  };

  const follow = (): void => {
    const state = store.get();
    const isShown = state.view === 'side-by-side';
    const enters = isShown && !entered;
    entered = isShown;
    if (!isShown) return;
    if (enters) void list();
    const columns = columnsOf(state.sideBySide.chosen, columnSources(state));
    for (const hornId of new Set(columns.map((column) => column.hornId))) {
      const known = state.sideBySide.fetched[hornId] !== undefined;
      if (!under.has(hornId) && (enters || !known)) void fetch(hornId);
    }
  };
  store.subscribe(follow);
  follow();
}

/** A horn's records, none where it is only on the bench, or a horn that comes with the workbench. */
async function fetchHorn(library: Library, hornId: string, isOpened: boolean): Promise<FetchedHorn> {
  const { records, issues } = await library.read([hornId]);
  if (records.horns.length > 0 || isOpened) return { kind: 'fetched', records };
  const demo = DEMO_HORNS.find(({ id }) => id === hornId);
  if (demo !== undefined) return { kind: 'fetched', records: withoutVisit(await demo.load()) };
  const [issue] = issues;
  return {
    kind: 'failed',
    message:
      issue === undefined
        ? 'This horn is no longer in the library; choose another.'
        : `This horn’s record cannot be read: ${issue.message}`,
  };
}

/** Nobody has visited it: it stands as it came. */
function withoutVisit(contents: Parameters<typeof recordsOf>[0]): LibraryRecords {
  const { horns } = recordsOf(contents);
  return { horns, setups: [contents.asFound], visits: [] };
}
