import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { openWorkbench, serveBuiltSite, SIZES } from './built-site.ts';
import { launchBrowser } from './find-browser.ts';

// Takes pictures of the built site at the sizes it is made for, and the one the README shows:
//   npm run pictures [-- folder]
const folder = process.argv[2] ?? '.cache/pictures';
const forReadme = fileURLToPath(new URL('../../notes/pictures', import.meta.url));
mkdirSync(folder, { recursive: true });
mkdirSync(forReadme, { recursive: true });

const site = await serveBuiltSite();
const browser = await launchBrowser();
try {
  for (const [name, size] of Object.entries(SIZES)) {
    const { page, faults } = await openWorkbench(browser, site, size);
    await page.waitForTimeout(300);
    await page.screenshot({ path: join(folder, `${name}.png`) });
    await page.screenshot({ path: join(folder, `${name}-whole.png`), fullPage: true });
    if (name === 'laptop') await page.screenshot({ path: join(forReadme, 'key-study.png') });
    for (const fault of faults) console.error(`${name}: ${fault}`);
    await page.close();
  }
  const { page } = await openWorkbench(browser, site, { width: 794, height: 1123 });
  await page.emulateMedia({ media: 'print' });
  await page.waitForTimeout(500);
  await page.screenshot({ path: join(folder, 'print.png'), fullPage: true });
  await page.emulateMedia({ media: null });
  await page.pdf({
    path: join(folder, 'print.pdf'),
    format: 'A4',
    margin: { top: '12mm', left: '12mm', right: '12mm' },
  });
  await page.close();
  console.log(`pictures in ${folder} and notes/pictures`);
} finally {
  await browser.close();
  await site.close();
}
