import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { glossaryOf } from '../../src/ui/state/glossary.ts';
import { headingId } from '../../src/ui/state/note-places.ts';
import { REASON_GROUNDS, REASON_KINDS } from '../../src/ui/state/reasons.ts';

const ROOT = new URL('../../', import.meta.url).pathname;
const read = (file: string): string => readFileSync(`${ROOT}${file}`, 'utf8');

const glossary = glossaryOf(read('notes/glossary.md'));
const sources = new Set(
  read('notes/sources.md')
    .split('\n')
    .filter((line) => line.startsWith('| ') && !line.includes('---'))
    .map((line) => line.split('|')[1].trim()),
);

/** Where a note is kept. */
const fileOf = (note: string): string =>
  ['glossary', 'sources'].includes(note) ? `notes/${note}.md` : `notes/physics/${note}.md`;

const headingsOf = (note: string): string[] =>
  [...read(fileOf(note)).matchAll(/^#+ (.+)$/gm)].map(([, text]) => text.replace(/[`*_]/g, ''));

describe('the reason of every kind of figure', () => {
  it('says what it is in words of the glossary', () => {
    for (const kind of REASON_KINDS) {
      const { words } = REASON_GROUNDS[kind];
      expect([kind, words.length > 0]).toEqual([kind, true]);
      expect([kind, words.filter((word) => !glossary.has(word))]).toEqual([kind, []]);
    }
  });

  it('has a formula in words and says what it holds for', () => {
    for (const kind of REASON_KINDS) {
      const { formula, holdsFor, title } = REASON_GROUNDS[kind];
      for (const text of [formula, holdsFor]) {
        expect([kind, text.length > 30 && text.endsWith('.')]).toEqual([kind, true]);
        // Words, not symbols: the note has those.
        expect([kind, /[=√Σ]/.test(text)]).toEqual([kind, false]);
      }
      expect(title).toMatch(/^[A-Z]/);
    }
  });

  it('names only sources that are listed, or is ours', () => {
    for (const kind of REASON_KINDS) {
      const { sources: named, isOurs } = REASON_GROUNDS[kind];
      expect([kind, named.filter((name) => !sources.has(name))]).toEqual([kind, []]);
      expect([kind, named.length > 0 || isOurs]).toEqual([kind, true]);
    }
  });

  it('leads to a heading that there is in a note that there is', () => {
    for (const kind of REASON_KINDS) {
      const { name, heading } = REASON_GROUNDS[kind].note;
      expect([kind, existsSync(`${ROOT}${fileOf(name)}`)]).toEqual([kind, true]);
      expect([kind, headingsOf(name)]).toEqual([kind, expect.arrayContaining([heading])]);
    }
  });
});

it('every kind of reason is opened by a figure of some view', () => {
  const files = readdirSync(`${ROOT}src/ui/views`, { recursive: true, encoding: 'utf8' });
  const views = files.filter((file) => file.endsWith('.ts')).map((file) => read(`src/ui/views/${file}`));
  const unused = REASON_KINDS.filter((kind) => !views.some((text) => text.includes(`'${kind}'`)));
  expect(unused).toEqual([]);
});

describe('links from note to note', () => {
  it('lead to notes and headings that there are', () => {
    const notes = ['glossary', 'sources', ...names('notes/physics')];
    for (const note of notes) {
      for (const [, href] of read(fileOf(note)).matchAll(/\]\(([^)\s]+\.md(?:#[^)]*)?)\)/g)) {
        const [file, heading] = href.split('#');
        const target = file.split('/').pop()!.slice(0, -3);
        expect([note, href, notes.includes(target)]).toEqual([note, href, true]);
        if (heading === undefined) continue;
        expect([note, href, headingsOf(target).map(headingId)]).toEqual([
          note,
          href,
          expect.arrayContaining([heading]),
        ]);
      }
    }
  });
});

function names(folder: string): string[] {
  return readdirSync(`${ROOT}${folder}`).flatMap((file) => (file.endsWith('.md') ? [file.slice(0, -3)] : []));
}
