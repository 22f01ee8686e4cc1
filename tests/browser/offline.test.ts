import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { VIEW_NAMES } from '../../src/ui/state/view-names.ts';
import { serveBuiltSite, SIZES, waitForView } from './built-site.ts';
import { launchBrowser } from './find-browser.ts';

let browser: Browser;

beforeAll(async () => {
  browser = await launchBrowser();
});

afterAll(async () => {
  await browser?.close();
});

/** Everything a context asks for that is not the site's, service worker and physics worker included. */
function strangersOf(context: BrowserContext, site: string): string[] {
  const strangers: string[] = [];
  context.on('request', (request) => {
    const url = request.url();
    if (!/^(data|blob):/.test(url) && !url.startsWith(site)) strangers.push(url);
  });
  context.on('page', (page) => page.on('websocket', (socket) => strangers.push(socket.url())));
  return strangers;
}

/** Waits until the service worker has taken everything in and looks after the page. */
async function waitForWorker(page: Page): Promise<void> {
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
    while (navigator.serviceWorker.controller === null) await new Promise((done) => setTimeout(done, 20));
  });
}

it('works without a network after the first load, every view of it, and asks nobody but its own site', async () => {
  const site = await serveBuiltSite();
  const context = await browser.newContext({ viewport: SIZES.laptop });
  try {
    const strangers = strangersOf(context, site.url);
    const faults: string[] = [];
    const page = await context.newPage();
    page.on('pageerror', (error) => faults.push(error.message));
    await page.goto(`${site.url}#key`);
    await waitForView(page, 'key');
    await waitForWorker(page);
    const asked: string[] = [];
    context.on('response', (response) => {
      if (!response.fromServiceWorker() && response.url().startsWith('http')) asked.push(response.url());
    });

    // The cable is out, and the server is gone too.
    await context.setOffline(true);
    await site.close();
    await page.goto('about:blank');
    await page.goto(`${site.url}#sheet`);
    await waitForView(page, 'sheet');
    for (const view of VIEW_NAMES) {
      await page.evaluate((name) => (location.hash = `#${name}`), view);
      await waitForView(page, view);
    }
    // What is typed is understood and kept, with what reads it and what keeps it fetched only now.
    await page.evaluate(() => (location.hash = '#sheet'));
    const cell = page.locator('input[data-pad="e"][data-cell="asSet"]');
    await cell.fill('7.3');
    await cell.press('Enter');
    await page.locator('.wb-kept', { hasText: '✓ saved' }).waitFor();
    await page.reload();
    await waitForView(page, 'sheet');
    expect(await cell.inputValue()).toContain('7.3');

    expect(strangers).toEqual([]);
    expect(faults).toEqual([]);
    expect(asked).toEqual([]);
  } finally {
    await context.close();
    await site.close().catch(() => undefined);
  }
}, 180_000);
