import {
  changePads,
  makeAirColumn,
  studyVenting,
  ventingAt,
  type AirColumn,
  type VentingStudy,
} from '../acoustics/index.ts';
import { SETUP_ROLES, type SetupRole } from './bench-contents.ts';
import { compareLoaded } from './compare-loaded.ts';
import type { ComparisonReport } from './comparison-report.ts';
import { layered } from './complete-setup.ts';
import type { HornDocument } from './horn-document.ts';
import { lostMotionOf, type LostMotionReport } from './lost-motion.ts';
import { reportPadChange, type PadChangeReport } from './pad-change-report.ts';
import { compareLeaving, movedKeys, padsOpened, unreadIn } from './player-sheet-leaving.ts';
import { plusMinusOf } from './plus-minus.ts';
import { regulationFacts } from './regulation-facts.ts';
import type { SetupDocument } from './setup-document.ts';
import { withOpeningReading } from './sheet-edits.ts';
import { withEveryKeyShifted, type ShiftedOpening } from './shifted-openings.ts';
import { loadHorn, type LoadedHorn } from './to-acoustics.ts';
import {
  reportPoint,
  reportVentingStudy,
  type VentingPointReport,
  type VentingStudyReport,
} from './venting-report.ts';

/** What the player’s sheet is worked out from. */
export interface PlayerSheetQuestion {
  readonly horn: HornDocument;
  /** as found is whole, the others may be sparse */
  readonly setups: Readonly<Record<SetupRole, SetupDocument>>;
  readonly airC: number;
  readonly a4Hz: number;
  /** null where no key was named */
  readonly wishKey: string | null;
  /** mm at the front; null where none was named */
  readonly wishOpeningMm: number | null;
  /** mm all keys are wished higher at the front, minus for lower; null where the wish is not about all */
  readonly wishShiftMm: number | null;
}

/** The key the curve is drawn of, everything else as it leaves. */
export interface WishedKey {
  readonly pad: string;
  /** whether a person named it; else it is the key whose venting changes most, by the wish for all or by the work */
  readonly isNamed: boolean;
  readonly study: VentingStudyReport;
  /** where it stood as found */
  readonly asFound: VentingPointReport;
  /** where the player wants it, by itself or with all others; null where no opening was named */
  readonly wish: VentingPointReport | null;
  /** with that opening, against how it leaves; null likewise */
  readonly cost: ComparisonReport | null;
  /** why the key cannot stand so, or null */
  readonly problem: string | null;
}

/** All keys as wished, against how the horn leaves. */
export interface WishedShift {
  readonly byMm: number;
  readonly cost: ComparisonReport;
  /** keys that cannot go the whole way, and what ends it */
  readonly ended: readonly ShiftedOpening[];
}

/** Every number of the player’s sheet, from the core. */
export interface PlayerSheetFacts {
  /** something is proposed and nothing set: all is told of the horn as proposed, where else it is of as set */
  readonly isProposal: boolean;
  /** as it leaves against as found */
  readonly comparison: ComparisonReport;
  /** of the keys that are told of one by one, the horn as it leaves */
  readonly studies: readonly VentingStudyReport[];
  /** null where no key was named, and none that was read moves */
  readonly wished: WishedKey | null;
  /** null where the wish is not about all keys, or was not said how far */
  readonly wishedShift: WishedShift | null;
  /** pads whose opening was read as set, or is proposed; another that moves follows a key that drives it */
  readonly setByHand: readonly string[];
  /** pads whose opening as found is an example’s, nobody read it */
  readonly unreadAsFound: readonly string[];
  /** motion that links lose since the heights were changed, the most first */
  readonly lostMotion: readonly LostMotionReport[];
  /** of the pads that are other than those found, at their old stops; null where none is */
  readonly pads: PadChangeReport | null;
}

/** As many keys as are told of one by one. */
export const TOLD_KEYS = 3;

/** Thicknesses that differ by less are one, mm. */
export const SAME_MM = 0.005;

/** A key’s name by its pad’s id. */
export function nameOf({ keys }: ComparisonReport, pad: string): string {
  return keys.find(({ id }) => id === pad)?.name ?? pad;
}

/** Asks the core for every number of the player’s sheet, or says in sentences why it cannot. */
export function findPlayerSheetFacts(
  question: PlayerSheetQuestion,
):
  { readonly ok: true; readonly value: PlayerSheetFacts } | { readonly ok: false; readonly message: string } {
  const loaded: Partial<Record<SetupRole, LoadedHorn>> = {};
  for (const role of SETUP_ROLES) {
    const read = loadHorn({ horn: question.horn, setup: named(question, role) });
    if (!read.ok) return { ok: false, message: read.issues.map(({ message }) => message).join(' ') };
    loaded[role] = read.value;
  }
  const { asFound, asSet } = loaded as Record<SetupRole, LoadedHorn>;
  const air = makeAirColumn({ mouthpieceC: question.airC });
  const { a4Hz } = question;
  const { leaving, isProposal, comparison } = compareLeaving(
    question,
    loaded as Record<SetupRole, LoadedHorn>,
    air,
  );
  const shift = wishedShift(question, leaving, air);
  if (shift !== null && !shift.ok) return shift;
  const wishedAll = shift?.value ?? null;
  const moved = movedKeys(comparison).map(({ id }) => id);
  const setByHand = padsOpened(question.setups[isProposal ? 'proposed' : 'asSet']);
  const unreadAsFound = unreadIn(question.setups.asFound);
  // No curve is drawn of a key nobody read, unless the player names it.
  const read = [...moved, ...(wishedAll?.cost.keys.map(({ id }) => id) ?? [])].find(
    (id) => setByHand.includes(id) || !unreadAsFound.includes(id),
  );
  const pad = wishedPad(question) ?? read ?? null;
  const told = moved.filter((id) => setByHand.includes(id)).slice(0, TOLD_KEYS);
  const studyOf = (id: string): VentingStudy => {
    // The curve itself is drawn of one key only.
    const points = id === pad ? {} : { points: 2 };
    return studyVenting(leaving.horn, leaving.setup, id, air, {
      a4: a4Hz,
      plusMinus: plusMinusOf(leaving),
      ...points,
    });
  };
  const studies = told.map(studyOf);
  const ofPad = pad === null ? null : (studies[told.indexOf(pad)] ?? studyOf(pad));
  return {
    ok: true,
    value: {
      isProposal,
      comparison,
      studies: studies.map(reportVentingStudy),
      wished: ofPad === null ? null : wishedKey(question, ofPad, { comparison, wishedAll, leaving, air }),
      wishedShift: wishedAll,
      setByHand,
      unreadAsFound,
      lostMotion: lostMotionOf(asFound, leaving),
      pads: changedPads(asFound, asSet, air, a4Hz),
    },
  };
}

