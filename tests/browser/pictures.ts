import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { openWorkbench, serveBuiltSite, SIZES, waitForSheet } from './built-site.ts';
import { launchBrowser } from './find-browser.ts';

// Takes pictures of the built site at the sizes it is made for, and those the README shows:
//   npm run pictures [-- folder]
const folder = process.argv[2] ?? '.cache/pictures';
const forReadme = fileURLToPath(new URL('../../notes/pictures', import.meta.url));
const DEMO_LOG = fileURLToPath(new URL('../../datasets/logs/demo-alto.csv', import.meta.url));
mkdirSync(folder, { recursive: true });
mkdirSync(forReadme, { recursive: true });

/** The views that are taken, and under which name the README shows them. */
const TAKEN = {
  sheet: 'sheet.png',
  key: 'key-study.png',
  scale: 'scale.png',
  played: null,
  proposal: null,
  'player-sheet': 'player-sheet.png',
} as const;
type Taken = keyof typeof TAKEN;

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
const PREPARE: Readonly<Record<Taken, (page: Page) => Promise<void>>> = {
  sheet: fillIn,
  key: () => Promise.resolve(),
  scale: proposeSome,
  played: bringInLog,
  proposal: () => Promise.resolve(),
  'player-sheet': decide,
};

/** Notes logged as found, and what they tell of the horn. */
async function bringInLog(page: Page): Promise<void> {
  await page.getByLabel('From a table').setInputFiles(DEMO_LOG);
  await page.waitForSelector('.cb-panel[aria-busy="false"] .cb-table');
}

/** A player’s wish, two keys proposed for it and set. */
async function decide(page: Page): Promise<void> {
  await page.evaluate(() => (location.hash = 'sheet'));
  await waitForSheet(page);
  await page.locator('.sh-who summary').click();
  await page.locator('#sh-player').fill('Runa Falk');
  await page.locator('#sh-wish').fill('A freer low E, and no key higher than it must be');
  await page.keyboard.press('Tab');
  for (const [pad, mm] of [
    ['e', '9.1'],
    ['d', '9.0'],
  ]) {
    for (const column of ['proposed', 'asSet']) {
      await page.locator(`input[data-pad="${pad}"][data-cell="${column}"]`).fill(mm);
      await page.keyboard.press('Enter');
    }
  }
  await waitForSheet(page);
  await page.evaluate(() => (location.hash = 'player-sheet'));
  await page.waitForSelector('.ps-desk[aria-busy="false"] .ps-page[data-fit]');
}

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

/** The path of the day with its steps, over a sheet at work. */
async function takePath(browser: Browser): Promise<void> {
  for (const [name, size] of Object.entries(SIZES)) {
    const { page } = await openWorkbench(browser, site, size, 'sheet');
    await fillIn(page);
    await page.locator('vw-day-path .fold').click();
    await page.waitForSelector('vw-day-path #steps[data-placed]');
    await page.screenshot({ path: join(folder, `path-${name}.png`) });
    await page.close();
  }
}

const site = await serveBuiltSite();
const browser = await launchBrowser();
try {
  for (const view of Object.keys(TAKEN) as Taken[]) {
    for (const [name, size] of Object.entries(SIZES)) {
      const { page, faults } = await openWorkbench(browser, site, size, view);
      await PREPARE[view](page);
      await page.waitForTimeout(400);
      await page.screenshot({ path: join(folder, `${view}-${name}.png`) });
      await page.screenshot({ path: join(folder, `${view}-${name}-whole.png`), fullPage: true });
      const shown = TAKEN[view];
      if (name === 'laptop' && shown !== null) await page.screenshot({ path: join(forReadme, shown) });
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
      preferCSSPageSize: view === 'sheet' || view === 'player-sheet',
      margin: { top: '12mm', left: '12mm', right: '12mm' },
    });
    await page.close();
  }
  await takePath(browser);
  console.log(`pictures in ${folder} and notes/pictures`);
} finally {
  await browser.close();
  await site.close();
}
