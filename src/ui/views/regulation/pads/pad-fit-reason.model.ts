import type { LengthUnit } from '../../../../documents/length-format.ts';
import type { PadFitReport } from '../../../../documents/pad-fit-report.ts';
import type { StockDocument } from '../../../../documents/stock-document.ts';
import type { Reason } from '../../../state/reasons.ts';
import { fineBoth, fineRange } from './fine-lengths.ts';

/** What a cup’s pad was chosen by. */
export interface FitFacts {
  readonly fit: PadFitReport;
  readonly stock: StockDocument;
  readonly name: string;
  /** how deep the rim sinks into the pad, where it was read for this key; else the stock’s */
  readonly seatMm: number;
}

/** Why a cup takes the pad it takes. @param figure as the row says it */
export function makePadReason(
  { fit, stock, name, seatMm }: FitFacts,
  figure: string,
  unit: LengthUnit,
): Reason {
  const { choice, floorMm, floorFrom, leftOverMm, fits, wholeBatch } = fit;
  const input = (label: string, mm: number, from = '') => ({ label, value: fineBoth(mm, unit), from });
  return {
    kind: 'pad-choice',
    figure,
    of: `${name} key`,
    inputs: [
      input(
        'cup floor to rim',
        floorMm,
        floorFrom === 'derived' ? 'reckoned from the pad, bed and seat it has' : '',
      ),
      input('pad', choice.thicknessMm),
      input('bed', choice.bedMm),
      input('less the seat’s depth', seatMm),
      ...(fits ? [] : [input(leftOverMm > 0 ? 'too much by' : 'too little by', Math.abs(leftOverMm))]),
      {
        label: 'beds allowed',
        value: fineRange(stock.leastBedMm, stock.mostBedMm, unit),
        from: 'as typed for your stock',
      },
    ],
    budget: null,
    remarks: !fits
      ? ['No pad of the stock fits; this one comes nearest.']
      : wholeBatch
        ? ['Its bed stays in range for every pad of a batch.']
        : ['Its bed is near the end of its range: not every pad of a batch suits.'],
  };
}
