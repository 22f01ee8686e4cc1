import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { VIEW_NAMES, type ViewName } from '../../src/ui/state/view-names.ts';
import { openComparison, openWorkbench, serveBuiltSite, SIZES, type BuiltSite } from './built-site.ts';
import { launchBrowser } from './find-browser.ts';

const PATIENCE_MS = 60_000;
/** A picture's words say more than its title, characters. */
const LEAST_WORDS = 20;

let site: BuiltSite;
let browser: Browser;

beforeAll(async () => {
  [site, browser] = [await serveBuiltSite(), await launchBrowser()];
});
afterAll(async () => {
  await browser?.close();
  await site?.close();
});

/** Opens a view with something in it to draw. */
const openDrawn = (size: (typeof SIZES)[keyof typeof SIZES], view: ViewName) =>
  view === 'side-by-side' ? openComparison(browser, site, size) : openWorkbench(browser, site, size, view);

/** Every chart, and the table of its numbers on the same view. */
const TABLES: readonly (readonly [view: ViewName, chart: string, table: string])[] = [
  ['key', 'vw-chart', '.ks-table table'],
  ['scale', 'vw-scale-chart', '.ks-table table'],
  ['scale', 'vw-loud-chart', '.sc-loud-table table'],
  ['side-by-side', 'vw-side-by-side-chart', '.sd-scroll table'],
  ['leaks', '.lk-columns', '.ks-table table'],
  ['leaks', 'vw-leak-map', 'vw-leak-map table'],
  ['proposal', '.pp-picture', '.pp-notes table'],
];

describe.each(VIEW_NAMES)('the pictures of the view %s', (view) => {
  it(
    'say in words what they show, or leave it to words beside them',
    async () => {
      const { page } = await openDrawn(SIZES.laptop, view);
      await page.waitForTimeout(500);
      const silent = await page.evaluate((least) => {
        const all = (root: Document | ShadowRoot): Element[] =>
          [...root.querySelectorAll('*')].flatMap((one) => [
            one,
            ...(one.shadowRoot ? all(one.shadowRoot) : []),
          ]);
        const nameOf = (one: Element): string => one.getAttribute('aria-label') ?? '';
        const isSilent = (one: Element): boolean => {
          if (one.closest('[aria-hidden="true"]') !== null) return false;
          const picture = one.closest('[role="img"]');
          if (picture !== null) return nameOf(picture).length < least;
          // A picture one can touch is a group with a name of its own.
          return nameOf(one.closest('[role="radiogroup"], [role="group"], [role="slider"]') ?? one) === '';
        };
        // The charts' library measures letters in an empty picture of its own, off the page.
        return all(document)
          .filter((one) => one.matches('svg:not(svg svg, #js-plotly-tester), [role="img"]') && isSilent(one))
          .map((one) => one.outerHTML.slice(0, 120));
      }, LEAST_WORDS);
      expect(silent).toEqual([]);
      await page.close();
    },
    PATIENCE_MS,
  );
});

describe.each(TABLES)('on %s, %s', (view, chart, table) => {
  it(
    'has its numbers in a table',
    async () => {
      const { page } = await openDrawn(SIZES.laptop, view);
      await page.waitForSelector(chart, { state: 'attached' });
      await expect
        .poll(() => page.locator(`${table} tbody tr`).count(), { timeout: 20_000 })
        .toBeGreaterThan(2);
      const heads = await page.locator(`${table} thead th`).allTextContents();
      expect(heads.filter((head) => head.trim() !== '').length).toBeGreaterThan(1);
      await page.close();
    },
    PATIENCE_MS,
  );
});

describe.each([
  ['key', 'vw-chart', 380],
  ['scale', 'vw-scale-chart', 400],
  ['side-by-side', 'vw-side-by-side-chart', 360],
] as const)('on paper, the chart of %s', (view, chart, heightPx) => {
  it(
    'is drawn as high as its room there, so that nothing of it is cut off',
    async () => {
      const { page } = await openDrawn(SIZES.tablet, view);
      const drawn = (): Promise<number> =>
        page
          .locator(`${chart} .main-svg`)
          .first()
          .evaluate((svg) => svg.getBoundingClientRect().height);
      await expect.poll(drawn).not.toBe(heightPx);
      await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
      await expect.poll(drawn).toBe(heightPx);
      await page.emulateMedia({ media: 'print' });
      const room = await page.locator(chart).evaluate((host) => host.clientHeight);
      expect(room).toBe(heightPx);
      await page.close();
    },
    PATIENCE_MS,
  );
});
