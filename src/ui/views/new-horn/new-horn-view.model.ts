import { keyedHoles, type Instrument } from '../../../documents/horn-document.ts';
import type { LibraryRecords } from '../../../documents/library-file.ts';
import { formatLength, type LengthUnit } from '../../../documents/length-format.ts';
import { knownReading, type LengthField } from '../../../documents/readings.ts';
import type { DocumentIssue } from '../../../documents/schema-parts.ts';
import { knownHornLength, knownSetupLength } from '../../../documents/sheet-edits.ts';
import { asExample, nameOrOwn, type NewHorn } from '../../../documents/template-horn.ts';
import { makeHornPicture, type HornPicture } from '../../parts/horn-picture.model.ts';

/** What a person is asked about a new horn. */
export interface NewHornField {
  readonly id: keyof NewHorn;
  readonly label: string;
  readonly hint: string;
  readonly text: string;
  /** what is wrong with the text, or null */
  readonly problem: string | null;
}

/** One of the four readings that answer most. */
export interface FirstReading {
  readonly words: string;
  readonly how: string;
  /** how far the example may be off, in the page’s unit: `±2.0` */
  readonly plusMinus: string;
}

export interface FirstKey {
  readonly id: string;
  readonly number: number;
  readonly name: string;
  readonly selected: boolean;
  /** the example's lengths in the readings' order, in the page's unit */
  readonly lengths: readonly string[];
}

/** Keys that are measured together. */
export interface FirstGroup {
  readonly words: string;
  readonly keys: readonly FirstKey[];
}

/** Everything the page of a new horn shows. */
export interface NewHornView {
  readonly instrument: Instrument;
  readonly title: string;
  readonly fields: readonly NewHornField[];
  /** what is wrong with none of the fields */
  readonly problems: readonly string[];
  readonly readings: readonly FirstReading[];
  /** as the tables say it */
  readonly unitWord: string;
  /** in the order to measure them; empty until the example has come */
  readonly groups: readonly FirstGroup[];
  readonly picture: HornPicture | null;
}

const FIELDS: readonly { readonly id: keyof NewHorn; readonly label: string; readonly hint: string }[] = [
  { id: 'name', label: 'What you call it', hint: '' },
  { id: 'maker', label: 'Maker', hint: 'and model, if it has one' },
  { id: 'serial', label: 'Serial number', hint: 'tells two like horns apart' },
  { id: 'owner', label: 'Owner', hint: 'whose horn it is' },
  { id: 'player', label: 'Player', hint: 'who plays it on this visit' },
  { id: 'date', label: 'Day of this visit', hint: 'the first one' },
];

/** The four readings that the venting answer needs, in the order a bench takes them. */
const READINGS: readonly { readonly field: LengthField; readonly words: string; readonly how: string }[] = [
  { field: 'diameterMm', words: 'Hole', how: 'inside the rim' },
  { field: 'padDiameterMm', words: 'Pad', how: 'edge to edge' },
  { field: 'hingeMm', words: 'Hinge', how: 'rod to pad centre' },
  { field: 'openingMm', words: 'Front', how: 'opening at the front, key at rest' },
];

/**
 * The keys by what is measured first: the lower stack feeds the links, then the upper stack, then down the horn, then
 * what rests closed. **Source:** common practice, no source.
 */
const GROUPS: readonly { readonly words: string; readonly pads: readonly string[] }[] = [
  { words: 'Lower stack', pads: ['f-sharp-auxiliary', 'f', 'e', 'd'] },
  { words: 'Upper stack', pads: ['small-c', 'b', 'bis', 'a', 'g'] },
  { words: 'Low C and E♭', pads: ['e-flat', 'low-c'] },
  { words: 'Bell keys', pads: ['low-c-sharp', 'low-b', 'low-b-flat'] },
];
const OTHERS = 'G♯, side and palm keys';

/** What the page of a new horn shows from what was chosen and typed. */
export function makeNewHornView(
  { instrument, told, issues, keyId }: NewHornDraft,
  example: LibraryRecords | null,
  unit: LengthUnit,
): NewHornView {
  const own = nameOrOwn({ ...told, name: '' }, instrument);
  return {
    instrument,
    title: `New horn: start from an example ${instrument}, make it yours number by number`,
    fields: FIELDS.map(({ id, label, hint }) => ({
      id,
      label,
      hint: id === 'name' ? `left blank: ${own}` : hint,
      text: told[id],
      problem: issues.find((issue) => issue.path === id)?.message ?? null,
    })),
    problems: issues.filter((i) => !FIELDS.some((f) => f.id === i.path)).map((i) => i.message),
    readings: READINGS.map(({ field, words, how }) => ({
      words,
      how,
      plusMinus: `±${bare(knownReading(field, undefined, 'template').plusMinusMm, unit)}`,
    })),
    unitWord: unit === 'mm' ? 'mm' : 'inches',
    ...exampleOf(example, keyId, unit),
  };
}

/** What a person has chosen and typed so far. */
export interface NewHornDraft {
  readonly instrument: Instrument;
  readonly told: NewHorn;
  readonly issues: readonly DocumentIssue[];
  /** the key looked at */
  readonly keyId: string;
}

/** A page nobody has typed on. @param date such as 2026-05-31 */
export function makeDraft(date: string): NewHornDraft {
  return {
    instrument: 'alto',
    told: { name: '', maker: '', serial: '', owner: '', player: '', date },
    issues: [],
    keyId: GROUPS[0].pads[0],
  };
}

/** A length without its unit, which the page says once. */
function bare(mm: number, unit: LengthUnit): string {
  return formatLength(mm, unit).replace(/ \w+$/, '');
}

function exampleOf(
  example: LibraryRecords | null,
  keyId: string,
  unit: LengthUnit,
): Pick<NewHornView, 'groups' | 'picture'> {
  if (example === null) return { groups: [], picture: null };
  const { horn, setup } = asExample(example);
  const lengthOf = (pad: string, field: LengthField): string => {
    const known =
      field === 'openingMm' || field === 'padDiameterMm'
        ? knownSetupLength(setup, pad, field)
        : knownHornLength(horn, pad, field === 'hingeMm' ? 'hingeMm' : 'diameterMm');
    return known === null ? '' : bare(known.mm, unit);
  };
  const keys = keyedHoles(horn).map(({ id, number, name }): FirstKey => ({
    id,
    number,
    name,
    selected: id === keyId,
    lengths: READINGS.map(({ field }) => lengthOf(id, field)),
  }));
  const grouped = GROUPS.map(({ words, pads }) => ({
    words,
    keys: pads.flatMap((pad) => keys.filter((key) => key.id === pad)),
  }));
  const others = keys.filter((key) => !GROUPS.some((group) => group.pads.includes(key.id)));
  return {
    groups: [...grouped, { words: OTHERS, keys: others }].filter((group) => group.keys.length > 0),
    picture: makeHornPicture(horn, setup, { selected: keyId, unit }),
  };
}
