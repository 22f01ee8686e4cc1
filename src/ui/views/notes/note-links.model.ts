/** Where a link in a note leads: a place in the workbench, or a page elsewhere. */
export interface NoteLink {
  readonly href: string;
  readonly outside: boolean;
}

/** A note, and a heading of it; the list of notes where both are empty. */
export interface NotePlace {
  readonly note: string;
  readonly heading: string;
}

/** A heading as a place: `The ± on the screen` is `the-on-the-screen`. */
export function headingId(text: string): string {
  return text
    .toLowerCase()
    .replace(/[^\p{Letter}\p{Number}]+/gu, '-')
    .replace(/^-|-$/g, '');
}

/** The page’s hash of a place in the notes. */
export function noteHref({ note, heading }: NotePlace): string {
  return ['#notes', note, heading].filter((part) => part !== '').join('/');
}

/** The place named by what follows `#notes/`. */
export function notePlaceOf(place: string): NotePlace {
  const [note, heading = ''] = place.split('/');
  return { note, heading: decoded(heading) };
}

/** A letter outside ASCII may come back from the address as its code. */
function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

/** Where a link as written in a note leads; null where there is nothing to lead to in the workbench. */
export function linkIn(href: string, known: ReadonlySet<string>): NoteLink | null {
  if (/^https?:\/\//.test(href)) return { href, outside: true };
  const [file, heading = ''] = href.split('#');
  const note = /(?:^|\/)([a-z0-9-]+)\.md$/.exec(file)?.[1];
  if (note === undefined || !known.has(note)) return null;
  return { href: noteHref({ note, heading }), outside: false };
}
