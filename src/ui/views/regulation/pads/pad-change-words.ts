import type { LengthUnit } from '../../../../documents/length-format.ts';
import type {
  ChangedPadReport,
  FollowedNoteReport,
  PadChangeReport,
} from '../../../../documents/pad-change-report.ts';
import { listed, noteLabel, signedCents, unbroken } from '../../../parts/note-names.ts';
import type { Reason } from '../../../state/reasons.ts';
import { movedReason } from './pad-change-reasons.model.ts';
import type { PadChangePlan } from '../../../state/pads-state.ts';
import { fineBoth, fineLength, fineRange } from './fine-lengths.ts';

/** The answer in words, biggest first. */
export interface ChangeAnswer {
  readonly headline: string;
  readonly standing: string;
  readonly reasons: readonly string[];
  /** of the figures in the headline */
  readonly figures: readonly Reason[];
}

/** What the words need besides the report. */
export interface ChangeContext {
  readonly names: ReadonlyMap<string, string>;
  readonly unit: LengthUnit;
  readonly plan: PadChangePlan;
  /** keys the horn has */
  readonly keys: number;
}

/** So small a move is told as none: a tenth of a cent, a tenth of a decibel. */
const NO_CENTS = 0.05;
const NO_DB = 0.05;

export function changeAnswer(report: PadChangeReport, context: ChangeContext): ChangeAnswer {
  return {
    headline: unbroken(headline(report, context)),
    standing: unbroken(standing(report, context)),
    reasons: [restoring(report, context), linksPutOut(report, context), droppedIn(report, context)]
      .filter((text) => text !== '')
      .map(unbroken),
    figures: movedFigures(report),
  };
}

const extent = (numbers: readonly number[]): [number, number] => [Math.min(...numbers), Math.max(...numbers)];

/** The note that moves most, with its way. */
export function mostMoved(notes: readonly FollowedNoteReport[]): FollowedNoteReport | null {
  return notes.reduce<FollowedNoteReport | null>(
    (most, note) =>
      note.changeCents !== null && Math.abs(note.changeCents) > Math.abs(most?.changeCents ?? 0)
        ? note
        : most,
    null,
  );
}

function headline({ pads, notes }: PadChangeReport, { names, unit, plan, keys }: ChangeContext): string {
  const lost = pads.map((p) => p.before.frontMm - p.after.frontMm);
  const [least, most] = extent(lost);
  const isOne = pads.length === 1;
  const which =
    plan.how === 'to'
      ? isOne
        ? `A pad of ${fineBoth(plan.mm, unit)}`
        : `${fineBoth(plan.mm, unit)} pads`
      : `${isOne ? 'A pad' : 'Pads'} ${fineBoth(Math.abs(plan.mm), unit)} ${plan.mm > 0 ? 'thicker' : 'thinner'}`;
  const where = isOne
    ? `on ${names.get(pads[0].pad) ?? pads[0].pad}`
    : pads.length === keys
      ? `on all ${keys} keys`
      : `on ${pads.length} keys`;
  const by = frontsMove(least, most, isOne, unit);
  const note = mostMoved(notes);
  const moved =
    note === null || Math.abs(note.changeCents!) < NO_CENTS
      ? 'no note moves'
      : `${noteLabel(note.fingering)} moves most, ${signedCents(note.changeCents!)} cents`;
  return `${which} ${where}, stops as they are, ${by}; ${moved}.`;
}

function movedFigures({ notes }: PadChangeReport): Reason[] {
  const note = mostMoved(notes);
  if (note === null || Math.abs(note.changeCents!) < NO_CENTS) return [];
  return [movedReason(note, unbroken(`${signedCents(note.changeCents!)} cents`))];
}

/** @param least of what fronts lose, mm; minus where they gain */
function frontsMove(least: number, most: number, isOne: boolean, unit: LengthUnit): string {
  const fronts = isOne ? 'front' : 'fronts';
  if (least >= 0) return `${isOne ? 'takes' : 'take'} ${fineRange(least, most, unit)} off the ${fronts}`;
  if (most <= 0) return `${isOne ? 'gives' : 'give'} ${fineRange(-most, -least, unit)} more at the ${fronts}`;
  return `take up to ${fineLength(most, unit)} off some fronts and give up to ${fineLength(-least, unit)} at others`;
}

