import { hearingOf, type HeardNote } from '../state/heard-note.ts';

/** A recording, decoded. */
export interface Recording {
  /** one channel, −1…1 */
  readonly samples: Float32Array;
  /** Hz */
  readonly sampleRate: number;
}

/** The longest recording read, s: a whole scale with every note held is a minute or two. */
const LONGEST_S = 600;

/** The largest file read, bytes: so much takes {@link LONGEST_S} of the finest WAV. */
const LARGEST_BYTES = 350e6;

/** How long hearing goes on before the page gets its turn, ms. */
const TURN_MS = 25;

/**
 * Reads a sound file: what the browser can decode, WAV always. It is looked through on this machine and forgotten.
 *
 * @returns the recording with its channels put together, or a sentence on why it cannot be read
 */
export async function readRecording(file: File): Promise<Recording | string> {
  if (file.size > LARGEST_BYTES) {
    return `“${file.name}” has ${Math.round(file.size / 1e6)} MB; expected at most ${LARGEST_BYTES / 1e6}.`;
  }
  // Decoding turns any rate into the context’s; this one is enough for every note of a saxophone.
  const context = new OfflineAudioContext(1, 1, 48_000);
  let audio: AudioBuffer;
  try {
    audio = await context.decodeAudioData(await file.arrayBuffer());
  } catch {
    return `“${file.name}” could not be read as sound; expected a WAV file, or another kind this browser plays.`;
  }
  if (audio.duration > LONGEST_S) {
    return `“${file.name}” lasts ${Math.round(audio.duration / 60)} minutes; expected at most ${LONGEST_S / 60}.`;
  }
  const samples = new Float32Array(audio.length);
  for (let channel = 0; channel < audio.numberOfChannels; channel++) {
    const data = audio.getChannelData(channel);
    for (let i = 0; i < samples.length; i++) samples[i] += data[i] / audio.numberOfChannels;
  }
  return { samples, sampleRate: audio.sampleRate };
}

/** Every note of a recording, one after another. The page gets its turn in between, as long as it is looked at. */
export async function hearRecording({ samples, sampleRate }: Recording): Promise<readonly HeardNote[]> {
  let notes: readonly HeardNote[] = [];
  let turn = performance.now();
  for (const hearing of hearingOf(samples, sampleRate)) {
    notes = hearing.notes;
    if (document.hidden || performance.now() - turn < TURN_MS) continue;
    await new Promise((resolve) => setTimeout(resolve));
    turn = performance.now();
  }
  return notes;
}
