import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import {
  arcGap,
  askOpening,
  changePads,
  findLargestLeak,
  fitPads,
  makeAirColumn,
  mapLeaks,
  planRegulation,
  seatLeak,
  studyHeightOrLeak,
  studyLeak,
  studyLinks,
  USUAL_STOCK,
} from '../../src/acoustics/index.ts';
import type { HeightOrLeakReport } from '../../src/documents/height-or-leak-report.ts';
import type { LargestLeakReport, LeakMapReport, LeakReport } from '../../src/documents/leak-report.ts';
import { plusMinusOf } from '../../src/documents/plus-minus.ts';
import type { AskedOpeningReport, LinksReport } from '../../src/documents/links-report.ts';
import type { PadChangeReport } from '../../src/documents/pad-change-report.ts';
import type { PadFitsReport } from '../../src/documents/pad-fit-report.ts';
import type { RegulationReport } from '../../src/documents/regulation-report.ts';
import type { HornAndSetup } from '../../src/documents/to-acoustics.ts';
import { demoDocument, demoHorn, fingeringOf } from '../acoustics/demo-horns.ts';
import { run } from './run.ts';

const ALTO = 'datasets/horns/demo-alto.json';
const { horn, setup } = demoHorn('alto');
const air = makeAirColumn();
const AUXILIARY = 'f-sharp-auxiliary';
const MM = 1e-3;
const DIGITS = 9;

function report<T>(...args: readonly string[]): T {
  const { code, out, err } = run([...args, '--json']);
  expect([code, err]).toEqual([0, '']);
  return JSON.parse(out) as T;
}

/** The demo alto with no cup measured. */
function withoutCups(): HornAndSetup {
  const { horn: document, setup: as } = demoDocument('alto');
  const holes = document.holes.map((hole) => {
    if (hole.key === null) return hole;
    const { hingeMm, hingeHeightMm } = hole.key;
    return { ...hole, key: { hingeMm, hingeHeightMm } };
  });
  const keys = as.keys.map(({ pad, openingMm, measuredAt, padDiameterMm, padThicknessMm }) => ({
    ...{ pad, openingMm, measuredAt, padDiameterMm, padThicknessMm },
  }));
  return { horn: { ...document, holes }, setup: { ...as, keys } };
}

/** A horn and its setup as a file. */
function asFile({ horn: document, setup: as }: { readonly horn: unknown; readonly setup: unknown }): string {
  return JSON.stringify({
    ...{ kind: 'ventwright library', version: 1, visits: [] },
    horns: [{ id: 'h', document }],
    setups: [{ id: 's', hornId: 'h', document: as }],
  });
}

