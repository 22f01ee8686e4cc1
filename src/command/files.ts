import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { loadHorn, loadSetup, type LoadedHorn } from '../documents/to-acoustics.ts';
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
  try {
    return JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    throw new BadInput(`${name}: not JSON: ${(error as Error).message}`);
  }
}

/** Loads a horn, with another setup than its own if one is given. */
export function readHorn(hornPath: string, setupPath: string | undefined): LoadedHorn {
  const loaded = accept(loadHorn(readJson(hornPath)), hornPath);
  if (setupPath === undefined) return loaded;
  const { document, setup } = accept(loadSetup(readJson(setupPath), loaded.document), setupPath);
  return { ...loaded, document: { ...loaded.document, setup: document }, setup };
}
