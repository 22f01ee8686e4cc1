import { makeAirColumn, studyVenting, holeOf, type AirColumn } from '../../acoustics/index.ts';
import { SETUP_ROLES, type SetupRole } from '../../documents/bench-contents.ts';
import { layered } from '../../documents/complete-setup.ts';
import { keyedHoles, type HornDocument } from '../../documents/horn-document.ts';
import type { SetupDocument } from '../../documents/setup-document.ts';
import { knownHornLength, knownSetupLength } from '../../documents/sheet-edits.ts';
import { loadHorn, type LoadedHorn } from '../../documents/to-acoustics.ts';
import type { EnoughReport, SheetReport, StandingReport } from './sheet-report.ts';
import { standingWorth, type FourReadings } from './standing-worth.ts';
import { ventedNotes } from './study-report.ts';

/** A horn with its three setups, as stored. */
export interface SheetDocuments {
  readonly horn: HornDocument;
  /** as found is whole, the others may be sparse */
  readonly setups: Readonly<Record<SetupRole, SetupDocument>>;
}

/** A sheet made ready: every setup whole and in SI. */
export interface PreparedSheet {
  readonly loaded: Readonly<Record<SetupRole, LoadedHorn>>;
  readonly air: AirColumn;
  readonly a4Hz: number;
}

const MM = 1e-3;

/** Makes a sheet ready, or says in sentences why it cannot be. */
export function prepareSheet(
  { horn, setups }: SheetDocuments,
  airC: number,
  a4Hz: number,
): { readonly ok: true; readonly value: PreparedSheet } | { readonly ok: false; readonly message: string } {
  const loaded: Partial<Record<SetupRole, LoadedHorn>> = {};
  for (const role of SETUP_ROLES) {
    const { keys, links } = setups[role];
    if (loaded.asFound !== undefined && keys.length === 0 && links === undefined) {
      loaded[role] = loaded.asFound;
      continue;
    }
    const setup = role === 'asFound' ? setups.asFound : layered(setups[role], setups.asFound);
    const read = loadHorn({ horn, setup });
    if (!read.ok) return { ok: false, message: read.issues.map((issue) => issue.message).join(' ') };
    loaded[role] = read.value;
  }
  const whole = loaded as Record<SetupRole, LoadedHorn>;
  return { ok: true, value: { loaded: whole, air: makeAirColumn({ mouthpieceC: airC }), a4Hz } };
}

/** Every key as found, as proposed and as set: pose, vent share, ruling link, each with its ±. */
export function makeSheetReport({ loaded }: PreparedSheet): SheetReport {
  return {
    keys: keyedHoles(loaded.asFound.documents.horn).map(({ id }) => {
      const asFound = standingReport(loaded.asFound, id);
      const otherwise = (role: SetupRole): StandingReport =>
        loaded[role] === loaded.asFound ? asFound : standingReport(loaded[role], id);
      return { pad: id, asFound, proposed: otherwise('proposed'), asSet: otherwise('asSet') };
    }),
    vents: ventedNotes(loaded.asFound.horn),
  };
}

function standingReport({ documents, horn, setup }: LoadedHorn, id: string): StandingReport {
  const { pose, ruledBy, ownFront, ...worth } = standingWorth({ horn, setup }, id, (pad) =>
    readingsOf(documents.horn, { ...documents.setup, keys: [...documents.setup.keys] }, pad),
  );
  const inMm = (metres: number | null): number | null => (metres === null ? null : metres / MM);
  return {
    frontMm: pose.front / MM,
    centreMm: pose.centre / MM,
    backMm: pose.back / MM,
    plusMinusMm: inMm(worth.frontPlusMinus),
    ventShare: worth.ventShare,
    plusMinusShare: worth.sharePlusMinus,
    ruledBy:
      ruledBy === null ? null : { driverName: holeOf(horn, ruledBy.driver).name, ownFrontMm: ownFront / MM },
  };
}

/** How far the readings of a pad may be off, m; radii by half their diameters' ±. */
function readingsOf(horn: HornDocument, setup: SetupDocument, pad: string): FourReadings {
  return {
    opening: (knownSetupLength(setup, pad, 'openingMm')?.plusMinusMm ?? 0) * MM,
    holeRadius: ((knownHornLength(horn, pad, 'diameterMm')?.plusMinusMm ?? 0) / 2) * MM,
    padRadius: ((knownSetupLength(setup, pad, 'padDiameterMm')?.plusMinusMm ?? 0) / 2) * MM,
    hingeDistance: (knownHornLength(horn, pad, 'hingeMm')?.plusMinusMm ?? 0) * MM,
  };
}

/** Half of what lies between the answers of a model off either way; where one is out of reach, the other counts. */
function halfSpreadMm(front: number, low: number | null, high: number | null): number | null {
  if (low !== null && high !== null) return (high - low) / 2 / MM;
  if (low !== null) return (front - low) / MM;
  return high === null ? null : (high - front) / MM;
}

/** Where more height on a key stops helping, the horn as it stands now: as set where it was set. */
export function findEnough({ loaded, air, a4Hz }: PreparedSheet, pad: string): EnoughReport {
  const { horn, setup } = loaded.asSet;
  const { diminishingReturn: found, returnSpread } = studyVenting(horn, setup, pad, air, {
    a4: a4Hz,
    points: 2,
  });
  if (found.kind === 'none in reach') return { kind: found.kind, reason: found.reason };
  const { pose, ventShare } = found.at;
  const { low, high } = returnSpread;
  return {
    kind: 'reached',
    frontMm: pose.front / MM,
    centreMm: pose.centre / MM,
    backMm: pose.back / MM,
    ventShare,
    decidedBy: found.decidedBy,
    plusMinusMm: halfSpreadMm(pose.front, low, high),
  };
}