describe('leak', () => {
  it('gives the core’s own losses in bench units', () => {
    const told = report<LeakReport>(
      'leak',
      ALTO,
      '--pad',
      '10',
      '--gap-mm',
      '0.05',
      '--arc-deg',
      '90',
      '--at',
      'back',
    );
    const { notes } = studyLeak(
      horn,
      setup,
      seatLeak(AUXILIARY, arcGap(0.05 * MM, Math.PI / 2, 'back')),
      air,
    );
    expect(told.notes.map((n) => n.fingering)).toEqual(notes.map((n) => n.fingering.id));
    notes.forEach(({ played }, i) => {
      if (!played.found) throw new Error('played');
      expect(told.notes[i].lostDb).toBeCloseTo(played.loss.lostDb, DIGITS);
      expect(told.notes[i].changeCents).toBeCloseTo(played.loss.cents, DIGITS);
      expect(told.notes[i].riseChangeMs).toBeCloseTo(1000 * played.loss.riseTime, DIGITS);
    });
    expect(told.worst).toBe('Bb3');
    expect(told.notes[0].pads).toEqual([{ pad: AUXILIARY, gapMm: 0.05 }]);
  });

  it('finds how far out of regulation F♯ auxiliary may be under its drivers before low D loses 3 dB', () => {
    const told = report<LargestLeakReport>(
      'leak',
      ALTO,
      '--pad',
      AUXILIARY,
      '--by',
      'all',
      '--note',
      'D4',
      '--lost-db',
      '3',
    );
    const found = findLargestLeak(
      horn,
      setup,
      (left) => ({
        seats: new Map(),
        screws: ['d', 'e', 'f'].map((driver) => ({ driver, driven: AUXILIARY, left })),
      }),
      air,
      { fingering: fingeringOf('D4'), lostDb: 3 },
    );
    if (!found.found) throw new Error(found.reason);
    expect(told.gapMm).toBeCloseTo(found.gap / MM, DIGITS);
    expect(told.papers).toBeCloseTo(found.gap / MM / 0.025, DIGITS);
    const alone = report<LargestLeakReport>(
      'leak',
      ALTO,
      '--pad',
      AUXILIARY,
      '--by',
      'e',
      '--note',
      'D4',
      '--lost-db',
      '3',
    );
    expect(alone).toMatchObject({
      gapMm: null,
      reason: 'D4 is not touched: it does not shut the pad, or shuts it well by another way',
    });
  });

  it('takes a link that is early as minus', () => {
    const told = report<LeakReport>('leak', ALTO, '--pad', '10', '--by', '7', '--gap-mm=-0.05');
    expect(told.notes[0].pads.map((p) => p.pad)).toEqual(['e']);
  });

  it('maps a gap over every place', () => {
    const told = report<LeakMapReport>('leak', ALTO, '--map', '--gap-mm', '0.025');
    const map = mapLeaks(horn, setup, 0.025 * MM, air);
    expect(told.rows).toHaveLength(map.rows.length);
    map.rows.forEach(({ cells }, i) => {
      expect(told.rows[i].cells.map((c) => c === null)).toEqual(cells.map((c) => c === null));
    });
  });

  it('plays what a setup says its links leave, and asks for a pad where it says nothing', () => {
    expect(run(['leak', ALTO]).err).toContain('missing --pad; expected a pad, or a setup that says');
    const links = [{ driver: 'a', driven: 'bis', drivenGapMm: 0.1 }];
    const { setup: document } = demoDocument('alto');
    const sparse = { ...document, keys: [], links };
    const { code, out } = run(['leak', ALTO, '--setup', '-', '--json'], JSON.stringify(sparse));
    expect(code).toBe(0);
    expect((JSON.parse(out) as LeakReport).notes.every((n) => n.pads[0].pad === 'bis')).toBe(true);
  });

  it.each([
    [['--pad', '10'], 'missing --gap-mm; expected 0.001 to 2 mm'],
    [['--pad', '99', '--gap-mm', '0.05'], 'invalid --pad: "99"; expected 1 (low-b-flat)'],
    [['--pad', '10', '--gap-mm', 'wide'], 'invalid --gap-mm: wide mm; expected 0.001 to 2 mm'],
    [
      ['--pad', '10', '--gap-mm', '0.05', '--arc-deg', '400'],
      'invalid --arc-deg: 400 °; expected 1 to 360 °',
    ],
    [['--pad', '10', '--gap-mm', '0.05', '--at', 'side'], 'invalid --at: "side"; expected front or back'],
    [
      ['--pad', '10', '--gap-mm', '0.05', '--by', 'g'],
      '"g" does not drive f-sharp-auxiliary; expected d, e, f',
    ],
    [['--pad', '7', '--gap-mm', '0.05', '--by', 'all'], 'expected a pad that a link drives'],
    [['--pad', '10', '--lost-db', '3'], 'missing --note'],
  ])('refuses %j in a sentence', (words, sentence) => {
    const { code, err } = run(['leak', ALTO, ...words]);
    expect([code, err]).toEqual([2, expect.stringContaining(sentence)]);
  });

  it('says in a sentence what suffers most', () => {
    expect(run(['leak', ALTO, '--pad', '10', '--gap-mm', '0.05']).out).toMatch(
      /^Bb3 suffers most: it loses 4\.\d dB\. 18 fingerings/,
    );
  });
});

