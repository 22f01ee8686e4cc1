import { readJsonText } from '../../documents/json-text.ts';
import { readStock, type StockDocument } from '../../documents/stock-document.ts';
import type { BenchState } from '../state/bench-state.ts';
import type { Store } from '../state/bench-store.ts';
import { withStock } from '../state/pads-state.ts';

const STOCK = 'ventwright.stock';

/** Takes up the shop’s stock as this browser keeps it; one that cannot be read is told and left where it is. */
export function recallStock(store: Store<BenchState>): void {
  const text = remembered();
  if (text === null) return;
  const json = readJsonText(text);
  const read = json.ok ? readStock(json.value) : json;
  store.update((state) =>
    read.ok
      ? { ...state, pads: withStock(state.pads, read.value) }
      : {
          ...state,
          alert: `The stock of pads kept in this browser cannot be read, and the usual one is in use: ${read.issues[0].message}.`,
        },
  );
}

function remembered(): string | null {
  try {
    return localStorage.getItem(STOCK);
  } catch {
    // A browser that keeps nothing starts with the usual stock.
    return null;
  }
}

/** @returns why the stock will be forgotten with this page, or null */
export function rememberStock(stock: StockDocument): string | null {
  try {
    localStorage.setItem(STOCK, JSON.stringify(stock));
    return null;
  } catch (error) {
    return `The stock is in use but this browser does not keep it: ${String(error)}`;
  }
}
