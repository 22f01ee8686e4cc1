import type { BenchContents } from '../../documents/bench-contents.ts';
import { layered } from '../../documents/complete-setup.ts';
import type { LengthUnit } from '../../documents/length-format.ts';
import { capital, inARow, many, shiftWords } from '../../documents/player-sheet-lengths.ts';
import { shiftedOpenings, type EndOfWay, type ShiftedOpening } from '../../documents/shifted-openings.ts';
import { knownSetupLength } from '../../documents/sheet-edits.ts';
import { loadHorn } from '../../documents/to-acoustics.ts';
import { withProposed } from './key-lengths.ts';

/** What an act on all keys made of the bench, and the sentence that says so. */
export interface ActOnAll {
  /** the same where there was nothing to do */
  readonly contents: BenchContents;
  readonly told: string;
}

/** Keys named in a sentence before the rest are counted. */
const NAMED = 3;

/** Digits of a proposal, mm: what is typed is kept, the dust of the hinge is not. */
const DIGITS = 6;

/**
 * Proposes every key that was read on this horn, or proposed before, higher or lower by the same amount at the
 * front: from where it is proposed, else set, else found.
 */
export function shiftProposals(contents: BenchContents, byMm: number, unit: LengthUnit): ActOnAll {
  const { horn, asFound, proposed, asSet } = contents;
  const stands = layered(proposed.document, layered(asSet.document, asFound.document));
  const read = loadHorn({ horn: horn.document, setup: stands });
  if (!read.ok) return { contents, told: read.issues.map(({ message }) => message).join(' ') };
  const isKnown = (pad: string): boolean =>
    proposed.document.keys.some((key) => key.pad === pad && key.openingMm !== undefined) ||
    knownSetupLength(stands, pad, 'openingMm')?.origin === 'measured';
  const all = shiftedOpenings(read.value, byMm);
  const [known, unread] = [all.filter(({ pad }) => isKnown(pad)), all.filter(({ pad }) => !isKnown(pad))];
  if (known.length === 0) {
    return {
      contents,
      told: 'No opening was read on this horn and none is proposed: there is no key to move.',
    };
  }
  if (byMm === 0) return { contents, told: 'By nothing: every key stays as it is.' };
  const next = known.reduce(
    (now, { pad, toMm }) => withProposed(now, pad, Number(toMm.toPrecision(DIGITS))),
    contents,
  );
  return { contents: next, told: shiftSentence(contents, known, unread, shiftWords(byMm, unit)) };
}

/** Withdraws every opening proposed, and says how many that were. */
export function withdrawalSentence({ proposed, asSet }: BenchContents): string {
  const count = proposed.document.keys.filter(({ openingMm }) => openingMm !== undefined).length;
  const back = asSet.document.keys.length > 0 ? 'as found or as set' : 'as found';
  return `${capital(many(count, 'proposal'))} withdrawn; every key is told ${back} again.`;
}

const ENDS: Readonly<Record<EndOfWay, string>> = {
  shut: 'shut before that',
  hinge: 'at the end of the hinge’s swing before that',
  'foot cork': 'with no foot cork left before that',
};

function shiftSentence(
  { horn }: BenchContents,
  known: readonly ShiftedOpening[],
  unread: readonly ShiftedOpening[],
  way: string,
): string {
  const names = (of: readonly ShiftedOpening[]): string => {
    const all = of.map(({ pad }) => horn.document.holes.find(({ id }) => id === pad)?.name ?? pad);
    return all.length > NAMED
      ? `${all.slice(0, NAMED).join(', ')} and ${all.length - NAMED} more`
      : inARow(all);
  };
  const whole = known.filter(({ endedBy }) => endedBy === null);
  const ended = (Object.keys(ENDS) as EndOfWay[]).flatMap((by) => {
    const keys = known.filter(({ endedBy }) => endedBy === by);
    return keys.length === 0 ? [] : [`Not so far: ${names(keys)}, ${ENDS[by]}.`];
  });
  const left =
    unread.length === 0
      ? []
      : [`Left where they are, for their openings were not read on this horn: ${names(unread)}.`];
  const done = `${capital(many(whole.length, 'key'))} proposed ${way} than before, at the front.`;
  return [done, ...ended, ...left].join(' ');
}
