import type { HornDocument } from './horn-document.ts';
import {
  SETUP_FIELDS,
  type KeySetupDocument,
  type SetupDocument,
  type WholeKeySetup,
} from './setup-document.ts';

/** A setup with an entry for every key, and everything in it that sound needs. */
export type WholeSetup = Omit<SetupDocument, 'keys'> & { readonly keys: readonly WholeKeySetup[] };

/** Whether a key says all that sound needs. */
export function isWhole(key: KeySetupDocument): key is WholeKeySetup {
  return (
    key.openingMm !== undefined &&
    key.measuredAt !== undefined &&
    key.padDiameterMm !== undefined &&
    key.padThicknessMm !== undefined
  );
}

/** Whether a sparse setup says nothing yet. */
export function saysNothing({ keys, links = [] }: SetupDocument): boolean {
  return keys.length === 0 && links.length === 0;
}

/**
 * Reads one setup over another: what the upper leaves out is as in the lower. An opening goes with its
 * measuring point, and a number with its reading; a number that comes from the lower keeps the lower's origin.
 */
export function layered(upper: SetupDocument, lower: SetupDocument): SetupDocument {
  const pads = [...new Set([...lower.keys, ...upper.keys].map((k) => k.pad))];
  const links = mergedLinks(upper, lower);
  return {
    ...lower,
    ...upper,
    keys: pads.map((pad) =>
      overKey(
        upper.keys.find((k) => k.pad === pad),
        lower.keys.find((k) => k.pad === pad),
        upper.origin === lower.origin ? null : lower.origin,
      ),
    ),
    ...(links.length === 0 ? {} : { links }),
  };
}

function overKey(
  upper: KeySetupDocument | undefined,
  lower: KeySetupDocument | undefined,
  lowerOrigin: SetupDocument['origin'] | null,
): KeySetupDocument {
  if (lower === undefined) return upper!;
  const readings: NonNullable<KeySetupDocument['readings']> = { ...lower.readings };
  if (lowerOrigin !== null) {
    for (const field of SETUP_FIELDS) {
      if (lower[field] !== undefined) readings[field] ??= { origin: lowerOrigin };
    }
  }
  for (const field of SETUP_FIELDS) if (upper?.[field] !== undefined) delete readings[field];
  Object.assign(readings, upper?.readings);
  const merged = { ...lower, ...upper };
  delete merged.readings;
  return Object.keys(readings).length === 0 ? merged : { ...merged, readings };
}

function mergedLinks(upper: SetupDocument, lower: SetupDocument): NonNullable<SetupDocument['links']> {
  const same = (a: { driver: string; driven: string }, b: { driver: string; driven: string }): boolean =>
    a.driver === b.driver && a.driven === b.driven;
  const kept = (lower.links ?? []).map((l) => ({ ...l, ...upper.links?.find((u) => same(u, l)) }));
  const more = (upper.links ?? []).filter((u) => !kept.some((k) => same(k, u)));
  return [...kept, ...more];
}

/** The keys a horn has that a setup says too little of, by pad id. */
export function missingKeys(horn: HornDocument, setup: SetupDocument): string[] {
  return horn.holes.flatMap((hole) => {
    if (hole.key === null) return [];
    const entry = setup.keys.find((k) => k.pad === hole.id);
    return entry !== undefined && isWhole(entry) ? [] : [hole.id];
  });
}
