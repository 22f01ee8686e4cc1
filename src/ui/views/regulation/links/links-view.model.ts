import { largestOpening, linkGroups, ownPose } from '../../../../acoustics/index.ts';
import { formatBoth, type LengthUnit } from '../../../../documents/length-format.ts';
import { memoLast } from '../../../state/memo-last.ts';
import type { HornDocument } from '../../../../documents/horn-document.ts';
import { documentsInHand, hornInHand, proposedInHand, type BenchState } from '../../../state/bench-state.ts';
import { padsSet, toldOver, type Told, type ToldOver } from '../../../state/stands-now.ts';
import { isWaiting, reportFor } from '../../../state/asked-answer.ts';
import type { LinkEnds } from '../../../state/links-state.ts';
import { makeLinkFields, type LinkFields } from './link-fields.model.ts';
import { makeAskedView, type AskedView } from './asked-opening.model.ts';
import { linksInHand, type LoadedLinks } from './loaded-links.ts';
import {
  heldPads,
  leftOpen,
  makeLinksAnswer,
  type LinksAnswer,
  type LinksManner,
  type OpenScrew,
} from './links-words.ts';
import { makeLinkTables, type LinkTables } from './links-tables.model.ts';
import { makeStackView, type StackView } from './stack.model.ts';

/** One slider: a key that drives others, and that no other drives. */
export interface DriverSlider {
  readonly id: string;
  readonly name: string;
  readonly frontMm: number;
  readonly lowMm: number;
  readonly highMm: number;
  readonly foundMm: number;
  readonly valueText: string;
  readonly told: Told;
}

/** One link to choose from. */
export interface LinkChoice {
  readonly ends: LinkEnds;
  readonly value: string;
  readonly label: string;
}

/** The part that needs documents that fit together. */
export interface LinkedHornView {
  readonly unit: LengthUnit;
  readonly answer: LinksAnswer;
  readonly waiting: boolean;
  /** `Notes that suffer: 19 of 44` */
  readonly notesTitle: string;
  readonly sliders: readonly DriverSlider[];
  readonly told: Told;
  /** whether there is a proposal to withdraw, and how the horn is told without it */
  readonly proposes: boolean;
  readonly withdrawn: Told;
  readonly choices: readonly LinkChoice[];
  readonly chosen: string;
  readonly linkTitle: string;
  readonly stack: StackView;
  readonly fields: LinkFields;
  readonly asked: AskedView;
  readonly tables: LinkTables;
}

/** Everything the page of links shows. */
export interface LinksView {
  readonly hornName: string;
  /** why there is nothing to show, or what the physics of sound refused */
  readonly problem: string | null;
  /** null where the horn has no links, or its documents do not fit together */
  readonly horn: LinkedHornView | null;
}

const MM = 1e-3;

export function makeLinksView(state: BenchState): LinksView {
  const { horn } = documentsInHand(state);
  const now = toldOver(hornInHand(state).contents);
  const known = linksInHand(documentsInHand(state), now.over);
  if (!known.ok) return { hornName: horn.name, problem: known.message, horn: null };
  if (horn.links.length === 0) {
    const problem = 'This horn’s document names no links: add them before asking what they allow.';
    return { hornName: horn.name, problem, horn: null };
  }
  return {
    hornName: horn.name,
    problem: state.links.followed.problem,
    horn: makeLinkedHorn(state, now, known.found, known.then),
  };
}

function makeLinkedHorn(
  state: BenchState,
  now: ToldOver,
  found: LoadedLinks,
  then: LoadedLinks,
): LinkedHornView {
  const { unit, links, hornId } = state;
  const nameOf = namesOf(documentsInHand(state).horn);
  const manner: LinksManner = { unit, nameOf };
  const { told } = now;
  const isChanged = told !== 'as found';
  const followed = reportFor(links.followed, hornId);
  const choices = linkChoices(found, nameOf);
  const ends = chosenLink(links.link, choices, then);
  const { travelRatio, ratioFrom } = found.report.links.find(
    (l) => l.driver === ends.driver && l.driven === ends.driven,
  )!;
  return {
    unit,
    answer: makeLinksAnswer(then.report, screwsOf(then), told, followed, manner),
    waiting: isChanged && isWaiting(links.followed, hornId),
    notesTitle:
      isChanged && followed !== null
        ? `Notes that suffer: ${followed.suffering.length} of ${followed.notes}`
        : 'Notes that suffer',
    sliders: makeSliders(state, now, found, nameOf),
    told,
    proposes: Object.keys(proposedInHand(state)).length > 0,
    withdrawn: padsSet(hornInHand(state).contents).size > 0 ? 'as set' : 'as found',
    choices,
    chosen: valueOf(ends),
    linkTitle: `${nameOf(ends.driver)} onto ${nameOf(ends.driven)}`,
    stack: makeStackView(then, ends, links.pressed, unit, nameOf),
    fields: makeLinkFields(state, ends, { ratio: travelRatio, from: ratioFrom }, nameOf),
    asked: makeAskedView(state, then, manner),
    tables: makeLinkTables(found.report, then.report, isChanged ? followed : null, manner),
  };
}

