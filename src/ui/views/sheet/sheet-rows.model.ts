import type { BenchContents, SetupRole } from '../../../documents/bench-contents.ts';
import type { SetupRecord } from '../../../documents/library-file.ts';
import { keyedHoles, type KeyedHole } from '../../../documents/horn-document.ts';
import { formatBoth, formatLength, type LengthUnit } from '../../../documents/length-format.ts';
import { knownHornLength, knownSetupLength } from '../../../documents/sheet-edits.ts';
import { barePlusMinus, sign } from '../../parts/plus-minus-words.ts';
import { ventWords } from '../../parts/key-strip.model.ts';
import { unbroken } from '../../parts/note-names.ts';
import { hornInHand, type BenchState } from '../../state/bench-state.ts';
import type { LengthId } from '../../state/fields.ts';
import type { EnoughReport, SheetKeyReport, SheetReport, StandingReport } from '../../state/sheet-report.ts';
import { percent } from '../key-study/opening-words.ts';
import {
  MAIN_CELLS,
  makeCell,
  MEASURE_CELLS,
  OPENING_CELLS,
  type CellManner,
  type CellView,
} from './sheet-cells.model.ts';

import { makeRowReasons, NO_REASONS, type RowFigures, type RowReasons } from './sheet-reasons.model.ts';

/** A place on the bar of vent shares, 0…1 from its left end. */
export interface BarMark {
  readonly kind: SetupRole;
  readonly place: number;
}

/** The bar of one key. */
export interface BarView {
  readonly marks: readonly BarMark[];
  /** from where to where the vent share may lie as the key stands now */
  readonly band: readonly [number, number];
  /** where more height stops helping; null where that is not known or nowhere in reach */
  readonly enough: number | null;
  /** `78 ± 1 %`, as the key is to leave */
  readonly words: string;
  /** `as proposed`: what `words` is of */
  readonly as: string;
  readonly said: string;
}

/** How a key stands to the point of diminishing return. */
export interface StandingTo {
  readonly kind: 'below' | 'about' | 'enough' | 'open';
  /** `9.1 mm` at the sheet’s measuring point, or a dash */
  readonly at: string;
  /** `lacks 1.1 ± 0.3 mm` */
  readonly told: string;
  /** mm at the front that the key lacks; null where that is not known */
  readonly lacksMm: number | null;
  /** of that; null where a reading or the pad model leads out of reach */
  readonly plusMinusMm: number | null;
  /** mm at the front where height stops helping */
  readonly frontMm: number | null;
}

/** One key’s row. */
export interface RowView {
  readonly pad: string;
  readonly number: number;
  readonly name: string;
  readonly vents: string;
  readonly inHand: boolean;
  readonly cells: readonly CellView[];
  /** of the four that matter most, how many rest on the example */
  readonly fromExample: number;
  /** whether its opening was read on this horn, as found or as set */
  readonly isRead: boolean;
  readonly bar: BarView | null;
  /** as set, else as found; null until it has been worked out */
  readonly standing: StandingTo | null;
  /** as it is to leave: as set, else as proposed, else as found */
  readonly leaving: StandingTo | null;
  /** with every opening proposed; null where nothing is */
  readonly asProposed: StandingTo | null;
  /** whether it stands lower as proposed than now */
  readonly goesLower: boolean;
  /** why its figures are what they are; null where there is no such figure */
  readonly reasons: RowReasons;
  readonly rules: string;
}

/** Keys that belong together, as a bench goes through them. */
export interface RowGroup {
  readonly name: string;
  readonly rows: readonly RowView[];
}

const GROUPS: readonly { readonly name: string; readonly upTo: number }[] = [
  { name: 'Bell keys', upTo: 3 },
  { name: 'Low C and E♭', upTo: 5 },
  { name: 'Lower stack', upTo: 10 },
  { name: 'G♯ and upper stack', upTo: 18 },
  { name: 'Palm and high keys', upTo: Infinity },
];

/** The axis of the bars begins on a ten below every share, here at the latest. */
const LATEST_START = 0.7;

/** Keys whose own stop and arm differ by less stand on both, mm. */
const SAME_MM = 1e-6;

