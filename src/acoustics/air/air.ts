import { cramerSoundSpeed, cramerSoundSpeedSlope } from './cramer-1993.ts';
import { keefeAir, KEEFE_SLOPES } from './keefe-1984.ts';

/** Air as the waves meet it. SI units. */
export interface Air {
  /** c, m/s */
  readonly soundSpeed: number;
  /** ρ, kg/m³ */
  readonly density: number;
  /** η, Pa·s */
  readonly viscosity: number;
  /** γ = cp/cv */
  readonly heatRatio: number;
  /** ν, the square root of the Prandtl number */
  readonly prandtlRoot: number;
}

/** What the day does to the horn: the air in it, the same all along or changing evenly from end to end. */
export interface AirColumn {
  /** °C at the mouthpiece tip */
  readonly mouthpieceC: number;
  /** °C at the bell rim */
  readonly bellC: number;
  /** relative humidity 0…1, or null for the dry-air formulas alone */
  readonly humidity: number | null;
  /** mole fraction of carbon dioxide, 0…0.06, or null */
  readonly carbonDioxide: number | null;
  /** true where a value lies outside a formula's own range */
  readonly warnings: readonly string[];
}

/** The temperature the published tables of loss terms are centred on, °C. */
export const REFERENCE_C = 26.85;

/**
 * Air from its temperature, and, where given, its humidity and carbon dioxide.
 *
 * Dry: Keefe's linear fits. With humidity or CO₂ the sound speed is multiplied by Cramer's ratio of this air
 * to dry ordinary air, and the density divided by its square (γp = ρc² hardly changes).
 *
 * **Source:** Keefe 1984 (from memory, confirmed); Cramer 1993 → notes/sources.md.
 * **Holds for:** 15…37 °C (Keefe); Cramer's polynomial is stated for 0…30 °C and is extrapolated above.
 */
export function airAtTemperature(
  temperatureC: number,
  humidity: number | null = null,
  carbonDioxide: number | null = null,
): Air {
  const dry = keefeAir(temperatureC);
  if (humidity === null && carbonDioxide === null) return dry;
  const ratio =
    cramerSoundSpeed(temperatureC, humidity ?? 0, carbonDioxide ?? ORDINARY_CO2) /
    cramerSoundSpeed(temperatureC, 0, ORDINARY_CO2);
  return { ...dry, soundSpeed: dry.soundSpeed * ratio, density: dry.density / (ratio * ratio) };
}

/**
 * How the logarithm of each property of air changes per °C: (dρ/dT)/ρ and so on.
 * The arguments are those of {@link airAtTemperature}.
 */
export function airLogSlopes(
  temperatureC: number,
  humidity: number | null = null,
  carbonDioxide: number | null = null,
): Air {
  const dry = keefeAir(temperatureC);
  const ofDry = (key: keyof Air): number => KEEFE_SLOPES[key] / dry[key];
  let faster = 0;
  if (humidity !== null || carbonDioxide !== null) {
    const moist = [temperatureC, humidity ?? 0, carbonDioxide ?? ORDINARY_CO2] as const;
    const plain = [temperatureC, 0, ORDINARY_CO2] as const;
    faster =
      cramerSoundSpeedSlope(...moist) / cramerSoundSpeed(...moist) -
      cramerSoundSpeedSlope(...plain) / cramerSoundSpeed(...plain);
  }
  return {
    soundSpeed: ofDry('soundSpeed') + faster,
    density: ofDry('density') - 2 * faster,
    viscosity: ofDry('viscosity'),
    heatRatio: ofDry('heatRatio'),
    prandtlRoot: ofDry('prandtlRoot'),
  };
}

/** Mole fraction of carbon dioxide in ordinary air. */
const ORDINARY_CO2 = 0.0004;

/**
 * Checks and freezes the air in the horn.
 *
 * @param options.mouthpieceC °C at the tip, 0…45, default 26.85
 * @param options.bellC       °C at the rim, 0…45, default the same as at the tip
 * @param options.humidity    0…1, default null (dry)
 * @param options.carbonDioxide mole fraction 0…0.06, default null
 * @throws RangeError naming the field, value, unit and what was expected
 */
export function makeAirColumn(
  options: {
    mouthpieceC?: number;
    bellC?: number;
    humidity?: number | null;
    carbonDioxide?: number | null;
  } = {},
): AirColumn {
  const mouthpieceC = options.mouthpieceC ?? REFERENCE_C;
  const bellC = options.bellC ?? mouthpieceC;
  const humidity = options.humidity ?? null;
  const carbonDioxide = options.carbonDioxide ?? null;
  within('air temperature at the mouthpiece', mouthpieceC, 0, 45, '°C');
  within('air temperature at the bell', bellC, 0, 45, '°C');
  if (humidity !== null) within('humidity', humidity, 0, 1, '(share of saturation)');
  if (carbonDioxide !== null) within('carbon dioxide', carbonDioxide, 0, 0.06, '(mole fraction)');
  const warnings: string[] = [];
  for (const t of new Set([mouthpieceC, bellC])) {
    if (t < 15 || t > 37)
      warnings.push(`The air at ${t} °C lies outside 15–37 °C, where the air formulas are good.`);
  }
  return Object.freeze({ mouthpieceC, bellC, humidity, carbonDioxide, warnings });
}

/** Air at a place along the bore: `fraction` 0 at the mouthpiece tip, 1 at the bell rim. */
export function airAt(column: AirColumn, fraction: number): Air {
  const t = column.mouthpieceC + fraction * (column.bellC - column.mouthpieceC);
  return airAtTemperature(t, column.humidity, column.carbonDioxide);
}

function within(name: string, value: number, low: number, high: number, unit: string): void {
  if (!(value >= low && value <= high)) {
    throw new RangeError(`invalid ${name}: ${value} ${unit}; expected ${low} to ${high} ${unit}`);
  }
}

/** Logarithmic slopes per °C of the air at a place along the bore, when the whole column warms evenly. */
export function airLogSlopesAt(column: AirColumn, fraction: number): Air {
  const t = column.mouthpieceC + fraction * (column.bellC - column.mouthpieceC);
  return airLogSlopes(t, column.humidity, column.carbonDioxide);
}
