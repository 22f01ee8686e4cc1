import type { LibraryRecords } from '../../documents/library-file.ts';
import { nameWith, withNames, withNewIds } from './library-copies.ts';
import { keptList, type UnreadRecords } from './library-records.ts';

/** What a file brings: what is written, and what is told of it. */
export interface ImportPlan {
  readonly add: UnreadRecords;
  /** a sentence for each kind of thing that came of it */
  readonly told: readonly string[];
}

/** What comes of one horn of a file. */
type Fate = 'new' | 'the same' | 'more of it' | 'something else';

interface HornPlan {
  readonly name: string;
  readonly fate: Fate;
  readonly add: UnreadRecords;
}

/** What an import is held against. */
export interface ImportGround {
  /** of the file, as it is told */
  readonly fileName: string;
  /** what the library holds of the horns the file names */
  readonly held: UnreadRecords;
  /** every id in use, as far as the library knows of other horns */
  isTaken(id: string): boolean;
  makeId(): string;
}

/**
 * Plans what a file adds. A horn that is here already and says the same is left; what it has more is added to it;
 * where the two say different things both are kept, the file's under ids and a name of its own.
 */
export function planImport(file: LibraryRecords, ground: ImportGround): ImportPlan {
  const here = new Map(keptList(ground.held).map(([, record]) => [record.id, record]));
  const plans = file.horns.map((horn): HornPlan => {
    const own: UnreadRecords = {
      horns: [horn],
      setups: file.setups.filter((s) => s.hornId === horn.id),
      visits: file.visits.filter((v) => v.hornId === horn.id),
    };
    return planHorn(own, horn.document.name, here, ground);
  });
  const all = <K extends keyof UnreadRecords>(kind: K): UnreadRecords[K][number][] =>
    plans.flatMap(({ add }) => add[kind] as readonly UnreadRecords[K][number][]);
  return {
    add: { horns: all('horns'), setups: all('setups'), visits: all('visits') },
    told: toldOf(plans),
  };
}

const FATES: readonly (readonly [Fate, one: string, more: string])[] = [
  ['new', 'was added', 'were added'],
  [
    'more of it',
    'is here already; visits or setups of it were added',
    'are here already; visits or setups of them were added',
  ],
  [
    'something else',
    'is here already and says something else: both are kept, the file’s with its name',
    'are here already and say something else: both are kept, the file’s with its name',
  ],
  ['the same', 'is here already, the same', 'are here already, the same'],
];

/** The most horns named in one sentence. */
const MOST_NAMED = 5;

function toldOf(plans: readonly HornPlan[]): string[] {
  return FATES.flatMap(([fate, one, more]) => {
    const names = plans.filter((plan) => plan.fate === fate).map(({ name }) => `“${name}”`);
    if (names.length === 0) return [];
    if (names.length === 1) return [`${names[0]} ${one}.`];
    const rest = names.length - MOST_NAMED;
    const named = rest > 0 ? [...names.slice(0, MOST_NAMED), `${rest} more`] : names;
    return [
      `${names.length} horns ${more}: ${named.slice(0, -1).join(', ')} and ${named[named.length - 1]}.`,
    ];
  });
}

type Held = ReadonlyMap<string, { readonly id: string; readonly hornId: string; readonly document: unknown }>;

function planHorn(
  own: UnreadRecords,
  name: string,
  here: Held,
  { fileName, isTaken, makeId }: ImportGround,
): HornPlan {
  const records = keptList(own).map(([, record]) => record);
  const [horn] = own.horns;
  if (!here.has(horn.id)) {
    const isFree = records.every(({ id }) => !isTaken(id));
    return { name, fate: 'new', add: isFree ? own : withNewIds(own, makeId) };
  }
  const differs = records.some((record) => {
    const held = here.get(record.id);
    return held === undefined
      ? isTaken(record.id)
      : held.hornId !== record.hornId || !isSame(held.document, record.document);
  });
  if (differs) {
    const renamed = withNames(own, (told) => nameWith(told, `(from ${shortened(fileName)})`));
    return { name, fate: 'something else', add: withNewIds(renamed, makeId) };
  }
  const isNew = ({ id }: { readonly id: string }): boolean => !here.has(id);
  const add = { horns: [], setups: own.setups.filter(isNew), visits: own.visits.filter(isNew) };
  const isMore = add.setups.length + add.visits.length > 0;
  return { name, fate: isMore ? 'more of it' : 'the same', add };
}

function shortened(fileName: string): string {
  return fileName.length > 60 ? `${fileName.slice(0, 59)}…` : fileName;
}

/** Whether two documents say the same, in whatever order their fields stand. */
export function isSame(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const [left, right] = [a, b] as readonly Readonly<Record<string, unknown>>[];
  const told = (of: Readonly<Record<string, unknown>>): string[] =>
    Object.keys(of).filter((field) => of[field] !== undefined && field !== '$schema');
  const fields = told(left);
  return fields.length === told(right).length && fields.every((field) => isSame(left[field], right[field]));
}
