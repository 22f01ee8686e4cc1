import type { AirColumn } from '../air/air.ts';
import type { Horn, Setup } from '../horn.ts';
import type { Fingering } from '../keywork/fingerings.ts';
import { padStates } from '../keywork/linkage.ts';
import { DB_PER_NEPER, decibelsBetween, scaledBudget } from './decibels.ts';
import { DEFAULT_THRESHOLDS, findDiminishingReturn, type DiminishingReturn } from './diminishing-return.ts';
import type { Knowledge } from './scale-budgets.ts';
import type { Budget } from './uncertainty.ts';
import { ventingBudgets } from './venting-budgets.ts';
import { prepareVenting, ventingAt, type VentingContext, type VentingOptions } from './venting.ts';

/** What one key's height can still do for a note: from where it stands to enough. */
export interface HeightEffect {
  readonly pad: string;
  /** m at the front, as the key stands, and how sure */
  readonly present: number;
  readonly presentBudget: Budget;
  /** m at the front: enough; where none is in reach, as far as the study looks */
  readonly enough: number;
  /** null where there is none in reach, or the least opening is enough */
  readonly enoughBudget: Budget | null;
  readonly kind: DiminishingReturn['kind'];
  /** whose arm lets it no higher; null where none does */
  readonly driver: string | null;
  /** null where the note is lost on the way */
  readonly change: HeightChange | null;
}

/** What moving a key does to a note. */
export interface HeightChange {
  /** dB of the resonance's height, + where it gains */
  readonly gainDb: number;
  readonly cents: number;
  /** null where the note's slopes are not known */
  readonly gainBudget: Budget | null;
  readonly centsBudget: Budget | null;
}

/**
 * Every key whose height a note hears: the pads its fingering leaves fully open and that move it by more than a cent
 * between half and one and a half times their opening. The key that brings most first.
 */
export function heightsFor(
  horn: Horn,
  setup: Setup,
  fingering: Fingering,
  air: AirColumn,
  options: VentingOptions & Knowledge = {},
): HeightEffect[] {
  const states = padStates(horn.keywork, new Set(fingering.touches));
  const open = horn.holes.filter(({ id, hinge }) => hinge !== null && states.get(id)!.open);
  return open
    .flatMap(({ id }) => {
      const own = prepareVenting(horn, setup, id, air, { ...options, fingerings: [fingering] });
      return own.governed.length === 0 ? [] : [heightEffect(own, air, options)];
    })
    .sort((a, b) => gainOf(b) - gainOf(a));
}

/** dB; what cannot be told comes last. */
const gainOf = ({ change }: HeightEffect): number => change?.gainDb ?? -Infinity;

/** @param own the key prepared for the one note */
function heightEffect(
  own: VentingContext,
  air: AirColumn,
  options: VentingOptions & Knowledge,
): HeightEffect {
  const { horn, setup, hole, standing } = own;
  const [note] = own.governed;
  const whole = prepareVenting(horn, setup, hole.id, air, options);
  const found = findDiminishingReturn(whole);
  const at = found.kind === 'none in reach' ? ventingAt(whole, whole.reach) : found.at;
  const aim: DiminishingReturn =
    found.kind === 'none in reach' ? { kind: 'reached', at, decidedBy: { by: 'least opening' } } : found;
  const others = whole.governed.filter(({ fingering }) => fingering !== note.fingering);
  const context = { ...whole, governed: [note, ...others] };
  const budgets = ventingBudgets(context, aim, DEFAULT_THRESHOLDS, air, options);
  const [before] = ventingAt(own, standing.pose.front).notes;
  const [after] = ventingAt(own, at.pose.front).notes;
  const { id } = note.fingering;
  const inDb = budgets.heights.get(id);
  return {
    pad: hole.id,
    present: standing.pose.front,
    presentBudget: budgets.front,
    enough: at.pose.front,
    enoughBudget: budgets.diminishingReturn,
    kind: found.kind,
    driver: found.kind === 'set by a link' ? found.driver : null,
    change:
      before === null || after === null
        ? null
        : {
            gainDb: decibelsBetween(before.height, after.height),
            cents: after.cents - before.cents,
            gainBudget: inDb === undefined ? null : scaledBudget(inDb, DB_PER_NEPER),
            centsBudget: budgets.changes.get(id) ?? null,
          },
  };
}
