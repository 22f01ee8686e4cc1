import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import { makeAirColumn } from '../../src/acoustics/index.ts';
import { setupIn, type BenchContents } from '../../src/documents/bench-contents.ts';
import { compareLoaded } from '../../src/documents/compare-loaded.ts';
import type { ComparisonReport } from '../../src/documents/comparison-report.ts';
import { reportMatches } from '../../src/documents/match-report.ts';
import { loadHorn, type HornAndSetup } from '../../src/documents/to-acoustics.ts';
import { signedCents } from '../../src/ui/parts/note-names.ts';
import { barePlusMinus } from '../../src/ui/parts/plus-minus-words.ts';
import { withProposed } from '../../src/ui/state/key-lengths.ts';
import { demoDocument } from '../acoustics/demo-horns.ts';
import { onTheBench } from '../ui/demo.ts';
import { openWorkbench, serveBuiltSite, SIZES, type BuiltSite } from './built-site.ts';
import { launchBrowser } from './find-browser.ts';
import { faultsByAxe } from './axe.ts';

/** Cents: the browser follows the same resonances as Node, to rounding. */
const SAME_CENTS = 1e-9;

/** What a sheet of A4 leaves between margins of 12 mm, px. */
const PAPER = { width: 703, height: 1032 };

let browser: Browser;
let site: BuiltSite;

beforeAll(async () => {
  [browser, site] = await Promise.all([launchBrowser(), serveBuiltSite()]);
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
});

/** Opens the view; whatever goes wrong on the page fails the test that opened it. */
async function open(size: { width: number; height: number } = SIZES.laptop): Promise<Page> {
  const { page, faults } = await openWorkbench(browser, site, size, 'side-by-side');
  onTestFinished(async () => {
    await page.close();
    expect(faults).toEqual([]);
  });
  return page;
}

/** Proposes on the scale what the page then compares. */
async function openProposing(
  proposedMm: Readonly<Record<string, string>>,
  size: { width: number; height: number } = SIZES.laptop,
): Promise<Page> {
  const page = await open(size);
  await goTo(page, 'Scale');
  for (const [keyId, mm] of Object.entries(proposedMm)) {
    await page.locator(`vw-key-strip [data-key="${keyId}"]`).click();
    await page.waitForSelector(`vw-opening-slider[data-key="${keyId}"]`);
    const slider = page.locator('vw-opening-slider input[type="range"]');
    await slider.fill(mm);
    await expect.poll(() => slider.inputValue()).toBe(mm);
  }
  await goTo(page, 'Side by side');
  await answered(page);
  return page;
}

const goTo = (page: Page, view: string): Promise<void> =>
  page.locator('.wb-views a', { hasText: view }).click();

async function answered(page: Page): Promise<void> {
  await page.waitForSelector('.sd-answer[aria-busy="false"] h1 span');
}

const text = async (page: Page, selector: string): Promise<string> =>
  (await page.locator(selector).innerText())
    .replaceAll('\u00a0', ' ')
    .replaceAll('\u2011', '-')
    .replaceAll(/\s+/g, ' ')
    .trim();

const ofVisit = (contents: BenchContents, role: 'asFound' | 'proposed'): HornAndSetup => ({
  horn: contents.horn.document,
  setup: setupIn(contents, role),
});
const lowered = withProposed(withProposed(onTheBench('alto'), 'f', 6.5), 'e', 5.5);

/** The core's own comparison. */
function compared(...sides: readonly HornAndSetup[]): ComparisonReport {
  const loaded = sides.map((documents) => {
    const read = loadHorn(documents);
    if (!read.ok) throw new Error(read.issues[0].message);
    return read.value;
  });
  return compareLoaded(loaded, { air: makeAirColumn({ mouthpieceC: 26.85 }), a4Hz: 440 });
}

/** What the drawing library holds: by trace, by fingering, value and ±. */
const drawn = (page: Page): Promise<Record<string, Record<string, [number, number]>>> =>
  page.evaluate(() => {
    interface Drawn extends Element {
      data: { name: string; ids: string[]; y: number[]; error_y: { array: number[] } }[];
    }
    const { data } = document.querySelector('vw-side-by-side-chart .vw-chart-host') as Drawn;
    return Object.fromEntries(
      data.map(({ name, ids, y, error_y }) => [
        name,
        Object.fromEntries(ids.map((id, i) => [id, [y[i], error_y.array[i]] as [number, number]])),
      ]),
    );
  });

