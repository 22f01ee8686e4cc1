import { makePadPose, type MeasuringPoint } from '../../acoustics/index.ts';
import type { BenchContents } from '../../documents/bench-contents.ts';
import { isWhole } from '../../documents/complete-setup.ts';
import type { HornDocument, KeyedHole } from '../../documents/horn-document.ts';
import type { Reading } from '../../documents/readings.ts';
import type { SetupDocument, WholeKeySetup } from '../../documents/setup-document.ts';
import { withSetLike } from '../../documents/set-like.ts';
import { withHornLength, withOpeningReading, withSetupLength } from '../../documents/sheet-edits.ts';
import type { HornAndSetup } from '../../documents/to-acoustics.ts';
import type { LengthId } from './fields.ts';
import { memoLast } from './memo-last.ts';

/** What the technician types of one key. Left out: as it was. */
export type KeyLengths = { readonly [Id in LengthId]?: number } & {
  readonly measuredAt?: MeasuringPoint;
  /** how far they may be off, where that was typed with them; else what their kind usually is */
  readonly plusMinusMm?: { readonly [Id in LengthId]?: number };
};

/** A key's measurements in use. */
export type KeyMeasurements = Required<Omit<KeyLengths, 'adhesiveBedMm' | 'plusMinusMm'>>;

/** What was read on this horn. */
export const MEASURED: Reading = { origin: 'measured' };

/** What was read on this horn, with its ± where that was typed too. */
function readWithin(plusMinusMm: number | null | undefined): Reading {
  return plusMinusMm === null || plusMinusMm === undefined ? MEASURED : { ...MEASURED, plusMinusMm };
}

/** One length as it was typed, with its ± where that was typed too. */
export function typedLength(field: LengthId, mm: number, plusMinusMm: number | null): KeyLengths {
  return plusMinusMm === null ? { [field]: mm } : { [field]: mm, plusMinusMm: { [field]: plusMinusMm } };
}

/** What is proposed is meant, not read. */
export const MEANT: Reading = { origin: 'derived', plusMinusMm: 0 };

const HORN_LENGTHS = ['hingeMm', 'hingeHeightMm', 'diameterMm', 'chimneyMm', 'rimMm'] as const;
const SETUP_LENGTHS = ['padDiameterMm', 'padThicknessMm', 'adhesiveBedMm'] as const;

/** The hole and setup entry of one key. @throws RangeError where the documents have none */
export function keyOf(
  { horn, setup }: HornAndSetup,
  keyId: string,
): { hole: KeyedHole; entry: WholeKeySetup } {
  const hole = horn.holes.find((h): h is KeyedHole => h.id === keyId && h.key !== null);
  const entry = setup.keys.find((k) => k.pad === keyId);
  if (hole === undefined || entry === undefined || !isWhole(entry)) {
    throw new RangeError(`invalid key: "${keyId}"; expected a pad with a hinge and a setup entry`);
  }
  return { hole, entry };
}

/** A key's measurements as the documents have them. */
export function measurementsOf(documents: HornAndSetup, keyId: string): KeyMeasurements {
  const { hole, entry } = keyOf(documents, keyId);
  return {
    openingMm: entry.openingMm,
    measuredAt: entry.measuredAt,
    hingeMm: hole.key.hingeMm,
    hingeHeightMm: hole.key.hingeHeightMm,
    padDiameterMm: entry.padDiameterMm,
    padThicknessMm: entry.padThicknessMm,
    diameterMm: hole.diameterMm,
    chimneyMm: hole.chimneyMm,
    rimMm: hole.rimMm,
  };
}

/** A horn and its whole setup with some of one key's lengths as they were read; what is not typed stays itself. */
export function withKeyLengths(documents: HornAndSetup, keyId: string, lengths: KeyLengths): HornAndSetup {
  let { horn, setup } = documents;
  for (const field of HORN_LENGTHS) {
    const mm = lengths[field];
    if (mm !== undefined)
      horn = withHornLength(horn, keyId, field, mm, readWithin(lengths.plusMinusMm?.[field]));
  }
  for (const field of SETUP_LENGTHS) {
    const mm = lengths[field];
    if (mm !== undefined)
      setup = withSetupLength(setup, keyId, field, mm, readWithin(lengths.plusMinusMm?.[field]));
  }
  const { openingMm, measuredAt } = lengths;
  if (openingMm !== undefined || measuredAt !== undefined) {
    const { entry } = keyOf(documents, keyId);
    const opening = { mm: openingMm ?? entry.openingMm, at: measuredAt ?? entry.measuredAt };
    setup = withOpeningReading(setup, keyId, opening, readWithin(lengths.plusMinusMm?.openingMm));
  }
  return { horn, setup };
}

/** The same for what is on the bench: the horn and the setup as found. */
export function withFoundLengths(contents: BenchContents, keyId: string, lengths: KeyLengths): BenchContents {
  const { horn, setup } = withKeyLengths(foundDocuments(contents), keyId, lengths);
  return {
    ...contents,
    horn: horn === contents.horn.document ? contents.horn : { ...contents.horn, document: horn },
    asFound:
      setup === contents.asFound.document ? contents.asFound : { ...contents.asFound, document: setup },
  };
}

/** A key proposed at a front opening, mm; null proposes nothing for it. */
export function withProposed(contents: BenchContents, keyId: string, frontMm: number | null): BenchContents {
  const { proposed } = contents;
  const opening = frontMm === null ? null : ({ mm: frontMm, at: 'front' } as const);
  return {
    ...contents,
    proposed: { ...proposed, document: withOpeningReading(proposed.document, keyId, opening, MEANT) },
  };
}

/** A key set to an opening as read; null leaves it as found. */
export function withSet(
  contents: BenchContents,
  keyId: string,
  opening: { readonly mm: number; readonly at: MeasuringPoint; readonly plusMinusMm?: number | null } | null,
): BenchContents {
  const { asSet } = contents;
  const reading = readWithin(opening?.plusMinusMm);
  return {
    ...contents,
    asSet: { ...asSet, document: withOpeningReading(asSet.document, keyId, opening, reading) },
  };
}

/** No opening proposed for any key, nor another horn it was to be like. */
export function withoutProposals(contents: BenchContents): BenchContents {
  const document = contents.proposed.document.keys.reduce(
    (setup, { pad }) => withOpeningReading(setup, pad, null),
    contents.proposed.document,
  );
  const visit = withSetLike(contents.visit.document, null);
  return {
    ...contents,
    visit: visit === contents.visit.document ? contents.visit : { ...contents.visit, document: visit },
    proposed: { ...contents.proposed, document },
  };
}

const pairMemo = memoLast((horn: HornDocument, setup: SetupDocument): HornAndSetup => ({ horn, setup }));

/** The horn and its setup as found, as one: the same pair for the same documents. */
export function foundDocuments({ horn, asFound }: BenchContents): HornAndSetup {
  return pairMemo(horn.document, asFound.document);
}

/**
 * An opening at the front, mm, wherever it was read.
 *
 * @throws RangeError where the key could not stand so
 */
export function openingAt(
  documents: HornAndSetup,
  keyId: string,
  opening: { readonly mm: number; readonly at: MeasuringPoint },
  wanted: MeasuringPoint,
): number {
  if (opening.at === wanted) return opening.mm;
  const { hingeMm, hingeHeightMm, padDiameterMm } = measurementsOf(documents, keyId);
  const hinge = { distance: hingeMm / 1000, height: hingeHeightMm / 1000 };
  return (
    makePadPose(hinge, padDiameterMm / 2000, { at: opening.at, height: opening.mm / 1000 })[wanted] * 1000
  );
}
