import { LIBRARY_VERSION } from '../../documents/library-file.ts';

/** A record as it is kept. The document is whatever was written: it is read with care, like a file. */
export interface Kept {
  readonly id: string;
  /** of a horn, its own id */
  readonly hornId: string;
  readonly document: unknown;
  /** another at every write, so that two tabs notice each other */
  readonly revision: string;
}

/** The kinds of record. */
export type KeptKind = 'horns' | 'setups' | 'visits';
export const KEPT_KINDS: readonly KeptKind[] = ['horns', 'setups', 'visits'];

/** Records of one horn, some, or all, as they are kept. */
export type KeptRecords = Readonly<Record<KeptKind, readonly Kept[]>>;

/** A setup or visit whose document may be unread. */
export interface UnreadRecord {
  readonly id: string;
  readonly hornId: string;
  readonly document: unknown;
}

/** Records whose documents may be unread: what a library file carries. */
export interface UnreadRecords {
  readonly horns: readonly { readonly id: string; readonly document: unknown }[];
  readonly setups: readonly UnreadRecord[];
  readonly visits: readonly UnreadRecord[];
}

/** A library file whose documents may be unread. */
export interface UnreadLibraryFile extends UnreadRecords {
  readonly kind: 'ventwright library';
  readonly version: number;
}

/** Kept records in the shape of a library file. */
export function fileOf({ horns, setups, visits }: UnreadRecords): UnreadLibraryFile {
  return {
    kind: 'ventwright library',
    version: LIBRARY_VERSION,
    horns: horns.map(({ id, document }) => ({ id, document })),
    setups: setups.map(({ id, hornId, document }) => ({ id, hornId, document })),
    visits: visits.map(({ id, hornId, document }) => ({ id, hornId, document })),
  };
}

/** Every record with its kind, as it is to be kept. */
export function keptList(records: UnreadRecords): (readonly [KeptKind, UnreadRecord])[] {
  return [
    ...records.horns.map(({ id, document }) => ['horns', { id, hornId: id, document }] as const),
    ...records.setups.map(({ id, hornId, document }) => ['setups', { id, hornId, document }] as const),
    ...records.visits.map(({ id, hornId, document }) => ['visits', { id, hornId, document }] as const),
  ];
}

/** Every horn that has something among the records. */
export function hornIdsOf({ horns, setups, visits }: UnreadRecords): string[] {
  return [...new Set([...horns.map((h) => h.id), ...[...setups, ...visits].map((r) => r.hornId)])];
}

/** @throws RangeError where the records are not of one horn */
export function hornIdOf(records: UnreadRecords): string {
  const ids = hornIdsOf(records);
  if (ids.length !== 1) throw new RangeError(`invalid records: of ${ids.length} horns; expected one`);
  return ids[0];
}
