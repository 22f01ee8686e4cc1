import { PAPER_MM } from '../../documents/leak-report.ts';
import type { MoveReport } from '../../documents/regulation-report.ts';
import { formatBoth, type LengthUnit } from '../../documents/length-format.ts';
import { parseLength } from '../../documents/length.ts';
import type { FieldOutcome } from './read-field.ts';

/** As far as a value that came back is believed, mm: of a link’s gap either way, of a seat, of an opening. */
const MOST_MM = { link: 5, seat: 3, height: 60 } as const;

const NAMES = {
  link: 'gap that came back',
  seat: 'gap under the shut pad',
  height: 'opening that came back, at the front',
} as const;

/**
 * Reads a value that came back from a move. Gaps may be in papers, `1.5 papers`, and a plain number of a gap is
 * papers; a link’s gap with a minus is left at the driver.
 */
export function readBack(kind: MoveReport['kind'], text: string, unit: LengthUnit): FieldOutcome {
  const bare = text.trim();
  const name = NAMES[kind];
  const minus = kind === 'link' && /^[-−]/.test(bare);
  const unsigned = minus ? bare.slice(1).trim() : bare;
  const papers = kind === 'height' ? null : /^(\d+(?:[.,]\d*)?|[.,]\d+)\s*(?:papers?|p)?$/i.exec(unsigned);
  let mm: number;
  if (papers !== null) mm = Number(papers[1].replace(',', '.')) * PAPER_MM;
  else {
    const read = parseLength(unsigned, name, unit);
    if (!read.ok) {
      return kind === 'height' ? read : { ok: false, message: `${read.message}, or papers such as 1.5` };
    }
    ({ mm } = read);
  }
  const most = MOST_MM[kind];
  if (!(mm <= most)) {
    return {
      ok: false,
      message: `invalid ${name}: ${formatBoth(mm, unit)}; expected 0 to ${formatBoth(most, unit)}`,
    };
  }
  return { ok: true, value: minus ? -mm : mm };
}
