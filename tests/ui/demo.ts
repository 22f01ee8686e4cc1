import { contentsOrFirstVisit, type BenchContents } from '../../src/documents/bench-contents.ts';
import { readLibrary } from '../../src/documents/library-file.ts';
import {
  makeAirColumn,
  studyVenting,
  type VentingStudy,
  type VentingStudyOptions,
} from '../../src/acoustics/index.ts';
import { plusMinusOf } from '../../src/documents/plus-minus.ts';
import { loadHorn, type HornAndSetup } from '../../src/documents/to-acoustics.ts';
import { demoDocument, demoFile, type DemoName } from '../acoustics/demo-horns.ts';
import { withKeyLengths, type KeyLengths } from '../../src/ui/state/key-lengths.ts';
import { prepareSheet, type PreparedSheet, type SheetDocuments } from '../../src/ui/state/sheet-numbers.ts';
import { beforePlaying, makeSurenessOf, type SurenessOf } from '../../src/ui/state/scale-sureness.ts';
import { prepareScale } from '../../src/ui/state/whole-scale.ts';
import { makeStudyReport, type StudyReport } from '../../src/ui/state/study-report.ts';

/** The demo horns as they are shipped. */
export const ALTO = demoDocument('alto');
export const TENOR = demoDocument('tenor');

/** A demo horn on the bench for the first time. */
export function onTheBench(name: DemoName): BenchContents {
  let count = 0;
  const makeId = (): string => `${name}-${++count}`;
  const { records } = readLibrary(demoFile(name), makeId);
  const plan = { date: '2026-05-04', airC: 26.85, a4Hz: 440 };
  return contentsOrFirstVisit(records, records.horns[0].id, plan, makeId)!;
}

/** Lengths typed, by pad id. */
export type Typed = Readonly<Record<string, KeyLengths>>;

/** A horn as found with lengths typed over it. */
export function typedOver(documents: HornAndSetup, typed: Typed): HornAndSetup {
  return Object.entries(typed).reduce((now, [id, lengths]) => withKeyLengths(now, id, lengths), documents);
}

/** The core's study of a key, with something typed over the document. */
export function study(
  keyId: string,
  typed: Typed = {},
  options: VentingStudyOptions = {},
  documents = ALTO,
): VentingStudy {
  const read = loadHorn(typedOver(documents, typed));
  if (!read.ok) throw new Error(read.issues[0].message);
  const air = makeAirColumn({ mouthpieceC: documents.setup.airC ?? 26.85 });
  return studyVenting(read.value.horn, read.value.setup, keyId, air, options);
}

/** The same as the worker would send it. */
export function report(keyId: string, typed: Typed = {}, options: VentingStudyOptions = {}): StudyReport {
  return makeStudyReport(study(keyId, typed, options));
}

/** The study with every reading’s ±, as the worker sends it. */
export function sureReport(keyId: string, typed: Typed = {}, documents = ALTO): StudyReport {
  const read = loadHorn(typedOver(documents, typed));
  if (!read.ok) throw new Error(read.issues[0].message);
  return makeStudyReport(study(keyId, typed, { plusMinus: plusMinusOf(read.value) }, documents));
}

/** The whole horn, prepared and as found, as the worker prepares it. */
export function scale(typed: Typed = {}, documents = ALTO, a4Hz = 440): ReturnType<typeof prepareScale> {
  const read = loadHorn(typedOver(documents, typed));
  if (!read.ok) throw new Error(read.issues[0].message);
  return prepareScale(read.value, documents.setup.airC ?? 26.85, a4Hz);
}

/** How sure the whole horn is, as the worker tells it. */
export function scaleSureness(documents = ALTO): SurenessOf {
  const read = loadHorn(documents);
  if (!read.ok) throw new Error(read.issues[0].message);
  return makeSurenessOf(scale({}, documents).prepared, beforePlaying(plusMinusOf(read.value)));
}

/** What the sheet's physics is asked of. */
export function sheetDocuments({ horn, asFound, proposed, asSet }: BenchContents): SheetDocuments {
  const setups = { asFound: asFound.document, proposed: proposed.document, asSet: asSet.document };
  return { horn: horn.document, setups };
}

/** The sheet as the worker prepares it. */
export function preparedSheet(contents: BenchContents): PreparedSheet {
  const { airC, a4Hz } = contents.visit.document;
  const outcome = prepareSheet(sheetDocuments(contents), airC, a4Hz);
  if (!outcome.ok) throw new Error(outcome.message);
  return outcome.value;
}

/** Words with plain spaces, however they are kept together. */
export function plain(text: string): string {
  return text.replaceAll('\u00a0', ' ');
}