describe('leak, beside heights', () => {
  it('gives the core’s own comparison in bench units with its ±, asked by note or by key', () => {
    const told = report<HeightOrLeakReport>('leak', ALTO, '--heights', '--note', 'E4');
    const study = studyHeightOrLeak(horn, setup, fingeringOf('E4'), makeAirColumn({ mouthpieceC: 26.85 }), {
      plusMinus: plusMinusOf(demoHorn('alto')),
    })!;
    expect(told.verdict).toBe(study.verdict);
    expect(told.heights.map(({ pad }) => pad)).toEqual(study.heights.map(({ pad }) => pad));
    expect(told.leaks.map(({ pad }) => pad)).toEqual(study.leaks.map(({ pad }) => pad));
    const [height] = told.heights;
    expect(height.enoughMm).toBeCloseTo(study.heights[0].enough / MM, DIGITS);
    expect(height.gainDb).toBeCloseTo(study.heights[0].change!.gainDb, DIGITS);
    expect(height.gainDbBudget!.plusMinus).toBeCloseTo(
      study.heights[0].change!.gainBudget!.plusMinus,
      DIGITS,
    );
    const [one, two] = told.leaks[0].at;
    expect([one.papers, two.papers]).toEqual([1, 2]);
    expect(two.lostDb).toBeCloseTo(study.leaks[0].at[1].cost!.lostDb, DIGITS);
    expect(report<HeightOrLeakReport>('leak', ALTO, '--heights', '--key', '6')).toEqual(told);
  });

  it('says first what to look for, then both lists', () => {
    const { code, out } = run(['leak', ALTO, '--heights', '--note', 'E4']);
    expect(code).toBe(0);
    expect(out).toMatch(
      /^For E4, look for a leak first: two papers under high F♯ would cost 4\.9 \+0\.8 −0\.6 dB; raising D to enough would bring 0\.03 ± 0\.01 dB\.\n/,
    );
    expect(out).toMatch(/\nd +8\.0 ± 0\.2 +9\.1 ± 0\.3 +0\.03 ± 0\.01 dB/);
    expect(out).toMatch(/\nf-sharp-auxiliary +fingers +0\.20 \+0\.05 −0\.03 dB +1\.5 \+0\.3 −0\.2 dB/);
  });

  it('asks for a note or a key, not both', () => {
    const { code, err } = run(['leak', ALTO, '--heights', '--note', 'E4', '--key', '6']);
    expect([code, err.trim()]).toEqual([2, 'expected --note or --key; got both']);
    expect(run(['leak', ALTO, '--heights']).err).toMatch(/--note/);
  });
});

describe('links', () => {
  it('gives every link’s allowance and lost motion in bench units', () => {
    const told = report<LinksReport>('links', ALTO);
    studyLinks(horn, setup).links.forEach(({ link, allows, lostAtFront }, i) => {
      expect(told.links[i]).toMatchObject({ driver: link.driver, driven: link.driven });
      if (allows === null) expect(told.links[i].allowsFrontMm).toBeNull();
      else expect(told.links[i].allowsFrontMm).toBeCloseTo(allows / MM, DIGITS);
      if (lostAtFront !== null) expect(told.links[i].lostAtFrontMm).toBeCloseTo(lostAtFront / MM, DIGITS);
    });
  });

  it('follows another setup, its link screws in papers', () => {
    const { setup: document } = demoDocument('alto');
    const sparse = {
      ...document,
      keys: [{ pad: 'e', openingMm: 6, measuredAt: 'front' }],
      links: [{ driver: 'e', driven: AUXILIARY, drivenGapMm: 0.05 }],
    };
    const { code, out } = run(['links', ALTO, '--setup', '-', '--json'], JSON.stringify(sparse));
    expect(code).toBe(0);
    const told = JSON.parse(out) as LinksReport;
    const held = told.pads.find((p) => p.pad === AUXILIARY)!;
    expect(held.ruledBy).toBe('e');
    expect(held.standsFrontMm).toBeCloseTo(6 * 0.927 + 0.05, DIGITS);
    const e = told.together.find((t) => t.driver === 'e')!;
    expect(e.driven.find((d) => d.pad === AUXILIARY)!.leftPapers).toBeCloseTo(2, DIGITS);
    const text = run(['links', ALTO, '--setup', '-'], JSON.stringify(sparse)).out;
    expect(text).toContain('e holds it below its own 7.2 mm (0.283 in)');
    expect(text).toContain('e leaves f-sharp-auxiliary 2.0 papers open at its front.');
  });

  it('says what an opening needs of the others', () => {
    const told = report<AskedOpeningReport>('links', ALTO, '--pad', '15', '--front-mm', '6');
    const { stops } = askOpening(horn, setup, 'bis', 6 * MM);
    expect(told.stops.map((s) => s.pad)).toEqual(stops.map((s) => s.pad));
    stops.forEach((s, i) => expect(told.stops[i].raiseMm).toBeCloseTo(s.raise / MM, DIGITS));
    for (const { pad, neededBudget, raiseBudget } of told.stops) {
      // What is asked is meant: only what its stop gives was read.
      expect(neededBudget.plusMinus > 0).toBe(pad !== 'bis');
      expect(raiseBudget.plusMinus).toBeGreaterThan(neededBudget.plusMinus);
    }
    expect(run(['links', ALTO, '--pad', '15', '--front-mm', '3']).out).toContain(
      'bis has 3.0 mm (0.118 in) already',
    );
    expect(run(['links', ALTO, '--pad', '15', '--front-mm', '6']).out).toMatch(
      /must open \d\.\d ± \d\.\d mm \(0\.\d+ in\), \d\.\d ± \d\.\d mm \(0\.\d+ in\) more/,
    );
  });
});

