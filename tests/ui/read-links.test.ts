import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readAskedOpening, readGap, readLeakGap, readLinkField } from '../../src/ui/state/read-links.ts';
import { LINK_FIELDS } from '../../src/ui/state/links-state.ts';
import { gapWords, papersWords } from '../../src/ui/views/regulation/gap-words.ts';
import { onTheBench } from './demo.ts';

/** mm: decimals read back. */
const ROUNDING = 1e-12;

const contents = onTheBench('alto');
const ENDS = { driver: 'e', driven: 'f-sharp-auxiliary' };

const valueOf = (text: string, signed = true): number | null => {
  const read = readGap(text, 'gap', signed);
  return read.ok ? read.value : null;
};

describe('a gap, as it is typed', () => {
  it('is papers unless it names a length', () => {
    for (const [text, mm] of [
      ['2', 0.05],
      ['2 papers', 0.05],
      ['1 paper', 0.025],
      ['1,5 p', 0.0375],
      ['0.05 mm', 0.05],
      ['0,1mm', 0.1],
      ['2 thou', 0.0508],
      ['0.002 in', 0.0508],
      ['0', 0],
      ['0 mm', 0],
    ] as const) {
      expect(Math.abs(valueOf(text)! - mm), text).toBeLessThan(ROUNDING);
    }
  });

  it('may be minus only where a driver can be kept off', () => {
    expect(valueOf('−2 papers')).toBeCloseTo(-0.05, 12);
    expect(valueOf('-0.05 mm')).toBeCloseTo(-0.05, 12);
    expect(valueOf('-1', false)).toBeNull();
  });

  it('is refused with what is expected', () => {
    for (const text of ['', 'two', '2 papers or so', 'mm', '--1']) {
      const read = readGap(text, 'gap left', true);
      expect(read.ok, text).toBe(false);
      if (!read.ok) expect(read.message).toContain('expected a gap such as 2 papers, 0.05 mm or 2 thou');
    }
  });

  it('is read back as it is written', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 400 }), (tenths) => {
        const papers = tenths / 10;
        const back = valueOf(papersWords(papers))! / 0.025;
        expect(Math.abs(back - papers)).toBeLessThanOrEqual(papers < 9.95 ? 1e-9 : 0.5);
      }),
      { seed: 11 },
    );
  });

  it('is told in papers and in a length, either unit', () => {
    expect(gapWords(0.05, 'mm')).toBe('2 papers (0.050 mm)');
    expect(gapWords(-0.025, 'mm')).toBe('1 paper (0.025 mm)');
    expect(gapWords(0.0508, 'thou')).toBe('2 papers (2.0 thou)');
    expect(gapWords(0, 'mm')).toBe('shut');
  });
});

describe('any text in any field of a link', () => {
  it('gives a number the documents hold, or a sentence', () => {
    const texts = fc.oneof(
      fc.string(),
      fc.double().map(String),
      fc.stringMatching(/^[-−]?\d{0,4}[.,]?\d{0,3} ?(mm|in|thou|papers?|p|"|)$/),
    );
    fc.assert(
      fc.property(fc.constantFrom(...LINK_FIELDS), texts, (field, text) => {
        const read = readLinkField(contents, ENDS, field, text, 'mm');
        if (read.ok) expect(Number.isFinite(read.value)).toBe(true);
        else expect(read.message).toMatch(/expected/);
      }),
      { seed: 12, numRuns: 400 },
    );
  });

  it('keeps each within what it can be', () => {
    expect(readLinkField(contents, ENDS, 'drivenGap', '6 mm', 'mm').ok).toBe(false);
    expect(readLinkField(contents, ENDS, 'ratio', '0.01', 'mm').ok).toBe(false);
    expect(readLinkField(contents, ENDS, 'ratio', '0,93', 'mm')).toEqual({ ok: true, value: 0.93 });
    expect(readLinkField(contents, ENDS, 'driverArm', '0.2', 'mm').ok).toBe(false);
    expect(readLinkField(contents, ENDS, 'firstDriver', '0.25', 'thou').ok).toBe(true);
    expect(readLeakGap('3 mm').ok).toBe(false);
    expect(readLeakGap('0').ok).toBe(false);
    expect(readAskedOpening('0', 'mm').ok).toBe(false);
  });
});
