import { describe, expect, it } from 'vitest';
import { decibels, heightOrLeakSentence } from '../../src/documents/height-or-leak-words.ts';
import { answerArrived, answerAsked } from '../../src/ui/state/asked-answer.ts';
import { makeBenchState, type BenchState } from '../../src/ui/state/bench-state.ts';
import { leaksOf, type LeakFault } from '../../src/ui/state/leak-fault.ts';
import { askedAbout, atLink, atPad, faultOn, followInHand, withGap } from '../../src/ui/state/leaks-state.ts';
import { comeDownSentence } from '../../src/ui/views/regulation/leaks/beside.model.ts';
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

/** The view once a note has been compared. */
function compared(fingeringId = 'E4', unit: BenchState['unit'] = 'mm') {
  const report = answerRegulation('height or leak', {
    ...REGULATION_REQUESTS['height or leak'],
    fingeringId,
  });
  const beside = answerArrived(answerAsked(fresh.leaks.beside, 1), 1, fresh.hornId, report);
  const leaks = { ...askedAbout(fresh.leaks, fingeringId), beside };
  return { report, view: makeLeaksView({ ...fresh, unit, leaks }) };
}

const byE: LeakFault = { ...TWO_PAPERS, gapMm: 0.1, source: { kind: 'link', driver: 'e', shuts: 'late' } };

describe('height beside leak', () => {
  const { report, view } = compared();
  const beside = view.beside!;

  it('says first what to look for, as the terminal says it', () => {
    expect(plain(beside.headline)).toBe(heightOrLeakSentence(report));
    expect(beside.reasons.map(({ kind }) => kind)).toEqual(['leak-loss', 'height-gain']);
    for (const { figure, budget } of beside.reasons) {
      expect(beside.headline).toContain(figure);
      expect(budget!.in).toBe('dB');
    }
  });

  it('lists keys and pads as the report ranks them, each number with its ± and its reason', () => {
    expect(beside.heights.map(({ pad }) => pad)).toEqual(report.heights.map(({ pad }) => pad));
    const rows = [...beside.leaks, ...beside.lesser];
    expect(rows.map(({ pad }) => pad)).toEqual(report.leaks.map(({ pad }) => pad));
    rows.forEach(({ one, two }, i) => {
      const [atOne, atTwo] = report.leaks[i].at;
      expect(plain(one.text)).toBe(decibels(atOne.lostDb!, atOne.lostDbSides!));
      expect(plain(two.text)).toBe(decibels(atTwo.lostDb!, atTwo.lostDbSides!));
      expect(two.reason!.budget!.parts).toBe(atTwo.lostDbBudget);
    });
  });

  it('draws both lists on one scale', () => {
    const [worst] = beside.leaks;
    expect(worst.shareTwo).toBe(1);
    const perDb = 1 / report.leaks[0].at[1].lostDb!;
    expect(worst.shareOne).toBeCloseTo(report.leaks[0].at[0].lostDb! * perDb, 12);
    expect(beside.heights[0].share).toBeCloseTo(report.heights[0].gainDb! * perDb, 12);
  });

  it('waits for the note asked about, and names the key it speaks under', () => {
    const other = compared('E4').report;
    const answer = answerArrived(answerAsked(fresh.leaks.beside, 1), 1, fresh.hornId, other);
    const asked = { ...askedAbout(fresh.leaks, 'G4'), beside: answer };
    expect(makeLeaksView({ ...fresh, leaks: asked }).beside).toBeNull();
    expect(view.speaksUnder).toBe('d');
    expect(makeLeaksView({ ...fresh, leaks: askedAbout(fresh.leaks, 'Bb3') }).speaksUnder).toBe('');
  });

  it('follows the unit of the bench', () => {
    const inches = compared('E4', 'thou').view.beside!;
    expect(plain(inches.heights[0].stands)).toMatch(/^0\.315 ± 0\.008 in$/);
  });
});

describe('whether the keys a note hears can come down', () => {
  const [d, lowC] = compared().report.heights;
  const at = (height: typeof d, foundMm: number): typeof d => ({ ...height, foundMm });

  it('is no where they stand below enough or at it', () => {
    expect(comeDownSentence([d, lowC], 'E4', 'mm')).toBe(
      'No key can come down for nothing on E4: D stands below enough, low C stands at enough.',
    );
  });

  it('is by what they stand above it, with its ± and what that costs', () => {
    const high = at(d, d.enoughMm + 2);
    expect(plain(comeDownSentence([high, lowC], 'E4', 'mm'))).toMatch(
      /^To enough may come down: D by 2\.0 ± 0\.\d mm \(0\.079 in\), for −0\.03 ± 0\.01 dB\. Not the others: low C stands at enough\.$/,
    );
    expect(comeDownSentence([at(d, d.enoughMm + 0.1)], 'E4', 'mm')).toMatch(/^No key can/);
  });

  it('is not said where the note hears no key', () => {
    expect(comeDownSentence([], 'B♭3', 'mm')).toBe('');
  });
});

describe('the note the player asks about', () => {
  const under = (keyId: string): string | undefined => ({ e: 'F4', d: 'E4' })[keyId];
  const start = { hornId: 'h', keyId: 'e', noteId: 'F4' };
  const followed = followInHand(fresh.leaks, start, under);
  const noteOf = (leaks: typeof fresh.leaks): string => leaks.limit.fingeringId;

  it('is that under the key studied, until a note is picked or another key is taken up', () => {
    expect(noteOf(followed)).toBe('F4');
    expect(followInHand(followed, { ...start }, under)).toBe(followed);
    const key = followInHand(followed, { ...start, keyId: 'd' }, under);
    expect(noteOf(key)).toBe('E4');
    expect(noteOf(followInHand(key, { ...start, keyId: 'd', noteId: 'G5' }, under))).toBe('G5');
  });

  it('stays what was chosen on the page while nothing else is taken up, and on another horn', () => {
    const chosen = askedAbout(followed, 'Bb3');
    expect(noteOf(followInHand(chosen, start, under))).toBe('Bb3');
    expect(noteOf(followInHand(chosen, { ...start, hornId: 'other', keyId: 'd' }, under))).toBe('Bb3');
  });

  it('stays where nothing speaks under the key', () => {
    expect(noteOf(followInHand(followed, { ...start, keyId: 'vent' }, under))).toBe('F4');
  });
});

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

  it('tells beside every place what it is sorted by', () => {
    for (const row of view.rows) {
      const from = report.rows.find((r) => r.pad === row.pad && r.by === row.by)!;
      const most = Math.max(0, ...from.cells.map((cell) => cell?.lostDb ?? 0));
      expect(Math.abs(Number(row.most) - most)).toBeLessThan(HALF_TENTH_DB);
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
