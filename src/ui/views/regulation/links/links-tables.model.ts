import type { LinksReport } from '../../../../documents/links-report.ts';
import { formatBoth } from '../../../../documents/length-format.ts';
import { lengthWithPlusMinus } from '../../../../documents/length-plus-minus.ts';
import type { BudgetReport } from '../../../../documents/uncertainty-report.ts';
import { noteLabel } from '../../../parts/note-names.ts';
import type { FollowedReport } from '../../../state/followed-report.ts';
import { gapWords, papersOf } from '../gap-words.ts';
import { makeLinkReasons, makePadReasons, type LinkReasons, type PadReasons } from './links-reasons.model.ts';
import {
  HELD_MM,
  knownLength,
  NO_LOST_MOTION,
  noteChange,
  standsBudget,
  tightestOf,
  TOGETHER_PAPERS,
  type LinksManner,
} from './links-words.ts';

/** One driven pad. */
export interface PadRow {
  readonly name: string;
  readonly own: string;
  readonly allowed: string;
  readonly stands: string;
  readonly rules: string;
  /** held down by a link */
  readonly held: boolean;
  /** as found, where it stands otherwise as proposed; empty where it does not */
  readonly was: string;
  readonly share: string;
  readonly reasons: PadReasons;
}

/** One link. */
export interface LinkRow {
  readonly driver: string;
  readonly driven: string;
  readonly value: string;
  readonly ratio: string;
  readonly allows: string;
  readonly lostAtFront: string;
  readonly lostAtTouch: string;
  /** left of the driven pad when the driver is home, and whether that is more than a paper */
  readonly left: string;
  readonly apart: boolean;
  readonly reasons: LinkReasons;
}

/** One note that suffers. */
export interface NoteRow {
  readonly note: string;
  readonly change: string;
}

/** The tables under the picture. */
export interface LinkTables {
  readonly pads: readonly PadRow[];
  readonly links: readonly LinkRow[];
  readonly notes: readonly NoteRow[];
}

const CANNOT_SAY = 'cannot say';
/** Less lost motion than this is none. */
const NONE_MM = 0.005;

/** @param followed null where nothing is proposed or the answer is on its way */
export function makeLinkTables(
  found: LinksReport,
  report: LinksReport,
  followed: FollowedReport | null,
  manner: LinksManner,
): LinkTables {
  return {
    pads: report.pads.map((pad) => padRow(pad, found, report, followed, manner)),
    links: report.links.map((link) => linkRow(link, report, manner)),
    notes: (followed?.suffering ?? []).map((note) => ({
      note: noteLabel(note.id),
      change: noteChange(note),
    })),
  };
}

function padRow(
  pad: LinksReport['pads'][number],
  found: LinksReport,
  report: LinksReport,
  followed: FollowedReport | null,
  manner: LinksManner,
): PadRow {
  const { links } = report;
  const { unit, nameOf } = manner;
  const onto = links.filter((l) => l.driven === pad.pad);
  const tightest = tightestOf(onto);
  const before = found.pads.find((p) => p.pad === pad.pad)!;
  const moved = followed?.pads.find((p) => p.pad === pad.pad);
  const figures = {
    allowed:
      tightest === null ? CANNOT_SAY : knownLength(tightest.allowsFrontMm!, tightest.allowsBudget, unit),
    stands: knownLength(pad.standsFrontMm, standsBudget(pad, report), unit),
  };
  return {
    name: nameOf(pad.pad),
    own: formatBoth(pad.ownFrontMm, unit),
    ...figures,
    reasons: makePadReasons(pad, report, figures, manner),
    rules: pad.ruledBy === null ? 'its own stop' : `${nameOf(pad.ruledBy)} key’s arm`,
    held: pad.ruledBy !== null && pad.ownFrontMm - pad.standsFrontMm >= HELD_MM,
    was:
      Math.abs(before.standsFrontMm - pad.standsFrontMm) < HELD_MM
        ? ''
        : formatBoth(before.standsFrontMm, unit),
    share:
      moved === undefined
        ? ''
        : `${Math.round(100 * moved.before.ventShare)} → ${Math.round(100 * moved.after.ventShare)} %`,
  };
}

function linkRow(link: LinksReport['links'][number], report: LinksReport, manner: LinksManner): LinkRow {
  const { together } = report;
  const { unit, nameOf } = manner;
  const { driver, driven, travelRatio, allowsFrontMm, lostAtFrontMm, lostAtTouchMm } = link;
  const { allowsBudget, lostAtFrontBudget, lostAtTouchBudget } = link;
  const pressed = together.find((t) => t.driver === driver)!;
  const leftMm = pressed.driven.find((d) => d.pad === driven)?.leftMm ?? 0;
  const offMm = pressed.driverLeftMm;
  // Six columns leave room for the unit in hand alone.
  const inShort = (mm: number, budget: BudgetReport | null): string =>
    budget === null ? formatBoth(mm, unit) : lengthWithPlusMinus(mm, budget.plusMinus, unit);
  const lost = (mm: number | null, budget: BudgetReport | null): string =>
    mm === null ? CANNOT_SAY : mm < NONE_MM ? NO_LOST_MOTION : inShort(mm, budget);
  const figures = {
    allows: allowsFrontMm === null ? CANNOT_SAY : inShort(allowsFrontMm, allowsBudget),
    lostAtFront: lost(lostAtFrontMm, lostAtFrontBudget),
    lostAtTouch:
      lostAtFrontMm !== null && lostAtTouchMm === null
        ? 'not measured'
        : lost(lostAtTouchMm, lostAtTouchBudget),
    left:
      leftMm > 0 || offMm === 0
        ? gapWords(leftMm, unit)
        : `${nameOf(driver)} kept off ${gapWords(offMm, unit)}`,
  };
  return {
    driver: nameOf(driver),
    driven: `${nameOf(driven)}${link.effect === 'holds shut' ? ' (holds shut)' : ''}`,
    value: `${driver} > ${driven}`,
    ratio:
      travelRatio === null
        ? 'not known'
        : `${travelRatio.toFixed(2)}${link.ratioFrom === 'arms' ? ' from arms' : ''}`,
    ...figures,
    reasons: makeLinkReasons(link, report, figures, manner),
    apart: papersOf(Math.max(leftMm, offMm)) > TOGETHER_PAPERS,
  };
}
