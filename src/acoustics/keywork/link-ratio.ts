/**
 * The travel ratio of a link: how far the driven pad's front moves per front travel of the driver.
 *
 *      driver's rod ○──a_d──┬─────────ρ_d── front        h_v = k·h_d,  k = (ρ_v/ρ_d)(a_d/a_v)
 *                           │ arm
 *      driven's rod ○──a_v──┴─────────ρ_v── front
 *
 * **Source:** plain lever geometry.
 */
export interface LinkArms {
  /** a_d, m, driver's rod to the contact */
  readonly driverArm: number;
  /** ρ_d, m, driver's rod to its pad's front */
  readonly driverFront: number;
  /** a_v, m, driven key's rod to the contact */
  readonly drivenArm: number;
  /** ρ_v, m, driven key's rod to its pad's front */
  readonly drivenFront: number;
}

/** k from the lengths of the arms. @throws RangeError naming a length that is none */
export function ratioFromArms(arms: LinkArms): number {
  const names = {
    driverArm: 'driver’s rod to contact',
    driverFront: 'driver’s rod to pad front',
    drivenArm: 'driven key’s rod to contact',
    drivenFront: 'driven key’s rod to pad front',
  };
  for (const key of Object.keys(names) as (keyof LinkArms)[]) {
    if (!(arms[key] > 0 && arms[key] < Infinity))
      throw new RangeError(`invalid ${names[key]}: ${arms[key] * 1000} mm; expected more than 0 mm`);
  }
  return (arms.drivenFront / arms.driverFront) * (arms.driverArm / arms.drivenArm);
}

/** Driver moved, driven read: both fronts, m, while the arm is in contact. */
export interface LinkReading {
  readonly driver: number;
  readonly driven: number;
}

/** What readings of a link say, or why they say nothing. */
export type LinkFit =
  | {
      readonly found: true;
      /** k */
      readonly ratio: number;
      /** what the link leaves when it shuts, m: at the driven front, or, negative, at the driver's */
      readonly left: number;
      /** m, the largest distance of a reading from the line, at the driven front; 0 for two readings */
      readonly worst: number;
    }
  | { readonly found: false; readonly reason: string };

/** Driver readings closer than this, m, give no ratio: a reading repeats to 0.1–0.2 mm. */
const LEAST_SPAN = 0.5e-3;

/**
 * Ratio and closing point from readings of both fronts: the line h_v = k·h_d + c, by least squares.
 *
 * @param readings two or more, taken while the driver holds the driven pad
 */
export function fitLink(readings: readonly LinkReading[]): LinkFit {
  const n = readings.length;
  if (n < 2)
    return { found: false, reason: `two readings are needed; there ${n === 1 ? 'is one' : 'are none'}` };
  const driverMean = readings.reduce((sum, r) => sum + r.driver, 0) / n;
  const drivenMean = readings.reduce((sum, r) => sum + r.driven, 0) / n;
  let square = 0;
  let cross = 0;
  for (const { driver, driven } of readings) {
    square += (driver - driverMean) ** 2;
    cross += (driver - driverMean) * (driven - drivenMean);
  }
  const fronts = readings.map((r) => r.driver);
  const span = Math.max(...fronts) - Math.min(...fronts);
  if (!(span >= LEAST_SPAN)) {
    return {
      found: false,
      reason: `the driver moved by ${(span * 1000).toFixed(2)} mm only; move it by 0.5 mm or more`,
    };
  }
  const ratio = cross / square;
  if (!(ratio > 0)) return { found: false, reason: 'the driven pad does not rise with the driver' };
  const offset = drivenMean - ratio * driverMean;
  const worst = Math.max(...readings.map((r) => Math.abs(r.driven - ratio * r.driver - offset)));
  return { found: true, ratio, left: offset >= 0 ? offset : offset / ratio, worst };
}
