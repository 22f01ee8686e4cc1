import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { VIEW_NAMES } from '../../src/ui/state/view-names.ts';
import { paletteOf } from '../ui/palette.ts';
import { faultsByAxe } from './axe.ts';
import { openWorkbench, serveBuiltSite, SIZES, waitForCurve, type BuiltSite } from './built-site.ts';
import { launchBrowser } from './find-browser.ts';

const PATIENCE_MS = 90_000;

let site: BuiltSite;
let browser: Browser;

beforeAll(async () => {
  [site, browser] = [await serveBuiltSite(), await launchBrowser()];
});
afterAll(async () => {
  await browser?.close();
  await site?.close();
});

const rgbOf = (hex: string): string =>
  `rgb(${[1, 3, 5].map((i) => parseInt(hex.slice(i, i + 2), 16)).join(', ')})`;
const ground = (page: Page): Promise<string> =>
  page.evaluate(() => getComputedStyle(document.body).backgroundColor);
const themeOf = (page: Page): Promise<string | undefined> =>
  page.evaluate(() => document.documentElement.dataset.theme);
/** The ground of a chart as its library drew it. */
const chartGround = (page: Page): Promise<string> =>
  page.evaluate(() => getComputedStyle(document.querySelector('vw-chart .bglayer .bg')!).fill);

describe.each(VIEW_NAMES)('the view %s', (view) => {
  it(
    'has no fault that axe can find, in light and in dark',
    async () => {
      const { page, faults } = await openWorkbench(browser, site, SIZES.laptop, view);
      for (const theme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme: theme });
        await page.waitForFunction((t) => document.documentElement.dataset.theme === t, theme);
        expect([theme, await faultsByAxe(page)]).toEqual([theme, []]);
      }
      expect(faults).toEqual([]);
      await page.close();
    },
    PATIENCE_MS,
  );
});

describe('light and dark', () => {
  it('follow the machine, and the charts with them', async () => {
    const { page } = await openWorkbench(browser, site, SIZES.laptop, 'key');
    expect(await ground(page)).toBe(rgbOf(paletteOf('light').ground));
    expect(await chartGround(page)).toBe(rgbOf(paletteOf('light').sheet));
    await page.emulateMedia({ colorScheme: 'dark' });
    await expect.poll(() => ground(page)).toBe(rgbOf(paletteOf('dark').ground));
    await expect.poll(() => chartGround(page)).toBe(rgbOf(paletteOf('dark').sheet));
    await page.close();
  });

  it('are chosen in the head by keyboard, kept for the next time, and given back to the machine', async () => {
    const { page } = await openWorkbench(browser, site, SIZES.laptop, 'key');
    const button = page.getByRole('button', { name: 'Light or dark' });
    await button.press('Enter');
    await page.getByRole('radio', { name: 'Dark', exact: true }).press('Space');
    expect(await themeOf(page)).toBe('dark');
    await page.keyboard.press('Escape');
    expect(await page.getByRole('radio', { name: 'As the machine' }).count()).toBe(0);
    expect(await button.evaluate((el) => el.matches(':focus'))).toBe(true);
    await page.reload();
    await waitForCurve(page);
    expect(await ground(page)).toBe(rgbOf(paletteOf('dark').ground));
    await button.click();
    await page.getByRole('radio', { name: 'As the machine' }).check();
    expect(await themeOf(page)).toBe('light');
    await page.close();
  });

  it('are there before the program has come', async () => {
    const page = await browser.newPage({ colorScheme: 'dark' });
    await page.route('**/assets/*.js', (route) => route.abort());
    await page.goto(site.url, { waitUntil: 'commit' });
    await page.waitForSelector('vw-workbench', { state: 'attached' });
    // The first ground of all, once the styles have come: nothing is painted before.
    await expect.poll(() => ground(page)).not.toBe('rgba(0, 0, 0, 0)');
    expect(await ground(page)).toBe(rgbOf(paletteOf('dark').ground));
    await page.close();
  });

  it('give way to light on paper, charts included, and come back', async () => {
    const { page } = await openWorkbench(browser, site, SIZES.laptop, 'key');
    await page.emulateMedia({ colorScheme: 'dark' });
    await expect.poll(() => chartGround(page)).toBe(rgbOf(paletteOf('dark').sheet));
    await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
    await expect.poll(() => chartGround(page)).toBe(rgbOf(paletteOf('light').sheet));
    expect(await page.evaluate(() => getComputedStyle(document.body).color)).toBe(
      rgbOf(paletteOf('light').ink),
    );
    await page.emulateMedia({ media: 'screen', colorScheme: 'dark' });
    await expect.poll(() => chartGround(page)).toBe(rgbOf(paletteOf('dark').sheet));
    await page.close();
  });
});

describe('motion', () => {
  const moving = (page: Page): Promise<number> => page.evaluate(() => document.getAnimations().length);

  it(
    'never comes by itself on any view',
    async () => {
      const { page } = await openWorkbench(browser, site, SIZES.laptop, 'key');
      for (const view of VIEW_NAMES) {
        await page.evaluate((name) => (location.hash = `#${name}`), view);
        await page.waitForTimeout(300);
        expect([view, await moving(page)]).toEqual([view, 0]);
      }
      await page.close();
    },
    PATIENCE_MS,
  );

  it('stops for who wants little of it, whatever a view asks for', async () => {
    const { page } = await openWorkbench(browser, site, SIZES.laptop, 'notes');
    await page.addStyleTag({
      content: '@keyframes away { to { opacity: 0 } } .wb-mark { animation: away 5s infinite }',
    });
    expect(await moving(page)).toBe(1);
    await page.emulateMedia({ reducedMotion: 'reduce' });
    expect(await moving(page)).toBe(0);
    await page.close();
  });
});
