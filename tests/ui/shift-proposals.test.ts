import { describe, expect, it } from 'vitest';
import type { BenchContents } from '../../src/documents/bench-contents.ts';
import { keyedHoles } from '../../src/documents/horn-document.ts';
import { withFoundLengths, withProposed, withSet } from '../../src/ui/state/key-lengths.ts';
import { proposedFronts } from '../../src/ui/state/proposed-fronts.ts';
import { shiftProposals, withdrawalSentence } from '../../src/ui/state/shift-proposals.ts';
import { onTheBench } from './demo.ts';

const alto = onTheBench('alto');
const pads = keyedHoles(alto.horn.document).map(({ id }) => id);
const foundMm = (pad: string): number =>
  alto.asFound.document.keys.find((key) => key.pad === pad)!.openingMm!;
/** mm: a proposal is kept to six digits. */
const KEPT_MM = 1e-5;

describe('every key proposed higher or lower', () => {
  it('goes from where it is proposed, else set, else found', () => {
    const before = withSet(withProposed(alto, 'd', 9), 'e', { mm: 8.5, at: 'front' });
    const { contents, told } = shiftProposals(before, -1, 'mm');
    const fronts = proposedFronts(contents);
    expect(Object.keys(fronts).sort()).toEqual([...pads].sort());
    for (const pad of pads) {
      const from = pad === 'd' ? 9 : pad === 'e' ? 8.5 : foundMm(pad);
      expect(Math.abs(fronts[pad] - (from - 1))).toBeLessThan(KEPT_MM);
    }
    expect(told).toBe('23 keys proposed 1.0 mm (0.039 in) lower than before, at the front.');
  });

  it('is back where it was after as much the other way', () => {
    const there = shiftProposals(withProposed(alto, 'd', 9), 0.5, 'mm').contents;
    const back = proposedFronts(shiftProposals(there, -0.5, 'mm').contents);
    for (const pad of pads)
      expect(Math.abs(back[pad] - (pad === 'd' ? 9 : foundMm(pad)))).toBeLessThan(KEPT_MM);
  });

  it('leaves keys that were not read on this horn, unless proposed by hand, and names them', () => {
    const example: BenchContents = {
      ...alto,
      asFound: { ...alto.asFound, document: { ...alto.asFound.document, origin: 'template' } },
    };
    const none = shiftProposals(example, -1, 'mm');
    expect(none.contents).toBe(example);
    expect(none.told).toBe('No opening was read on this horn and none is proposed: there is no key to move.');
    const read = withProposed(withFoundLengths(example, 'e', { openingMm: 8 }), 'd', 9);
    const { contents, told } = shiftProposals(read, -1, 'mm');
    expect(Object.keys(proposedFronts(contents)).sort()).toEqual(['d', 'e']);
    expect(told).toMatch(
      /^2 keys proposed .* Left where they are, for their openings were not read on this horn: low B♭, low B, low C♯ and 18 more\.$/,
    );
  });

  it('stops at shut and says of which keys', () => {
    const { contents, told } = shiftProposals(alto, -5, 'mm');
    expect(proposedFronts(contents)['small-c']).toBe(0);
    expect(told).toContain('Not so far: small C, shut before that.');
  });

  it('does nothing by nothing', () => {
    expect(shiftProposals(alto, 0, 'mm').contents).toBe(alto);
  });
});

describe('proposals withdrawn', () => {
  it('are counted, and what the keys are told by again is said', () => {
    expect(withdrawalSentence(withProposed(alto, 'd', 9))).toBe(
      'One proposal withdrawn; every key is told as found again.',
    );
    const set = withSet(withProposed(withProposed(alto, 'd', 9), 'e', 9), 'f', { mm: 8, at: 'front' });
    expect(withdrawalSentence(set)).toBe(
      '2 proposals withdrawn; every key is told as found or as set again.',
    );
  });
});
