import {
  FINGERINGS,
  holeOf,
  keySetupOf,
  padStates,
  type Budget,
  type Decision,
  type Horn,
  type VentingContext,
  type VentingPoint,
  type VentingStudy,
} from '../../acoustics/index.ts';
import { reportBudget, type BudgetReport, type NextReport } from '../../documents/uncertainty-report.ts';
import {
  reportPoint,
  reportVentingStudy,
  type NoteAtOpeningReport,
  type VentingPointReport,
  type VentingStudyReport,
} from '../../documents/venting-report.ts';

export type PointReport = VentingPointReport;

/** The key at one opening, and how sure the governed notes’ changes are from where it stands to there. */
export interface SurePointReport extends PointReport {
  /** null until the hand rests */
  readonly changeCents: readonly (BudgetReport | null)[] | null;
}
export type NoteReport = NoteAtOpeningReport;

/** A note the key governs. */
export interface GovernedReport {
  readonly id: string;
  readonly register: 1 | 2 | 3;
}

/** Where more height stops helping, or why that cannot be said. */
export type AnswerReport =
  | { readonly kind: 'reached'; readonly point: PointReport; readonly decidedBy: Decision }
  | {
      readonly kind: 'set by a link';
      readonly point: PointReport;
      readonly decidedBy: Decision;
      readonly driverName: string;
      readonly linkFrontMm: number;
    }
  | { readonly kind: 'none in reach'; readonly reachMm: number; readonly reason: string };

/** What the drawing needs, as the study used it. */
export interface PadGeometry {
  readonly hingeMm: number;
  readonly hingeHeightMm: number;
  readonly padRadiusMm: number;
  readonly padThicknessMm: number;
  readonly holeRadiusMm: number;
  readonly chimneyMm: number;
  readonly rimMm: number;
  readonly boreRadiusMm: number;
}

/**
 * A venting study as the screen shows it: the report of the study, its keys by their names, and with it what the
 * drawing and the strip of keys need. Plain data that can cross from the worker.
 */
export interface StudyReport extends Pick<
  VentingStudyReport,
  'present' | 'curve' | 'parallelCurve' | 'presentParallel' | 'warnings'
> {
  readonly keyId: string;
  readonly keyNumber: number;
  readonly keyName: string;
  readonly geometry: PadGeometry;
  readonly governed: readonly GovernedReport[];
  readonly answer: AnswerReport;
  /** how sure it is: the answer's and the present front, mm, the vent share, every governed note's cents */
  readonly budgets: {
    readonly answerMm: BudgetReport | null;
    readonly presentMm: BudgetReport;
    readonly ventShare: BudgetReport;
    readonly pitchCents: readonly (BudgetReport | null)[];
    readonly changeCents: readonly (BudgetReport | null)[];
    /** of the height every governed note gains up to the answer, dB */
    readonly gainDb: readonly (BudgetReport | null)[];
  };
  /** what to measure next for the answer, the best first */
  readonly next: readonly NextReport[];
  readonly stepMm: number;
  readonly stepCents: number;
  readonly stepShare: number;
  readonly holdsDown: readonly { readonly drivenName: string; readonly belowMm: number }[];
  /** set where a link holds the key below its own stop */
  readonly ruledBy: {
    readonly driverName: string;
    readonly frontMm: number;
    readonly ownFrontMm: number;
  } | null;
  readonly reachMm: number;
  /** written notes that sound when the pad is the first open one, by pad id */
  readonly vents: Readonly<Record<string, readonly string[]>>;
}

const TO_MM = 1000;

/** Makes an opening of a prepared key plain. @param changes of the governed notes, by fingering id; null where unknown */
export function makePointReport(
  { horn, governed }: VentingContext,
  point: VentingPoint,
  changes: ReadonlyMap<string, Budget> | null,
): SurePointReport {
  const changeCents = governed.map(({ fingering }) => {
    const budget = changes?.get(fingering.id);
    return budget === undefined ? null : reportBudget(horn, budget);
  });
  return { ...reportPoint(point), changeCents: changes === null ? null : changeCents };
}

