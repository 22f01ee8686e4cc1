/** A recording, decoded. */
export interface Recording {
  /** one channel, −1…1 */
  readonly samples: Float32Array;
  /** Hz */
  readonly sampleRate: number;
}

/** The longest recording read, s: a whole scale with every note held is a minute or two. */
const LONGEST_S = 1200;

/**
 * Reads a sound file: what the browser can decode, WAV always. It is looked through on this machine and forgotten.
 *
 * @returns the recording with its channels put together, or a sentence on why it cannot be read
 */
export async function readRecording(file: File): Promise<Recording | string> {
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
