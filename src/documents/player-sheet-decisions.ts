import { FINGERINGS } from '../acoustics/index.ts';
import type { ComparedKeyReport, ComparisonReport, NoteDifferenceReport } from './comparison-report.ts';
import type { LengthUnit } from './length-format.ts';
import { noteLabel } from './note-label.ts';
import { nameOf, type PlayerSheetFacts } from './player-sheet-facts.ts';
import { followingWords } from './player-sheet-followers.ts';
import { movedKeys } from './player-sheet-leaving.ts';
import { both, bothWithPlusMinus, fromTo, inARow, withPlusMinus } from './player-sheet-lengths.ts';
import type { VentingStudyReport } from './venting-report.ts';

/** What was decided about one key, a sentence. */
export interface Decision {
  readonly pad: string;
  readonly text: string;
}

/** One sentence for every key that is told of one by one. */
export function decisionsOf(facts: PlayerSheetFacts, unit: LengthUnit): Decision[] {
  const { comparison, unreadAsFound } = facts;
  const moved = movedKeys(comparison);
  return facts.studies.flatMap((study): Decision[] => {
    const key = moved.find(({ id }) => id === study.key.id);
    if (key === undefined) return [];
    const text = unreadAsFound.includes(key.id)
      ? settingSentence(key, study, comparison, unit)
      : decisionSentence(key, study, comparison, unit);
    return [{ pad: key.id, text }];
  });
}

/** `The D key was raised from 8.0 to 8.9 mm (0.315 to 0.350 in) at the front because low E was under-vented; …`. */
function decisionSentence(
  key: ComparedKeyReport,
  study: VentingStudyReport,
  comparison: ComparisonReport,
  unit: LengthUnit,
): string {
  const [found, set] = [key.setups[0]!, key.setups[1]!];
  const wasRaised = set.frontMm > found.frontMm;
  const did =
    set.ruledBy === null
      ? `was ${wasRaised ? 'raised' : 'lowered'}`
      : `now stands ${wasRaised ? 'higher' : 'lower'}, where the ${nameOf(comparison, set.ruledBy)} key’s arm holds it,`;
  const what = `The ${key.name} key ${did} ${fromTo(found.frontMm, set.frontMm, unit)} at the front`;
  const note = mainNote(study);
  const { diminishingReturn: enough } = study;
  if (note === null) return `${what}; no note moves by more than a cent with it.`;
  if (enough.kind === 'none in reach')
    return `${what}; as far as it reaches, more height still helps ${note.name}.`;
  const enoughMm = enough.point!.frontMm;
  const half = enough.frontMmBudget?.plusMinus ?? 0;
  const limit = bothWithPlusMinus(enoughMm, half, unit);
  const wasLow = found.frontMm < enoughMm - half;
  const isLow = set.frontMm < enoughMm - half;
  const isAbout = (mm: number): boolean => Math.abs(mm - enoughMm) <= half;
  if (enough.link !== null && isLow) {
    const by = nameOf(comparison, enough.link.driver);
    return `${what}; ${note.name} would gain up to ${limit}, but the ${by} key’s arm stops it at ${both(enough.link.limitFrontMm, unit)}.`;
  }
  if (wasRaised && wasLow) {
    const because = `${what} because ${note.name} was under-vented`;
    if (isLow) return `${because}; more height would still help it, up to ${limit}.`;
    return isAbout(set.frontMm)
      ? `${because}; that is as good as enough, ${limit}.`
      : `${because}; above ${limit} more height no longer helps.`;
  }
  if (isLow)
    return `${what}. Below ${limit} height still helps ${note.name}${costWords(note.id, comparison)}.`;
  if (isAbout(wasRaised ? found.frontMm : set.frontMm))
    return `${what}; for ${note.name} ${wasRaised ? 'it stood' : 'that is'} as good as enough${wasRaised ? ' before' : ''}, ${limit}.`;
  return wasRaised
    ? `${what}; ${note.name} was open enough before, for above ${limit} more height no longer helps.`
    : `${what}; ${note.name} stays open enough, for above ${limit} more height no longer helps.`;
}

/** What is said where an example’s opening stands for the one as found. */
export const NOT_READ = 'how it was found was not read';

/** The same of a key that nobody read as found: where it stands, and whether that is enough. */
function settingSentence(
  { name, setups: [, set] }: ComparedKeyReport,
  study: VentingStudyReport,
  comparison: ComparisonReport,
  unit: LengthUnit,
): string {
  const { frontMm, ruledBy } = set!;
  const held = ruledBy === null ? '' : `, where the ${nameOf(comparison, ruledBy)} key’s arm holds it`;
  const what = `The ${name} key was set to ${both(frontMm, unit)} at the front${held}; ${NOT_READ}.`;
  const note = mainNote(study);
  const { point, frontMmBudget } = study.diminishingReturn;
  if (note === null) return what;
  if (point === null) return `${what} As far as it reaches, more height still helps ${note.name}.`;
  const half = frontMmBudget?.plusMinus ?? 0;
  const limit = bothWithPlusMinus(point.frontMm, half, unit);
  if (frontMm < point.frontMm - half) return `${what} Below ${limit} height still helps ${note.name}.`;
  return frontMm > point.frontMm + half
    ? `${what} Above ${limit} more height no longer helps ${note.name}.`
    : `${what} For ${note.name} that is as good as enough, ${limit}.`;
}

