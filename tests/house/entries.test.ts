import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const ROOT = new URL('../../', import.meta.url).pathname;
const read = (file: string): string => readFileSync(join(ROOT, file), 'utf8');
const filesUnder = (folder: string, ending: string): string[] =>
  readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' }).filter((f) => f.endsWith(ending));

/** What a published file may say of where it comes from. */
const STANDINGS = ['from a published source', 'from memory, confirmed', 'from memory, unconfirmed'];

describe('the datasets', () => {
  it('have an entry for every folder in their README', () => {
    const text = read('datasets/README.md');
    const folders = readdirSync(join(ROOT, 'datasets'), { withFileTypes: true })
      .filter((e) => e.isDirectory())
      .map((e) => e.name);
    expect(folders.filter((f) => !text.includes(`${f}/`))).toEqual([]);
  });

  it('have an entry for every published file, with the standing that the file itself states', () => {
    const rows = read('datasets/published/README.md').split('\n');
    for (const file of filesUnder('datasets/published', '.json')) {
      const { source, standing, units } = JSON.parse(read(`datasets/published/${file}`)) as Record<
        string,
        unknown
      >;
      const row = rows.find((r) => r.includes(`(${file})`));
      expect([file, row?.includes(String(standing))]).toEqual([file, true]);
      expect(STANDINGS).toContain(standing);
      expect(String(source).length).toBeGreaterThan(10);
      expect(Object.keys(units as object).length).toBeGreaterThan(0);
    }
  });

  it('have no published file that no test reads', () => {
    const tests = filesUnder('tests', '.ts')
      .map((f) => read(`tests/${f}`))
      .join('\n');
    const unread = filesUnder('datasets/published', '.json').filter(
      (f) => !tests.includes(`'${f.slice(0, -5)}'`),
    );
    expect(unread).toEqual([]);
  });
});

describe('the sources', () => {
  const known = read('notes/sources.md')
    .split('\n')
    .filter((line) => line.startsWith('| ') && !line.includes('---'))
    .map((line) => line.split('|')[1].trim())
    .filter((name) => name !== 'short name');

  /** Every source's surname and year, as in “Keefe 1984”, or its whole short name. */
  const named = (paragraph: string): boolean => known.some((name) => paragraph.includes(name));

  it('named in the acoustics are listed in notes/sources.md', () => {
    const unnamed: string[] = [];
    for (const file of filesUnder('src/acoustics', '.ts')) {
      const text = read(`src/acoustics/${file}`).replace(/\n\s*\*\s?/g, ' ');
      for (const [, paragraph] of text.matchAll(/\*\*Source:\*\*(.*?)(?:\*\*|\*\/|@param|@returns)/g)) {
        if (
          !named(paragraph) &&
          !/plain (lever )?geometry|derived|ours|as \{@link|common practice/i.test(paragraph)
        ) {
          unnamed.push(`${file}:${paragraph}`);
        }
      }
    }
    expect(unnamed).toEqual([]);
  });

  it('each say how they stand', () => {
    const rows = read('notes/sources.md')
      .split('\n')
      .filter((l) => l.startsWith('| ') && !l.includes('---'))
      .slice(1);
    for (const row of rows) {
      const standing = row.split('|')[4];
      expect([row.split('|')[1].trim(), /read|from memory|checked|ours|unconfirmed/i.test(standing)]).toEqual(
        [row.split('|')[1].trim(), true],
      );
    }
  });
});
