import type { LinkedPadReport, LinkReport, LinksReport } from '../../../../documents/links-report.ts';
import { FELT_MM } from '../../../../documents/lost-motion.ts';
import { formatBoth, type LengthUnit } from '../../../../documents/length-format.ts';
import { lengthBothWithPlusMinus } from '../../../../documents/length-plus-minus.ts';
import type { BudgetReport } from '../../../../documents/uncertainty-report.ts';
import { listed, noteLabel, signedCents, unbroken } from '../../../parts/note-names.ts';
import type { FollowedReport, MovedNoteReport } from '../../../state/followed-report.ts';
import type { Told } from '../../../state/stands-now.ts';
import { gapWords, papersOf } from '../gap-words.ts';

/** The answer about links in words, biggest first. */
export interface LinksAnswer {
  readonly headline: string;
  readonly standing: string;
  readonly sure: string;
  /** what the openings proposed or set do to the notes */
  readonly notes: string;
}

/** What the words need besides the numbers. */
export interface LinksManner {
  readonly unit: LengthUnit;
  nameOf(pad: string): string;
}

/** A pad that stands lower than its stop by less than this does not count as held, mm. */
export const HELD_MM = 0.05;
/** Two linked pads shut within about one paper. **Source:** common practice, no source. */
export const TOGETHER_PAPERS = 1;
/** What is said of a link that loses no motion: its arm rules. */
export const NO_LOST_MOTION = 'none';

/** A link's screw that leaves something open, mm: minus where it is the driver that is kept off. */
export interface OpenScrew {
  readonly driver: string;
  readonly driven: string;
  readonly leftMm: number;
}

/**
 * @param screws   what the links' screws leave
 * @param told     of what the report is; the words say so
 */
export function makeLinksAnswer(
  report: LinksReport,
  screws: readonly OpenScrew[],
  told: Told,
  followed: FollowedReport | null,
  manner: LinksManner,
): LinksAnswer {
  return {
    headline: unbroken(headline(report, screws, told, manner)),
    standing: unbroken(standing(report, manner)),
    sure: unbroken(sure(manner)),
    notes: unbroken(told === 'as found' ? '' : notesSentence(followed)),
  };
}

/** A length with its ± where that is known: `7.8 ± 0.4 mm (0.307 in)`. */
export function knownLength(mm: number, budget: BudgetReport | null, unit: LengthUnit): string {
  return budget === null ? formatBoth(mm, unit) : lengthBothWithPlusMinus(mm, budget.plusMinus, unit);
}

/** How sure it is where a pad stands; null where its own stop rules. */
export function standsBudget({ pad, ruledBy }: LinkedPadReport, { links }: LinksReport): BudgetReport | null {
  return links.find(({ driver, driven }) => driver === ruledBy && driven === pad)?.allowsBudget ?? null;
}

/** The arm that allows least; null where none can be said. */
export function tightestOf(onto: readonly LinkReport[]): LinkReport | null {
  const known = onto.filter(({ allowsFrontMm }) => allowsFrontMm !== null);
  return known.length === 0 ? null : known.reduce((a, b) => (b.allowsFrontMm! < a.allowsFrontMm! ? b : a));
}

/** Pads that an arm holds down, the most held first. */
export function heldPads({ pads }: LinksReport): LinkedPadReport[] {
  return pads
    .filter((p) => p.ruledBy !== null && p.ownFrontMm - p.standsFrontMm >= HELD_MM)
    .sort((a, b) => b.ownFrontMm - b.standsFrontMm - (a.ownFrontMm - a.standsFrontMm));
}

/** What is left open by more than a paper when a driver is pressed home, the widest first. */
export function leftOpen(report: LinksReport): { driver: string; pad: string; leftMm: number }[] {
  return report.together
    .flatMap(({ driver, driverLeftMm, driven }) => [
      { driver, pad: driver, leftMm: driverLeftMm },
      ...driven.map(({ pad, leftMm }) => ({ driver, pad, leftMm })),
    ])
    .filter(({ leftMm }) => papersOf(leftMm) > TOGETHER_PAPERS)
    .sort((a, b) => b.leftMm - a.leftMm);
}

