import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import type { BenchContents } from '../../src/documents/bench-contents.ts';
import { keyedHoles } from '../../src/documents/horn-document.ts';
import { ALTO } from '../ui/demo.ts';
import { openWorkbench, serveBuiltSite, SIZES, type BuiltSite } from './built-site.ts';
import { launchBrowser } from './find-browser.ts';
import { faultsByAxe } from './axe.ts';

/** What a finger in a glove needs, px, less what the browser rounds. */
const FINGER_PX = 44 - 0.01;

let browser: Browser;
let site: BuiltSite;

beforeAll(async () => {
  [browser, site] = await Promise.all([launchBrowser(), serveBuiltSite()]);
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
});

/** Opens the page of a new horn; whatever goes wrong on it fails the test that opened it. */
async function open(size: { width: number; height: number } = SIZES.laptop): Promise<Page> {
  const { page, faults } = await openWorkbench(browser, site, size, 'new');
  onTestFinished(async () => {
    await page.close();
    expect(faults).toEqual([]);
  });
  return page;
}

/** What lies on the bench now. */
const onBench = (page: Page): Promise<BenchContents> =>
  page.evaluate(() => {
    const { bench } = document.querySelector('vw-workbench')!;
    const { horns, hornId } = bench!.store.get();
    return horns[hornId].contents;
  });

const chosenKey = (page: Page): Promise<string | null> =>
  page.locator('vw-horn-picture [aria-checked="true"]').getAttribute('data-key');
const field = (page: Page, name: string) => page.locator(`.nh-form input[name="${name}"]`);
const choose = (page: Page, instrument: string): Promise<void> =>
  page.locator(`[data-act="instrument"] input[value="${instrument}"]`).click();
const start = (page: Page) => page.locator('.nh-go button');

describe('a new horn', () => {
  it('starts from an example with what was told of it, and its sheet opens', async () => {
    const page = await open();
    await choose(page, 'tenor');
    await page.locator('.nh-head h1', { hasText: 'tenor' }).waitFor();
    await field(page, 'maker').fill('Larkfield (invented)');
    await field(page, 'serial').fill('4711');
    await field(page, 'owner').fill('<img src=x onerror=alert(1)>');
    await field(page, 'player').fill('Ada Moss');
    await field(page, 'date').fill('2026-05-31');
    await start(page).click();
    await page.waitForFunction(() => location.hash === '#sheet');
    const { horn, visit, asFound } = await onBench(page);
    const { name, maker, owner, instrument, origin } = horn.document;
    expect([name, maker, owner]).toEqual([
      'Larkfield (invented) tenor 4711',
      'Larkfield (invented)',
      '<img src=x onerror=alert(1)>',
    ]);
    expect([instrument, origin, asFound.document.origin]).toEqual(['tenor', 'template', 'template']);
    expect([visit.document.date, visit.document.player]).toEqual(['2026-05-31', 'Ada Moss']);
  });

  it('is in the library from the start, once, with the example’s setup; the next one starts blank', async () => {
    const page = await open();
    await field(page, 'maker').fill('Larkfield (invented)');
    await start(page).dblclick();
    await page.waitForFunction(() => location.hash === '#sheet');
    const { horn } = await onBench(page);
    await page.reload();
    await expect.poll(() => onBench(page).then((now) => now.horn.id)).toBe(horn.id);
    const { horns, setups, visits } = await page.evaluate(async () => {
      const { bench } = document.querySelector('vw-workbench')!;
      return (await (await bench!.library()).read('all')).records;
    });
    expect(horns.map((h) => h.document.name)).toEqual(['Larkfield (invented) alto']);
    expect(setups.map((s) => s.document.name.replace(/, .*/, '')).toSorted()).toEqual([
      'As found',
      'As set',
      'Example alto',
      'Proposed',
    ]);
    expect(visits).toHaveLength(1);
    await page.evaluate(() => (location.hash = '#new'));
    await field(page, 'maker').waitFor();
    expect(await field(page, 'maker').inputValue()).toBe('');
  });

  it('comes to the bench where the browser keeps nothing, and that is said', async () => {
    const { page, faults } = await openWorkbench(browser, site, SIZES.laptop, 'new');
    onTestFinished(async () => {
      await page.close();
      expect(faults).toEqual([]);
    });
    await page.evaluate(() => {
      document.querySelector('vw-workbench')!.bench!.library = () => Promise.reject(new Error('no storage'));
    });
    await start(page).click();
    await page.waitForFunction(() => location.hash === '#sheet');
    expect((await onBench(page)).horn.document.name).toBe('Alto');
    await page
      .getByRole('alert')
      .getByText('Alto could not be put in the library: Error: no storage')
      .waitFor();
  });

  it('keeps what was typed where it cannot be, and says so under its field', async () => {
    const page = await open();
    await field(page, 'maker').fill('x'.repeat(201));
    await field(page, 'player').fill('Ada Moss');
    await field(page, 'date').fill('');
    await start(page).click();
    expect(await page.locator('.nh-field .nh-problem').allInnerTexts()).toEqual([
      'invalid maker: 201 letters; expected at most 200',
      'invalid date: ""; expected a day such as 2026-05-31',
    ]);
    expect(await field(page, 'maker').inputValue()).toHaveLength(201);
    expect(await field(page, 'player').inputValue()).toBe('Ada Moss');
    expect(await page.evaluate(() => document.activeElement?.getAttribute('name'))).toBe('maker');
    expect(await page.evaluate(() => location.hash)).toBe('#new');
    await field(page, 'maker').fill('Larkfield');
    expect(await page.locator('.nh-field .nh-problem').count()).toBe(1);
  });

  it('keeps what was typed while another view is looked at', async () => {
    const page = await open();
    await field(page, 'owner').fill('Ada Moss');
    await choose(page, 'soprano');
    await page.evaluate(() => (location.hash = '#scale'));
    await page.waitForSelector('vw-scale-view');
    await page.evaluate(() => (location.hash = '#new'));
    await page.locator('.nh-head h1', { hasText: 'soprano' }).waitFor();
    expect(await field(page, 'owner').inputValue()).toBe('Ada Moss');
  });

  it('shows the example of the instrument chosen, in either unit', async () => {
    const page = await open();
    const low = (): Promise<string> => page.locator('tr[data-key="low-b-flat"] td').first().innerText();
    const hole = keyedHoles(ALTO.horn).find((h) => h.id === 'low-b-flat')!.diameterMm;
    expect(await low()).toBe(hole.toFixed(1));
    await page.locator('[data-act="unit"] input[value="thou"]').click();
    await expect.poll(low).toBe((hole / 25.4).toFixed(3));
    await choose(page, 'baritone');
    await expect.poll(async () => Number(await low())).toBeGreaterThan(hole / 25.4);
    await page.getByText('2 in', { exact: true }).waitFor();
  });
});

