import {
  MATCHED_BY,
  matchOpenings,
  standingPad,
  withOpening,
  type MatchedBy,
  type MatchedPad,
  type Setup,
} from '../acoustics/index.ts';
import { formatBoth } from './length-format.ts';
import { listed } from './listed.ts';
import type { LoadedHorn } from './to-acoustics.ts';

/** One horn set like another, bench units. */
export interface MatchReport {
  /** own stops that differ from as found, mm at the front by pad id */
  readonly frontsMm: Readonly<Record<string, number>>;
  /** keys that stand so already, to a tenth of a millimetre */
  readonly alike: number;
  /** keys that cannot be set so, or that an arm then holds lower: a sentence each kind */
  readonly left: readonly string[];
}

/** A match by each measure. */
export type MatchReports = Readonly<Record<MatchedBy, MatchReport>>;

const MM = 1e-3;

/** What is nearer than this is the same at the bench, mm: half of the last digit shown. */
const SAME_MM = 0.05;

/** How `horn` is to be set so that its pads stand, or vent, as those of `like` do. */
export function reportMatches(horn: LoadedHorn, like: LoadedHorn): MatchReports {
  const [front, share] = MATCHED_BY.map((by) => reportMatch(horn, like, by));
  return { front, 'vent share': share };
}

function reportMatch(loaded: LoadedHorn, like: LoadedHorn, by: MatchedBy): MatchReport {
  const { horn, setup } = loaded;
  const pads = matchOpenings(loaded, like, by);
  const wanted = pads.flatMap(({ id, front }) => (front === null ? [] : [{ id, front }]));
  const isOff = (of: Setup) => (pad: (typeof wanted)[number]) =>
    Math.abs(pad.front - standingPad(horn, of, pad.id).pose.front) >= SAME_MM * MM;
  const withAll = (moves: typeof wanted): Setup =>
    moves.reduce((now, { id, front }) => withOpening(now, id, { at: 'front', height: front }), setup);
  const moved = wanted.filter(isOff(setup));
  // What an arm held there stands higher once its driver is let go: then its own stop is set too.
  const isHeld = ({ id }: (typeof wanted)[number]): boolean =>
    pads.some((pad) => pad.id === id && pad.against?.by === 'arm');
  const letGo = wanted.filter((pad) => !moved.includes(pad) && !isHeld(pad) && isOff(withAll(moved))(pad));
  const all = [...moved, ...letGo];
  return {
    frontsMm: Object.fromEntries(all.map(({ id, front }) => [id, front / MM])),
    alike: wanted.length - all.length,
    left: leftSentences(pads, loaded.documents.horn.holes, by),
  };
}

function leftSentences(
  pads: readonly MatchedPad[],
  holes: readonly { readonly id: string; readonly name: string }[],
  by: MatchedBy,
): string[] {
  const nameOf = (id: string): string => holes.find((hole) => hole.id === id)?.name ?? id;
  const absent = pads.filter(({ against }) => against?.by === 'absent').map(({ name }) => name);
  const lone =
    absent.length === 0
      ? []
      : [
          `${listed(absent)}: no such key on the other horn, so ${absent.length === 1 ? 'it stays' : 'they stay'} as found.`,
        ];
  return [
    ...lone,
    ...pads.flatMap(({ name, front, against }) => {
      if (against?.by === 'stop') {
        const most = formatBoth(against.most / MM, 'mm');
        return by === 'front'
          ? [`${name} stays as found: its hinge opens to ${most} at the front and no further.`]
          : [`${name} stays as found: it vents less than the other’s even at ${most}.`];
      }
      if (against?.by === 'arm') {
        return [
          `${name} is wanted at ${formatBoth(front! / MM, 'mm')}, but the arm of ${nameOf(against.driver)} holds it at ${formatBoth(against.lets / MM, 'mm')}: set that link too.`,
        ];
      }
      return [];
    }),
  ];
}
