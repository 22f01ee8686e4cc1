import { saysNothing } from '../../../../documents/complete-setup.ts';
import type { SetupDocument } from '../../../../documents/setup-document.ts';
import { reportLinks, type LinksReport } from '../../../../documents/links-report.ts';
import { regulationFacts, type RegulationFacts } from '../../../../documents/regulation-facts.ts';
import {
  loadHorn,
  loadSetupOver,
  type HornAndSetup,
  type LoadedHorn,
} from '../../../../documents/to-acoustics.ts';
import { memoLast } from '../../../state/memo-last.ts';

/** A setup of the horn in hand, loaded, and what its links do. */
export interface LoadedLinks {
  readonly loaded: LoadedHorn;
  readonly facts: RegulationFacts;
  readonly report: LinksReport;
}

/** The horn as found and with what is told over that; a sentence where the documents do not fit together. */
export type LinksInHand =
  | { readonly ok: true; readonly found: LoadedLinks; readonly then: LoadedLinks }
  | { readonly ok: false; readonly message: string };

/** Links are levers: what they do is there at once, without the physics of sound. */
export const linksInHand = memoLast((documents: HornAndSetup, over: SetupDocument): LinksInHand => {
  const found = loadHorn(documents);
  if (!found.ok) return { ok: false, message: found.issues.map((i) => i.message).join(' ') };
  const vent = linkedVent(found.value);
  if (vent !== null)
    return { ok: false, message: `The links name ${vent}, which has no hinge: a link joins pads on hinges.` };
  const foundLinks = linksOf(found.value);
  if (saysNothing(over)) return { ok: true, found: foundLinks, then: foundLinks };
  const then = loadSetupOver(found.value, over);
  if (!then.ok) return { ok: false, message: then.issues.map((i) => i.message).join(' ') };
  return { ok: true, found: foundLinks, then: linksOf(then.value) };
});

function linksOf(loaded: LoadedHorn): LoadedLinks {
  const facts = regulationFacts(loaded);
  return { loaded, facts, report: reportLinks(loaded, facts) };
}

/** A hole without a hinge that a link names; null where there is none. */
function linkedVent({ horn }: LoadedHorn): string | null {
  const ends = new Set(horn.keywork.links.flatMap(({ driver, driven }) => [driver, driven]));
  return horn.holes.find((hole) => hole.hinge === null && ends.has(hole.id))?.name ?? null;
}
