import type { BenchContents } from './bench-contents.ts';
import type { HornDocument, KeyedHole } from './horn-document.ts';
import { noteLabel } from './note-label.ts';
import { notesPlayed, PLAYED_SETUPS, takesIn } from './pitch-log.ts';
import { dayWords, inARow, signed } from './player-sheet-lengths.ts';
import { PROGRAM_VERSION } from './program-version.ts';
import { knownReading, type LengthField, type Origin, type Reading } from './readings.ts';
import type { SetupDocument } from './setup-document.ts';

/** One reading as the shop’s page prints it. */
export interface FileCell {
  /** mm to a hundredth; empty where nothing is known */
  readonly value: string;
  /** `e ±1.5`: its origin by its first letter, and its ±; empty where nothing is known */
  readonly origin: string;
}

/** Everything read of one key or vent. */
export interface FileRow {
  readonly pad: string;
  readonly number: number;
  readonly name: string;
  readonly cells: readonly FileCell[];
}

/** The page for the shop’s file. */
export interface SheetFile {
  readonly head: string;
  /** how the table is read: units, origins, measuring points */
  readonly legend: string;
  readonly columns: readonly string[];
  readonly rows: readonly FileRow[];
  /** everything else, each under its name */
  readonly entries: readonly { readonly label: string; readonly text: string }[];
  /** the foot of both pages */
  readonly foot: { readonly horn: string; readonly date: string };
}

const LETTERS: Readonly<Record<Origin, string>> = { measured: 'm', template: 'e', derived: 'd' };

/** Built lengths, and what they are called in a narrow column. */
const BUILT = [
  ['positionMm', 'place'],
  ['diameterMm', 'hole'],
  ['chimneyMm', 'chim.'],
  ['rimMm', 'rim'],
  ['hingeMm', 'hinge'],
  ['hingeHeightMm', 'rod ht'],
  ['cupFloorMm', 'floor'],
  ['cupDiameterMm', 'cup'],
] as const;

/** What the bench changes, besides the opening. */
const SET = [
  ['padDiameterMm', 'pad ⌀'],
  ['padThicknessMm', 'thick'],
  ['adhesiveBedMm', 'bed'],
  ['seatMm', 'seat'],
  ['footCorkMm', 'foot'],
] as const;

const OPENINGS = [
  ['asFound', 'found'],
  ['proposed', 'prop.'],
  ['asSet', 'set'],
] as const;

/** All data of a visit, compact. */
export function makeSheetFile(contents: BenchContents): SheetFile {
  const { horn, visit } = contents;
  const { name, maker, serial, owner } = horn.document;
  const { date } = visit.document;
  const whose = [
    maker,
    serial === undefined ? null : `no. ${serial}`,
    owner === undefined ? null : `of ${owner}`,
  ];
  return {
    head: `${[name, ...whose.filter((words) => words !== null)].join(', ')}. Written by Ventwright ${PROGRAM_VERSION}.`,
    legend:
      'All lengths in mm; 1 mm = 0.0394 in. Under each its origin (m measured on this horn, e from an example of its kind, d derived) and its ±. ' +
      'Openings at the front unless c (centre) or b (back) follows. Pad, bed, seat and foot cork as set where set, else as found.',
    columns: [
      ...OPENINGS.map(([, label]) => label),
      ...SET.map(([, label]) => label),
      ...BUILT.map(([, label]) => label),
    ],
    rows: [...horn.document.holes]
      .sort((a, b) => a.number - b.number)
      .map((hole) => ({
        pad: hole.id,
        number: hole.number,
        name: hole.name,
        cells: [
          ...openingCells(contents, hole),
          ...setCells(contents, hole),
          ...builtCells(horn.document, hole),
        ],
      })),
    entries: entriesOf(contents).filter(({ text }) => text !== ''),
    foot: { horn: name, date: dayWords(date) },
  };
}

type Hole = HornDocument['holes'][number];

const EMPTY: FileCell = { value: '', origin: '' };

function cell(
  field: LengthField,
  mm: number | undefined,
  reading: Reading | undefined,
  otherwise: Origin,
  at = '',
): FileCell {
  if (mm === undefined) return EMPTY;
  const { origin, plusMinusMm } = knownReading(field, reading, otherwise);
  return {
    value: `${mm.toFixed(field === 'positionMm' ? 1 : 2)}${at}`.replace('-', '−'),
    origin: `${LETTERS[origin]} ±${Number(plusMinusMm.toFixed(2))}`,
  };
}

function openingCells(contents: BenchContents, { id }: Hole): FileCell[] {
  return OPENINGS.map(([role]) => {
    const { keys, origin } = contents[role].document;
    const key = keys.find(({ pad }) => pad === id);
    const at = key?.measuredAt === undefined || key.measuredAt === 'front' ? '' : ` ${key.measuredAt[0]}`;
    return cell('openingMm', key?.openingMm, key?.readings?.openingMm, origin, at);
  });
}

