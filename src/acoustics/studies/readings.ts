import type { AirColumn } from '../air/air.ts';
import { ownPose, standingPad } from '../holes/pad-over-hole.ts';
import { holeOf, keySetupOf, type Horn, type Setup, type ToneHole } from '../horn.ts';
import {
  centrePerFront,
  HINGE_LENGTHS,
  poseSlopes,
  type HingeLength,
  type MeasuringPoint,
  type Opening,
} from '../keywork/hinge.ts';

/**
 * What was read of a horn, how far each reading may be off, and what that does to an answer.
 *
 * An answer is known by its slopes: how it moves with every pad as it stands and with the day. Readings move
 * pads through their own stop, its hinge and the links that rule:
 *
 *   opening         of the stop, carried to the front by the hinge from where it was read; every pad it rules
 *   hinge and pad   the pad itself, its front held; and through the stop, where the opening was read elsewhere
 *   pad thickness   the opening held, since it is read with the pad in place
 *   link ratio      every pad that the link holds down
 *
 * Linear propagation: an effect is the answer's exact slope times the reading's ±. **Source:** JCGM 100:2008,
 * 5.1, without correlations: every reading errs on its own.
 */

/** Lengths of a key and its hole that are read, besides its opening. */
const KEY_LENGTHS = [
  'padThickness',
  ...HINGE_LENGTHS,
  'rimThickness',
  'holeRadius',
  'chimney',
  'place',
] as const;
const VENT_LENGTHS = ['holeRadius', 'chimney', 'place'] as const;
type KeyLength = (typeof KEY_LENGTHS)[number];

/** How far the readings of one key may be off either way, m; what is left out counts as exact. */
export type KeyPlusMinus = Readonly<Partial<Record<'opening' | KeyLength, number>>>;

/** How far everything read may be off either way; what is left out counts as exact. */
export interface PlusMinus {
  /** m, by hole id; an opening's at the point it was read at */
  readonly keys: ReadonlyMap<string, KeyPlusMinus>;
  /** no unit, by {@link linkName} */
  readonly links?: ReadonlyMap<string, number>;
  /** by hole id: the opening that was read, where its stop was moved on by a known amount since */
  readonly readAs?: ReadonlyMap<string, Opening>;
  /** °C, of the air in the horn */
  readonly temperature?: number;
  /** m³ */
  readonly mouthpieceVolume?: number;
  /** m, how far out on the cork */
  readonly mouthpiecePlace?: number;
}

/** Nothing is known to be off. */
export const EXACT: PlusMinus = Object.freeze({ keys: new Map() });

/** What is read once for the whole horn. */
const OF_THE_DAY = ['temperature', 'mouthpieceVolume', 'mouthpiecePlace'] as const;

/** The readings whose ± is followed. */
export type ReadingKind = 'opening' | KeyLength | 'linkRatio' | (typeof OF_THE_DAY)[number];

/** One reading. */
export interface Reading {
  /** hole id, {@link linkName}, or `horn` for what is read once */
  readonly id: string;
  readonly kind: ReadingKind;
  /** in the unit of its ±; 0 where the horn as described is the zero */
  readonly value: number;
  /** where an opening was read */
  readonly at: MeasuringPoint | null;
  /** m, °C, m³ or none, ≥ 0 */
  readonly plusMinus: number;
}

/** How one answer moves with one pad as it stands: per m of its front, and of each length with the front held. */
export type KeySlopes = Readonly<Partial<Record<'front' | KeyLength, number>>>;

/** How one answer moves with everything; what is left out moves it not. */
export interface Slopes {
  readonly keys: ReadonlyMap<string, KeySlopes>;
  /** by {@link linkName}: per unit of a link's ratio, every pad held where it stands */
  readonly links?: ReadonlyMap<string, number>;
  readonly temperature?: number;
  readonly mouthpieceVolume?: number;
  readonly mouthpiecePlace?: number;
  /** per unit of the pad model's factor */
  readonly padModel?: number;
}

/** Readings made ready: what they are and which pads each of them moves. */
export interface Readings {
  readonly list: readonly Reading[];
  readonly pads: readonly PadStanding[];
}

/** A link by its two pads. */
export const linkName = (driver: string, driven: string): string => `${driver} > ${driven}`;

/**
 * Makes the readings of a horn in a setup ready.
 *
 * @throws RangeError for a ± that is negative or no number, or of a hole or link the horn does not have
 */