/** A setup whole, under the name the sheet gives it. */
function named({ setups }: PlayerSheetQuestion, role: SetupRole): SetupDocument {
  const { asFound } = setups;
  if (role === 'asFound') return { ...asFound, name: 'as found' };
  return { ...layered(setups[role], asFound), name: role === 'asSet' ? 'as set' : 'as proposed' };
}

/** A horn may have been edited since a key was named. */
function wishedPad({ horn, wishKey }: PlayerSheetQuestion): string | null {
  return horn.holes.some(({ id, key }) => id === wishKey && key !== null) ? wishKey : null;
}

/** What the key of the curve is told from besides its study. */
interface Leaving {
  readonly comparison: ComparisonReport;
  readonly wishedAll: WishedShift | null;
  readonly leaving: LoadedHorn;
  readonly air: AirColumn;
}

function wishedKey(
  question: PlayerSheetQuestion,
  study: VentingStudy,
  { comparison, wishedAll, leaving, air }: Leaving,
): WishedKey {
  const { id } = study.context.hole;
  const isNamed = wishedPad(question) !== null;
  const { a4Hz, wishOpeningMm } = question;
  const frontIn = ({ keys }: ComparisonReport, setup: number): number =>
    keys.find((key) => key.id === id)!.setups[setup]!.frontMm;
  const at = (frontMm: number): VentingPointReport => reportPoint(ventingAt(study.context, frontMm / 1000));
  const told = { pad: id, isNamed, study: reportVentingStudy(study), asFound: at(frontIn(comparison, 0)) };
  const nothing = { ...told, wish: null, cost: null, problem: null };
  if (wishedAll !== null) return { ...nothing, wish: at(frontIn(wishedAll.cost, 1)) };
  if (!isNamed || wishOpeningMm === null) return nothing;
  const wished = asWished(leaving, id, wishOpeningMm);
  if (!wished.ok) return { ...nothing, problem: wished.message };
  return {
    ...told,
    wish: at(wishOpeningMm),
    cost: compareLoaded([leaving, wished.value], { air, a4Hz }),
    problem: null,
  };
}

/** The horn as it leaves with all keys moved as wished. */
function wishedShift(
  { wishShiftMm, a4Hz }: PlayerSheetQuestion,
  leaving: LoadedHorn,
  air: AirColumn,
):
  | { readonly ok: true; readonly value: WishedShift }
  | { readonly ok: false; readonly message: string }
  | null {
  if (wishShiftMm === null || wishShiftMm === 0) return null;
  const shifted = withEveryKeyShifted(leaving, wishShiftMm, 'as wished');
  if (!shifted.ok) return shifted;
  const cost = compareLoaded([leaving, shifted.value], { air, a4Hz });
  const ended = shifted.openings.filter(({ endedBy }) => endedBy !== null);
  return { ok: true, value: { byMm: wishShiftMm, cost, ended } };
}

/** The horn as it leaves with one key at the opening wished for, which is meant and not read. */
function asWished(
  { documents }: LoadedHorn,
  pad: string,
  openingMm: number,
): { readonly ok: true; readonly value: LoadedHorn } | { readonly ok: false; readonly message: string } {
  const { horn, setup } = documents;
  const document = withOpeningReading(
    { ...setup, keys: [...setup.keys], name: 'as wished' },
    pad,
    { mm: openingMm, at: 'front' },
    { origin: 'derived', plusMinusMm: 0 },
  );
  const read = loadHorn({ horn, setup: document });
  return read.ok ? read : { ok: false, message: read.issues[0].message };
}

function changedPads(
  asFound: LoadedHorn,
  asSet: LoadedHorn,
  air: AirColumn,
  a4Hz: number,
): PadChangeReport | null {
  const thicker = new Map<string, number>();
  for (const [pad, { padThickness }] of asFound.setup.keys) {
    const by = asSet.setup.keys.get(pad)!.padThickness - padThickness;
    if (Math.abs(by) >= SAME_MM / 1000) thicker.set(pad, by);
  }
  if (thicker.size === 0) return null;
  const { horn, footPerFront } = regulationFacts(asFound);
  const change = changePads(horn, asFound.setup, thicker, air, {
    a4: a4Hz,
    seating: 'levelled',
    footPerFront,
  });
  return reportPadChange(horn, change, 'levelled');
}
