import type { LengthUnit } from '../../../../documents/length-format.ts';
import { keyedHoles } from '../../../../documents/horn-document.ts';
import type { PadFitReport } from '../../../../documents/pad-fit-report.ts';
import { knownHornLength, knownSetupLength } from '../../../../documents/sheet-edits.ts';
import type { HornAndSetup } from '../../../../documents/to-acoustics.ts';
import { documentsInHand, hornInHand, type BenchState } from '../../../state/bench-state.ts';
import { CUP_FIELDS, type CupFieldId } from '../../../state/cup-fields.ts';
import type { Reason } from '../../../state/reasons.ts';
import type { StockDocument } from '../../../../documents/stock-document.ts';
import type { CupTexts } from '../../../state/pads-state.ts';
import { keysWithNewPads, type NewPad } from '../../../state/new-pads.ts';
import { textInField } from '../../../state/text-in-field.ts';
import { makeCupDrawing, type CupDrawing } from './cup-drawing.model.ts';
import { fineBoth, fineEcho, fineLength, fineRange } from './fine-lengths.ts';
import { fitCups, type FittedCups } from './pad-fit.model.ts';
import { makePadReason, type FitFacts } from './pad-fit-reason.model.ts';
import { fitAnswer, type FitAnswer } from './pad-fit-words.ts';

/** One length of a cup on screen. */
export interface CupCell {
  readonly id: CupFieldId;
  readonly label: string;
  readonly text: string;
  /** in the other unit, or what stands in for it where nothing is known */
  readonly echo: string;
  readonly problem: string | null;
}

/** What a cup takes, on screen. */
export interface CupTake {
  readonly kind: 'fits' | 'measure each' | 'nothing fits';
  /** `44.0 × 4.57 mm (0.180 in)` */
  readonly pad: string;
  readonly bed: string;
  /** why this pad */
  readonly reason: Reason;
  /** what is left over, or what to mind; empty where it simply fits */
  readonly says: string;
  /** what the thickest and the thinnest of a batch would leave open on this bed */
  readonly batch: { readonly thickest: string; readonly thinnest: string } | null;
  /** shares of the greatest height on the page: pad, then bed */
  readonly padShare: number;
  readonly bedShare: number;
  /** where pad and bed together should end */
  readonly floorShare: number;
}

export interface CupRow {
  readonly id: string;
  readonly number: number;
  readonly name: string;
  readonly chosen: boolean;
  readonly cells: readonly CupCell[];
  readonly take: CupTake | null;
  /** why nothing is said, where nothing is */
  readonly why: string;
}

export interface OrderRow {
  readonly count: number;
  readonly across: string;
  readonly thick: string;
  readonly pads: string;
}

/** The page of pads for cups. */
export interface PadFitView {
  readonly answer: FitAnswer;
  readonly unit: LengthUnit;
  readonly rows: readonly CupRow[];
  readonly order: readonly OrderRow[];
  readonly orderTotal: number;
  readonly drawing: CupDrawing | null;
  readonly caution: string;
  /** pads that fit and are not proposed yet, and how many are */
  readonly toPropose: readonly NewPad[];
  readonly proposed: number;
}

export function makePadFitView(state: BenchState): PadFitView {
  const { unit, pads, hornId } = state;
  const documents = documentsInHand(state);
  const outcome = fitCups(documents, pads.stock);
  const { keyId } = hornInHand(state);
  const cups = outcome.ok ? outcome.value : null;
  const names = new Map(keyedHoles(documents.horn).map((h) => [h.id, h.name]));
  const inHand = cups?.fits.find((fit) => fit.pad === keyId) ?? null;
  return {
    answer: fitAnswer(outcome, pads.stock, names, unit),
    unit,
    rows: makeRows(documents, cups, { unit, keyId, stock: pads.stock }, pads.cupTyped[hornId] ?? {}),
    order: (cups?.order ?? []).map((line) => ({
      count: line.count,
      across: `${line.diameterMm.toFixed(1)} mm`,
      thick: fineBoth(line.thicknessMm, unit),
      pads: line.pads.map((pad) => names.get(pad) ?? pad).join(', '),
    })),
    orderTotal: (cups?.order ?? []).reduce((sum, line) => sum + line.count, 0),
    drawing: inHand === null ? null : makeCupDrawing(documents, inHand, unit),
    caution: cups?.caution ?? '',
    toPropose: (cups?.fits ?? []).flatMap(({ pad, fits, choice }) => (fits ? [{ pad, ...choice }] : [])),
    proposed: keysWithNewPads(hornInHand(state).contents).length,
  };
}

