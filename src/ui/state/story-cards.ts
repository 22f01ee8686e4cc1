import { formatBoth, formatLength, type LengthUnit } from '../../documents/length-format.ts';
import { PAPER_MM } from '../../documents/leak-report.ts';
import { listed, signedCents, unbroken } from '../parts/note-names.ts';
import type { ProposalReport, ProposedKeyReport } from '../../documents/proposal-report.ts';
import { isWaiting, reportFor } from './asked-answer.ts';
import { hornInHand, type BenchState } from './bench-state.ts';
import { isCurrent } from './study-in-hand.ts';
import type { PointReport, StudyReport } from './study-report.ts';
import type { ViewName } from './view-names.ts';

/** The story's horn: the example that every bench has. */
export const STORY_HORN = 'demo-alto';

/** The player asks about low E, and low E comes out under the D key. */
const KEY = 'd';
const NOTE = 'E4';

/** What of a view a card speaks of. */
export type StoryMark = 'answer' | 'slider' | 'curve';

/** One card: where it is told, and what it says by the reports at hand. */
export interface StoryCard {
  readonly title: string;
  /** null where it can be told anywhere */
  readonly place: {
    readonly view: ViewName;
    readonly keyId: string | null;
    readonly mark: StoryMark | null;
  } | null;
  /** in sentences; null while what it tells is being worked out */
  tell(state: BenchState): string | null;
}

/** In the order they are told. The player and her questions are invented. */
export const STORY: readonly StoryCard[] = [
  {
    title: 'Runa comes in with her alto',
    place: null,
    tell: () =>
      'She has two questions. Why is my low E stuffy? And could the keys come down a little? Three minutes, and nothing on this bench is changed.',
  },
  {
    title: 'Low E speaks under the D key',
    place: { view: 'key', keyId: KEY, mark: 'answer' },
    tell: (state) => withStudy(state, howItVents),
  },
  {
    title: 'Is the key too low, then?',
    place: { view: 'key', keyId: KEY, mark: 'slider' },
    tell: (state) => withStudy(state, whatRaisingBuys),
  },
  {
    title: 'And if the keys came down?',
    place: { view: 'key', keyId: KEY, mark: 'curve' },
    tell: (state) => withStudy(state, whatLoweringCosts),
  },
  {
    title: 'One key leans on another',
    place: { view: 'links', keyId: null, mark: 'answer' },
    tell: whatItHoldsDown,
  },
  {
    title: 'All keys at once',
    place: { view: 'proposal', keyId: null, mark: 'answer' },
    tell: whatIsProposed,
  },
  {
    title: 'Height is not the only suspect',
    place: { view: 'leaks', keyId: null, mark: 'answer' },
    tell: whatALeakCosts,
  },
  {
    title: 'What Runa is told',
    place: { view: 'player-sheet', keyId: KEY, mark: null },
    tell: (state) => withStudy(state, (report, unit) => whatSheIsTold(report, unit, proposedKey(state))),
  },
];

/** The report of the story's key, where it is the one at hand. */
function storyStudy(state: BenchState): StudyReport | null {
  const { report, hornId } = state.study;
  return report !== null && hornId === state.hornId && report.keyId === KEY ? report : null;
}

function withStudy(
  state: BenchState,
  words: (report: StudyReport, unit: LengthUnit) => string,
): string | null {
  const report = storyStudy(state);
  const isOld = hornInHand(state).keyId === KEY && state.view === 'key' && !isCurrent(state);
  return report === null || isOld ? null : unbroken(words(report, state.unit));
}

const percent = (share: number): string => `${Math.round(100 * share)} %`;

function howItVents({ present, keyName }: StudyReport, unit: LengthUnit): string {
  return (
    `The first hole open in low E is the ${keyName} key’s. It stands at ${formatBoth(present.frontMm, unit)} at the front. ` +
    `But it swings: its back hardly opens, and it vents only as a pad lifted straight up by ${formatLength(present.equivalentParallelMm, unit)} would. ` +
    `Vent share: ${percent(present.ventShare)} of the bare hole.`
  );
}

function whatRaisingBuys(
  { present, answer, keyName, budgets, governed }: StudyReport,
  unit: LengthUnit,
): string {
  if (answer.kind === 'none in reach')
    return `More height still helps the ${keyName} key as far as it opens.`;
  const { point } = answer;
  const half = budgets.answerMm?.plusMinus ?? null;
  const sure = half === null ? '' : `\u00a0± ${formatLength(half, unit)}`;
  const enough = `${formatBoth(point.frontMm, unit)}${sure}`;
  if (present.frontMm >= point.frontMm - (half ?? 0)) {
    return `No: ${enough} is enough for it, and it stands there. Beyond that, height buys nothing.`;
  }
  const cents = centsAt(point, governed);
  const change = budgets.changeCents[governed.findIndex(({ id }) => id === NOTE)]?.plusMinus ?? null;
  const sureOfIt = change === null ? '' : `\u00a0± ${change.toFixed(1)}`;
  const gain =
    cents === null
      ? ''
      : `; low E ${cents < 0 ? 'falls' : 'rises'} by ${Math.abs(cents).toFixed(1)}${sureOfIt} cents there`;
  return (
    `Yes, a little. More height helps up to ${enough}${gain}. Beyond that it buys nothing but noise and travel. ` +
    'Slide the grip and every number follows. That is a proposal only, and ↶ takes it back.'
  );
}

