import { listed } from '../parts/note-names.ts';
import { NOWHERE, type DayFacts, type StepFacts, type StepGoal } from './day-path-facts.ts';
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

export function findPlayersSheet({ contents, visit }: DayFacts): StepFacts {
  const isDecided = [contents.asSet, contents.proposed].some(({ document }) => document.keys.length > 0);
  const missing = [
    ...(visit.player === undefined ? ['who plays it'] : []),
    ...(visit.wish === undefined ? ['what they ask for'] : []),
    ...(isDecided ? [] : ['what is proposed or set']),
  ];
  return {
    standing: 'not begun',
    count: null,
    told: missing.length === 0 ? 'All it needs is written down.' : `Not on it yet: ${listed(missing)}.`,
    advice: 'Printing it marks it done.',
    act: 'Print the player’s sheet',
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
