/** A number and how far it may be off either way, in one unit. */
export interface Measured {
  readonly value: number;
  /** ≥ 0 */
  readonly plusMinus: number;
}

/**
 * What differences are worth.
 *
 *   cents        10   just noticeable in a melody
 *   carefulCents 7.5  players tell 7.5 to 10 cents from 5
 *   makerCents   1.7  0.1 % of the frequency, what makers work to
 *   strengthDb   1    height of a resonance; ours to choose
 *
 * **Source:** Hill & Summers 2007, JASA 121, 2376, for what players tell; Dalmont, Nederveen & Joly 2001 for
 * makers; the decibel is common practice, no source.
 */
export const NOTICED = Object.freeze({ cents: 10, carefulCents: 7.5, makerCents: 1.7, strengthDb: 1 });

/** Who would notice a difference, from none upwards. */
export const NOTICES = Object.freeze([
  'cannot be shown',
  'nobody',
  'a maker',
  'a careful player',
  'the player',
] as const);

/** Who would notice a difference; `cannot be shown` where it lies inside its own ±. */
export type Notice = (typeof NOTICES)[number];

/** Whether a difference is greater than its own ±. A difference of nothing cannot be shown. */
export function canBeShown({ value, plusMinus }: Measured): boolean {
  return Math.abs(value) > plusMinus;
}

/** Who would notice a difference of pitch. @param cents difference, cents */
export function whoNoticesPitch(cents: Measured): Notice {
  if (!canBeShown(cents)) return 'cannot be shown';
  const size = Math.abs(cents.value);
  if (size >= NOTICED.cents) return 'the player';
  if (size >= NOTICED.carefulCents) return 'a careful player';
  return size >= NOTICED.makerCents ? 'a maker' : 'nobody';
}

/** Who would notice a difference of strength. @param db difference of resonance height, dB */
export function whoNoticesStrength(db: Measured): Notice {
  if (!canBeShown(db)) return 'cannot be shown';
  return Math.abs(db.value) >= NOTICED.strengthDb ? 'the player' : 'nobody';
}

/** The one of two that more would notice. */
export function moreNoticed(a: Notice, b: Notice): Notice {
  return NOTICES.indexOf(a) >= NOTICES.indexOf(b) ? a : b;
}