describe('padfit', () => {
  it('fits a cup given by hand from the stock given', () => {
    const stock = [
      '--stock-mm',
      '4.2,4.6',
      '--bed-mm',
      '0.1,0.8',
      '--tolerance-mm',
      '0.05',
      '--seat-mm',
      '0.15',
    ];
    const told = report<PadFitsReport>('padfit', ALTO, '--key', '7', '--floor-mm', '4.9', ...stock);
    const cup = { pad: 'e', floor: 4.9 * MM, padDiameter: 34 * MM };
    const [fit] = fitPads(horn, [cup], {
      ...{ ...USUAL_STOCK, thicknesses: [4.2 * MM, 4.6 * MM] },
      ...{ bed: { least: 0.1 * MM, most: 0.8 * MM }, tolerance: 0.05 * MM, seat: 0.15 * MM },
    });
    if (!fit.fits) throw new Error('fits');
    expect(told.cups[0].choice.thicknessMm).toBeCloseTo(fit.choice.thickness / MM, 6);
    expect(told.cups[0].choice.bedMm).toBeCloseTo(fit.choice.bed / MM, 6);
    expect(told.order).toEqual([
      { diameterMm: 34, thicknessMm: 4.6, thicknessThou: expect.closeTo(181.1, 1), count: 1, pads: ['e'] },
    ]);
  });

  it('takes floors from the horn, measured or as pad, bed and seat add up, and names the rest', () => {
    const { horn: document, setup: as } = withoutCups();
    const holes = document.holes.map((h) =>
      h.id === 'e' ? { ...h, key: { ...h.key!, cupFloorMm: 4.9, cupDiameterMm: 34.7 } } : h,
    );
    const keys = as.keys.map((k) => (k.pad === 'd' ? { ...k, adhesiveBedMm: 0.6, seatMm: 0.2 } : k));
    const file = asFile({ horn: { ...document, holes }, setup: { ...as, keys } });
    const told = JSON.parse(run(['padfit', '-', '--json'], file).out) as PadFitsReport;
    expect(told.cups.map((c) => [c.pad, c.floorFrom])).toEqual([
      ['d', 'derived'],
      ['e', 'measured'],
    ]);
    expect(told.cups[0].floorMm).toBeCloseTo(4.5, DIGITS);
    expect(told.cups[1].choice.diameterMm).toBe(34.5);
    expect(told.notMeasured).toHaveLength(horn.holes.filter((h) => h.hinge !== null).length - 2);
  });

  it('says plainly where no floor is known, and where nothing fits', () => {
    const bare = asFile(withoutCups());
    expect(run(['padfit', '-'], bare).out).toContain('no cup floor is known');
    expect(run(['padfit', '-', '--key', '7'], bare).err).toContain('missing --floor-mm');
    const { out } = run(['padfit', ALTO, '--key', '7', '--floor-mm', '2']);
    expect(out).toMatch(
      /nothing fits\. Nearest .* mm too thick: it touches at the back first and leaves \d\.\d\d mm/,
    );
    expect(run(['padfit', ALTO, '--bed-mm', '0.2']).err).toContain('invalid --bed-mm: 1 numbers');
    expect(run(['padfit', ALTO, '--stock-mm', '4,thick']).err).toContain('invalid --stock-mm: thick mm');
  });
});

