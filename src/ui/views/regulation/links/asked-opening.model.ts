import { canBeShown } from '../../../../acoustics/index.ts';
import { formatBoth, formatLength } from '../../../../documents/length-format.ts';
import { lengthBothWithPlusMinus } from '../../../../documents/length-plus-minus.ts';
import { reportAskedOpening, type AskedOpeningReport } from '../../../../documents/links-report.ts';
import { listed } from '../../../../documents/listed.ts';
import type { BudgetReport } from '../../../../documents/uncertainty-report.ts';
import { unbroken } from '../../../parts/note-names.ts';
import type { BenchState } from '../../../state/bench-state.ts';
import { askedTextKey } from '../../../state/links-state.ts';
import type { Reason } from '../../../state/reasons.ts';
import { textInField } from '../../../state/text-in-field.ts';
import { sentence, type FieldView } from '../../key-study/measured-fields.model.ts';
import type { LoadedLinks } from './loaded-links.ts';
import type { LinksManner } from './links-words.ts';

/** One stop of the pads on the way. */
export interface AskedStopRow {
  readonly pad: string;
  readonly needed: string;
  /** `raise by 0.4 ± 0.2 mm (0.016 in)`, `enough as it is`, or why it cannot */
  readonly raise: string;
  readonly short: boolean;
  /** of the figures in both */
  readonly reasons: readonly Reason[];
}

/** A least opening asked of a driven pad, and what it needs. */
export interface AskedView {
  readonly pads: readonly { readonly id: string; readonly name: string }[];
  readonly padId: string;
  readonly field: FieldView<'asked'>;
  /** null until an opening is asked */
  readonly answer: string | null;
  readonly rows: readonly AskedStopRow[];
  readonly ratios: readonly string[];
  /** mm at the front by pad: what to propose so that the opening is had; null where a hinge does not reach */
  readonly proposes: Readonly<Record<string, number>> | null;
}

export function makeAskedView(
  state: BenchState,
  { facts, loaded, report }: LoadedLinks,
  manner: LinksManner,
): AskedView {
  const { unit, nameOf } = manner;
  const pads = report.pads.map(({ pad }) => ({ id: pad, name: nameOf(pad) }));
  const wanted = state.links.asked;
  const padId = pads.find((p) => p.id === wanted?.pad)?.id ?? firstAsked(report);
  const frontMm = wanted?.pad === padId ? wanted.frontMm : null;
  const typed = state.links.texts[askedTextKey(state.hornId)];
  const stands = report.pads.find((p) => p.pad === padId)!.standsFrontMm;
  const asked = frontMm === null ? null : reportAskedOpening(loaded, facts, padId, frontMm);
  const standsWords = `stands at ${formatBoth(stands, unit)}`;
  return {
    pads,
    padId,
    field: {
      id: 'asked',
      label: 'Least opening at its front',
      hint: standsWords,
      text: frontMm === null ? (typed?.text ?? '') : textInField(typed, frontMm, formatLength(frontMm, unit)),
      echo: frontMm === null ? 'none asked' : formatBoth(frontMm, unit),
      problem: typed?.problem ? sentence(typed.problem) : null,
    },
    answer: asked === null ? null : unbroken(answerFor(asked, manner)),
    rows: asked === null ? [] : asked.stops.map((stop) => stopRow(stop, asked, manner)),
    ratios: (asked?.ratios ?? []).map((r) =>
      unbroken(
        `or leave ${nameOf(r.driver)} where it is and change its ratio onto ${nameOf(r.driven)} from ` +
          `${r.presentRatio.toFixed(2)} to ${r.neededRatio.toFixed(2)} ± ${r.neededBudget.plusMinus.toFixed(2)}`,
      ),
    ),
    proposes: asked === null ? null : proposalFor(asked),
  };
}

/** The pad that most keys may rule, through any number of links, is the one that is asked about most. */
function firstAsked({ pads, links }: LoadedLinks['report']): string {
  const rulers = (pad: string): Set<string> =>
    new Set(
      links.flatMap((l) =>
        l.driven === pad && l.travelRatio !== null ? [l.driver, ...rulers(l.driver)] : [],
      ),
    );
  return pads.reduce((a, b) => (rulers(b.pad).size > rulers(a.pad).size ? b : a)).pad;
}

