import type { StudyReport } from './study-report.ts';

/** A study asked for, and what came of it. */
export interface StudyState {
  /** what the report answers; null before the first */
  readonly report: StudyReport | null;
  /** the horn the report is of */
  readonly hornId: string;
  /** counts studies asked for; a report is current when it answers the last */
  readonly asked: number;
  readonly answered: number;
  readonly problem: string | null;
}

export function makeStudyState(hornId: string): StudyState {
  return { report: null, hornId, asked: 0, answered: 0, problem: null };
}

/** The least and greatest opening a hand can propose, mm at the front, on the slider's own steps. */
export function proposableMm(report: StudyReport): { readonly lowMm: number; readonly highMm: number } {
  return { lowMm: 0.3, highMm: Math.floor(report.reachMm * 10 + 1e-6) / 10 };
}

/** Where a proposal starts: at the answer, or as found where there is none the key can reach. */
export function startMmOf(report: StudyReport): number {
  return report.answer.kind === 'reached' ? report.answer.point.frontMm : report.present.frontMm;
}
