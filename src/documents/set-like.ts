import * as z from 'zod';
import { MATCHED_BY, type MatchedBy } from '../acoustics/index.ts';
import type { ComparedKeyReport, ComparisonReport } from './comparison-report.ts';
import { keyedHoles, type HornDocument } from './horn-document.ts';
import { choice, quantity, text } from './schema-parts.ts';
import type { VisitDocument } from './visit-document.ts';

const likePad = z.strictObject({
  pad: text('pad id'),
  frontMm: quantity('opening of the other horn’s pad, at the front', 0, 60, 'mm'),
  frontPlusMinusMm: quantity('± of that opening', 0, 60, 'mm'),
  ventSharePercent: quantity('vent share of the other horn’s pad', 0, 200, '%'),
  ventSharePlusMinusPercent: quantity('± of that vent share', 0, 200, '%'),
});

/** The horn this one is to be like, and how its pads stood when that was asked. */
export const setLike = z.strictObject({
  horn: text('name of the horn this one is to be like'),
  by: choice('what the two horns are to have in common', MATCHED_BY),
  pads: z.array(likePad).max(60, 'expected at most 60 pads').describe('as that horn’s pads stood then'),
});

export type SetLike = z.infer<typeof setLike>;

/**
 * What is kept of a horn that this one is set like. Keys align by id and failing that by number.
 *
 * @param horn   the one that is set
 * @param column of the report, in which the other one stands
 */
export function makeSetLike(
  horn: HornDocument,
  { setups, keys }: Pick<ComparisonReport, 'setups' | 'keys'>,
  column: number,
  by: MatchedBy,
): SetLike {
  const isOf = (id: string, number: number) => {
    const same = keys.find((key) => key.setups[column]?.id === id);
    return same ?? keys.find((key) => key.number === number);
  };
  const pads = keyedHoles(horn).flatMap(({ id, number }): SetLike['pads'] => {
    const stands: ComparedKeyReport['setups'][number] = isOf(id, number)?.setups[column] ?? null;
    if (stands === null) return [];
    return [
      {
        pad: id,
        frontMm: stands.frontMm,
        frontPlusMinusMm: stands.frontPlusMinusMm,
        ventSharePercent: 100 * stands.ventShare,
        ventSharePlusMinusPercent: 100 * stands.ventSharePlusMinus,
      },
    ];
  });
  return { horn: setups[column].horn, by, pads };
}

/** A visit whose proposal was made to be like another horn; null for one that was not. */
export function withSetLike(visit: VisitDocument, like: SetLike | null): VisitDocument {
  if (like === null && visit.setLike === undefined) return visit;
  const { setLike: _before, ...rest } = visit;
  return like === null ? rest : { ...rest, setLike: like };
}