type Stop = AskedOpeningReport['stops'][number];

const isShort = (stop: Stop): boolean => stop.raiseMm > 0.005;
const isBeyond = ({ neededFrontMm, largestFrontMm }: Stop): boolean =>
  largestFrontMm !== null && neededFrontMm > largestFrontMm;

/** What a stop has to spare, or lacks, with its ±. */
const apart = ({ neededFrontMm, ownFrontMm, raiseBudget }: Stop, { unit }: LinksManner): string =>
  lengthBothWithPlusMinus(Math.abs(neededFrontMm - ownFrontMm), raiseBudget.plusMinus, unit);

const isShown = ({ neededFrontMm, ownFrontMm, raiseBudget: { plusMinus } }: Stop): boolean =>
  canBeShown({ value: neededFrontMm - ownFrontMm, plusMinus });

function stopRow(stop: Stop, asked: AskedOpeningReport, manner: LinksManner): AskedStopRow {
  const { unit, nameOf } = manner;
  const isAsked = stop.pad === asked.pad;
  const needed = unbroken(
    isAsked
      ? formatBoth(stop.neededFrontMm, unit)
      : lengthBothWithPlusMinus(stop.neededFrontMm, stop.neededBudget.plusMinus, unit),
  );
  const reason = (figure: string, of: string, parts: BudgetReport): Reason => ({
    ...{ kind: 'asked-opening', figure, of: `${nameOf(stop.pad)}, ${of}`, remarks: [] },
    inputs: [
      {
        label: `asked of ${nameOf(asked.pad)}, at its front`,
        value: formatBoth(asked.askedFrontMm, unit),
        from: 'meant, so without a ±',
      },
      { label: 'its own stop', value: formatBoth(stop.ownFrontMm, unit), from: '' },
    ],
    budget: { parts, in: 'mm' },
  });
  return {
    pad: nameOf(stop.pad),
    needed,
    raise: unbroken(raiseWords(stop, manner)),
    short: isShort(stop),
    reasons: [
      ...(isAsked ? [] : [reason(needed, 'needs at its front', stop.neededBudget)]),
      reason(unbroken(apart(stop, manner)), 'what its stop lacks or has to spare', stop.raiseBudget),
    ],
  };
}

function raiseWords(stop: Stop, manner: LinksManner): string {
  if (isBeyond(stop)) return `its hinge reaches ${formatBoth(stop.largestFrontMm!, manner.unit)} only`;
  if (isShort(stop)) {
    return `${isShown(stop) ? '' : 'cannot be shown: '}raise by ${apart(stop, manner)}`;
  }
  return isShown(stop) ? 'enough as it is' : `cannot be shown: enough by ${apart(stop, manner)}`;
}

function answerFor(asked: AskedOpeningReport, manner: LinksManner): string {
  const { unit, nameOf } = manner;
  const what = `${nameOf(asked.pad)} at ${formatBoth(asked.askedFrontMm, unit)}`;
  const beyond = asked.stops.find(isBeyond);
  if (beyond !== undefined) {
    return `${what} cannot be had: ${nameOf(beyond.pad)} would have to open beyond its hinge’s reach.`;
  }
  const short = asked.stops.filter(isShort);
  if (short.length === 0) {
    const bare = asked.stops.filter((stop) => !isShown(stop)).map(({ pad }) => nameOf(pad));
    const though = bare.length === 0 ? '' : `, though not by more than can be shown: see ${listed(bare)}`;
    return `${what} is had as it stands${though}.`;
  }
  const most = short.reduce((a, b) => (b.raiseMm > a.raiseMm ? b : a));
  const raise = `${nameOf(most.pad)} by ${apart(most, manner)}`;
  return short.length === 1
    ? `${what} needs ${raise} more.`
    : `${what} needs ${short.length} stops raised, most of all ${raise}.`;
}

/** Rounded up to the tenth that a bench sets, so that what is asked is had. */
function proposalFor(asked: AskedOpeningReport): Readonly<Record<string, number>> | null {
  if (asked.stops.some(isBeyond)) return null;
  const short = asked.stops.filter(isShort);
  if (short.length === 0) return null;
  return Object.fromEntries(short.map((s) => [s.pad, Math.ceil(s.neededFrontMm * 10 - 1e-6) / 10]));
}