async function expectDrawn(page: Page, report: ComparisonReport, letters: readonly string[]): Promise<void> {
  await expect.poll(async () => Object.keys(await drawn(page)).length).toBeGreaterThanOrEqual(letters.length);
  const got = await drawn(page);
  letters.forEach((letter, i) => {
    const wanted = report.notes.filter(({ differences }) => differences[i] !== null);
    const series = got[`pitch ${letter}`];
    expect(Object.keys(series).sort()).toEqual(wanted.map(({ fingering }) => fingering).sort());
    for (const { fingering, differences } of wanted) {
      const [value, plusMinus] = series[fingering];
      expect(Math.abs(value - differences[i]!.cents)).toBeLessThanOrEqual(SAME_CENTS);
      expect(Math.abs(plusMinus - differences[i]!.centsPlusMinus)).toBeLessThanOrEqual(SAME_CENTS);
    }
  });
}

const tables = (page: Page, nth: 0 | 1) => page.locator('.sd-scroll').nth(nth);
const cells = async (page: Page, nth: 0 | 1, row: string): Promise<string[]> =>
  (await tables(page, nth).locator(`tr[data-row="${row}"] td`).allInnerTexts()).map((t) =>
    t.replaceAll('\u00a0', ' '),
  );

describe('side by side, built', () => {
  it('begins with the visit on the bench and says that nothing is proposed yet', async () => {
    const page = await open();
    expect(await text(page, '.sd-answer h1')).toBe('As found stands alone: nothing is beside it yet.');
    expect(await text(page, '.vw-empty')).toContain('Nothing is proposed or set on this visit yet');
    expect(await page.locator('vw-side-by-side-chart, .sd-scroll, .sd-sure, .ks-cautions').count()).toBe(0);
    expect(await faultsByAxe(page)).toEqual([]);
    expect(await page.locator('.wb-views [aria-current="page"]').innerText()).toBe('Side by side');
    expect(await page.title()).toContain('side by side');
  });

  it('shows the core’s own numbers of a proposal: sentence, picture, notes and keys', async () => {
    const page = await openProposing({ f: '6.5', e: '5.5' });
    const report = compared(ofVisit(lowered, 'asFound'), ofVisit(lowered, 'proposed'));
    const [, core] = report.sentences[0].split(/”: /);
    expect(await text(page, '.sd-answer h1')).toMatch(/^B “Proposed, .*” beside A “As found, /);
    expect((await text(page, '.sd-answer h1')).endsWith(core)).toBe(true);
    await expectDrawn(page, report, ['B']);
    for (const { fingering, setups, differences } of report.notes) {
      const [cents, , , a, b, cutoffA, cutoffB] = await cells(page, 0, fingering);
      const d = differences[0]!;
      expect(cents.split(' ± ')[0]).toBe(d.cents === 0 ? 'same' : signedCents(d.cents));
      expect([a, b]).toEqual(setups.map((s) => `${signedCents(s.cents!)} ± ${s.centsPlusMinus!.toFixed(0)}`));
      expect([cutoffA, cutoffB]).toEqual(setups.map((s) => s.cutoffHz?.toFixed(0) ?? '–'));
    }
    for (const { id, setups } of report.keys) {
      const [, , a, b, , , parallelA, parallelB, ...shares] = await cells(page, 1, id);
      const opening = (shown: string): string => shown.split('\n')[0];
      expect([opening(a), opening(b)]).toEqual(
        setups.map((s) => `${s!.frontMm.toFixed(1)} ± ${barePlusMinus(s!.frontPlusMinusMm, 'mm')}`),
      );
      expect([parallelA, parallelB]).toEqual(setups.map((s) => s!.equivalentParallelMm.toFixed(1)));
      expect(shares.map((shown) => shown.split('±')[0].trim())).toEqual(
        setups.map((s) => (100 * s!.ventShare).toFixed(0)),
      );
    }
    expect((await cells(page, 1, 'e'))[0]).toBe('−2.5 ± 0.2');
  });

  it('follows what is undone and redone, and the unit', async () => {
    const page = await openProposing({ e: '5.5' });
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => text(page, '.sd-answer h1')).toContain('nothing is beside it yet');
    await page.getByRole('button', { name: 'Redo' }).click();
    await expect.poll(() => text(page, '.sd-answer h1')).toContain('notice');
    await page.locator('vw-choice[data-act="unit"] label', { hasText: 'inch' }).click();
    await expect.poll(async () => (await cells(page, 1, 'e'))[3]).toMatch(/^0\.217/);
    expect(await tables(page, 1).locator('thead').innerText()).toContain('Opening at the front, in');
  });

  it('puts another horn beside it, holds the others against it, and goes back to the visit', async () => {
    const page = await openProposing({ f: '6.5', e: '5.5' });
    await page.getByRole('button', { name: 'Add a column' }).click();
    await expect.poll(() => page.locator('.sd-answer h1 span').count()).toBe(2);
    const report = compared(
      ofVisit(lowered, 'asFound'),
      ofVisit(lowered, 'proposed'),
      ofVisit(onTheBench('tenor'), 'asFound'),
    );
    await expectDrawn(page, report, ['B', 'C']);
    expect(await text(page, '.sd-answer h1')).toMatch(
      /C “Larkfield tenor, demo” beside A “Larkfield alto, demo, As found, [-\d]+”: every key stands/,
    );
    expect(await text(page, '.sd-answer .ks-cautions')).toContain('sounds at another pitch');
    const [d6] = report.notes;
    const c = d6.differences[1]!;
    expect((await cells(page, 0, d6.fingering))[1]).toBe(
      `${signedCents(c.cents)} ± ${c.centsPlusMinus.toFixed(1)}`,
    );
    await page.getByRole('button', { name: 'hold the others against C' }).click();
    await expect
      .poll(() => text(page, '.sd-answer h1'))
      .toMatch(
        /^B “Larkfield alto, demo, As found, .*” beside A “Larkfield tenor, demo”: .* The player would notice/,
      );
    await page.getByRole('button', { name: 'take B away' }).click();
    await expect.poll(() => page.locator('.sd-column').count()).toBe(2);
    await page.getByRole('button', { name: 'This visit again' }).click();
    await expect.poll(() => text(page, '.sd-answer h1')).toMatch(/^B “Proposed/);
  });

  it('takes horns and setups by keyboard alone, and says when a setup stands beside itself', async () => {
    const page = await openProposing({ e: '5.5' });
    await page.locator('select[data-act="setup-B"]').focus();
    await page.keyboard.press('Home');
    await expect.poll(() => text(page, '.vw-empty')).toContain('A setup stands beside itself');
    await expect.poll(() => text(page, '.sd-answer h1')).toContain('they play alike');
    await page.locator('select[data-act="horn-B"]').focus();
    await page.keyboard.press('End');
    await expect.poll(() => text(page, '.sd-answer h1')).toContain(demoDocument('baritone').horn.name);
    const scroll = tables(page, 0);
    await scroll.focus();
    await page.keyboard.press('End');
    await expect.poll(() => scroll.evaluate((el) => el.scrollTop)).toBeGreaterThan(0);
  });

  it('keeps its columns and their order over a reload, beside the horn that was in hand', async () => {
    const page = await openProposing({ e: '5.5' });
    await page.locator('.wb-kept', { hasText: '✓ saved' }).waitFor();
    await page.getByRole('button', { name: 'Add a column' }).click();
    await expect.poll(() => page.locator('.sd-answer h1 span').count()).toBe(2);
    await page.locator('vw-choice[data-act="order"] label', { hasText: 'low to high' }).click();
    const before = await text(page, '.sd-answer h1');
    await page.reload();
    await answered(page);
    await expect.poll(() => text(page, '.sd-answer h1')).toBe(before);
    expect(await page.locator('vw-choice[data-act="order"] input:checked').inputValue()).toBe('pitch');
  });

  it('sets the horn in hand to another’s openings, in one step that undo takes back', async () => {
    const page = await open();
    await page.selectOption('select[data-act="horn-B"]', { label: 'Demo tenor' });
    const act = page.locator('[data-act="like"]');
    await expect.poll(() => act.isEnabled()).toBe(true);
    const [found, tenor] = [onTheBench('alto'), onTheBench('tenor')].map((c) => ofVisit(c, 'asFound'));
    const [horn, like] = [found, tenor].map((documents) => {
      const read = loadHorn(documents);
      if (!read.ok) throw new Error(read.issues[0].message);
      return read.value;
    });
    const { front, 'vent share': share } = reportMatches(horn, like);
    expect(await act.innerText()).toBe(`Propose ${Object.keys(front.frontsMm).length} openings of B`);
    await page.locator('vw-choice[data-act="like-by"] label', { hasText: 'vent share' }).click();
    await expect
      .poll(() => act.innerText())
      .toBe(`Propose ${Object.keys(share.frontsMm).length} openings of B`);
    await act.click();
    await expect
      .poll(() => text(page, '.sd-like [role="status"]'))
      .toMatch(/^Taken: \d+ openings of Demo tenor/);
    await expect.poll(() => text(page, '.sd-answer h1')).toMatch(/^B “Proposed, .*” beside A “As found, /);
    expect(await page.locator('.sd-column').count()).toBe(3);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => text(page, '.sd-answer h1')).toMatch(/^B: nothing is proposed on Larkfield alto/);
    expect(await page.getByRole('button', { name: 'Undo' }).isEnabled()).toBe(false);
  });

  it('sorts both tables, and tells openings at another point of the pad', async () => {
    const page = await openProposing({ e: '5.5' });
    const report = compared(
      ofVisit(withProposed(onTheBench('alto'), 'e', 5.5), 'asFound'),
      ofVisit(withProposed(onTheBench('alto'), 'e', 5.5), 'proposed'),
    );
    const first = (nth: 0 | 1): Promise<string | null> =>
      tables(page, nth).locator('tbody tr').first().getAttribute('data-row');
    expect([await first(0), await first(1)]).toEqual([report.notes[0].fingering, report.keys[0].id]);
    await page.locator('vw-choice[data-act="order"] label', { hasText: 'low to high' }).click();
    await expect.poll(() => first(0)).toBe('Bb3');
    expect(await first(1)).toBe('low-b-flat');
    await page.locator('vw-choice[data-act="at"] label', { hasText: 'centre' }).click();
    const centre = report.keys.find(({ id }) => id === 'e')!.setups.map((s) => s!.centreMm.toFixed(1));
    await expect.poll(async () => (await cells(page, 1, 'e')).slice(2, 4)).toEqual(centre);
  });

  it('prints sentence, what stands, picture and both whole tables on paper’s width', async () => {
    const page = await openProposing({ f: '6.5', e: '5.5' }, PAPER);
    for (const count of [2, 3]) {
      await page.getByRole('button', { name: 'Add a column' }).click();
      await expect.poll(() => page.locator('.sd-answer h1 span').count()).toBe(count);
    }
    await page.emulateMedia({ media: 'print' });
    for (const shown of ['.sd-answer h1', '.sd-columns', 'vw-side-by-side-chart', '.sd-scroll >> nth=1']) {
      expect(await page.locator(shown).isVisible()).toBe(true);
    }
    expect(await text(page, '.sd-column >> nth=1')).toMatch(
      /^B beside A Larkfield alto, demo: proposed, \d{4}-\d\d-\d\d$/,
    );
    for (const hidden of [
      '.sd-more',
      '.sd-select >> nth=0',
      '.wb-views',
      '.sd-column-acts >> nth=1',
      '.sd-like',
    ]) {
      expect(await page.locator(hidden).isVisible()).toBe(false);
    }
    const { over, cut } = await page.evaluate(() => ({
      over: document.documentElement.scrollWidth - document.documentElement.clientWidth,
      cut: [...document.querySelectorAll('.sd-scroll')].map((el) => el.scrollHeight - el.clientHeight),
    }));
    expect(over).toBeLessThanOrEqual(0);
    expect(cut).toEqual([0, 0]);
  });
});

