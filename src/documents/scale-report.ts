import {
  centsBetween,
  type Horn,
  type NoteBudgets,
  type Resonance,
  type ScaleNote,
} from '../acoustics/index.ts';
import { reportBudget, type BudgetReport } from './uncertainty-report.ts';

/** One resonance in bench units; cents from the written note in equal temperament. */
export interface ResonanceReport {
  readonly hz: number;
  readonly cents: number;
  readonly heightRatio: number;
  readonly q: number;
  readonly riseMs: number;
}

/** One fingering of a scale in bench units. */
export interface ScaleNoteReport {
  readonly fingering: string;
  readonly note: string;
  readonly way: string;
  readonly register: number;
  readonly fingers: readonly string[];
  readonly openHoles: readonly string[];
  readonly targetHz: number;
  /** the resonance the note sounds on, or null with the reason */
  readonly played: ResonanceReport | null;
  readonly playedReason: string | null;
  /** of the played resonance's pitch, cents; null where there is none */
  readonly centsBudget: BudgetReport | null;
  /** of its height, as a share of it */
  readonly heightPlusMinus: number | null;
  readonly resonances: readonly ResonanceReport[];
  readonly cutoffHz: number | null;
  readonly cutoffReason: string | null;
}

/** A resonance in bench units. */
export function reportResonance(resonance: Resonance, targetHz: number): ResonanceReport {
  return {
    hz: resonance.frequency,
    cents: centsBetween(targetHz, resonance.frequency),
    heightRatio: resonance.height,
    q: resonance.q,
    riseMs: 1000 * resonance.riseTime,
  };
}

/** A scale in bench units. @param budgets how sure its notes are, by fingering id */
export function reportScale(
  horn: Horn,
  notes: readonly ScaleNote[],
  budgets: ReadonlyMap<string, NoteBudgets>,
): ScaleNoteReport[] {
  return notes.map((note) => ({
    fingering: note.fingering.id,
    note: note.fingering.note,
    way: note.fingering.way,
    register: note.fingering.register,
    fingers: note.fingering.touches,
    openHoles: note.openHoles,
    targetHz: note.target,
    played: note.played.found ? reportResonance(note.played.resonance, note.target) : null,
    playedReason: note.played.found ? null : note.played.reason,
    ...sureness(horn, budgets.get(note.fingering.id)),
    resonances: note.resonances.map((r) => reportResonance(r, note.target)),
    cutoffHz: note.cutoff.found ? note.cutoff.frequency : null,
    cutoffReason: note.cutoff.found ? null : note.cutoff.reason,
  }));
}

function sureness(
  horn: Horn,
  budgets: NoteBudgets | undefined,
): Pick<ScaleNoteReport, 'centsBudget' | 'heightPlusMinus'> {
  if (budgets === undefined) return { centsBudget: null, heightPlusMinus: null };
  return {
    centsBudget: reportBudget(horn, budgets.cents),
    heightPlusMinus: Math.expm1(budgets.logHeight.plusMinus),
  };
}
