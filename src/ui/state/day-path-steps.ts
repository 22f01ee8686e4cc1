import type { BenchContents } from '../../documents/bench-contents.ts';
import { keyedHoles, type KeyedHole } from '../../documents/horn-document.ts';
import type { SetupDocument } from '../../documents/setup-document.ts';
import { knownSetupLength } from '../../documents/sheet-edits.ts';
import {
  counted,
  named,
  NOWHERE,
  type DayFacts,
  type StackName,
  type StepFacts,
  type StepGoal,
} from './day-path-facts.ts';
import { findStack } from './day-path-work.ts';
import type { Keeping } from './keeping.ts';

export function findHornIn({ visit }: DayFacts): StepFacts {
  const { player, wish, date } = visit;
  const field = (id: 'player' | 'wish'): StepGoal => ({
    view: 'sheet',
    keyId: null,
    field: { kind: 'head', id },
  });
  const count = { done: [player, wish].filter((text) => text !== undefined).length, of: 2 };
  if (player === undefined) {
    const asked = wish === undefined ? ', and what they ask for' : '';
    return {
      standing: wish === undefined ? 'not begun' : 'begun',
      count,
      told: `Write down who plays it${asked}.`,
      act: 'Say who plays it',
      goal: field('player'),
    };
  }
  if (wish === undefined) {
    const told = `In on ${date} for ${player}. Write down what they ask for.`;
    return { standing: 'begun', count, told, act: 'Write down the wish', goal: field('wish') };
  }
  const told = `In on ${date} for ${player}, whose wish is written down.`;
  return { standing: 'done', count, told, act: 'Look at it again', goal: field('wish') };
}

function isRead({ asFound }: BenchContents, pad: string): boolean {
  return knownSetupLength(asFound.document, pad, 'openingMm')?.origin === 'measured';
}

function cellGoal(pad: string | null, id: 'openingMm' | 'asSet'): StepGoal {
  return { view: 'sheet', keyId: pad, field: pad === null ? null : { kind: 'cell', pad, id } };
}

export function findAsFound({ contents }: DayFacts): StepFacts {
  const keys = keyedHoles(contents.horn.document);
  const unread = keys.filter(({ id }) => !isRead(contents, id));
  const count = { done: keys.length - unread.length, of: keys.length };
  const goal = cellGoal(unread[0]?.id ?? null, 'openingMm');
  if (unread.length === 0) {
    const told = `All ${keys.length} openings are read.`;
    return { standing: 'done', count, told, act: 'Look at the sheet', goal };
  }
  const are = unread.length === 1 ? 'is' : 'are';
  return {
    standing: count.done === 0 ? 'not begun' : 'begun',
    count,
    told: `${count.done} of ${count.of} openings are read; ${named(unread)} ${are} not.`,
    act: `Read ${unread.length}${count.done === 0 ? '' : ' more'} opening${unread.length === 1 ? '' : 's'}`,
    goal,
  };
}

const hasOpening = ({ keys }: SetupDocument, pad: string): boolean =>
  keys.some((key) => key.pad === pad && key.openingMm !== undefined);

export function findAsSet(facts: DayFacts): StepFacts {
  const { proposed, asSet, horn } = facts.contents;
  const keys = keyedHoles(horn.document);
  const isSet = ({ id }: KeyedHole): boolean => hasOpening(asSet.document, id);
  const wanted = keys.filter((key) => isSet(key) || hasOpening(proposed.document, key.id));
  if (wanted.length === 0) return nothingSet(facts);
  const left = wanted.filter((key) => !isSet(key));
  const count = { done: wanted.length - left.length, of: wanted.length };
  const goal = cellGoal((left[0] ?? wanted[0]).id, 'asSet');
  if (left.length === 0) {
    const told = `How it leaves is read: ${named(wanted)}${wanted.length === keys.length ? '' : '; the others as found'}.`;
    return { standing: 'done', count, told, act: 'Look at the sheet', goal };
  }
  return {
    standing: count.done === 0 ? 'not begun' : 'begun',
    count,
    told: `Proposed and not read as set: ${named(left)}.`,
    act: `Read ${counted(left.length, 'opening')} as set`,
    goal,
  };
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

export function findPlayersSheet(): StepFacts {
  return {
    standing: 'not begun',
    count: null,
    told: 'One page for the player: look it over, print it, and say it is done.',
    act: 'See the player’s sheet',
    goal: { view: 'player-sheet', ...NOWHERE },
  };
}

export function findShopsFile({ keeping, mayBeCleared }: DayFacts): StepFacts {
  return {
    standing: 'not begun',
    count: null,
    told: keptWords(keeping, mayBeCleared),
    act: 'Save it as a file',
    goal: { view: 'library', ...NOWHERE },
  };
}

function keptWords(keeping: Keeping['kind'], mayBeCleared: boolean | null): string {
  switch (keeping) {
    case 'untouched':
      return 'Nothing was changed, so nothing is kept yet.';
    case 'saving':
    case 'saved':
      return mayBeCleared === true
        ? 'It is in this browser, which may clear it when space runs short: save it as a file.'
        : 'It is in this browser; a file of it can be kept elsewhere.';
    case 'refused':
    case 'conflict':
      return 'It is not saved in this browser: save it as a file.';
  }
}

export function findLastVisit({ earlier }: DayFacts): StepFacts {
  const [last] = earlier;
  if (last === undefined) {
    return {
      standing: 'not needed',
      count: null,
      told: 'A first visit. When the horn is back, a new visit starts from how it leaves now.',
      act: 'See its visits',
      goal: { view: 'sheet', ...NOWHERE },
    };
  }
  const who = last.player === null ? '' : ` for ${last.player}`;
  return {
    standing: 'not begun',
    count: null,
    told: `It was here on ${last.date}${who}. See what has moved since it left.`,
    act: `Compare with ${last.date}`,
    goal: { view: 'side-by-side', ...NOWHERE },
  };
}