describe.each(Object.entries(SIZES))('side by side on a %s', (_name, size) => {
  it('meets the accessibility rules, never scrolls sideways, and has no touch lower than 44 px', async () => {
    const page = await openProposing({ f: '6.5', e: '5.5' }, size);
    for (const count of [2, 3]) {
      await page.getByRole('button', { name: 'Add a column' }).click();
      await expect.poll(() => page.locator('.sd-answer h1 span').count()).toBe(count);
    }
    const violations = await faultsByAxe(page);
    expect(violations).toEqual([]);
    const { wide, low } = await page.evaluate(() => ({
      wide: document.documentElement.scrollWidth - document.documentElement.clientWidth,
      low: [...document.querySelectorAll('main :is(button, summary, select)')]
        .map((el) => ({ what: `${el.tagName} ${el.className}`, height: el.getBoundingClientRect().height }))
        .filter(({ height }) => height > 0 && height < 44),
    }));
    expect(wide).toBeLessThanOrEqual(0);
    expect(low).toEqual([]);
  });

  it('draws no word over another and none outside the picture', async () => {
    const page = await openProposing({ f: '6.5', e: '5.5' }, size);
    await page.getByRole('button', { name: 'Add a column' }).click();
    await expect.poll(() => page.locator('.sd-answer h1 span').count()).toBe(2);
    await expect.poll(async () => Object.keys(await drawn(page))).toContain('pitch C');
    const { words, box } = await page.evaluate(() => ({
      words: [...document.querySelectorAll('vw-side-by-side-chart .annotation-text')].map((el) => {
        const { left, right, top, bottom } = el.getBoundingClientRect();
        return { text: el.textContent ?? '', left, right, top, bottom };
      }),
      box: document.querySelector('vw-side-by-side-chart')!.getBoundingClientRect().toJSON() as DOMRect,
    }));
    expect(words.length).toBeGreaterThan(4);
    for (const [i, a] of words.entries()) {
      expect(a.left, a.text).toBeGreaterThanOrEqual(box.left);
      expect(a.right, a.text).toBeLessThanOrEqual(box.right);
      for (const b of words.slice(i + 1)) {
        const apart = a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top;
        expect(apart, `${a.text} / ${b.text}`).toBe(true);
      }
    }
  });
});
