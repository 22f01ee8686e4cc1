import { MATCHED_BY, type MatchedBy } from '../../../acoustics/index.ts';
import type { HornDocument } from '../../../documents/horn-document.ts';
import type { MatchReport, MatchReports } from '../../../documents/match-report.ts';
import { makeSetLike, type SetLike } from '../../../documents/set-like.ts';
import type { ChoiceOption } from '../../parts/vw-choice.ts';
import { unbroken } from '../../parts/note-names.ts';
import { hornInHand, proposedInHand, type BenchState } from '../../state/bench-state.ts';
import { memoLast } from '../../state/memo-last.ts';
import type { ComparedColumns } from '../../state/side-by-side-answer.ts';
import type { Column } from '../../state/side-by-side-state.ts';
import { undoTakesBackProposal } from '../../state/horn-on-bench.ts';
import { isTaken } from '../../state/take-proposal.ts';
import { letterOf } from './letters.ts';

/** The horn in hand set to the openings of a column. */
export interface LikeView {
  /** `Set Larkfield alto to the openings of` */
  readonly heading: string;
  readonly columns: readonly ChoiceOption[];
  /** the column's index, as the choice has it */
  readonly chosen: string;
  readonly measures: readonly ChoiceOption[];
  readonly by: MatchedBy;
  /** what the chosen measure keeps the same, and whether the other comes to the same here */
  readonly meaning: string;
  readonly column: Column;
  readonly frontsMm: MatchReport['frontsMm'];
  /** what the visit keeps of that column's horn once its openings are taken; null where none could be compared */
  readonly keeps: SetLike | null;
  readonly act: string;
  readonly disabled: boolean;
  readonly taken: boolean;
  /** what taking does, or did */
  readonly words: string;
  /** keys that cannot, a sentence each */
  readonly left: readonly string[];
}

const MEASURES: Readonly<Record<MatchedBy, string>> = {
  front: 'same front opening',
  'vent share': 'same vent share',
};

const MEANINGS: Readonly<Record<MatchedBy, string>> = {
  front:
    'The same under the fingers: each key travels as on the other horn, whatever its pad and hole then vent.',
  'vent share':
    'The same in the sound: each hole vents as on the other horn, so a key with another pad, hinge or hole may travel otherwise.',
};

/** What is nearer than this reads the same at the bench, mm. */
const SAME_MM = 0.1;

function comeToTheSame({ front, 'vent share': share }: MatchReports): boolean {
  const pads = new Set([front, share].flatMap(({ frontsMm }) => Object.keys(frontsMm)));
  return (
    pads.size > 0 && [...pads].every((pad) => Math.abs(front.frontsMm[pad] - share.frontsMm[pad]) < SAME_MM)
  );
}

/** @returns null where no column but the visit in hand can be taken */
export function makeLike(
  state: BenchState,
  columns: readonly Column[],
  names: readonly string[],
  waiting: boolean,
): LikeView | null {
  const { answer, likeBy: by, likeColumn } = state.sideBySide;
  const { contents } = hornInHand(state);
  const own = [contents.asFound, contents.proposed].map(({ id }) => id);
  const offered = columns.flatMap(({ hornId, setupId }, i) =>
    hornId === contents.horn.id && setupId !== null && own.includes(setupId) ? [] : [i],
  );
  if (answer === null || offered.length === 0) return null;
  const index = offered.find((i) => i === likeColumn) ?? offered[offered.length - 1];
  const matches = answer.matches[index] ?? null;
  if (matches === null) return null;
  const match = matches[by];
  const proposed = proposedInHand(state);
  const count = Object.keys(match.frontsMm).length;
  const taken = count > 0 && isTaken(match.frontsMm, proposed);
  const horn = contents.horn.document.name;
  return {
    heading: `Set ${horn} to another’s openings`,
    columns: offered.map((i) => ({ value: String(i), label: letterOf(i) })),
    chosen: String(index),
    measures: MATCHED_BY.map((value) => ({ value, label: MEASURES[value] })),
    by,
    meaning: `${MEANINGS[by]}${comeToTheSame(matches) ? ' On these two both come to the same.' : ''}`,
    column: columns[index],
    frontsMm: match.frontsMm,
    keeps: keepsMemo(contents.horn.document, answer, index, by),
    act: `Propose ${openings(count)} of ${letterOf(index)}`,
    disabled: waiting || count === 0 || taken,
    taken,
    words: unbroken(
      taken
        ? `Taken: ${openings(count)} of ${names[index]} ${count === 1 ? 'is' : 'are'} proposed on ${horn}, visit of ${contents.visit.document.date}.${undoTakesBackProposal(hornInHand(state)) ? ' Undo takes it back.' : ''}`
        : wordsBefore(match, Object.keys(proposed).length, by),
    ),
    left: match.left.map(unbroken),
  };
}

const keepsMemo = memoLast(
  (
    horn: HornDocument,
    { report, columns }: ComparedColumns,
    column: number,
    by: MatchedBy,
  ): SetLike | null => (report === null ? null : makeSetLike(horn, report, columns.indexOf(column), by)),
);

const openings = (count: number): string => `${count} ${count === 1 ? 'opening' : 'openings'}`;

function wordsBefore({ frontsMm, alike }: MatchReport, proposed: number, by: MatchedBy): string {
  const count = Object.keys(frontsMm).length;
  const stand = `${alike === 1 ? '1 key stands' : `${alike} keys stand`} so already`;
  const measure =
    by === 'front'
      ? 'In mm at the front of each pad, whatever its hinge.'
      : 'In mm at the front where this horn’s own hole, pad and hinge vent the same share.';
  if (count === 0) return `Nothing to propose: ${stand}. ${measure}`;
  const replaced = proposed === 0 ? '' : ` It replaces the ${openings(proposed)} proposed now.`;
  return `${alike === 0 ? '' : `${stand[0].toUpperCase()}${stand.slice(1)}. `}${measure} One step, which undo takes back.${replaced}`;
}
