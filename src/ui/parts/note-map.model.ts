/** How one note answers to one key. */
export interface MapCell {
  /** cents per mm at the front; null where the note is lost */
  readonly centsPerMm: number | null;
  /** as written in the cell; empty where there is next to nothing */
  readonly text: string;
  readonly ground: string;
  readonly ink: string;
  /** the whole of it, said */
  readonly words: string;
}

export interface MapNote {
  readonly id: string;
  readonly label: string;
  /** a thicker line before it: another register begins */
  readonly opens: boolean;
}

export interface MapKey {
  readonly id: string;
  readonly label: string;
}

/** Keys down, notes across. */
export interface NoteMap {
  readonly notes: readonly MapNote[];
  readonly keys: readonly MapKey[];
  /** key by key, in the notes' order */
  readonly cells: readonly (readonly MapCell[])[];
  readonly legend: readonly { readonly text: string; readonly ground: string; readonly ink: string }[];
}

/** Below this a cell stays bare, cents per mm. */
const LEAST_CENTS_PER_MM = 0.05;
/** The darkest shade; few cells exceed it, cents per mm. */
const FULL_CENTS_PER_MM = 4;

type Colour = readonly [number, number, number];
const SHEET: Colour = [253, 253, 251];
/** Blue sharpens, orange flattens: a pair that every eye tells apart, and lightness says how much. */
const RISE: Colour = [8, 66, 110];
const FALL: Colour = [140, 62, 0];

/** Where black and white read equally well, 4.6 : 1. */
const EVEN_LUMINANCE = 0.179;

/** The shade of a change. */
export function mapShade(centsPerMm: number | null): { readonly ground: string; readonly ink: string } {
  if (centsPerMm === null || Math.abs(centsPerMm) < LEAST_CENTS_PER_MM) {
    return { ground: rgb(SHEET), ink: '#14262b' };
  }
  const share = Math.min(Math.sqrt(Math.abs(centsPerMm) / FULL_CENTS_PER_MM), 1);
  const full = centsPerMm > 0 ? RISE : FALL;
  const ground = SHEET.map((from, i) => from + share * (full[i] - from)) as unknown as Colour;
  return { ground: rgb(ground), ink: luminance(ground) < EVEN_LUMINANCE ? '#ffffff' : '#000000' };
}

/** What stands in a cell. */
export function mapText(centsPerMm: number | null): string {
  if (centsPerMm === null) return '?';
  if (Math.abs(centsPerMm) < LEAST_CENTS_PER_MM) return '';
  return centsPerMm.toFixed(1).replace('-', '−');
}

const rgb = ([r, g, b]: Colour): string => `rgb(${Math.round(r)} ${Math.round(g)} ${Math.round(b)})`;

/** Relative luminance, as contrast is reckoned. */
function luminance(colour: Colour): number {
  const [r, g, b] = colour.map((value) => {
    const share = value / 255;
    return share <= 0.03928 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