/** About so much lower, a player’s usual wish, mm. **Source:** common practice, no source. */
const WISHED_MM = 1;

function whatLoweringCosts({ curve, present, governed, keyName }: StudyReport, unit: LengthUnit): string {
  const wish = present.frontMm - WISHED_MM;
  const point = curve.reduce((a, b) => (Math.abs(b.frontMm - wish) < Math.abs(a.frontMm - wish) ? b : a));
  const cents = centsAt(point, governed);
  const pitch = cents === null ? '' : `low E moves by ${signedCents(cents)} cents and `;
  return (
    `With the ${keyName} key at ${formatBoth(point.frontMm, unit)} ${pitch}the vent share goes from ${percent(present.ventShare)} to ${percent(point.ventShare)}. ` +
    'Lower is quicker and quieter under the finger, and it takes from the very note she came about.'
  );
}

function centsAt(point: PointReport, governed: StudyReport['governed']): number | null {
  const note = point.notes[governed.findIndex(({ id }) => id === NOTE)];
  return note?.fromPresentCents ?? null;
}

function whatItHoldsDown(state: BenchState): string | null {
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

function whatALeakCosts(state: BenchState): string | null {
  const answer = reportFor(state.leaks.answer, state.hornId);
  if (answer === null) return null;
  const { pad, gapMm } = state.leaks.fault;
  const name = hornInHand(state).contents.horn.document.holes.find((hole) => hole.id === pad)?.name ?? pad;
  const papers = `${Number((gapMm / PAPER_MM).toFixed(1))} cigarette papers`;
  const seals = 'So seals are checked first, and heights judged after.';
  const note = answer.leak.notes.find(({ fingering }) => fingering === NOTE);
  if (note === undefined) return `A leak under ${name} does not touch low E. ${seals}`;
  if (note.lostDb === null) return `A gap of ${papers} under ${name}, and low E is lost. ${seals}`;
  const pitch =
    note.changeCents === null
      ? ''
      : `, while its pitch moves by ${Math.abs(note.changeCents).toFixed(1)} cents: a tuner would not tell`;
  return unbroken(
    `A gap of ${papers} under ${name} costs low E ${note.lostDb.toFixed(1)} dB${pitch}. To a player that is stuffy too. ${seals}`,
  );
}

function proposalAt(state: BenchState): ProposalReport | null {
  const { answer } = state.proposal;
  return isWaiting(answer, state.hornId) ? null : reportFor(answer, state.hornId);
}

/** The story's key as proposed with all others; null where that is not worked out, or it stays. */
function proposedKey(state: BenchState): ProposedKeyReport | null {
  const key = proposalAt(state)?.keys.find(({ pad }) => pad === KEY);
  return key === undefined || key.moveMm === 0 ? null : key;
}

function whatIsProposed(state: BenchState): string | null {
  const report = proposalAt(state);
  if (report === null) return null;
  const down = report.keys.filter(({ moveMm }) => moveMm < 0);
  const most = Math.max(...down.map(({ moveMm }) => -moveMm));
  const wish =
    down.length === 0
      ? 'On this horn none may come down.'
      : `Some may come down, ${listed(down.slice(0, 3).map(({ name }) => name))}${down.length > 3 ? ` and ${down.length - 3} more` : ''}, by ${formatLength(most, state.unit)} at most.`;
  const key = proposedKey(state);
  const own =
    key === null ? '' : ` The ${key.name} key goes to ${formatBoth(key.proposedMm, state.unit)}. ${key.why}`;
  return unbroken(
    `Every key is weighed with every other, within arms and reach. ${wish}${own} Take one key, a few or all of it, or nothing.`,
  );
}

function whatSheIsTold(
  { present, answer, holdsDown, keyName }: StudyReport,
  unit: LengthUnit,
  proposed: ProposedKeyReport | null,
): string {
  const now = formatLength(present.frontMm, unit);
  const upTo = proposed?.proposedMm ?? (answer.kind === 'none in reach' ? null : answer.point.frontMm);
  const isLow = upTo !== null && present.frontMm < upTo;
  const height = isLow
    ? `the ${keyName} key goes up from ${now} to ${formatBoth(upTo, unit)}, not down`
    : `the ${keyName} key may stay at ${now}`;
  const arm =
    holdsDown.length === 0
      ? ''
      : `; lower, its arm would choke ${listed(holdsDown.map((l) => l.drivenName))}`;
  return (
    `Seals first. Then ${height}${arm}. Once set, it stands on her sheet in plain words, with both units and the ±. ` +
    'Now your own horn: Library, New horn, and its sheet to type in. This story waits in the library too.'
  );
}
