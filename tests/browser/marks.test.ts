import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { ViewName } from '../../src/ui/state/view-names.ts';
import { openWorkbench, serveBuiltSite, type BuiltSite } from './built-site.ts';
import { launchBrowser } from './find-browser.ts';

const PATIENCE_MS = 120_000;

/** Views whose sentences hold figures that open their reason. */
const TOLD: readonly ViewName[] = ['sheet', 'key', 'leaks'];

/** From a phone to a desk, in steps at which lines break elsewhere. */
const WIDTHS_PX = Array.from({ length: 38 }, (_, i) => 360 + 25 * i);

let site: BuiltSite;
let browser: Browser;

beforeAll(async () => {
  [site, browser] = [await serveBuiltSite(), await launchBrowser()];
});
afterAll(async () => {
  await browser?.close();
  await site?.close();
});

/** Runs in the page: the marks after a figure that begin a line, and how many there are. */
function marksAstray(): { readonly astray: string[]; readonly all: number } {
  const astray: string[] = [];
  let all = 0;
  for (const figure of document.querySelectorAll('main vw-reason')) {
    let next: ChildNode | null = figure.nextSibling;
    while (next !== null && next.nodeType !== Node.TEXT_NODE) next = next.nextSibling;
    if (next === null || !/^[,.;:!?)]/.test(next.textContent ?? '')) continue;
    all += 1;
    const mark = document.createRange();
    mark.setStart(next, 0);
    mark.setEnd(next, 1);
    const [at, before] = [mark.getBoundingClientRect(), figure.getBoundingClientRect()];
    if (at.top > before.bottom - 1) astray.push(`${figure.textContent} ${next.textContent}`);
  }
  return { astray, all };
}

it.each(TOLD)(
  'no line of the view %s begins with the mark after a figure, however wide the page is',
  async (view) => {
    const { page } = await openWorkbench(browser, site, { width: 1280, height: 800 }, view);
    await page.waitForSelector('main h1 vw-reason');
    const found: string[] = [];
    let marks = 0;
    for (const width of WIDTHS_PX) {
      await page.setViewportSize({ width, height: 800 });
      const { astray, all } = await page.evaluate(marksAstray);
      marks += all;
      found.push(...astray.map((words) => `${width} px: ${words}`));
    }
    expect(marks).toBeGreaterThan(0);
    expect(found).toEqual([]);
    await page.close();
  },
  PATIENCE_MS,
);
