import type { CalibrationSource } from '../../documents/calibrated.ts';
import type { CalibrationReport } from '../../documents/calibration-report.ts';
import type { HeightOrLeakReport } from '../../documents/height-or-leak-report.ts';
import type { LeakMapReport } from '../../documents/leak-report.ts';
import type { PadChangeReport } from '../../documents/pad-change-report.ts';
import type { PlayerSheetFacts, PlayerSheetQuestion } from '../../documents/player-sheet-facts.ts';
import type { PlayedSetup } from '../../documents/pitch-log.ts';
import type { Preference } from '../../documents/proposal-choices.ts';
import type { ProposalReport } from '../../documents/proposal-report.ts';
import type { SetupDocument } from '../../documents/setup-document.ts';
import type { HornAndSetup } from '../../documents/to-acoustics.ts';
import type { FollowedReport } from '../state/followed-report.ts';
import type { LeakAnswer, LeakFault, LeakLimit } from '../state/leak-fault.ts';
import type { LoudReport, ProposedOpenings, ScaleNumbers, ScaleReport } from '../state/scale-report.ts';
import type { SurenessSlice } from '../state/scale-sureness.ts';
import type { SheetDocuments } from '../state/sheet-numbers.ts';
import type { EnoughReport, SheetReport } from '../state/sheet-report.ts';
import type { ComparedColumns } from '../state/side-by-side-answer.ts';
import type { StudyReport, SurePointReport } from '../state/study-report.ts';

/** Asks for a whole study; the worker keeps the prepared key for the points that follow. */
export interface StudyRequest {
  readonly kind: 'study';
  readonly id: number;
  /** with everything typed written over it */
  readonly documents: HornAndSetup;
  readonly keyId: string;
  readonly airC: number;
  readonly a4Hz: number;
  /** left out where pitches are as described */
  readonly calibration?: CalibrationSource;
}

/** Asks for one opening of the key the last study prepared. */
export interface PointRequest {
  readonly kind: 'point';
  readonly id: number;
  readonly studyId: number;
  readonly frontMm: number;
  /** whether the hand rests there, so that it is worth telling how sure the changes are */
  readonly sure: boolean;
}

/** Asks for the whole horn as found; the worker keeps it for the moves that follow. */
export interface ScaleRequest {
  readonly kind: 'scale';
  readonly id: number;
  /** with everything typed written over it */
  readonly documents: HornAndSetup;
  readonly airC: number;
  readonly a4Hz: number;
  /** left out where pitches are as described */
  readonly calibration?: CalibrationSource;
}

/** Asks for the whole horn of the last scale with some openings otherwise. */
export interface MoveRequest {
  readonly kind: 'move';
  readonly id: number;
  readonly scaleId: number;
  readonly proposedMm: ProposedOpenings;
}

/** Asks what loud playing does to one note of the last scale, as found and as proposed. */
export interface LoudRequest {
  readonly kind: 'loud';
  readonly id: number;
  readonly scaleId: number;
  readonly proposedMm: ProposedOpenings;
  readonly fingeringId: string;
}

/** Asks how sure a few notes of the last scale are, as found and as they move. */
export interface SureRequest {
  readonly kind: 'sure';
  readonly id: number;
  readonly scaleId: number;
  readonly proposedMm: ProposedOpenings;
  /** place of the first in the report's order */
  readonly from: number;
}

/** Asks for the sheet: every key in every setup, what needs no bore; the worker keeps it for what follows. */
export interface SheetRequest {
  readonly kind: 'sheet';
  readonly id: number;
  readonly documents: SheetDocuments;
  readonly airC: number;
  readonly a4Hz: number;
  /** left out where pitches are as described */
  readonly calibration?: CalibrationSource;
}

/** Asks where more height on one key of the last sheet stops helping. */
export interface EnoughRequest {
  readonly kind: 'enough';
  readonly id: number;
  readonly sheetId: number;
  readonly pad: string;
}

/** Asks what the notes played say of the horn. */
export interface CalibrationRequest {
  readonly kind: 'calibration';
  readonly id: number;
  /** as found */
  readonly documents: HornAndSetup;
  readonly source: CalibrationSource;
  readonly airC: number;
  readonly a4Hz: number;
}

