import type { ComparisonReport } from './comparison-report.ts';
import type { LengthUnit } from './length-format.ts';
import { noteLabel } from './note-label.ts';
import { isPitchShown, isStrengthShown, mainNote } from './player-sheet-decisions.ts';
import type { WishedKey } from './player-sheet-facts.ts';
import { both, bothWithPlusMinus, inARow, many, withPlusMinus } from './player-sheet-lengths.ts';

/** As many notes as the cost of a wish names. */
const NAMED = 3;

/** What the wish would do, note by note, against how the horn leaves or would leave as proposed; null where there is no opening to ask of. */
export function wishSentence(wished: WishedKey | null, isProposal: boolean, unit: LengthUnit): string | null {
  if (wished === null || !wished.isNamed) return null;
  const { study, wish, cost, problem } = wished;
  if (problem !== null) return `The ${study.key.name} key cannot stand as wished: ${problem}.`;
  if (wish === null || cost === null) return null;
  const at = `With the ${study.key.name} key at ${both(wish.frontMm, unit)} at the front, as wished,`;
  if (Math.abs(wish.frontMm - study.present.frontMm) < 0.05)
    return `${at} it stands as ${isProposal ? 'is proposed' : 'it leaves'}.`;
  return `${at} ${isProposal ? 'and not as proposed, ' : ''}${costWords(cost)}${reasonWords(wished, unit)}`;
}

function costWords({ notes }: ComparisonReport): string {
  const told = notes.flatMap(({ fingering, differences: [d] }) => {
    if (d === null || d === undefined) return [];
    const parts = [
      ...(isPitchShown(d)
        ? [`${withPlusMinus(d.cents, d.centsPlusMinus)} cents ${d.cents > 0 ? 'sharper' : 'flatter'}`]
        : []),
      ...(isStrengthShown(d) && Math.abs(d.strengthDb!) >= 0.05
        ? [
            `${withPlusMinus(d.strengthDb!, d.strengthDbPlusMinus!)} dB ${d.strengthDb! > 0 ? 'stronger' : 'weaker'}`,
          ]
        : []),
    ];
    return parts.length === 0 ? [] : [`${noteLabel(fingering)} would be ${parts.join(' and ')}`];
  });
  if (told.length === 0) return 'no note would change by as much as can be shown.';
  const named = told.slice(0, NAMED).map((words, i) => (i === 0 ? words : words.replace(' would be', '')));
  const more = told.length - named.length;
  return more > 0
    ? `${named.join(', ')}; ${many(more, 'more note')} would change by less.`
    : `${inARow(named)}.`;
}

/** Where the wish lies against the point of diminishing return. */
function reasonWords({ study, wish }: WishedKey, unit: LengthUnit): string {
  const { point, frontMmBudget } = study.diminishingReturn;
  const note = mainNote(study);
  if (point === null || note === null || wish === null) return '';
  const half = frontMmBudget?.plusMinus ?? 0;
  const enough = bothWithPlusMinus(point.frontMm, half, unit);
  if (wish.frontMm < point.frontMm - half)
    return ` As wished, ${note.name} would be under-vented: enough is ${enough}.`;
  return wish.frontMm > point.frontMm + half
    ? ` Above ${enough} more height no longer helps.`
    : ` That is as good as enough, ${enough}.`;
}