export function prepareReadings(horn: Horn, setup: Setup, air: AirColumn, plusMinus: PlusMinus): Readings {
  for (const id of plusMinus.keys.keys()) holeOf(horn, id);
  const links = horn.keywork.links.flatMap(({ driver, driven, ratio }) =>
    ratio === undefined ? [] : [{ id: linkName(driver, driven), ratio }],
  );
  for (const id of plusMinus.links?.keys() ?? []) {
    if (!links.some((link) => link.id === id)) {
      throw new RangeError(
        `invalid link: "${id}"; expected one of ${links.map((link) => link.id).join(', ')}`,
      );
    }
  }
  const values = {
    temperature: air.mouthpieceC,
    mouthpieceVolume: horn.extraMouthpieceVolume,
    mouthpiecePlace: horn.neckStart,
  };
  const list = [
    ...horn.holes.flatMap((hole) => readingsOfKey(hole, setup, plusMinus)),
    ...links.map(({ id, ratio }) => makeReading(id, 'linkRatio', ratio, null, plusMinus.links?.get(id))),
    ...OF_THE_DAY.map((kind) => makeReading('horn', kind, values[kind], null, plusMinus[kind])),
  ];
  const pads = horn.holes.flatMap((hole) => (hole.hinge === null ? [] : [padStanding(horn, setup, hole)]));
  return { list, pads };
}

/**
 * What every reading's whole ± does to an answer, signed, in the answer's unit.
 *
 * @returns one number per reading, in their order
 */
export function effectsOn({ list, pads }: Readings, slopes: Slopes): number[] {
  const byStop = new Map<string, number>();
  const byLink = new Map<string, number>();
  for (const { id, front, ruler, ratio, through } of pads) {
    const slope = slopes.keys.get(id)?.front ?? 0;
    if (slope === 0) continue;
    byStop.set(ruler, (byStop.get(ruler) ?? 0) + slope * ratio);
    for (const link of through)
      byLink.set(link.id, (byLink.get(link.id) ?? 0) + slope * (front / link.ratio));
  }
  const stops = new Map(pads.map((pad) => [pad.id, pad]));
  return list.map(({ id, kind, at, plusMinus }) => {
    if (plusMinus === 0) return 0;
    if (kind === 'opening') return (byStop.get(id) ?? 0) * frontPlusMinus(stops.get(id)!, at, plusMinus);
    if (kind === 'linkRatio') return ((byLink.get(id) ?? 0) + (slopes.links?.get(id) ?? 0)) * plusMinus;
    if (isOfTheDay(kind)) return (slopes[kind] ?? 0) * plusMinus;
    const throughStop = isHingeLength(kind) ? (byStop.get(id) ?? 0) * (stops.get(id)?.own[kind] ?? 0) : 0;
    return ((slopes.keys.get(id)?.[kind] ?? 0) + throughStop) * plusMinus;
  });
}

/**
 * The same horn with every pad's own stop put where the pad stands and no link ruling any: it sounds the same,
 * and its answers are those of single pads.
 */
export function asItStands(horn: Horn, setup: Setup): { readonly horn: Horn; readonly setup: Setup } {
  const keys = new Map(
    [...setup.keys].map(([id, key]) => [
      id,
      { ...key, opening: { at: 'front' as const, height: standingPad(horn, setup, id).pose.front } },
    ]),
  );
  const links = horn.keywork.links.map(({ driver, driven, effect }) => ({ driver, driven, effect }));
  return { horn: { ...horn, keywork: { ...horn.keywork, links } }, setup: { keys } };
}

/** How one pad stands, and by what. */
export interface PadStanding {
  readonly id: string;
  /** m, as it stands */
  readonly front: number;
  /** whose own stop decides, and this pad's front per that stop's front */
  readonly ruler: string;
  readonly ratio: number;
  /** the links between that stop and this pad */
  readonly through: readonly { readonly id: string; readonly ratio: number }[];
  /** as its own stop has it: front, m, and centre per front */
  readonly ownFront: number;
  readonly ownCentrePerFront: number;
  /** m of its own stop's front per m of pad and hinge, the opening held where it was read */
  readonly own: Readonly<Record<HingeLength, number>>;
}

function padStanding(horn: Horn, setup: Setup, hole: ToneHole): PadStanding {
  const { padRadius, opening } = keySetupOf(setup, hole.id);
  const own = ownPose(horn, setup, hole.id);
  const slopes = poseSlopes(hole.hinge!, padRadius, own, opening.at);
  return {
    id: hole.id,
    front: standingPad(horn, setup, hole.id).pose.front,
    ...stopThatRules(horn, setup, hole.id),
    ownFront: own.front,
    ownCentrePerFront: centrePerFront(hole.hinge!, padRadius, own),
    own: {
      padRadius: slopes.padRadius.front,
      hingeDistance: slopes.hingeDistance.front,
      hingeHeight: slopes.hingeHeight.front,
    },
  };
}

