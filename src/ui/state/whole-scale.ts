import {
  findFingering,
  holeOf,
  keySetupOf,
  makeAirColumn,
  makeNetwork,
  makePadPose,
  noteFrequency,
  padStates,
  playWholeHorn,
  resonanceNear,
  standingPad,
  strengthAgainstLevel,
  withOpening,
  type AirColumn,
  type Fingering,
  type Horn,
  type Setup,
} from '../../acoustics/index.ts';
import { modelWarnings } from '../../documents/model-warnings.ts';
import {
  makeScaleReport,
  packScale,
  type LoudReport,
  type ProposedOpenings,
  type ScaleNumbers,
  type ScaleReport,
} from './scale-report.ts';

/** A whole horn made ready: what every move of a key starts from. */
export interface PreparedScale {
  readonly horn: Horn;
  readonly setup: Setup;
  readonly air: AirColumn;
  readonly a4Hz: number;
  /** Hz by fingering id, as found: always followed from there, so that the same proposal gives the same numbers */
  readonly near: ReadonlyMap<string, number>;
}

/** Levels of playing the loud picture is drawn at, kPa. */
export const LEVELS_KPA: readonly number[] = [0.1, 0.15, 0.22, 0.33, 0.5, 0.75, 1.1, 1.6, 2.2, 3, 4.2, 6];

/** The level the sentence about loud playing tells of, kPa. */
export const TOLD_LEVEL_KPA = 3;

/** Plays the horn as found. */
export function prepareScale(
  { horn, setup }: { readonly horn: Horn; readonly setup: Setup },
  airC: number,
  a4Hz: number,
): { readonly prepared: PreparedScale; readonly report: ScaleReport } {
  const air = makeAirColumn({ mouthpieceC: airC });
  const near = new Map(
    playWholeHorn(horn, setup, air, { a4: a4Hz, answers: false }).flatMap(({ fingering, outcome }) =>
      outcome.found ? [[fingering.id, outcome.resonance.frequency] as const] : [],
    ),
  );
  // Played as every move is played, so that a note nothing moves stays where it is to the last digit.
  const notes = playWholeHorn(horn, setup, air, { a4: a4Hz, near });
  return {
    prepared: { horn, setup, air, a4Hz, near },
    report: makeScaleReport(horn, setup, notes, modelWarnings(horn, setup, air)),
  };
}

/** Plays the horn as proposed. */
export function moveScale(prepared: PreparedScale, proposedMm: ProposedOpenings): ScaleNumbers {
  const { horn, air, a4Hz, near } = prepared;
  const setup = proposedSetup(prepared, proposedMm);
  const notes = playWholeHorn(horn, setup, air, { a4: a4Hz, near });
  return packScale(horn, notes, modelWarnings(horn, setup, air));
}

/** The setup as found with what was proposed written over it: each key's own stop, at the front. */
export function proposedSetup({ setup }: PreparedScale, proposedMm: ProposedOpenings): Setup {
  return Object.entries(proposedMm).reduce(
    (now, [id, mm]) => withOpening(now, id, { at: 'front', height: mm / 1000 }),
    setup,
  );
}

/** Plays one note from soft to loud, as found and as proposed. @throws RangeError for a note nobody fingers */
export function playLoud(
  prepared: PreparedScale,
  proposedMm: ProposedOpenings,
  fingeringId: string,
): LoudReport {
  const fingering = findFingering(fingeringId);
  if (fingering === undefined) throw new RangeError(`invalid note: "${fingeringId}"; expected a fingering`);
  const found = strengths(prepared, prepared.setup, fingering);
  return {
    fingeringId,
    pressuresKpa: LEVELS_KPA,
    found,
    proposed:
      Object.keys(proposedMm).length === 0
        ? found
        : strengths(prepared, proposedSetup(prepared, proposedMm), fingering),
  };
}

function strengths(prepared: PreparedScale, setup: Setup, fingering: Fingering): (number | null)[] {
  const { horn, air, a4Hz, near } = prepared;
  const network = makeNetwork(horn, setup, fingering, air);
  const target = near.get(fingering.id) ?? noteFrequency(fingering.note, horn.transposition, a4Hz);
  const soft = resonanceNear(network, target);
  if (!soft.found) return LEVELS_KPA.map(() => null);
  const pressures = LEVELS_KPA.map((kPa) => kPa * 1000);
  const openings = centreOpenings(horn, setup, fingering);
  return strengthAgainstLevel(network, soft.resonance, pressures, { openings }).map((point) =>
    point.outcome.found ? point.strength : null,
  );
}

/** How far every open pad stands open at its centre under a fingering, m. */
function centreOpenings(horn: Horn, setup: Setup, fingering: Fingering): Map<string, number> {
  const openings = new Map<string, number>();
  for (const [id, state] of padStates(horn.keywork, new Set(fingering.touches))) {
    const { hinge } = holeOf(horn, id);
    if (!state.open || hinge === null) continue;
    const { pose } = standingPad(horn, setup, id);
    const byTouch = state.front;
    const stands =
      byTouch !== undefined && byTouch < pose.front
        ? makePadPose(hinge, keySetupOf(setup, id).padRadius, { at: 'front', height: byTouch })
        : pose;
    openings.set(id, stands.centre);
  }
  return openings;
}
