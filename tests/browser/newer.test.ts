import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { SIZES, serveSite, waitForView } from './built-site.ts';
import { launchBrowser } from './find-browser.ts';

const DIST = fileURLToPath(new URL('../../dist', import.meta.url));
let browser: Browser;

beforeAll(async () => {
  browser = await launchBrowser();
});

afterAll(async () => {
  await browser?.close();
});

/** A copy of the built site that can be released anew. */
function copiedSite(): { readonly folder: string; release(name: string): void; remove(): void } {
  const folder = mkdtempSync(join(tmpdir(), 'ventwright-newer-'));
  cpSync(process.env.VENTWRIGHT_DIST ?? DIST, folder, { recursive: true });
  return {
    folder,
    release(name) {
      const page = readFileSync(join(folder, 'index.html'), 'utf8');
      writeFileSync(
        join(folder, 'index.html'),
        page.replace(
          /(<meta name="release"[^>]*>)?<\/head>/,
          `<meta name="release" content="${name}"></head>`,
        ),
      );
      const worker = readFileSync(join(folder, 'sw.js'), 'utf8');
      const released = worker.replace(
        /(url:"index\.html",revision:")[^"]*|(revision:")[^"]*(",url:"index\.html")/,
        (_, before: string | undefined, other: string, after: string) =>
          before === undefined ? `${other}${name}${after}` : `${before}${name}`,
      );
      expect(released).not.toBe(worker);
      writeFileSync(join(folder, 'sw.js'), released);
    },
    remove: () => rmSync(folder, { recursive: true }),
  };
}

const releaseOf = (page: Page): Promise<string | null> =>
  page.evaluate(() => document.querySelector('meta[name="release"]')?.getAttribute('content') ?? null);

async function waitForWorker(page: Page): Promise<void> {
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
    while (navigator.serviceWorker.controller === null) await new Promise((done) => setTimeout(done, 20));
  });
}

const lookForNewer = (page: Page): Promise<unknown> =>
  page.evaluate(async () => {
    await (await navigator.serviceWorker.getRegistration())!.update();
  });

describe('a newer program', () => {
  it('is announced, steps aside while a text is typed, and comes when it is taken, with all that was done kept', async () => {
    const copy = copiedSite();
    const site = await serveSite(copy.folder);
    const context = await browser.newContext({ viewport: SIZES.laptop });
    try {
      const page = await context.newPage();
      await page.goto(`${site.url}#sheet`);
      await waitForView(page, 'sheet');
      await waitForWorker(page);
      const notice = page.locator('.wb-newer');
      expect(await notice.count()).toBe(0);

      copy.release('second');
      await lookForNewer(page);
      await notice.waitFor();
      // The page in hand is the one it was.
      expect(await releaseOf(page)).toBeNull();

      const cell = page.locator('input[data-pad="e"][data-cell="asSet"]');
      await cell.fill('7.3');
      expect(await notice.isVisible()).toBe(false);
      await cell.press('Tab');
      await page.locator('body').click({ position: { x: 2, y: 2 } });
      await notice.waitFor();
      await notice.getByRole('button', { name: 'Take it now' }).click();
      await expect.poll(() => releaseOf(page).catch(() => null)).toBe('second');
      await waitForView(page, 'sheet');
      expect(await cell.inputValue()).toContain('7.3');
      expect(await notice.count()).toBe(0);
    } finally {
      await context.close();
      await site.close();
      copy.remove();
    }
  }, 120_000);

  it('never comes by itself, and can be put off', async () => {
    const copy = copiedSite();
    const site = await serveSite(copy.folder);
    const context = await browser.newContext({ viewport: SIZES.phone });
    try {
      const page = await context.newPage();
      await page.goto(`${site.url}#key`);
      await waitForView(page, 'key');
      await waitForWorker(page);
      copy.release('second');
      await lookForNewer(page);
      const notice = page.locator('.wb-newer');
      await notice.waitFor();
      const box = (await notice.boundingBox())!;
      expect(box.x).toBeGreaterThanOrEqual(0);
      expect(box.x + box.width).toBeLessThanOrEqual(SIZES.phone.width);
      await notice.getByRole('button', { name: 'Later' }).click();
      expect(await notice.count()).toBe(0);
      expect(await releaseOf(page)).toBeNull();
    } finally {
      await context.close();
      await site.close();
      copy.remove();
    }
  }, 120_000);
});

describe('the workbench on a machine', () => {
  it('can be installed: Chromium finds nothing missing', async () => {
    const site = await serveSite(process.env.VENTWRIGHT_DIST ?? DIST);
    const context = await browser.newContext({ viewport: SIZES.laptop });
    try {
      const page = await context.newPage();
      await page.goto(`${site.url}#key`);
      await waitForView(page, 'key');
      await waitForWorker(page);
      const devtools = await context.newCDPSession(page);
      const { errors, data } = await devtools.send('Page.getAppManifest');
      expect(errors).toEqual([]);
      expect(JSON.parse(data ?? '{}')).toMatchObject({ name: 'Ventwright', display: 'standalone' });
      const { installabilityErrors } = await devtools.send('Page.getInstallabilityErrors');
      // A fresh browser context counts as a private window, which no page can be installed from.
      expect(installabilityErrors.filter(({ errorId }) => errorId !== 'in-incognito')).toEqual([]);
    } finally {
      await context.close();
      await site.close();
    }
  }, 60_000);
});
