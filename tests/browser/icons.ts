/** Draws public/icon.svg as the PNGs the web app manifest names: `npm run icons`. */
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { launchBrowser } from './find-browser.ts';

const at = (name: string): string => fileURLToPath(new URL(`../../public/${name}`, import.meta.url));
const svg = readFileSync(at('icon.svg'), 'utf8');
const browser = await launchBrowser();
for (const size of [192, 512]) {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  await page.setContent(`<style>body { margin: 0 } svg { display: block; width: 100vw }</style>${svg}`);
  writeFileSync(at(`icon-${size}.png`), await page.screenshot());
  await page.close();
}
await browser.close();
