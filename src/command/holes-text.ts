import type { HoleAnswer } from '../documents/hole-request.ts';

/** What each hole under its pad comes to, a block of lines for each. */
export function holesText(answers: readonly HoleAnswer[]): string {
  return answers.map((answer, i) => holeLines(answer, i + 1).join('\n')).join('\n\n');
}

function holeLines(answer: HoleAnswer, count: number): string[] {
  const { frontMm, centreMm, backMm } = answer;
  return [
    `Hole ${count}: open ${mm(frontMm)} at the front, ${mm(centreMm)} at the centre, ${mm(backMm)} at the back`,
    `  t_i, inner length, what the bore adds: ${mm(answer.tiInnerLengthMm)}`,
    `  t_m, matching length, where chimney meets bore: ${mm(answer.tmMatchingLengthMm)}`,
    `  end correction, beyond the rim: ${mm(answer.endCorrectionMm)}; with no pad ${mm(answer.noPadEndCorrectionMm)}`,
    `  t_e, the hole’s acoustic length, t_i + chimney + t_m + end correction: ${mm(answer.teHoleLengthMm)}; with no pad ${mm(answer.noPadTeHoleLengthMm)}`,
    `  vent share, t_e with no pad over t_e: ${(100 * answer.ventShare).toFixed(1)} %`,
    `  vents like a parallel pad at ${mm(answer.equivalentParallelMm)}`,
    ...answer.warnings.map((warning) => `! ${warning}`),
  ];
}

/** Lengths to a hundredth; a closed hole’s has no end. */
function mm(length: number | null): string {
  return length === null ? 'endless, the hole is closed' : `${length.toFixed(2)} mm`;
}
