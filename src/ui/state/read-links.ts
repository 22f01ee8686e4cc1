import { PAPER_MM } from '../../documents/leak-report.ts';
import type { BenchContents } from '../../documents/bench-contents.ts';
import type { LengthUnit } from '../../documents/length-format.ts';
import { parseLength } from '../../documents/length.ts';
import { loadHorn } from '../../documents/to-acoustics.ts';
import { foundDocuments } from './key-lengths.ts';
import { withDrivenGap, withRatio } from './link-edits.ts';
import type { LinkEnds, LinkFieldId } from './links-state.ts';
import type { FieldOutcome } from './read-field.ts';

const PAPERS = /^([-−+]?)\s*(\d+(?:[.,]\d*)?|[.,]\d+)\s*(?:papers?|p)$/i;
const NOTHING = /^[-−+]?\s*0+(?:[.,]0*)?\s*(?:mm|in|thou|papers?|p)?$/i;
const MINUS = /^[-−]/;

/**
 * Reads a gap: `2 papers`, `−1 paper`, `0.05 mm`, `2 thou`; a plain number is papers.
 *
 * @param signed whether a minus may stand before it
 */
export function readGap(typed: string, name: string, signed: boolean): FieldOutcome {
  const text = typed.trim();
  const expected = `expected a gap such as 2 papers, 0.05 mm or 2 thou`;
  const bare = text.replace(/^[-−+]\s*/, '');
  if (text === '' || (MINUS.test(text) && !signed)) {
    return { ok: false, message: `invalid ${name}: “${text}”; ${expected}` };
  }
  const sign = MINUS.test(text) ? -1 : 1;
  if (NOTHING.test(text)) return { ok: true, value: 0 };
  const papers = PAPERS.exec(/^[\d.,]+$/.test(bare) ? `${bare} p` : bare);
  if (papers !== null) return { ok: true, value: sign * Number(papers[2].replace(',', '.')) * PAPER_MM };
  const read = parseLength(bare, name, 'mm');
  if (!read.ok) return { ok: false, message: `invalid ${name}: “${text}”; ${expected}` };
  return { ok: true, value: sign * read.mm };
}

/** Reads what is typed of a link; what the documents would refuse is refused. */
export function readLinkField(
  contents: BenchContents,
  ends: LinkEnds,
  field: LinkFieldId,
  typed: string,
  unit: LengthUnit,
): FieldOutcome {
  switch (field) {
    case 'drivenGap': {
      const read = readGap(typed, 'gap left when the link shuts', true);
      return read.ok ? unlessRefused(withDrivenGap(contents, ends, read.value), read) : read;
    }
    case 'ratio': {
      const read = readRatio(typed);
      return read.ok ? unlessRefused(withRatio(contents, ends, read.value), read) : read;
    }
    case 'driverArm':
    case 'drivenArm':
      return readBetween(typed, 'arm from rod to contact', { low: 1, high: 200 }, unit);
    default:
      return readBetween(typed, 'front opening', { low: 0, high: 60 }, unit);
  }
}

/** Reads an asked opening, mm at the front. */
export function readAskedOpening(typed: string, unit: LengthUnit): FieldOutcome {
  return readBetween(typed, 'least opening', { low: 0.1, high: 60 }, unit);
}

function readBetween(
  typed: string,
  name: string,
  { low, high }: { readonly low: number; readonly high: number },
  unit: LengthUnit,
): FieldOutcome {
  const read = parseLength(typed, name, unit);
  if (!read.ok) return read;
  if (!(read.mm >= low && read.mm <= high)) {
    return { ok: false, message: `invalid ${name}: ${typed.trim()}; expected ${low} to ${high} mm` };
  }
  return { ok: true, value: read.mm };
}

function readRatio(typed: string): FieldOutcome {
  const text = typed.trim();
  const value = /^(?:\d+(?:[.,]\d*)?|[.,]\d+)$/.test(text) ? Number(text.replace(',', '.')) : NaN;
  if (!(value >= 0.05 && value <= 20)) {
    return {
      ok: false,
      message: `invalid travel ratio: “${text}”; expected a number from 0.05 to 20, such as 0.93`,
    };
  }
  return { ok: true, value };
}

function unlessRefused(contents: BenchContents, read: FieldOutcome): FieldOutcome {
  const loaded = loadHorn(foundDocuments(contents));
  return loaded.ok ? read : { ok: false, message: loaded.issues[0].message };
}

/** The least and the widest leak that can be asked about, mm. */
const LEAK_MM = { low: 0.001, high: 2 };

/** Reads the gap of a leak, mm. */
export function readLeakGap(typed: string): FieldOutcome {
  const read = readGap(typed, 'gap', false);
  if (!read.ok) return read;
  if (!(read.value >= LEAK_MM.low && read.value <= LEAK_MM.high)) {
    return {
      ok: false,
      message: `invalid gap: “${typed.trim()}”; expected ${LEAK_MM.low} to ${LEAK_MM.high} mm, up to 80 papers`,
    };
  }
  return read;
}
