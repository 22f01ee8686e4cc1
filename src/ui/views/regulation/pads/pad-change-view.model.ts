import { keyedHoles } from '../../../../documents/horn-document.ts';
import type { LengthUnit } from '../../../../documents/length-format.ts';
import type { ChangedPadReport, PadChangeReport } from '../../../../documents/pad-change-report.ts';
import { noteLabel, signedCents } from '../../../parts/note-names.ts';
import { isWaiting, reportFor } from '../../../state/asked-answer.ts';
import { documentsInHand, hornInHand, type BenchState } from '../../../state/bench-state.ts';
import { thickerBy, type PadChangePlan } from '../../../state/pads-state.ts';
import type { Reason } from '../../../state/reasons.ts';
import { restoreReason } from './pad-change-reasons.model.ts';
import { textInField } from '../../../state/text-in-field.ts';
import { fineBoth, fineLength, signedLength } from './fine-lengths.ts';
import { changeAnswer, type ChangeAnswer } from './pad-change-words.ts';

/** One key before and after, as the picture and the table show it. */
export interface ChangedRow {
  readonly id: string;
  readonly number: number;
  readonly name: string;
  readonly thicker: string;
  readonly front: string;
  readonly centre: string;
  readonly share: string;
  readonly restore: string;
  /** why the stop has to move so; null where its hinge cannot */
  readonly reason: Reason | null;
  readonly cork: string;
  readonly droppedIn: string;
  /** shares of the widest front on the page */
  readonly before: number;
  readonly after: number;
  readonly restored: number | null;
}

/** One note, as the picture and the table show it. */
export interface MovedRow {
  readonly id: string;
  readonly note: string;
  readonly cents: string;
  readonly db: string;
  /** −1…1 of the note that moves most; 0 where it is lost */
  readonly reach: number;
}

/** A thickness to choose with one touch. */
export interface ThicknessChoice {
  readonly mm: number;
  readonly label: string;
  readonly chosen: boolean;
}

/** The page of other pads. */
export interface PadChangeView {
  readonly unit: LengthUnit;
  readonly plan: PadChangePlan;
  readonly answer: ChangeAnswer;
  readonly waiting: boolean;
  readonly cautions: readonly string[];
  readonly choices: readonly ThicknessChoice[];
  readonly field: {
    readonly label: string;
    readonly text: string;
    readonly echo: string;
    readonly problem: string | null;
  };
  readonly keyWords: string;
  readonly rows: readonly ChangedRow[];
  readonly notes: readonly MovedRow[];
  readonly links: readonly string[];
}

/** Changes offered with one touch, mm. */
const STEPS_MM = [-0.5, -0.25, 0.25, 0.5] as const;

/** Rows of notes the picture shows; the table has all. */
const NO_MOVE_CENTS = 0.05;
const SAME_MM = 0.005;

export function makePadChangeView(state: BenchState): PadChangeView {
  const { unit, pads, hornId } = state;
  const { plan, planTyped, change, stock, toldPlan } = pads;
  const documents = documentsInHand(state);
  const holes = keyedHoles(documents.horn);
  const names = new Map(holes.map((h) => [h.id, h.name]));
  const { keyId } = hornInHand(state);
  const thicker = thickerBy(documents, plan, keyId);
  const isNothing = Object.keys(thicker).length === 0;
  const report = isNothing || change.problem !== null ? null : reportFor(change, hornId);
  const context = { names, unit, plan: toldPlan, keys: holes.length };
  return {
    unit,
    plan,
    answer: report === null ? withoutReport(isNothing, change.problem, plan) : changeAnswer(report, context),
    waiting: !isNothing && change.problem === null && isWaiting(change, hornId),
    cautions: report?.warnings ?? [],
    choices: makeChoices(plan, stock.thicknessesMm, unit),
    field: makeField(plan, planTyped, unit),
    keyWords: names.get(keyId) ?? keyId,
    rows: report === null ? [] : makeRows(report, holes, unit),
    notes: report === null ? [] : makeNotes(report),
    links: report === null ? [] : linkLines(report, names, unit),
  };
}

function withoutReport(isNothing: boolean, problem: string | null, plan: PadChangePlan): ChangeAnswer {
  if (isNothing) {
    return {
      headline: plan.scope === 'all' ? 'Every pad is so thick already.' : 'This pad is so thick already.',
      standing: 'Choose another thickness to see what it does at the same stops.',
      reasons: [],
      figures: [],
    };
  }
  if (problem !== null) {
    return { headline: 'These pads cannot be put in.', standing: problem, reasons: [], figures: [] };
  }
  return { headline: 'Playing the horn with the other pads…', standing: '', reasons: [], figures: [] };
}

function makeChoices(plan: PadChangePlan, classes: readonly number[], unit: LengthUnit): ThicknessChoice[] {
  const offered = plan.how === 'to' ? classes : STEPS_MM;
  return offered.map((mm) => ({
    mm,
    label: plan.how === 'to' ? fineLength(mm, unit) : signedLength(mm, unit),
    chosen: Math.abs(mm - plan.mm) < SAME_MM,
  }));
}

