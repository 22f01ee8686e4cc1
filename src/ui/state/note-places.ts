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
