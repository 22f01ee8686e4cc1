import type { BenchContents } from '../../../documents/bench-contents.ts';
import type { LengthUnit } from '../../../documents/length-format.ts';
import type { PlayerSheetFacts } from '../../../documents/player-sheet-facts.ts';
import { makeSheetFile, type SheetFile } from '../../../documents/player-sheet-file.ts';
import { makePlayerSheet, type PlayerSheet } from '../../../documents/player-sheet.ts';
import { isWaiting, reportFor } from '../../state/asked-answer.ts';
import { hornInHand, type BenchState } from '../../state/bench-state.ts';
import { makePlayerSheetReasons, type PlayerSheetReasons } from '../../sheets/player-sheet-reasons.model.ts';
import { makeWishEntry, type WishEntry } from '../../sheets/wish-entry.model.ts';

/** The papers the sheet is laid out for. */
export const PAPERS = ['A4', 'Letter'] as const;
export type Paper = (typeof PAPERS)[number];

/** Both pages, and why the figures of the first are what they are. */
export interface PlayerSheetPages {
  readonly player: PlayerSheet;
  readonly reasons: PlayerSheetReasons;
  readonly file: SheetFile;
}

/** What the view shows. */
export interface PlayerSheetView {
  readonly busy: boolean;
  /** why there is no sheet, or that it is on its way; null where it is there */
  readonly instead: { readonly text: string; readonly isWrong: boolean } | null;
  readonly pages: PlayerSheetPages | null;
  /** said over pages, on the screen and on paper, whose figures are of before the last change; null where they are of now */
  readonly anew: string | null;
  readonly missing: readonly string[];
  /** sentences that were rewritten before their numbers changed */
  readonly outdated: readonly string[];
  readonly wish: WishEntry;
}

/** What is said over figures that are of before the last change. */
const ANEW = 'Working the page out anew: these figures are of before the last change.';

export function makePlayerSheetView(state: BenchState): PlayerSheetView {
  const { contents } = hornInHand(state);
  const { facts } = state.playerSheet;
  const known = reportFor(facts, state.hornId);
  const busy = isWaiting(facts, state.hornId) && facts.problem === null;
  const pages = known === null || facts.problem !== null ? null : makePages(contents, known, state.unit);
  return {
    busy,
    instead:
      facts.problem !== null
        ? { text: `There is no sheet: ${facts.problem}`, isWrong: true }
        : pages === null
          ? { text: 'The sheet is being worked out…', isWrong: false }
          : null,
    pages,
    anew: busy && pages !== null ? ANEW : null,
    missing: pages?.player.missing ?? [],
    outdated: pages === null ? [] : outdatedIn(pages.player),
    wish: makeWishEntry(state),
  };
}

function makePages(contents: BenchContents, facts: PlayerSheetFacts, unit: LengthUnit): PlayerSheetPages {
  const player = makePlayerSheet(contents, facts, unit);
  return {
    player,
    reasons: makePlayerSheetReasons(contents, facts, player, unit),
    file: makeSheetFile(contents, facts, unit),
  };
}

function outdatedIn({ headline, decided, parts, consent }: PlayerSheet): string[] {
  const all = [headline, ...decided.sentences, ...parts.flatMap(({ sentences }) => sentences), consent];
  return all.filter(({ isOutdated }) => isOutdated).map(({ text }) => text);
}

/** How a page’s type is fitted: its size, its lines apart as a share of it, its parts apart; from the largest. Tight, decisions run on. */
export const FITS = [
  { size: '13pt', line: '1.3', gap: '0.6em', isTight: false },
  { size: '12.5pt', line: '1.26', gap: '0.5em', isTight: false },
  { size: '12pt', line: '1.24', gap: '0.45em', isTight: false },
  { size: '11.5pt', line: '1.22', gap: '0.4em', isTight: false },
  { size: '11pt', line: '1.2', gap: '0.35em', isTight: false },
  { size: '11pt', line: '1.07', gap: '0.08em', isTight: true },
] as const;
export type Fit = (typeof FITS)[number];

/** What is said where even the smallest type does not fit, or a page goes on. */
export function fitSentence(fits: boolean): string {
  return fits
    ? 'Both pages fit.'
    : 'A page is fuller than one sheet of paper and goes on over another: shorten a sentence or leave one out.';
}
