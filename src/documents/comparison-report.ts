import {
  canBeShown,
  MODEL_CENTS,
  NOTICED,
  type ComparedKey,
  type ComparedNote,
  type Horn,
  type KeyInSetup,
  type NoteDifference,
  type NoteInSetup,
  type Notice,
  type SetupComparison,
} from '../acoustics/index.ts';
import { comparisonSentence } from './comparison-words.ts';
import { noteLabel } from './note-label.ts';
import {
  reportBudget,
  reportNext,
  type BudgetReport,
  type NextReport,
  type SideNames,
} from './uncertainty-report.ts';

/** A comparison in bench units, for the terminal and the screen; everything compared is against the first setup. */
export interface ComparisonReport {
  readonly setups: readonly ComparedSetupReport[];
  /** what a person would notice of each setup after the first, in one sentence */
  readonly sentences: readonly string[];
  readonly noticed: {
    readonly playerCents: number;
    readonly carefulPlayerCents: number;
    readonly makerCents: number;
    readonly playerStrengthDb: number;
  };
  /** what can be shown to differ most first */
  readonly notes: readonly ComparedNoteReport[];
  /** vent share that differs most first */
  readonly keys: readonly ComparedKeyReport[];
  readonly warnings: readonly string[];
  readonly limits: string;
}

/** One of the setups. */
export interface ComparedSetupReport {
  readonly label: string;
  readonly horn: string;
  /** the same horn as the first one's; true for the first */
  readonly sameHornAsFirst: boolean;
  readonly mouthpieceAirC: number;
  readonly bellAirC: number;
  readonly a4Hz: number;
}

/** One fingering in every setup. */
export interface ComparedNoteReport {
  readonly fingering: string;
  /** as the trade writes it: `F♯4 side` */
  readonly label: string;
  readonly note: string;
  readonly way: string;
  readonly register: number;
  /** in the order of the setups */
  readonly setups: readonly NoteInSetupReport[];
  /** of every setup after the first; null where the note is lost in either */
  readonly differences: readonly (NoteDifferenceReport | null)[];
}

/** One fingering in one setup; all null with the reason where it is lost. */
export interface NoteInSetupReport {
  readonly hz: number | null;
  /** from equal temperament */
  readonly cents: number | null;
  /** of the pitch by itself: readings, pad model and the whole horn’s model, without a calibration */
  readonly centsPlusMinus: number | null;
  /** of the resonance, in units of ρc/S */
  readonly heightRatio: number | null;
  readonly cutoffHz: number | null;
  readonly reason: string | null;
}

/** One fingering against the first setup. */
export interface NoteDifferenceReport {
  readonly cents: number;
  readonly centsPlusMinus: number;
  /** what the ± of the cents is made of */
  readonly budget: BudgetReport;
  /** what to measure next for this difference of pitch, the best first */
  readonly next: readonly NextReport[];
  /** null where the two sound at different pitches */
  readonly strengthDb: number | null;
  readonly strengthDbPlusMinus: number | null;
  /** the same as a change of height */
  readonly strengthPercent: number | null;
  readonly cutoffHz: number | null;
  readonly noticedBy: Notice;
  /** false where both pitch and strength differ by no more than their ± */
  readonly canBeShown: boolean;
}

/** One key in every setup. */
export interface ComparedKeyReport {
  readonly number: number;
  readonly id: string;
  readonly name: string;
  /** whether it stands open without a finger */
  readonly restsOpen: boolean;
  /** in the order of the setups; null where that horn has no such key */
  readonly setups: readonly (KeyInSetupReport | null)[];
  readonly differences: readonly (KeyDifferenceReport | null)[];
}

/** One key as it stands, links considered. */
export interface KeyInSetupReport {
  readonly id: string;
  readonly frontMm: number;
  readonly centreMm: number;
  readonly backMm: number;
  /** as shares of the hole's diameter */
  readonly frontOfDiameter: number;
  readonly centreOfDiameter: number;
  readonly backOfDiameter: number;
  readonly holeDiameterMm: number;
  readonly frontPlusMinusMm: number;
  /** the opening of a parallel pad with the same vent share */
  readonly equivalentParallelMm: number;
  readonly ventShare: number;
  readonly ventSharePlusMinus: number;
  /** id of the key whose arm holds it below its own stop */
  readonly ruledBy: string | null;
}

/** One key against the first setup. */
export interface KeyDifferenceReport {
  readonly frontMm: number;
  readonly frontPlusMinusMm: number;
  readonly equivalentParallelMm: number;
  readonly ventShare: number;
  readonly ventSharePlusMinus: number;
}

const MM = 1e-3;

/** A comparison in bench units and words. */
export function reportComparison(comparison: SetupComparison): ComparisonReport {
  const { compared, sameHorn } = comparison;
  const setups = compared.map(({ label, horn, air, a4 }, i): ComparedSetupReport => ({
    label,
    horn: horn.name,
    sameHornAsFirst: i === 0 || sameHorn[i - 1],
    mouthpieceAirC: air.mouthpieceC,
    bellAirC: air.bellC,
    a4Hz: a4 ?? 440,
  }));
  const notes = comparison.notes.map((note) => reportNote(note, compared));
  const keys = comparison.keys.map((key) => reportKey(key, compared));
  return {
    setups,
    sentences: setups.slice(1).map((_, i) => comparisonSentence({ setups, notes, keys }, i)),
    noticed: {
      playerCents: NOTICED.cents,
      carefulPlayerCents: NOTICED.carefulCents,
      makerCents: NOTICED.makerCents,
      playerStrengthDb: NOTICED.strengthDb,
    },
    notes,
    keys,
    warnings: warningsOf(comparison),
    limits:
      `Absolute pitch is good to ±${MODEL_CENTS} cents at best. Two setups of one horn err alike, so their ` +
      'difference is far better; two horns err each on their own.',
  };
}

