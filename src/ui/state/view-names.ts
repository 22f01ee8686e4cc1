/** The views, by the page's hash. */
export const VIEW_NAMES = [
  'sheet',
  'key',
  'scale',
  'played',
  'proposal',
  'side-by-side',
  'links',
  'leaks',
  'pads',
  'work',
  'player-sheet',
  'new',
  'library',
  'notes',
] as const;

/** What the page shows. */
export type ViewName = (typeof VIEW_NAMES)[number];

/** Shown where the hash names no view. */
export const FIRST_VIEW: ViewName = 'key';

/** The view a hash such as `#scale` or `#notes/hinged-pad` names. */
export function viewOfHash(hash: string): ViewName {
  return VIEW_NAMES.find((name) => hash === `#${name}` || hash.startsWith(`#${name}/`)) ?? FIRST_VIEW;
}

/** What of a view its hash names: `hinged-pad/the-table` of `#notes/hinged-pad/the-table`; empty where it names nothing. */
export function placeOfHash(hash: string): string {
  const slash = hash.indexOf('/');
  return slash < 0 ? '' : hash.slice(slash + 1);
}