function standing({ pads, notes }: PadChangeReport, { names }: ChangeContext): string {
  const shares = pads.map((p) => 100 * (p.ventShareAfter - p.ventShareBefore));
  const worst = shares.reduce((a, share, i) => (Math.abs(share) > Math.abs(shares[a]) ? i : a), 0);
  const share = `Vent share ${shares[worst] < 0 ? 'falls' : 'rises'} by ${Math.abs(shares[worst]).toFixed(1)} points${pads.length === 1 ? '' : ` at most (${names.get(pads[worst].pad) ?? ''})`}`;
  const heights = notes.filter((n) => n.changeDb !== null && Math.abs(n.changeDb) >= NO_DB);
  const loudest = heights.reduce<FollowedNoteReport | null>(
    (a, n) => (a === null || Math.abs(n.changeDb!) > Math.abs(a.changeDb!) ? n : a),
    null,
  );
  const gone = notes.filter((n) => n.before !== null && n.after === null);
  const strength =
    gone.length > 0
      ? `${listed(gone.map((n) => noteLabel(n.fingering)))} no longer ${gone.length === 1 ? 'sounds' : 'sound'}`
      : loudest === null
        ? 'no note gains or loses 0.1 dB of strength'
        : `strength changes most on ${noteLabel(loudest.fingering)}, ${loudest.changeDb! < 0 ? '−' : '+'}${Math.abs(loudest.changeDb!).toFixed(1)} dB`;
  return `${share}; ${strength}.`;
}

function restoring({ pads }: PadChangeReport, { names, unit }: ChangeContext): string {
  const able = pads.filter((p) => p.restored !== null);
  const unable = pads.filter((p) => p.restored === null).map((p) => names.get(p.pad) ?? p.pad);
  const parts: string[] = [];
  if (able.length > 0) {
    const [low, high] = extent(able.map((p) => p.restored!.raiseMm));
    const fronts = pads.length === 1 ? 'front' : 'fronts';
    const move =
      low >= 0
        ? `raise the ${fronts} by ${fineRange(low, high, unit)}`
        : high <= 0
          ? `lower the ${fronts} by ${fineRange(-high, -low, unit)}`
          : `lower some fronts by up to ${fineLength(-low, unit)} and raise others by up to ${fineLength(high, unit)}`;
    parts.push(`For the old venting ${move}${low < 0 && high > 0 ? '' : corkWords(able, unit)}.`);
  }
  if (unable.length > 0)
    parts.push(
      `${listed(unable)} cannot be opened so far by ${unable.length === 1 ? 'its hinge' : 'their hinges'}.`,
    );
  return parts.join(' ');
}

function corkWords(pads: readonly ChangedPadReport[], unit: LengthUnit): string {
  const known = pads.flatMap((p) => (p.restored!.thinnerCorkMm === null ? [] : [p.restored!.thinnerCorkMm]));
  if (known.length === 0) return '; how much cork that is needs the rod to foot cork measured';
  const [low, high] = extent(known.map(Math.abs));
  return `, foot cork${pads.length === 1 ? '' : 's'} ${fineRange(low, high, unit)} ${known[0] > 0 ? 'thinner' : 'thicker'}`;
}

function linksPutOut({ links }: PadChangeReport, { names }: ChangeContext): string {
  const worst = [...links].sort((a, b) => Math.abs(b.leftPapers) - Math.abs(a.leftPapers))[0];
  if (worst === undefined || Math.abs(worst.leftPapers) < 0.5) return '';
  const [driver, driven] = [worst.driver, worst.driven].map((id) => names.get(id) ?? id);
  const most = Math.abs(worst.leftPapers);
  return `New pads mean new regulation: links are put out by up to ${most.toFixed(0)} paper${most < 1.5 ? '' : 's'} (${driver} onto ${driven}).`;
}

function droppedIn({ pads, seating }: PadChangeReport, { names, unit }: ChangeContext): string {
  const worst = pads.reduce((a, p) => (p.droppedIn.gapMm > a.droppedIn.gapMm ? p : a), pads[0]);
  const { touches, gapMm } = worst.droppedIn;
  if (gapMm < 0.005) return '';
  const far = touches === 'back' ? 'front' : 'back';
  const name = names.get(worst.pad) ?? worst.pad;
  const gapes = `the ${touches} touches first and the ${far} gapes, ${pads.length === 1 ? '' : 'up to '}${fineLength(gapMm, unit)}${pads.length === 1 ? '' : ` (${name})`}`;
  return seating === 'levelled'
    ? `Reckoned with ${pads.length === 1 ? 'the pad' : 'every pad'} levelled. Dropped in as ${pads.length === 1 ? 'it is' : 'they are'}, ${gapes}.`
    : `Dropped in as ${pads.length === 1 ? 'it is' : 'they are'}, ${gapes}: ${pads.length === 1 ? 'it does' : 'they do'} not seal until levelled.`;
}
