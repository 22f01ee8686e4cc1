import { PAPER_MM } from './leak-report.ts';
import type { BenchContents } from './bench-contents.ts';
import { saidOf, type Said } from './day-steps.ts';
import { goesWords } from './lost-motion-words.ts';
import { noteLabel } from './note-label.ts';
import type { PadChangeReport } from './pad-change-report.ts';
import { notesPlayed, takesIn } from './pitch-log.ts';
import { nameOf, SAME_MM, type PlayerSheetFacts } from './player-sheet-facts.ts';
import { movedKeys } from './player-sheet-leaving.ts';
import type { SetupDocument } from './setup-document.ts';
import { arrow, both, capital, inARow, many } from './player-sheet-lengths.ts';
import type { LengthUnit } from './length-format.ts';

// What was checked, each in a sentence; what was not recorded is said to be so.

/** A gap told in papers too, as the feeler finds it: `0.05 mm (0.002 in, 2.0 papers)`. */
function gapWords(mm: number, unit: LengthUnit): string {
  return `${both(mm, unit).replace(/\)$/, '')}, ${(mm / PAPER_MM).toFixed(1)} papers)`;
}

/** Of what nothing is recorded: what the technician said of it, or that nobody did. */
function unrecorded(what: string, nothing: string, said: Said | null): string {
  if (said === 'done') return `${what} were checked; ${nothing}.`;
  return said === 'not needed'
    ? `${what} were not gone over: that was said not to be needed.`
    : `${what} were not recorded.`;
}

/** Seats: which leaked, which were seated anew, which still leak. */
export function sealsSentence({ comparison }: PlayerSheetFacts, { visit }: BenchContents): string {
  const { leakingSeats: leaks = [], work = [] } = visit.document;
  const seated = new Set(work.flatMap(({ move }) => (move.startsWith('seat ') ? [move.slice(5)] : [])));
  const name = (pad: string): string => nameOf(comparison, pad);
  const said = saidOf(visit.document, 'seals and links');
  if (leaks.length === 0 && seated.size === 0) return unrecorded('Seals', 'no leak was recorded', said);
  const left = leaks.filter(({ pad }) => !seated.has(pad)).map(({ pad }) => name(pad));
  const mended = [...seated].map(name);
  const [seats, leak] = [
    many(mended.length, 'pad'),
    `${inARow(left)} ${left.length === 1 ? 'leaks' : 'leak'}`,
  ];
  if (left.length === 0) return `Seals were checked: ${seats} seated anew (${inARow(mended)}).`;
  const though = said === null ? '' : `, though seals and links were said to be ${said}`;
  const still = `${leak} as found, and no new seating is recorded${though}`;
  return mended.length === 0
    ? `Seals were checked: ${still}.`
    : `Seals were checked: ${seats} seated anew (${inARow(mended)}); ${still}.`;
}

/** Links: how many were read as it leaves, and which does not shut within a paper. */
export function linksSentence(
  { comparison, isProposal }: PlayerSheetFacts,
  { visit, asSet, asFound, horn }: BenchContents,
  unit: LengthUnit,
): string {
  const read = [asSet, asFound].flatMap(({ document }) => document.links ?? []);
  const gaps = read.filter(({ drivenGapMm }) => drivenGapMm !== undefined);
  const known = new Map<string, number>();
  for (const { driver, driven, drivenGapMm } of gaps) {
    const id = `${driver} > ${driven}`;
    // As set comes first and stands over as found.
    if (!known.has(id)) known.set(id, drivenGapMm!);
  }
  const holds = heldDown(comparison, isProposal);
  if (known.size === 0) {
    const said = saidOf(visit.document, 'seals and links');
    return `${unrecorded('Links', 'no reading of them is recorded', said)}${holds}`;
  }
  const total = horn.document.links.length;
  const open = [...known].filter(([, gap]) => Math.abs(gap) > PAPER_MM);
  const count = `${known.size} of ${total} links were read`;
  if (open.length === 0)
    return `Links were checked: ${count}, and each shuts both pads within a paper.${holds}`;
  const told = open.slice(0, 2).map(([id, gap]) => {
    const [driver, driven] = id.split(' > ');
    const left = gap > 0 ? driven : driver;
    return `${nameOf(comparison, left)} is left ${gapWords(Math.abs(gap), unit)} open`;
  });
  const more = open.length > told.length ? `, and ${open.length - told.length} more` : '';
  return `Links were checked: ${count}; ${told.join(', ')}${more}.${holds}`;
}

/** Pads that another key’s arm holds below their own stops, as it leaves. */
function heldDown({ keys }: PlayerSheetFacts['comparison'], isProposal: boolean): string {
  const held = keys.flatMap(({ name, setups }) => {
    const ruledBy = setups[1]?.ruledBy ?? null;
    const driver = keys.find(({ id }) => id === ruledBy)?.name ?? ruledBy;
    return driver === null ? [] : [`${name} by the ${driver} key`];
  });
  return held.length === 0
    ? ''
    : ` ${isProposal ? 'To be held' : 'Held'} below its own stop: ${inARow(held)}.`;
}

