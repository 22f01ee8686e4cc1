import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { placeOfHash, viewOfHash } from '../../src/ui/state/view-names.ts';
import {
  readNote,
  plainWords,
  type NoteBlock,
  type NoteSpan,
} from '../../src/ui/views/notes/note-blocks.model.ts';
import { NOTE_PICTURES, NOTE_TEXTS } from '../../src/ui/views/notes/note-files.ts';
import { headingId, noteHref, notePlaceOf } from '../../src/ui/state/note-places.ts';
import { linkIn } from '../../src/ui/views/notes/note-links.model.ts';
import { makeNotesView } from '../../src/ui/views/notes/notes-view.model.ts';

const NOTES = new URL('../../notes/', import.meta.url).pathname;
const KNOWN = new Set(['hinged-pad']);

/** All the stretches of a note, however deep. */
function spansOf(blocks: readonly NoteBlock[]): NoteSpan[] {
  const within = (spans: readonly NoteSpan[]): NoteSpan[] =>
    spans.flatMap((span) => ('spans' in span ? [span, ...within(span.spans)] : [span]));
  return blocks.flatMap((block) => {
    if (block.kind === 'list') return block.items.flatMap(spansOf);
    if (block.kind === 'quote') return spansOf(block.blocks);
    if (block.kind === 'table') return [...block.head, ...block.rows.flat()].flatMap(within);
    return block.kind === 'code' ? [] : within(block.spans);
  });
}

/** Letters and digits alone: what a reader reads, however it is set. */
const letters = (text: string): string => text.replace(/[^\p{Letter}\p{Number}]+/gu, '');

describe('a note', () => {
  it('is read as headings, lines, lists, tables, formulas and links', () => {
    const blocks = readNote(
      '# A *pad*\n\nOne `two` **three** [on](hinged-pad.md#the-table) [gone](missing.md).\n\n- a\n- b\n\n| x | y |\n| - | - |\n| 1 | 2 |\n\n```\nF = k·x\n```\n\n> rule\n',
      KNOWN,
    );
    expect(blocks.map(({ kind }) => kind)).toEqual([
      'heading',
      'paragraph',
      'list',
      'table',
      'code',
      'quote',
    ]);
    expect(blocks[0]).toMatchObject({ level: 1, id: 'a-pad', text: 'A pad' });
    const links = spansOf(blocks).filter((span) => span.kind === 'link');
    expect(links).toHaveLength(1);
    expect(links[0]).toMatchObject({ link: { href: '#notes/hinged-pad/the-table', outside: false } });
    expect(blocks[4]).toEqual({ kind: 'code', text: 'F = k·x' });
  });

  it('has no markup of the page in it: tags are read as text', () => {
    const blocks = readNote('a <img src=x onerror=alert(1)> b\n\n<script>alert(1)</script>\n', KNOWN);
    expect(new Set(spansOf(blocks).map(({ kind }) => kind))).toEqual(new Set(['text']));
    expect(
      spansOf(blocks)
        .map((span) => ('text' in span ? span.text : ''))
        .join(''),
    ).toContain('<script>');
  });

  it('leads nowhere but to a note there is, or to a page elsewhere', () => {
    expect(linkIn('hinged-pad.md', KNOWN)).toEqual({ href: '#notes/hinged-pad', outside: false });
    expect(linkIn('../physics/hinged-pad.md', KNOWN)?.href).toBe('#notes/hinged-pad');
    expect(linkIn('https://example.org/a', KNOWN)?.outside).toBe(true);
    for (const href of ['missing.md', 'javascript:alert(1)', 'data:text/html,x', '../../src/main.ts']) {
      expect(linkIn(href, KNOWN)).toBeNull();
    }
  });
});

describe('the notes in the workbench', () => {
  it('are every note of the physics, the words and the sources, and their drawings', () => {
    const files = readdirSync(`${NOTES}physics`);
    const named = (ending: string): string[] => files.filter((file) => file.endsWith(ending));
    expect([...NOTE_TEXTS.keys()].sort()).toEqual(
      [...named('.md').map((file) => file.slice(0, -3)), 'glossary', 'sources'].sort(),
    );
    expect([...NOTE_PICTURES.keys()].sort()).toEqual(named('.svg').sort());
  });

  it('lose no word of what is written', () => {
    for (const [name, text] of NOTE_TEXTS) {
      const blocks = readNote(text, new Set(NOTE_TEXTS.keys()));
      const shown = (list: readonly NoteBlock[]): string =>
        list
          .map((block) => {
            if (block.kind === 'code') return block.text;
            if (block.kind === 'list') return block.items.map(shown).join('');
            if (block.kind === 'quote') return shown(block.blocks);
            if (block.kind === 'table') return [...block.head, ...block.rows.flat()].map(plainWords).join('');
            return plainWords(block.spans);
          })
          .join('');
      const written = text
        .replace(/!\[[^\]]*\]\([^)]*\)/g, '')
        .replace(/\]\([^)]*\)/g, ']')
        .replace(/^(\s*)\d+\. /gm, '$1')
        .replace(/^\s*[`~]{3}\w*$/gm, '');
      expect([name, letters(shown(blocks))]).toEqual([name, letters(written)]);
    }
  });

  it('have every drawing and every heading once', () => {
    for (const [name, text] of NOTE_TEXTS) {
      const blocks = readNote(text, new Set(NOTE_TEXTS.keys()));
      const pictures = spansOf(blocks).flatMap((span) => (span.kind === 'picture' ? [span.file] : []));
      expect([name, pictures.filter((file) => !NOTE_PICTURES.has(file))]).toEqual([name, []]);
      const ids = blocks.flatMap((block) => (block.kind === 'heading' ? [block.id] : []));
      expect([name, new Set(ids).size]).toEqual([name, ids.length]);
    }
  });

  it('are listed, and one is shown with its headings', () => {
    const list = makeNotesView(NOTE_TEXTS, '');
    if (list.kind !== 'list') throw new Error('expected the list');
    expect(list.physics.length + list.words.length).toBe(NOTE_TEXTS.size);
    for (const { title, about } of [...list.physics, ...list.words]) {
      expect(title.length).toBeGreaterThan(3);
      expect(about).toMatch(/[.?]$/);
    }
    const one = makeNotesView(NOTE_TEXTS, 'hinged-pad/the-simple-rule');
    if (one.kind !== 'note') throw new Error('expected a note');
    expect(one.contents.filter(({ inHand }) => inHand).map(({ text }) => text)).toEqual(['The simple rule']);
  });

  it('say so where there is none of that name', () => {
    const view = makeNotesView(NOTE_TEXTS, 'nothing-of-the-kind');
    expect(view.kind === 'list' && view.standing).toContain('“nothing-of-the-kind”');
  });
});

describe('a place in the notes', () => {
  it('is a part of the page’s hash, there and back', () => {
    const place = { note: 'uncertainty', heading: headingId('From a reading to an answer') };
    const hash = noteHref(place);
    expect(viewOfHash(hash)).toBe('notes');
    expect(notePlaceOf(placeOfHash(hash))).toEqual(place);
    expect(placeOfHash('#scale')).toBe('');
    expect(viewOfHash('#notesome')).not.toBe('notes');
  });

  it('survives an address with a percent sign out of place', () => {
    expect(notePlaceOf('chain/100%').heading).toBe('100%');
  });
});