describe('the horn’s picture', () => {
  it('chooses the key that is touched, on its words, on its pad, or beside it', async () => {
    const page = await open();
    const box = (key: string, part: string) =>
      page.locator(`vw-horn-picture [data-key="${key}"] ${part}`).boundingBox();
    await page.locator('vw-horn-picture').scrollIntoViewIfNeeded();
    await page.locator('vw-horn-picture [data-key="bis"] .slot').click();
    expect(await chosenKey(page)).toBe('bis');
    expect(await page.locator('tr.nh-chosen').getAttribute('data-key')).toBe('bis');
    const g = (await box('g', '.pad'))!;
    await page.mouse.click(g.x + g.width / 2, g.y + g.height / 2);
    await expect.poll(() => chosenKey(page)).toBe('g');
    const low = (await box('low-b-flat', '.pad'))!;
    await page.mouse.click(low.x + low.width / 2, low.y + low.height + 15);
    await expect.poll(() => chosenKey(page)).toBe('low-b-flat');
  });

  it('is one stop of the tab key, and arrows walk from neck to bell', async () => {
    const page = await open();
    const picture = page.locator('vw-horn-picture');
    expect(await picture.locator('[tabindex="0"]').count()).toBe(1);
    const order = await picture
      .locator('[role="radio"]')
      .evaluateAll((all) => all.map((key) => key.getAttribute('data-key')));
    const alongBore = keyedHoles(ALTO.horn)
      .toSorted((a, b) => a.positionMm - b.positionMm)
      .map((h) => h.id);
    expect(order).toEqual(alongBore);
    await picture.locator('[tabindex="0"]').focus();
    await page.keyboard.press('Home');
    await expect.poll(() => chosenKey(page)).toBe(alongBore[0]);
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => chosenKey(page)).toBe(alongBore[1]);
    await page.keyboard.press('End');
    await expect.poll(() => chosenKey(page)).toBe(alongBore[alongBore.length - 1]);
    await page.keyboard.press('ArrowDown');
    await expect.poll(() => chosenKey(page)).toBe(alongBore[0]);
    const focused = await picture.evaluate((el) => el.shadowRoot!.activeElement?.getAttribute('data-key'));
    expect(focused).toBe(alongBore[0]);
  });
});

describe.each(Object.entries(SIZES))('on a %s', (_name, size) => {
  it('the page is as wide as the screen, words keep clear of one another, touches are large', async () => {
    const page = await open(size);
    for (const instrument of ['alto', 'soprano', 'baritone']) {
      await choose(page, instrument);
      await page.locator('.nh-head h1', { hasText: instrument }).waitFor();
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(size.width);
      const slots = await page.locator('vw-horn-picture .key').evaluateAll((keys) =>
        keys.map((key) => ({
          words: [...key.querySelectorAll('text')].map((t) => t.getBoundingClientRect()),
          slot: key.querySelector('.slot')!.getBoundingClientRect(),
        })),
      );
      expect(slots.length).toBeGreaterThan(20);
      for (const [i, { words, slot }] of slots.entries()) {
        expect(Math.min(slot.width, slot.height)).toBeGreaterThanOrEqual(FINGER_PX);
        for (const w of words) {
          expect(w.left).toBeGreaterThanOrEqual(slot.left - 1);
          expect(w.right).toBeLessThanOrEqual(slot.right + 1);
        }
        for (const { slot: other } of slots.slice(i + 1)) {
          const apart =
            slot.right <= other.left ||
            other.right <= slot.left ||
            slot.bottom <= other.top ||
            other.bottom <= slot.top;
          expect(apart).toBe(true);
        }
      }
    }
    const heights = await page
      .locator('.nh-field input, .nh-go button')
      .evaluateAll((all) => all.map((el) => el.getBoundingClientRect().height));
    expect(Math.min(...heights)).toBeGreaterThanOrEqual(FINGER_PX);
  });

  it('nothing keeps a screen reader or a keyboard out', async () => {
    const page = await open(size);
    const violations = await faultsByAxe(page);
    expect(violations).toEqual([]);
  });
});
