import { NOTICED, type Verdict } from '../../acoustics/index.ts';
import type { HeightOrLeakReport } from '../../documents/height-or-leak-report.ts';
import { heightOrLeakSentence } from '../../documents/height-or-leak-words.ts';
import { formatBoth, formatLength } from '../../documents/length-format.ts';
import type { ProposalReport, ProposedKeyReport } from '../../documents/proposal-report.ts';
import { listed, unbroken } from '../parts/note-names.ts';
import { isWaiting, reportFor } from './asked-answer.ts';
import type { BenchState } from './bench-state.ts';
import { STORY_KEY, STORY_NOTE, withStudy } from './story-key.ts';

// What the story comes to: height or a leak, all keys at once, and what the player is told.

/** The comparison as the page of leaks has it: of low E, unless somebody asks there about another note. */
function comparison(state: BenchState): HeightOrLeakReport | null {
  const { beside, limit } = state.leaks;
  const report = isWaiting(beside, state.hornId) ? null : reportFor(beside, state.hornId);
  return report?.fingering === limit.fingeringId ? report : null;
}

/** What is done first, by what was compared. */
const FIRST: Readonly<Record<Verdict, string>> = {
  leak: 'So seals are checked first, and heights judged after.',
  height: 'So the height is set first, and seals are checked on the way.',
  alike: 'So both are looked at, and seals first, which cost nothing.',
  neither: 'So reed, mouthpiece and bore are asked next.',
};

export function heightOrLeak(state: BenchState): string | null {
  const report = comparison(state);
  if (report === null) return null;
  const [worst] = report.leaks;
  const cents = worst?.at[worst.at.length - 1].changeCents ?? null;
  const tuner =
    report.verdict === 'leak' && cents !== null && Math.abs(cents) < NOTICED.carefulCents
      ? ' A tuner would not tell: pitch hardly moves.'
      : '';
  const first = report.verdict === null ? '' : ` ${FIRST[report.verdict]}`;
  const sentence =
    report.fingering === STORY_NOTE ? heightOrLeakSentence(report, 'low E') : heightOrLeakSentence(report);
  return unbroken(`${sentence}${tuner}${first}`);
}

function proposalAt(state: BenchState): ProposalReport | null {
  const { answer } = state.proposal;
  return isWaiting(answer, state.hornId) ? null : reportFor(answer, state.hornId);
}

/** The story's key as proposed with all others; null where that is not worked out, or it stays. */
function proposedKey(state: BenchState): ProposedKeyReport | null {
  const key = proposalAt(state)?.keys.find(({ pad }) => pad === STORY_KEY);
  return key === undefined || key.moveMm === 0 ? null : key;
}

export function whatIsProposed(state: BenchState): string | null {
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

export function whatSheIsTold(state: BenchState): string | null {
  const proposed = proposedKey(state);
  const verdict = comparison(state)?.verdict ?? null;
  return withStudy(state, ({ present, answer, holdsDown, keyName }, unit) => {
    const now = formatLength(present.frontMm, unit);
    const upTo = proposed?.proposedMm ?? (answer.kind === 'none in reach' ? null : answer.point.frontMm);
    const isLow = upTo !== null && present.frontMm < upTo;
    const why = verdict === 'leak' ? ' for its pitch' : '';
    const height = isLow
      ? `the ${keyName} key goes up${why} from ${now} to ${formatBoth(upTo, unit)}, not down`
      : `the ${keyName} key may stay at ${now}`;
    const arm =
      holdsDown.length === 0
        ? ''
        : `; lower, its arm would choke ${listed(holdsDown.map((l) => l.drivenName))}`;
    const first =
      verdict === 'leak'
        ? 'Seals first: that is where the stuffiness is looked for. Then'
        : verdict === 'height'
          ? 'Height first:'
          : 'Seals first. Then';
    return (
      `${first} ${height}${arm}. Once set, it stands on her sheet in plain words, with both units and the ±. ` +
      'Now your own horn: Library, New horn, and its sheet to type in. This story waits in the library too.'
    );
  });
}