function reportNote(
  { fingering, setups, differences }: ComparedNote,
  [first, ...others]: SetupComparison['compared'],
): ComparedNoteReport {
  const { id, note, way, register } = fingering;
  return {
    fingering: id,
    label: noteLabel(id),
    note,
    way,
    register,
    setups: setups.map(reportNoteIn),
    differences: differences.map((difference, i) =>
      difference === null
        ? null
        : reportDifference(difference, first.horn, {
            first: `“${first.label}”`,
            other: `“${others[i].label}”`,
          }),
    ),
  };
}

function reportNoteIn(note: NoteInSetup): NoteInSetupReport {
  if (!note.found) {
    const nothing = { hz: null, cents: null, centsPlusMinus: null, heightRatio: null, cutoffHz: null };
    return { ...nothing, reason: note.reason };
  }
  const { frequency, cents, centsPlusMinus, height, cutoff } = note;
  return { hz: frequency, cents, centsPlusMinus, heightRatio: height, cutoffHz: cutoff, reason: null };
}

function reportDifference(
  { cents, budget, strengthDb, cutoff, noticedBy }: NoteDifference,
  horn: Horn,
  sides: SideNames,
): NoteDifferenceReport {
  return {
    cents: cents.value,
    centsPlusMinus: cents.plusMinus,
    budget: reportBudget(horn, budget, 1, sides),
    next: reportNext(horn, budget, 1, sides),
    strengthDb: strengthDb?.value ?? null,
    strengthDbPlusMinus: strengthDb?.plusMinus ?? null,
    strengthPercent: strengthDb === null ? null : 100 * (10 ** (strengthDb.value / 20) - 1),
    cutoffHz: cutoff,
    noticedBy,
    canBeShown: canBeShown(cents) || (strengthDb !== null && canBeShown(strengthDb)),
  };
}

function reportKey(
  { setups, differences }: ComparedKey,
  compared: SetupComparison['compared'],
): ComparedKeyReport {
  const has = setups.findIndex((key) => key !== null);
  const { number, id, name } = setups[has]!;
  return {
    number,
    id,
    name,
    restsOpen: compared[has].horn.keywork.rests.get(id) === 'open',
    setups: setups.map((key) => (key === null ? null : reportKeyIn(key))),
    differences: differences.map((difference) =>
      difference === null
        ? null
        : {
            frontMm: difference.front.value / MM,
            frontPlusMinusMm: difference.front.plusMinus / MM,
            equivalentParallelMm: difference.equivalentParallel / MM,
            ventShare: difference.ventShare.value,
            ventSharePlusMinus: difference.ventShare.plusMinus,
          },
    ),
  };
}

function reportKeyIn(key: KeyInSetup): KeyInSetupReport {
  const { pose, holeDiameter } = key;
  return {
    id: key.id,
    frontMm: pose.front / MM,
    centreMm: pose.centre / MM,
    backMm: pose.back / MM,
    frontOfDiameter: pose.front / holeDiameter,
    centreOfDiameter: pose.centre / holeDiameter,
    backOfDiameter: pose.back / holeDiameter,
    holeDiameterMm: holeDiameter / MM,
    frontPlusMinusMm: key.frontPlusMinus / MM,
    equivalentParallelMm: key.equivalentParallel / MM,
    ventShare: key.ventShare.value,
    ventSharePlusMinus: key.ventShare.plusMinus,
    ruledBy: key.ruledBy,
  };
}

/** What makes a comparison less sure: another day's air, another tuning, another kind of horn, pads out of range. */
function warningsOf({ compared, keys }: SetupComparison): string[] {
  const [first, ...others] = compared;
  const warnings = others.flatMap(({ label, air, a4, horn }) => {
    const said: string[] = [];
    if (air.mouthpieceC !== first.air.mouthpieceC || air.bellC !== first.air.bellC) {
      said.push(
        `“${label}” is played in other air than “${first.label}”: a degree is worth about 3 cents on every note.`,
      );
    }
    if ((a4 ?? 440) !== (first.a4 ?? 440)) {
      said.push(
        `“${label}” is measured from A at ${a4 ?? 440} Hz, “${first.label}” from ${first.a4 ?? 440} Hz.`,
      );
    }
    if (horn.transposition !== first.horn.transposition) {
      said.push(
        `“${label}” sounds at another pitch than “${first.label}”: their written notes are compared, their strengths are not.`,
      );
    }
    return said;
  });
  const airs = compared.flatMap(({ air }) => air.warnings);
  const pads = compared.flatMap(({ label }, i) =>
    keys.flatMap(({ setups }) => {
      const key = setups[i];
      return (key?.warnings ?? []).map((text) => `“${label}”, ${key!.name} key: ${text}`);
    }),
  );
  return [...warnings, ...new Set(airs), ...pads];
}
