import {
  makeAirColumn,
  studyVenting,
  type VentingStudy,
  type VentingStudyOptions,
} from '../../src/acoustics/index.ts';
import { loadHorn } from '../../src/documents/to-acoustics.ts';
import { demoDocument } from '../acoustics/demo-horns.ts';
import { applyEdits, type HornEdits } from '../../src/ui/state/key-edits.ts';
import { prepareScale } from '../../src/ui/state/whole-scale.ts';
import { makeStudyReport, type StudyReport } from '../../src/ui/state/study-report.ts';

/** The demo horns as they are shipped. */
export const ALTO = demoDocument('alto');
export const TENOR = demoDocument('tenor');

/** The core's study of a key, with something typed over the document. */
export function study(
  keyId: string,
  edits: HornEdits = {},
  options: VentingStudyOptions = {},
  documents = ALTO,
): VentingStudy {
  const read = loadHorn(applyEdits(documents, edits));
  if (!read.ok) throw new Error(read.issues[0].message);
  const air = makeAirColumn({ mouthpieceC: documents.setup.airC ?? 26.85 });
  return studyVenting(read.value.horn, read.value.setup, keyId, air, options);
}

/** The same as the worker would send it. */
export function report(keyId: string, edits: HornEdits = {}, options: VentingStudyOptions = {}): StudyReport {
  return makeStudyReport(study(keyId, edits, options));
}

/** The whole horn, prepared and as found, as the worker prepares it. */
export function scale(edits: HornEdits = {}, documents = ALTO, a4Hz = 440): ReturnType<typeof prepareScale> {
  const read = loadHorn(applyEdits(documents, edits));
  if (!read.ok) throw new Error(read.issues[0].message);
  return prepareScale(read.value, documents.setup.airC ?? 26.85, a4Hz);
}

/** Words with plain spaces, however they are kept together. */
export function plain(text: string): string {
  return text.replaceAll('\u00a0', ' ');
}
