import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import {
  makeAirColumn,
  makeNetwork,
  findFingering,
  playWholeHorn,
  resonanceNear,
  scaleBudgets,
  standingPad,
  strengthAgainstLevel,
  withOpening,
  type WholeHornNote,
} from '../../src/acoustics/index.ts';
import { plusMinusOf } from '../../src/documents/plus-minus.ts';
import { loadHorn } from '../../src/documents/to-acoustics.ts';
import { noteLabel } from '../../src/ui/parts/note-names.ts';
import { ALTO, TENOR } from '../ui/demo.ts';
import { openWorkbench, serveBuiltSite, SIZES, waitForCurve, type BuiltSite } from './built-site.ts';
import { launchBrowser } from './find-browser.ts';
import { faultsByAxe } from './axe.ts';

/** Cents: a resonance followed from its neighbourhood is exact but for rounding, in the browser as in Node. */
const SAME_CENTS = 1e-9;
/** Cents: two roads to one resonance end within the search's own tolerance. */
const SAME_PLUS_MINUS = 1e-5;
/** A share of strength is read off the screen to a whole per cent. */
const WHOLE_PERCENT = 0.5;

/** The layers are placed to whole pixels. */
const ONE_PX = 1;

let browser: Browser;
let site: BuiltSite;

beforeAll(async () => {
  [browser, site] = await Promise.all([launchBrowser(), serveBuiltSite()]);
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
});

/** Opens the scale; whatever goes wrong on the page fails the test that opened it. */
async function open(size: { width: number; height: number } = SIZES.laptop): Promise<Page> {
  const { page, faults } = await openWorkbench(browser, site, size, 'scale');
  onTestFinished(async () => {
    await page.close();
    expect(faults).toEqual([]);
  });
  return page;
}

/** The core's own scale, played here: with some keys' stops otherwise, mm at the front. */
function played(
  proposedMm: Readonly<Record<string, number>> = {},
  documents = ALTO,
  a4 = 440,
): WholeHornNote[] {
  const read = loadHorn(documents);
  if (!read.ok) throw new Error(read.issues[0].message);
  const { horn } = read.value;
  const air = makeAirColumn({ mouthpieceC: documents.setup.airC ?? 26.85 });
  const setup = Object.entries(proposedMm).reduce(
    (now, [id, mm]) => withOpening(now, id, { at: 'front', height: mm / 1000 }),
    read.value.setup,
  );
  const near = new Map(
    playWholeHorn(horn, read.value.setup, air, { a4, answers: false }).flatMap((n) =>
      n.outcome.found ? [[n.fingering.id, n.outcome.resonance.frequency] as const] : [],
    ),
  );
  return playWholeHorn(horn, setup, air, { a4, near });
}

const centsOf = (notes: readonly WholeHornNote[]): Map<string, number> =>
  new Map(notes.map((n) => [n.fingering.id, n.outcome.found ? n.outcome.cents : NaN]));

/** What the drawing library holds of the horn as found, by fingering. */
const found = async (page: Page): Promise<Map<string, number>> =>
  new Map(
    await page.evaluate(() => {
      interface Drawn extends Element {
        data: { name: string; ids: string[]; y: ArrayLike<number> }[];
      }
      const { data } = document.querySelector('vw-scale-chart .vw-chart-host') as Drawn;
      return data
        .filter(({ name }) => name.startsWith('pitch'))
        .flatMap(({ ids, y }) => ids.map((id, i) => [id, y[i]] as const));
    }),
  );

/** What the layer over it holds as proposed, by fingering. */
const proposed = async (page: Page, panel = 'pitch'): Promise<Map<string, number>> =>
  new Map(
    await page
      .locator(`.vw-live [data-panel="${panel}"]`)
      .evaluateAll((marks) =>
        marks.map((m) => [m.getAttribute('data-note')!, Number(m.getAttribute('data-value'))] as const),
      ),
  );

function expectSame(got: ReadonlyMap<string, number>, wanted: ReadonlyMap<string, number>): void {
  expect([...got.keys()].sort()).toEqual([...wanted.keys()].sort());
  for (const [id, value] of got) expect(Math.abs(value - wanted.get(id)!)).toBeLessThanOrEqual(SAME_CENTS);
}

