import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const AXE = createRequire(import.meta.url).resolve('axe-core/axe.min.js');

/**
 * Every fault axe finds on a page as it stands, in one of the two themes.
 *
 * @param within selector of the part that is looked at; the whole page unless told
 */
export async function axeViolations(
  page: Page,
  colorScheme: 'light' | 'dark',
  within = 'html',
): Promise<string[]> {
  await page.emulateMedia({ colorScheme });
  await page.evaluate(readFileSync(AXE, 'utf8'));
  return page.evaluate(async (part) => {
    const { axe } = window as unknown as { axe: typeof import('axe-core') };
    const { violations } = await axe.run(part);
    return violations.map(({ id, nodes }) => `${id}: ${nodes.map((n) => n.html.slice(0, 120)).join(' | ')}`);
  }, within);
}