describe('padchange', () => {
  it('gives the core’s own change in bench units', () => {
    const told = report<PadChangeReport>('padchange', ALTO, '--thickness-mm', '4.6', '--key', '7');
    const done = changePads(horn, setup, new Map([['e', 4.6 * MM - setup.keys.get('e')!.padThickness]]), air);
    expect(told.seating).toBe('levelled');
    expect(told.pads[0].after.frontMm).toBeCloseTo(done.pads[0].after.front / MM, DIGITS);
    expect(told.pads[0].restored!.frontMm).toBeCloseTo(done.pads[0].restored!.front / MM, DIGITS);
    const { footArmMm, hingeMm } = demoDocument('alto').horn.holes.find((h) => h.id === 'e')!.key!;
    const foot = footArmMm! / (hingeMm + setup.keys.get('e')!.padRadius / MM);
    expect(told.pads[0].restored!.thinnerCorkMm).toBeCloseTo(
      (foot * done.pads[0].restored!.raise) / MM,
      DIGITS,
    );
    done.change.notes.forEach(({ change }, i) => {
      expect(told.notes[i].changeCents).toBeCloseTo(change!.cents, DIGITS);
    });
    expect(told.links.map((l) => `${l.driver} ${l.driven}`)).toEqual([`e ${AUXILIARY}`]);
  });

  it('changes every pad unless told which, and drops them in where told', () => {
    const told = report<PadChangeReport>('padchange', ALTO, '--thickness-mm', '4.6', '--dropped-in');
    expect(told.seating).toBe('dropped in');
    expect(told.pads).toHaveLength(setup.keys.size);
  });

  it('needs a thickness', () => {
    const { code, err } = run(['padchange', ALTO, '--key', '7']);
    expect([code, err.trim()]).toEqual([2, 'missing --thickness-mm; expected 0.5 to 12 mm']);
  });
});

