import { makeWaveState, type OnePort, type WaveState } from '../two-port.ts';
import type { Network } from './network.ts';
import { meetNeighbours } from './neighbours.ts';
import { passElement, startAtBell } from './walk.ts';

const state: WaveState = makeWaveState();

/** What stands across the mouthpiece tip when the admittance is taken. */
export type MouthEnd = 'bare' | 'with reed';

/**
 * Input admittance at the mouthpiece tip, in m³/(Pa·s), with its slope per Hz.
 *
 * Walks the wave state from the bell to the mouthpiece (see two-port.ts), then Y = u/p; with the reed its
 * compliance jωC is added.
 *
 * @param f   Hz, > 0
 * @param out re Y, im Y and, if asked for, re dY/df, im dY/df
 */
export function inputAdmittanceAt(
  network: Network,
  f: number,
  mouth: MouthEnd,
  out: OnePort,
  withSlope = true,
): void {
  const around = network.neighbours ? meetNeighbours(network, f) : null;
  startAtBell(network, f, state);
  const { elements } = network;
  const extras = around === null ? null : around.extras;
  for (let i = elements.length - 1; i >= 0; i--) passElement(elements[i], f, state, withSlope, extras);
  writeAdmittance(f, mouth === 'with reed' ? network.reedCompliance : 0, out, withSlope);
  if (around === null || !withSlope) return;
  out[2] += around.slope.re;
  out[3] += around.slope.im;
}

function writeAdmittance(f: number, compliance: number, out: OnePort, withSlope: boolean): void {
  const pr = state[0];
  const pi = state[1];
  const ur = state[2];
  const ui = state[3];
  const norm = pr * pr + pi * pi;
  const yr = (ur * pr + ui * pi) / norm;
  const yi = (ui * pr - ur * pi) / norm;
  const perHz = 2 * Math.PI * compliance;
  out[0] = yr;
  out[1] = yi + perHz * f;
  if (!withSlope) return;
  const dpr = state[4];
  const dpi = state[5];
  const dur = state[6];
  const dui = state[7];
  // (u/p)' = (u' − Y p')/p
  const nr = dur - (yr * dpr - yi * dpi);
  const ni = dui - (yr * dpi + yi * dpr);
  out[2] = (nr * pr + ni * pi) / norm;
  out[3] = (ni * pr - nr * pi) / norm + perHz;
}

/**
 * Input impedance over a list of frequencies, Pa·s/m³.
 *
 * @param frequencies Hz
 * @returns re and im parts, each as long as `frequencies`
 */
export function impedanceSweep(
  network: Network,
  frequencies: ArrayLike<number>,
  mouth: MouthEnd = 'bare',
): { re: Float64Array; im: Float64Array } {
  const re = new Float64Array(frequencies.length);
  const im = new Float64Array(frequencies.length);
  const y = new Float64Array(4);
  for (let i = 0; i < frequencies.length; i++) {
    inputAdmittanceAt(network, frequencies[i], mouth, y, false);
    const norm = y[0] * y[0] + y[1] * y[1];
    re[i] = y[0] / norm;
    im[i] = -y[1] / norm;
  }
  return { re, im };
}
