import type { HornAndSetup } from '../../documents/to-acoustics.ts';
import type { PadChangeReport } from '../../documents/pad-change-report.ts';
import { usualStock, type StockDocument, type StockField } from '../../documents/stock-document.ts';
import type { WholeKeySetup } from '../../documents/setup-document.ts';
import { nothingAsked, type AskedAnswer } from './asked-answer.ts';
import type { CupFieldId } from './cup-fields.ts';
import type { TypedText } from './horn-on-bench.ts';
import { memoLast } from './memo-last.ts';

/** The two questions about pads. */
export type PadsQuestion = 'fit' | 'change';

/** Which pads are changed, and for what. */
export interface PadChangePlan {
  readonly scope: 'all' | 'key';
  /** `to`: every pad becomes so thick; `by`: every pad grows by so much, minus for a thinner one */
  readonly how: 'to' | 'by';
  readonly mm: number;
  readonly seating: PadChangeReport['seating'];
}

/** What a change of pads was asked of, by pad id: mm thicker, minus for thinner. */
export type ThickerMm = Readonly<Record<string, number>>;

/** Texts of a stock as typed: its fields, and the thickness to add. */
export type StockTextId = StockField | 'thickness';

/** Everything about pads that is no horn’s. */
export interface PadsState {
  readonly question: PadsQuestion;
  readonly stock: StockDocument;
  readonly stockTyped: Readonly<Partial<Record<StockTextId, TypedText>>>;
  /** by horn id, then by pad id */
  readonly cupTyped: Readonly<Record<string, Readonly<Record<string, CupTexts>>>>;
  readonly plan: PadChangePlan;
  readonly planTyped: TypedText | null;
  /** the plan last asked about, and the one the report on screen answers */
  readonly askedPlan: PadChangePlan;
  readonly toldPlan: PadChangePlan;
  readonly change: AskedAnswer<PadChangeReport>;
}

/** Texts typed on one cup. */
export type CupTexts = Readonly<Partial<Record<CupFieldId, TypedText>>>;

/** The older class of thick pads against the usual one: a change many horns see, mm. */
const FIRST_CHANGE_MM = 0.18 * 25.4;

export function makePadsState(hornId: string, stock: StockDocument = usualStock()): PadsState {
  const plan = { scope: 'all', how: 'to', mm: FIRST_CHANGE_MM, seating: 'levelled' } as const;
  return {
    question: 'fit',
    stock,
    stockTyped: {},
    cupTyped: {},
    plan,
    askedPlan: plan,
    toldPlan: plan,
    planTyped: null,
    change: nothingAsked(hornId),
  };
}

/** Changes of thickness smaller than this are none, mm. */
const NO_CHANGE_MM = 0.005;

/** How much thicker each pad becomes, mm; pads that stay as they are are left out. The same for the same plan. */
export const thickerBy = memoLast(({ setup }: HornAndSetup, plan: PadChangePlan, keyId: string): ThickerMm =>
  Object.fromEntries(
    (setup.keys as readonly WholeKeySetup[]).flatMap(({ pad, padThicknessMm }): [string, number][] => {
      if (plan.scope === 'key' && pad !== keyId) return [];
      const mm = plan.how === 'by' ? plan.mm : plan.mm - padThicknessMm;
      return Math.abs(mm) < NO_CHANGE_MM ? [] : [[pad, mm]];
    }),
  ),
);

// Each takes what is known of pads and gives the next.

export function withStock(pads: PadsState, stock: StockDocument): PadsState {
  return { ...pads, stock };
}

export function withStockText(pads: PadsState, field: StockTextId, typed: TypedText | null): PadsState {
  return { ...pads, stockTyped: withText(pads.stockTyped, field, typed) };
}

export function withCupText(
  pads: PadsState,
  hornId: string,
  pad: string,
  field: CupFieldId,
  typed: TypedText | null,
): PadsState {
  const ofHorn = pads.cupTyped[hornId] ?? {};
  const texts = withText(ofHorn[pad] ?? {}, field, typed);
  return { ...pads, cupTyped: { ...pads.cupTyped, [hornId]: { ...ofHorn, [pad]: texts } } };
}

export function withPlan(pads: PadsState, change: Partial<PadChangePlan>): PadsState {
  return { ...pads, plan: { ...pads.plan, ...change } };
}

function withText<K extends string>(
  texts: Readonly<Partial<Record<K, TypedText>>>,
  field: K,
  typed: TypedText | null,
): Readonly<Partial<Record<K, TypedText>>> {
  const next: Partial<Record<K, TypedText>> = { ...texts };
  if (typed === null) delete next[field];
  else next[field] = typed;
  return next;
}
