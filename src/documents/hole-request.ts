import * as z from 'zod';
import {
  DEFAULT_PAD_MODEL,
  holeEnd,
  holeLength,
  innerLength,
  makePadPose,
  matchingLength,
  type Opening,
  type PadModel,
} from '../acoustics/index.ts';
import { quantity, readWith, type DocumentIssue, type ReadOutcome } from './schema-parts.ts';

/** One hole with its pad, in bench units: diameters, thicknesses and heights in mm. */
export const holeRequestSchema = z.strictObject({
  boreMm: quantity('boreMm, bore diameter at the hole', 4, 500, 'mm'),
  holeMm: quantity('holeMm, hole diameter', 0.5, 200, 'mm'),
  chimneyMm: quantity('chimneyMm, bore crown to rim', 0, 200, 'mm'),
  rimMm: quantity('rimMm, rim thickness', 0.01, 100, 'mm'),
  padMm: quantity('padMm, pad diameter', 0.5, 400, 'mm'),
  padThicknessMm: quantity('padThicknessMm, pad thickness', 0.01, 100, 'mm'),
  hingeMm: quantity(
    'hingeMm, rod to pad centre along the rim plane (null: parallel)',
    0.1,
    10000,
    'mm',
  ).nullable(),
  hingeHeightMm: quantity('hingeHeightMm, rod above the rim plane', -500, 500, 'mm').default(0),
  bodyBelowMm: quantity('bodyBelowMm, a plane body this far below the rim', 0.01, 10000, 'mm').optional(),
  frontMm: quantity('frontMm, front opening', 0, 500, 'mm').optional(),
  centreMm: quantity('centreMm, centre opening', 0, 500, 'mm').optional(),
});

export type HoleRequest = z.infer<typeof holeRequestSchema>;

/** What the pad does to the hole. Lengths in mm; null stands for a closed hole’s endless length. */
export interface HoleAnswer {
  /** t_i, what the bore adds below the chimney */
  readonly tiInnerLengthMm: number;
  /** t_m, where the round chimney meets the round bore */
  readonly tmMatchingLengthMm: number;
  /** t_e = t_i + chimney + t_m + end correction, and the same with no pad */
  readonly teHoleLengthMm: number | null;
  readonly noPadTeHoleLengthMm: number;
  readonly endCorrectionMm: number | null;
  readonly noPadEndCorrectionMm: number;
  readonly equivalentParallelMm: number;
  readonly frontMm: number;
  readonly centreMm: number;
  readonly backMm: number;
  readonly ventShare: number;
  readonly warnings: readonly string[];
}

const MM = 1e-3;

/** Reads an array of hole requests and answers each, or lists every issue of all of them. */
export function answerHoles(input: unknown, model: PadModel = DEFAULT_PAD_MODEL): ReadOutcome<HoleAnswer[]> {
  const read = readWith(z.array(holeRequestSchema, 'expected an array of holes'), input);
  if (!read.ok) return read;
  const issues: DocumentIssue[] = [];
  const answers: HoleAnswer[] = [];
  read.value.forEach((request, i) => {
    const problem = contradiction(request);
    if (problem !== null) {
      issues.push({ path: `[${i}].${problem.field}`, code: 'range', message: problem.message });
      return;
    }
    try {
      answers.push(answerHole(request, model));
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      issues.push({ path: `[${i}]`, code: 'range', message: error.message });
    }
  });
  return issues.length > 0 ? { ok: false, issues } : { ok: true, value: answers };
}

/** What no single field shows: fields that contradict each other. */
function contradiction(r: HoleRequest): { field: string; message: string } | null {
  if ((r.frontMm === undefined) === (r.centreMm === undefined)) {
    return { field: 'frontMm', message: 'expected exactly one opening, frontMm or centreMm' };
  }
  if (!(r.padMm > r.holeMm)) {
    return {
      field: 'padMm',
      message: `invalid padMm: ${r.padMm} mm; expected more than holeMm, ${r.holeMm} mm`,
    };
  }
  if (!(r.holeMm <= r.boreMm)) {
    return {
      field: 'holeMm',
      message: `invalid holeMm: ${r.holeMm} mm; expected at most boreMm, ${r.boreMm} mm`,
    };
  }
  return null;
}

function answerHole(r: HoleRequest, model: PadModel): HoleAnswer {
  const hinge = { distance: r.hingeMm === null ? Infinity : r.hingeMm * MM, height: r.hingeHeightMm * MM };
  const opening: Opening =
    r.frontMm === undefined
      ? { at: 'centre', height: r.centreMm! * MM }
      : { at: 'front', height: r.frontMm * MM };
  const padRadius = (r.padMm / 2) * MM;
  const pose = makePadPose(hinge, padRadius, opening);
  const shape = {
    boreRadius: (r.boreMm / 2) * MM,
    holeRadius: (r.holeMm / 2) * MM,
    chimney: r.chimneyMm * MM,
  };
  const end = model.endOf({
    holeRadius: shape.holeRadius,
    rimThickness: r.rimMm * MM,
    padRadius,
    padThickness: r.padThicknessMm * MM,
    hingeDistance: hinge.distance,
    hingeHeight: hinge.height,
    centreHeight: pose.centre,
    ...(r.bodyBelowMm === undefined ? {} : { bodyBelow: r.bodyBelowMm * MM }),
  });
  const finite = (metres: number): number | null => (Number.isFinite(metres) ? metres / MM : null);
  return {
    tiInnerLengthMm: innerLength(shape) / MM,
    tmMatchingLengthMm: matchingLength(shape) / MM,
    teHoleLengthMm: finite(holeLength(shape, end.length)),
    noPadTeHoleLengthMm: holeLength(shape, end.noPadLength) / MM,
    endCorrectionMm: finite(end.length),
    noPadEndCorrectionMm: end.noPadLength / MM,
    equivalentParallelMm: end.equivalentParallel / MM,
    frontMm: pose.front / MM,
    centreMm: pose.centre / MM,
    backMm: pose.back / MM,
    ventShare: holeEnd(shape, end, pose.centre).ventShare,
    warnings: end.warnings,
  };
}
