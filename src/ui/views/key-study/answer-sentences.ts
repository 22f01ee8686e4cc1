import { formatBoth } from '../../../documents/length-format.ts';
import { noteLabel, unbroken } from '../../parts/note-names.ts';
import { lengthBothWithPlusMinus, plusMinusBoth } from '../../parts/plus-minus-words.ts';
import type { PointReport, StudyReport } from '../../state/study-report.ts';
import { openingWords, type Manner } from './opening-words.ts';
import { apartOf, standingSentence } from './standing-sentence.ts';
import { ruleSentence, tiltSentence } from './tilt-sentences.ts';

/** The answer in words, biggest first. */
export interface AnswerSentences {
  readonly headline: string;
  /** what the headline means, and what decided it */
  readonly reason: string;
  /** how sure it is */
  readonly sure: string;
  /** what the swing costs against a pad that rises parallel */
  readonly tilt: string;
  /** the rule to carry in the head, worked through for this key as it stands */
  readonly rule: string;
  /** where the key stands now against it */
  readonly standing: string;
}

export function makeAnswerSentences(report: StudyReport, manner: Manner): AnswerSentences {
  return {
    headline: unbroken(headline(report, manner)),
    reason: unbroken(reason(report, manner)),
    sure: unbroken(sure(report, manner)),
    tilt: unbroken(tiltSentence(report, manner)),
    rule: unbroken(ruleSentence(report, manner)),
    standing: unbroken(standingSentence(report, manner)),
  };
}

function key(report: StudyReport): string {
  return `the ${report.keyName} key`;
}

function headline(report: StudyReport, manner: Manner): string {
  const { answer, present } = report;
  if (report.governed.length === 0) {
    return `No note moves by more than a cent with ${key(report)}: set it by ear and feel.`;
  }
  switch (answer.kind) {
    case 'reached': {
      const enough = `${answerWords(report, answer.point, manner)} is enough for ${key(report)}`;
      if (!apartOf(report)!.shown) return `${enough}, and as far as can be shown it stands there.`;
      return present.frontMm < answer.point.frontMm
        ? `Open ${key(report)} to ${answerWords(report, answer.point, manner)}.`
        : `${enough}.`;
    }
    case 'set by a link':
      return (
        `The ${answer.driverName} key’s arm stops ${key(report)} at ` +
        `${linkWords(report, answer.linkFrontMm, manner)} at the front, short of where height stops helping.`
      );
    case 'none in reach':
      return `${capital(key(report))} has no opening within reach where more height stops helping.`;
  }
}

/** What an arm allows; its ± is known where the arm holds the key already. */
function linkWords({ ruledBy, budgets }: StudyReport, linkFrontMm: number, { unit }: Manner): string {
  return ruledBy === null
    ? formatBoth(linkFrontMm, unit)
    : lengthBothWithPlusMinus(linkFrontMm, budgets.presentMm.plusMinus, unit);
}

/** The answer where the person reads it, with its ± where that is known. */
function answerWords({ budgets }: StudyReport, point: PointReport, manner: Manner): string {
  return openingWords(point, manner, budgets.answerMm?.plusMinus ?? null);
}

function reason(report: StudyReport, manner: Manner): string {
  const { answer } = report;
  const step = formatBoth(report.stepMm, manner.unit);
  const buys = `less than ${plain(report.stepCents)} cent on any note and less than ${plain(100 * report.stepShare)} % vent share`;
  switch (answer.kind) {
    case 'reached':
      return `Beyond that, another ${step} buys ${buys}; ${decision(report)}.`;
    case 'set by a link':
      return (
        `More height would help up to ${answerWords(report, answer.point, manner)}; there another ${step} buys ${buys}. ` +
        `Raise the ${answer.driverName} key first.`
      );
    case 'none in reach':
      return (
        `Up to ${formatBoth(answer.reachMm, manner.unit)} at the front, as far as this study looks, ` +
        `another ${step} still helps: ${noteLabel(answer.reason)}.`
      );
  }
}

function decision({ answer }: StudyReport): string {
  if (answer.kind === 'none in reach') return '';
  switch (answer.decidedBy.by) {
    case 'pitch':
      return `${noteLabel(answer.decidedBy.fingering)} is the last note to stop moving`;
    case 'vent share':
      return 'vent share is the last to stop growing';
    case 'least opening':
      return 'nothing grows even from the least opening';
  }
}

function sure(report: StudyReport, { unit }: Manner): string {
  const { answer, budgets } = report;
  if (answer.kind === 'none in reach') return '';
  const { answerMm } = budgets;
  if (answerMm === null) {
    return answer.decidedBy.by === 'least opening'
      ? 'Already the least opening is enough: there is no ± to it.'
      : 'If the readings or the pad model are off by all they may be, the answer lies out of reach.';
  }
  return `± ${plusMinusBoth(answerMm.plusMinus, unit)} at the front: what was read and the pad model, together.`;
}

function plain(value: number): string {
  return String(Math.round(value * 100) / 100);
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
