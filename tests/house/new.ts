/** Lays out a new view or hole model: `npm run new -- view low-notes`, `npm run new -- hole-model two-plates`. */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { format, resolveConfig } from 'prettier';
import { layOut } from './lay-out.ts';

const ROOT = process.env.VENTWRIGHT_ROOT ?? fileURLToPath(new URL('../..', import.meta.url));
const [kind = '', name = ''] = process.argv.slice(2);

try {
  const laidOut = layOut(kind, name, (path) => readFileSync(join(ROOT, path), 'utf8'));
  for (const [path, text] of laidOut) {
    const file = join(ROOT, path);
    const isNew = !existsSync(file);
    mkdirSync(dirname(file), { recursive: true });
    const config = await resolveConfig(join(ROOT, 'package.json'));
    writeFileSync(file, await format(text, { ...config, filepath: file }));
    console.log(`${isNew ? 'made ' : 'added to '}${path}`);
  }
} catch (error) {
  if (!(error instanceof RangeError)) throw error;
  console.error(`${error.message}\nusage: npm run new -- view <name> | hole-model <name>`);
  process.exitCode = 2;
}
