import type { ScaleNoteReport } from '../documents/scale-report.ts';
import { nextSentence, type BudgetReport } from '../documents/uncertainty-report.ts';
import type { VentingStudyReport } from '../documents/venting-report.ts';

const MM_PER_INCH = 25.4;

/** A scale as lines of text. */
export function scaleTable(horn: string, notes: readonly ScaleNoteReport[]): string {
  const head = ['fingering', 'target Hz', 'Hz', 'cents', '±', 'height', 'Q', 'rise ms', 'cutoff Hz'];
  const rows = notes.map((note) => [
    note.fingering,
    note.targetHz.toFixed(2),
    ...(note.played === null
      ? ['none', '', '', '', '', '']
      : [
          note.played.hz.toFixed(2),
          signed(note.played.cents),
          note.centsBudget?.plusMinus.toFixed(0) ?? '',
          note.played.heightRatio.toFixed(1),
          note.played.q.toFixed(1),
          note.played.riseMs.toFixed(1),
        ]),
    note.cutoffHz === null ? '' : note.cutoffHz.toFixed(0),
  ]);
  return [horn, '', ...columns([head, ...rows]), '', LIMITS].join('\n');
}

const LIMITS = 'Absolute pitch is good to ±10 cents at best; differences between setups are far better.';

/** A venting study as a few sentences and a table. */
export function studyText(study: VentingStudyReport): string {
  const { diminishingReturn: stop, present, key } = study;
  const { frontMm, ventShare } = study.presentBudgets;
  const stands = `Pad ${key.number}, ${key.name}: stands at ${both(present.frontMm)} front (±${both(frontMm.plusMinus)}), ${both(present.centreMm)} centre, ${both(present.backMm)} back; vent share ${(100 * present.ventShare).toFixed(0)} ± ${(100 * ventShare.plusMinus).toFixed(0)} %.`;
  const tilt = `Tilt: it vents like a parallel pad at ${both(present.equivalentParallelMm)}; a parallel pad at the same front would vent ${(100 * study.presentParallel.ventShare).toFixed(0)} %.`;
  const point = stop.point ?? present;
  const rows = study.governed.map((note, i) => {
    const now = present.notes[i];
    const then = point.notes[i];
    return [
      note.fingering,
      now === null ? 'lost' : withPlusMinus(now.pitchCents, study.notesBudgets[i].pitchCents, 0),
      then === null ? 'lost' : withPlusMinus(then.fromPresentCents, study.notesBudgets[i].changeCents, 1),
      now === null ? 'lost' : `${(100 * now.strength).toFixed(0)} %`,
      then === null ? 'lost' : `${(100 * then.strength).toFixed(0)} %`,
    ];
  });
  const head = ['note', 'cents now', 'change there', 'strength now', 'strength there'];
  return [
    stands,
    tilt,
    answer(study),
    '',
    ...columns([head, ...rows]),
    '',
    ...study.warnings.map((w) => `! ${w}`),
    LIMITS,
  ].join('\n');
}

function answer(study: VentingStudyReport): string {
  const stop = study.diminishingReturn;
  if (stop.point === null) {
    return `No point of diminishing return within ${both(study.reachFrontMm)}: ${stop.reason}.`;
  }
  const budget = stop.frontMmBudget;
  const sure = budget === null ? '' : `, ±${both(budget.plusMinus)}`;
  const found = `More height stops helping at ${both(stop.point.frontMm)} front${sure}; decided by ${stop.decidedBy}.`;
  const whole = stop.link === null ? found : `${found} But ${stop.reason}.`;
  return budget === null || stop.next.length === 0
    ? whole
    : `${whole}\nNext: ${nextSentence(stop.next[0], budget.plusMinus, 'mm')}`;
}

function withPlusMinus(cents: number, budget: BudgetReport | null, digits: number): string {
  return budget === null ? signed(cents) : `${signed(cents)} ± ${budget.plusMinus.toFixed(digits)}`;
}

function both(mm: number): string {
  return `${mm.toFixed(1)} mm (${(mm / MM_PER_INCH).toFixed(3)} in)`;
}

/** Cents or decibels with a sign, to a tenth. */
export function signed(cents: number): string {
  return `${cents < 0 ? '−' : '+'}${Math.abs(cents).toFixed(1)}`;
}

/** Rows of cells as lines, the first column to the left and the rest to the right. */
export function columns(rows: readonly (readonly string[])[]): string[] {
  const widths = rows[0].map((_, i) => Math.max(...rows.map((row) => row[i].length)));
  return rows.map((row) =>
    row.map((cell, i) => (i === 0 ? cell.padEnd(widths[i]) : cell.padStart(widths[i]))).join('  '),
  );
}
