import { keyedHoles } from '../../documents/horn-document.ts';
import type { PlayedSetup } from '../../documents/pitch-log.ts';
import type { MoveReport } from '../../documents/regulation-report.ts';
import {
  counted,
  named,
  NOWHERE,
  stackOf,
  type DayFacts,
  type StackName,
  type StepFacts,
} from './day-path-facts.ts';

/** The work on one stack. */
interface StackWork {
  readonly left: readonly MoveReport[];
  /** moves made that are not on the list again */
  readonly made: number;
}

const AT_WORK = { view: 'work', ...NOWHERE } as const;

/** Seals first, since everything else is set to a pad that shuts. **Source:** common practice, no source. */
export function findSeals({ contents, visit, plan }: DayFacts): StepFacts {
  const leaking = visit.leakingSeats ?? [];
  const keys = keyedHoles(contents.horn.document).filter(({ id }) => leaking.some(({ pad }) => pad === id));
  const linksRead = (contents.asFound.document.links ?? []).filter((l) => l.drivenGapMm !== undefined).length;
  const read =
    linksRead === 0 ? '' : ` ${counted(linksRead, 'link')} of ${contents.horn.document.links.length} read.`;
  if (leaking.length === 0) {
    return {
      standing: linksRead === 0 ? 'not begun' : 'begun',
      count: null,
      told: `Light under every pad, papers under every link: mark what leaks, or say all is in order.${read}`,
      act: 'Check seals and links',
      goal: AT_WORK,
    };
  }
  const moves = plan.ok ? plan.report.moves : [];
  const left = keys.filter(({ id }) => moves.some(({ kind, pad }) => kind === 'seat' && pad === id));
  const count = { done: keys.length - left.length, of: keys.length };
  if (left.length === 0) {
    const told = `${counted(keys.length, 'pad')} leaked and ${keys.length === 1 ? 'is' : 'are'} sealed.${read}`;
    return { standing: 'done', count, told, act: 'Look at the work', goal: AT_WORK };
  }
  return {
    standing: 'begun',
    count,
    told: `${named(left)} still ${left.length === 1 ? 'leaks' : 'leak'}.${read}`,
    act: `Seal ${counted(left.length, 'pad')}`,
    goal: AT_WORK,
  };
}

/** The moves of one stack: heights, and the links its keys drive. */
export function findStack(stack: StackName, facts: DayFacts): StepFacts {
  const { plan } = facts;
  if (!plan.ok) {
    return {
      standing: 'not begun',
      count: null,
      told: plan.message,
      act: 'See why work cannot be planned',
      goal: AT_WORK,
    };
  }
  const { left, made } = workOn(stack, facts);
  const count = { done: made, of: made + left.length };
  if (left.length > 0) {
    return {
      standing: made === 0 ? 'not begun' : 'begun',
      count,
      told: `${made === 0 ? '' : `${counted(made, 'move')} made. `}${counted(left.length, 'move')} to make; first ${moveWords(left[0], facts)}.`,
      act: `Make ${counted(left.length, 'move')}, ${stack}`,
      goal: AT_WORK,
    };
  }
  if (made > 0) {
    return {
      standing: 'done',
      count,
      told: `${counted(made, 'move')} made.`,
      act: 'Look at the work',
      goal: AT_WORK,
    };
  }
  if (isPlanned(facts)) {
    return {
      standing: 'not needed',
      count: null,
      told: 'Nothing here is to be moved.',
      act: 'Look at the work',
      goal: AT_WORK,
    };
  }
  return {
    standing: 'not begun',
    count: null,
    told: 'Nothing is proposed yet: take a proposal, or say that these keys stay.',
    act: 'Look at the proposal',
    goal: { view: 'proposal', ...NOWHERE },
  };
}

function workOn(stack: StackName, { contents, plan }: DayFacts): StackWork {
  if (!plan.ok) return { left: [], made: 0 };
  const isOfStack = (pad: string): boolean => {
    const hole = contents.horn.document.holes.find(({ id }) => id === pad);
    return hole !== undefined && stackOf(hole.number) === stack;
  };
  const left = plan.report.moves.filter(
    ({ kind, pad, driver }) => kind !== 'seat' && isOfStack(driver ?? pad),
  );
  const made = new Set(
    plan.done.flatMap(({ move }) => {
      const [kind, pad] = move.split(' ');
      return kind !== 'seat' && isOfStack(pad) && !left.some(({ id }) => id === move) ? [move] : [];
    }),
  );
  return { left, made: made.size };
}

/** Whether anybody decided anything about this horn’s work. */
function isPlanned({ contents, visit }: DayFacts): boolean {
  const { proposed, asSet } = contents;
  return proposed.document.keys.length > 0 || asSet.document.keys.length > 0 || (visit.work ?? []).length > 0;
}

function moveWords({ kind, pad, driver, fromMm, toMm }: MoveReport, { contents }: DayFacts): string {
  const nameOf = (id: string): string =>
    contents.horn.document.holes.find((hole) => hole.id === id)?.name ?? id;
  if (kind === 'link') return `the link from ${nameOf(driver!)} to ${nameOf(pad)}`;
  const way = fromMm === null ? 'set' : toMm > fromMm ? 'raise' : 'lower';
  return `${way} ${nameOf(pad)}`;
}

/** Notes played and logged: as set, where anything was set. Takes set aside by a person do not count. */
export function findPlayed({ contents, visit }: DayFacts): StepFacts {
  const notesIn = (setup: PlayedSetup): number =>
    new Set(
      (visit.played ?? []).flatMap((t) => (t.setup === setup && t.leftOut !== true ? [t.fingering] : [])),
    ).size;
  const [found, set] = [notesIn('as found'), notesIn('as set')];
  const isSet = contents.asSet.document.keys.length > 0;
  const rest = { count: null, goal: { view: 'played', ...NOWHERE } } as const;
  if (found + set === 0) {
    return {
      ...rest,
      standing: 'not begun',
      told: 'Have it played and log what the tuner says, or say that it was played.',
      act: 'Log what is played',
    };
  }
  const logged = [
    found === 0 ? '' : `${counted(found, 'note')} as found`,
    set === 0 ? '' : `${counted(set, 'note')} as set`,
  ].filter((words) => words !== '');
  const told = `Logged: ${logged.join(', ')}.`;
  if (isSet && set === 0) {
    return {
      ...rest,
      standing: 'begun',
      told: `${told} Not played as set yet.`,
      act: 'Log how it plays as set',
    };
  }
  return { ...rest, standing: 'done', told, act: 'Look at the log' };
}
