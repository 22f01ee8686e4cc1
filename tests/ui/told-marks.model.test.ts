import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutAtFigures } from '../../src/ui/parts/reason-view.model.ts';
import { withMarks } from '../../src/ui/parts/told-marks.model.ts';
import type { Reason } from '../../src/ui/state/reasons.ts';

const SEED = 2041;

const reasonOf = (figure: string): Reason => ({
  kind: 'vent-share',
  figure,
  of: 'E key',
  inputs: [],
  budget: null,
  remarks: [],
});

const shown = (text: string, figures: readonly string[]): string[] =>
  withMarks(cutAtFigures(text, figures.map(reasonOf))).map(
    ({ piece, mark }) => (typeof piece === 'string' ? piece : `[${piece.figure}]`) + mark,
  );

describe('a mark after a figure', () => {
  it('goes with the figure, and nothing else does', () => {
    expect(shown('costs B♭3 4.1 dB, more than 2 mm.', ['4.1 dB', '2 mm'])).toEqual([
      'costs B♭3 ',
      '[4.1 dB],',
      ' more than ',
      '[2 mm].',
    ]);
    expect(shown('(8.0 mm), then 3 mm or so', ['8.0 mm', '3 mm'])).toEqual([
      '(',
      '[8.0 mm]),',
      ' then ',
      '[3 mm]',
      ' or so',
    ]);
    expect(shown(', alone', [])).toEqual([', alone']);
  });

  it('neither loses nor moves a letter', () => {
    const piece = fc.constantFrom('1 mm', '2 dB', ', ', '). ', ' and ', '; ', 'so', '…');
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 12 }), (words) => {
        const text = words.join('');
        expect(shown(text, ['1 mm', '2 dB']).join('').replaceAll(/[[\]]/g, '')).toBe(text);
      }),
      { seed: SEED },
    );
  });
});
