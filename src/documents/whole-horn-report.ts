import type { Answer, Horn, WholeHornNote } from '../acoustics/index.ts';

/** How one note answers to one change, in bench units. */
export interface AnswerReport {
  readonly cents: number;
  /** change of the resonance's height, % */
  readonly strengthPercent: number;
}

/** One fingering on the whole horn, bench units. */
export interface WholeHornNoteReport {
  readonly fingering: string;
  readonly note: string;
  readonly way: string;
  readonly register: number;
  readonly targetHz: number;
  /** null where the note has no resonance, with the reason */
  readonly hz: number | null;
  readonly reason: string | null;
  /** from equal temperament */
  readonly cents: number | null;
  readonly heightRatio: number | null;
  readonly riseMs: number | null;
  readonly cutoffHz: number | null;
  /** per mm of each pad's own stop at the front, links followed; one per pad id of `pads` */
  readonly perOpeningMm: readonly AnswerReport[];
  /** per mm of pad thickness at the same stop */
  readonly perThicknessMm: readonly AnswerReport[];
  readonly perAirC: AnswerReport | null;
  /** per cm³ of mouthpiece volume */
  readonly perMouthpieceCm3: AnswerReport | null;
}

/** A whole horn in bench units. */
export interface WholeHornReport {
  readonly horn: string;
  /** pads in the order of the answers, from the mouthpiece down; vents left out */
  readonly pads: readonly string[];
  readonly notes: readonly WholeHornNoteReport[];
}

const PER_MM = 1e-3;
const PER_CM3 = 1e-6;

/** A whole horn in bench units. */
export function reportWholeHorn(horn: Horn, notes: readonly WholeHornNote[]): WholeHornReport {
  const padIndices = horn.holes.flatMap((hole, i) => (hole.hinge === null ? [] : [i]));
  return {
    horn: horn.name,
    pads: padIndices.map((i) => horn.holes[i].id),
    notes: notes.map((note) => reportNote(note, padIndices)),
  };
}

function reportNote(note: WholeHornNote, padIndices: readonly number[]): WholeHornNoteReport {
  const { fingering, target, outcome, cutoff } = note;
  const played = outcome.found ? outcome : null;
  const answers = played?.answers ?? null;
  return {
    fingering: fingering.id,
    note: fingering.note,
    way: fingering.way,
    register: fingering.register,
    targetHz: target,
    hz: played?.resonance.frequency ?? null,
    reason: outcome.found ? null : outcome.reason,
    cents: played?.cents ?? null,
    heightRatio: played?.resonance.height ?? null,
    riseMs: played === null ? null : 1000 * played.resonance.riseTime,
    cutoffHz: cutoff.found ? cutoff.frequency : null,
    perOpeningMm: answers === null ? [] : padIndices.map((i) => scaled(answers.keys[i].opening, PER_MM)),
    perThicknessMm:
      answers === null ? [] : padIndices.map((i) => scaled(answers.keys[i].padThickness, PER_MM)),
    perAirC: answers === null ? null : scaled(answers.temperature, 1),
    perMouthpieceCm3: answers === null ? null : scaled(answers.mouthpieceVolume, PER_CM3),
  };
}

function scaled(answer: Answer, unit: number): AnswerReport {
  return { cents: answer.cents * unit, strengthPercent: 100 * answer.logHeight * unit };
}