/** What many a request says: the horn as found, or as it stands where a leak is looked for, and the day. */
interface AsFound {
  readonly id: number;
  readonly documents: HornAndSetup;
  readonly airC: number;
  readonly a4Hz: number;
}

/** Asks what proposed openings do through the links. */
export interface FollowRequest extends AsFound {
  readonly kind: 'follow';
  /** sparse, read over as found */
  readonly proposed: SetupDocument;
}

/** Asks what a leak costs, and how wide it may be. */
export interface LeakRequest extends AsFound {
  readonly kind: 'leak';
  readonly fault: LeakFault;
  readonly limit: LeakLimit;
}

/** Asks for the same leak at every place, on every note. */
export interface LeakMapRequest extends AsFound {
  readonly kind: 'leak map';
  readonly gapMm: number;
}

/** Asks what the heights of a note's keys can still bring, beside what leaks would cost it. */
export interface HeightOrLeakRequest extends AsFound {
  readonly kind: 'height or leak';
  readonly fingeringId: string;
}

/** Asks what pads of another thickness do. */
export interface PadChangeRequest extends AsFound {
  readonly kind: 'pad change';
  /** mm by pad id, minus for a thinner pad */
  readonly thickerMm: Readonly<Record<string, number>>;
  readonly seating: PadChangeReport['seating'];
}

/** Asks for the proposed setup. */
export interface ProposalRequest extends AsFound {
  readonly kind: 'proposal';
  /** as it stands: what the proposal starts from, and which takes were played on it */
  readonly standing: HornAndSetup;
  readonly playedIn: PlayedSetup;
  /** pad ids */
  readonly locked: readonly string[];
  readonly prefer: Preference;
  /** left out where pitches are as described; its takes are where the notes start from */
  readonly calibration?: CalibrationSource;
}

/** Asks what differs between setups side by side, the reference first; null for one that is not there. */
export interface CompareRequest {
  readonly kind: 'compare';
  readonly id: number;
  readonly columns: readonly (HornAndSetup | null)[];
  /** the horn in hand as found, which may be set like one of them */
  readonly bench: HornAndSetup;
  readonly airC: number;
  readonly a4Hz: number;
}

/** Asks for every number of the player’s sheet. */
export interface PlayerSheetRequest {
  readonly kind: 'player sheet';
  readonly id: number;
  readonly question: PlayerSheetQuestion;
}

export type RegulationRequest =
  FollowRequest | LeakRequest | LeakMapRequest | HeightOrLeakRequest | PadChangeRequest;

export type PhysicsRequest =
  | StudyRequest
  | PointRequest
  | ScaleRequest
  | MoveRequest
  | LoudRequest
  | SureRequest
  | SheetRequest
  | EnoughRequest
  | CalibrationRequest
  | CompareRequest
  | PlayerSheetRequest
  | ProposalRequest
  | RegulationRequest;

/** What each kind of request is answered with. */
export interface Answers {
  readonly follow: FollowedReport;
  readonly leak: LeakAnswer;
  readonly 'leak map': LeakMapReport;
  readonly 'height or leak': HeightOrLeakReport;
  readonly 'pad change': PadChangeReport;
  readonly study: StudyReport;
  readonly point: SurePointReport;
  readonly scale: ScaleReport;
  readonly move: ScaleNumbers;
  readonly loud: LoudReport;
  readonly sure: SurenessSlice;
  readonly sheet: SheetReport;
  readonly enough: EnoughReport;
  readonly calibration: CalibrationReport;
  readonly compare: ComparedColumns;
  readonly 'player sheet': PlayerSheetFacts;
  readonly proposal: ProposalReport;
}

export type PhysicsKind = keyof Answers;

export type PhysicsReply = {
  [Kind in PhysicsKind]: {
    readonly kind: Kind;
    readonly id: number;
    readonly outcome: Outcome<Answers[Kind]>;
    /** how long the worker worked, for whoever measures */
    readonly tookMs: number;
  };
}[PhysicsKind];

/** An answer, or a sentence on why there is none. */
export type Outcome<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly message: string };
