import { keyedHoles, type HornDocument } from '../../../documents/horn-document.ts';
import type { LengthUnit } from '../../../documents/length-format.ts';
import { unbroken } from '../../parts/note-names.ts';
import { makeSureness, type Sureness } from '../../parts/sureness.model.ts';
import { memoLast } from '../../state/memo-last.ts';
import type { ScaleSureness } from '../../state/scale-sureness.ts';

/** How sure the picked note is. */
export interface NoteSureness {
  /** of its move where it moves, else of its pitch as found; null where neither is known */
  readonly panel: Sureness | null;
  /** the other of the two in a line; empty where there is none */
  readonly beside: string;
}

/** @param index the picked note's place in the report */
export const makeNoteSureness = memoLast(
  (sure: ScaleSureness, index: number, label: string, unit: LengthUnit, horn: HornDocument): NoteSureness => {
    const keys = new Set(keyedHoles(horn).map(({ id }) => id));
    const found = sure.found[index] ?? null;
    const move = sure.moves[index] ?? null;
    const manner = { of: 'cents', unit, keys } as const;
    if (move === null) {
      return {
        panel:
          found === null
            ? null
            : makeSureness(found.budget, found.next, {
                ...manner,
                what: `The pitch of ${label} as found`,
                byPlaying: true,
              }),
        beside: '',
      };
    }
    return {
      panel: makeSureness(move.budget, move.next, { ...manner, what: `How far ${label} moves` }),
      beside:
        found === null
          ? ''
          : unbroken(
              `Its pitch itself is known to ± ${found.budget.plusMinus.toFixed(1)} cents; what moves it errs far less, ` +
                'since one horn errs alike before and after.',
            ),
    };
  },
);
