import { readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { describe, expect, it } from 'vitest';

const ROOT = new URL('../../', import.meta.url).pathname;

function filesUnder(folder: string, pattern = /\.ts$/): string[] {
  return readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .filter((f) => pattern.test(f) && statSync(join(ROOT, folder, f)).isFile())
    .map((f) => join(folder, f));
}

/** What a file imports, types and late imports included, as written. */
function importsOf(file: string): string[] {
  const text = readFileSync(join(ROOT, file), 'utf8');
  const words = /(?:\bfrom|\bimport)\s*\(?\s*'([\w@./?-]+)'/g;
  return [...text.matchAll(words)].map((m) => m[1]);
}

const imports = filesUnder('src').flatMap((file) => importsOf(file).map((target) => ({ file, target })));
const roomOf = (file: string): string => file.split('/')[1];

/** From each room, the rooms a file may import from. */
const LEFT: Readonly<Record<string, readonly string[]>> = {
  acoustics: ['acoustics'],
  documents: ['acoustics', 'documents'],
  command: ['acoustics', 'documents', 'command'],
  ui: ['acoustics', 'documents', 'ui'],
};

/** Packages, and the only files that may import them. */
const PACKAGES: readonly (readonly [string, RegExp])[] = [
  ['plotly.js-dist', /^src\/ui\/parts\/chart/],
  ['plotly.js-basic-dist-min', /^src\/ui\/parts\/chart/],
  ['lit', /^src\/ui\//],
  ['mathjs', /^src\/documents\/length\.ts$/],
  ['ml-matrix', /^src\/acoustics\/numerics\//],
  ['quadprog', /^src\/acoustics\/numerics\/quadratic-program\.ts$/],
  ['zod', /^src\/documents\//],
  ['papaparse', /^src\/documents\/(sheet|pitch-log)-csv\.ts$/],
  ['pitchy', /^src\/ui\/state\/hear-pitch\.ts$/],
  ['idb', /^src\/ui\/shell\/library/],
  ['marked', /^src\/ui\/views\/notes\/note-blocks\.model\.ts$/],
  ['workbox-window', /^src\/ui\/shell\//],
  ['virtual:pwa-register', /^src\/ui\/shell\//],
];

describe('the rooms of the house', () => {
  it('are the four', () => {
    const rooms = new Set(
      filesUnder('src')
        .filter((f) => f.split('/').length > 2)
        .map(roomOf),
    );
    expect([...rooms].sort()).toEqual(Object.keys(LEFT).sort());
  });

  it('import from their own or one to the left, and the acoustics only by its door', () => {
    const wrong = imports.filter(({ file, target }) => {
      if (!target.startsWith('.')) return false;
      const to = relative(ROOT, join(ROOT, dirname(file), target));
      // Data may be read by anyone; programs only from the rooms.
      if (!to.startsWith('src/')) return !/^(datasets\/.*\.json|notes\/.*\.md\?raw)$/.test(to);
      const allowed = LEFT[roomOf(file)]?.includes(roomOf(to)) ?? false;
      const byTheDoor =
        roomOf(to) !== 'acoustics' || roomOf(file) === 'acoustics' || to === 'src/acoustics/index.ts';
      return !(allowed && byTheDoor);
    });
    expect(wrong).toEqual([]);
  });

  it('keep each package to its own', () => {
    const wrong = imports.filter(({ file, target }) => {
      if (target.startsWith('.') || target.startsWith('node:')) return false;
      const name = target.startsWith('@') ? target.split('/').slice(0, 2).join('/') : target.split('/')[0];
      const entry = PACKAGES.find(([known]) => known === name);
      return entry === undefined || !entry[1].test(file);
    });
    expect(wrong).toEqual([]);
  });

  it('let nothing of Node into what runs in a browser', () => {
    const wrong = imports.filter(
      ({ file, target }) => target.startsWith('node:') && roomOf(file) !== 'command',
    );
    expect(wrong).toEqual([]);
  });

  it('have no member that imports itself round a circle', () => {
    const graph = new Map<string, string[]>();
    for (const { file, target } of imports) {
      if (target.startsWith('.')) graph.set(file, [...(graph.get(file) ?? []), join(dirname(file), target)]);
    }
    const circles: string[] = [];
    const done = new Set<string>();
    const visit = (file: string, path: readonly string[]): void => {
      if (path.includes(file)) circles.push([...path.slice(path.indexOf(file)), file].join(' → '));
      else if (!done.has(file)) {
        for (const next of graph.get(file) ?? []) visit(next, [...path, file]);
        done.add(file);
      }
    };
    for (const file of graph.keys()) visit(file, []);
    // A type that two files share in both directions vanishes when compiled: such pairs are let be.
    const real = circles.filter((c) => {
      const files = c.split(' → ');
      return files.slice(0, -1).every((file, i) => {
        const text = readFileSync(join(ROOT, file), 'utf8');
        const name = files[i + 1].split('/').pop()!;
        return new RegExp(`(import|export)(?! type)[^;]*'[^']*/?${name.replace('.', '\\.')}'`).test(text);
      });
    });
    expect(real).toEqual([]);
  });
});
