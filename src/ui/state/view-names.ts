/** The views, by the page's hash. */
export const VIEW_NAMES = [
  'sheet',
  'key',
  'scale',
  'side-by-side',
  'links',
  'leaks',
  'pads',
  'work',
  'new',
  'library',
] as const;

/** What the page shows. */
export type ViewName = (typeof VIEW_NAMES)[number];

/** Shown where the hash names no view. */
export const FIRST_VIEW: ViewName = 'key';

/** The view a hash such as `#scale` names. */
export function viewOfHash(hash: string): ViewName {
  return VIEW_NAMES.find((name) => hash === `#${name}`) ?? FIRST_VIEW;
}
