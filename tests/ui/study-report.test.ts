import { describe, expect, it } from 'vitest';
import { makeStudyReport } from '../../src/ui/state/study-report.ts';
import { study } from './demo.ts';

/** What each pad vents, by its number: the trade's table. */
const VENTS: Readonly<Record<number, string>> = {
  1: 'B',
  2: 'C',
  3: 'C#',
  4: 'D',
  5: 'Eb',
  6: 'E',
  7: 'F',
  8: 'F#',
  9: 'F#',
  10: 'G',
  11: 'G#',
  12: 'A',
  13: 'Bb',
  14: 'Bb',
  15: 'B',
  16: 'C',
  17: 'C',
  18: 'C#',
  19: 'D',
  20: 'Eb',
  21: 'E',
  22: 'F',
  25: 'F#',
};

describe('the report that crosses from the worker', () => {
  const full = study('e');
  const report = makeStudyReport(full);

  it('is plain data', () => {
    expect(structuredClone(report)).toEqual(report);
    expect(JSON.parse(JSON.stringify(report))).toEqual(report);
  });

  it('keeps the study’s numbers, in bench units', () => {
    full.curve.forEach((point, i) => {
      expect(report.curve[i].frontMm).toBe(point.pose.front * 1000);
      expect(report.curve[i].ventShare).toBe(point.ventShare);
      point.notes.forEach((note, j) => {
        expect(report.curve[i].notes[j]!.fromPresentCents).toBe(note!.cents);
        expect(report.curve[i].notes[j]!.riseMs).toBe(note!.riseTime * 1000);
      });
    });
  });

  it('knows for all 23 pads which note they vent', () => {
    const byNumber = Object.fromEntries(
      full.context.horn.holes
        .filter((hole) => hole.hinge !== null)
        .map((hole) => [hole.number, (report.vents[hole.id] ?? []).join(', ')]),
    );
    expect(byNumber).toEqual(VENTS);
  });
});