export function makeRowGroups(state: BenchState): { readonly groups: RowGroup[]; readonly barFrom: number } {
  const horn = hornInHand(state);
  const { contents, keyId, typed } = horn;
  const report = state.sheet.hornId === state.hornId ? state.sheet.report : null;
  const manner: CellManner = { unit: state.unit, readAt: state.readAt, columns: state.columns };
  const barFrom = barStart(report);
  const cells = state.columns === 'openings' ? OPENING_CELLS : MEASURE_CELLS;
  const isProposed = contents.proposed.document.keys.some(({ openingMm }) => openingMm !== undefined);
  const rows = keyedHoles(contents.horn.document).map((hole): RowView => {
    const key = report?.keys.find((k) => k.pad === hole.id) ?? null;
    const known = state.sheet.hornId === state.hornId ? state.sheet.enough[hole.id] : undefined;
    const enough = known?.report ?? null;
    const bar = key === null ? null : makeBar(contents, key, enough, barFrom, manner);
    const standing = key === null || enough === null ? null : standingTo(key.asSet, enough, manner);
    return {
      pad: hole.id,
      number: hole.number,
      name: hole.name,
      vents: ventWords(report?.vents ?? null, hole.id),
      inHand: hole.id === keyId,
      cells: cells.map((cell) =>
        makeCell(contents, { pad: hole.id, name: spoken(hole) }, cell, typed[hole.id], manner),
      ),
      fromExample: MAIN_CELLS.filter((cell) => originOf(contents, hole.id, cell) === 'template').length,
      isRead: isOpeningRead(contents, hole.id),
      bar,
      standing,
      leaving: key === null || enough === null ? null : standingTo(key.leaves, enough, manner),
      goesLower: key !== null && isProposed && key.proposed.frontMm < key.asSet.frontMm - SAME_MM,
      asProposed:
        key === null || enough === null || !isProposed ? null : standingTo(key.proposed, enough, manner),
      reasons:
        key === null || bar === null
          ? NO_REASONS
          : makeRowReasons(
              contents,
              hole,
              { now: key.asSet, leaves: key.leaves, as: leavesAs(contents, key), enough },
              figuresOf(bar, standing, manner),
              manner,
            ),
      rules: key === null ? '' : rulesWords(key, isSetIn(contents.proposed, hole.id), manner.unit),
    };
  });
  const groups = GROUPS.map(({ name, upTo }, i) => ({
    name,
    rows: rows.filter(({ number }) => number <= upTo && number > (GROUPS[i - 1]?.upTo ?? -Infinity)),
  })).filter((group) => group.rows.length > 0);
  return { groups, barFrom };
}

function spoken({ number, name }: KeyedHole): string {
  return `Pad ${number}, ${name} key`;
}

function originOf({ horn, asFound }: BenchContents, pad: string, cell: LengthId): string | null {
  const known =
    cell === 'openingMm' || cell === 'padDiameterMm' || cell === 'padThicknessMm' || cell === 'adhesiveBedMm'
      ? knownSetupLength(asFound.document, pad, cell)
      : knownHornLength(horn.document, pad, cell);
  return known?.origin ?? null;
}

function isOpeningRead({ asFound, asSet }: BenchContents, pad: string): boolean {
  return [asSet, asFound].some(
    ({ document }) => knownSetupLength(document, pad, 'openingMm')?.origin === 'measured',
  );
}

/** Whether a sparse setup says how a key stands. */
function isSetIn({ document }: SetupRecord, pad: string): boolean {
  return document.keys.some((k) => k.pad === pad && k.openingMm !== undefined);
}

function barStart(report: SheetReport | null): number {
  const shares = (report?.keys ?? []).flatMap((k) =>
    [k.asFound, k.proposed, k.asSet].map((s) => s.ventShare),
  );
  return Math.max(0, Math.floor(Math.min(LATEST_START, ...shares) * 10 - 1e-9) / 10);
}

function makeBar(
  contents: BenchContents,
  key: SheetKeyReport,
  enough: EnoughReport | null,
  from: number,
  { unit }: CellManner,
): BarView {
  const placeOf = (share: number): number => Math.min(Math.max((share - from) / (1 - from), 0), 1);
  const isOther = (role: 'proposed' | 'asSet'): boolean =>
    Math.abs(key[role].frontMm - key.asFound.frontMm) > SAME_MM || isSetIn(contents[role], key.pad);
  const roles: readonly SetupRole[] = ['asFound', ...(['proposed', 'asSet'] as const).filter(isOther)];
  const { leaves } = key;
  const half = leaves.plusMinusShare;
  const words = `${Math.round(100 * leaves.ventShare)} ± ${Math.max(1, Math.round(100 * half))} %`;
  const told = roles.map(
    (role) =>
      `${percent(key[role].ventShare)} ${ROLE_WORDS[role]}, ${formatBoth(key[role].frontMm, unit)} at the front`,
  );
  return {
    marks: roles.map((kind) => ({ kind, place: placeOf(key[kind].ventShare) })),
    band: [placeOf(leaves.ventShare - half), placeOf(leaves.ventShare + half)],
    enough: enough?.kind === 'reached' ? placeOf(enough.ventShare) : null,
    words: unbroken(words),
    as: AS_WORDS[leavesAs(contents, key)],
    said:
      `Vent share ${told.join('; ')}` +
      (enough?.kind === 'reached'
        ? `; enough at ${percent(enough.ventShare)}, ${formatBoth(enough.frontMm, unit)} at the front`
        : ''),
  };
}

