/** What reading and doing an act on all keys of the sheet needs, fetched when it is first asked for. */
export { readShift } from './read-shift.ts';
export { shiftProposals, withdrawalSentence } from './shift-proposals.ts';

/** What is read, as a sentence names it. */
export const SHIFT_NAME = 'shift of all keys';
