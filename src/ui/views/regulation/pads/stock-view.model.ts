import type { BenchState } from '../../../state/bench-state.ts';
import { STOCK_PLANS } from '../../../state/cup-fields.ts';
import type { StockTextId } from '../../../state/pads-state.ts';
import { textInField } from '../../../state/text-in-field.ts';
import { fineBoth, fineLength } from './fine-lengths.ts';

/** A length of the stock on screen. */
export interface StockFieldView {
  readonly id: StockTextId;
  readonly label: string;
  readonly hint: string;
  readonly text: string;
  readonly echo: string;
  readonly problem: string | null;
}

/** The stock on screen. */
export interface StockView {
  readonly classes: readonly { readonly mm: number; readonly label: string }[];
  readonly add: StockFieldView;
  readonly fields: readonly StockFieldView[];
  /** in one line, for paper and for the closed panel */
  readonly summary: string;
}

export function makeStockView({ pads, unit }: BenchState): StockView {
  const { stock, stockTyped } = pads;
  const sentence = (problem: string | null | undefined, inUse: string): string | null =>
    problem === null || problem === undefined
      ? null
      : `${problem.charAt(0).toUpperCase()}${problem.slice(1)}.${inUse === '' ? '' : ` Still in use: ${inUse}.`}`;
  const add = stockTyped.thickness;
  return {
    classes: stock.thicknessesMm.map((mm) => ({ mm, label: fineBoth(mm, unit) })),
    add: {
      id: 'thickness',
      label: 'Add a thickness',
      hint: '',
      text: add?.text ?? '',
      echo: '4.6 mm, 0.180 in or 180 thou',
      problem: sentence(add?.problem, ''),
    },
    fields: STOCK_PLANS.map(({ id, label, hint }): StockFieldView => {
      const mm = stock[id];
      return {
        ...{ id, label, hint },
        text: textInField(stockTyped[id], mm, fineLength(mm, unit)),
        echo: fineBoth(mm, unit),
        problem: sentence(stockTyped[id]?.problem, fineBoth(mm, unit)),
      };
    }),
    summary: `${stock.thicknessesMm.map((mm) => fineLength(mm, unit)).join(', ')}; a batch within ±${fineLength(stock.toleranceMm, unit)}; bed ${fineLength(stock.leastBedMm, unit)} to ${fineLength(stock.mostBedMm, unit)}`,
  };
}
