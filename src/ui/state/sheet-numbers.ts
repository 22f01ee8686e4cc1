import {
  budgetOf,
  DEFAULT_PAD_MODEL,
  frontSlopes,
  holeOf,
  makeAirColumn,
  prepareReadings,
  shareSlopes,
  standingPad,
  standingThere,
  studyVenting,
  type Slopes,
} from '../../acoustics/index.ts';
import type { SetupRole } from '../../documents/bench-contents.ts';
import { contradictingReadings } from '../../documents/contradicting-readings.ts';
import { hornInAir, type HornInAir } from '../../documents/calibrated.ts';
import { layered } from '../../documents/complete-setup.ts';
import { keyedHoles, type HornDocument } from '../../documents/horn-document.ts';
import type { SetupDocument } from '../../documents/setup-document.ts';
import { loadHorn, type LoadedHorn } from '../../documents/to-acoustics.ts';
import { reportBudget, type BudgetReport } from '../../documents/uncertainty-report.ts';
import type { EnoughReport, SheetReport, StandingReport } from './sheet-report.ts';
import { ventedNotes } from './study-report.ts';

/** A horn with its three setups, as stored. */
export interface SheetDocuments {
  readonly horn: HornDocument;
  /** as found is whole, the others may be sparse */
  readonly setups: Readonly<Record<SetupRole, SetupDocument>>;
}

/** A horn made ready to be asked for pitches, or a sentence on why it cannot be. */
type Asking = (
  loaded: LoadedHorn,
) => { readonly ok: true; readonly value: HornInAir } | { readonly ok: false; readonly message: string };

/** The three setups, and as the horn is to leave: as set over as proposed over as found. */
type SheetSetup = SetupRole | 'leaves';

/** A sheet made ready: every setup whole and in SI, in its air. */
export interface PreparedSheet {
  readonly loaded: Readonly<Record<SheetSetup, HornInAir>>;
  readonly a4Hz: number;
}

const MM = 1e-3;

/** Makes a sheet ready, or says in sentences why it cannot be. @param asked as described unless said otherwise */
export function prepareSheet(
  { horn, setups }: SheetDocuments,
  airC: number,
  a4Hz: number,
  asked: Asking = (loaded) => ({
    ok: true,
    value: hornInAir(loaded, makeAirColumn({ mouthpieceC: airC }), null),
  }),
): { readonly ok: true; readonly value: PreparedSheet } | { readonly ok: false; readonly message: string } {
  const wholes = wholeSetups(setups);
  const known = new Map<SetupDocument, HornInAir>();
  for (const setup of Object.values(wholes)) {
    if (known.has(setup)) continue;
    const read = loadHorn({ horn, setup });
    if (!read.ok) return { ok: false, message: read.issues.map((issue) => issue.message).join(' ') };
    const inAir = asked(read.value);
    if (!inAir.ok) return inAir;
    known.set(setup, inAir.value);
  }
  const of = (role: SheetSetup): HornInAir => known.get(wholes[role])!;
  const loaded = {
    asFound: of('asFound'),
    proposed: of('proposed'),
    asSet: of('asSet'),
    leaves: of('leaves'),
  };
  return { ok: true, value: { loaded, a4Hz } };
}

/** Every setup whole; the same object where one says nothing over another. */
function wholeSetups({
  asFound,
  proposed,
  asSet,
}: SheetDocuments['setups']): Record<SheetSetup, SetupDocument> {
  const over = (upper: SetupDocument, lower: SetupDocument): SetupDocument =>
    upper.keys.length === 0 && upper.links === undefined ? lower : layered(upper, lower);
  const [asProposed, set] = [over(proposed, asFound), over(asSet, asFound)];
  const leaves = asProposed === asFound ? set : over(asSet, asProposed);
  return { asFound, proposed: asProposed, asSet: set, leaves };
}

/** Every key as found, as proposed, as set and as it is to leave: pose, vent share, ruling link, each with its ±. */
export function makeSheetReport({ loaded }: PreparedSheet): SheetReport {
  const found = standingReports(loaded.asFound);
  const proposed = loaded.proposed === loaded.asFound ? found : standingReports(loaded.proposed);
  const asSet = loaded.asSet === loaded.asFound ? found : standingReports(loaded.asSet);
  const leaves =
    loaded.leaves === loaded.asSet
      ? asSet
      : loaded.leaves === loaded.proposed
        ? proposed
        : standingReports(loaded.leaves);
  return {
    keys: keyedHoles(loaded.asFound.loaded.documents.horn).map(({ id }) => ({
      pad: id,
      asFound: found(id),
      proposed: proposed(id),
      asSet: asSet(id),
      leaves: leaves(id),
    })),
    vents: ventedNotes(loaded.asFound.loaded.horn),
    contradictions: contradictingReadings(loaded.asSet.loaded),
  };
}

/** One setup's keys, its readings made ready once for all of them. */
function standingReports({ loaded, air, knowledge }: HornInAir): (id: string) => StandingReport {
  const { horn, setup } = loaded;
  const readings = prepareReadings(horn, setup, air, knowledge.plusMinus);
  const budget = (slopes: Slopes): BudgetReport =>
    reportBudget(horn, budgetOf(readings, slopes, DEFAULT_PAD_MODEL));
  return (id) => {
    const shareBudget = budget(shareSlopes(horn, setup, id, DEFAULT_PAD_MODEL));
    const { pose, ruledBy, ownFront } = standingPad(horn, setup, id);
    return {
      frontMm: pose.front / MM,
      centreMm: pose.centre / MM,
      backMm: pose.back / MM,
      plusMinusMm: budget(frontSlopes(id)).plusMinus / MM,
      ventShare: standingThere(horn, setup, id, DEFAULT_PAD_MODEL).ventShare,
      plusMinusShare: shareBudget.plusMinus,
      shareBudget,
      ruledBy:
        ruledBy === null
          ? null
          : { driverName: holeOf(horn, ruledBy.driver).name, ownFrontMm: ownFront / MM },
    };
  };
}

/** Where more height on a key stops helping, the horn as it stands now: as set where it was set. */
export function findEnough({ loaded: { asSet }, a4Hz }: PreparedSheet, pad: string): EnoughReport {
  const { air, knowledge } = asSet;
  const { horn, setup } = asSet.loaded;
  const { diminishingReturn: found, budgets } = studyVenting(horn, setup, pad, air, {
    a4: a4Hz,
    points: 2,
    ...knowledge,
  });
  if (found.kind === 'none in reach') return { kind: found.kind, reason: found.reason };
  const { pose, ventShare } = found.at;
  const { diminishingReturn: budget } = budgets;
  return {
    kind: 'reached',
    frontMm: pose.front / MM,
    centreMm: pose.centre / MM,
    backMm: pose.back / MM,
    ventShare,
    decidedBy: found.decidedBy,
    plusMinusMm: budget === null ? null : budget.plusMinus / MM,
    budget: budget === null ? null : reportBudget(horn, budget, 1 / MM),
  };
}
