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
/** The deepest shade; few cells exceed it, cents per mm. */
const FULL_CENTS_PER_MM = 4;

/** How many shades there are of each hue; up to half of them ink stands on them, on the darker ones sheet. */
const SHADES = 8;

/** A ground and what is written on it, as the page's colours. */
export interface Shade {
  readonly ground: string;
  readonly ink: string;
}

/** The shade of a change: blue sharpens, orange flattens, a pair that every eye tells apart; depth says how much. */
export function mapShade(centsPerMm: number | null): Shade {
  const ink = 'var(--vw-ink)';
  if (centsPerMm === null || Math.abs(centsPerMm) < LEAST_CENTS_PER_MM) {
    return { ground: 'var(--vw-sheet)', ink };
  }
  const share = Math.min(Math.sqrt(Math.abs(centsPerMm) / FULL_CENTS_PER_MM), 1);
  const depth = Math.max(1, Math.ceil(share * SHADES));
  return {
    ground: `var(--vw-${centsPerMm > 0 ? 'rise' : 'fall'}-${depth})`,
    ink: depth <= SHADES / 2 ? ink : 'var(--vw-sheet)',
  };
}

/** What stands in a cell. */
export function mapText(centsPerMm: number | null): string {
  if (centsPerMm === null) return '?';
  if (Math.abs(centsPerMm) < LEAST_CENTS_PER_MM) return '';
  return centsPerMm.toFixed(1).replace('-', '−');
}