/** Makes a whole study plain. */
export function makeStudyReport(study: VentingStudy): StudyReport {
  const { horn, governed } = study.context;
  const { key, thresholds, ruledBy, ...told } = reportVentingStudy(study);
  const { present, curve, parallelCurve, presentParallel, warnings } = told;
  const nameOf = (id: string): string => holeOf(horn, id).name;
  return {
    keyId: key.id,
    keyNumber: key.number,
    keyName: key.name,
    geometry: geometryOf(study),
    governed: governed.map(({ fingering: { id, register } }) => ({ id, register })),
    present,
    curve,
    parallelCurve,
    presentParallel,
    answer: answerReport(study, nameOf),
    budgets: {
      answerMm: told.diminishingReturn.frontMmBudget,
      presentMm: told.presentBudgets.frontMm,
      ventShare: told.presentBudgets.ventShare,
      pitchCents: told.notesBudgets.map(({ pitchCents }) => pitchCents),
      changeCents: told.notesBudgets.map(({ changeCents }) => changeCents),
      gainDb: told.notesBudgets.map(({ gainDb }) => gainDb),
    },
    next: told.diminishingReturn.next,
    stepMm: thresholds.stepMm,
    stepCents: thresholds.cents,
    stepShare: thresholds.ventShare,
    holdsDown: told.holdsDown.map(({ pad, belowFrontMm }) => ({
      drivenName: nameOf(pad),
      belowMm: belowFrontMm,
    })),
    ruledBy:
      ruledBy === null
        ? null
        : {
            driverName: nameOf(ruledBy.driver),
            frontMm: ruledBy.limitFrontMm,
            ownFrontMm: told.ownStopFrontMm,
          },
    reachMm: told.reachFrontMm,
    warnings,
    vents: ventedNotes(horn),
  };
}

function geometryOf({ context }: VentingStudy): PadGeometry {
  const { hole, setup } = context;
  const { padRadius, padThickness } = keySetupOf(setup, hole.id);
  return {
    hingeMm: hole.hinge!.distance * TO_MM,
    hingeHeightMm: hole.hinge!.height * TO_MM,
    padRadiusMm: padRadius * TO_MM,
    padThicknessMm: padThickness * TO_MM,
    holeRadiusMm: hole.holeRadius * TO_MM,
    chimneyMm: hole.chimney * TO_MM,
    rimMm: hole.rimThickness * TO_MM,
    boreRadiusMm: hole.boreRadius * TO_MM,
  };
}

function answerReport(
  { diminishingReturn: answer, context }: VentingStudy,
  nameOf: (id: string) => string,
): AnswerReport {
  if (answer.kind === 'none in reach') {
    return { kind: answer.kind, reachMm: context.reach * TO_MM, reason: answer.reason };
  }
  const { decidedBy } = answer;
  const point = reportPoint(answer.at);
  if (answer.kind === 'reached') return { kind: answer.kind, point, decidedBy };
  return {
    kind: answer.kind,
    point,
    decidedBy,
    driverName: nameOf(answer.driver),
    linkFrontMm: answer.linkFront * TO_MM,
  };
}

/**
 * Which written notes each pad vents: a pad at rest open vents the notes whose first open one it is, counted
 * from the mouthpiece; a pad at rest closed vents the lowest note that a fingering opens it for.
 */
export function ventedNotes(horn: Horn): Record<string, string[]> {
  const notes: Record<string, string[]> = {};
  const add = (id: string, note: string): void => {
    const known = (notes[id] ??= []);
    if (!known.includes(note)) known.push(note);
  };
  for (const fingering of FINGERINGS) {
    const states = padStates(horn.keywork, new Set(fingering.touches));
    const open = horn.holes.filter((hole) => {
      const state = states.get(hole.id)!;
      return hole.hinge !== null && state.open && state.front === undefined;
    });
    for (const { id } of open) {
      if (horn.keywork.rests.get(id) === 'closed' && notes[id] === undefined) add(id, fingering.note);
    }
    const first = open[0];
    if (fingering.register === 1 && first !== undefined && horn.keywork.rests.get(first.id) === 'open') {
      add(first.id, fingering.note);
    }
  }
  return notes;
}
