import { canBeShown, ruleOfThumbParallel, type MeasuringPoint } from '../../../acoustics/index.ts';
import { formatBoth, formatLength, type LengthUnit } from '../../../documents/length-format.ts';
import type { PointReport, StudyReport } from '../../state/study-report.ts';
import { listed, noteLabel, unbroken } from '../../parts/note-names.ts';
import {
  barePlusMinus,
  centsWithPlusMinus,
  lengthBothWithPlusMinus,
  lengthWithPlusMinus,
  plusMinusBoth,
} from '../../parts/plus-minus-words.ts';

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
  /** what else moves: links this key would hold down or is held by */
  readonly links: readonly LinkSentence[];
}

/** A sentence about a link; pressing where the proposed opening runs into it. */
export interface LinkSentence {
  readonly text: string;
  readonly pressing: boolean;
}

/** How words give lengths: in which unit first, read where. */
export interface Manner {
  readonly unit: LengthUnit;
  readonly readAt: MeasuringPoint;
}

/** What is said of a difference inside its ±. */
export const NOT_SHOWN = 'no difference that can be shown';

/** Closer than this an arm and its pad count as touching. */
const TOUCHING_MM = 0.005;

/** Changes of a note smaller than this are not worth a word. */
const LEAST_TOLD_CENTS = 0.05;

/** The opening of a point where the person reads it: `9.8 mm (0.385 in) at the front`. */
export function openingWords(point: PointReport, { unit, readAt }: Manner): string {
  return `${formatBoth(openingMm(point, readAt), unit)} at the ${readAt}`;
}

export function openingMm(point: PointReport, at: MeasuringPoint): number {
  return { front: point.frontMm, centre: point.centreMm, back: point.backMm }[at];
}

/** @param proposedMm mm at the front, to tell which links it runs into */
export function makeAnswerSentences(
  report: StudyReport,
  manner: Manner,
  proposedMm: number,
): AnswerSentences {
  return {
    headline: unbroken(headline(report, manner)),
    reason: unbroken(reason(report, manner)),
    sure: unbroken(sure(report, manner)),
    tilt: unbroken(tilt(report, manner)),
    rule: unbroken(rule(report, manner)),
    standing: unbroken(standing(report, manner)),
    links: linkSentences(report, manner, proposedMm).map((link) => ({ ...link, text: unbroken(link.text) })),
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
        `${formatBoth(answer.linkFrontMm, manner.unit)} at the front, short of where height stops helping.`
      );
    case 'none in reach':
      return `${capital(key(report))} has no opening within reach where more height stops helping.`;
  }
}

/** The answer where the person reads it, with its ± where that is known: at the front. */
function answerWords({ budgets }: StudyReport, point: PointReport, manner: Manner): string {
  const { unit, readAt } = manner;
  if (readAt !== 'front' || budgets.answerMm === null) return openingWords(point, manner);
  return `${lengthBothWithPlusMinus(point.frontMm, budgets.answerMm.plusMinus, unit)} at the front`;
}

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

