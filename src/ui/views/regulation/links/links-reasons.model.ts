import { formatBoth } from '../../../../documents/length-format.ts';
import type { BudgetReport } from '../../../../documents/uncertainty-report.ts';
import type { LinkedPadReport, LinkReport, LinksReport } from '../../../../documents/links-report.ts';
import type { Reason, ReasonInput, ReasonKind } from '../../../state/reasons.ts';
import { gapWords } from '../gap-words.ts';
import { knownLength, NO_LOST_MOTION, standsBudget, tightestOf, type LinksManner } from './links-words.ts';

/** The reasons of a driven pad’s figures; null where there is no figure. */
export interface PadReasons {
  readonly allowed: Reason | null;
  readonly stands: Reason;
}

/** The reasons of a link’s figures; null where there is no figure. */
export interface LinkReasons {
  readonly allows: Reason | null;
  readonly lostAtFront: Reason | null;
  readonly lostAtTouch: Reason | null;
  readonly left: Reason | null;
}

/** Why a driven pad stands as it does. @param figures as its row says them */
export function makePadReasons(
  pad: LinkedPadReport,
  report: LinksReport,
  figures: { readonly allowed: string; readonly stands: string },
  { unit, nameOf }: LinksManner,
): PadReasons {
  const onto = report.links.filter(
    ({ driven, allowsFrontMm }) => driven === pad.pad && allowsFrontMm !== null,
  );
  const arms = onto.map((link) => ({
    label: `${nameOf(link.driver)} key’s arm allows`,
    value: knownLength(link.allowsFrontMm!, link.allowsBudget, unit),
    from: ratioWords(link, unit),
  }));
  const own = { label: 'its own stop', value: formatBoth(pad.ownFrontMm, unit), from: '' };
  const rules = pad.ruledBy === null ? 'Its own stop rules.' : `The ${nameOf(pad.ruledBy)} key’s arm rules.`;
  const of = `${nameOf(pad.pad)}, at its front`;
  const reason = (kind: ReasonKind, figure: string, budget: BudgetReport | null): Reason => ({
    kind,
    figure,
    of,
    inputs: [own, ...arms],
    budget: inMm(budget),
    remarks: [rules],
  });
  const tightest = tightestOf(onto);
  return {
    allowed: tightest === null ? null : reason('link-limit', figures.allowed, tightest.allowsBudget),
    stands: reason(arms.length === 0 ? 'opening' : 'link-limit', figures.stands, standsBudget(pad, report)),
  };
}

/** Why a link allows, loses and leaves what it does. @param figures as its row says them */
export function makeLinkReasons(
  link: LinkReport,
  { pads, together }: LinksReport,
  figures: Readonly<Record<keyof LinkReasons, string>>,
  { unit, nameOf }: LinksManner,
): LinkReasons {
  const of = `${nameOf(link.driver)} onto ${nameOf(link.driven)}`;
  const stands = pads.find(({ pad }) => pad === link.driven);
  const reason = (
    kind: ReasonKind,
    figure: string,
    inputs: readonly ReasonInput[],
    budget: BudgetReport | null,
  ): Reason => ({ kind, figure, of, inputs, budget: inMm(budget), remarks: [] });
  const ratio = ratioInputs(link, unit, nameOf);
  const moved = [
    ...ratio,
    ...lengths(unit, [
      ['the arm allows', link.allowsFrontMm],
      [`${nameOf(link.driven)} stands at its front`, stands?.standsFrontMm ?? null],
    ]),
  ];
  const ofLost = (budget: BudgetReport | null): BudgetReport | null =>
    figures.lostAtFront === NO_LOST_MOTION ? null : budget;
  const pressed = together.find(({ driver }) => driver === link.driver);
  const left = [
    { pad: link.driven, mm: pressed?.driven.find(({ pad }) => pad === link.driven)?.leftMm ?? 0 },
    { pad: link.driver, mm: pressed?.driverLeftMm ?? 0 },
  ];
  const gapInput = ({ pad, mm }: { readonly pad: string; readonly mm: number }): ReasonInput => ({
    label: `left under ${nameOf(pad)}`,
    value: gapWords(mm, unit),
    from: '',
  });
  return {
    allows:
      link.allowsFrontMm === null ? null : reason('link-limit', figures.allows, ratio, link.allowsBudget),
    lostAtFront:
      link.lostAtFrontMm === null
        ? null
        : reason('lost-motion', figures.lostAtFront, moved, ofLost(link.lostAtFrontBudget)),
    lostAtTouch:
      link.lostAtTouchMm === null
        ? null
        : reason(
            'lost-motion',
            figures.lostAtTouch,
            [...moved, ...lengths(unit, [['lost at the front', link.lostAtFrontMm]])],
            ofLost(link.lostAtTouchBudget),
          ),
    left: left.every(({ mm }) => mm === 0)
      ? null
      : reason('shut-together', figures.left, left.map(gapInput), null),
  };
}

const inMm = (parts: BudgetReport | null): Reason['budget'] => (parts === null ? null : { parts, in: 'mm' });

function ratioWords({ travelRatio, driverFrontMm }: LinkReport, unit: LinksManner['unit']): string {
  return travelRatio === null
    ? ''
    : `${travelRatio.toFixed(2)} times ${formatBoth(driverFrontMm, unit)} at its own front`;
}

function ratioInputs(
  { travelRatio, ratioFrom, driver, driverFrontMm }: LinkReport,
  unit: LinksManner['unit'],
  nameOf: LinksManner['nameOf'],
): ReasonInput[] {
  const ratio =
    travelRatio === null
      ? []
      : [
          {
            label: 'travel ratio',
            value: travelRatio.toFixed(2),
            from: ratioFrom === 'arms' ? 'from the lengths of the arms' : 'from readings of both fronts',
          },
        ];
  return [...ratio, ...lengths(unit, [[`${nameOf(driver)} stands at its front`, driverFrontMm]])];
}

function lengths(
  unit: LinksManner['unit'],
  list: readonly (readonly [string, number | null])[],
): ReasonInput[] {
  return list.flatMap(([label, mm]) =>
    mm === null ? [] : [{ label, value: formatBoth(mm, unit), from: '' }],
  );
}
