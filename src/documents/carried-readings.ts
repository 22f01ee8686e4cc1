import type { SetupDocument } from './setup-document.ts';
import type { KnownReading } from './readings.ts';

// An opening moves with every cork that settles: what was read on a visit before is known, and is not read today.

/** A setup whose measured openings say on which day they were read; one that says so keeps its day. */
export function openingsReadOn(setup: SetupDocument, day: string): SetupDocument {
  return {
    ...setup,
    keys: setup.keys.map((key) => {
      const reading = key.readings?.openingMm;
      const isRead = key.openingMm !== undefined && (reading?.origin ?? setup.origin) === 'measured';
      if (!isRead || reading?.readOn !== undefined) return key;
      return {
        ...key,
        readings: { ...key.readings, openingMm: { ...reading, origin: 'measured', readOn: day } },
      };
    }),
  };
}

/** The day before a visit’s on which something was read; null for what was read on its day, or never. */
export function dayBefore(
  { origin, readOn }: Pick<KnownReading, 'origin' | 'readOn'>,
  visit: { readonly date: string },
): string | null {
  return origin === 'measured' && readOn !== null && readOn < visit.date ? readOn : null;
}