function reason(report: StudyReport, manner: Manner): string {
  const { answer } = report;
  const step = formatBoth(report.stepMm, manner.unit);
  const buys = `less than ${plain(report.stepCents)} cent on any note and less than ${plain(100 * report.stepShare)} % vent share`;
  switch (answer.kind) {
    case 'reached':
      return `Beyond that, another ${step} buys ${buys}; ${decision(report)}.`;
    case 'set by a link':
      return (
        `More height would help up to ${openingWords(answer.point, manner)}; there another ${step} buys ${buys}. ` +
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
  const { answerMm, presentMm } = budgets;
  if (answerMm === null) {
    return answer.decidedBy.by === 'least opening'
      ? 'Already the least opening is enough: there is no ± to it.'
      : 'If the readings or the pad model are off by all they may be, the answer lies out of reach.';
  }
  return (
    `± ${plusMinusBoth(answerMm.plusMinus, unit)} at the front: what was read and the pad model, together. ` +
    `The opening as found is known to ± ${barePlusMinus(presentMm.plusMinus, unit)} ${unit === 'mm' ? 'mm' : 'in'}.`
  );
}

/** The front reading of a swung pad flatters it: what it is worth, and what the tilt takes. */
function tilt({ present, presentParallel }: StudyReport, { unit }: Manner): string {
  if (present.frontMm === 0) return '';
  const lost = Math.round(100 * (presentParallel.ventShare - present.ventShare));
  return (
    `It swings: ${formatBoth(present.frontMm, unit)} at the front is worth ` +
    `${formatBoth(present.equivalentParallelMm, unit)} parallel; tilt costs ${lost} points of vent share ` +
    `(${percent(present.ventShare)}, not ${percent(presentParallel.ventShare)}).`
  );
}

/** Its stated error for usual keys. */
const RULE_PERCENT = 9;

function rule({ present, geometry }: StudyReport, { unit }: Manner): string {
  const byRule = ruleOfThumbParallel({
    centreHeight: present.centreMm,
    padRadius: geometry.padRadiusMm,
    hingeDistance: geometry.hingeMm,
    hingeHeight: geometry.hingeHeightMm,
  });
  return (
    'In the head: a swung pad vents like a parallel one open by its centre, less a sixth of ' +
    `(pad radius ÷ rod distance)² of it. Here ${formatLength(present.centreMm, unit)} becomes ` +
    `${formatLength(byRule, unit)} (solved: ${formatLength(present.equivalentParallelMm, unit)}); ` +
    `for usual keys good to ${RULE_PERCENT} %.`
  );
}

function standing(report: StudyReport, manner: Manner): string {
  const { present, answer } = report;
  const share = `vent share ${shareWithPlusMinus(present.ventShare, report.budgets.ventShare.plusMinus)}`;
  const stands = `As found it stands at ${openingWords(present, manner)}`;
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

function linkSentences(report: StudyReport, { unit }: Manner, proposedMm: number): LinkSentence[] {
  const sentences: LinkSentence[] = [];
  if (report.ruledBy !== null && report.answer.kind !== 'set by a link') {
    const { driverName, frontMm, ownFrontMm } = report.ruledBy;
    sentences.push({
      text:
        `The ${driverName} key’s arm holds it at ${formatBoth(frontMm, unit)} at the front; ` +
        `its own stop would let it open to ${formatBoth(ownFrontMm, unit)}.`,
      pressing: proposedMm > frontMm,
    });
  }
  const byHeight = new Map<string, { names: string[]; belowMm: number }>();
  for (const { drivenName, belowMm } of report.holdsDown) {
    const shown = formatBoth(belowMm, unit);
    const known = byHeight.get(shown);
    if (known === undefined) byHeight.set(shown, { names: [drivenName], belowMm });
    else known.names.push(drivenName);
  }
  for (const [shown, { names, belowMm }] of byHeight) {
    // A hair of rounding is not holding down: arms are made to meet their pads.
    const holding = report.present.frontMm < belowMm - TOUCHING_MM;
    sentences.push({
      text: holding
        ? `As it stands its arm holds down ${listed(names)}, and lets go only above ${shown} at the front; ` +
          'the curve leaves what it holds where it is.'
        : `Set below ${shown}, its arm would start to hold down ${listed(names)}.`,
      pressing: holding || proposedMm < belowMm,
    });
  }
  return sentences;
}

/** `75 ± 1 %`: never less than a whole per cent, as it is written. */
export function shareWithPlusMinus(share: number, plusMinus: number): string {
  return `${Math.round(100 * share)} ± ${Math.max(1, Math.round(100 * plusMinus))} %`;
}

export function percent(share: number): string {
  return `${Math.round(100 * share)} %`;
}

function plain(value: number): string {
  return String(Math.round(value * 100) / 100);
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
