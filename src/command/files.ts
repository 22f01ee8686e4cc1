import { randomUUID } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { readJsonText } from '../documents/json-text.ts';
import { presentHorn, readLibrary } from '../documents/library-file.ts';
import { migrateSetup } from '../documents/migrations.ts';
import { loadHorn, loadSetupOver, type LoadedHorn } from '../documents/to-acoustics.ts';
import { accept, BadInput } from './bad-input.ts';

/** Reads JSON from a file, or from standard input for `-`. Paths are the caller's, also under `npm run`. */
export function readJson(path: string): unknown {
  const name = path === '-' ? 'standard input' : path;
  let text: string;
  try {
    text =
      path === '-'
        ? readFileSync(0, 'utf8')
        : readFileSync(resolve(process.env.INIT_CWD ?? '.', path), 'utf8');
  } catch (error) {
    throw new BadInput(
      `${name}: cannot be read (${(error as NodeJS.ErrnoException).code ?? 'unknown reason'})`,
    );
  }
  return accept(readJsonText(text), name);
}

/**
 * Loads a horn as it stands, or with another setup: one of its own by name, or one from a file.
 *
 * @param setupWord the name of a setup in the file, or the path of another file
 */
export function readHorn(path: string, setupWord: string | undefined): LoadedHorn {
  const { records, issues } = readLibrary(readJson(path), randomUUID);
  if (issues.length > 0) accept({ ok: false, issues }, path);
  if (records.horns.length !== 1) {
    throw new BadInput(`${path}: expected a file of one horn; this has ${records.horns.length}`);
  }
  const horn = records.horns[0];
  const loaded = accept(loadHorn(presentHorn(records, horn)), path);
  if (setupWord === undefined) return loaded;
  const named = records.setups.find((s) => s.document.name === setupWord);
  if (named !== undefined) return accept(loadSetupOver(loaded, named.document), path);
  return accept(loadSetupOver(loaded, migrateSetup(readJson(setupWord))), setupWord);
}