describe('order', () => {
  const lower = JSON.stringify({
    ...{ kind: 'ventwright setup', version: 2, name: 'E higher', origin: 'measured' },
    keys: [{ pad: 'e', openingMm: 9, measuredAt: 'front' }],
  });
  const order = (...more: readonly string[]): RegulationReport => {
    const { code, out, err } = run(['order', ALTO, '--setup', '-', ...more, '--json'], lower);
    expect([code, err]).toEqual([0, '']);
    return JSON.parse(out) as RegulationReport;
  };

  it('lists the moves of the plan, each with its number, test and tolerance', () => {
    const told = order('--seats-mm', '10=0.05');
    const e = setup.keys.get('e')!;
    const { moves } = planRegulation(
      horn,
      { setup, screws: [], seats: new Map([[AUXILIARY, 0.05 * MM]]) },
      {
        setup: { keys: new Map(setup.keys).set('e', { ...e, opening: { at: 'front', height: 9 * MM } }) },
        ...{ screws: [], seats: new Map() },
      },
    );
    expect(told.moves.map((m) => m.id)).toEqual(moves.map((m) => m.id));
    expect(told.moves[0].sentence).toBe(
      'Seat F♯ auxiliary: 2.0 papers open. Test: light all round, its drivers’ arms backed off; nothing over 0.5 of a paper.',
    );
    expect(told.moves.find((m) => m.id === 'height e')!.sentence).toMatch(
      /^Raise E from 8\.0 mm \(0\.315 in\) to 9\.0 mm \(0\.354 in\) at the front, foot cork 0\.25 mm thinner\. Test: wedge at the front, ±0\.2 mm\.$/,
    );
    const last = told.moves.at(-1)!;
    expect(last).toMatchObject({ id: `link e > ${AUXILIARY}`, fromMm: null, again: true });
    expect(last.after).toEqual([{ pad: 'e', raised: true }]);
    expect(last.lostMotion!.moreMm).toBeCloseTo(1, DIGITS);
    expect(last.sentence).toMatch(
      /^Set F♯ auxiliary to E again after raising E: both shut at once\. Test: .+\. E goes 1\.2 ± 0\.\d mm \(0\.049 in\) at the front before F♯ auxiliary stirs, 1\.0 ± 0\.\d mm more than as found\.$/,
    );
  });

  it('lists links that nobody read for a test', () => {
    const linked = horn.keywork.links.map(({ driver, driven }) => `link ${driver} > ${driven}`);
    const told = order();
    expect(
      [...told.moves, ...told.untested].flatMap(({ id, kind }) => (kind === 'link' ? [id] : [])).sort(),
    ).toEqual(linked.sort());
    expect(told.untested.find(({ id }) => id === 'link a > bis')!.sentence).toBe(
      'Test A to bis, never read: papers under both, within 1.0 paper.',
    );
  });

  it('plans anew from what was done', () => {
    const all = order().moves.map((m) => m.id);
    expect(all).toEqual(['height e', `link e > ${AUXILIARY}`]);
    const told = order('--done-mm', `height e=9.1,link e > ${AUXILIARY}=0.1`);
    expect(told.done.map((d) => d.within)).toEqual([true, false]);
    expect(told.moves.map((m) => [m.id, m.again])).toEqual([[all[1], false]]);
    expect(told.moves[0].sentence).toBe(
      'Set F♯ auxiliary to E: F♯ auxiliary hangs by 4.0 papers; both shut at once. Test: papers under both, within 1.0 paper.',
    );
    const done = run(
      ['order', ALTO, '--setup', '-', '--done-mm', `height e=9,link e > ${AUXILIARY}=0`],
      lower,
    );
    expect(done.out).toContain('Nothing known is left to do.');
    expect(done.out).toContain('Test A to bis, never read');
  });

  it('takes the gap a link was found with as a fault, unless the setup to be asks for one', () => {
    const { horn: document, setup: as } = demoDocument('alto');
    const found = { driver: 'a', driven: 'bis', drivenGapMm: 0.1 };
    const file = (setups: readonly unknown[]): string =>
      JSON.stringify({
        ...{ kind: 'ventwright library', version: 1, visits: [] },
        horns: [{ id: 'h', document }],
        setups: setups.map((s, i) => ({ id: `s${i}`, hornId: 'h', document: s })),
      });
    const wanted = (drivenGapMm: number) => ({ ...found, drivenGapMm });
    const told = (links: readonly unknown[]): string[] => {
      const setups = [
        { ...as, name: 'wanted', keys: [], links },
        { ...as, links: [found] },
      ];
      const path = join(mkdtempSync(join(tmpdir(), 'order-')), 'horn.json');
      writeFileSync(path, file(setups));
      const { out, err } = run(['order', path, '--setup', 'wanted', '--json']);
      expect(err).toBe('');
      return (JSON.parse(out) as RegulationReport).moves.map((m) => m.id);
    };
    expect(told([])).toEqual(['link a > bis']);
    expect(told([wanted(0.08)])).toEqual([]);
  });

  it.each([
    [[], 'missing --setup'],
    [['--setup', '-', '--seats-mm', '10'], 'invalid --seats-mm: "10"; expected a name, =, and a number'],
    [['--setup', '-', '--seats-mm', 'nowhere=0.1'], 'invalid --seats-mm: "nowhere"'],
    [['--setup', '-', '--done-mm', 'height nowhere=3'], 'invalid move: "height nowhere"'],
  ])('refuses %j in a sentence', (words, sentence) => {
    const { code, err } = run(['order', ALTO, ...words], lower);
    expect([code, err]).toEqual([2, expect.stringContaining(sentence)]);
  });
});
