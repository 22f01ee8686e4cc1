import { makeAirColumn, type AirColumn } from '../air/air.ts';
import { withBellLonger, withMouthpiecePulled, type Horn } from '../horn.ts';
import { noteNumber } from '../keywork/fingerings.ts';
import type { NoteAnswers } from './whole-horn.ts';

/**
 * What a few played notes can tell of a whole horn:
 *
 *   mouthpiece volume   m³ more than described
 *   mouthpiece place    m further out on the cork than described
 *   temperature         °C warmer than stated, all along
 *   bell end            m that the bell is longer, acoustically
 *   player’s trend      cents per octave that the player goes sharp upwards, about written A4; no part of the horn
 */
export const UNKNOWNS = [
  'mouthpiece volume',
  'mouthpiece place',
  'temperature',
  'bell end',
  'player’s trend',
] as const;
export type Unknown = (typeof UNKNOWNS)[number];

/** How much of every unknown; what is left out is as described. */
export type Amounts = Readonly<Partial<Record<Unknown, number>>>;

/**
 * How far each may be from what is described before anything is played, in its own unit.
 *
 * **Source:** common practice, no source; from memory.
 */
export const EXPECTED: Readonly<Record<Unknown, number>> = Object.freeze({
  'mouthpiece volume': 1e-6,
  'mouthpiece place': 5e-3,
  temperature: 3,
  'bell end': 10e-3,
  'player’s trend': 10,
});

/** Some unknowns in the order of {@link UNKNOWNS}, each once: the order they are named in never matters. */
export function inOrder(unknowns: readonly Unknown[]): Unknown[] {
  return UNKNOWNS.filter((unknown) => unknowns.includes(unknown));
}

/** Octaves of a written note above written A4, where the player’s trend is nothing. */
export function octavesFromA4(note: string): number {
  return (noteNumber(note) - noteNumber('A4')) / 12;
}

/** Which of a note's answers is an unknown's; the player's trend is the player's, not the horn's. */
const ANSWER_TO = {
  'mouthpiece volume': 'mouthpieceVolume',
  'mouthpiece place': 'mouthpiecePlace',
  temperature: 'temperature',
  'bell end': 'bell',
} as const satisfies Record<Exclude<Unknown, 'player’s trend'>, keyof NoteAnswers>;

/** How a note's played pitch answers to an unknown, cents per its unit. */
export function slopeOf(unknown: Unknown, answers: NoteAnswers, note: string): number {
  return unknown === 'player’s trend' ? octavesFromA4(note) : answers[ANSWER_TO[unknown]].cents;
}

/** The same of the logarithm of its height. */
export function heightSlopeOf(unknown: Unknown, answers: NoteAnswers): number {
  return unknown === 'player’s trend' ? 0 : answers[ANSWER_TO[unknown]].logHeight;
}

/** A horn with amounts of what is unknown of it. @throws RangeError where such a horn cannot be */
export function hornWith(horn: Horn, amounts: Amounts): Horn {
  const pulled = withMouthpiecePulled(horn, amounts['mouthpiece place'] ?? 0);
  const longer = amounts['bell end'] ?? 0;
  const more = amounts['mouthpiece volume'] ?? 0;
  const bell = longer === 0 ? pulled : withBellLonger(pulled, longer);
  return more === 0 ? bell : { ...bell, extraMouthpieceVolume: bell.extraMouthpieceVolume + more };
}

/** Air warmer by so much, all along. @throws RangeError where the formulas have no such air */
export function airWith(air: AirColumn, amounts: Amounts): AirColumn {
  const warmer = amounts.temperature ?? 0;
  if (warmer === 0) return air;
  const { mouthpieceC, bellC, humidity, carbonDioxide } = air;
  return makeAirColumn({
    mouthpieceC: mouthpieceC + warmer,
    bellC: bellC + warmer,
    humidity,
    carbonDioxide,
  });
}
