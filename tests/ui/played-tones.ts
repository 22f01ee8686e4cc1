/** Tones to be heard: reed-like spectra, noise, vibrato, attacks. All seeded. */
export interface ToneOptions {
  readonly sampleRate: number;
  readonly seconds: number;
  /** how many harmonics, each 1/k of the first; default 10 */
  readonly harmonics?: number;
  /** amplitude of the odd harmonics, times what it would be; default 1 */
  readonly odd?: number;
  /** amplitude of even noise, default 0.01 */
  readonly noise?: number;
  /** cents either way, at 5 Hz; default none */
  readonly vibratoCents?: number;
  /** s over which the tone comes and goes, a third of a semitone flat at its beginning; default none */
  readonly attack?: number;
  readonly seed?: number;
}

export function tone(hz: number, options: ToneOptions): Float32Array {
  const {
    sampleRate,
    seconds,
    harmonics = 10,
    odd = 1,
    noise = 0.01,
    vibratoCents = 0,
    attack = 0,
    seed = 1,
  } = options;
  const samples = new Float32Array(Math.round(seconds * sampleRate));
  let state = seed >>> 0;
  const random = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 4294967296 - 0.5;
  };
  const count = Math.min(harmonics, Math.floor(sampleRate / 2.2 / hz));
  let phase = 2 * Math.PI * random();
  for (let i = 0; i < samples.length; i++) {
    const t = i / sampleRate;
    const begun = attack === 0 ? 1 : Math.min(1, t / attack);
    const left = attack === 0 ? 1 : Math.min(1, (seconds - t) / attack);
    const bent = vibratoCents * Math.sin(2 * Math.PI * 5 * t) - 33 * (1 - begun);
    phase += (2 * Math.PI * hz * 2 ** (bent / 1200)) / sampleRate;
    let value = 0;
    for (let k = 1; k <= count; k++) value += ((k % 2 === 1 ? odd : 1) * Math.sin(k * phase)) / k;
    samples[i] = 0.25 * value * Math.min(begun, left) + 2 * noise * random();
  }
  return samples;
}

/** Samples one after another, with silence between, s. */
export function inTurn(parts: readonly Float32Array[], sampleRate: number, pause: number): Float32Array {
  const gap = Math.round(pause * sampleRate);
  const whole = new Float32Array(parts.reduce((sum, part) => sum + part.length + gap, gap));
  let at = gap;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length + gap;
  }
  return whole;
}

/** A WAV file: one channel, 16 bits. */
export function wavFile(samples: Float32Array, sampleRate: number): Uint8Array {
  const bytes = new DataView(new ArrayBuffer(44 + 2 * samples.length));
  const word = (at: number, text: string): void =>
    [...text].forEach((letter, i) => bytes.setUint8(at + i, letter.charCodeAt(0)));
  word(0, 'RIFF');
  bytes.setUint32(4, 36 + 2 * samples.length, true);
  word(8, 'WAVEfmt ');
  bytes.setUint32(16, 16, true);
  bytes.setUint16(20, 1, true);
  bytes.setUint16(22, 1, true);
  bytes.setUint32(24, sampleRate, true);
  bytes.setUint32(28, 2 * sampleRate, true);
  bytes.setUint16(32, 2, true);
  bytes.setUint16(34, 16, true);
  word(36, 'data');
  bytes.setUint32(40, 2 * samples.length, true);
  samples.forEach((x, i) => bytes.setInt16(44 + 2 * i, Math.max(-1, Math.min(1, x)) * 32_767, true));
  return new Uint8Array(bytes.buffer);
}
