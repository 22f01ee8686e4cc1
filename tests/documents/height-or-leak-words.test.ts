import { describe, expect, it } from 'vitest';
import { makeAirColumn, studyHeightOrLeak, withOpening } from '../../src/acoustics/index.ts';
import { reportHeightOrLeak, type HeightOrLeakReport } from '../../src/documents/height-or-leak-report.ts';
import { decibels, heightOrLeakSentence } from '../../src/documents/height-or-leak-words.ts';
import { plusMinusOf } from '../../src/documents/plus-minus.ts';
import { demoHorn, fingeringOf } from '../acoustics/demo-horns.ts';

const loaded = demoHorn('alto');
const air = makeAirColumn();

function reported(id: string, setup = loaded.setup, horn = loaded.horn): HeightOrLeakReport {
  const fingering = fingeringOf(id);
  const study = studyHeightOrLeak(horn, setup, fingering, air, { plusMinus: plusMinusOf(loaded) });
  return reportHeightOrLeak(horn, fingering, study);
}

const lowE = reported('E4');
const withD = (mm: number): HeightOrLeakReport =>
  reported('E4', withOpening(loaded.setup, 'd', { at: 'front', height: mm * 1e-3 }));

describe('height beside leak in words', () => {
  it('names the leak first, with the worst pad and the best key, where leaks cost more', () => {
    expect(heightOrLeakSentence(lowE)).toBe(
      'For E4, look for a leak first: two papers under high F♯ would cost 4.9 +0.8 −0.6 dB; raising D to enough would bring 0.03 ± 0.01 dB.',
    );
    expect(heightOrLeakSentence(lowE, 'low E')).toMatch(/^For low E, /);
  });

  it('names the key first where its height brings more', () => {
    expect(heightOrLeakSentence(withD(0.7))).toMatch(
      /^For E4, look at the D key’s height first: raising D to enough would bring 8\.8 ± 3\.\d dB; two papers under high F♯ would cost 2\.3 .* dB\.$/,
    );
  });

  it('says where the two cannot be told apart', () => {
    expect(heightOrLeakSentence(withD(1))).toMatch(
      /^For E4, height and leak cannot be told apart: raising D .* dB; two papers .* dB\.$/,
    );
  });

  it('sends elsewhere where neither would be noticed', () => {
    const quiet = { ...lowE, verdict: 'neither' as const, leaks: lowE.leaks.slice(-2) };
    expect(heightOrLeakSentence(quiet)).toMatch(
      /^For E4, look elsewhere: .* a player is taken to notice 1 dB\.$/,
    );
  });

  it('says where no key’s height moves the note, or none would bring it any', () => {
    expect(heightOrLeakSentence(reported('Bb3'))).toMatch(/; no key’s height moves it\.$/);
    const high = reported('E4', withOpening(loaded.setup, 'd', { at: 'front', height: 11e-3 }));
    expect(high.heights.find(({ pad }) => pad === 'd')!.gainDb).toBeLessThan(0);
    const [d] = high.heights.filter(({ pad }) => pad === 'd');
    expect(heightOrLeakSentence({ ...high, heights: [d] })).toMatch(/no key’s height would bring it any\.$/);
  });

  it('says why where there is nothing to compare', () => {
    const far = reported('E4', loaded.setup, {
      ...loaded.horn,
      transposition: loaded.horn.transposition + 60,
    });
    expect(far).toMatchObject({ verdict: null, heights: [], leaks: [], heightRatio: null });
    expect(heightOrLeakSentence(far)).toBe(
      'For E4 height and leak cannot be compared: it has no resonance as it stands.',
    );
  });
});

describe('a number of decibels', () => {
  it('has as many digits as its ± bears, and a ± never rounded to nothing', () => {
    expect(decibels(4.887, 0.62)).toBe('4.9 ± 0.6 dB');
    expect(decibels(0.0283, 0.0081)).toBe('0.03 ± 0.01 dB');
    expect(decibels(0.287, 0.046)).toBe('0.29 ± 0.05 dB');
    expect(decibels(-0.0312, 0.0012)).toBe('−0.03 ± 0.01 dB');
    expect(decibels(0.0003, 0.001)).toBe('under 0.01 dB');
    expect(decibels(1.5)).toBe('1.5 dB');
    expect(decibels(4.887, { more: 0.83, less: 0.62 })).toBe('4.9 +0.8 −0.6 dB');
    expect(decibels(1.52, { more: 0.22, less: 0.18 })).toBe('1.5 ± 0.2 dB');
    expect(decibels(0.04, { more: 0.02, less: 0.001 })).toBe('0.04 +0.02 −0.01 dB');
  });
});
