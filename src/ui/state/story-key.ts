import { decibelsBetween, NOTICED } from '../../acoustics/index.ts';
import { decibels } from '../../documents/height-or-leak-words.ts';
import { formatBoth, formatLength, type LengthUnit } from '../../documents/length-format.ts';
import type { BudgetReport } from '../../documents/uncertainty-report.ts';
import { listed, signedCents, unbroken } from '../parts/note-names.ts';
import { lengthBothWithPlusMinus } from '../parts/plus-minus-words.ts';
import { hornInHand, type BenchState } from './bench-state.ts';
import { isCurrent } from './study-in-hand.ts';
import type { PointReport, StudyReport } from './study-report.ts';

// What the story says of one key, by its study in the state.

/** The player asks about low E, and low E comes out under the D key. */
export const STORY_KEY = 'd';
export const STORY_NOTE = 'E4';

/** The report of the story's key, where it is the one at hand. */
function storyStudy(state: BenchState): StudyReport | null {
  const { report, hornId } = state.study;
  return report !== null && hornId === state.hornId && report.keyId === STORY_KEY ? report : null;
}

/** Tells of the story's key by its study; null while that is being worked out. */
export function withStudy(
  state: BenchState,
  words: (report: StudyReport, unit: LengthUnit) => string,
): string | null {
  const report = storyStudy(state);
  const isOld = hornInHand(state).keyId === STORY_KEY && state.view === 'key' && !isCurrent(state);
  return report === null || isOld ? null : unbroken(words(report, state.unit));
}

const percent = (share: number): string => `${Math.round(100 * share)} %`;

export function howItVents({ present, keyName }: StudyReport, unit: LengthUnit): string {
  return (
    `The first hole open in low E is the ${keyName} key’s. It stands at ${formatBoth(present.frontMm, unit)} at the front. ` +
    `But it swings: its back hardly opens, and it vents only as a pad lifted straight up by ${formatLength(present.equivalentParallelMm, unit)} would. ` +
    `Vent share: ${percent(present.ventShare)} of the bare hole.`
  );
}

export function whatRaisingBuys(report: StudyReport, unit: LengthUnit): string {
  const { present, answer, keyName, budgets } = report;
  if (answer.kind === 'none in reach')
    return `More height still helps the ${keyName} key as far as it opens.`;
  const { point } = answer;
  const half = budgets.answerMm?.plusMinus ?? null;
  const enough =
    half === null ? formatBoth(point.frontMm, unit) : lengthBothWithPlusMinus(point.frontMm, half, unit);
  if (present.frontMm >= point.frontMm - (half ?? 0)) {
    return `No: ${enough} is enough for it, and it stands there. Beyond that, height buys nothing.`;
  }
  const i = noteIndex(report);
  const cents = point.notes[i]?.fromPresentCents ?? null;
  const gain = gainAt(report, point);
  if (cents === null || gain === null)
    return `More height helps up to ${enough}; low E is not followed there.`;
  const gains = `Up to ${enough} low E gains ${decibels(gain, budgets.gainDb[i]?.plusMinus)}`;
  const moves = `${cents < 0 ? 'falls' : 'rises'} by ${Math.abs(cents).toFixed(1)}${plusMinus(budgets.changeCents[i])} cents`;
  const hand = 'Slide the grip and every number follows: a proposal only, and ↶ takes it back.';
  return gain < NOTICED.strengthDb
    ? `For its pitch perhaps, not for the stuffiness. ${gains}, less than the ${NOTICED.strengthDb} dB a player is taken to notice, and ${moves}. Beyond that height buys nothing. ${hand}`
    : `Yes. ${gains} and ${moves}. Beyond that height buys nothing but noise and travel. ${hand}`;
}

function plusMinus(budget: BudgetReport | null | undefined): string {
  return budget === null || budget === undefined
    ? ''
    : `\u00a0± ${Math.max(budget.plusMinus, 0.1).toFixed(1)}`;
}

/** About so much lower, a player’s usual wish, mm. **Source:** common practice, no source. */
const WISHED_MM = 1;

export function whatLoweringCosts(report: StudyReport, unit: LengthUnit): string {
  const { curve, present, keyName } = report;
  const wish = present.frontMm - WISHED_MM;
  const point = curve.reduce((a, b) => (Math.abs(b.frontMm - wish) < Math.abs(a.frontMm - wish) ? b : a));
  const cents = point.notes[noteIndex(report)]?.fromPresentCents ?? null;
  const gain = gainAt(report, point);
  const pitch = cents === null ? '' : `low E moves by about ${signedCents(cents)} cents and `;
  const voice =
    gain === null
      ? ''
      : ` Its resonance ${gain < 0 ? 'loses' : 'gains'} ${boundWords(Math.abs(gain))}: what it costs is pitch.`;
  return (
    `With the ${keyName} key at ${formatBoth(point.frontMm, unit)} ${pitch}the vent share goes from ${percent(present.ventShare)} to ${percent(point.ventShare)}.` +
    `${voice} Lower is quicker and quieter under the finger.`
  );
}

/** `less than 0.1 dB`: a bound that needs no ±. */
function boundWords(db: number): string {
  return `less than ${(Math.floor(db * 10 + 1) / 10).toFixed(1)} dB`;
}

function noteIndex({ governed }: StudyReport): number {
  return governed.findIndex(({ id }) => id === STORY_NOTE);
}

/** dB of height that low E gains from as found to a point; null where it is not followed. */
function gainAt(report: StudyReport, point: PointReport): number | null {
  const [now, then] = [report.present, point].map(({ notes }) => notes[noteIndex(report)]?.heightRatio);
  return now === undefined || then === undefined ? null : decibelsBetween(now, then);
}

export function whatItHoldsDown(state: BenchState): string | null {
  const report = storyStudy(state);
  if (report === null) return null;
  const { holdsDown, keyName, present } = report;
  const [first] = holdsDown;
  if (first === undefined) {
    return 'Keys hold each other down through their arms. Press one here, and see what goes with it.';
  }
  const names = listed(holdsDown.filter((l) => l.belowMm === first.belowMm).map((l) => l.drivenName));
  const below = formatBoth(first.belowMm, state.unit);
  const now = formatLength(present.frontMm, state.unit);
  return unbroken(
    present.frontMm < first.belowMm
      ? `As it stands, at ${now}, the ${keyName} key’s arm holds ${names} down already; it lets go above ${below}.`
      : `Set below ${below}, the ${keyName} key’s arm would hold ${names} down, and other notes would cloud. From ${now} that is soon. Press a key here and see what goes with it.`,
  );
}