interface RowContext {
  readonly unit: LengthUnit;
  readonly keyId: string;
  readonly stock: StockDocument;
}

function makeRows(
  documents: HornAndSetup,
  cups: FittedCups | null,
  { unit, keyId, stock }: RowContext,
  typed: Readonly<Record<string, CupTexts>>,
): CupRow[] {
  const tallestMm = Math.max(
    1,
    ...(cups?.fits ?? []).map((f) => Math.max(filledMm(f), filledMm(f) - f.leftOverMm)),
  );
  return keyedHoles(documents.horn).map(({ id, number, name }): CupRow => {
    const fit = cups?.fits.find((f) => f.pad === id) ?? null;
    const seatMm = knownSetupLength(documents.setup, id, 'seatMm')?.mm ?? stock.seatMm;
    return {
      ...{ id, number, name, chosen: id === keyId },
      cells: CUP_FIELDS.map((plan) =>
        makeCell(documents, { id, typed: typed[id] ?? {}, unit, seatMm: stock.seatMm }, plan.id),
      ),
      take: fit === null ? null : makeTake({ fit, stock, name, seatMm }, tallestMm, unit),
      why: cups?.problems.get(id) ?? 'cup floor not measured',
    };
  });
}

const filledMm = (fit: PadFitReport): number => fit.choice.thicknessMm + fit.choice.bedMm;

function makeCell(
  documents: HornAndSetup,
  key: {
    readonly id: string;
    readonly typed: CupTexts;
    readonly unit: LengthUnit;
    readonly seatMm: number;
  },
  field: CupFieldId,
): CupCell {
  const { label, of } = CUP_FIELDS.find((f) => f.id === field)!;
  const { unit } = key;
  const known =
    of === 'horn'
      ? knownHornLength(documents.horn, key.id, field as 'cupFloorMm' | 'cupDiameterMm')
      : knownSetupLength(documents.setup, key.id, field as 'seatMm');
  const text = key.typed[field];
  const empty = field === 'seatMm' ? `stock’s ${fineLength(key.seatMm, unit)}` : '';
  return {
    id: field,
    label,
    text:
      known === null
        ? (text?.problem ?? null) === null
          ? ''
          : text!.text
        : textInField(text, known.mm, fineLength(known.mm, unit)),
    echo: known === null ? empty : `${fineEcho(known.mm, unit)} ±${known.plusMinusMm.toFixed(1)}`,
    problem: text?.problem ?? null,
  };
}

function makeTake(facts: FitFacts, tallestMm: number, unit: LengthUnit): CupTake {
  const { fit } = facts;
  const { diameterMm, thicknessMm, bedMm } = fit.choice;
  const pad = `${diameterMm.toFixed(1)} mm × ${fineBoth(thicknessMm, unit)}`;
  return {
    kind: !fit.fits ? 'nothing fits' : fit.wholeBatch ? 'fits' : 'measure each',
    pad,
    reason: makePadReason(facts, pad, unit),
    bed: fineLength(bedMm, unit),
    says: saysOf(fit, unit),
    batch:
      fit.thickestGapMm === null || fit.thinnestGapMm === null
        ? null
        : {
            thickest: `front ${fineLength(fit.thickestGapMm, unit)}`,
            thinnest: `back ${fineLength(fit.thinnestGapMm, unit)}`,
          },
    padShare: thicknessMm / tallestMm,
    bedShare: bedMm / tallestMm,
    floorShare: (filledMm(fit) - fit.leftOverMm) / tallestMm,
  };
}

function saysOf(fit: PadFitReport, unit: LengthUnit): string {
  const from = fit.floorFrom === 'derived' ? 'Floor reckoned from the pad, bed and seat it has.' : '';
  if (fit.fits) {
    return [fit.wholeBatch ? '' : 'The bed is near the end of its range.', from]
      .filter((t) => t !== '')
      .join(' ');
  }
  const side = fit.leftOverMm > 0 ? 'too thick' : 'too thin';
  const far = fit.touches === 'back' ? 'front' : 'back';
  const wanted = fineRange(Math.max(0, fit.wantedMm!.from), fit.wantedMm!.to, unit);
  const contact =
    fit.gapMm < SEEN_MM
      ? ''
      : `: the ${fit.touches} touches first and the ${far} gapes ${fineLength(fit.gapMm, unit)}`;
  return `Wants a pad of ${wanted}. The nearest is ${fineLength(Math.abs(fit.leftOverMm), unit)} ${side}${contact}. ${from}`.trim();
}

/** A gap that is shown, mm. */
const SEEN_MM = 0.005;