const slider = (page: Page) => page.locator('vw-opening-slider input[type="range"]');
const text = async (page: Page, selector: string): Promise<string> =>
  (await page.locator(selector).innerText()).replaceAll('\u00a0', ' ').replaceAll('\n', ' ').trim();
const label = (id: string): string => noteLabel(id);

async function propose(page: Page, keyId: string, mm: string): Promise<void> {
  await page.locator(`vw-key-strip [data-key="${keyId}"]`).click();
  await page.waitForSelector(`vw-opening-slider[data-key="${keyId}"]`);
  await slider(page).fill(mm);
  await expect.poll(() => slider(page).inputValue()).toBe(mm);
}

describe('the scale, built', () => {
  it('opens at its hash with every note as the core plays it, and says which is widest', async () => {
    const page = await open();
    const wanted = centsOf(played());
    expect(wanted.size).toBe(44);
    expectSame(await found(page), wanted);
    expectSame(await proposed(page), wanted);
    const usual = [...wanted].filter(
      ([id], i, all) => all.findIndex(([other]) => other.split(' ')[0] === id.split(' ')[0]) === i,
    );
    const [widest, cents] = usual.reduce((a, b) => (Math.abs(b[1]) > Math.abs(a[1]) ? b : a));
    const way = cents > 0 ? 'sharp' : 'flat';
    await expect
      .poll(() => text(page, '.ks-answer h1'))
      .toMatch(
        new RegExp(
          `^As found, the widest note is ${label(widest)}, ${Math.round(Math.abs(cents))} ± \\d+ cents ${way}; the low register lies within ±`,
        ),
      );
    expect(await text(page, '.ks-why')).toContain('10 of them the model of the whole horn');
    expect(await text(page, '.sc-proposed')).toBe('Every key stands as found.');
  });

  it('follows a hand that drags the E key: F4’s mark, its number and the sentence', async () => {
    const page = await open();
    const track = (await slider(page).boundingBox())!;
    await page.mouse.move(track.x + 0.4 * track.width, track.y + track.height / 2);
    await page.mouse.down();
    await page.mouse.move(track.x + 0.9 * track.width, track.y + track.height / 2, { steps: 6 });
    await page.mouse.up();
    const mm = Number(await slider(page).inputValue());
    expect(mm).toBeGreaterThan(10);
    const wanted = centsOf(played({ e: mm }));
    await expect
      .poll(async () => Math.abs((await proposed(page)).get('F4')! - wanted.get('F4')!))
      .toBeLessThan(SAME_CENTS);
    expectSame(await proposed(page), wanted);
    expectSame(await found(page), centsOf(played()));
    const moves = await proposed(page, 'move');
    const before = centsOf(played());
    expect(moves.get('F4')! - (wanted.get('F4')! - before.get('F4')!)).toBeLessThan(SAME_CENTS);
    expect(moves.get('B3')!).toBe(0);
    await expect
      .poll(() => text(page, '.sc-note-told'))
      .toContain(`(moves +${moves.get('F4')!.toFixed(1)} ± `);
    expect(await text(page, '.ks-answer h1')).toMatch(/^As proposed, .* moves most, \+\d/);
    expect(await text(page, '.sc-chips')).toBe(`E 8.0 mm → ${mm.toFixed(1)} mm`);
  });

  it('adds what several keys do, and puts all back as found', async () => {
    const page = await open();
    await propose(page, 'f', '6.5');
    await propose(page, 'g', '9');
    const wanted = centsOf(played({ f: 6.5, g: 9 }));
    await expect
      .poll(async () => Math.abs((await proposed(page)).get('A4')! - wanted.get('A4')!))
      .toBeLessThan(SAME_CENTS);
    expectSame(await proposed(page), wanted);
    expect(await page.locator('.sc-chips button').count()).toBe(2);
    await page.getByRole('button', { name: 'all as found' }).click();
    await expect.poll(() => text(page, '.sc-proposed')).toBe('Every key stands as found.');
    const found = centsOf(played());
    // The words are there at once, the marks once the physics has answered.
    await expect
      .poll(async () => Math.abs((await proposed(page)).get('A4')! - found.get('A4')!))
      .toBeLessThan(SAME_CENTS);
    expectSame(await proposed(page), found);
  });

  it('draws what is proposed over the picture of what was found', async () => {
    const page = await open();
    await slider(page).fill('10');
    await page.waitForSelector('.vw-live [data-panel="pitch"]');
    const apart = async (): Promise<number> => {
      const over = (await page.locator('.vw-live').boundingBox())!;
      const under = (await page.locator('vw-scale-chart .vw-chart-host').boundingBox())!;
      return Math.max(
        ...(['x', 'y', 'width', 'height'] as const).map((side) => Math.abs(over[side] - under[side])),
      );
    };
    await expect.poll(apart).toBeLessThanOrEqual(ONE_PX);
  });

  it('counts a proposal of the key study only once it is taken, and keeps it on a reload’s hash', async () => {
    const page = await open();
    expect(await page.locator('.wb-views [aria-current="page"]').innerText()).toBe('Scale');
    await page.locator('.wb-views a', { hasText: 'Key' }).focus();
    await page.keyboard.press('Enter');
    await waitForCurve(page);
    const hint = page.locator('vw-bench-field[data-field="proposed"] #told');
    await expect.poll(() => hint.innerText()).toContain('enough, not proposed yet');
    await page.goBack();
    await expect.poll(() => text(page, '.sc-proposed')).toBe('Every key stands as found.');
    await page.getByRole('link', { name: 'Study this key' }).click();
    await page.getByRole('button', { name: 'Propose the opening that is enough' }).click();
    await expect.poll(() => hint.innerText()).toMatch(/· proposed$/);
    await page.locator('.wb-views a', { hasText: 'Scale' }).click();
    await expect.poll(() => page.locator('.sc-chips button').count()).toBe(1);
    await page.reload();
    await expect.poll(() => page.locator('vw-scale-view').count()).toBe(1);
    await expect.poll(() => page.title()).toContain('whole horn');
  });

  it('picks notes and keys by keyboard, in the chart and in the map', async () => {
    const page = await open();
    await page.locator('.vw-picker').focus();
    await page.keyboard.press('End');
    await expect.poll(() => text(page, '#sc-note-title')).toBe('Note F♯6 front');
    await page.keyboard.press('Home');
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => text(page, '#sc-note-title')).toBe('Note B3');
    expect(await text(page, '.sc-governing li:first-child .name')).toBe('low B♭');
    await page.locator('select[data-act="note"]').selectOption('G4');
    await expect.poll(() => text(page, '#sc-note-title')).toBe('Note G4');
    const stop = page.locator('vw-note-map [tabindex="0"]');
    expect(await stop.count()).toBe(1);
    await stop.focus();
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    await expect.poll(() => text(page, '#sc-note-title')).toBe('Note G♯4');
    await expect.poll(() => text(page, '.ks-key')).toContain('Pad 8 · side F♯ key');
    expect(await page.locator('vw-note-map :focus').getAttribute('aria-label')).toMatch(
      /^G♯4 by the side F♯ key: /,
    );
  });

  it('shows in the map the core’s own cents per millimetre, and lights the notes of the key in hand', async () => {
    const page = await open();
    const notes = played();
    const read = loadHorn(ALTO);
    const holes = read.ok ? read.value.horn.holes : [];
    const at = (keyId: string, noteId: string): number => {
      const { outcome } = notes.find((n) => n.fingering.id === noteId)!;
      const answers = outcome.found ? outcome.answers!.keys : [];
      return answers[holes.findIndex((h) => h.id === keyId)].opening.cents / 1000;
    };
    for (const [keyId, noteId] of [
      ['e', 'F4'],
      ['g', 'A5'],
      ['b', 'C6'],
      ['palm-d', 'E6'],
    ] as const) {
      const column = await page.locator(`vw-note-map th[data-note="${noteId}"]`).getAttribute('data-column');
      const row = page.locator('vw-note-map tr', { has: page.locator(`th[data-key="${keyId}"]`) });
      expect(await row.locator(`td[data-column="${column}"]`).innerText()).toBe(at(keyId, noteId).toFixed(1));
    }
    const lit = await page
      .locator('.vw-live .band.lit')
      .evaluateAll((bands) => bands.map((b) => b.getAttribute('data-note')!));
    const wanted = notes.map((n) => n.fingering.id).filter((id) => Math.abs(at('e', id)) >= 0.1);
    expect(lit.sort()).toEqual(wanted.sort());
  });

  it('tells what loud playing does to the picked note, as the core estimates it', async () => {
    const page = await open();
    await propose(page, 'e', '5');
    const read = loadHorn(ALTO);
    if (!read.ok) throw new Error('the demo alto loads');
    const { horn } = read.value;
    const at3kPa = (mm: number): number => {
      const setup = withOpening(read.value.setup, 'e', { at: 'front', height: mm / 1000 });
      const air = makeAirColumn({ mouthpieceC: ALTO.setup.airC ?? 26.85 });
      const network = makeNetwork(horn, setup, findFingering('F4')!, air);
      const soft = resonanceNear(network, 207.65);
      if (!soft.found) throw new Error('F4 has a resonance');
      const openings = new Map(
        [...setup.keys.keys()].map((id) => [id, standingPad(horn, setup, id).pose.centre]),
      );
      return 100 * strengthAgainstLevel(network, soft.resonance, [3000], { openings })[0].strength;
    };
    await expect.poll(() => text(page, '.sc-loud p')).toMatch(/^Chokes when played loud: at 3 kPa F4 keeps/);
    const [, before, after] = /keeps (\d+) % .* found, (\d+) % as proposed/.exec(
      await text(page, '.sc-loud p'),
    )!;
    expect(Math.abs(Number(before) - at3kPa(8))).toBeLessThanOrEqual(WHOLE_PERCENT);
    expect(Math.abs(Number(after) - at3kPa(5))).toBeLessThanOrEqual(WHOLE_PERCENT);
    expect(await text(page, '.sc-loud .sc-estimate')).toBe('estimate');
  });

  it('takes another A4 for this visit, concert names, one register, and the tenor', async () => {
    const page = await open();
    await page.locator('select[data-act="a4"]').selectOption('442');
    const at442 = centsOf(played({}, ALTO, 442));
    await expect
      .poll(async () => Math.abs((await found(page)).get('A4')! - at442.get('A4')!))
      .toBeLessThan(SAME_CENTS);
    expectSame(await found(page), at442);
    await page.locator('vw-choice[data-act="naming"] label', { hasText: 'concert' }).click();
    await expect.poll(() => text(page, '#sc-note-title')).toBe('Note G♯3');
    await page.locator('vw-choice[data-act="span"] label', { hasText: 'low' }).click();
    await expect.poll(async () => (await found(page)).size).toBe(20);
    await page.locator('vw-choice[data-act="span"] label', { hasText: 'all' }).click();
    await page.locator('select[data-act="horn"]').selectOption('demo-tenor');
    const tenor = centsOf(played({}, TENOR));
    await expect
      .poll(async () => Math.abs((await found(page)).get('D5')! - tenor.get('D5')!))
      .toBeLessThan(SAME_CENTS);
    expectSame(await found(page), tenor);
    await expect.poll(() => text(page, '#sc-note-title')).toBe('Note E♭3');
  });

  it('gives every pitch the core’s ±, every move its own once the hand rests, and leads to what to measure', async () => {
    const page = await open();
    const half = (panel: string): Promise<Map<string, number>> =>
      page
        .locator(`.vw-live [data-whisker="${panel}"]`)
        .evaluateAll((lines) =>
          lines.map((l) => [l.getAttribute('data-note')!, Number(l.getAttribute('data-half'))] as const),
        )
        .then((pairs) => new Map(pairs));
    const read = loadHorn(ALTO);
    if (!read.ok) throw new Error('the demo alto loads');
    const { horn, setup } = read.value;
    const air = makeAirColumn({ mouthpieceC: ALTO.setup.airC ?? 26.85 });
    const core = scaleBudgets(horn, setup, air, { plusMinus: plusMinusOf(read.value) });
    await expect.poll(async () => (await half('pitch')).size).toBe(core.size);
    for (const [id, value] of await half('pitch')) {
      expect(Math.abs(value - core.get(id)!.cents.plusMinus)).toBeLessThan(SAME_PLUS_MINUS);
    }
    expect((await half('move')).size).toBe(0);
    await propose(page, 'e', '10');
    await expect.poll(async () => (await half('move')).get('F4') ?? 0).toBeGreaterThan(0);
    await expect.poll(() => text(page, '#sc-sure-title')).toBe('How sure? F4');
    await page.locator('.sc-sure .next button').first().focus();
    await page.keyboard.press('Enter');
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.getAttribute('data-field')))
      .toBe('openingMm');
  });

  it('sets the alternates side by side, and has every number in its table', async () => {
    const page = await open();
    const cents = centsOf(played());
    const row = page.locator('.sc-alternates tr', { hasText: 'B♭4 one-and-one' });
    const apart = cents.get('Bb4 one-and-one')! - cents.get('Bb4 side')!;
    expect(await row.locator('td').nth(1).innerText()).toBe(apart.toFixed(1).replace('-', '−'));
    await page.locator('.sc-page .ks-table summary').click();
    const rows = page.locator('.sc-page .ks-table tbody tr');
    expect(await rows.count()).toBe(44);
    const c6 = rows.filter({ hasText: 'C♯6' });
    await expect
      .poll(async () => (await c6.locator('td').nth(1).innerText()).replaceAll('\u00a0', ' '))
      .toMatch(new RegExp(`^\\+${cents.get('C#6')!.toFixed(1)} ± \\d`));
  });

  it('prints the answer, what is proposed, the chart and the table', async () => {
    const page = await open();
    await propose(page, 'e', '10');
    await expect.poll(() => page.locator('.sc-chips button').count()).toBe(1);
    await page.emulateMedia({ media: 'print' });
    for (const shown of ['.ks-answer h1', 'vw-scale-chart', '.sc-paper-table table', '.ks-paper']) {
      expect(await page.locator(shown).isVisible()).toBe(true);
    }
    for (const hidden of ['.sc-try', 'vw-note-map', '.wb-views', '.sc-chips']) {
      expect(await page.locator(hidden).isVisible()).toBe(false);
    }
    expect(await text(page, '.ks-paper')).toContain(
      'as found 8.0 mm (0.315 in), proposed 10.0 mm (0.394 in)',
    );
  });
});

