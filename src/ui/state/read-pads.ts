import { setupIn, type BenchContents } from '../../documents/bench-contents.ts';
import { formatBoth, type LengthUnit } from '../../documents/length-format.ts';
import { parseLength } from '../../documents/length.ts';
import { withHornLength, withSetupLength } from '../../documents/sheet-edits.ts';
import { readStock, type StockDocument } from '../../documents/stock-document.ts';
import { loadHorn } from '../../documents/to-acoustics.ts';
import { CUP_FIELDS, STOCK_PLANS, type CupFieldId } from './cup-fields.ts';
import { MEASURED } from './key-lengths.ts';
import { withoutProposedPads, withProposedPads, type NewPad } from './new-pads.ts';
import type { PadChangePlan, StockTextId } from './pads-state.ts';
import type { FieldOutcome } from './read-field.ts';

/** What became of a text about a cup. */
export type CupOutcome =
  | { readonly ok: true; readonly contents: BenchContents; readonly mm: number | null }
  | { readonly ok: false; readonly message: string };

/** Reads one of a cup’s lengths into the horn or the setup as found; an empty text takes it away. */
export function readCup(
  contents: BenchContents,
  pad: string,
  field: CupFieldId,
  { text, unit }: { readonly text: string; readonly unit: LengthUnit },
): CupOutcome {
  const { name, lowMm, highMm } = CUP_FIELDS.find((f) => f.id === field)!;
  if (text.trim() === '') return { ok: true, contents: withCup(contents, pad, field, null), mm: null };
  const read = parseLength(text, name, unit);
  if (!read.ok) return read;
  if (!(read.mm >= lowMm && read.mm <= highMm)) {
    return { ok: false, message: outside(name, read.mm, unit, [lowMm, highMm]) };
  }
  const next = withCup(contents, pad, field, read.mm);
  const loaded = loadHorn({ horn: next.horn.document, setup: next.asFound.document });
  return loaded.ok
    ? { ok: true, contents: next, mm: read.mm }
    : { ok: false, message: loaded.issues[0].message };
}

function withCup(contents: BenchContents, pad: string, field: CupFieldId, mm: number | null): BenchContents {
  const { horn, asFound } = contents;
  if (field === 'cupFloorMm' || field === 'cupDiameterMm') {
    const document = withHornLength(horn.document, pad, field, mm, MEASURED);
    return { ...contents, horn: { ...horn, document } };
  }
  const document = withSetupLength(asFound.document, pad, field, mm, MEASURED);
  return { ...contents, asFound: { ...asFound, document } };
}

/** Proposes pads for some keys, or, with none, no pad for any. */
export function readNewPads(
  contents: BenchContents,
  pads: readonly NewPad[],
  toleranceMm: number,
): CupOutcome {
  const next =
    pads.length === 0 ? withoutProposedPads(contents) : withProposedPads(contents, pads, toleranceMm);
  const loaded = loadHorn({ horn: next.horn.document, setup: setupIn(next, 'proposed') });
  return loaded.ok
    ? { ok: true, contents: next, mm: null }
    : { ok: false, message: loaded.issues[0].message };
}

/** What became of a text about the stock. */
export type StockOutcome =
  | { readonly ok: true; readonly stock: StockDocument; readonly mm: number }
  | { readonly ok: false; readonly message: string };

/** Reads a length of the stock, or one more thickness for it. */
export function readStockText(
  stock: StockDocument,
  field: StockTextId,
  text: string,
  unit: LengthUnit,
): StockOutcome {
  const name = STOCK_PLANS.find((f) => f.id === field)?.name ?? 'pad thickness';
  const read = parseLength(text, name, unit);
  if (!read.ok) return read;
  const next =
    field === 'thickness'
      ? { ...stock, thicknessesMm: [...stock.thicknessesMm, read.mm].sort((a, b) => a - b) }
      : { ...stock, [field]: read.mm };
  const checked = readStock(next);
  return checked.ok
    ? { ok: true, stock: checked.value, mm: read.mm }
    : { ok: false, message: checked.issues[0].message };
}

/** Thicknesses of pads there are, and how much a change of pads can be, mm. */
const THICKNESS_MM = [0.5, 12] as const;
const CHANGE_MM = [-4, 4] as const;

/** Reads how thick pads become, or by how much: there a minus is a thinner pad. */
export function readChange(how: PadChangePlan['how'], text: string, unit: LengthUnit): FieldOutcome {
  const bare = text.trim();
  const minus = how === 'by' && /^[-−]/.test(bare);
  const plus = how === 'by' && bare.startsWith('+');
  const name = how === 'to' ? 'new pad thickness' : 'change of thickness';
  const read = parseLength(minus || plus ? bare.slice(1) : bare, name, unit);
  if (!read.ok) return read;
  const mm = minus ? -read.mm : read.mm;
  const [low, high] = how === 'to' ? THICKNESS_MM : CHANGE_MM;
  if (!(mm >= low && mm <= high)) return { ok: false, message: outside(name, mm, unit, [low, high]) };
  return { ok: true, value: mm };
}

function outside(name: string, mm: number, unit: LengthUnit, [low, high]: readonly [number, number]): string {
  return `invalid ${name}: ${formatBoth(mm, unit)}; expected ${formatBoth(low, unit)} to ${formatBoth(high, unit)}`;
}
