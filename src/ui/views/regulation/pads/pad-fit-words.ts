import type { LengthUnit } from '../../../../documents/length-format.ts';
import type { StockDocument } from '../../../../documents/stock-document.ts';
import { listed, unbroken } from '../../../parts/note-names.ts';
import { fineBoth, fineRange } from './fine-lengths.ts';
import type { FittedCups, FittedOutcome } from './pad-fit.model.ts';

/** The answer in words, biggest first. */
export interface FitAnswer {
  readonly headline: string;
  readonly standing: string;
  readonly reasons: readonly string[];
}

/** So many keys are named. */
const NAMED = 4;

export function fitAnswer(
  outcome: FittedOutcome,
  stock: StockDocument,
  names: ReadonlyMap<string, string>,
  unit: LengthUnit,
): FitAnswer {
  const reasons = [
    `Reckoned with a seat ${fineBoth(stock.seatMm, unit)} deep unless typed by key, and a bed of ${fineRange(stock.leastBedMm, stock.mostBedMm, unit)}. Of the thicknesses that fit, the thickest is taken: a thick pad serves better than a thick bed.`,
  ];
  if (!outcome.ok) {
    return { headline: 'This horn’s pads cannot be fitted yet.', standing: outcome.message, reasons };
  }
  const cups = outcome.value;
  const answer = {
    headline: headline(cups, names, unit),
    standing: standing(cups, names),
    reasons,
  };
  return { ...answer, headline: unbroken(answer.headline), standing: unbroken(answer.standing) };
}

function headline(
  { fits, problems, keys }: FittedCups,
  names: ReadonlyMap<string, string>,
  unit: LengthUnit,
): string {
  if (fits.length === 0 && problems.size === 0) return 'Measure a cup to see which pad it takes.';
  const without = fits.filter((fit) => !fit.fits);
  if (without.length === 0) {
    const all = fits.length === keys;
    return `${all ? `All ${keys} cups` : count(fits.length, 'cup measured', 'cups measured')} ${fits.length === 1 ? 'takes' : 'take'} a pad from your stock.`;
  }
  const named = without.slice(0, NAMED).map((fit) => {
    const { from, to } = fit.wantedMm!;
    return `${names.get(fit.pad) ?? fit.pad} (${fineRange(Math.max(0, from), to, unit)})`;
  });
  const more = without.length - named.length;
  return `${without.length} of ${fits.length} measured cups want${without.length === 1 ? 's' : ''} a thickness you do not have: ${listed([...named, ...(more > 0 ? [`${more} more`] : [])])}.`;
}

function standing({ fits, problems, keys }: FittedCups, names: ReadonlyMap<string, string>): string {
  const known = fits.length + problems.size;
  const rest = keys - known;
  if (known === 0) {
    return 'Hold the cup parallel to its rim, read from the cup’s floor to the rim, and type it below. Without a reading no pad can be chosen: cups differ from one to the next on the same horn.';
  }
  const near = fits.filter((fit) => fit.fits && !fit.wholeBatch).map((fit) => names.get(fit.pad) ?? fit.pad);
  return [
    rest === 0 ? 'Every cup is measured.' : `${count(rest, 'cup is', 'cups are')} still to measure.`,
    ...(near.length === 0
      ? []
      : [`Not every pad of a batch suits ${listed(near)}: measure each before the adhesive.`]),
  ].join(' ');
}

function count(n: number, one: string, many: string): string {
  return n === 1 ? `One ${one}` : `${n} ${many}`;
}
