import {
  DB_PER_NEPER,
  DEFAULT_PAD_MODEL,
  scaledBudget,
  type Budget,
  type DiminishingReturn,
  type VentingPoint,
  type VentingStudy,
} from '../acoustics/index.ts';
import { reportBudget, reportNext, type BudgetReport, type NextReport } from './uncertainty-report.ts';

/** One governed note at one opening, bench units; null where its resonance is lost. */
export interface NoteAtOpeningReport {
  readonly hz: number;
  /** from the present opening */
  readonly fromPresentCents: number;
  /** from equal temperament */
  readonly pitchCents: number;
  readonly heightRatio: number;
  /** height as a share of that with no pad over this hole */
  readonly strength: number;
  readonly q: number;
  readonly riseMs: number;
}

/** The key at one opening, bench units. */
export interface VentingPointReport {
  readonly frontMm: number;
  readonly centreMm: number;
  readonly backMm: number;
  readonly angleDeg: number;
  readonly equivalentParallelMm: number;
  readonly endCorrectionMm: number | null;
  readonly ventShare: number;
  readonly notes: readonly (NoteAtOpeningReport | null)[];
}

/** The point of diminishing return, bench units. */
export interface DiminishingReturnReport {
  readonly kind: DiminishingReturn['kind'];
  readonly point: VentingPointReport | null;
  readonly decidedBy: string | null;
  /** of the point's front opening, mm; null where there is none, or the least opening decides */
  readonly frontMmBudget: BudgetReport | null;
  /** what to measure next, the best first */
  readonly next: readonly NextReport[];
  readonly link: { readonly driver: string; readonly limitFrontMm: number } | null;
  readonly reason: string | null;
}

/** The venting study of one key, bench units. */
export interface VentingStudyReport {
  readonly horn: string;
  readonly key: { readonly number: number; readonly id: string; readonly name: string };
  readonly padModel: { readonly id: string; readonly relativeError: number };
  readonly reachFrontMm: number;
  readonly thresholds: { readonly stepMm: number; readonly cents: number; readonly ventShare: number };
  readonly governed: readonly {
    readonly fingering: string;
    readonly note: string;
    readonly register: number;
    readonly targetHz: number;
  }[];
  readonly present: VentingPointReport;
  /** how sure the present is: its front, mm, and its vent share */
  readonly presentBudgets: { readonly frontMm: BudgetReport; readonly ventShare: BudgetReport };
  /** one entry per governed note: of its present pitch, and of its changes to the point of diminishing return */
  readonly notesBudgets: readonly {
    readonly pitchCents: BudgetReport | null;
    readonly changeCents: BudgetReport | null;
    /** of the height its resonance gains there, dB */
    readonly gainDb: BudgetReport | null;
  }[];
  readonly ownStopFrontMm: number;
  readonly ruledBy: { readonly driver: string; readonly limitFrontMm: number } | null;
  readonly holdsDown: readonly { readonly pad: string; readonly belowFrontMm: number }[];
  readonly diminishingReturn: DiminishingReturnReport;
  readonly curve: readonly VentingPointReport[];
  /** the same front openings with a pad that rises parallel to the rim */
  readonly parallelCurve: readonly VentingPointReport[];
  /** as it stands, were the pad parallel at the same front opening */
  readonly presentParallel: VentingPointReport;
  readonly warnings: readonly string[];
}

const TO_MM = 1000;
const toMm = (metres: number): number => TO_MM * metres;

/** One point in bench units. */
export function reportPoint(point: VentingPoint): VentingPointReport {
  return {
    frontMm: toMm(point.pose.front),
    centreMm: toMm(point.pose.centre),
    backMm: toMm(point.pose.back),
    angleDeg: (point.pose.angle * 180) / Math.PI,
    equivalentParallelMm: toMm(point.end.equivalentParallel),
    endCorrectionMm: Number.isFinite(point.end.length) ? toMm(point.end.length) : null,
    ventShare: point.ventShare,
    notes: point.notes.map((note) =>
      note === null
        ? null
        : {
            hz: note.frequency,
            fromPresentCents: note.cents,
            pitchCents: note.pitchCents,
            heightRatio: note.height,
            strength: note.strength,
            q: note.q,
            riseMs: 1000 * note.riseTime,
          },
    ),
  };
}

/** A study in bench units. */
export function reportVentingStudy(study: VentingStudy): VentingStudyReport {
  const { context, thresholds } = study;
  const { hole, standing } = context;
  const inDecibels = new Map(
    [...study.budgets.heights].map(([id, budget]) => [id, scaledBudget(budget, DB_PER_NEPER)]),
  );
  const { id, relativeError } = context.options.padModel ?? DEFAULT_PAD_MODEL;
  return {
    horn: context.horn.name,
    key: { number: hole.number, id: hole.id, name: hole.name },
    padModel: { id, relativeError },
    reachFrontMm: toMm(context.reach),
    thresholds: { stepMm: toMm(thresholds.step), cents: thresholds.cents, ventShare: thresholds.share },
    governed: context.governed.map(({ fingering, target }) => ({
      fingering: fingering.id,
      note: fingering.note,
      register: fingering.register,
      targetHz: target,
    })),
    present: reportPoint(study.present),
    presentBudgets: {
      frontMm: reportBudget(context.horn, study.budgets.front, TO_MM),
      ventShare: reportBudget(context.horn, study.budgets.ventShare),
    },
    notesBudgets: context.governed.map(({ fingering }) => {
      const of = (budgets: ReadonlyMap<string, Budget>): BudgetReport | null => {
        const budget = budgets.get(fingering.id);
        return budget === undefined ? null : reportBudget(context.horn, budget);
      };
      return {
        pitchCents: of(study.budgets.notes),
        changeCents: of(study.budgets.changes),
        gainDb: of(inDecibels),
      };
    }),
    ownStopFrontMm: toMm(standing.ownFront),
    ruledBy:
      standing.ruledBy === null
        ? null
        : { driver: standing.ruledBy.driver, limitFrontMm: toMm(standing.ruledBy.front) },
    holdsDown: study.holdsDown.map(({ driven, below }) => ({ pad: driven, belowFrontMm: toMm(below) })),
    diminishingReturn: reportReturn(study),
    curve: study.curve.map(reportPoint),
    parallelCurve: study.parallelCurve.map(reportPoint),
    presentParallel: reportPoint(study.presentParallel),
    warnings: study.warnings,
  };
}

function reportReturn(study: VentingStudy): DiminishingReturnReport {
  const outcome = study.diminishingReturn;
  const { horn } = study.context;
  const budget = study.budgets.diminishingReturn;
  const sure = {
    frontMmBudget: budget === null ? null : reportBudget(horn, budget, TO_MM),
    next: budget === null ? [] : reportNext(horn, budget, TO_MM),
  };
  if (outcome.kind === 'none in reach') {
    return {
      kind: outcome.kind,
      point: null,
      decidedBy: null,
      ...sure,
      link: null,
      reason: outcome.reason,
    };
  }
  const decidedBy =
    outcome.decidedBy.by === 'pitch' ? `pitch of ${outcome.decidedBy.fingering}` : outcome.decidedBy.by;
  const link =
    outcome.kind === 'set by a link'
      ? { driver: outcome.driver, limitFrontMm: toMm(outcome.linkFront) }
      : null;
  return {
    kind: outcome.kind,
    point: reportPoint(outcome.at),
    decidedBy,
    ...sure,
    link,
    reason:
      link === null
        ? null
        : `the arm from ${link.driver} lets it open no further than ${link.limitFrontMm.toFixed(2)} mm`,
  };
}
