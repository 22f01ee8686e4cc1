import { noteHref } from '../../state/note-places.ts';

/** Where a link in a note leads: a place in the workbench, or a page elsewhere. */
export interface NoteLink {
  readonly href: string;
  readonly outside: boolean;
}

/** Where a link as written in a note leads; null where there is nothing to lead to in the workbench. */
export function linkIn(href: string, known: ReadonlySet<string>): NoteLink | null {
  if (/^https?:\/\//.test(href)) return { href, outside: true };
  const [file, heading = ''] = href.split('#');
  const note = /(?:^|\/)([a-z0-9-]+)\.md$/.exec(file)?.[1];
  if (note === undefined || !known.has(note)) return null;
  return { href: noteHref({ note, heading }), outside: false };
}
