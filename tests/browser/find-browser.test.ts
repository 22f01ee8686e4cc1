import { chromium } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { findBrowser, packagedBrowser } from './find-browser.ts';

describe('the browser that came with the packages', () => {
  it('opens one page after another, for machines that have no other', async (test) => {
    const { executablePath, args } = await packagedBrowser();
    const browser = await chromium.launch({ executablePath, args: [...args] }).catch((error: unknown) => {
      test.skip(`it does not run on this machine, which needs one of its own: ${String(error)}`);
      throw error;
    });
    for (const words of ['first', 'second', 'third']) {
      const page = await browser.newPage();
      await page.setContent(`<p>${words}</p>`);
      expect(await page.locator('p').innerText()).toBe(words);
      await page.close();
    }
    await browser.close();
  });
});

describe('the browser that is found', () => {
  it('is there, and says from where', async () => {
    const { executablePath, from } = await findBrowser();
    expect(executablePath.length).toBeGreaterThan(0);
    expect(from.length).toBeGreaterThan(0);
  });
});
