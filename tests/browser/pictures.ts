import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { openWorkbench, serveBuiltSite, SIZES, waitForSheet } from './built-site.ts';
import { launchBrowser } from './find-browser.ts';

// Takes pictures of the built site at the sizes it is made for, and the one the README shows:
//   npm run pictures [-- folder]
const folder = process.argv[2] ?? '.cache/pictures';
const forReadme = fileURLToPath(new URL('../../notes/pictures', import.meta.url));
mkdirSync(folder, { recursive: true });
mkdirSync(forReadme, { recursive: true });

const README_PICTURES = { sheet: 'sheet.png', key: 'key-study.png', scale: 'scale.png' } as const;

/** A sheet at work: two keys set, one typed wrongly, the rest proposed. */
async function fillIn(page: Page): Promise<void> {
  await waitForSheet(page);
  const type = async (pad: string, column: string, text: string): Promise<void> => {
    await page.locator(`input[data-pad="${pad}"][data-cell="${column}"]`).fill(text);
    await page.keyboard.press('Enter');
  };
  await type('e', 'asSet', '9.1');
  await type('d', 'asSet', '4.9 c');
  await type('g', 'openingMm', 'wide');
  await waitForSheet(page);
  await page.locator('[data-act="propose-enough"]').click();
  await waitForSheet(page);
  await page.evaluate(() => scrollTo(0, 0));
}

/** What is done on a view before its picture is taken. */
const PREPARE = { sheet: fillIn, key: () => Promise.resolve(), scale: proposeSome } as const;

/** A bench at work: the F key lower, the E key higher than found. */
async function proposeSome(page: Page): Promise<void> {
  const slide = async (keyId: string, mm: string): Promise<void> => {
    await page.locator(`vw-key-strip [data-key="${keyId}"]`).click();
    await page.waitForSelector(`vw-opening-slider[data-key="${keyId}"]`);
    await page.locator('vw-opening-slider input[type="range"]').fill(mm);
    await page.waitForTimeout(300);
  };
  await slide('f', '6.5');
  await slide('e', '12');
}

const site = await serveBuiltSite();
const browser = await launchBrowser();
try {
  for (const view of ['sheet', 'key', 'scale'] as const) {
    for (const [name, size] of Object.entries(SIZES)) {
      const { page, faults } = await openWorkbench(browser, site, size, view);
      await PREPARE[view](page);
      await page.waitForTimeout(400);
      await page.screenshot({ path: join(folder, `${view}-${name}.png`) });
      await page.screenshot({ path: join(folder, `${view}-${name}-whole.png`), fullPage: true });
      if (name === 'laptop') await page.screenshot({ path: join(forReadme, README_PICTURES[view]) });
      for (const fault of faults) console.error(`${view}, ${name}: ${fault}`);
      await page.close();
    }
    const { page } = await openWorkbench(browser, site, { width: 794, height: 1123 }, view);
    await PREPARE[view](page);
    await page.emulateMedia({ media: 'print' });
    await page.waitForTimeout(500);
    await page.screenshot({ path: join(folder, `${view}-print.png`), fullPage: true });
    await page.emulateMedia({ media: null });
    await page.pdf({
      path: join(folder, `${view}-print.pdf`),
      format: 'A4',
      preferCSSPageSize: view === 'sheet',
      margin: { top: '12mm', left: '12mm', right: '12mm' },
    });
    await page.close();
  }
  console.log(`pictures in ${folder} and notes/pictures`);
} finally {
  await browser.close();
  await site.close();
}
