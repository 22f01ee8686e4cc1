/** What a technician is told when the browser's storage says no. */

const KEEP = 'What is on the bench stays until this page is closed: save it as a file.';

/** Why the library could not be opened, and what that means. */
export function whyNotOpened(error: unknown): string {
  switch (nameOf(error)) {
    case 'VersionError':
      return `The library in this browser was laid out by a newer Ventwright and is left as it is. ${KEEP}`;
    case 'SecurityError':
    case 'InvalidStateError':
    case 'UnknownError':
    case 'ReferenceError':
      return `This browser refuses to keep a library here, as in a private window or with storage switched off. ${KEEP}`;
    case 'QuotaExceededError':
      return `This browser has no room left to keep a library. ${KEEP}`;
    default:
      return `The library in this browser could not be opened (${messageOf(error)}). ${KEEP}`;
  }
}

/** Why something could not be written, and what to do. */
export function whyNotWritten(error: unknown): string {
  switch (nameOf(error)) {
    case 'QuotaExceededError':
      return 'Not saved: this browser has no more room. Save the library as a file, then remove horns or free space on the disk; the next change is saved again.';
    case 'ReadOnlyError':
      return 'Not saved: the library in this browser was laid out by a newer Ventwright, which this page only reads. Save what is on the bench as a file, then reload the page.';
    case 'InvalidStateError':
      return 'Not saved: the browser has closed the library. Save what is on the bench as a file, then reload the page.';
    default:
      return `Not saved: the browser’s storage failed (${messageOf(error)}). Save what is on the bench as a file, and try again.`;
  }
}

export const TAKEN_BY_NEWER =
  'Another tab has a newer Ventwright. Reload this one before you go on; what is not saved yet can be saved as a file.';

export const CLOSED_BY_BROWSER =
  'The browser has closed the library. Save what is on the bench as a file, then reload the page.';

export const HELD_BY_OLDER =
  'A tab with an older Ventwright holds the library. Close the other tabs; this one goes on as soon as they are closed.';

export const READ_ONLY =
  'The library in this browser was laid out by a newer Ventwright: it can be looked at and saved as a file, and nothing in it is changed. Reload this page to get the newer one.';

export const NO_SUCH_HORN = 'The library has no such horn; it may have been removed in another tab.';

/** @param why from its colon on; may be empty */
export const damagedHorn = (why: string): string =>
  `This horn’s record cannot be read${why}. It is kept as it is, and can be saved as a file.`;

/** @param why from its colon on; may be empty */
export const damagedVisit = (why: string): string =>
  `This visit cannot be read${why}. It is kept as it is, and can be saved as a file with its horn.`;

const nameOf = (error: unknown): string =>
  error instanceof Error || error instanceof DOMException ? error.name : '';

const messageOf = (error: unknown): string =>
  error instanceof Error || error instanceof DOMException ? error.message || error.name : String(error);
