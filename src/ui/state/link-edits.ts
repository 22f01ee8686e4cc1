import type { BenchContents } from '../../documents/bench-contents.ts';
import type { HornDocument, LinkDocument } from '../../documents/horn-document.ts';
import type { LinkSetupDocument, SetupDocument } from '../../documents/setup-document.ts';
import type { LinkEnds } from './links-state.ts';

// What is typed of a link goes into the horn (ratio, arms: built) and the setup as found (its screw: set).

/** What a link's screw leaves, mm, as the setup has it; 0 shuts both at once. */
export function withDrivenGap(contents: BenchContents, ends: LinkEnds, drivenGapMm: number): BenchContents {
  return withSetupLink(contents, ends, (link) => ({ ...link, drivenGapMm }));
}

/** A link's ratio as measured. A ratio of the setup’s own, which would rule, is dropped. */
export function withRatio(contents: BenchContents, ends: LinkEnds, travelRatio: number): BenchContents {
  const measured = withHornLink(contents, ends, (link) => ({
    ...link,
    travelRatio,
    ratioOrigin: 'measured',
  }));
  return withSetupLink(measured, ends, withoutRatio);
}

/** A link's arms; a ratio is then taken from them alone. */
export function withArms(
  contents: BenchContents,
  ends: LinkEnds,
  arms: { readonly driverArmMm: number; readonly drivenArmMm: number },
): BenchContents {
  const built = withHornLink(contents, ends, (link) => {
    const { travelRatio, ratioOrigin, ...rest } = link;
    return { ...rest, ...arms };
  });
  return withSetupLink(built, ends, withoutRatio);
}

/** A link of a horn. @throws RangeError where the horn has none such */
export function linkOf(horn: HornDocument, { driver, driven }: LinkEnds): LinkDocument {
  const link = horn.links.find((l) => l.driver === driver && l.driven === driven);
  if (link === undefined) {
    throw new RangeError(`invalid link: "${driver} to ${driven}"; expected one of the horn’s`);
  }
  return link;
}

/** A link of a setup; undefined where the setup says nothing of it. */
export function setupLinkOf(
  setup: SetupDocument,
  { driver, driven }: LinkEnds,
): LinkSetupDocument | undefined {
  return setup.links?.find((l) => l.driver === driver && l.driven === driven);
}

function withoutRatio({ travelRatio, ...rest }: LinkSetupDocument): LinkSetupDocument {
  return rest;
}

function withHornLink(
  contents: BenchContents,
  ends: LinkEnds,
  change: (link: LinkDocument) => LinkDocument,
): BenchContents {
  const { horn } = contents;
  const before = linkOf(horn.document, ends);
  const links = horn.document.links.map((l) => (l === before ? change(l) : l));
  return { ...contents, horn: { ...horn, document: { ...horn.document, links } } };
}

/** An entry that says nothing any more is taken out. */
function withSetupLink(
  contents: BenchContents,
  ends: LinkEnds,
  change: (link: LinkSetupDocument) => LinkSetupDocument,
): BenchContents {
  const { asFound } = contents;
  const links = asFound.document.links ?? [];
  const before = setupLinkOf(asFound.document, ends);
  const after = change(before ?? { ...ends });
  const isEmpty = after.travelRatio === undefined && after.drivenGapMm === undefined;
  if (isEmpty && before === undefined) return contents;
  const kept = before === undefined ? [...links, after] : links.map((l) => (l === before ? after : l));
  const told = isEmpty ? kept.filter((l) => l !== after) : kept;
  const { links: old, ...rest } = asFound.document;
  const document = told.length === 0 ? rest : { ...rest, links: told };
  return { ...contents, asFound: { ...asFound, document } };
}
