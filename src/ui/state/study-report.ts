import {
  FINGERINGS,
  holeOf,
  keySetupOf,
  padStates,
  type Budget,
  type Decision,
  type Horn,
  type VentingPoint,
  type VentingStudy,
} from '../../acoustics/index.ts';
import {
  reportBudget,
  reportNext,
  type BudgetReport,
  type NextReport,
} from '../../documents/uncertainty-report.ts';

/** One governed note at one opening, in bench units. */
export interface NoteReport {
  readonly frequencyHz: number;
  /** from the present setting */
  readonly cents: number;
  /** from equal temperament */
  readonly pitchCents: number;
  /** resonance height as a share of that with no pad */
  readonly strength: number;
  readonly riseMs: number;
}

/** The key at one opening, in bench units. */
export interface PointReport {
  readonly frontMm: number;
  readonly centreMm: number;
  readonly backMm: number;
  readonly ventShare: number;
  /** the opening of a parallel pad that vents the same */
  readonly equivalentParallelMm: number;
  readonly notes: readonly (NoteReport | null)[];
}

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

/** A venting study as plain data that can cross from the worker to the screen. */
export interface StudyReport {
  readonly keyId: string;
  readonly keyNumber: number;
  readonly keyName: string;
  readonly geometry: PadGeometry;
  readonly governed: readonly GovernedReport[];
  readonly present: PointReport;
  readonly curve: readonly PointReport[];
  /** the same front openings, were the pad parallel to its rim */
  readonly parallelCurve: readonly PointReport[];
  /** as it stands, were the pad parallel at the same front opening */
  readonly presentParallel: PointReport;
  readonly answer: AnswerReport;
  /** how sure it is: the answer's and the present front, mm, the vent share, every governed note's cents */
  readonly budgets: {
    readonly answerMm: BudgetReport | null;
    readonly presentMm: BudgetReport;
    readonly ventShare: BudgetReport;
    readonly pitchCents: readonly (BudgetReport | null)[];
    readonly changeCents: readonly (BudgetReport | null)[];
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
  readonly warnings: readonly string[];
  /** written notes that sound when the pad is the first open one, by pad id */
  readonly vents: Readonly<Record<string, readonly string[]>>;
}

const TO_MM = 1000;

/** Makes a point of the study plain. */
export function makePointReport(point: VentingPoint): PointReport {
  return {
    frontMm: point.pose.front * TO_MM,
    centreMm: point.pose.centre * TO_MM,
    backMm: point.pose.back * TO_MM,
    ventShare: point.ventShare,
    equivalentParallelMm: point.end.equivalentParallel * TO_MM,
    notes: point.notes.map((note) =>
      note === null
        ? null
        : {
            frequencyHz: note.frequency,
            cents: note.cents,
            pitchCents: note.pitchCents,
            strength: note.strength,
            riseMs: note.riseTime * 1000,
          },
    ),
  };
}

/** Makes a whole study plain. */
export function makeStudyReport(study: VentingStudy): StudyReport {
  const { context, thresholds } = study;
  const { horn, hole, standing } = context;
  const { padRadius, padThickness } = keySetupOf(context.setup, hole.id);
  const nameOf = (id: string): string => holeOf(horn, id).name;
  return {
    keyId: hole.id,
    keyNumber: hole.number,
    keyName: hole.name,
    geometry: {
      hingeMm: hole.hinge!.distance * TO_MM,
      hingeHeightMm: hole.hinge!.height * TO_MM,
      padRadiusMm: padRadius * TO_MM,
      padThicknessMm: padThickness * TO_MM,
      holeRadiusMm: hole.holeRadius * TO_MM,
      chimneyMm: hole.chimney * TO_MM,
      rimMm: hole.rimThickness * TO_MM,
      boreRadiusMm: hole.boreRadius * TO_MM,
    },
    governed: context.governed.map(({ fingering }) => ({ id: fingering.id, register: fingering.register })),
    present: makePointReport(study.present),
    curve: study.curve.map(makePointReport),
    parallelCurve: study.parallelCurve.map(makePointReport),
    presentParallel: makePointReport(study.presentParallel),
    answer: answerReport(study, nameOf),
    ...sureness(study),
    stepMm: thresholds.step * TO_MM,
    stepCents: thresholds.cents,
    stepShare: thresholds.share,
    holdsDown: study.holdsDown.map(({ driven, below }) => ({
      drivenName: nameOf(driven),
      belowMm: below * TO_MM,
    })),
    ruledBy:
      standing.ruledBy === null
        ? null
        : {
            driverName: nameOf(standing.ruledBy.driver),
            frontMm: standing.ruledBy.front * TO_MM,
            ownFrontMm: standing.ownFront * TO_MM,
          },
    reachMm: context.reach * TO_MM,
    warnings: study.warnings,
    vents: ventedNotes(horn),
  };
}

function sureness({ context, budgets }: VentingStudy): Pick<StudyReport, 'budgets' | 'next'> {
  const { horn, governed } = context;
  const { diminishingReturn: answer } = budgets;
  const ofNotes = (of: ReadonlyMap<string, Budget>): (BudgetReport | null)[] =>
    governed.map(({ fingering }) => {
      const budget = of.get(fingering.id);
      return budget === undefined ? null : reportBudget(horn, budget);
    });
  return {
    budgets: {
      answerMm: answer === null ? null : reportBudget(horn, answer, TO_MM),
      presentMm: reportBudget(horn, budgets.front, TO_MM),
      ventShare: reportBudget(horn, budgets.ventShare),
      pitchCents: ofNotes(budgets.notes),
      changeCents: ofNotes(budgets.changes),
    },
    next: answer === null ? [] : reportNext(horn, answer, TO_MM),
  };
}

function answerReport(study: VentingStudy, nameOf: (id: string) => string): AnswerReport {
  const answer = study.diminishingReturn;
  if (answer.kind === 'none in reach') {
    return { kind: answer.kind, reachMm: answer.reach * TO_MM, reason: answer.reason };
  }
  const { decidedBy } = answer;
  const point = makePointReport(answer.at);
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
    const name = note.replace(/\d$/, '');
    const known = (notes[id] ??= []);
    if (!known.includes(name)) known.push(name);
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