function makeField(
  plan: PadChangePlan,
  typed: Parameters<typeof textInField>[0] | null,
  unit: LengthUnit,
): PadChangeView['field'] {
  const shown = plan.how === 'to' ? fineLength(plan.mm, unit) : signedLength(plan.mm, unit);
  const problem = typed?.problem ?? null;
  return {
    label: plan.how === 'to' ? 'New pads are' : 'Thicker by',
    text: textInField(typed ?? undefined, plan.mm, shown),
    echo: plan.how === 'to' ? fineBoth(plan.mm, unit) : `${fineBoth(plan.mm, unit)}, minus for thinner`,
    problem:
      problem === null
        ? null
        : `${problem.charAt(0).toUpperCase()}${problem.slice(1)}. Still in use: ${fineBoth(plan.mm, unit)}.`,
  };
}

function makeRows(
  { pads }: PadChangeReport,
  holes: readonly { readonly id: string; readonly number: number; readonly name: string }[],
  unit: LengthUnit,
): ChangedRow[] {
  const widest = Math.max(
    ...pads.map((p) => Math.max(p.before.frontMm, p.after.frontMm, p.restored?.frontMm ?? 0)),
    0.1,
  );
  const change = (before: number, after: number): string =>
    `${fineLength(before, unit).replace(/ \w+$/, '')} → ${fineLength(after, unit)}`;
  return pads.map((pad): ChangedRow => {
    const hole = holes.find((h) => h.id === pad.pad)!;
    return {
      ...{ id: pad.pad, number: hole.number, name: hole.name },
      thicker: signedLength(pad.thickerMm, unit),
      front: change(pad.before.frontMm, pad.after.frontMm),
      centre: change(pad.before.centreMm, pad.after.centreMm),
      share: `${percent(pad.ventShareBefore)} → ${percent(pad.ventShareAfter)} %`,
      restore: restoreWords(pad, unit),
      reason: restoreReason(pad, hole.name, restoreWords(pad, unit), unit),
      cork: corkWords(pad, unit),
      droppedIn: contactWords(pad, unit),
      before: pad.before.frontMm / widest,
      after: pad.after.frontMm / widest,
      restored: pad.restored === null ? null : pad.restored.frontMm / widest,
    };
  });
}

const percent = (share: number): string => (100 * share).toFixed(1);

function restoreWords({ restored }: ChangedPadReport, unit: LengthUnit): string {
  if (restored === null) return 'beyond its hinge';
  return `${fineLength(restored.frontMm, unit)} (${signedLength(restored.raiseMm, unit)})`;
}

function corkWords({ restored }: ChangedPadReport, unit: LengthUnit): string {
  const mm = restored?.thinnerCorkMm ?? null;
  if (mm === null) return restored === null ? '' : 'foot not measured';
  return `${fineLength(Math.abs(mm), unit)} ${mm > 0 ? 'thinner' : 'thicker'}`;
}

function contactWords({ droppedIn }: ChangedPadReport, unit: LengthUnit): string {
  if (droppedIn.gapMm < SAME_MM) return 'all round';
  const far = droppedIn.touches === 'back' ? 'front' : 'back';
  return `${droppedIn.touches} first, ${far} ${fineLength(droppedIn.gapMm, unit)} open`;
}

/** Notes that move, the most first; then those that do not. */
function makeNotes({ notes }: PadChangeReport): MovedRow[] {
  const size = (cents: number | null): number => (cents === null ? Infinity : Math.abs(cents));
  const most = Math.max(NO_MOVE_CENTS, ...notes.map((n) => Math.abs(n.changeCents ?? 0)));
  return [...notes]
    .filter((n) => n.before !== null)
    .sort((a, b) => size(b.changeCents) - size(a.changeCents))
    .map(({ fingering, changeCents, changeDb }): MovedRow => ({
      id: fingering,
      note: noteLabel(fingering),
      cents: changeCents === null ? 'lost' : signedCents(changeCents),
      db: changeDb === null ? '' : signedDb(changeDb),
      reach: changeCents === null ? 0 : changeCents / most,
    }));
}

function signedDb(db: number): string {
  const digits = Math.abs(db).toFixed(2);
  if (Number(digits) === 0) return '0.00';
  return `${db < 0 ? '−' : '+'}${digits}`;
}

function linkLines(
  { links }: PadChangeReport,
  names: ReadonlyMap<string, string>,
  unit: LengthUnit,
): string[] {
  return [...links]
    .sort((a, b) => Math.abs(b.leftPapers) - Math.abs(a.leftPapers))
    .map(({ driver, driven, leftMm, leftPapers }) => {
      const [from, to] = [driver, driven].map((id) => names.get(id) ?? id);
      const papers = `${Math.abs(leftPapers).toFixed(1)} papers (${fineLength(Math.abs(leftMm), unit)})`;
      return leftMm > 0
        ? `${from} shut leaves ${to} ${papers} open at its front.`
        : `${to} shut keeps ${from} ${papers} off at its front.`;
    });
}
