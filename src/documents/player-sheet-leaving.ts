import type { AirColumn } from '../acoustics/index.ts';
import type { SetupRole } from './bench-contents.ts';
import { compareLoaded } from './compare-loaded.ts';
import type { ComparedKeyReport, ComparisonReport } from './comparison-report.ts';
import type { PlayerSheetFacts, PlayerSheetQuestion } from './player-sheet-facts.ts';
import type { SetupDocument } from './setup-document.ts';
import { knownSetupLength } from './sheet-edits.ts';
import type { LoadedHorn } from './to-acoustics.ts';

/** A key that stands otherwise by less is read the same, mm. */
const MOVED_MM = 0.05;

/** Keys that stand otherwise than found, the one whose venting changed most first. */
export function movedKeys({ keys }: ComparisonReport): ComparedKeyReport[] {
  return keys.filter(
    ({ differences: [d] }) => d !== null && d !== undefined && Math.abs(d.frontMm) >= MOVED_MM,
  );
}

/** How it leaves against how it was found; where nothing is set and something proposed, how that would leave it. */
export function compareLeaving(
  { setups, a4Hz }: PlayerSheetQuestion,
  { asFound, proposed, asSet }: Readonly<Record<SetupRole, LoadedHorn>>,
  air: AirColumn,
): { readonly leaving: LoadedHorn } & Pick<PlayerSheetFacts, 'isProposal' | 'comparison'> {
  const against = (leaving: LoadedHorn): ComparisonReport => compareLoaded([asFound, leaving], { air, a4Hz });
  const isPlanned = padsOpened(setups.proposed).length > 0;
  // A setup without keys is the one it is read over, and moved none.
  const comparison = isPlanned && setups.asSet.keys.length === 0 ? null : against(asSet);
  return comparison === null || (isPlanned && movedKeys(comparison).length === 0)
    ? { leaving: proposed, isProposal: true, comparison: against(proposed) }
    : { leaving: asSet, isProposal: false, comparison };
}

/** Pads that a setup has an opening of its own for. */
export function padsOpened({ keys }: SetupDocument): string[] {
  return keys.flatMap(({ pad, openingMm }) => (openingMm === undefined ? [] : [pad]));
}

/** Pads whose opening is an example’s. */
export function unreadIn(setup: SetupDocument): string[] {
  return padsOpened(setup).filter((pad) => knownSetupLength(setup, pad, 'openingMm')?.origin === 'template');
}
