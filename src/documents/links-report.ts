import { askedBudgets, askOpening, linkBudgets, studyLinks, type Budget } from '../acoustics/index.ts';
import { PAPER_MM } from './leak-report.ts';
import { linkedHorn } from './lost-motion.ts';
import type { RegulationFacts } from './regulation-facts.ts';
import type { LoadedHorn } from './to-acoustics.ts';
import { reportBudget, type BudgetReport } from './uncertainty-report.ts';

/** One link as it stands, bench units. */
export interface LinkReport {
  readonly driver: string;
  readonly driven: string;
  readonly effect: 'closes' | 'holds shut';
  /** driven front per driver front; null where not known */
  readonly travelRatio: number | null;
  readonly ratioFrom: 'reading' | 'arms' | null;
  /** how the driver stands, at its front */
  readonly driverFrontMm: number;
  /** what it lets the driven pad open, at its front */
  readonly allowsFrontMm: number | null;
  readonly allowsBudget: BudgetReport | null;
  readonly rules: boolean;
  /** motion of the driver before the driven pad stirs */
  readonly lostAtFrontMm: number | null;
  readonly lostAtFrontBudget: BudgetReport | null;
  readonly lostAtTouchMm: number | null;
  readonly lostAtTouchBudget: BudgetReport | null;
}

/** One driven pad, bench units. */
export interface LinkedPadReport {
  readonly pad: string;
  readonly ownFrontMm: number;
  readonly standsFrontMm: number;
  readonly ruledBy: string | null;
  /** of what it stands below its own stop; null where no arm rules */
  readonly belowBudget: BudgetReport | null;
}

/** What is left when one driver is pressed home, bench units. */
export interface ShutTogetherReport {
  readonly driver: string;
  readonly driverLeftMm: number;
  readonly driverLeftPapers: number;
  readonly driven: readonly { readonly pad: string; readonly leftMm: number; readonly leftPapers: number }[];
}

/** All links of a horn as set up, bench units. */
export interface LinksReport {
  readonly horn: string;
  readonly setup: string;
  readonly pads: readonly LinkedPadReport[];
  readonly links: readonly LinkReport[];
  readonly together: readonly ShutTogetherReport[];
}

const MM = 1e-3;
const mm = (metres: number): number => metres / MM;
const mmOrNull = (metres: number | null): number | null => (metres === null ? null : mm(metres));
const papers = (metres: number): number => mm(metres) / PAPER_MM;

/** The links of a loaded horn, in bench units. */
export function reportLinks(loaded: LoadedHorn, facts: RegulationFacts): LinksReport {
  const { pads, links, together } = studyLinks(facts.horn, loaded.setup, facts);
  const sure = linkBudgets(linkedHorn(loaded, facts));
  const budget = (from: Budget | undefined, perMetre = 1): BudgetReport | null =>
    from === undefined ? null : reportBudget(facts.horn, from, perMetre / MM);
  const below = (pad: string): BudgetReport | null => {
    const ruling = links.find(({ link, rules }) => rules && link.driven === pad);
    return ruling === undefined ? null : budget(sure(ruling.link)?.below);
  };
  const isFromArms = (driver: string, driven: string): boolean =>
    facts.fromArms.some((l) => l.driver === driver && l.driven === driven);
  return {
    horn: loaded.horn.name,
    setup: loaded.documents.setup.name,
    pads: pads.map((p) => ({
      pad: p.pad,
      ownFrontMm: mm(p.ownFront),
      standsFrontMm: mm(p.standsFront),
      ruledBy: p.ruledBy,
      belowBudget: below(p.pad),
    })),
    links: links.map(({ link, driverFront, allows, rules, lostAtFront, lostAtTouch }) => {
      const budgets = sure(link);
      const touch = facts.touchPerFront.get(link.driver);
      return {
        driver: link.driver,
        driven: link.driven,
        effect: link.effect,
        travelRatio: link.ratio ?? null,
        ratioFrom:
          link.ratio === undefined ? null : isFromArms(link.driver, link.driven) ? 'arms' : 'reading',
        driverFrontMm: mm(driverFront),
        allowsFrontMm: mmOrNull(allows),
        allowsBudget: budget(budgets?.allows),
        rules,
        lostAtFrontMm: mmOrNull(lostAtFront),
        lostAtFrontBudget: budget(budgets?.lost),
        lostAtTouchMm: mmOrNull(lostAtTouch),
        lostAtTouchBudget: touch === undefined ? null : budget(budgets?.lost, touch),
      };
    }),
    together: together.map(({ driver, driverLeft, driven }) => ({
      driver,
      driverLeftMm: mm(driverLeft),
      driverLeftPapers: papers(driverLeft),
      driven: driven.map(({ pad, left }) => ({ pad, leftMm: mm(left), leftPapers: papers(left) })),
    })),
  };
}

/** What an asked opening needs, bench units. What is asked is meant and has no ±. */
export interface AskedOpeningReport {
  readonly pad: string;
  readonly askedFrontMm: number;
  readonly stops: readonly {
    readonly pad: string;
    readonly neededFrontMm: number;
    readonly neededBudget: BudgetReport;
    readonly ownFrontMm: number;
    readonly raiseMm: number;
    /** of what its stop lacks, or has to spare */
    readonly raiseBudget: BudgetReport;
    /** null for a pad that rises parallel to its rim */
    readonly largestFrontMm: number | null;
  }[];
  readonly ratios: readonly {
    readonly driver: string;
    readonly driven: string;
    readonly presentRatio: number;
    readonly neededRatio: number;
    readonly neededBudget: BudgetReport;
  }[];
}

/**
 * What an asked opening needs, in bench units.
 *
 * @param frontMm mm at the pad's front, > 0 @throws RangeError for another
 */
export function reportAskedOpening(
  loaded: LoadedHorn,
  facts: RegulationFacts,
  pad: string,
  frontMm: number,
): AskedOpeningReport {
  const { horn, screws } = facts;
  const asked = askOpening(horn, loaded.setup, pad, frontMm * MM, screws);
  const sure = askedBudgets(linkedHorn(loaded, facts), asked);
  const inMm = (budget: Budget): BudgetReport => reportBudget(horn, budget, 1 / MM);
  return {
    pad,
    askedFrontMm: frontMm,
    stops: asked.stops.map((s, i) => ({
      pad: s.pad,
      neededFrontMm: mm(s.needed),
      neededBudget: inMm(sure.stops[i].needed),
      ownFrontMm: mm(s.ownFront),
      raiseMm: mm(s.raise),
      raiseBudget: inMm(sure.stops[i].raise),
      largestFrontMm: s.largest === Infinity ? null : mm(s.largest),
    })),
    ratios: asked.ratios.map(({ driver, driven, present, needed }, i) => ({
      driver,
      driven,
      presentRatio: present,
      neededRatio: needed,
      neededBudget: reportBudget(horn, sure.ratios[i], 1),
    })),
  };
}
