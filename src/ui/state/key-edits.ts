import type { MeasuringPoint } from '../../acoustics/index.ts';
import type { HornDocument, KeySetupDocument } from '../../documents/horn-document.ts';

/** A hole with a key on it: vents have none. */
export type KeyedHole = HornDocument['holes'][number] & {
  readonly key: NonNullable<HornDocument['holes'][number]['key']>;
};

/** What the technician has typed over the document, for one key. Left out: as the document has it. */
export interface KeyEdits {
  readonly openingMm?: number;
  readonly measuredAt?: MeasuringPoint;
  readonly hingeMm?: number;
  readonly hingeHeightMm?: number;
  readonly padDiameterMm?: number;
  readonly padThicknessMm?: number;
  readonly diameterMm?: number;
  readonly chimneyMm?: number;
  readonly rimMm?: number;
}

/** Edits by pad id. */
export type HornEdits = Readonly<Record<string, KeyEdits>>;

/** A key's measurements in use: the document's, with what was typed over them. */
export type KeyMeasurements = Required<KeyEdits>;

/** Every pad with a hinge, from the bell up, as they are numbered. */
export function keyedHoles(document: HornDocument): KeyedHole[] {
  return document.holes
    .filter((hole): hole is KeyedHole => hole.key !== null)
    .sort((a, b) => a.number - b.number);
}

/** The hole and setup entry of one key. @throws RangeError where the document has none */
export function keyOf(document: HornDocument, keyId: string): { hole: KeyedHole; entry: KeySetupDocument } {
  const hole = keyedHoles(document).find((h) => h.id === keyId);
  const entry = document.setup.keys.find((k) => k.pad === keyId);
  if (hole === undefined || entry === undefined) {
    throw new RangeError(`invalid key: "${keyId}"; expected a pad with a hinge and a setup entry`);
  }
  return { hole, entry };
}

/** A key's measurements as the document has them. */
export function measurementsOf(document: HornDocument, keyId: string): KeyMeasurements {
  const { hole, entry } = keyOf(document, keyId);
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

/** A new document with the edits written over it. */
export function applyEdits(document: HornDocument, edits: HornEdits): HornDocument {
  return {
    ...document,
    holes: document.holes.map((hole) => {
      const edit = edits[hole.id];
      if (edit === undefined || hole.key === null) return hole;
      return {
        ...hole,
        diameterMm: edit.diameterMm ?? hole.diameterMm,
        chimneyMm: edit.chimneyMm ?? hole.chimneyMm,
        rimMm: edit.rimMm ?? hole.rimMm,
        key: {
          hingeMm: edit.hingeMm ?? hole.key.hingeMm,
          hingeHeightMm: edit.hingeHeightMm ?? hole.key.hingeHeightMm,
        },
      };
    }),
    setup: {
      ...document.setup,
      keys: document.setup.keys.map((entry) => {
        const edit = edits[entry.pad];
        if (edit === undefined) return entry;
        return {
          ...entry,
          openingMm: edit.openingMm ?? entry.openingMm,
          measuredAt: edit.measuredAt ?? entry.measuredAt,
          padDiameterMm: edit.padDiameterMm ?? entry.padDiameterMm,
          padThicknessMm: edit.padThicknessMm ?? entry.padThicknessMm,
        };
      }),
    },
  };
}
