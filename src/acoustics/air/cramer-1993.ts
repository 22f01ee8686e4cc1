/** a₀…a₁₅ of the sound-speed polynomial. */
const A = [
  331.5024, 0.603055, -0.000528, 51.471935, 0.1495874, -0.000782, -1.82e-7, 3.73e-8, -2.93e-10, -85.20931,
  -0.228525, 5.91e-5, -2.835149, -2.15e-13, 29.179762, 0.000486,
] as const;

/**
 * Sound speed in moist air with carbon dioxide, m/s.
 *
 * @param temperatureC  t, °C, 0…30
 * @param humidity      relative humidity, 0…1
 * @param carbonDioxide x_c, mole fraction, 0…0.01 (extrapolated above)
 * @param pressure      p, Pa, 75 000…102 000
 *
 * **Source:** Cramer 1993, JASA 93, 2510, eq. 15 and appendix.
 * **Holds for:** 0–30 °C, 75–102 kPa, water fraction ≤ 0.06; 0.03 % there.
 */
export function cramerSoundSpeed(
  temperatureC: number,
  humidity: number,
  carbonDioxide: number,
  pressure = 101325,
): number {
  const t = temperatureC;
  const p = pressure;
  const { enhancement, saturation } = waterVapour(t, p);
  const w = (humidity * enhancement * saturation) / p;
  const x = carbonDioxide;
  return (
    A[0] + A[1] * t + A[2] * t * t +
    (A[3] + A[4] * t + A[5] * t * t) * w +
    (A[6] + A[7] * t + A[8] * t * t) * p +
    (A[9] + A[10] * t + A[11] * t * t) * x +
    A[12] * w * w + A[13] * p * p + A[14] * x * x + A[15] * w * p * x
  ); // prettier-ignore
}

/**
 * Slope of {@link cramerSoundSpeed} in temperature, m/s per °C.
 *
 * **Source:** derivative of the polynomial, by the chain rule through the water fraction.
 */
export function cramerSoundSpeedSlope(
  temperatureC: number,
  humidity: number,
  carbonDioxide: number,
  pressure = 101325,
): number {
  const t = temperatureC;
  const p = pressure;
  const kelvin = t + 273.15;
  const { enhancement, saturation } = waterVapour(t, p);
  const w = (humidity * enhancement * saturation) / p;
  const growth = 2 * 1.2378847e-5 * kelvin - 1.9121316e-2 + 6343.1645 / (kelvin * kelvin);
  const dw = (humidity * saturation * (1.12e-6 * t + enhancement * growth)) / p;
  const x = carbonDioxide;
  const perTemperature =
    A[1] + 2 * A[2] * t + (A[4] + 2 * A[5] * t) * w + (A[7] + 2 * A[8] * t) * p + (A[10] + 2 * A[11] * t) * x;
  const perWater = A[3] + A[4] * t + A[5] * t * t + 2 * A[12] * w + A[15] * p * x;
  return perTemperature + perWater * dw;
}

/** The enhancement factor and the saturation pressure of water vapour, Pa. */
function waterVapour(t: number, p: number): { enhancement: number; saturation: number } {
  const kelvin = t + 273.15;
  return {
    enhancement: 1.00062 + 3.14e-8 * p + 5.6e-7 * t * t,
    saturation: Math.exp(
      1.2378847e-5 * kelvin * kelvin - 1.9121316e-2 * kelvin + 33.93711047 - 6343.1645 / kelvin,
    ),
  };
}
