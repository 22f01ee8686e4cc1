import { openHole, shareAlong } from '../holes/open-hole.ts';
import type { PadModel } from '../holes/pad-models/pad-model.ts';
import { ventShareSlopes } from '../holes/hole-lengths.ts';
import { holeOf, type Horn, type Setup } from '../horn.ts';
import {
  asItStands,
  effectsOn,
  type KeySlopes,
  type Reading,
  type Readings,
  type Slopes,
} from './readings.ts';
import type { NoteAnswers } from './whole-horn.ts';

/**
 * How sure an answer is: its ± and what that is made of.
 *
 * Every part is meant as one standard deviation; parts that err on their own add as the root of the sum of squares.
 *
 *   readings     each by the answer's exact slope (readings.ts)
 *   pad model    its stated error, on every pad at once
 *   whole horn   what a plane-wave model of a whole instrument may err by; nothing between two setups of one horn
 *   calibration  what is left of the air and mouthpiece once they are fitted to played notes
 *
 * **Source:** JCGM 100:2008, 5.1.2 (law of propagation), 8 (report the parts).
 */
export interface Budget {
  /** ≥ 0, in the answer's unit */
  readonly plusMinus: number;
  /** what each reading's ± does, signed, the greatest first; readings without effect left out */
  readonly readings: readonly ReadingPart[];
  /** signed */
  readonly padModel: number;
  /** ≥ 0 */
  readonly wholeHorn: number;
  /** ≥ 0 */
  readonly calibration: number;
}

/** One reading's part of a ±. */
export interface ReadingPart {
  readonly reading: Reading;
  readonly effect: number;
  /** of a difference: the one of the two setups it was read in; left out where it was read once for both */
  readonly side?: 'first' | 'other';
}

/** Parts that are not readings. */
export type OtherParts = Partial<Pick<Budget, 'padModel' | 'wholeHorn' | 'calibration'>>;

/**
 * What a plane-wave model may err by on a whole instrument, cents.
 *
 * **Source:** Lefebvre 2010, thesis, McGill University (abstract read).
 */
export const MODEL_CENTS = 10;

/**
 * What the height of a resonance may err by, as a share: half of the span 4…19 % by which open holes that hear
 * each other lower it, which this model leaves out. Taken as an error, that span's middle being common to horns.
 *
 * **Source:** Lefebvre, Scavone & Kergomard 2013 (abstract read) for the span; the halving is ours.
 */
export const MODEL_STRENGTH = 0.075;

/** The same by what an answer is of: cents, or the logarithm of a height. */
export const MODEL_ERROR = Object.freeze({ cents: MODEL_CENTS, logHeight: Math.log1p(MODEL_STRENGTH) });

/** What an absolute answer on one note may be off by besides readings and pads. */
export type AbsoluteParts = (answers: NoteAnswers, of: 'cents' | 'logHeight') => Omit<OtherParts, 'padModel'>;

/** As long as nothing was fitted to played notes. */
export const uncalibrated: AbsoluteParts = (_, of) => ({ wholeHorn: MODEL_ERROR[of] });

/** Puts the parts of an answer's ± together. */
export function makeBudget(parts: readonly ReadingPart[], others: OtherParts = {}): Budget {
  const { padModel = 0, wholeHorn = 0, calibration = 0 } = others;
  const readings = parts
    .filter(({ effect }) => effect !== 0)
    .sort((a, b) => Math.abs(b.effect) - Math.abs(a.effect));
  const plusMinus = Math.hypot(...readings.map(({ effect }) => effect), padModel, wholeHorn, calibration);
  return { plusMinus, readings, padModel, wholeHorn, calibration };
}

/** The ± of an answer from its slopes. */
export function budgetOf(
  readings: Readings,
  slopes: Slopes,
  padModel: PadModel,
  others: Omit<OtherParts, 'padModel'> = {},
): Budget {
  const effects = effectsOn(readings, slopes);
  const parts = readings.list.map((reading, i) => ({ reading, effect: effects[i] }));
  return makeBudget(parts, { ...others, padModel: (slopes.padModel ?? 0) * padModel.relativeError });
}

/** One answer on one horn in one setup. */
export interface AnswerThere {
  readonly readings: Readings;
  readonly slopes: Slopes;
  readonly padModel: PadModel;
}

/**
 * The ± of what an answer is in one setup less what it is in another. Of one horn, what was read once for both
 * errs the same way in both and counts by the difference of its effects, and so does the pad model. Different
 * horns err each on their own.
 *
 * @param wholeHorn what the model of a whole horn may err by, for each of two different horns
 */
