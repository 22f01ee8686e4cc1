import { fileOf, KEPT_KINDS, keptList, type UnreadRecords } from './library-records.ts';

/** A file's text in pieces, and how many documents could not be written down. */
export interface FileTextParts {
  readonly parts: readonly string[];
  readonly lost: number;
}

/**
 * Writes records as a library file, one record a line. A damaged document goes as it is; one that no file can hold
 * is left empty, so that it does not lose the rest.
 */
export function fileTextParts(records: UnreadRecords): FileTextParts {
  const { kind, version, ...lists } = fileOf(records);
  let lost = 0;
  const written = (record: object): string => {
    try {
      return JSON.stringify(record);
    } catch {
      lost++;
      return JSON.stringify({ ...record, document: null });
    }
  };
  const parts = [`{"kind":${JSON.stringify(kind)},"version":${version}`];
  for (const place of KEPT_KINDS) {
    parts.push(`,\n"${place}":[`);
    lists[place].forEach((record, i) => parts.push(`${i === 0 ? '\n' : ',\n'}${written(record)}`));
    parts.push(']');
  }
  parts.push('}\n');
  return { parts, lost };
}

/** Records in as many parts as there have to be so that none is too long to be brought in again. */
export function inParts(records: UnreadRecords, longest: number): readonly UnreadRecords[] {
  const sizes = new Map<string, number>();
  for (const [, { hornId, ...record }] of keptList(records)) {
    sizes.set(hornId, (sizes.get(hornId) ?? 0) + sizeOf(record));
  }
  const partOf = new Map<string, number>();
  let part = 0;
  let filled = 0;
  for (const [hornId, size] of sizes) {
    if (filled > 0 && filled + size > longest) [part, filled] = [part + 1, 0];
    filled += size;
    partOf.set(hornId, part);
  }
  return Array.from({ length: part + 1 }, (_, i) => ({
    horns: records.horns.filter(({ id }) => partOf.get(id) === i),
    setups: records.setups.filter(({ hornId }) => partOf.get(hornId) === i),
    visits: records.visits.filter(({ hornId }) => partOf.get(hornId) === i),
  }));
}

/** What a record with its ids takes in a file, about, letters. */
function sizeOf(record: object): number {
  try {
    return JSON.stringify(record).length + 100;
  } catch {
    return 100;
  }
}

/** A name as part of a file's name: plain letters and hyphens. */
export function fileNameOf(name: string): string {
  const plain = name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '');
  return [...plain].slice(0, 60).join('') || 'horn';
}