/** Lost motion that the heights set leave in a link: the most of it, and how many more pads stir late; null for none. */
export function lostMotionSentence(
  { lostMotion, isProposal }: PlayerSheetFacts,
  unit: LengthUnit,
): string | null {
  const [most] = lostMotion;
  if (most === undefined) return null;
  const others = new Set(lostMotion.map(({ driven }) => driven)).size - 1;
  const links = lostMotion.filter(({ driven }) => driven === most.driven);
  const more = others === 0 ? '' : `; ${many(others, 'more pad')} ${others === 1 ? 'stirs' : 'stir'} late`;
  return `${isProposal ? 'As proposed, lost motion would be left' : 'Lost motion is left'}. ${goesWords(links, unit)}${more}.`;
}

/** Keys whose pad as set is of another size or thickness than as found. */
function newPads({ asFound, asSet }: BenchContents): SetupDocument['keys'] {
  const differs = (now: number | undefined, before: number | undefined): boolean =>
    now !== undefined && Math.abs(now - (before ?? NaN)) >= SAME_MM;
  return asSet.document.keys.filter(({ pad, padThicknessMm, padDiameterMm }) => {
    const was = asFound.document.keys.find((key) => key.pad === pad);
    return differs(padThicknessMm, was?.padThicknessMm) || differs(padDiameterMm, was?.padDiameterMm);
  });
}

/** Pads that are other than those found, and what they alone would have done. */
export function padsSentence(facts: PlayerSheetFacts, contents: BenchContents, unit: LengthUnit): string {
  const changed = newPads(contents);
  if (changed.length === 0) return 'No pad of another size or thickness is recorded.';
  const names = changed.map(({ pad }) => nameOf(facts.comparison, pad));
  const listed =
    names.length > 4 ? `${names.slice(0, 3).join(', ')} and ${names.length - 3} more` : inARow(names);
  const what = `${capital(many(changed.length, 'pad'))} changed (${listed})`;
  return facts.pads === null || facts.pads.pads.length === 0
    ? `${what}, of the same thickness.`
    : `${what}. ${padEffect(facts, facts.pads, unit)}`;
}

/** The key whose opening the new pads alone would have changed most, and the note they would have moved most. */
function padEffect(
  { comparison }: PlayerSheetFacts,
  { pads, notes }: PadChangeReport,
  unit: LengthUnit,
): string {
  const most = pads.reduce((a, b) =>
    Math.abs(b.after.frontMm - b.before.frontMm) > Math.abs(a.after.frontMm - a.before.frontMm) ? b : a,
  );
  const by = `${both(Math.abs(most.thickerMm), unit)} ${most.thickerMm > 0 ? 'thicker' : 'thinner'}`;
  const alone = `At its old stop ${nameOf(comparison, most.pad)}, ${by}, would have opened ${arrow(most.before.frontMm, most.after.frontMm, unit)}`;
  const moved = notes.reduce<(typeof notes)[number] | null>(
    (a, b) => (Math.abs(b.changeCents ?? 0) > Math.abs(a?.changeCents ?? 0) ? b : a),
    null,
  );
  const cents = moved?.changeCents ?? 0;
  if (moved === null || Math.abs(cents) < 0.05) return `${alone}, and moved no note.`;
  return `${alone}; the pads alone move ${noteLabel(moved.fingering)} most, ${Math.abs(cents).toFixed(1)} cents ${cents > 0 ? 'sharper' : 'flatter'}.`;
}

/** What was played, and how many takes of it count. */
export function playedSentence({ visit }: BenchContents): string {
  const [found, set] = (['as found', 'as set'] as const).map((setup) =>
    notesPlayed(takesIn(visit.document, setup)).filter(({ count }) => count > 0),
  );
  if (found.length === 0 && set.length === 0) return 'No note was played and measured.';
  const words = [
    ...(found.length === 0 ? [] : [`${many(found.length, 'note')} as found`]),
    ...(set.length === 0 ? [] : [`${many(set.length, 'note')} as set`]),
  ];
  return `Played and measured: ${inARow(words)}.`;
}

/** Whether what was done can be undone. */
export function reversibleSentence(facts: PlayerSheetFacts, contents: BenchContents): string {
  const heights =
    movedKeys(facts.comparison).length > 0 ? 'Heights set with cork and felt can be set back. ' : '';
  const pads = newPads(contents).length > 0 ? 'The old pads do not go back in. ' : '';
  return `${heights}${pads}Filing, drilling or bending cannot be taken back; none is recorded here.`;
}