function setCells({ asFound, asSet }: BenchContents, { id }: Hole): FileCell[] {
  return SET.map(([field]) => {
    const from = [asSet.document, asFound.document].find(({ keys }) =>
      keys.some((key) => key.pad === id && key[field] !== undefined),
    );
    const key = from?.keys.find(({ pad }) => pad === id);
    return from === undefined ? EMPTY : cell(field, key?.[field], key?.readings?.[field], from.origin);
  });
}

function builtCells({ origin }: HornDocument, hole: Hole): FileCell[] {
  return BUILT.map(([field]) => {
    const lengths: Partial<Record<(typeof BUILT)[number][0], number | undefined>> = {
      ...hole,
      ...((hole as Partial<KeyedHole>).key ?? {}),
    };
    return cell(field, lengths[field], hole.readings?.[field], origin);
  });
}

function entriesOf(contents: BenchContents): SheetFile['entries'] {
  const { horn, visit } = contents;
  const {
    player,
    measuredBy,
    wish,
    notes,
    airC,
    a4Hz,
    leakingSeats = [],
    work = [],
    calibration,
  } = visit.document;
  const name = (pad: string): string => horn.document.holes.find(({ id }) => id === pad)?.name ?? pad;
  const moveWords = (move: string): string =>
    move
      .split(' ')
      .map((word) => name(word))
      .join(' ');
  return [
    {
      label: 'Day',
      text: `${visit.document.date}; player ${player ?? 'not written down'}; read by ${measuredBy ?? 'nobody written down'}; air ${airC} °C; A4 ${a4Hz} Hz.`,
    },
    { label: 'Wish', text: wish ?? '' },
    { label: 'Notes', text: notes ?? '' },
    { label: 'Links', text: linkEntry(contents, name) },
    {
      label: 'Leaking seats',
      text: leakingSeats
        .map(({ pad, gapMm }) => `${name(pad)}${gapMm === undefined ? '' : ` ${gapMm.toFixed(2)} mm`}`)
        .join(', '),
    },
    {
      label: 'Work',
      text: work
        .map(
          ({ move, valueMm, read }) =>
            `${moveWords(move)} ${valueMm.toFixed(2)} mm${read ? '' : ' (as asked)'}`,
        )
        .join('; '),
    },
    ...PLAYED_SETUPS.map((setup) => ({
      label: `Played ${setup}`,
      text: notesPlayed(takesIn(visit.document, setup)).map(playedWords).join('; '),
    })),
    {
      label: 'Calibration',
      text:
        calibration === undefined
          ? ''
          : `fitted to the notes played: ${inARow(calibration.unknowns)}; ${calibration.inUse ? 'in use' : 'not in use'}.`,
    },
    { label: 'Horn', text: builtEntry(horn.document) },
  ];
}

function playedWords({
  fingering,
  cents,
  spreadCents,
  count,
}: ReturnType<typeof notesPlayed>[number]): string {
  if (cents === null) return `${noteLabel(fingering)} left out`;
  const spread = spreadCents === null ? '' : ` ±${spreadCents.toFixed(1)}`;
  return `${noteLabel(fingering)} ${signed(cents)}${spread}${count > 1 ? ` (${count} takes)` : ''} cents`;
}

/** Every link with its ratio and, where it was read, what it leaves open: as set where set, else as found. */
function linkEntry({ horn, asFound, asSet }: BenchContents, name: (pad: string) => string): string {
  const inSetup = (setup: SetupDocument, link: HornDocument['links'][number]) =>
    setup.links?.find(({ driver, driven }) => driver === link.driver && driven === link.driven);
  return horn.document.links
    .map((link) => {
      const [set, found] = [inSetup(asSet.document, link), inSetup(asFound.document, link)];
      const ratio = set?.travelRatio ?? found?.travelRatio ?? link.travelRatio;
      const gap = set?.drivenGapMm ?? found?.drivenGapMm;
      const told = [
        ...(ratio === undefined ? [] : [`ratio ${ratio.toFixed(2)}`]),
        ...(gap === undefined ? [] : [`gap ${gap.toFixed(3).replace('-', '−')} mm`]),
      ];
      return `${name(link.driver)} ${link.effect} ${name(link.driven)}${told.length === 0 ? '' : ` (${told.join(', ')})`}`;
    })
    .join('; ');
}

function builtEntry({
  bore,
  bellCorrectionMm,
  mouthpiece,
  origin,
  instrument,
  remark,
}: HornDocument): string {
  const points = bore.flatMap((section) => section.points);
  const [first, last] = [points[0], points[points.length - 1]];
  const own = { measured: 'measured', template: 'an example’s', derived: 'derived' }[origin];
  const volumeMm3 = mouthpiece.reedVolumeMm3;
  return (
    `${instrument}; numbers without a reading of their own are ${own}; bore by ${points.length} points over ` +
    `${last.positionMm.toFixed(1)} mm, from ${first.diameterMm.toFixed(2)} to ${last.diameterMm.toFixed(1)} mm; bell correction ` +
    `${bellCorrectionMm.toFixed(1)} mm; mouthpiece of ${mouthpiece.pieces.length} pieces, reed ${volumeMm3.toFixed(0)} mm³.` +
    (remark === undefined ? '' : ` ${remark}`)
  ).replace(/ -/g, ' −');
}
