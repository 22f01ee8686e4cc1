import { listed, signedCents, unbroken } from '../../parts/note-names.ts';
import { mapShade, mapText, type MapCell, type NoteMap } from '../../parts/note-map.model.ts';
import type { ScaleNumbers, ScaleReport } from '../../state/scale-report.ts';
import type { Namer } from './scale-words.ts';

/** One of the keys that govern a note. */
export interface GoverningKey {
  readonly id: string;
  readonly name: string;
  readonly cents: string;
  readonly strength: string;
  /** length of its bar, 0…1 */
  readonly share: number;
  readonly flattens: boolean;
}

/** A key that moves a note by less is not listed, cents per mm. */
const LEAST_CENTS_PER_MM = 0.05;
const MOST_KEYS = 5;
const MOST_NOTES = 7;
const LEGEND_CENTS_PER_MM = [-0.5, 0, 0.1, 0.5, 1, 2, 4];

/** Cents per mm of a pad on a note; null where the note is lost. */
export function centsPerMmOf(
  report: ScaleReport,
  numbers: ScaleNumbers,
  note: number,
  pad: number,
): number | null {
  if (note < 0 || pad < 0) return null;
  const value = numbers.centsPerMm[note * report.pads.length + pad];
  return Number.isNaN(value) ? null : value;
}

function strengthPerMmOf(report: ScaleReport, numbers: ScaleNumbers, note: number, pad: number): number {
  return numbers.strengthPercentPerMm[note * report.pads.length + pad];
}

/** The keys that govern a note, strongest first. */
export function makeGoverning(report: ScaleReport, numbers: ScaleNumbers, note: number): GoverningKey[] {
  const keys = report.pads
    .map((pad, p) => ({ pad, p, cents: centsPerMmOf(report, numbers, note, p) ?? 0 }))
    .filter(({ cents }) => Math.abs(cents) >= LEAST_CENTS_PER_MM)
    .sort((a, b) => Math.abs(b.cents) - Math.abs(a.cents))
    .slice(0, MOST_KEYS);
  const most = Math.abs(keys[0]?.cents ?? 1);
  return keys.map(({ pad, p, cents }) => ({
    id: pad.id,
    name: pad.name,
    cents: signedCents(cents),
    strength: `${signedCents(strengthPerMmOf(report, numbers, note, p))} %`,
    share: Math.abs(cents) / most,
    flattens: cents < 0,
  }));
}

/** `F4 answers most to the E key: +1.5 cents per mm at the front; then to D, +0.4.` */
export function governingSentence(label: string, keys: readonly GoverningKey[]): string {
  if (keys.length === 0) return `No key’s opening moves ${label}.`;
  const [first, ...others] = keys;
  const then = listed(others.slice(0, 2).map(({ name, cents }) => `${name} ${cents}`));
  return unbroken(
    `${label} answers most to the ${first.name} key: ${first.cents} cents per mm at the front` +
      `${then === '' ? '.' : `, then ${then}.`}`,
  );
}

/** `moves F5 +1.6, F4 +1.5 … cents per mm at the front`. */
export function keyDetail(report: ScaleReport, numbers: ScaleNumbers, keyId: string, nameOf: Namer): string {
  const pad = report.pads.findIndex(({ id }) => id === keyId);
  const notes = report.fingerings
    .map((fingering, n) => ({ fingering, cents: centsPerMmOf(report, numbers, n, pad) ?? 0 }))
    .filter(({ cents }) => Math.abs(cents) >= LEAST_CENTS_PER_MM)
    .sort((a, b) => Math.abs(b.cents) - Math.abs(a.cents));
  if (notes.length === 0) return 'moves no note';
  const told = notes
    .slice(0, MOST_NOTES)
    .map(({ fingering, cents }) => `${nameOf(fingering)} ${signedCents(cents)}`);
  const more = notes.length > MOST_NOTES ? ` and ${notes.length - MOST_NOTES} more` : '';
  return `cents per mm: ${told.join(', ')}${more}`;
}

/** The map of all notes and all keys. */
export function makeNoteMap(report: ScaleReport, numbers: ScaleNumbers, nameOf: Namer): NoteMap {
  const labels = report.fingerings.map(nameOf);
  return {
    notes: report.fingerings.map(({ id, register }, n) => ({
      id,
      label: labels[n].replace('one-and-one', '1+1'),
      opens: n > 0 && register !== report.fingerings[n - 1].register,
    })),
    keys: report.pads.map(({ id, number, name }) => ({ id, label: `${name} ${number}` })),
    cells: report.pads.map(({ name }, p) =>
      labels.map((label, n): MapCell => {
        const cents = centsPerMmOf(report, numbers, n, p);
        const words =
          cents === null
            ? `${label} is lost`
            : unbroken(
                `${label} by the ${name} key: ${signedCents(cents)} cents per mm, strength ` +
                  `${signedCents(strengthPerMmOf(report, numbers, n, p))} % per mm`,
              );
        return { centsPerMm: cents, text: mapText(cents), ...mapShade(cents), words };
      }),
    ),
    legend: LEGEND_CENTS_PER_MM.map((cents) => ({
      text: cents === 0 ? '0' : String(cents).replace('-', '−'),
      ...mapShade(cents),
    })),
  };
}