export function differenceBudget(
  first: AnswerThere,
  other: AnswerThere,
  wholeHorn: number | 'same horn',
): Budget {
  const sameHorn = wholeHorn === 'same horn';
  const [a, b] = [first, other].map(({ readings, slopes }) => effectsOn(readings, slopes));
  const ofOther = new Map(other.readings.list.map((reading, i) => [nameOf(reading), i]));
  const parts = first.readings.list.map((reading, i): ReadingPart => {
    const j = ofOther.get(nameOf(reading));
    if (!sameHorn || j === undefined || !isSameReading(reading, other.readings.list[j])) {
      return { reading, effect: -a[i], side: 'first' };
    }
    ofOther.delete(nameOf(reading));
    return { reading, effect: b[j] - a[i] };
  });
  for (const j of ofOther.values()) {
    parts.push({ reading: other.readings.list[j], effect: b[j], side: 'other' });
  }
  const [modelA, modelB] = [first, other].map(
    ({ slopes, padModel }) => (slopes.padModel ?? 0) * padModel.relativeError,
  );
  return sameHorn
    ? makeBudget(parts, { padModel: modelB - modelA })
    : makeBudget(parts, { padModel: Math.hypot(modelA, modelB), wholeHorn: Math.SQRT2 * wholeHorn });
}

const nameOf = ({ id, kind }: Reading): string => `${kind} of ${id}`;

/** One reading in both setups of a horn: the same value at the same point, the same ±. */
function isSameReading(a: Reading, b: Reading): boolean {
  return a.value === b.value && a.at === b.at && a.plusMinus === b.plusMinus;
}

/** Slopes of a note's pitch (cents) or of the logarithm of its height, from its answers as it stands. */
export function noteSlopes(answers: NoteAnswers, of: 'cents' | 'logHeight'): Slopes {
  const keys = answers.keys.map(({ id, opening, holeRadius, chimney, geometry }) => {
    const slopes: KeySlopes = {
      front: opening[of],
      holeRadius: holeRadius[of],
      chimney: chimney[of],
      place: geometry('place')[of],
      padThickness: geometry('padThickness')[of],
      padRadius: geometry('padRadius')[of],
      hingeDistance: geometry('hingeDistance')[of],
      hingeHeight: geometry('hingeHeight')[of],
      rimThickness: geometry('rimThickness')[of],
    };
    return [id, slopes] as const;
  });
  return {
    keys: new Map(keys),
    temperature: answers.temperature[of],
    mouthpieceVolume: answers.mouthpieceVolume[of],
    mouthpiecePlace: answers.mouthpiecePlace[of],
    padModel: answers.padModel[of],
  };
}

/** Slopes of a sum of answers, each with a factor. */
export function combined(terms: readonly (readonly [factor: number, slopes: Slopes])[]): Slopes {
  const sum = (of: (slopes: Slopes) => number | undefined): number =>
    terms.reduce((total, [factor, slopes]) => total + factor * (of(slopes) ?? 0), 0);
  const ids = new Set(terms.flatMap(([, { keys }]) => [...keys.keys()]));
  const links = new Set(terms.flatMap(([, slopes]) => [...(slopes.links?.keys() ?? [])]));
  const keys = [...ids].map((id) => {
    const kinds = new Set(
      terms.flatMap(([, slopes]) => Object.keys(slopes.keys.get(id) ?? {}) as (keyof KeySlopes)[]),
    );
    const total = [...kinds].map((kind) => [kind, sum((slopes) => slopes.keys.get(id)?.[kind])] as const);
    return [id, Object.fromEntries(total) as KeySlopes] as const;
  });
  return {
    keys: new Map(keys),
    links: new Map([...links].map((id) => [id, sum((slopes) => slopes.links?.get(id))])),
    temperature: sum((s) => s.temperature),
    mouthpieceVolume: sum((s) => s.mouthpieceVolume),
    mouthpiecePlace: sum((s) => s.mouthpiecePlace),
    padModel: sum((s) => s.padModel),
  };
}

/** Slopes of a pad's front opening as it stands: itself. */
export function frontSlopes(id: string): Slopes {
  return { keys: new Map([[id, { front: 1 }]]) };
}

/** Slopes of a pad's vent share, its front where it stands. */
export function shareSlopes(horn: Horn, setup: Setup, id: string, padModel: PadModel): Slopes {
  const standing = asItStands(horn, setup);
  const hole = holeOf(horn, id);
  const open = openHole(standing.horn, standing.setup, hole, padModel, undefined);
  const { length, noPadLength } = open.lengths;
  if (length === Infinity) return { keys: new Map() };
  const own = ventShareSlopes(hole, length, noPadLength);
  const along = (by: Parameters<typeof shareAlong>[2]): number => shareAlong(hole, open, by);
  const geometry = open.byGeometry();
  return {
    keys: new Map([
      [
        id,
        {
          front: open.byOpening === null ? 0 : along(open.byOpening),
          holeRadius: along(open.byRadius) + own.holeRadius,
          chimney: own.chimney,
          padThickness: along(geometry.padThickness),
          padRadius: along(geometry.padRadius),
          hingeDistance: along(geometry.hingeDistance),
          hingeHeight: along(geometry.hingeHeight),
          rimThickness: along(geometry.rimThickness),
        },
      ],
    ]),
    padModel: along(open.byPadModel),
  };
}