/** The stop at the end of the links that rule a pad, the product of their ratios, and the links. */
function stopThatRules(
  horn: Horn,
  setup: Setup,
  id: string,
): Pick<PadStanding, 'ruler' | 'ratio' | 'through'> {
  const { ruledBy, pose } = standingPad(horn, setup, id);
  if (ruledBy === null) return { ruler: id, ratio: 1, through: [] };
  const driver = standingPad(horn, setup, ruledBy.driver).pose.front;
  // A driver that stands shut holds its driven pad shut: nothing moves.
  if (!(driver > 0)) return { ruler: ruledBy.driver, ratio: 0, through: [] };
  const above = stopThatRules(horn, setup, ruledBy.driver);
  const ratio = pose.front / driver;
  return {
    ruler: above.ruler,
    ratio: above.ratio * ratio,
    through: [...above.through, { id: linkName(ruledBy.driver, id), ratio }],
  };
}

/**
 * An opening's ± at the front, m. Heights rise in proportion to their distance from the rod, so that the back
 * rises by 2·centre − front. Where the hinge hardly moves the point that was read, the reading says little: it
 * is then off by the whole opening, no more.
 */
function frontPlusMinus(pad: PadStanding, at: MeasuringPoint | null, plusMinus: number): number {
  const centre = pad.ownCentrePerFront;
  const risesPerFront = at === 'centre' ? centre : at === 'back' ? 2 * centre - 1 : 1;
  if (risesPerFront === 1) return plusMinus;
  const most = Math.max(pad.ownFront, plusMinus);
  return risesPerFront * most > plusMinus ? plusMinus / risesPerFront : most;
}

function readingsOfKey(hole: ToneHole, setup: Setup, { keys, readAs }: PlusMinus): Reading[] {
  const by = keys.get(hole.id) ?? {};
  const reading = (kind: 'opening' | KeyLength, value: number, at: MeasuringPoint | null = null): Reading =>
    makeReading(hole.id, kind, value, at, by[kind], hole.name);
  const { holeRadius, chimney, rimThickness, x: place, hinge } = hole;
  const built = { holeRadius, chimney, place };
  if (hinge === null) return VENT_LENGTHS.map((kind) => reading(kind, built[kind]));
  const { opening, padThickness, padRadius } = keySetupOf(setup, hole.id);
  const read = readAs?.get(hole.id) ?? opening;
  const values: Readonly<Record<KeyLength, number>> = {
    ...built,
    padThickness,
    padRadius,
    hingeDistance: hinge.distance,
    hingeHeight: hinge.height,
    rimThickness,
  };
  return [
    reading('opening', read.height, read.at),
    ...KEY_LENGTHS.map((kind) => reading(kind, values[kind])),
  ];
}

function makeReading(
  id: string,
  kind: ReadingKind,
  value: number,
  at: MeasuringPoint | null,
  plusMinus = 0,
  name = id,
): Reading {
  if (!(plusMinus >= 0 && plusMinus < Infinity)) {
    const { unit, scale } = UNITS[kind];
    throw new RangeError(
      `invalid ± of ${name}, ${NAMES[kind]}: ${plusMinus * scale}${unit}; expected 0 or more`,
    );
  }
  return { id, kind, value, at, plusMinus };
}

const isOfTheDay = (kind: ReadingKind): kind is (typeof OF_THE_DAY)[number] =>
  (OF_THE_DAY as readonly ReadingKind[]).includes(kind);
const isHingeLength = (kind: ReadingKind): kind is HingeLength =>
  (HINGE_LENGTHS as readonly ReadingKind[]).includes(kind);

const NAMES: Readonly<Record<ReadingKind, string>> = {
  opening: 'opening',
  padThickness: 'pad thickness',
  padRadius: 'pad radius',
  hingeDistance: 'hinge distance',
  hingeHeight: 'rod height',
  rimThickness: 'rim thickness',
  holeRadius: 'hole radius',
  chimney: 'chimney',
  place: 'place on the bore',
  linkRatio: 'travel ratio',
  temperature: 'air temperature',
  mouthpieceVolume: 'mouthpiece volume',
  mouthpiecePlace: 'place of the mouthpiece',
};

const MILLIMETRES = { unit: ' mm', scale: 1e3 };
const UNITS: Readonly<Record<ReadingKind, { readonly unit: string; readonly scale: number }>> = {
  opening: MILLIMETRES,
  padThickness: MILLIMETRES,
  padRadius: MILLIMETRES,
  hingeDistance: MILLIMETRES,
  hingeHeight: MILLIMETRES,
  rimThickness: MILLIMETRES,
  holeRadius: MILLIMETRES,
  chimney: MILLIMETRES,
  place: MILLIMETRES,
  linkRatio: { unit: '', scale: 1 },
  temperature: { unit: ' °C', scale: 1 },
  mouthpieceVolume: { unit: ' cm³', scale: 1e6 },
  mouthpiecePlace: MILLIMETRES,
};
