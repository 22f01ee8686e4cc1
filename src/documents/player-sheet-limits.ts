import type { BenchContents } from './bench-contents.ts';
import { keyedHoles } from './horn-document.ts';
import type { PlayerSheetFacts } from './player-sheet-facts.ts';
import { inARow } from './player-sheet-lengths.ts';
import { knownSetupLength } from './sheet-edits.ts';

/** **Source:** from memory, within common practice. */
const DAY_WORDS = 'A degree of warmth is worth about 3 cents; a player repeats a note to about 5.';

/**
 * How far the page is to be trusted: how much of the horn was read, and how good a pitch by itself is. The ± of a
 * pitch counts the readings; how far this horn’s bore is from an example’s nobody knows, so that there it is left out.
 */
export function limitsSentence(facts: PlayerSheetFacts, contents: BenchContents): string {
  const isExample = contents.horn.document.origin === 'template';
  const read = readWords(contents, isExample);
  const difference = 'a difference is far better, as its ± says.';
  const pitch = isExample
    ? `A pitch by itself is the example’s, not this horn’s; ${difference}`
    : `A pitch by itself is good to ${rangeWords(facts)}; ${difference}`;
  return `Worked out, not played. ${read} ${pitch} ${DAY_WORDS}`;
}

/** How many openings were read on this horn, and what of the rest is an example’s. */
function readWords({ horn, asFound, asSet }: BenchContents, isExample: boolean): string {
  const keys = keyedHoles(horn.document);
  const originsOf = (id: string): (string | undefined)[] =>
    [asSet, asFound].map(({ document }) => knownSetupLength(document, id, 'openingMm')?.origin);
  const unread = keys.filter(({ id }) => !originsOf(id).includes('measured'));
  const read = keys.length - unread.length;
  const areExamples = unread.every(({ id }) => originsOf(id).includes('template'));
  const others = unread.length === 0 ? [] : [read === 0 ? 'openings' : 'the others'];
  const examples = [...(areExamples ? others : []), ...(isExample ? ['bore', 'mouthpiece'] : [])];
  const count =
    unread.length === 0
      ? 'Every opening was read on this horn'
      : `${read === 0 ? 'None' : read} of ${keys.length} openings ${read === 1 ? 'was' : 'were'} read on this horn`;
  if (examples.length === 0) return `${count}.`;
  const are = examples.length === 1 && others.length === 0 ? 'is' : 'are';
  return `${count}; ${inARow(examples)} ${are} an example’s.`;
}

/** `±12 to ±14 cents`: over all notes as the horn leaves. */
function rangeWords({ comparison }: PlayerSheetFacts): string {
  const halves = comparison.notes.flatMap(({ setups }) => setups[1]?.centsPlusMinus ?? []);
  const [least, most] = [Math.min(...halves), Math.max(...halves)].map((half) => half.toFixed(0));
  return least === most ? `±${least} cents` : `±${least} to ±${most} cents`;
}