/** What the links' screws leave, mm. */
function screwsOf({ facts }: LoadedLinks): OpenScrew[] {
  return facts.screws.map(({ driver, driven, left }) => ({ driver, driven, leftMm: left / MM }));
}

/** Names of pads by id: the same for the same horn. */
export const namesOf = memoLast((horn: HornDocument): ((pad: string) => string) => {
  const names = new Map(horn.holes.map(({ id, name }) => [id, name]));
  return (pad) => names.get(pad) ?? pad;
});

const valueOf = ({ driver, driven }: LinkEnds): string => `${driver} > ${driven}`;

/** In the order of regulation, the greatest group of linked pads first. */
function linkChoices({ facts }: LoadedLinks, nameOf: (pad: string) => string): LinkChoice[] {
  const pads = facts.horn.holes.map(({ id, number }) => ({ id, number }));
  return linkGroups(facts.horn.keywork, pads).flatMap(({ links }) =>
    links.map(({ driver, driven }) => ({
      ends: { driver, driven },
      value: valueOf({ driver, driven }),
      label: `${nameOf(driver)} → ${nameOf(driven)}`,
    })),
  );
}

/** The one picked, or one that holds a pad down or leaves it open, or the first. */
function chosenLink(
  picked: LinkEnds | null,
  choices: readonly LinkChoice[],
  { report }: LoadedLinks,
): LinkEnds {
  const [held] = heldPads(report);
  const [open] = leftOpen(report);
  const wanted = [
    picked,
    held === undefined ? null : { driver: held.ruledBy!, driven: held.pad },
    open === undefined ? null : { driver: open.driver, driven: open.pad },
  ];
  for (const ends of wanted) {
    const choice = ends && choices.find((c) => c.value === valueOf(ends));
    if (choice) return choice.ends;
  }
  return choices[0].ends;
}

/** The link a choice's value names. */
export function endsOf(choices: readonly LinkChoice[], value: string): LinkEnds | null {
  return choices.find((c) => c.value === value)?.ends ?? null;
}

function makeSliders(
  state: BenchState,
  { frontsMm, proposed }: ToldOver,
  found: LoadedLinks,
  nameOf: (pad: string) => string,
): DriverSlider[] {
  const { horn } = found.facts;
  const { links } = horn.keywork;
  const pads = horn.holes.map(({ id, number }) => ({ id, number }));
  const drivers = linkGroups(horn.keywork, pads).flatMap((group) =>
    group.pads.filter((pad) => links.some((l) => l.driver === pad) && !links.some((l) => l.driven === pad)),
  );
  return drivers.map((id): DriverSlider => {
    const hole = horn.holes.find((h) => h.id === id)!;
    const { padRadius } = found.loaded.setup.keys.get(id)!;
    const foundMm = ownPose(horn, found.loaded.setup, id).front / MM;
    const frontMm = frontsMm[id] ?? foundMm;
    const reachMm = largestOpening(hole.hinge!, padRadius, 'front') / MM;
    return {
      id,
      name: nameOf(id),
      frontMm,
      lowMm: 0.3,
      highMm: Math.floor(10 * Math.min(reachMm, Math.max(1.6 * foundMm, foundMm + 2))) / 10,
      foundMm,
      valueText: `${formatBoth(frontMm, state.unit)} at the front`,
      told: proposed.has(id) ? 'as proposed' : id in frontsMm ? 'as set' : 'as found',
    };
  });
}
