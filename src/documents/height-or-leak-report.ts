import {
  holeOf,
  padUnder,
  type Budget,
  type Fingering,
  type HeightEffect,
  type HeightOrLeak,
  type Horn,
  type LeakAtGap,
  type PadLeak,
  type Sides,
  type Verdict,
} from '../acoustics/index.ts';
import { PAPER_MM } from './leak-report.ts';
import { reportBudget, type BudgetReport } from './uncertainty-report.ts';

/** What one key's height can still do for a note, bench units. */
export interface HeightEffectReport {
  readonly pad: string;
  readonly name: string;
  /** at the front, as it stands */
  readonly foundMm: number;
  readonly foundMmBudget: BudgetReport;
  /** at the front; as far as the study looks where none is in reach */
  readonly enoughMm: number;
  readonly enoughMmBudget: BudgetReport | null;
  readonly kind: HeightEffect['kind'];
  /** name of the key whose arm lets it no higher */
  readonly heldBy: string | null;
  /** of the resonance's height, + where the note gains; null where it is lost on the way */
  readonly gainDb: number | null;
  readonly gainDbBudget: BudgetReport | null;
  readonly changeCents: number | null;
  readonly changeCentsBudget: BudgetReport | null;
}

/** What one gap under a pad would cost a note, bench units. */
export interface GapCostReport {
  readonly gapMm: number;
  readonly papers: number;
  /** null where the note is lost */
  readonly lostDb: number | null;
  readonly lostDbBudget: BudgetReport | null;
  /** dB that more, and that less, may be lost */
  readonly lostDbSides: Sides | null;
  readonly changeCents: number | null;
  readonly changeCentsBudget: BudgetReport | null;
}

/** What a leak at one pad would cost a note. */
export interface PadLeakReport {
  readonly pad: string;
  readonly name: string;
  readonly shutBy: 'fingers' | 'spring';
  /** one paper, two papers */
  readonly at: readonly GapCostReport[];
}

/** Height beside leak for one note, bench units. */
export interface HeightOrLeakReport {
  readonly horn: string;
  readonly fingering: string;
  readonly note: string;
  /** pad id; null where every pad is shut */
  readonly speaksUnder: string | null;
  /** of the resonance as it stands, in units of ρc/S; null where there is none */
  readonly heightRatio: number | null;
  /** null where there is no resonance, with the reason */
  readonly verdict: Verdict | null;
  readonly reason: string | null;
  /** the key that brings most first */
  readonly heights: readonly HeightEffectReport[];
  /** the pad that costs most at two papers first */
  readonly leaks: readonly PadLeakReport[];
}

const PER_MM = 1e-3;
const TO_MM = 1000;

/** Height beside leak in bench units. */
export function reportHeightOrLeak(
  horn: Horn,
  fingering: Fingering,
  study: HeightOrLeak | null,
): HeightOrLeakReport {
  return {
    horn: horn.name,
    fingering: fingering.id,
    note: fingering.note,
    speaksUnder: padUnder(horn, fingering),
    heightRatio: study?.sealed.height ?? null,
    verdict: study?.verdict ?? null,
    reason: study === null ? 'it has no resonance as it stands' : null,
    heights: study?.heights.map((height) => reportHeight(horn, height)) ?? [],
    leaks: study?.leaks.map((leak) => reportPadLeak(horn, leak)) ?? [],
  };
}

function reportHeight(horn: Horn, effect: HeightEffect): HeightEffectReport {
  const { pad, present, presentBudget, enough, enoughBudget, kind, driver, change } = effect;
  return {
    pad,
    name: holeOf(horn, pad).name,
    foundMm: present / PER_MM,
    foundMmBudget: reportBudget(horn, presentBudget, TO_MM),
    enoughMm: enough / PER_MM,
    enoughMmBudget: enoughBudget === null ? null : reportBudget(horn, enoughBudget, TO_MM),
    kind,
    heldBy: driver === null ? null : holeOf(horn, driver).name,
    gainDb: change?.gainDb ?? null,
    gainDbBudget: reported(horn, change?.gainBudget),
    changeCents: change?.cents ?? null,
    changeCentsBudget: reported(horn, change?.centsBudget),
  };
}

function reportPadLeak(horn: Horn, { pad, rests, at }: PadLeak): PadLeakReport {
  return {
    pad,
    name: holeOf(horn, pad).name,
    shutBy: rests === 'closed' ? 'spring' : 'fingers',
    at: at.map((each) => reportGap(horn, each)),
  };
}

function reportGap(horn: Horn, { gap, cost }: LeakAtGap): GapCostReport {
  return {
    gapMm: gap / PER_MM,
    papers: gap / PER_MM / PAPER_MM,
    lostDb: cost?.lostDb ?? null,
    lostDbBudget: reported(horn, cost?.lostBudget),
    lostDbSides: cost?.lostSides ?? null,
    changeCents: cost?.cents ?? null,
    changeCentsBudget: reported(horn, cost?.centsBudget),
  };
}

const reported = (horn: Horn, budget: Budget | null | undefined): BudgetReport | null =>
  budget === null || budget === undefined ? null : reportBudget(horn, budget);
