import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readLibrary, libraryFile } from '../../src/documents/library-file.ts';
import {
  EMPTY_DESK,
  problemWithName,
  toldIssues,
  troubleWith,
  withDone,
  withProblem,
  withRemoved,
  mayBeCleared,
  withSavedFile,
  type LibraryDeskState,
} from '../../src/ui/state/library-desk-state.ts';
import {
  folded,
  lastChangedFirst,
  readShelfEntry,
  searched,
  shelfEntry,
  type ShelfEntry,
} from '../../src/ui/state/library-state.ts';
import { dayOf, makeLibraryView } from '../../src/ui/views/library/library-view.model.ts';
import { inventedLibrary } from './invented-library.ts';

/** The list as the library writes it. */
function shelf(horns: number): readonly ShelfEntry[] {
  const { horns: records, setups, visits } = inventedLibrary(horns);
  const kept = <R extends { readonly id: string; readonly hornId?: string; readonly document: unknown }>(
    r: R,
  ) => ({
    id: r.id,
    hornId: r.hornId ?? r.id,
    document: r.document,
    revision: 'r',
  });
  return records.map((horn, i) =>
    shelfEntry(
      kept(horn),
      setups.filter((s) => s.hornId === horn.id).map(kept),
      visits.filter((v) => v.hornId === horn.id).map(kept),
      i,
    ),
  );
}

const names = (entries: readonly ShelfEntry[]): string[] => entries.map(({ name }) => name);
const listed = (more: Partial<LibraryDeskState> = {}): LibraryDeskState => ({
  ...EMPTY_DESK,
  entries: shelf(6),
  ...more,
});

describe('a search of the library', () => {
  it('finds every word in any order, in name, maker, serial, owner, player, setup and visit', () => {
    const entries = shelf(6);
    expect(names(searched(entries, '1037 ostrava'))).toEqual(['Ostrava & Söhne tenor 1037']);
    expect(names(searched(entries, 'moss larkfield'))).toContain('Larkfield alto 1000');
    expect(searched(entries, 'first bench')).toHaveLength(6);
    expect(names(searched(entries, '2021-05-12'))).toEqual(['Kestrel alto 1148']);
    expect(searched(entries, 'larkfield kestrel')).toEqual([]);
    expect(searched(entries, '  ')).toBe(entries);
  });

  it('does not mind accents, capitals or letters a keyboard lacks', () => {
    expect(names(searched(shelf(6), 'SOHNE'))).toEqual(['Ostrava & Söhne tenor 1037']);
    expect(searched(shelf(6), 'odegard').length).toBeGreaterThan(0);
    expect(searched(shelf(6), 'Kőrösi')).toEqual(searched(shelf(6), 'korosi'));
    expect(folded('E♭ Straße')).toBe('eb strasse');
  });

  it('finds a horn by every part of its own name', () => {
    fc.assert(
      fc.property(fc.string({ minLength: 1, maxLength: 60 }), fc.nat(60), (name, cut) => {
        const entry = { ...shelf(1)[0], name };
        for (const word of folded(name).slice(0, cut).split(/\s+/)) {
          expect(searched([entry], word)).toEqual([entry]);
        }
      }),
      { seed: 11 },
    );
  });
});

describe('a line of the list', () => {
  it('is read whatever lies there', () => {
    fc.assert(
      fc.property(fc.anything(), (raw) => {
        const entry = readShelfEntry(raw);
        expect(entry.name.length).toBeGreaterThan(0);
        expect(Number.isFinite(entry.changedMs + entry.visitCount)).toBe(true);
        expect(searched([entry], 'x').length).toBeLessThanOrEqual(1);
      }),
      { seed: 13 },
    );
    expect(readShelfEntry(shelf(1)[0])).toEqual(shelf(1)[0]);
  });

  it('of what was changed last comes first', () => {
    expect(names(lastChangedFirst(shelf(3)))[0]).toBe('Brèche alto 1074');
  });
});

