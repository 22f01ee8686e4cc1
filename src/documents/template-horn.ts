import { makeVisit, recordsOf } from './bench-contents.ts';
import { INSTRUMENTS, type HornDocument, type Instrument } from './horn-document.ts';
import { presentSetup, type LibraryRecords } from './library-file.ts';
import { readWith, type DocumentIssue, type ReadOutcome } from './schema-parts.ts';
import type { SetupDocument } from './setup-document.ts';
import { visitSchema } from './visit-document.ts';

/** What is told of a horn that comes to the bench for the first time; every text may be empty but the date. */
export interface NewHorn {
  readonly name: string;
  readonly maker: string;
  readonly serial: string;
  readonly owner: string;
  readonly player: string;
  /** such as 2026-05-31 */
  readonly date: string;
}

/** The day as the first visit takes it down. */
export interface NewHornDay {
  readonly startedMs?: number;
  readonly airC: number;
  readonly a4Hz: number;
}

/** The longest text told of a horn, in letters. */
const LONGEST = 200;

/** What is told of a horn, as a sentence says it. */
const TOLD: Readonly<Record<Exclude<keyof NewHorn, 'date'>, string>> = {
  name: 'name',
  maker: 'maker',
  serial: 'serial number',
  owner: 'owner',
  player: 'player',
};

/** What stands for a maker nobody told. */
const NO_MAKER = 'unknown';

/**
 * What a horn is called: its name, or where nobody gave it one `Larkfield alto 1234`, `Alto of Ada Moss`, `Alto`, cut
 * to the longest a name may be.
 */
export function nameOrOwn({ name, maker, serial, owner }: NewHorn, instrument: Instrument): string {
  const [told, by, number, whose] = [name, maker, serial, owner].map((text) => text.trim());
  if (told !== '') return told;
  const plain = by === '' ? `${instrument[0].toUpperCase()}${instrument.slice(1)}` : `${by} ${instrument}`;
  const tail = number !== '' ? ` ${number}` : whose === '' ? '' : ` of ${whose}`;
  return `${plain}${tail}`.slice(0, LONGEST);
}

/** An example of an instrument with all that was read on it made an example's. */
export function asExample(example: LibraryRecords): { horn: HornDocument; setup: SetupDocument } {
  const [record] = example.horns;
  const { $schema: _hornSchema, remark: _remark, serial: _serial, owner: _owner, ...horn } = record.document;
  const { $schema: _setupSchema, remark: _setupRemark, ...setup } = presentSetup(example, record);
  return {
    horn: {
      ...horn,
      origin: 'template',
      holes: horn.holes.map(({ readings: _readings, ...hole }) => hole),
      links: horn.links.map((link) =>
        link.travelRatio === undefined ? link : { ...link, ratioOrigin: 'template' },
      ),
    },
    setup: {
      ...setup,
      name: `Example ${horn.instrument}`,
      origin: 'template',
      keys: setup.keys.map(({ readings: _readings, remark: _keyRemark, ...key }) => key),
    },
  };
}

/**
 * A horn as it comes to the bench for the first time: every number an example's until it is measured, and a first
 * visit on the day.
 *
 * @param example a file with one horn of the kind
 * @param makeId  gives the new records their ids
 * @returns the horn, the example's setup, the visit and its three setups; or every issue, by the field of `told`
 */
export function templateRecords(
  example: LibraryRecords,
  told: NewHorn,
  day: NewHornDay,
  makeId: () => string,
): ReadOutcome<LibraryRecords> {
  const { horn, setup } = asExample(example);
  const [name, maker, serial, owner, player] = [
    nameOrOwn(told, horn.instrument),
    told.maker.trim() || NO_MAKER,
    ...[told.serial, told.owner, told.player].map((text) => text.trim()),
  ];
  const issues = tooLong({ ...told, name });
  const document: HornDocument = {
    ...horn,
    name,
    maker,
    ...(serial === '' ? {} : { serial }),
    ...(owner === '' ? {} : { owner }),
    remark: `Started from the workbench’s invented ${horn.instrument}.`,
  };
  const record = { id: makeId(), document };
  const plan = { date: told.date.trim(), ...day, ...(player === '' ? {} : { player }) };
  const first = recordsOf(makeVisit(record, setup, plan, makeId));
  const visit = readWith(visitSchema, first.visits[0].document);
  if (!visit.ok) issues.push(...visit.issues.filter((issue) => !issues.some((i) => i.path === issue.path)));
  if (issues.length > 0) return { ok: false, issues };
  const kept = { id: makeId(), hornId: record.id, document: setup };
  return { ok: true, value: { ...first, setups: [kept, ...first.setups] } };
}

function tooLong(told: NewHorn): DocumentIssue[] {
  return (Object.keys(TOLD) as (keyof typeof TOLD)[]).flatMap((field): DocumentIssue[] => {
    const letters = told[field].trim().length;
    if (letters <= LONGEST) return [];
    const message = `invalid ${TOLD[field]}: ${letters} letters; expected at most ${LONGEST}`;
    return [{ path: field, code: 'too_big', message }];
  });
}

/** Whether a word names an instrument there is an example of. */
export function isInstrument(word: string): word is Instrument {
  return INSTRUMENTS.some((instrument) => instrument === word);
}
