import { describe, expect, it } from 'vitest';
import { makeStudyReport } from '../../src/ui/state/study-report.ts';
import { study } from './demo.ts';

/** What each pad vents, by its number: the trade's table, with its octaves. */
const VENTS: Readonly<Record<number, string>> = {
  1: 'B3',
  2: 'C4',
  3: 'C#4',
  4: 'D4',
  5: 'Eb4',
  6: 'E4',
  7: 'F4',
  8: 'F#4',
  9: 'F#4',
  10: 'G4',
  11: 'G#4',
  12: 'A4',
  13: 'Bb4',
  14: 'Bb4',
  15: 'B4',
  16: 'C5',
  17: 'C5',
  18: 'C#5',
  19: 'D6',
  20: 'Eb6',
  21: 'E6',
  22: 'F6',
  25: 'F#6',
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
