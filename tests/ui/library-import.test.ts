import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { libraryFile, readLibrary, type LibraryRecords } from '../../src/documents/library-file.ts';
import { readJsonText } from '../../src/documents/json-text.ts';
import { fileNameOf, fileTextParts, inParts } from '../../src/ui/state/file-text.ts';
import {
  copyName,
  copyOfHorn,
  copyOfSetup,
  copyOfVisit,
  nameWith,
  removalOfSetup,
  removalOfVisit,
} from '../../src/ui/state/library-copies.ts';
import { isSame, planImport, type ImportGround } from '../../src/ui/state/library-import.ts';
import type { UnreadRecords } from '../../src/ui/state/library-records.ts';
import { decodedText } from '../../src/ui/state/text-decoding.ts';
import { inventedLibrary } from './invented-library.ts';

const NOTHING: UnreadRecords = { horns: [], setups: [], visits: [] };
let count = 0;
const makeId = (): string => `made-${++count}`;

const ground = (held: UnreadRecords, isTaken: ImportGround['isTaken'] = () => false): ImportGround => ({
  fileName: 'shop.json',
  held,
  isTaken,
  makeId,
});

/** The first horn of an invented library, with all that belongs to it. */
const oneHorn = (): LibraryRecords => inventedLibrary(1, 7);

/** What would lie in the library after an import. */
const after = (held: UnreadRecords, { add }: { readonly add: UnreadRecords }): LibraryRecords => {
  const both: UnreadRecords = {
    horns: [...held.horns, ...add.horns],
    setups: [...held.setups, ...add.setups],
    visits: [...held.visits, ...add.visits],
  };
  const { records, issues } = readLibrary(libraryFile(both as LibraryRecords), makeId);
  expect(issues).toEqual([]);
  return records;
};

describe('bringing a file into the library', () => {
  it('adds a horn that is not there as it is', () => {
    const plan = planImport(oneHorn(), ground(NOTHING));
    expect(plan.add).toEqual(oneHorn());
    expect(plan.told).toEqual(['“Larkfield alto 1000” was added.']);
  });

  it('leaves a horn that is there and says the same, in whatever order its fields stand', () => {
    const file = JSON.parse(JSON.stringify(oneHorn())) as LibraryRecords;
    const turned = Object.fromEntries(Object.entries(file.horns[0].document).reverse());
    const held = { ...oneHorn(), horns: [{ ...file.horns[0], document: turned }] };
    const plan = planImport(file, ground(held));
    expect(plan.add).toEqual(NOTHING);
    expect(plan.told).toEqual(['“Larkfield alto 1000” is here already, the same.']);
  });

  it('adds a visit and its setups to a horn that is there and otherwise the same', () => {
    const file = oneHorn();
    const visit = file.visits[1];
    const own: readonly string[] = [visit.document.asFound, visit.document.proposed, visit.document.asSet];
    const held = {
      ...file,
      visits: file.visits.filter((v) => v !== visit),
      setups: file.setups.filter((s) => !own.includes(s.id)),
    };
    const plan = planImport(file, ground(held));
    expect(plan.add.horns).toEqual([]);
    expect(plan.add.visits).toEqual([visit]);
    expect(plan.told[0]).toContain('visits or setups of it were added');
    expect(after(held, plan).visits).toHaveLength(file.visits.length);
  });

  it('keeps both where they say different things, the file’s under ids and a name of its own', () => {
    const held = oneHorn();
    const file = {
      ...held,
      setups: held.setups.map((s, i) => (i === 0 ? { ...s, document: { ...s.document, name: 'Other' } } : s)),
    };
    const plan = planImport(file, ground(held));
    const all = after(held, plan);
    expect(all.horns.map((h) => h.document.name)).toEqual([
      'Larkfield alto 1000',
      'Larkfield alto 1000 (from shop.json)',
    ]);
    expect(all.setups).toHaveLength(2 * held.setups.length);
    expect(plan.told[0]).toContain('both are kept');
    // Every visit of the copy is told by the copy's own setups.
    const ids = new Set(all.setups.filter((s) => s.hornId === all.horns[1].id).map((s) => s.id));
    for (const visit of all.visits.filter((v) => v.hornId === all.horns[1].id)) {
      expect(ids.has(visit.document.asFound) && ids.has(visit.document.asSet)).toBe(true);
    }
  });

  it('gives new ids to a horn whose setups have ids that another horn uses', () => {
    const plan = planImport(
      oneHorn(),
      ground(NOTHING, () => true),
    );
    const known = new Set(oneHorn().setups.map((s) => s.id));
    expect(plan.add.setups.some((s) => known.has(s.id))).toBe(false);
    expect(after(NOTHING, plan).visits).toHaveLength(2);
  });

  it('tells of many horns in one sentence, naming a few', () => {
    const [told, ...more] = planImport(inventedLibrary(8, 1), ground(NOTHING)).told;
    expect(told).toMatch(
      /^8 horns were added: (“[^”]+”, ){5}?3 more\.$|^8 horns were added: .* and 3 more\.$/,
    );
    expect(more).toEqual([]);
  });
});

