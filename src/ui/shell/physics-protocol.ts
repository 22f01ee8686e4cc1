import type { HornDocument } from '../../documents/horn-document.ts';
import type { PointReport, StudyReport } from '../state/study-report.ts';

/** Asks for a whole study; the worker keeps the prepared key for the points that follow. */
export interface StudyRequest {
  readonly kind: 'study';
  readonly id: number;
  /** with everything typed written over it */
  readonly document: HornDocument;
  readonly keyId: string;
  readonly airC: number;
  readonly a4Hz: number;
}

/** Asks for one opening of the key the last study prepared. */
export interface PointRequest {
  readonly kind: 'point';
  readonly id: number;
  readonly studyId: number;
  readonly frontMm: number;
}

export type PhysicsRequest = StudyRequest | PointRequest;

export type PhysicsReply =
  | { readonly kind: 'study'; readonly id: number; readonly outcome: Outcome<StudyReport> }
  | { readonly kind: 'point'; readonly id: number; readonly outcome: Outcome<PointReport> };

/** An answer, or a sentence on why there is none. */
export type Outcome<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly message: string };
