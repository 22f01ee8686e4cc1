import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import { openWorkbench, serveBuiltSite, SIZES, waitForView, type BuiltSite } from './built-site.ts';
import { launchBrowser } from './find-browser.ts';
import { faultsByAxe } from './axe.ts';

const LOG = fileURLToPath(new URL('../../datasets/logs/demo-alto.csv', import.meta.url));

let browser: Browser;
let site: BuiltSite;

beforeAll(async () => {
  [browser, site] = await Promise.all([launchBrowser(), serveBuiltSite()]);
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
});

/** Played, with the demo log brought in and fitted; whatever goes wrong on the page fails the test. */
async function openFitted(size: { width: number; height: number } = SIZES.laptop): Promise<Page> {
  const { page, faults } = await openWorkbench(browser, site, size, 'played');
  onTestFinished(async () => {
    await page.close();
    expect(faults).toEqual([]);
  });
  await page.locator('.pl-file input[accept*="csv"]').setInputFiles(LOG);
  await fitted(page);
  return page;
}

async function fitted(page: Page): Promise<void> {
  await page.waitForSelector('.cb-panel[aria-busy="false"] .cb-answer');
  await expect.poll(() => answer(page), { timeout: 20_000 }).toMatch(/what is left is ±\d/);
}

const answer = (page: Page): Promise<string> => page.locator('.cb-answer').innerText();

async function violationsOn(page: Page): Promise<string[]> {
  return faultsByAxe(page);
}

/** The ± of the picked note's pitch on the scale, cents. */
async function plusMinusOnScale(page: Page): Promise<number> {
  const words = (): Promise<string> => page.locator('.sc-note-told').innerText();
  await expect.poll(words, { timeout: 20_000 }).toMatch(/±\s*\d/);
  return Number(/±\s*([\d.]+)/.exec(await words())![1]);
}

describe('the calibration in a browser', () => {
  it('says what a table of notes puts where, and names the note that slipped', async () => {
    const page = await openFitted();
    expect(await answer(page)).toMatch(/^The log puts the mouthpiece .* than written/);
    expect(await page.locator('.cb-sentences').innerText()).toMatch(
      /D5 was left out of the fit: \d\d\scents above/,
    );
  }, 60_000);

  it('fits what is chosen, and undoes a choice', async () => {
    const page = await openFitted();
    const row = page.locator('tr', { has: page.locator('[data-unknown="player’s trend"]') });
    expect(await row.locator('.cb-standing').innerText()).toBe('as written');
    await page.locator('[data-unknown="player’s trend"]').check();
    await expect.poll(() => row.locator('.cb-value').innerText()).toMatch(/cents an octave/);
    await page.locator('button[aria-label="Undo"]').click();
    await expect.poll(() => row.locator('.cb-standing').innerText()).toBe('as written');
    expect(await page.locator('[data-unknown="player’s trend"]').isChecked()).toBe(false);
  }, 60_000);

  it('once used makes every pitch surer, on every view that shows pitches, until it is put off', async () => {
    const page = await openFitted();
    await page.goto(`${site.url}#scale`);
    await waitForView(page, 'scale');
    const before = await plusMinusOnScale(page);
    await page.goto(`${site.url}#played`);
    await page.locator('[data-act="use-calibration"]').check();
    await page.goto(`${site.url}#scale`);
    await page.locator('.ks-cautions', { hasText: 'as calibrated to 31 notes' }).waitFor();
    await expect.poll(() => plusMinusOnScale(page), { timeout: 20_000 }).toBeLessThan(before / 2);
    await page.goto(`${site.url}#key`);
    await page.locator('.ks-cautions', { hasText: 'as calibrated to 31 notes' }).waitFor();
    await page.goto(`${site.url}#played`);
    await page.locator('[data-act="use-calibration"]').uncheck();
    await page.goto(`${site.url}#scale`);
    await expect.poll(() => plusMinusOnScale(page), { timeout: 20_000 }).toBe(before);
  }, 90_000);

  it('shows on the scale what is left of every note, and the key that could explain it', async () => {
    const page = await openFitted();
    await page.goto(`${site.url}#scale`);
    await page.waitForSelector('.sc-played tbody tr');
    const row = page.locator('.sc-played tr', { has: page.locator('th', { hasText: /^\s*F4\s*$/ }) });
    expect(await row.innerText()).toMatch(
      /could be the E key, if it stood \d\.\d ± \d\.\d+ mm lower than written/,
    );
    await row.locator('button').click();
    await expect.poll(() => page.locator('#sc-note-title').innerText()).toBe('Note F4');
  }, 60_000);

  it.each(Object.entries(SIZES))(
    'fits a %s, nothing sideways, and is free of what keeps people out',
    async (_, size) => {
      const page = await openFitted(size);
      for (const view of ['played', 'scale'] as const) {
        await page.goto(`${site.url}#${view}`);
        await waitForView(page, view);
        if (view === 'scale') await page.waitForSelector('.sc-played tbody tr');
        expect(
          await page.evaluate(() => document.documentElement.scrollWidth - innerWidth),
        ).toBeLessThanOrEqual(0);
        const small = await page
          .locator('.cb-panel label')
          .evaluateAll((labels) =>
            labels
              .filter((label) => label.getBoundingClientRect().height < 44)
              .map((label) => label.textContent),
          );
        expect(small).toEqual([]);
        expect(await violationsOn(page)).toEqual([]);
      }
    },
    90_000,
  );
});
