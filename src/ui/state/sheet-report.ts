import type { Decision } from '../../acoustics/index.ts';
import type { ContradictingReadings } from '../../documents/contradicting-readings.ts';
import type { SetupRole } from '../../documents/bench-contents.ts';
import type { BudgetReport } from '../../documents/uncertainty-report.ts';

/** How a key stands in one setup, links considered, bench units. */
export interface StandingReport {
  readonly frontMm: number;
  readonly centreMm: number;
  readonly backMm: number;
  /** of the front, by the readings and links that decide it */
  readonly plusMinusMm: number;
  readonly ventShare: number;
  readonly plusMinusShare: number;
  /** what the ± of the vent share is made of */
  readonly shareBudget: BudgetReport;
  /** set where a link holds the key lower than its own stop */
  readonly ruledBy: { readonly driverName: string; readonly ownFrontMm: number } | null;
}

/** One key of the sheet: how it stands as found, as proposed and as set. */
export type SheetKeyReport = Readonly<Record<SetupRole, StandingReport>> & {
  readonly pad: string;
  /** as it is to leave: every key as set, else as proposed, else as found */
  readonly leaves: StandingReport;
};

/** The whole sheet: what needs no bore. */
export interface SheetReport {
  readonly keys: readonly SheetKeyReport[];
  /** written notes by pad id */
  readonly vents: Readonly<Record<string, readonly string[]>>;
  /** openings read that a link does not let both be, as set where set */
  readonly contradictions: readonly ContradictingReadings[];
}

/** Where more height on one key stops helping, bench units. */
export type EnoughReport =
  | {
      readonly kind: 'reached';
      readonly frontMm: number;
      readonly centreMm: number;
      readonly backMm: number;
      readonly ventShare: number;
      readonly decidedBy: Decision;
      /** mm at the front; null where the least opening decides */
      readonly plusMinusMm: number | null;
      /** what that is made of, mm */
      readonly budget: BudgetReport | null;
    }
  | { readonly kind: 'none in reach'; readonly reason: string }
  /** the documents do not allow an answer */
  | { readonly kind: 'failed'; readonly message: string };
