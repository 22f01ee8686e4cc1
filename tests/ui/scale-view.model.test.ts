import { describe, expect, it } from 'vitest';
import { mapShade, mapText } from '../../src/ui/parts/note-map.model.ts';
import {
  nearestMark,
  placeScale,
  steppedRange,
  xPx,
  yPx,
} from '../../src/ui/parts/chart/scale-chart.model.ts';
import { makeBenchState } from '../../src/ui/state/bench-state.ts';
import { propose } from '../../src/ui/state/edits-in-hand.ts';
import { studyArrived, studyAsked } from '../../src/ui/state/study-in-hand.ts';
import {
  handRested,
  moveArrived,
  scaleArrived,
  scaleAsked,
  surenessArrived,
  surenessFrom,
  type ScaleState,
} from '../../src/ui/state/scale-state.ts';
import type { ProposedOpenings } from '../../src/ui/state/scale-report.ts';
import { moveScale } from '../../src/ui/state/whole-scale.ts';
import { makeScaleView, type WholeScaleView } from '../../src/ui/views/scale/scale-view.model.ts';
import { ALTO, onTheBench, plain, report as studyOf, scale, scaleSureness } from './demo.ts';

const { prepared, report } = scale();
const fresh = makeBenchState([{ id: 'demo-alto', label: 'Demo alto' }], onTheBench('alto'));
const asked = { ...fresh, view: 'scale' as const, scale: scaleAsked(fresh.scale, 1) };
const arrived = studyArrived(
  studyAsked({ ...asked, scale: scaleArrived(asked.scale, 1, 'demo-alto', report) }, 1),
  1,
  studyOf('e'),
);
const whole = (state = arrived): WholeScaleView => makeScaleView(state).scale!;
const at = (view: WholeScaleView, id: string): number => view.chart.marks.findIndex((m) => m.id === id);

describe('the scale page', () => {
  it('waits until the horn has been played', () => {
    expect(makeScaleView(asked).scale).toBeNull();
    expect(makeScaleView(asked).waiting).toBe(true);
    expect(makeScaleView(arrived).waiting).toBe(false);
  });

  it('starts the slider as found, whatever the key study suggests', () => {
    const { slider } = makeScaleView(arrived);
    expect(slider!.frontMm).toBe(slider!.foundMm);
    expect(slider!.proposed).toBe(false);
    expect(slider!.enoughMm).not.toBe(slider!.foundMm);
    expect(whole().proposals).toEqual([]);
  });

  it('shows what is proposed as the numbers come, and the map once the hand rests', () => {
    const higher = propose(arrived, 11);
    const numbers = moveScale(prepared, { e: 11 });
    const moving = whole({ ...higher, scale: moveArrived(higher.scale, numbers) });
    expect(moving.live.values.pitch[at(moving, 'F4')]).toBe(
      numbers.cents[report.fingerings.findIndex((f) => f.id === 'F4')],
    );
    expect(moving.proposals.map((p) => p.id)).toEqual(['e']);
    expect(moving.map).toBe(whole().map);
    expect(moving.chart.marks).toBe(whole().chart.marks);
    const rested = whole({ ...higher, scale: { ...moveArrived(higher.scale, numbers), rested: numbers } });
    expect(rested.map).not.toBe(moving.map);
  });

  it('only widens its rows while a hand moves, and narrows them when it rests', () => {
    const far = moveArrived(arrived.scale, moveScale(prepared, { e: 2 }));
    const range = (of: typeof far): number => whole({ ...arrived, scale: of }).chart.panels.move.range[1];
    const back = moveArrived(far, moveScale(prepared, { e: 8.2 }));
    expect(range(far)).toBeGreaterThan(range(arrived.scale));
    expect(range(back)).toBe(range(far));
    expect(range(handRested(back))).toBe(range(arrived.scale));
  });

  it('orders pads from bell to mouthpiece and notes from low to high', () => {
    const { map } = whole();
    expect(map.keys).toHaveLength(23);
    expect(map.keys[0].id).toBe('low-b-flat');
    const positions = map.keys.map(({ id }) => ALTO.horn.holes.find((h) => h.id === id)!.positionMm);
    expect(positions).toEqual([...positions].sort((a, b) => b - a));
    const { marks } = whole().chart;
    expect(marks.map((m) => m.x)).toEqual(marks.map((m) => m.x).sort((a, b) => a - b));
    expect(new Set(marks.map((m) => m.x)).size).toBe(marks.length);
  });

  it('ranks the keys that govern the picked note, strongest first', () => {
    const { keys } = whole().note;
    expect(keys[0].id).toBe('e');
    expect(keys[0].share).toBe(1);
    expect(keys.map((k) => k.share)).toEqual(keys.map((k) => k.share).sort((a, b) => b - a));
  });

  it('compares every alternate with its usual fingering', () => {
    const rows = whole().alternates;
    expect(rows).toHaveLength(report.fingerings.length - new Set(report.fingerings.map((f) => f.note)).size);
    const side = report.fingerings.findIndex((f) => f.id === 'Bb4 side');
    const other = report.fingerings.findIndex((f) => f.id === 'Bb4 one-and-one');
    const apart = report.found.cents[other] - report.found.cents[side];
    expect(rows.find((r) => r.id === 'Bb4 one-and-one')!.cents).toBe(apart.toFixed(1).replace('-', '−'));
  });
});

