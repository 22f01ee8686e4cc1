import type { LengthUnit } from '../../documents/length-format.ts';
import type { StockDocument } from '../../documents/stock-document.ts';
import { accepted, refused, stepped } from '../state/horn-on-bench.ts';
import { hornInHand, type BenchState } from '../state/bench-state.ts';
import { withHorn } from '../state/horns-on-bench.ts';
import type { Store } from '../state/bench-store.ts';
import type { CupFieldId } from '../state/cup-fields.ts';
import type { NewPad } from '../state/new-pads.ts';
import {
  withCupText,
  withPlan,
  withStock,
  withStockText,
  type PadChangePlan,
  type PadsQuestion,
  type PadsState,
  type StockTextId,
} from '../state/pads-state.ts';
import { rememberStock } from './remembered-stock.ts';

type PadsReader = typeof import('../state/read-pads.ts');

/** Everything a person can do about pads. */
export interface PadsActs {
  ask(question: PadsQuestion): void;
  /** Fetches what reading a field needs, ahead of the first word typed. */
  expectTyping(): void;
  typeCup(pad: string, field: CupFieldId, text: string): Promise<void>;
  restoreCup(pad: string, field: CupFieldId): void;
  /** Proposes pads for these keys as one step; none withdraws every pad proposed. */
  propose(pads: readonly NewPad[]): Promise<void>;
  typeStock(field: StockTextId, text: string): Promise<void>;
  restoreStock(field: StockTextId): void;
  /** A thickness of the stock’s taken out; the last one stays. */
  dropThickness(mm: number): void;
  /** The stock there was to begin with. */
  setStock(stock: StockDocument): void;
  plan(change: Partial<PadChangePlan>): void;
  typePlan(text: string): Promise<void>;
  restorePlan(): void;
}

/** Reads texts with a reader that is fetched when it is needed; a failure to fetch it is told. */
export type Reading = <R>(fetch: () => Promise<R>, work: (reader: R) => void) => Promise<void>;

export function makePadsActs(store: Store<BenchState>, reading: Reading): PadsActs {
  const change = (next: (pads: PadsState) => PadsState): void =>
    store.update((state) => ({ ...state, pads: next(state.pads) }));
  const withReader = (work: (reader: PadsReader) => void): Promise<void> =>
    reading(() => import('../state/read-pads.ts'), work);
  const keep = (stock: StockDocument): void => {
    const problem = rememberStock(stock);
    if (problem !== null) store.update((state) => ({ ...state, alert: problem }));
  };
  const unitNow = (): LengthUnit => store.get().unit;

  return {
    ask: (question) => change((pads) => ({ ...pads, question })),
    expectTyping: () => void withReader(() => undefined),
    typeCup: (pad, field, text) =>
      withReader(({ readCup }) =>
        store.update((state) => {
          const { contents } = hornInHand(state);
          const read = readCup(contents, pad, field, { text, unit: state.unit });
          const typed = read.ok
            ? read.mm === null
              ? null
              : accepted(text, read.mm)
            : refused(text, read.message);
          const next = read.ok ? withHorn(state, (horn) => stepped(horn, read.contents, null)) : state;
          return { ...next, pads: withCupText(next.pads, next.hornId, pad, field, typed) };
        }),
      ),
    restoreCup: (pad, field) =>
      store.update((state) => ({
        ...state,
        pads: withCupText(state.pads, state.hornId, pad, field, null),
      })),
    propose: (pads) =>
      withReader(({ readNewPads }) =>
        store.update((state) => {
          const read = readNewPads(hornInHand(state).contents, pads, state.pads.stock.toleranceMm);
          return read.ok
            ? withHorn(state, (horn) => stepped(horn, read.contents, null))
            : { ...state, alert: `These pads cannot be proposed: ${read.message}.` };
        }),
      ),
    typeStock: (field, text) =>
      withReader(({ readStockText }) => {
        const { stock } = store.get().pads;
        const read = readStockText(stock, field, text, unitNow());
        if (!read.ok) {
          change((pads) => withStockText(pads, field, refused(text, read.message)));
          return;
        }
        const typed = field === 'thickness' ? null : accepted(text, read.mm);
        change((pads) => withStockText(withStock(pads, read.stock), field, typed));
        keep(read.stock);
      }),
    restoreStock: (field) => change((pads) => withStockText(pads, field, null)),
    dropThickness: (mm) => {
      const { stock } = store.get().pads;
      const thicknessesMm = stock.thicknessesMm.filter((t) => t !== mm);
      if (thicknessesMm.length === 0 || thicknessesMm.length === stock.thicknessesMm.length) return;
      change((pads) => withStock(pads, { ...stock, thicknessesMm }));
      keep({ ...stock, thicknessesMm });
    },
    setStock: (stock) => {
      change((pads) => ({ ...withStock(pads, stock), stockTyped: {} }));
      keep(stock);
    },
    plan: (part) => change((pads) => ({ ...withPlan(pads, part), planTyped: null })),
    typePlan: (text) =>
      withReader(({ readChange }) =>
        change((pads) => {
          const read = readChange(pads.plan.how, text, unitNow());
          return read.ok
            ? { ...withPlan(pads, { mm: read.value }), planTyped: accepted(text, read.value) }
            : { ...pads, planTyped: refused(text, read.message) };
        }),
      ),
    restorePlan: () => change((pads) => ({ ...pads, planTyped: null })),
  };
}