/** A value with one thing in it, found by a path of chances, made something else. */
function withFault(value: unknown, path: readonly number[], fault: unknown): unknown {
  const [step, ...others] = path;
  if (step === undefined || typeof value !== 'object' || value === null) return fault;
  const fields = Object.keys(value);
  if (fields.length === 0) return fault;
  const field = fields[step % fields.length];
  const inner = withFault((value as Record<string, unknown>)[field], others, fault);
  return Array.isArray(value)
    ? value.map((item: unknown, i) => (String(i) === field ? inner : item))
    : { ...value, [field]: inner };
}

describe('a file with a fault somewhere', () => {
  it('is told about or does no harm: all that is added can be read, and what was here stays as it was', () => {
    const here = oneHorn();
    const file: unknown = JSON.parse(JSON.stringify(libraryFile(here)));
    fc.assert(
      fc.property(fc.array(fc.nat(5000), { minLength: 1, maxLength: 9 }), fc.jsonValue(), (path, fault) => {
        const { records, issues } = readLibrary(withFault(file, path, fault), makeId);
        const plan = planImport(records, ground(here));
        const all = after(here, plan);
        expect(all.setups.slice(0, here.setups.length)).toEqual(here.setups);
        expect(all.visits.slice(0, here.visits.length)).toEqual(here.visits);
        for (const issue of issues) expect(issue.message.length).toBeGreaterThan(5);
        if (records.horns.length === 0) expect(issues.length > 0 || isEmptyList(path, fault)).toBe(true);
      }),
      { seed: 17, numRuns: 400 },
    );
  });
});

/** The list of horns itself may have been made an empty one. */
const isEmptyList = (path: readonly number[], fault: unknown): boolean =>
  path.length === 1 && Array.isArray(fault) && fault.length === 0;

describe('copies and removals', () => {
  it('a copied horn reads like the first, under another name and ids', () => {
    const copy = copyOfHorn(oneHorn(), ['Larkfield alto 1000', 'Larkfield alto 1000 copy'], makeId);
    const all = after(oneHorn(), { add: copy });
    expect(all.horns[1].document.name).toBe('Larkfield alto 1000 copy 2');
    expect(all.visits.filter((v) => v.hornId === all.horns[1].id)).toHaveLength(2);
  });

  it('a copied horn takes damaged records along', () => {
    const damaged = { id: 'gnawed', hornId: oneHorn().horns[0].id, document: { keys: 'gnawed' } };
    const copy = copyOfHorn({ ...oneHorn(), setups: [damaged] }, [], makeId);
    expect(copy.setups[0]).toMatchObject({ hornId: copy.horns[0].id, document: { keys: 'gnawed' } });
  });

  it('a copied visit has setups of its own, with names that tell them apart', () => {
    const records = oneHorn();
    const copy = copyOfVisit(records, records.visits[0], makeId)!;
    const all = after(records, { add: copy });
    const names = all.setups.map((s) => s.document.name);
    expect(all.visits).toHaveLength(3);
    expect(new Set(names).size).toBe(names.length);
  });

  it('a copied setup keeps what it says', () => {
    const { setups } = oneHorn();
    const { document } = copyOfSetup(setups[0], setups, makeId);
    expect(document).toEqual({ ...setups[0].document, name: 'First bench sheet copy' });
  });

  it('names are cut so that the ending still fits', () => {
    fc.assert(
      fc.property(fc.string({ minLength: 1, maxLength: 300 }), (name) => {
        const next = copyName(name, [name]);
        expect(next.length).toBeLessThanOrEqual(200);
        expect(next.endsWith(' copy')).toBe(true);
        expect(nameWith(name, '(from a file)').length).toBeLessThanOrEqual(200);
      }),
      { seed: 5 },
    );
  });

  it('a setup of a visit stays, with the visit named; one beside the visits goes', () => {
    const records = oneHorn();
    const [beside, ofVisit] = records.setups;
    expect(removalOfSetup(records, beside)).toEqual({ ok: true, ids: [beside.id] });
    const kept = removalOfSetup(records, ofVisit);
    expect(kept.ok ? '' : kept.message).toContain('belongs to the visit of 2019-01-10');
  });

  it('the only setup that says how every key stands stays', () => {
    const { horns, setups } = oneHorn();
    const only = { horns, setups: [setups[0]], visits: [] };
    const kept = removalOfSetup(only, setups[0]);
    expect(kept.ok ? '' : kept.message).toContain('the horn needs one');
  });

  it('after every visit is removed the horn can still be read', () => {
    const { horns, setups, visits } = oneHorn();
    // Without the setup beside the visits.
    let now: LibraryRecords = { horns, setups: setups.slice(1), visits };
    for (const visit of visits) {
      const removal = removalOfVisit(now, visit);
      if (!removal.ok) throw new Error(removal.message);
      const isLeft = ({ id }: { readonly id: string }): boolean => !removal.ids.includes(id);
      now = { ...now, setups: now.setups.filter(isLeft), visits: now.visits.filter(isLeft) };
    }
    expect(now.visits).toEqual([]);
    expect(after(NOTHING, { add: now }).horns).toHaveLength(1);
  });
});

