import { SETUP_ROLES } from '../../../documents/bench-contents.ts';
import type { LibraryReading, SetupRecord, VisitRecord } from '../../../documents/library-file.ts';
import { unreadOf, type LibraryDeskState, type Renaming } from '../../state/library-desk-state.ts';
import { searched, type ShelfEntry } from '../../state/library-state.ts';

/** A horn in the list. */
export interface HornRow {
  readonly id: string;
  readonly name: string;
  /** what it is and whose, such as `alto · Larkfield · no. 1234 · of Ada Moss` */
  readonly facts: string;
  readonly lastVisit: string;
  readonly visits: string;
  readonly isOnBench: boolean;
  /** what of it cannot be read, or null */
  readonly trouble: string | null;
  readonly detail: HornDetail | null;
}

/** A horn's visits and setups, shown under its row. */
export interface HornDetail {
  /** still on its way */
  readonly isComing: boolean;
  /** whether it can be put on the bench, renamed and duplicated in part */
  readonly isReadable: boolean;
  readonly visits: readonly VisitRow[];
  /** setups that belong to no visit */
  readonly setups: readonly SetupRow[];
  /** what cannot be read of it, a sentence each */
  readonly issues: readonly string[];
  readonly renaming: Renaming | null;
}

export interface VisitRow {
  readonly id: string;
  readonly date: string;
  readonly words: string;
}

export interface SetupRow {
  readonly id: string;
  readonly name: string;
  readonly renaming: Renaming | null;
}

/** The library as it is shown. */
export interface LibraryView {
  readonly title: string;
  readonly lead: string;
  /** where the list is empty: why, and what to do */
  readonly empty: string | null;
  readonly rows: readonly HornRow[];
  /** how the list stands, where nothing else is to be told */
  readonly order: string;
  readonly isSearchable: boolean;
  readonly hasHorns: boolean;
  /** what the undo button takes back, or null */
  readonly undo: string | null;
}

const LEAD = 'What is typed at the bench is saved here as you go, in this browser only.';

export function makeLibraryView(state: LibraryDeskState, benchHornId: string): LibraryView {
  const entries = state.entries ?? [];
  const found = searched(entries, state.search);
  const last = state.removed[state.removed.length - 1];
  return {
    title: titleOf(state, entries.length, found.length),
    lead: LEAD,
    empty: whyEmpty(state, entries.length, found.length),
    rows: found.map((entry) => rowOf(entry, state, benchHornId)),
    order: found.length > 1 ? 'What was last changed comes first.' : '',
    isSearchable: entries.length > 0,
    hasHorns: entries.length > 0,
    undo: last === undefined ? null : last.words,
  };
}

const horns = (count: number): string => (count === 1 ? 'One horn' : `${count} horns`);

function titleOf({ entries, search }: LibraryDeskState, all: number, found: number): string {
  if (entries === null) return 'Library';
  if (all === 0) return 'No horn is kept yet';
  return search.trim() === '' ? horns(all) : `${found} of ${all === 1 ? 'one horn' : horns(all)}`;
}

function whyEmpty({ entries, search }: LibraryDeskState, all: number, found: number): string | null {
  if (entries === null || found > 0) return null;
  return all === 0
    ? 'A horn is kept as soon as something is done to it. Start a new one, bring in a file, or try an example.'
    : `No horn has all of “${search.trim()}” in its name, maker, serial number, owner, players, setups or last visit.`;
}

function rowOf(entry: ShelfEntry, state: LibraryDeskState, benchHornId: string): HornRow {
  const { id, name, lastVisit, visitCount } = entry;
  return {
    id,
    name,
    facts: factsOf(entry),
    lastVisit: lastVisit === '' ? 'no visit yet' : dayOf(lastVisit),
    visits: visitCount <= 1 ? '' : `${visitCount} visits`,
    isOnBench: id === benchHornId,
    trouble: state.troubles[id] ?? null,
    detail: state.shownId === id ? detailOf(id, state.shown, state.renaming) : null,
  };
}

function factsOf({ instrument, maker, serial, owner, players }: ShelfEntry): string {
  const others = players.filter((player) => player !== owner);
  return [
    instrument,
    maker === 'unknown' ? '' : maker,
    serial === '' ? '' : `no. ${serial}`,
    owner === '' ? '' : `of ${owner}`,
    others.length === 0 ? '' : `played by ${others.join(', ')}`,
  ]
    .filter((part) => part !== '')
    .join(' · ');
}

function detailOf(hornId: string, reading: LibraryReading | null, renaming: Renaming | null): HornDetail {
  const { records } = reading ?? NOTHING;
  const inVisits = new Set(records.visits.flatMap((v) => SETUP_ROLES.map((role) => v.document[role])));
  return {
    isComing: reading === null,
    isReadable: records.horns.some(({ id }) => id === hornId),
    visits: [...records.visits].sort((a, b) => b.document.date.localeCompare(a.document.date)).map(visitRow),
    setups: records.setups.filter(({ id }) => !inVisits.has(id)).map((setup) => setupRow(setup, renaming)),
    issues: reading === null ? [] : unreadOf(hornId, reading),
    renaming: renaming?.kind === 'horns' && renaming.id === hornId ? renaming : null,
  };
}

const NOTHING: LibraryReading = { records: { horns: [], setups: [], visits: [] }, issues: [] };

function visitRow({ id, document }: VisitRecord): VisitRow {
  const { date, player, measuredBy, wish } = document;
  const words = [
    player === undefined ? '' : player,
    measuredBy === undefined ? '' : `measured by ${measuredBy}`,
    wish === undefined ? '' : `“${wish.length > 80 ? `${wish.slice(0, 79)}…` : wish}”`,
  ].filter((part) => part !== '');
  return { id, date: dayOf(date), words: words.join(' · ') };
}

function setupRow({ id, document }: SetupRecord, renaming: Renaming | null): SetupRow {
  const own = renaming?.kind === 'setups' && renaming.id === id ? renaming : null;
  return { id, name: document.name, renaming: own };
}

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** A day as it is said: `31 May 2026`; what is no day stays as it is. */
export function dayOf(date: string): string {
  const [, year, month, day] = /^(\d{4})-(\d\d)-(\d\d)$/.exec(date) ?? [];
  const name = MONTHS[Number(month) - 1];
  return name === undefined ? date : `${Number(day)} ${name} ${year}`;
}
