import { canBeShown } from '../../../acoustics/index.ts';
import { noteLabel } from '../../parts/note-names.ts';
import { centsWithPlusMinus, lengthWithPlusMinus } from '../../parts/plus-minus-words.ts';
import type { PointReport, StudyReport } from '../../state/study-report.ts';
import { NOT_SHOWN, openingWords, shareWithPlusMinus, type Manner } from './opening-words.ts';

// Where a key stands as found, against where more height stops helping.

/** Changes of a note smaller than this are not worth a word. */
const LEAST_TOLD_CENTS = 0.05;

/** How far a key stands from where more height stops helping. */
interface Apart {
  /** mm at the front, plus where it lacks height */
  readonly mm: number;
  /** null where the answer’s is not known */
  readonly plusMinusMm: number | null;
  /** whether it is more than its ±; where that is not known, more than the present front’s alone */
  readonly shown: boolean;
}

/** null where there is no answer */
export function apartOf({ answer, present, budgets }: StudyReport): Apart | null {
  if (answer.kind === 'none in reach') return null;
  const mm = answer.point.frontMm - present.frontMm;
  const half = Math.hypot(budgets.answerMm?.plusMinus ?? 0, budgets.presentMm.plusMinus);
  return {
    mm,
    plusMinusMm: budgets.answerMm === null ? null : half,
    shown: canBeShown({ value: mm, plusMinus: half }),
  };
}

/** Where it stands, how far that is from the answer, and what the notes would do there. */
export function standingSentence(report: StudyReport, manner: Manner): string {
  const { present, answer, budgets } = report;
  const share = `vent share ${shareWithPlusMinus(present.ventShare, budgets.ventShare.plusMinus)}`;
  const stands = `As found it stands at ${openingWords(present, manner, budgets.presentMm.plusMinus)}`;
  if (answer.kind === 'none in reach' || report.governed.length === 0) return `${stands}, ${share}.`;
  const { mm, plusMinusMm, shown } = apartOf(report)!;
  const away = plusMinusMm === null ? null : lengthWithPlusMinus(Math.abs(mm), plusMinusMm, manner.unit);
  if (!shown && away !== null) return `${stands}, ${share}: ${away} from there is ${NOT_SHOWN}.`;
  const told = away === null ? '' : `${away} ${mm > 0 ? 'lower' : 'higher'}; `;
  return `${stands}: ${told}${notesThere(report, answer.point)}, ${share}.`;
}

/** What the note that lies furthest from the answer would do there. */
function notesThere(report: StudyReport, point: PointReport): string {
  const worst = furthestNote(report, point);
  if (worst === null) return 'no note would move from there';
  const { label, cents, plusMinusCents } = worst;
  const way = cents > 0 ? 'rise' : 'fall';
  if (plusMinusCents === null) return `${label} would ${way} ${Math.abs(cents).toFixed(1)} cents there`;
  const moved = `${centsWithPlusMinus(cents, plusMinusCents).slice(1)} cents`;
  return canBeShown({ value: cents, plusMinus: plusMinusCents })
    ? `${label} would ${way} ${moved} there`
    : `even ${label} would move by only ${moved} there, ${NOT_SHOWN}`;
}

/** A note that moves, cents, with its ± where that is known. */
interface MovingNote {
  readonly label: string;
  readonly cents: number;
  readonly plusMinusCents: number | null;
}

/** The governed note that lies furthest from where it would be at the answer; cents from present to there. */
function furthestNote(report: StudyReport, point: PointReport): MovingNote | null {
  let worst: MovingNote | null = null;
  report.governed.forEach(({ id }, i) => {
    const there = point.notes[i];
    if (there === null || Math.abs(there.fromPresentCents) < LEAST_TOLD_CENTS) return;
    if (worst === null || Math.abs(there.fromPresentCents) > Math.abs(worst.cents)) {
      const plusMinusCents = report.budgets.changeCents[i]?.plusMinus ?? null;
      worst = { label: noteLabel(id), cents: there.fromPresentCents, plusMinusCents };
    }
  });
  return worst;
}
