import { standingPad, ownPose } from '../holes/pad-over-hole.ts';
import { holeOf, keySetupOf, type Horn, type Setup, type ToneHole } from '../horn.ts';
import { centrePerFront, type MeasuringPoint } from '../keywork/hinge.ts';
import type { Answer, KeyAnswer, WholeHornNote } from './whole-horn.ts';

/** How far the readings of one key may be off either way, m; what is left out counts as exact. */
export interface KeyPlusMinus {
  /** of the opening, at the point it was read at */
  readonly opening?: number;
  readonly padThickness?: number;
  readonly holeRadius?: number;
  readonly chimney?: number;
}

/** The readings whose ± is followed. */
export type ReadingKind = keyof KeyPlusMinus;

/** One reading of one key or its hole. */
export interface Reading {
  readonly id: string;
  readonly kind: ReadingKind;
  /** m */
  readonly value: number;
  /** where an opening was read */
  readonly at: MeasuringPoint | null;
  /** m, ≥ 0 */
  readonly plusMinus: number;
}

/** A horn and setup as they stand, with what every reading is worth to every note. */
export interface ReadingsWorth {
  /** hole by hole from the mouthpiece down */
  readonly readings: readonly Reading[];
  /** by fingering id: what each reading's whole ± does to the note, in the order of the readings */
  readonly effects: ReadonlyMap<string, readonly Answer[]>;
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

/**
 * What every reading's ± is worth to every note, to first order by exact derivatives.
 *
 *   opening       the answer of every pad that this stop rules, links followed; a key whose stop rules nothing
 *                 counts nothing. An opening read at the centre or back is carried to the front by the hinge.
 *   padThickness  with the opening held, since the opening is read with the pad in place
 *   holeRadius, chimney   as they are
 *
 * @param notes played on the horn {@link asItStands}, with answers
 * @throws RangeError for a ± that is negative or no number, or of a hole the horn does not have
 */
export function readingsWorth(
  horn: Horn,
  setup: Setup,
  plusMinus: ReadonlyMap<string, KeyPlusMinus>,
  notes: readonly WholeHornNote[],
): ReadingsWorth {
  for (const id of plusMinus.keys()) holeOf(horn, id);
  const readings = horn.holes.flatMap((hole) => readingsOf(hole, setup, plusMinus.get(hole.id) ?? {}));
  const pads = horn.holes.map((hole) => (hole.hinge === null ? null : padMotion(horn, setup, hole)));
  const stops = new Map(pads.flatMap((pad) => (pad === null ? [] : [[pad.id, pad] as const])));
  const effects = new Map<string, readonly Answer[]>();
  for (const { fingering, outcome } of notes) {
    if (!outcome.found || outcome.answers === null) continue;
    const { keys } = outcome.answers;
    const byStop = new Map<string, Answer>();
    pads.forEach((pad, i) => {
      if (pad === null) return;
      byStop.set(pad.ruler, plus(byStop.get(pad.ruler) ?? NOTHING, times(keys[i].opening, pad.ratio)));
    });
    const answers = new Map(keys.map((key) => [key.id, key]));
    effects.set(
      fingering.id,
      readings.map((reading) => {
        if (reading.kind === 'opening') {
          const stop = stops.get(reading.id)!;
          return times(byStop.get(reading.id) ?? NOTHING, frontPlusMinus(stop, reading));
        }
        const key = answers.get(reading.id)!;
        const stop = stops.get(reading.id);
        const slope =
          reading.kind === 'padThickness' && stop !== undefined
            ? thicknessAtHeldOpening(key, stop)
            : key[reading.kind];
        return times(slope, reading.plusMinus);
      }),
    );
  }
  return { readings, effects };
}

/**
 * How far a pad's front may be off by the reading of the stop that decides it, links followed, m.
 *
 * @param id of a hole with a hinge
 */
export function standingPlusMinus(
  horn: Horn,
  setup: Setup,
  id: string,
  plusMinus: ReadonlyMap<string, KeyPlusMinus>,
): number {
  const stop = stopThatRules(horn, setup, id);
  const { opening } = keySetupOf(setup, stop.id);
  const read = { at: opening.at, plusMinus: plusMinus.get(stop.id)?.opening ?? 0 };
  return stop.ratio * frontPlusMinus(padMotion(horn, setup, holeOf(horn, stop.id)), read);
}

/** How one pad moves: with the stop that decides its height, and as read. */
interface PadMotion {
  readonly id: string;
  /** whose own stop decides, and this pad's front per that stop's front */
  readonly ruler: string;
  readonly ratio: number;
  /** as it stands: cos θ, and centre per front */
  readonly upright: number;
  readonly standingCentrePerFront: number;
  /** as its own stop has it: front, m, and centre per front */
  readonly ownFront: number;
  readonly ownCentrePerFront: number;
}

function padMotion(horn: Horn, setup: Setup, hole: ToneHole): PadMotion {
  const { padRadius } = keySetupOf(setup, hole.id);
  const own = ownPose(horn, setup, hole.id);
  const { pose } = standingPad(horn, setup, hole.id);
  const { id: ruler, ratio } = stopThatRules(horn, setup, hole.id);
  return {
    id: hole.id,
    ruler,
    ratio,
    upright: Math.cos(pose.angle),
    standingCentrePerFront: centrePerFront(hole.hinge!, padRadius, pose),
    ownFront: own.front,
    ownCentrePerFront: centrePerFront(hole.hinge!, padRadius, own),
  };
}

/** The stop at the end of the links that rule a pad, and the product of their ratios. */
function stopThatRules(
  horn: Horn,
  setup: Setup,
  id: string,
): { readonly id: string; readonly ratio: number } {
  const { ruledBy, pose } = standingPad(horn, setup, id);
  if (ruledBy === null) return { id, ratio: 1 };
  const driver = standingPad(horn, setup, ruledBy.driver).pose.front;
  // A driver that stands shut holds its driven pad shut: nothing moves.
  if (!(driver > 0)) return { id: ruledBy.driver, ratio: 0 };
  const above = stopThatRules(horn, setup, ruledBy.driver);
  return { id: above.id, ratio: (above.ratio * pose.front) / driver };
}

/**
 * An opening's ± at the front, m. Heights rise in proportion to their distance from the rod, so that the back
 * rises by 2·centre − front. Where the hinge hardly moves the point that was read, the reading says little: it
 * is then off by the whole opening, no more.
 */
function frontPlusMinus(
  pad: PadMotion,
  { at, plusMinus }: { readonly at: MeasuringPoint | null; readonly plusMinus: number },
): number {
  if (plusMinus === 0) return 0;
  const centre = pad.ownCentrePerFront;
  const risesPerFront = at === 'centre' ? centre : at === 'back' ? 2 * centre - 1 : 1;
  if (risesPerFront === 1) return plusMinus;
  const most = Math.max(pad.ownFront, plusMinus);
  return risesPerFront * most > plusMinus ? plusMinus / risesPerFront : most;
}

/** The face that sank by a pad's thickness, lifted back to where it was. */
function thicknessAtHeldOpening(key: KeyAnswer, pad: PadMotion): Answer {
  return plus(key.padThickness, times(key.opening, pad.upright / pad.standingCentrePerFront));
}

function readingsOf(hole: ToneHole, setup: Setup, by: KeyPlusMinus): Reading[] {
  const reading = (kind: ReadingKind, value: number, at: MeasuringPoint | null = null): Reading => {
    const plusMinus = by[kind] ?? 0;
    if (!(plusMinus >= 0 && plusMinus < Infinity)) {
      throw new RangeError(
        `invalid ± of ${hole.name}, ${NAMES[kind]}: ${plusMinus * 1000} mm; expected 0 or more`,
      );
    }
    return { id: hole.id, kind, value, at, plusMinus };
  };
  const built = [reading('holeRadius', hole.holeRadius), reading('chimney', hole.chimney)];
  if (hole.hinge === null) return built;
  const { opening, padThickness } = keySetupOf(setup, hole.id);
  return [reading('opening', opening.height, opening.at), reading('padThickness', padThickness), ...built];
}

const NAMES: Readonly<Record<ReadingKind, string>> = {
  opening: 'opening',
  padThickness: 'pad thickness',
  holeRadius: 'hole radius',
  chimney: 'chimney',
};

const NOTHING: Answer = Object.freeze({ cents: 0, logHeight: 0 });

function plus(a: Answer, b: Answer): Answer {
  return { cents: a.cents + b.cents, logHeight: a.logHeight + b.logHeight };
}

function times({ cents, logHeight }: Answer, by: number): Answer {
  return { cents: cents * by, logHeight: logHeight * by };
}
