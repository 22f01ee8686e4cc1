import { changePads, type AirColumn } from '../../acoustics/index.ts';
import { reportPadChange, type PadChangeReport } from '../../documents/pad-change-report.ts';
import { regulationFacts } from '../../documents/regulation-facts.ts';
import type { LoadedHorn } from '../../documents/to-acoustics.ts';
import type { ThickerMm } from './pads-state.ts';

/** Other pads on a horn as found, at the same stops. @throws RangeError where a hinge cannot take them */
export function answerPadChange(
  loaded: LoadedHorn,
  change: { readonly thickerMm: ThickerMm; readonly seating: PadChangeReport['seating'] },
  air: AirColumn,
  a4Hz: number,
): PadChangeReport {
  const { horn, footPerFront } = regulationFacts(loaded);
  const thicker = new Map(Object.entries(change.thickerMm).map(([pad, mm]) => [pad, mm / 1000]));
  const { seating } = change;
  const result = changePads(horn, loaded.setup, thicker, air, { a4: a4Hz, seating, footPerFront });
  return reportPadChange(horn, result, seating);
}
