import { formatBoth, formatLength } from '../../../documents/length-format.ts';
import { lostMotionInShort } from '../../../documents/lost-motion-words.ts';
import { listed, unbroken } from '../../parts/note-names.ts';
import { lengthBothWithPlusMinus } from '../../parts/plus-minus-words.ts';
import type { StudyReport } from '../../state/study-report.ts';
import type { Manner } from './opening-words.ts';
import type { HoldsDown, StudyLinks } from './study-links.model.ts';

/** A sentence about a link; pressing where the proposed opening runs into it. */
export interface LinkSentence {
  readonly text: string;
  readonly pressing: boolean;
}

/** Closer than this an arm and its pad count as touching. */
const TOUCHING_MM = 0.005;

/**
 * What the key’s links do to it and it to them: the arm that holds it, the pads it holds, the motion it leaves lost.
 *
 * @param proposedMm mm at the front, to tell which links it runs into
 */
export function makeLinkSentences(
  report: StudyReport,
  { holdsDown, leftBehind }: StudyLinks,
  { unit }: Pick<Manner, 'unit'>,
  proposedMm: number,
): LinkSentence[] {
  const lost = leftBehind.map(({ setup, frontMm, lost: links }) => ({
    text: `${setup === 'as set' ? 'As set at' : 'Set to'} ${formatLength(frontMm, unit)}: ${lostMotionInShort(links, unit)}`,
    pressing: true,
  }));
  const holding = inGroups(holdsDown, unit).map((group) => holdingSentence(group, report, proposedMm));
  return [...heldSentence(report, unit, proposedMm), ...lost, ...holding].map((sentence) => ({
    ...sentence,
    text: unbroken(sentence.text),
  }));
}

/** The arm that holds the key below its own stop. */
function heldSentence(
  { ruledBy, answer, budgets }: StudyReport,
  unit: Manner['unit'],
  proposedMm: number,
): LinkSentence[] {
  if (ruledBy === null || answer.kind === 'set by a link') return [];
  const { driverName, frontMm, ownFrontMm } = ruledBy;
  const text =
    `The ${driverName} key’s arm holds it at ${lengthBothWithPlusMinus(frontMm, budgets.presentMm.plusMinus, unit)} ` +
    `at the front; its own stop would let it open to ${formatBoth(ownFrontMm, unit)}.`;
  return [{ text, pressing: proposedMm > frontMm }];
}

/** Pads that one height and one other arm are told of. */
interface HeldGroup {
  readonly names: readonly string[];
  readonly belowMm: number;
  readonly heldByName: string | null;
  /** `7.8 ± 0.4 mm (0.307 in)` */
  readonly shown: string;
}

function inGroups(holdsDown: readonly HoldsDown[], unit: Manner['unit']): HeldGroup[] {
  const groups = new Map<string, HeldGroup>();
  for (const { drivenName, belowMm, plusMinusMm, heldByName } of holdsDown) {
    const name = `${formatBoth(belowMm, unit)} ${heldByName ?? ''}`;
    const known = groups.get(name);
    groups.set(
      name,
      known === undefined
        ? {
            names: [drivenName],
            belowMm,
            heldByName,
            shown: lengthBothWithPlusMinus(belowMm, plusMinusMm, unit),
          }
        : { ...known, names: [...known.names, drivenName] },
    );
  }
  return [...groups.values()];
}

function holdingSentence(
  { names, belowMm, heldByName, shown }: HeldGroup,
  { present }: StudyReport,
  proposedMm: number,
): LinkSentence {
  const pads = listed(names);
  const holds = present.frontMm < belowMm - TOUCHING_MM;
  const pressing = holds || proposedMm < belowMm;
  if (!holds) {
    const text =
      heldByName === null
        ? `Set below ${shown} at the front, its arm starts to hold ${pads} down.`
        : `Set below ${shown} at the front, its arm holds ${pads} lower than the ${heldByName} key’s arm does anyway.`;
    return { text, pressing };
  }
  const one = names.length === 1;
  const above =
    heldByName === null
      ? `${pads} ${one ? 'is' : 'are'} free`
      : `the ${heldByName} key’s arm holds ${one ? 'it' : 'them'}`;
  const text = `As found, its arm holds ${pads} down; above ${shown} at this key’s front ${above}.`;
  return { text: `${text} The curve moves this key alone.`, pressing };
}