/** `: it is 4.1 ± 0.3 cents flatter`, or that nothing can be shown. */
function costWords(fingering: string, { notes }: ComparisonReport): string {
  const difference = notes.find((note) => note.fingering === fingering)?.differences[0] ?? null;
  if (difference === null) return '';
  return isPitchShown(difference)
    ? `: it is ${withPlusMinus(difference.cents, difference.centsPlusMinus)} cents ${difference.cents > 0 ? 'sharper' : 'flatter'}`
    : '; what that changes of its pitch is too little to show';
}

export function isPitchShown({ cents, centsPlusMinus }: NoteDifferenceReport): boolean {
  return Math.abs(cents) > centsPlusMinus;
}

export function isStrengthShown({ strengthDb, strengthDbPlusMinus }: NoteDifferenceReport): boolean {
  return strengthDb !== null && strengthDbPlusMinus !== null && Math.abs(strengthDb) > strengthDbPlusMinus;
}

/** A note a key governs: its place among them, and how it is said. */
export interface MainNote {
  readonly index: number;
  readonly id: string;
  readonly name: string;
}

/** The note that answers most to the key: of the low register where one does, as that is the one it vents. */
export function mainNote({ governed, curve }: VentingStudyReport): MainNote | null {
  const spans = governed.map(({ register }, index) => {
    const cents = curve.flatMap(({ notes }) => notes[index]?.fromPresentCents ?? []);
    return { index, register, span: cents.length < 2 ? 0 : Math.max(...cents) - Math.min(...cents) };
  });
  const low = spans.filter(({ register }) => register === 1);
  const best = (low.length > 0 ? low : spans).reduce<(typeof spans)[number] | null>(
    (most, next) => (most === null || next.span > most.span ? next : most),
    null,
  );
  if (best === null) return null;
  const { fingering } = governed[best.index];
  return { index: best.index, id: fingering, name: spokenNote(fingering) };
}

/** The lowest written notes, which players call low. */
const LOW = new Set(
  FINGERINGS.slice(
    0,
    FINGERINGS.findIndex(({ note }) => note === 'G4'),
  ).map(({ id }) => id),
);

/** `low E` for E4, else as written. */
export function spokenNote(fingering: string): string {
  const label = noteLabel(fingering);
  return LOW.has(fingering) && /^[A-G][♭♯]?[34]$/.test(label) ? `low ${label.slice(0, -1)}` : label;
}

/** What stands otherwise: the one key, or how many and which way; those that only follow apart. */
function movedWords(facts: PlayerSheetFacts, unit: LengthUnit): string {
  const moved = movedKeys(facts.comparison);
  const byHand = moved.filter(({ id }) => facts.setByHand.includes(id));
  const keys = byHand.length === 0 ? moved : byHand;
  const following = byHand.length === 0 ? '' : followingWords(facts);
  const higher = keys.filter(({ differences: [d] }) => d!.frontMm > 0).length;
  const isUnread = keys.some(({ id }) => facts.unreadAsFound.includes(id));
  if (keys.length === 1) {
    const { name, differences, setups } = keys[0];
    if (isUnread)
      return `The ${name} key is set to ${both(setups[1]!.frontMm, unit)} at the front${following}`;
    const by = both(Math.abs(differences[0]!.frontMm), unit);
    return `The ${name} key stands ${by} ${higher === 1 ? 'higher' : 'lower'}${following}`;
  }
  if (isUnread) return `${keys.length} keys are set${following}`;
  const way =
    higher === keys.length
      ? 'higher'
      : higher === 0
        ? 'lower'
        : `otherwise, ${higher} higher and ${keys.length - higher} lower`;
  return `${keys.length} keys stand ${way}${following}`;
}

/** Beside what notes are told to change, where that is not what was found on this horn. */
function besideWords({ comparison, unreadAsFound }: PlayerSheetFacts): string {
  const moved = movedKeys(comparison);
  const unread = moved.filter(({ id }) => unreadAsFound.includes(id)).length;
  if (unread === 0) return '';
  return unread === moved.length
    ? `beside the example, for how ${unread === 1 ? 'it was' : 'they were'} found was not read, `
    : `beside as found, of which ${unread} ${unread === 1 ? 'opening is' : 'openings are'} the example’s, `;
}

/** What a person would notice of all that was set, in a line: the biggest words of the sheet. */
export function headlineOf(facts: PlayerSheetFacts, unit: LengthUnit): string {
  const { comparison } = facts;
  if (movedKeys(comparison).length === 0) return 'The horn leaves as it was found: no key stands otherwise.';
  const keys = `${movedWords(facts, unit)}; ${besideWords(facts)}`;
  const heard = comparison.notes.filter(({ differences: [d] }) => d?.noticedBy === 'the player');
  const careful = comparison.notes.filter(({ differences: [d] }) => d?.noticedBy === 'a careful player');
  const names = (of: ComparisonReport['notes']): string => {
    const told = of.slice(0, 3).map(({ fingering }) => spokenNote(fingering));
    const more = of.length - told.length;
    return more > 0 ? `${told.join(', ')} and ${more} more` : inARow(told);
  };
  if (heard.length > 0) return `${keys}you should notice ${names(heard)}.`;
  if (careful.length > 0) return `${keys}a careful ear may notice ${names(careful)}.`;
  return `${keys}no note changes by as much as a player would notice.`;
}
