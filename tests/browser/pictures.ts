import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { openWorkbench, serveBuiltSite, SIZES } from './built-site.ts';
import { launchBrowser } from './find-browser.ts';

// Takes pictures of the built site at the sizes it is made for, and the one the README shows:
//   npm run pictures [-- folder]
const folder = process.argv[2] ?? '.cache/pictures';
const forReadme = fileURLToPath(new URL('../../notes/pictures', import.meta.url));
mkdirSync(folder, { recursive: true });
mkdirSync(forReadme, { recursive: true });

const README_PICTURES = { key: 'key-study.png', scale: 'scale.png' } as const;

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
  for (const view of ['key', 'scale'] as const) {
    for (const [name, size] of Object.entries(SIZES)) {
      const { page, faults } = await openWorkbench(browser, site, size, view);
      if (view === 'scale') await proposeSome(page);
      await page.waitForTimeout(400);
      await page.screenshot({ path: join(folder, `${view}-${name}.png`) });
      await page.screenshot({ path: join(folder, `${view}-${name}-whole.png`), fullPage: true });
      if (name === 'laptop') await page.screenshot({ path: join(forReadme, README_PICTURES[view]) });
      for (const fault of faults) console.error(`${view}, ${name}: ${fault}`);
      await page.close();
    }
    const { page } = await openWorkbench(browser, site, { width: 794, height: 1123 }, view);
    if (view === 'scale') await proposeSome(page);
    await page.emulateMedia({ media: 'print' });
    await page.waitForTimeout(500);
    await page.screenshot({ path: join(folder, `${view}-print.png`), fullPage: true });
    await page.emulateMedia({ media: null });
    await page.pdf({
      path: join(folder, `${view}-print.pdf`),
      format: 'A4',
      margin: { top: '12mm', left: '12mm', right: '12mm' },
    });
    await page.close();
  }
  console.log(`pictures in ${folder} and notes/pictures`);
} finally {
  await browser.close();
  await site.close();
}
