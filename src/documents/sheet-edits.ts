import type { HoleDocument, HornDocument, HornField, KeyedHole } from './horn-document.ts';
import { knownReading, type KnownReading, type Reading } from './readings.ts';
import {
  SETUP_FIELDS,
  type KeySetupDocument,
  type SetupDocument,
  type SetupField,
} from './setup-document.ts';

/** Lengths of a horn that belong to its key rather than its hole. */
const KEY_FIELDS: readonly HornField[] = ['hingeMm', 'hingeHeightMm', 'cupFloorMm', 'cupDiameterMm'];

/** Lengths a horn may be without. */
const OPTIONAL: readonly HornField[] = ['cupFloorMm', 'cupDiameterMm'];

/**
 * A horn with one length of one pad otherwise. Nothing is checked here: the horn is read again as a whole.
 *
 * @param mm null takes away a length that the horn may be without
 * @throws RangeError for a pad the horn has not, and for taking away what it must have
 */
export function withHornLength(
  horn: HornDocument,
  pad: string,
  field: HornField,
  mm: number | null,
  reading?: Reading,
): HornDocument {
  holeIn(horn, pad);
  if (mm === null && !OPTIONAL.includes(field)) {
    throw new RangeError(`invalid ${field} of ${pad}: nothing; expected a length`);
  }
  const changed = (hole: HoleDocument): HoleDocument => {
    const readings = withReading(hole.readings, field, mm === null ? undefined : reading);
    const { readings: before, ...rest } = hole;
    const lengths = KEY_FIELDS.includes(field)
      ? { ...rest, key: withValue((hole as KeyedHole).key, field, mm) }
      : withValue(rest, field, mm);
    return (readings === undefined ? lengths : { ...lengths, readings }) as HoleDocument;
  };
  return { ...horn, holes: horn.holes.map((hole) => (hole.id === pad ? changed(hole) : hole)) };
}

/**
 * A setup with one length of one key otherwise; openings go by {@link withOpeningReading}.
 *
 * @param mm null leaves it to the setup this one is read over
 */
export function withSetupLength(
  setup: SetupDocument,
  pad: string,
  field: Exclude<SetupField, 'openingMm'>,
  mm: number | null,
  reading?: Reading,
): SetupDocument {
  return withKey(setup, pad, field, mm === null ? undefined : reading, (key) => withValue(key, field, mm));
}

/** A setup with one key's opening otherwise; null leaves it to the setup this one is read over. */
export function withOpeningReading(
  setup: SetupDocument,
  pad: string,
  opening: { readonly mm: number; readonly at: NonNullable<KeySetupDocument['measuredAt']> } | null,
  reading?: Reading,
): SetupDocument {
  return withKey(setup, pad, 'openingMm', opening === null ? undefined : reading, (key) => {
    const { openingMm, measuredAt, ...rest } = key;
    return opening === null ? rest : { ...rest, openingMm: opening.mm, measuredAt: opening.at };
  });
}

/** A length in use, and what is known of it; null where there is none. */
export interface KnownLength extends KnownReading {
  readonly mm: number;
}

/** A length of what was built. @throws RangeError for a pad the horn has not */
export function knownHornLength(horn: HornDocument, pad: string, field: HornField): KnownLength | null {
  const hole = holeIn(horn, pad);
  const from: Partial<Record<HornField, number | undefined>> = KEY_FIELDS.includes(field)
    ? (hole.key ?? {})
    : (hole as Partial<Record<HornField, number>>);
  const mm = from[field];
  if (mm === undefined) return null;
  return { mm, ...knownReading(field, hole.readings?.[field], horn.origin) };
}

/** A length of a setup, whole or layered. */
export function knownSetupLength(setup: SetupDocument, pad: string, field: SetupField): KnownLength | null {
  const key = setup.keys.find((k) => k.pad === pad);
  const mm = key?.[field];
  if (mm === undefined) return null;
  return { mm, ...knownReading(field, key?.readings?.[field], setup.origin) };
}

function holeIn(horn: HornDocument, pad: string): HoleDocument {
  const hole = horn.holes.find((h) => h.id === pad);
  if (hole === undefined) throw new RangeError(`invalid pad: "${pad}"; expected one of the horn’s`);
  return hole;
}

function withKey(
  setup: SetupDocument,
  pad: string,
  field: SetupField,
  reading: Reading | undefined,
  change: (key: KeySetupDocument) => KeySetupDocument,
): SetupDocument {
  const before = setup.keys.find((k) => k.pad === pad) ?? { pad };
  const { readings: old, ...rest } = change(before);
  const readings = withReading(old, field, reading);
  const after: KeySetupDocument = readings === undefined ? rest : { ...rest, readings };
  const isEmpty = after.remark === undefined && SETUP_FIELDS.every((f) => after[f] === undefined);
  const others = setup.keys.filter((k) => k.pad !== pad);
  if (isEmpty) return { ...setup, keys: others };
  const keys = setup.keys.some((k) => k.pad === pad)
    ? setup.keys.map((k) => (k.pad === pad ? after : k))
    : [...others, after];
  return { ...setup, keys };
}

/** A number written into, or taken out of, a group of fields. */
function withValue<T extends object>(fields: T, field: string, mm: number | null): T {
  if (mm !== null) return { ...fields, [field]: mm };
  const rest: Partial<Record<string, unknown>> = { ...fields };
  delete rest[field];
  return rest as T;
}

/** Readings with one of them otherwise; undefined where none is left. */
function withReading<F extends string>(
  readings: Partial<Record<F, Reading | undefined>> | undefined,
  field: F,
  reading: Reading | undefined,
): Partial<Record<F, Reading | undefined>> | undefined {
  const next: Partial<Record<F, Reading | undefined>> = { ...readings };
  if (reading === undefined) delete next[field];
  else next[field] = reading;
  return Object.keys(next).length === 0 ? undefined : next;
}