describe('how sure the scale page is', () => {
  const surenessOf = scaleSureness();
  const surely = (of: ScaleState, proposedMm: ProposedOpenings): ScaleState => {
    let now = of;
    for (let from = surenessFrom(now); from !== null; from = surenessFrom(now)) {
      now = surenessArrived(now, surenessOf(proposedMm, from));
    }
    return now;
  };
  const f4 = report.fingerings.findIndex(({ id }) => id === 'F4');
  const found = { ...arrived, scale: surely(arrived.scale, {}), noteId: 'F4' };

  it('waits for it without a ± on screen', () => {
    const { live, note } = whole();
    expect(live.plusMinus.pitch.every((half) => half === null)).toBe(true);
    expect(note.sure).toBeNull();
  });

  it('gives every pitch the core’s ±, in chart and table, and leads to the played notes', () => {
    const view = whole(found);
    const half = found.scale.sure!.found[f4]!.budget.plusMinus;
    expect(view.live.plusMinus.pitch[at(view, 'F4')]).toBe(half);
    expect(plain(view.rows[f4].cells[1])).toMatch(new RegExp(`± ${half.toFixed(1)}$`));
    const { panel, beside } = view.note.sure!;
    expect(plain(panel!.told)).toBe(`The pitch of F4 as found: ± ${half.toFixed(1)} cents.`);
    expect(panel!.parts[0]).toMatchObject({ label: 'model of the whole horn', kind: 'model' });
    expect(panel!.next[0].link?.href).toBe('#played');
    expect(beside).toBe('');
  });

  it('tells what playing would leave: the parts that are not the whole horn, its air and its mouthpiece', () => {
    const { plusMinus, wholeHorn, readings } = found.scale.sure!.found[f4]!.budget;
    const ofTheDay = readings.filter(({ label, pad }) => pad === null && !label.startsWith('travel'));
    const gone = Math.hypot(wholeHorn, ...ofTheDay.map(({ effect }) => effect));
    const text = plain(whole(found).note.sure!.panel!.next[0].text);
    expect(text).toContain(`in place of ± ${gone.toFixed(1)} cents of whole horn`);
    expect(text).toContain(`keep ± ${Math.sqrt(plusMinus ** 2 - gone ** 2).toFixed(1)} cents`);
  });

  it('gives moves their ± once the hand rests, and keeps the pitches’ meanwhile', () => {
    const higher = propose(found, 11);
    const moving = { ...higher, scale: moveArrived(higher.scale, moveScale(prepared, { e: 11 })) };
    const before = whole(moving);
    expect(before.live.plusMinus.move.every((half) => half === null)).toBe(true);
    expect(before.live.plusMinus.pitch).toEqual(whole(found).live.plusMinus.pitch);
    expect(before.note.sureWaits).toBe(true);
    const rested = { ...moving, scale: surely(handRested(moving.scale), { e: 11 }) };
    const view = whole(rested);
    const half = rested.scale.sure!.moves[f4]!.budget.plusMinus;
    expect(view.live.plusMinus.move[at(view, 'F4')]).toBe(half);
    expect(plain(view.note.told)).toContain(`± ${half.toFixed(1)})`);
    expect(plain(view.note.sure!.panel!.told)).toContain('How far F4 moves: ±');
    expect(view.note.sureWaits).toBe(false);
  });
});

describe('the scale’s chart', () => {
  const { chart } = whole();
  const place = placeScale(chart, { width: 860, height: 420 });

  it('finds the note under a pointer, at every note', () => {
    chart.marks.forEach((mark, i) => expect(nearestMark(chart, place, xPx(chart, place, mark.x))).toBe(i));
  });

  it('keeps its rows apart and draws what lies beyond at the edge', () => {
    const { pitch, move, strength, cutoff } = place.panels;
    expect([...pitch, ...move, ...strength, ...cutoff]).toEqual(
      [...pitch, ...move, ...strength, ...cutoff].sort((a, b) => a - b),
    );
    const [low, high] = chart.panels.pitch.range;
    expect(yPx(chart, place, 'pitch', high + 50)).toEqual({ y: pitch[0], beyond: 'above' });
    expect(yPx(chart, place, 'pitch', low - 50)).toEqual({ y: pitch[1], beyond: 'below' });
    expect(yPx(chart, place, 'pitch', (low + high) / 2).y).toBeCloseTo((pitch[0] + pitch[1]) / 2, 9);
  });

  it('scales in steps around all values, never narrower than asked', () => {
    expect(steppedRange([0.2, 41], 10, 10)).toEqual([-10, 50]);
    expect(steppedRange([3, 3.1], 10, 30)).toEqual([-10, 20]);
    expect(steppedRange([], 10, 10)).toEqual([0, 10]);
  });
});

describe('the map’s shades', () => {
  it('deepen with the size, in one hue for sharper and another for flatter', () => {
    const depth = (cents: number): number => Number(/-(\d)\)$/.exec(mapShade(cents).ground)![1]);
    const steps = [0.05, 0.2, 1, 2, 4].map(depth);
    expect(steps).toEqual([...new Set(steps)].sort((a, b) => a - b));
    expect(mapShade(1).ground).not.toBe(mapShade(-1).ground);
    expect(mapShade(9)).toEqual(mapShade(4));
  });

  it('carry ink up to the middle and sheet beyond, as the palette has them readable', () => {
    for (let cents = -4; cents <= 4; cents += 0.05) {
      const { ground, ink } = mapShade(cents);
      const depth = Number(/-(\d)\)$/.exec(ground)?.[1] ?? 0);
      expect([cents, ink]).toEqual([cents, depth <= 4 ? 'var(--vw-ink)' : 'var(--vw-sheet)']);
    }
  });

  it('leave bare what is next to nothing, and never write a minus nought', () => {
    expect([0, 0.04, -0.04, null, 1.46, -0.25].map(mapText)).toEqual(['', '', '', '?', '1.5', '−0.3']);
  });
});