describe.each(Object.entries(SIZES))('the scale on a %s', (name, size) => {
  it('meets the accessibility rules, never scrolls sideways, and has no touch lower than 44 px', async () => {
    const page = await open(size);
    await propose(page, 'f', '6.5');
    await expect.poll(() => page.locator('.sc-chips button').count()).toBe(1);
    await page.locator('.sc-page .ks-table summary').click();
    const violations = await faultsByAxe(page);
    expect(violations).toEqual([]);
    const { wide, low } = await page.evaluate(() => {
      const all = (root: ParentNode): Element[] =>
        [...root.querySelectorAll('*')].flatMap((el) => [el, ...(el.shadowRoot ? all(el.shadowRoot) : [])]);
      return {
        wide: document.documentElement.scrollWidth - document.documentElement.clientWidth,
        low: all(document)
          .filter((el) =>
            el.matches('button:not(.figure), summary, select, input:not([type="radio"]), fieldset, nav a'),
          )
          .map((el) => ({ what: `${el.tagName} ${el.className}`, height: el.getBoundingClientRect().height }))
          .filter(({ height }) => height > 0 && height < 44),
      };
    });
    expect(wide).toBe(0);
    expect(low).toEqual([]);
    expect(await page.locator('vw-note-map').isVisible()).toBe(name !== 'phone');
    if (name === 'laptop') {
      for (const part of ['.ks-answer', 'vw-opening-slider', 'vw-scale-chart']) {
        const box = (await page.locator(part).boundingBox())!;
        expect(box.y).toBeLessThan(SIZES.laptop.height);
      }
    }
  });
});