/** In which of its setups a key leaves; one that only follows others is of what they are. */
function leavesAs({ proposed, asSet }: BenchContents, key: SheetKeyReport): SetupRole {
  if (isSetIn(asSet, key.pad)) return 'asSet';
  const moves = (from: StandingReport): boolean => Math.abs(key.leaves.frontMm - from.frontMm) > SAME_MM;
  if (isSetIn(proposed, key.pad) || moves(key.asSet)) return 'proposed';
  return moves(key.asFound) ? 'asSet' : 'asFound';
}

const AS_WORDS: Readonly<Record<SetupRole, string>> = {
  asFound: 'as found',
  proposed: 'as proposed',
  asSet: 'as set',
};

export const ROLE_WORDS: Readonly<Record<SetupRole, string>> = {
  asFound: 'as found',
  proposed: 'proposed',
  asSet: 'as set',
};

/** `1.1 ± 0.3 mm`; the ± where it is known. */
export function lackWords({ lacksMm, plusMinusMm }: StandingTo, unit: LengthUnit): string {
  const lacks = formatLength(lacksMm!, unit);
  return plusMinusMm === null
    ? lacks
    : `${lacks.replace(/ (?:mm|in)$/, '')}\u00a0± ${formatLength(plusMinusMm, unit)}`;
}

function figuresOf(bar: BarView, standing: StandingTo | null, { unit }: CellManner): RowFigures {
  return {
    share: bar.words,
    enough: standing?.at ?? '',
    lack: standing?.kind === 'below' ? unbroken(lackWords(standing, unit)) : null,
  };
}

/** How a key that stands so stands to where height stops helping. */
export function standingTo(
  now: StandingReport,
  enough: EnoughReport,
  { unit, readAt }: Pick<CellManner, 'unit' | 'readAt'>,
): StandingTo {
  const open = { kind: 'open', lacksMm: null, plusMinusMm: null, frontMm: null } as const;
  if (enough.kind === 'failed') return { ...open, at: '–', told: enough.message };
  if (enough.kind === 'none in reach') return { ...open, at: '–', told: 'still helps as far as it opens' };
  const { frontMm } = enough;
  const lacksMm = frontMm - now.frontMm;
  const isKnown = now.plusMinusMm !== null && enough.plusMinusMm !== null;
  const plusMinusMm = Math.hypot(now.plusMinusMm ?? 0, enough.plusMinusMm ?? 0);
  const shown = { front: frontMm, centre: enough.centreMm, back: enough.backMm }[readAt];
  const kind = lacksMm > plusMinusMm ? 'below' : lacksMm > -plusMinusMm ? 'about' : 'enough';
  return {
    kind,
    at: unbroken(formatLength(shown, unit)),
    told:
      kind === 'enough'
        ? 'high enough'
        : kind === 'about'
          ? unbroken(`there, within ± ${plusMinusText(plusMinusMm, unit)}`)
          : isKnown
            ? unbroken(`lacks ${short(lacksMm, unit)} ± ${plusMinusText(plusMinusMm, unit)}`)
            : unbroken(`lacks ${formatLength(lacksMm, unit)}, ± not known`),
    lacksMm,
    plusMinusMm: isKnown ? plusMinusMm : null,
    frontMm,
  };
}

const plusMinusText = (mm: number, unit: LengthUnit): string => `${barePlusMinus(mm, unit)} ${sign(unit)}`;

function short(mm: number, unit: 'mm' | 'thou'): string {
  return formatLength(mm, unit).replace(/ (?:mm|in)$/, '');
}

function rulesWords({ asSet, proposed }: SheetKeyReport, isProposed: boolean, unit: 'mm' | 'thou'): string {
  const ruler = ({ ruledBy, frontMm }: StandingReport): string =>
    ruledBy === null
      ? 'own stop'
      : `held at ${short(frontMm, unit)} by ${ruledBy.driverName.replace('auxiliary', 'aux')}`;
  const [now, then] = [ruler(asSet), ruler(proposed)];
  return isProposed && then !== now ? `${now}; proposed: ${then}` : now;
}