describe('the library as it is shown', () => {
  it('says how many horns there are and how many a search found', () => {
    expect(makeLibraryView(EMPTY_DESK, '').title).toBe('Library');
    expect(makeLibraryView({ ...EMPTY_DESK, entries: [] }, '').title).toBe('No horn is kept yet');
    expect(makeLibraryView(listed(), '').title).toBe('6 horns');
    const found = makeLibraryView(listed({ search: 'kestrel' }), '');
    expect([found.title, found.rows.length]).toEqual(['1 of 6 horns', 1]);
    expect(makeLibraryView(listed({ search: 'zzz' }), '').empty).toContain('No horn has all of “zzz”');
  });

  it('tells of each horn what it is and whose, and which is on the bench', () => {
    const { rows } = makeLibraryView(listed(), 'invented-1');
    expect(rows[0]).toMatchObject({
      name: 'Larkfield alto 1000',
      facts: 'alto · Larkfield · no. 1000 · of Ada Moss · played by Ines Prado, Béla Kőrösi',
      lastVisit: '12 Jan 2021',
      visits: '3 visits',
      isOnBench: true,
      trouble: null,
      detail: null,
    });
    expect(rows[1].isOnBench).toBe(false);
  });

  it('shows a horn’s visits latest first, and the setups that belong to none', () => {
    const shown = readLibrary(libraryFile(inventedLibrary(1)), () => 'x');
    const { rows } = makeLibraryView(listed({ shownId: 'invented-1', shown }), '');
    const { detail } = rows[0];
    expect(detail!.visits.map(({ date }) => date)).toEqual(['12 Jan 2021', '11 Jan 2020', '10 Jan 2019']);
    expect(detail!.setups.map(({ name }) => name)).toEqual(['First bench sheet']);
    expect(detail!.isReadable).toBe(true);
  });

  it('says of a damaged horn what cannot be read', () => {
    const file = { ...libraryFile(inventedLibrary(1)), horns: [{ id: 'invented-1', document: { name: 1 } }] };
    const shown = readLibrary(file, () => 'x');
    const { detail } = makeLibraryView(listed({ shownId: 'invented-1', shown }), '').rows[0];
    expect(troubleWith('invented-1', shown)).toMatch(/^It cannot be read: /);
    expect(detail!.isReadable).toBe(false);
    expect(detail!.issues[0]).toMatch(/^the horn’s record: invalid kind/);
    expect(detail!.issues.join()).not.toContain('could be read from this file');
  });

  it('says of a damaged setup that it is damaged, and of one field which it is', () => {
    const { horns, setups, visits } = libraryFile(inventedLibrary(1));
    const [first, second, ...others] = setups;
    const torn = { ...first, document: 'gnawed' };
    const wrong = { ...second, document: { ...second.document, airC: 900 } };
    const file = { ...libraryFile(inventedLibrary(1)), horns, setups: [torn, wrong, ...others], visits };
    const shown = readLibrary(file, () => 'x');
    const { detail } = makeLibraryView(listed({ shownId: 'invented-1', shown }), '').rows[0];
    expect(detail!.isReadable).toBe(true);
    expect(detail!.issues).toContain('a setup is damaged');
    expect(detail!.issues).toContainEqual(
      expect.stringMatching(/^a setup, airC: invalid air temperature: 900/),
    );
    expect(troubleWith('invented-1', shown)).toMatch(
      /^A part of it cannot be read: a setup is damaged, and /,
    );
  });

  it('offers to put back what was removed last', () => {
    const records = { horns: [], setups: [], visits: [] };
    const once = withRemoved(withProblem(listed(), 'no room'), { words: '“A”', records });
    const twice = withRemoved(once, { words: '“B”', records });
    expect([twice.done, twice.problem]).toEqual(['“B” was removed.', null]);
    expect(makeLibraryView(twice, '').undo).toBe('“B”');
    expect(withProblem(withDone(twice, 'done'), 'no').done).toBeNull();
  });

  it('lists every issue of a file, and once what is said of many records of one horn', () => {
    const reference = (i: number) => ({
      path: `setups[${i}].document`,
      code: 'reference',
      message: 'no horn',
    });
    const name = { path: 'horns[0].document.name', code: 'too_small', message: 'invalid horn name' };
    expect(toldIssues([name, name, reference(0), reference(1), reference(2)])).toEqual([
      { where: 'horns[0].document.name', message: 'invalid horn name' },
      { where: 'horns[0].document.name', message: 'invalid horn name' },
      { where: 'setups[0].document and 2 more', message: 'no horn' },
    ]);
  });

  it('says under which name a file was saved, and what it could not hold', () => {
    expect(withSavedFile(listed(), { fileName: 'a.json', lost: 0 }).done).toBe('Saved as a.json.');
    const { done, problem } = withSavedFile(listed(), { fileName: 'a.json', lost: 2 });
    expect([done, problem]).toEqual([
      null,
      'Saved as a.json; 2 damaged records are empty there, because no file can hold them.',
    ]);
  });

  it('cautions with the day all of it last went into a file', () => {
    expect(mayBeCleared(null)).toMatch(/: keep a file of it\.$/);
    expect(mayBeCleared('2026-05-31')).toMatch(/: all of it was last saved as a file on 2026-05-31\.$/);
  });

  it('writes a day as it is said, and leaves what is no day', () => {
    expect([dayOf('2026-05-31'), dayOf('soon'), dayOf('2026-13-01')]).toEqual([
      '31 May 2026',
      'soon',
      '2026-13-01',
    ]);
  });

  it('refuses an empty or endless name with a sentence', () => {
    expect(problemWithName('horn name', '  ')).toBe('invalid horn name: 0 letters; expected 1 to 200');
    expect(problemWithName('horn name', 'x'.repeat(201))).toContain('201 letters');
    expect(problemWithName('horn name', 'Alto')).toBeNull();
  });
});
