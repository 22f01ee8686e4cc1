import { describe, expect, it } from 'vitest';
import { answerArrived, answerAsked } from '../../src/ui/state/asked-answer.ts';
import { makeBenchState, type BenchState } from '../../src/ui/state/bench-state.ts';
import { leaksOf, type LeakFault } from '../../src/ui/state/leak-fault.ts';
import { atLink, atPad, faultOn, withGap } from '../../src/ui/state/leaks-state.ts';
import { faultWords } from '../../src/ui/views/regulation/leaks/leaks-words.ts';
import {
  makeLeaksView,
  placeKey,
  type PlayedLeak,
} from '../../src/ui/views/regulation/leaks/leaks-view.model.ts';
import { answerRegulation, REGULATION_REQUESTS, TWO_PAPERS } from './demo-regulation.ts';
import { onTheBench, plain } from './demo.ts';

/** Printed digits: a tenth of a decibel, a whole one from ten up. */
const HALF_TENTH_DB = 0.0501;
const HALF_DB = 0.501;

const fresh: BenchState = {
  ...makeBenchState([{ id: 'demo-alto', label: 'Demo alto' }], onTheBench('alto')),
  view: 'leaks',
};

/** The view once a leak has been played. */
function playing(fault: LeakFault, limit = { fingeringId: 'D4', lostDb: 3 }) {
  const report = answerRegulation('leak', { ...REGULATION_REQUESTS.leak, fault, limit });
  const answer = answerArrived(answerAsked(fresh.leaks.answer, 1), 1, fresh.hornId, report);
  const state = { ...fresh, leaks: { ...fresh.leaks, fault, limit, answer } };
  return { report, view: makeLeaksView(state), played: makeLeaksView(state).played as PlayedLeak };
}

const byE: LeakFault = { ...TWO_PAPERS, gapMm: 0.1, source: { kind: 'link', driver: 'e', shuts: 'late' } };

describe('the page of leaks', () => {
  it('waits until a leak has been played', () => {
    const view = makeLeaksView(fresh);
    expect(view.played).toBeNull();
    expect(view.map).toBeNull();
    expect(view.waiting).toBe(true);
  });

  it('says what the leak costs the note it hurts most, as the study has it', () => {
    const { report, played } = playing(TWO_PAPERS);
    const worst = report.leak.notes.find((n) => n.fingering === report.leak.worst)!;
    expect(plain(played.answer.headline)).toBe(
      `2 papers (0.050 mm) all round under F♯ auxiliary costs B♭3 ${worst.lostDb!.toFixed(1)} dB, more than any other note.`,
    );
    expect(Math.max(...report.leak.notes.map((n) => n.lostDb ?? Infinity))).toBe(worst.lostDb);
  });

  it('says how wide it may be, and a wider leak than that costs the limit’s note more', () => {
    const { report, played } = playing(TWO_PAPERS);
    const gapMm = report.largest.gapMm!;
    expect(plain(played.answer.standing)).toContain(`(${gapMm.toFixed(3)} mm)`);
    const lostAt = (mm: number): number =>
      playing({ ...TWO_PAPERS, gapMm: mm }).report.leak.notes.find((n) => n.fingering === 'D4')!.lostDb!;
    expect(lostAt(gapMm * 0.98)).toBeLessThan(3);
    expect(lostAt(gapMm * 1.02)).toBeGreaterThan(3);
  });

  it('says why where a note bears any leak', () => {
    const { played } = playing(byE);
    expect(plain(played.answer.standing)).toMatch(/^D4 is not touched/);
    expect(plain(playing(byE, { fingeringId: 'F#4', lostDb: 3 }).played.answer.standing)).toMatch(
      /^Before F♯4 loses 3 dB, F♯ auxiliary may hang by/,
    );
  });

  it('draws a bar for every note, as high as what it loses, and the limit among them', () => {
    const { report, played } = playing(TWO_PAPERS);
    expect(played.columns).toHaveLength(44);
    const shareOf = (id: string): number => played.columns.find((c) => c.id === id)!.share;
    const lostOf = (id: string): number => report.leak.notes.find((n) => n.fingering === id)!.lostDb!;
    expect(shareOf('Bb3') / shareOf('D4')).toBeCloseTo(lostOf('Bb3') / lostOf('D4'), 9);
    expect(shareOf('Bb3') / played.limitShare).toBeCloseTo(lostOf('Bb3') / 3, 9);
    expect(played.columns.filter((c) => c.picked).map((c) => c.id)).toEqual(['D4']);
    expect(played.columns.every(({ share }) => share >= 0 && share <= 1)).toBe(true);
  });

  it('tells a table of what every touched note loses', () => {
    const { report, played } = playing(TWO_PAPERS);
    expect(played.rows).toHaveLength(report.leak.notes.length);
    expect(played.rows[0].db).toBe(`−${report.leak.notes[0].lostDb!.toFixed(1)}`);
  });

  it('offers the pad’s own seat and the links onto it as causes', () => {
    const { sources } = makeLeaksView(fresh);
    expect(sources.map((s) => s.value)).toEqual(['seat', 'd', 'e', 'f', 'all links']);
    const bell = makeLeaksView({ ...fresh, leaks: atPad(fresh.leaks, 'low-b-flat') });
    expect(bell.sources.map((s) => s.value)).toEqual(['seat']);
  });

  it('keeps a refused text with what is still in use', () => {
    const gapText = { text: 'much', problem: 'invalid gap: “much”; expected a gap', value: null };
    const { gap } = makeLeaksView({ ...fresh, leaks: { ...fresh.leaks, gapText } });
    expect(gap.text).toBe('much');
    expect(gap.problem).toContain('Still in use: 2 papers (0.050 mm)');
    expect(makeLeaksView({ ...fresh, leaks: withGap(fresh.leaks, 0.1, null) }).gap.text).toBe('4 papers');
  });
});

