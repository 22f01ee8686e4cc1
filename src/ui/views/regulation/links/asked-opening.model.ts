import { askOpening } from '../../../../acoustics/index.ts';
import { formatBoth, formatLength } from '../../../../documents/length-format.ts';
import { reportAskedOpening, type AskedOpeningReport } from '../../../../documents/links-report.ts';
import { unbroken } from '../../../parts/note-names.ts';
import type { BenchState } from '../../../state/bench-state.ts';
import { askedTextKey } from '../../../state/links-state.ts';
import { textInField } from '../../../state/text-in-field.ts';
import { sentence, type FieldView } from '../../key-study/measured-fields.model.ts';
import type { LoadedLinks } from './loaded-links.ts';
import type { LinksManner } from './links-words.ts';

/** One stop of the pads on the way. */
export interface AskedStopRow {
  readonly pad: string;
  readonly needed: string;
  /** `raise by 0.4 mm (0.016 in)`, `enough as it is`, or why it cannot */
  readonly raise: string;
  readonly short: boolean;
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

const MM = 1e-3;

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
  const asked =
    frontMm === null
      ? null
      : reportAskedOpening(
          padId,
          frontMm * MM,
          askOpening(facts.horn, loaded.setup, padId, frontMm * MM, facts.screws),
        );
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
    rows: (asked?.stops ?? []).map((stop) => stopRow(stop, manner)),
    ratios: (asked?.ratios ?? []).map((r) =>
      unbroken(
        `or leave ${nameOf(r.driver)} where it is and change its ratio onto ${nameOf(r.driven)} from ` +
          `${r.presentRatio.toFixed(2)} to ${r.neededRatio.toFixed(2)}`,
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

function stopRow(stop: Stop, { unit, nameOf }: LinksManner): AskedStopRow {
  const short = isShort(stop);
  return {
    pad: nameOf(stop.pad),
    needed: formatBoth(stop.neededFrontMm, unit),
    raise: unbroken(
      isBeyond(stop)
        ? `its hinge reaches ${formatBoth(stop.largestFrontMm!, unit)} only`
        : short
          ? `raise by ${formatBoth(stop.raiseMm, unit)}`
          : 'enough as it is',
    ),
    short,
  };
}

function answerFor(asked: AskedOpeningReport, { unit, nameOf }: LinksManner): string {
  const what = `${nameOf(asked.pad)} at ${formatBoth(asked.askedFrontMm, unit)}`;
  const beyond = asked.stops.find(isBeyond);
  if (beyond !== undefined) {
    return `${what} cannot be had: ${nameOf(beyond.pad)} would have to open beyond its hinge’s reach.`;
  }
  const short = asked.stops.filter(isShort);
  if (short.length === 0) return `${what} is had as it stands.`;
  const most = short.reduce((a, b) => (b.raiseMm > a.raiseMm ? b : a));
  const raise = `${nameOf(most.pad)} by ${formatBoth(most.raiseMm, unit)}`;
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
