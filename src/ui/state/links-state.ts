import { nothingAsked, type AskedAnswer } from './asked-answer.ts';
import type { FollowedReport } from './followed-report.ts';
import type { TypedText } from './horn-on-bench.ts';

/** A link by its ends. */
export interface LinkEnds {
  readonly driver: string;
  readonly driven: string;
}

/** What can be typed about a link. */
export const LINK_FIELDS = [
  'drivenGap',
  'ratio',
  'firstDriver',
  'firstDriven',
  'secondDriver',
  'secondDriven',
  'driverArm',
  'drivenArm',
] as const;
export type LinkFieldId = (typeof LINK_FIELDS)[number];

/** The links in hand, and what is known of them. */
export interface LinksState {
  /** null: the first that is out of order, or the first */
  readonly link: LinkEnds | null;
  /** how far the driver in the drawing is pressed: 0 at rest, 1 home */
  readonly pressed: number;
  /** a least opening asked of a pad; null where none is */
  readonly asked: { readonly pad: string; readonly frontMm: number | null } | null;
  /** by {@link textKey} */
  readonly texts: Readonly<Record<string, TypedText>>;
  readonly followed: AskedAnswer<FollowedReport>;
}

export function makeLinksState(hornId: string): LinksState {
  return { link: null, pressed: 0, asked: null, texts: {}, followed: nothingAsked(hornId) };
}

/** Where a typed text is kept: horn, link and field. */
export function textKey(hornId: string, { driver, driven }: LinkEnds, field: LinkFieldId): string {
  return [hornId, driver, driven, field].join('\n');
}

/** The text typed for the asked opening of a horn. */
export function askedTextKey(hornId: string): string {
  return `${hornId}\nasked`;
}

// Each takes what is known of the links and gives the next.

export function pickLink(links: LinksState, link: LinkEnds): LinksState {
  const same = links.link?.driver === link.driver && links.link.driven === link.driven;
  return same ? links : { ...links, link, pressed: 0 };
}

/** @param pressed 0…1 */
export function press(links: LinksState, pressed: number): LinksState {
  return { ...links, pressed: Math.min(Math.max(pressed, 0), 1) };
}

export function keepLinkText(links: LinksState, key: string, text: TypedText | null): LinksState {
  const texts = { ...links.texts };
  if (text === null) delete texts[key];
  else texts[key] = text;
  return { ...links, texts };
}
