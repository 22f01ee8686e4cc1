import type { BenchContents } from '../../documents/bench-contents.ts';
import { dayBefore } from '../../documents/carried-readings.ts';
import { keyedHoles, type KeyedHole } from '../../documents/horn-document.ts';
import type { SetupDocument } from '../../documents/setup-document.ts';
import { knownSetupLength, type KnownLength } from '../../documents/sheet-edits.ts';
import {
  counted,
  named,
  type DayFacts,
  type StackName,
  type StepFacts,
  type StepGoal,
} from './day-path-facts.ts';
import { findStack } from './day-path-work.ts';

function cellGoal(pad: string | null, id: 'openingMm' | 'asSet'): StepGoal {
  return { view: 'sheet', keyId: pad, field: pad === null ? null : { kind: 'cell', pad, id } };
}

export function findAsFound({ contents, visit }: DayFacts): StepFacts {
  const keys = keyedHoles(contents.horn.document);
  const known = keys.map((key) => ({ key, reading: readingOf(contents, key.id) }));
  const before = known.flatMap(({ reading }) => {
    const day = reading === null ? null : dayBefore(reading, visit);
    return day === null ? [] : [day];
  });
  const left = known.filter(
    ({ reading }) => reading?.origin !== 'measured' || dayBefore(reading, visit) !== null,
  );
  const count = { done: keys.length - left.length, of: keys.length };
  const goal = cellGoal(left[0]?.key.id ?? null, 'openingMm');
  if (left.length === 0) {
    const told = allReadWords(contents, keys);
    return { standing: 'done', count, told, act: 'Look at the sheet', goal };
  }
  const more = count.done === 0 ? '' : ' more';
  const openings = `${left.length}${more} opening${left.length === 1 ? '' : 's'}`;
  if (before.length > 0) {
    return {
      ...carriedWords(before, left.length - before.length),
      standing: 'begun',
      count,
      words: count.done === 0 ? 'from before' : `${count.done} of ${count.of} read again`,
      act: `Read ${openings} again`,
      goal,
    };
  }
  const are = left.length === 1 ? 'is' : 'are';
  return {
    standing: count.done === 0 ? 'not begun' : 'begun',
    count,
    told: `${count.done} of ${count.of} openings are read; ${named(left.map(({ key }) => key))} ${are} not.`,
    act: `Read ${openings}`,
    goal,
  };
}

const readingOf = ({ asFound }: BenchContents, pad: string): KnownLength | null =>
  knownSetupLength(asFound.document, pad, 'openingMm');

/** Readings that came with the horn, as an example’s do, are told apart from those typed here. */
function allReadWords({ asFound }: BenchContents, keys: readonly KeyedHole[]): string {
  const typed = asFound.document.keys.filter((key) => key.readings?.openingMm !== undefined).length;
  if (typed >= keys.length) return `All ${keys.length} openings are read.`;
  const others = keys.length - typed;
  return typed === 0
    ? `All ${keys.length} openings came with the horn; none was read here.`
    : `${counted(typed, 'opening')} ${typed === 1 ? 'was' : 'were'} read here; the other ${others} came with the horn.`;
}

/** What was read on a visit before is told with its day; it holds where a person says so. */
function carriedWords(days: readonly string[], neverRead: number): Pick<StepFacts, 'told' | 'advice'> {
  const last = [...days].sort().at(-1)!;
  const when = days.every((day) => day === last)
    ? `last time, ${last}`
    : `visits before, the last on ${last}`;
  const isOne = days.length === 1;
  const others =
    neverRead === 0 ? '' : ` ${counted(neverRead, 'other')} ${neverRead === 1 ? 'was' : 'were'} never read.`;
  return {
    told: `${counted(days.length, 'opening')} ${isOne ? 'is' : 'are'} from ${when}.${others}`,
    advice: `Read ${isOne ? 'it' : 'them'} again, or mark the step done where ${isOne ? 'it still holds' : 'they still hold'}.`,
  };
}

const hasOpening = ({ keys }: SetupDocument, pad: string): boolean =>
  keys.some((key) => key.pad === pad && key.openingMm !== undefined);

export function findAsSet(facts: DayFacts): StepFacts {
  const { proposed, asSet, horn } = facts.contents;
  const keys = keyedHoles(horn.document);
  const isSet = ({ id }: KeyedHole): boolean => hasOpening(asSet.document, id);
  const set = keys.filter(isSet);
  const asked = keys.filter(({ id }) => hasOpening(proposed.document, id));
  if (set.length + asked.length === 0) return nothingSet(facts);
  const left = asked.filter((key) => !isSet(key));
  if (left.length > 0) {
    return {
      standing: set.length === 0 ? 'not begun' : 'begun',
      count: { done: asked.length - left.length, of: asked.length },
      ...(set.length === 0 ? {} : { words: `${set.length} set, ${left.length} to read` }),
      told: `Proposed and not read as set: ${named(left)}.`,
      act: `Read ${counted(left.length, 'opening')} as set`,
      goal: cellGoal(left[0].id, 'asSet'),
    };
  }
  return { ...allAskedSet(set, keys, asked.length > 0), goal: cellGoal(set[0].id, 'asSet') };
}

/** Nothing is left that was proposed. What is set without a proposal says nothing of the keys beside it. */
function allAskedSet(
  set: readonly KeyedHole[],
  keys: readonly KeyedHole[],
  wasProposed: boolean,
): Omit<StepFacts, 'goal'> {
  const count = { done: set.length, of: keys.length };
  const others = keys.length - set.length;
  if (others === 0) {
    return { standing: 'done', count, told: 'Every key is set.', act: 'Look at the sheet' };
  }
  const words = `${set.length} of ${keys.length} set`;
  const beside = others === 1 ? 'the other key' : `the other ${others} keys`;
  if (wasProposed) {
    const told = `Set: ${named(set)}, all that was proposed; ${beside} as found.`;
    return { standing: 'done', count, words, told, act: 'Look at the sheet' };
  }
  const advice = `Mark the step done if ${beside} ${others === 1 ? 'leaves' : 'leave'} as found.`;
  const told = `Set: ${named(set)}.`;
  return { standing: 'begun', count, words, told, advice, act: `Read ${counted(others, 'opening')} as set` };
}

function nothingSet(facts: DayFacts): StepFacts {
  const isThrough = (stack: StackName): boolean => {
    const said = facts.visit.daySteps?.find(({ step }) => step === stack)?.said;
    return (said ?? findStack(stack, facts).standing) === 'not needed';
  };
  const stays = isThrough('lower stack') && isThrough('upper stack') && isThrough('other keys');
  return {
    standing: stays ? 'not needed' : 'not begun',
    count: null,
    told: stays ? 'It leaves as it was found.' : 'Nothing is set yet; keys left alone leave as found.',
    act: 'Read what was set',
    goal: cellGoal(null, 'asSet'),
  };
}