describe('a fault', () => {
  const manner = { unit: 'mm' as const, nameOf: (pad: string) => pad };

  it('is told by where and why', () => {
    expect(faultWords({ ...TWO_PAPERS, shape: 'front' }, manner)).toContain('over 90° at the front');
    expect(faultWords(byE, manner)).toContain('the link from e shuts it late');
    const early = { ...byE, source: { kind: 'link', driver: 'e', shuts: 'early' } } as const;
    expect(faultWords(early, manner)).toContain('meets f-sharp-auxiliary early');
  });

  it('is every link at once where no driver is named, late or early', () => {
    const all = { ...byE, source: { kind: 'link', driver: null, shuts: 'early' } } as const;
    const { screws, seats } = leaksOf(all, ['d', 'e', 'f'])(1e-4);
    expect(seats.size).toBe(0);
    expect(screws.map((s) => [s.driver, s.left])).toEqual([
      ['d', -1e-4],
      ['e', -1e-4],
      ['f', -1e-4],
    ]);
  });

  it('goes to what another horn has', () => {
    const links = [{ driver: 'x', driven: 'y' }];
    expect(faultOn(TWO_PAPERS, { pads: ['x', 'y'], links })).toMatchObject({
      pad: 'x',
      source: { kind: 'seat' },
    });
    const there = { ...byE, pad: 'y', source: { kind: 'link', driver: 'x', shuts: 'late' } } as const;
    expect(faultOn(there, { pads: ['x', 'y'], links })).toBe(there);
    expect(
      faultOn({ ...there, source: { ...there.source, driver: 'q' } }, { pads: ['y'], links }).source.kind,
    ).toBe('seat');
  });

  it('stays late or early from link to link', () => {
    const early = { ...fresh.leaks, fault: { ...byE, source: { ...byE.source, shuts: 'early' as const } } };
    expect(atLink(early as typeof fresh.leaks, 'a', 'bis').fault).toMatchObject({
      pad: 'bis',
      source: { kind: 'link', driver: 'a', shuts: 'early' },
    });
  });
});

describe('the map of leaks', () => {
  const report = answerRegulation('leak map');
  const map = answerArrived(answerAsked(fresh.leaks.map, 1), 1, fresh.hornId, report);
  const view = makeLeaksView({ ...fresh, leaks: { ...fresh.leaks, map } }).map!;

  it('has every pad and link, the worst place first', () => {
    expect(view.rows).toHaveLength(report.rows.length);
    const worstOf = (row: (typeof view.rows)[number]): number =>
      Math.max(
        0,
        ...row.cells.map(({ text }) => (text === '✕' ? Infinity : Number(text))).filter((v) => v > 0),
      );
    const worst = view.rows.map(worstOf);
    expect(worst).toEqual([...worst].sort((a, b) => b - a));
  });

  it('writes its numbers in the cells, as the report has them', () => {
    for (const row of view.rows) {
      const from = report.rows.find((r) => r.pad === row.pad && r.by === row.by)!;
      row.cells.forEach(({ text, words }, i) => {
        const db = from.cells[i]?.lostDb ?? 0;
        if (Math.abs(db) < 0.05) expect(text).toBe('');
        else {
          const off = Math.abs(Number(text.replace('+', '-')) - db);
          expect(off).toBeLessThanOrEqual(Math.abs(db) < 9.95 ? HALF_TENTH_DB : HALF_DB);
        }
        expect(words).toContain(view.notes[i].label);
      });
    }
  });

  it('deepens with what is lost, and marks the place in hand', () => {
    const depths = view.legend.map(({ ground }) => Number(/--vw-fall-(\d)/.exec(ground)?.[1] ?? 0));
    expect(depths).toEqual([...new Set(depths)].sort((a, b) => a - b));
    const place = makeLeaksView(fresh).place;
    expect(place).toBe(placeKey('f-sharp-auxiliary', null));
    expect(view.rows.some((row) => placeKey(row.pad, row.by) === place)).toBe(true);
  });
});
