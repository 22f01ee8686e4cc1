import type { MeasuringPoint } from '../../acoustics/index.ts';
import { isWhole } from '../../documents/complete-setup.ts';
import { keyedHoles, type KeyedHole } from '../../documents/horn-document.ts';
import type { WholeKeySetup } from '../../documents/setup-document.ts';
import type { HornAndSetup } from '../../documents/to-acoustics.ts';

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

/** The hole and setup entry of one key. @throws RangeError where the document has none */
export function keyOf(
  { horn, setup }: HornAndSetup,
  keyId: string,
): { hole: KeyedHole; entry: WholeKeySetup } {
  const hole = keyedHoles(horn).find((h) => h.id === keyId);
  const entry = setup.keys.find((k) => k.pad === keyId);
  if (hole === undefined || entry === undefined || !isWhole(entry)) {
    throw new RangeError(`invalid key: "${keyId}"; expected a pad with a hinge and a setup entry`);
  }
  return { hole, entry };
}

/** A key's measurements as the document has them. */
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

/** A new document with the edits written over it. */
export function applyEdits({ horn, setup }: HornAndSetup, edits: HornEdits): HornAndSetup {
  return {
    horn: {
      ...horn,
      holes: horn.holes.map((hole) => {
        const edit = edits[hole.id];
        if (edit === undefined || hole.key === null) return hole;
        return {
          ...hole,
          diameterMm: edit.diameterMm ?? hole.diameterMm,
          chimneyMm: edit.chimneyMm ?? hole.chimneyMm,
          rimMm: edit.rimMm ?? hole.rimMm,
          key: {
            ...hole.key,
            hingeMm: edit.hingeMm ?? hole.key.hingeMm,
            hingeHeightMm: edit.hingeHeightMm ?? hole.key.hingeHeightMm,
          },
        };
      }),
    },
    setup: {
      ...setup,
      keys: setup.keys.map((entry) => {
        const edit = edits[entry.pad];
        if (edit === undefined) return entry;
        return {
          ...entry,
          ...(edit.openingMm === undefined ? {} : { openingMm: edit.openingMm }),
          ...(edit.measuredAt === undefined ? {} : { measuredAt: edit.measuredAt }),
          ...(edit.padDiameterMm === undefined ? {} : { padDiameterMm: edit.padDiameterMm }),
          ...(edit.padThicknessMm === undefined ? {} : { padThicknessMm: edit.padThicknessMm }),
        };
      }),
    },
  };
}
