import { randomUUID } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { readJsonText } from '../documents/json-text.ts';
import { contentsOf } from '../documents/bench-contents.ts';
import { presentHorn, readLibrary, type HornRecord, type LibraryRecords } from '../documents/library-file.ts';
import { migrateSetup } from '../documents/migrations.ts';
import type { SetupDocument } from '../documents/setup-document.ts';
import { loadHorn, loadSetupOver, type LoadedHorn } from '../documents/to-acoustics.ts';
import { accept, BadInput } from './bad-input.ts';

const nameOf = (path: string): string => (path === '-' ? 'standard input' : path);

/** Reads a file, or standard input for `-`. Paths are the caller's, also under `npm run`. */
export function readText(path: string): string {
  try {
    return path === '-'
      ? readFileSync(0, 'utf8')
      : readFileSync(resolve(process.env.INIT_CWD ?? '.', path), 'utf8');
  } catch (error) {
    throw new BadInput(
      `${nameOf(path)}: cannot be read (${(error as NodeJS.ErrnoException).code ?? 'unknown reason'})`,
    );
  }
}

/** Reads JSON from a file, or from standard input for `-`. */
export function readJson(path: string): unknown {
  return accept(readJsonText(readText(path)), nameOf(path));
}

/**
 * Loads a horn as it stands, or with another setup: one of its own by name, or one from a file.
 *
 * @param setupWord the name of a setup in the file, or the path of another file
 */
export function readHorn(path: string, setupWord: string | undefined): LoadedHorn {
  const { records, horn } = readOneHorn(path);
  const loaded = accept(loadHorn(presentHorn(records, horn)), path);
  if (setupWord === undefined) return loaded;
  const named = records.setups.find((s) => s.document.name === setupWord);
  if (named !== undefined) return accept(loadSetupOver(loaded, named.document), path);
  return accept(loadSetupOver(loaded, migrateSetup(readJson(setupWord))), setupWord);
}

/** A horn as its latest visit found it, and what that visit set; without a visit, as it stands and nothing. */
export function readFoundAndSet(path: string): { readonly found: LoadedHorn; readonly asSet: SetupDocument } {
  const { records, horn } = readOneHorn(path);
  const visit = contentsOf(records, horn.id);
  if (visit === null) {
    const found = accept(loadHorn(presentHorn(records, horn)), path);
    const { kind, version, name, origin } = found.documents.setup;
    return { found, asSet: { kind, version, name, origin, keys: [] } };
  }
  const found = accept(loadHorn({ horn: horn.document, setup: visit.asFound.document }), path);
  return { found, asSet: visit.asSet.document };
}

function readOneHorn(path: string): { readonly records: LibraryRecords; readonly horn: HornRecord } {
  const { records, issues } = readLibrary(readJson(path), randomUUID);
  if (issues.length > 0) accept({ ok: false, issues }, path);
  if (records.horns.length !== 1) {
    throw new BadInput(`${path}: expected a file of one horn; this has ${records.horns.length}`);
  }
  return { records, horn: records.horns[0] };
}
