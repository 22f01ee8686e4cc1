/**
 * The convention of the whole tree, stated once.
 *
 *   time e^{+jωt}; p pressure in Pa; u volume flow in m³/s, positive from the mouthpiece towards the bell;
 *   impedance p/u in Pa·s/m³; frequencies f in Hz.
 *
 *      mouthpiece side  p₁,u₁ ──▶┌───────┐──▶ p₂,u₂  bell side        ⎡p₁⎤   ⎡A B⎤ ⎡p₂⎤
 *                                │ A B   │                            ⎢  ⎥ = ⎢   ⎥ ⎢  ⎥
 *                                │ C D   │                            ⎣u₁⎦   ⎣C D⎦ ⎣u₂⎦
 *                                └───────┘
 *   reciprocity: AD − BC = 1.   passivity: Re(p·u*) never grows towards the bell.
 *
 * A wave state carries p, u and their slopes in frequency, so that one walk from the bell to the mouthpiece
 * gives the input admittance and its exact derivative.
 */

/** Two-port numbers: A, B, C, D as re, im pairs (0…7) and their slopes per Hz (8…15). */
export type TwoPort = Float64Array;

/** Wave state: p, u as re, im pairs (0…3) and their slopes per Hz (4…7). */
export type WaveState = Float64Array;

/** A complex number and its slope per Hz: re, im, slope re, slope im. */
export type OnePort = Float64Array;

/** Room for one two-port. */
export function makeTwoPort(): TwoPort {
  return new Float64Array(16);
}

/** Room for one wave state. */
export function makeWaveState(): WaveState {
  return new Float64Array(8);
}

/** Takes a wave state on the bell side of a two-port to its mouthpiece side, slopes included if asked. */
export function applyTwoPort(m: TwoPort, state: WaveState, withSlope: boolean): void {
  const pr = state[0];
  const pi = state[1];
  const ur = state[2];
  const ui = state[3];
  state[0] = m[0] * pr - m[1] * pi + m[2] * ur - m[3] * ui;
  state[1] = m[0] * pi + m[1] * pr + m[2] * ui + m[3] * ur;
  state[2] = m[4] * pr - m[5] * pi + m[6] * ur - m[7] * ui;
  state[3] = m[4] * pi + m[5] * pr + m[6] * ui + m[7] * ur;
  if (!withSlope) return;
  const dpr = state[4];
  const dpi = state[5];
  const dur = state[6];
  const dui = state[7];
  state[4] =
    m[0] * dpr - m[1] * dpi + m[2] * dur - m[3] * dui + m[8] * pr - m[9] * pi + m[10] * ur - m[11] * ui;
  state[5] =
    m[0] * dpi + m[1] * dpr + m[2] * dui + m[3] * dur + m[8] * pi + m[9] * pr + m[10] * ui + m[11] * ur;
  state[6] =
    m[4] * dpr - m[5] * dpi + m[6] * dur - m[7] * dui + m[12] * pr - m[13] * pi + m[14] * ur - m[15] * ui;
  state[7] =
    m[4] * dpi + m[5] * dpr + m[6] * dui + m[7] * dur + m[12] * pi + m[13] * pr + m[14] * ui + m[15] * ur;
}

/** Adds a series reactance jxf to a wave state: p₁ = p₂ + jxf·u₂. */
export function applyReactance(x: number, f: number, state: WaveState, withSlope: boolean): void {
  const ur = state[2];
  const ui = state[3];
  state[0] -= x * f * ui;
  state[1] += x * f * ur;
  if (!withSlope) return;
  state[4] -= x * (f * state[7] + ui);
  state[5] += x * (f * state[6] + ur);
}

/** Adds a shunt admittance y to a wave state: u₁ = u₂ + y·p₂. */
export function applyShunt(y: OnePort, state: WaveState, withSlope: boolean): void {
  const pr = state[0];
  const pi = state[1];
  state[2] += y[0] * pr - y[1] * pi;
  state[3] += y[0] * pi + y[1] * pr;
  if (!withSlope) return;
  const dpr = state[4];
  const dpi = state[5];
  state[6] += y[0] * dpr - y[1] * dpi + y[2] * pr - y[3] * pi;
  state[7] += y[0] * dpi + y[1] * dpr + y[2] * pi + y[3] * pr;
}
