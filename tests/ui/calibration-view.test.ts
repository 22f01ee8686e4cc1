import { describe, expect, it } from 'vitest';
import type { Take } from '../../src/documents/pitch-log.ts';
import { answerArrived } from '../../src/ui/state/asked-answer.ts';
import { hornInHand, makeBenchState, type BenchState } from '../../src/ui/state/bench-state.ts';
import {
  calibratedWords,
  calibrationInUse,
  calibrationSource,
} from '../../src/ui/state/calibration-source.ts';
import { calibrationReport, fitUnknown, useCalibration } from '../../src/ui/state/calibration-state.ts';
import { undone } from '../../src/ui/state/horn-on-bench.ts';
import { makeCalibrationPanel } from '../../src/ui/views/played/calibration-panel.model.ts';
import { makeScaleView } from '../../src/ui/views/scale/scale-view.model.ts';
import { scaleArrived } from '../../src/ui/state/scale-state.ts';
import { makePlayedNotes, withPlayed } from '../../src/ui/views/scale/played-notes.model.ts';
import { makeNamer } from '../../src/ui/views/scale/scale-words.ts';
import { calibrationOf, takesWith } from './demo-calibration.ts';
import { onTheBench, plain, scale } from './demo.ts';

/** The demo alto on the bench, with takes logged. */
function withTakes(takes: readonly Take[]): BenchState {
  const contents = onTheBench('alto');
  const { visit } = contents;
  return makeBenchState([], {
    ...contents,
    visit: { ...visit, document: { ...visit.document, played: [...takes] } },
  });
}

const contentsOf = (state: BenchState) => hornInHand(state).contents;
const TAKES = takesWith({ 'mouthpiece place': 3e-3, temperature: -2 }, { F5: 60 });
const report = calibrationOf(TAKES);

/** The same once the physics has answered. */
function answered(): BenchState {
  const state = withTakes(TAKES);
  return { ...state, calibration: answerArrived(state.calibration, 0, state.hornId, report) };
}

describe('the calibration on the bench', () => {
  it('has nothing to fit until a take counts', () => {
    expect(calibrationSource(contentsOf(withTakes([])))).toBeNull();
    const aside = TAKES.map((take): Take => ({ ...take, leftOut: true }));
    expect(calibrationSource(contentsOf(withTakes(aside)))).toBeNull();
    expect(calibrationReport(withTakes([]))).toBeNull();
  });

  it('is the same object while neither takes nor choices change', () => {
    const state = withTakes(TAKES);
    expect(calibrationSource(contentsOf(state))).toBe(calibrationSource({ ...contentsOf(state) }));
  });

  it('is used only once a person says so, as one step that can be undone', () => {
    const state = withTakes(TAKES);
    expect(calibrationInUse(contentsOf(state))).toBeNull();
    const used = useCalibration(state, true);
    expect(calibrationInUse(contentsOf(used))).not.toBeNull();
    expect(calibratedWords(contentsOf(used))).toBe(
      `Pitches are as calibrated to ${TAKES.length} notes played.`,
    );
    expect(calibrationInUse(undone(hornInHand(used)).contents)).toBeNull();
  });

  it('fits the unknowns that were chosen, in their own order', () => {
    const state = fitUnknown(withTakes(TAKES), 'player’s trend', true);
    expect(calibrationSource(contentsOf(fitUnknown(state, 'temperature', false)))!.unknowns).toEqual([
      'mouthpiece volume',
      'mouthpiece place',
      'bell end',
      'player’s trend',
    ]);
  });
});

describe('the panel', () => {
  it('says first what the log says, each unknown with its ± and how well it is told', () => {
    const panel = makeCalibrationPanel(answered());
    expect(plain(panel.answer)).toBe(report.answer);
    const of = (unknown: string) => panel.rows.find((row) => row.unknown === unknown)!;
    expect(of('temperature').value).toMatch(/^2\d\.\d ± \d\.\d °C$/);
    expect(of('temperature').standing).toBe('told');
    expect(of('player’s trend')).toMatchObject({ fitted: false, value: '', standing: 'as written' });
    expect(plain(panel.sentences[0])).toMatch(/^F5 was left out of the fit: \d\d cents above the rest\.$/);
  });

  it('gives no number for what is not told', () => {
    const takes = TAKES.filter(({ fingering }) => fingering === 'F4' || fingering === 'E4');
    const state = withTakes(takes);
    const few = {
      ...state,
      calibration: answerArrived(state.calibration, 0, state.hornId, calibrationOf(takes)),
    };
    const row = makeCalibrationPanel(few).rows.find(({ unknown }) => unknown === 'bell end')!;
    expect(row.standing).toBe('not told by these notes');
    expect(row.value).toMatch(/^± \d+\.\d mm$/);
  });

  it('of no notes says what notes would tell', () => {
    expect(makeCalibrationPanel(withTakes([]))).toMatchObject({
      usable: false,
      waiting: false,
      problem: null,
    });
  });
});

describe('notes as played on the scale', () => {
  const whole = scale().report;
  const view = makePlayedNotes(report, whole, makeNamer('written', whole.transpositionSemitones), false)!;

  it('begin with the note that is farthest off, and say what was left out', () => {
    expect(view.rows[0]).toMatchObject({ id: 'F5', outside: true });
    expect(view.rows[0].words).toMatch(/^left out of the fit/);
    expect(view.rows).toHaveLength(TAKES.length);
  });

  it('keep every bar within its place, and say whether the fit is in use', () => {
    for (const { bar } of view.rows) {
      expect(bar!.from).toBeGreaterThanOrEqual(0);
      expect(bar!.from + bar!.length).toBeLessThanOrEqual(1);
    }
    expect(view.told).toContain('not in use');
  });
});

describe('the scale’s chart', () => {
  const drawn = makeScaleView(stateOf()).scale!.chart;

  function stateOf(): BenchState {
    const state = { ...answered(), view: 'scale' as const };
    return { ...state, scale: scaleArrived(state.scale, 0, state.hornId, scale().report) };
  }

  it('marks every note as it was played, and none that was not', () => {
    const cents = new Map(TAKES.map((take) => [take.fingering, take.cents]));
    drawn.marks.forEach(({ id }, i) => expect(drawn.played![i]).toBe(cents.get(id) ?? null));
  });

  it('keeps every note of the horn, and has room for each as it was played', () => {
    const far = report.notes.map((note) => ({ ...note, playedCents: 2 * note.playedCents + 30 }));
    const { panels, played } = withPlayed(drawn, { ...report, notes: far });
    const { found, range } = panels.pitch;
    expect(Math.max(...played!.map((cents) => cents ?? 0))).toBeGreaterThan(drawn.panels.pitch.range[1]);
    expect(found.filter((cents) => cents !== null).length).toBeGreaterThan(TAKES.length);
    for (const cents of played!.filter((value) => value !== null)) {
      expect(cents).toBeGreaterThan(range[0]);
      expect(cents).toBeLessThan(range[1]);
    }
  });

  it('says as what every note was played', () => {
    const said = drawn.summary.split('As played: ')[1];
    expect(said.split(', ')).toHaveLength(drawn.played!.filter((value) => value !== null).length);
  });

  it('marks nothing where nothing was played', () => {
    const none = { ...stateOf(), ...withTakes([]), scale: stateOf().scale };
    expect(makeScaleView(none).scale!.chart.played).toBeNull();
  });
});
