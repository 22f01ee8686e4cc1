import { plainWords, readNote, type NoteBlock } from './note-blocks.model.ts';
import { noteHref, notePlaceOf } from '../../state/note-places.ts';

/** A note in the list of notes. */
export interface NoteEntry {
  readonly name: string;
  readonly href: string;
  readonly title: string;
  /** what it answers, or else how it begins */
  readonly about: string;
}

/** A heading in a note’s contents. */
export interface ContentsLine {
  readonly href: string;
  readonly text: string;
  readonly inHand: boolean;
}

/** What the view shows: the list of notes, or one of them. */
export type NotesView =
  | {
      readonly kind: 'list';
      readonly headline: string;
      readonly standing: string;
      readonly physics: readonly NoteEntry[];
      readonly words: readonly NoteEntry[];
    }
  | {
      readonly kind: 'note';
      readonly name: string;
      readonly heading: string;
      readonly title: string;
      readonly blocks: readonly NoteBlock[];
      readonly contents: readonly ContentsLine[];
      readonly before: NoteEntry | null;
      readonly next: NoteEntry | null;
    };

/**
 * What a note answers, from the bench to the whole horn as one would read them; a note not named here follows and
 * says how it begins.
 */
const QUESTIONS: ReadonlyMap<string, string> = new Map([
  ['venting-study', 'When does more height stop helping?'],
  ['hinged-pad', 'What does a key that swings on its rod let through?'],
  ['uncertainty', 'How sure is a number, and what is worth measuring next?'],
  ['side-by-side', 'Would the player notice the difference?'],
  ['regulation', 'Height or a leak? What do leaks, links and pads do to the notes?'],
  ['proposed-setup', 'Which heights suit all keys at once?'],
  ['hearing', 'How does a played note become cents?'],
  ['calibration', 'What do played notes tell about this horn?'],
  ['chain', 'How do measurements become a note?'],
  ['whole-horn', 'What does one key do to every note?'],
  ['glossary', 'What is meant by a word?'],
  ['sources', 'Who found it, and was it read or remembered?'],
]);

/** What is looked up rather than read. */
const REFERENCE = ['glossary', 'sources'];

/** What the view of the notes shows. @param texts the notes by name @param place what follows `#notes/` */
export function makeNotesView(texts: ReadonlyMap<string, string>, place: string): NotesView {
  const names = readingOrder([...texts.keys()]);
  const { note, heading } = notePlaceOf(place);
  const text = texts.get(note);
  if (text === undefined) return makeList(texts, names, note);
  const blocks = readNote(text, new Set(names));
  const at = names.indexOf(note);
  const neighbour = (by: number): NoteEntry | null =>
    names[at + by] === undefined ? null : entryOf(names[at + by], texts);
  return {
    kind: 'note',
    name: note,
    heading,
    title: titleOf(blocks),
    blocks,
    contents: blocks.flatMap((block) =>
      block.kind === 'heading' && block.level === 2
        ? [{ href: noteHref({ note, heading: block.id }), text: block.text, inHand: block.id === heading }]
        : [],
    ),
    before: neighbour(-1),
    next: neighbour(1),
  };
}

function makeList(texts: ReadonlyMap<string, string>, names: readonly string[], asked: string): NotesView {
  const entries = names.map((name) => entryOf(name, texts));
  const isReference = ({ name }: NoteEntry): boolean => REFERENCE.includes(name);
  return {
    kind: 'list',
    headline: 'How the numbers are made',
    standing:
      asked === ''
        ? 'What every figure rests on: the formulas, where they come from, how far they hold and how they were checked. A figure with a dotted line under it opens its own reason.'
        : `There is no note called “${asked}”. These are all there are.`,
    physics: entries.filter((entry) => !isReference(entry)),
    words: entries.filter(isReference),
  };
}

function readingOrder(names: readonly string[]): string[] {
  const place = (name: string): number => {
    if (REFERENCE.includes(name)) return 1000 + REFERENCE.indexOf(name);
    const at = [...QUESTIONS.keys()].indexOf(name);
    return at < 0 ? QUESTIONS.size : at;
  };
  return [...names].sort((a, b) => place(a) - place(b) || (a < b ? -1 : 1));
}

function entryOf(name: string, texts: ReadonlyMap<string, string>): NoteEntry {
  const blocks = readNote(texts.get(name)!, new Set(texts.keys()));
  const first = blocks.find((block) => block.kind === 'paragraph' && plainWords(block.spans).trim() !== '');
  return {
    name,
    href: noteHref({ note: name, heading: '' }),
    title: titleOf(blocks),
    about: QUESTIONS.get(name) ?? (first?.kind === 'paragraph' ? firstSentence(plainWords(first.spans)) : ''),
  };
}

function titleOf(blocks: readonly NoteBlock[]): string {
  const title = blocks.find((block) => block.kind === 'heading');
  return title?.kind === 'heading' ? title.text : '';
}

/** Up to the first full stop that ends a sentence, or a colon that opens a list. */
function firstSentence(text: string): string {
  const joined = text.replace(/\s+/g, ' ').trim();
  return (/^.*?[.:](?=\s|$)/.exec(joined)?.[0] ?? joined).replace(/:$/, '.');
}