function headline(
  report: LinksReport,
  screws: readonly OpenScrew[],
  told: Told,
  manner: LinksManner,
): string {
  const { unit, nameOf } = manner;
  const said = (text: string): string => (told === 'as found' ? capital(text) : `${capital(told)}, ${text}`);
  const [worst, ...others] = heldPads(report);
  if (worst !== undefined) {
    const more = others.length === 0 ? '' : `; ${listed(others.map((p) => nameOf(p.pad)))} too`;
    return said(
      `the ${nameOf(worst.ruledBy!)} key’s arm holds ${nameOf(worst.pad)} down at ` +
        `${knownLength(worst.standsFrontMm, standsBudget(worst, report), unit)}, ` +
        `${knownLength(worst.ownFrontMm - worst.standsFrontMm, worst.belowBudget, unit)} below its own stop${more}.`,
    );
  }
  const open = openScrews(screws);
  if (open.length > 0) return said(`${screwSentence(open[0], report, manner)}.`);
  return said('no link holds a pad down, and linked pads shut together within a paper.');
}

/** Screws that leave more than a paper, the widest first. */
function openScrews(screws: readonly OpenScrew[]): OpenScrew[] {
  return screws
    .filter(({ leftMm }) => papersOf(leftMm) > TOGETHER_PAPERS)
    .sort((a, b) => Math.abs(b.leftMm) - Math.abs(a.leftMm));
}

/** What one screw leaves, and under which other keys it shows. */
function screwSentence(
  { driver, driven, leftMm }: OpenScrew,
  report: LinksReport,
  { unit, nameOf }: LinksManner,
): string {
  const gap = gapWords(leftMm, unit);
  if (leftMm > 0) return `press ${nameOf(driver)} home and ${nameOf(driven)} is left open by ${gap}`;
  const also = [...new Set(leftOpen(report).map((l) => l.driver))].filter((pad) => pad !== driver);
  const under = also.length === 0 ? '' : `; it shows under ${listed(also.map(nameOf))} too`;
  return `press ${nameOf(driver)} home and ${nameOf(driven)}, shut first, keeps it open by ${gap}${under}`;
}

function standing(report: LinksReport, { unit, nameOf }: LinksManner): string {
  const parts: string[] = [];
  const open = leftOpen(report);
  if (heldPads(report).length > 0) {
    parts.push(
      open.length === 0
        ? 'Linked pads shut together within a paper.'
        : `Pressed home, ${nameOf(open[0].driver)} leaves ${nameOf(open[0].pad)} open by ${gapWords(open[0].leftMm, unit)}.`,
    );
  }
  const lost = mostLost(report);
  if (lost !== null) {
    const { link, mm, at } = lost;
    const budget = at === 'touch' ? link.lostAtTouchBudget : link.lostAtFrontBudget;
    parts.push(
      `Most lost motion: ${nameOf(link.driver)} goes ${knownLength(mm, budget, unit)} at its ${at} before ` +
        `${nameOf(link.driven)} stirs.`,
    );
  }
  const unknown = report.links.filter((l) => l.travelRatio === null);
  if (unknown.length > 0) {
    parts.push(
      `What ${listed(unknown.map((l) => `${nameOf(l.driver)} to ${nameOf(l.driven)}`))} allow${unknown.length === 1 ? 's' : ''} cannot be said: ` +
        'the ratio is not known.',
    );
  }
  return parts.join(' ');
}

/** The greatest lost motion, at the touch where that is known. */
function mostLost(report: LinksReport): { link: LinkReport; mm: number; at: 'touch' | 'front' } | null {
  let most: { link: LinkReport; mm: number; at: 'touch' | 'front' } | null = null;
  for (const link of report.links) {
    const mm = link.lostAtTouchMm ?? link.lostAtFrontMm;
    if (mm === null || mm < HELD_MM || (most !== null && mm <= most.mm)) continue;
    most = { link, mm, at: link.lostAtTouchMm === null ? 'front' : 'touch' };
  }
  return most;
}

function sure({ unit }: LinksManner): string {
  return (
    'Each ± comes from the readings of the fronts and from the travel ratio. ' +
    `Lost motion is felt from about ${formatBoth(FELT_MM, unit)} at the touch.`
  );
}

function notesSentence(followed: FollowedReport | null): string {
  if (followed === null) return 'What the notes make of it is on its way…';
  const { suffering, notes, gaining } = followed;
  const gain = gaining === 0 ? '' : ` ${gaining} ${gaining === 1 ? 'gains' : 'gain'}.`;
  if (suffering.length === 0) {
    return `No note loses more than a cent or a tenth of a decibel.${gain}`;
  }
  return `${suffering.length} of ${notes} notes suffer, ${noteLabel(suffering[0].id)} most: ${noteChange(suffering[0])}.${gain}`;
}

/** `−6.5 cents, −0.4 dB`, or `lost`. */
export function noteChange({ cents, heightDb }: MovedNoteReport): string {
  if (cents === null || heightDb === null) return 'lost';
  return `${signedCents(cents)} cents, ${signedCents(heightDb)} dB`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
