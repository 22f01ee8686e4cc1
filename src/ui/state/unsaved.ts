import { recordsOf, type BenchContents } from '../../documents/bench-contents.ts';
import type { LibraryRecords } from '../../documents/library-file.ts';

/** Documents as the library holds them, as far as this tab knows, by record id. */
export type KnownDocuments = ReadonlyMap<string, object>;

/** Every record of a visit, in one list. */
export function recordList(
  contents: BenchContents,
): readonly { readonly id: string; readonly document: object }[] {
  const { horns, setups, visits } = recordsOf(contents);
  return [...horns, ...setups, ...visits];
}

/** The records of a visit that the library does not hold as they are here. */
export function unsavedRecords(known: KnownDocuments, contents: BenchContents): LibraryRecords {
  const isUnsaved = ({ id, document }: { readonly id: string; readonly document: object }): boolean =>
    known.get(id) !== document;
  const { horns, setups, visits } = recordsOf(contents);
  return {
    horns: horns.filter(isUnsaved),
    setups: setups.filter(isUnsaved),
    visits: visits.filter(isUnsaved),
  };
}

/** Whether the library holds all of a visit as it is here. */
export function isSaved(known: KnownDocuments, contents: BenchContents): boolean {
  return recordList(contents).every(({ id, document }) => known.get(id) === document);
}

/** Whether two states of a visit say the same, whoever wrote them. */
export function saysTheSame(a: BenchContents, b: BenchContents): boolean {
  const [ofA, ofB] = [a, b].map(recordList);
  return ofA.every(({ id, document }, i) => id === ofB[i].id && isAlike(document, ofB[i].document));
}

/** The same values, in whatever order their fields were written; a field without a value is no field. */
export function isAlike(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const [inA, inB] = [a, b] as [Readonly<Record<string, unknown>>, Readonly<Record<string, unknown>>];
  return [...new Set([...Object.keys(inA), ...Object.keys(inB)])].every((key) => isAlike(inA[key], inB[key]));
}
