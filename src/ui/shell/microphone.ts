import { FRAME_SAMPLES, makePitchEar } from '../state/hear-pitch.ts';
import type { Moment } from '../state/heard-note.ts';

/** Listening that has begun. */
export interface Listening {
  stop(): void;
}

/** What is done with what is heard. */
export interface Listener {
  /** called about twenty times a second; null where no pitch can be told */
  readonly onMoment: (moment: Moment | null) => void;
  /** called when the microphone went away by itself */
  readonly onGone: (sentence: string) => void;
}

/** Between two looks at the sound, ms. */
const LOOK_MS = 50;

/**
 * Listens through the microphone. Samples are looked at as they come and forgotten: nothing is recorded, and
 * nothing leaves the machine.
 *
 * @returns what is listening, or a sentence on why nothing can be
 */
export async function listen({ onMoment, onGone }: Listener): Promise<Listening | string> {
  // Where the page is not secure the browser hides its microphones.
  const devices: MediaDevices | undefined = navigator.mediaDevices;
  if (devices === undefined) {
    return 'This page may not listen: a browser lets only pages from this machine or over https use the microphone. Cents can be typed from a tuner.';
  }
  let stream: MediaStream;
  try {
    // What makes speech clear makes pitch unclear.
    const audio = { echoCancellation: false, noiseSuppression: false, autoGainControl: false };
    stream = await devices.getUserMedia({ audio });
  } catch (error) {
    return refusalOf(error);
  }
  const context = new AudioContext();
  const tap = context.createAnalyser();
  tap.fftSize = FRAME_SAMPLES;
  context.createMediaStreamSource(stream).connect(tap);
  await context.resume();
  const ear = makePitchEar(context.sampleRate);
  const samples = new Float32Array(FRAME_SAMPLES);
  const looking = setInterval(() => {
    tap.getFloatTimeDomainData(samples);
    const frame = ear(samples);
    const at = context.currentTime - FRAME_SAMPLES / 2 / context.sampleRate;
    onMoment(frame === null ? null : { ...frame, at });
  }, LOOK_MS);
  const stop = (): void => {
    clearInterval(looking);
    for (const track of stream.getTracks()) track.stop();
    void context.close();
  };
  stream.getAudioTracks()[0].addEventListener('ended', () => {
    stop();
    onGone('The microphone went away. Listening can begin again once it is back.');
  });
  return { stop };
}

function refusalOf(error: unknown): string {
  const name = error instanceof DOMException ? error.name : '';
  switch (name) {
    case 'NotAllowedError':
      return 'The browser refused the microphone. Allow it for this page in the browser’s settings, or type cents from a tuner.';
    case 'NotFoundError':
      return 'No microphone was found. Plug one in, or type cents from a tuner.';
    case 'NotReadableError':
      return 'Another program holds the microphone. Close it there, or type cents from a tuner.';
    default:
      return `The microphone could not be used: ${String(error)}. Cents can be typed from a tuner.`;
  }
}