describe('the text of a library file', () => {
  it('reads back as what was written', () => {
    const { parts, lost } = fileTextParts(inventedLibrary(2));
    const json = readJsonText(parts.join(''));
    if (!json.ok) throw new Error(json.issues[0].message);
    expect(readLibrary(json.value, makeId)).toEqual({ records: inventedLibrary(2), issues: [] });
    expect(lost).toBe(0);
  });

  it('leaves a document that no file can hold empty, and keeps the rest', () => {
    const gone = { id: 'gone', hornId: 'invented-1', document: { big: 1n } };
    const { parts, lost } = fileTextParts({ ...oneHorn(), visits: [gone] });
    const read = readLibrary(JSON.parse(parts.join('')), makeId);
    expect(lost).toBe(1);
    expect(read.records.horns).toHaveLength(1);
    expect(read.issues[0].path).toContain('visits[0].document');
  });

  it('comes in several files where one could not be read back, each horn whole in one of them', () => {
    const library = inventedLibrary(6);
    const whole = fileTextParts(library).parts.join('').length;
    const longest = Math.ceil(whole / 2.5);
    const parts = inParts(library, longest);
    expect(parts.length).toBeGreaterThan(2);
    const read = parts.map((part) => {
      const text = fileTextParts(part).parts.join('');
      expect(text.length).toBeLessThanOrEqual(longest);
      return readLibrary(JSON.parse(text), makeId);
    });
    expect(read.flatMap((r) => r.issues)).toEqual([]);
    expect(read.flatMap((r) => r.records.setups)).toHaveLength(library.setups.length);
    expect(inParts(library, whole * 2)).toEqual([library]);
    expect(inParts(NOTHING, longest)).toEqual([NOTHING]);
  });

  it('is decoded by its mark, as UTF-8, or as Western spreadsheets write it', () => {
    const text = 'Brèche “A♭” 4,2';
    const utf8 = new TextEncoder().encode(text);
    const utf16 = new Uint8Array([
      0xff,
      0xfe,
      ...new Uint8Array(new Uint16Array([...text].map((c) => c.charCodeAt(0))).buffer),
    ]);
    expect(decodedText(utf8)).toBe(text);
    expect(decodedText(utf16)).toBe(text);
    expect(decodedText(new Uint8Array([0x42, 0x72, 0xe8, 0x63, 0x68, 0x65]))).toBe('Brèche');
  });

  it('has a name of plain letters', () => {
    expect(fileNameOf('Brèche / alto "1074" ../x')).toBe('Breche-alto-1074-x');
    expect(fileNameOf('///')).toBe('horn');
  });
});

describe('two documents say the same', () => {
  it('whatever the order of their fields, and only then', () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.jsonValue(), (a, b) => {
        expect(isSame(a, JSON.parse(JSON.stringify(a)))).toBe(true);
        // Zero and minus zero are one in a file.
        const [textA, textB] = [a, b].map((v) => JSON.stringify(sorted(JSON.parse(JSON.stringify(v)))));
        expect(isSame(JSON.parse(textA), JSON.parse(textB))).toBe(textA === textB);
      }),
      { seed: 7 },
    );
  });
});

function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (typeof value !== 'object' || value === null) return value;
  const fields = Object.entries(value).filter(([field]) => field !== '$schema');
  return Object.fromEntries(fields.sort(([a], [b]) => (a < b ? -1 : 1)).map(([f, v]) => [f, sorted(v)]));
}
