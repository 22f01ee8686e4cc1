import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import { answerProposal } from '../ui/demo-proposal.ts';
import { openWorkbench, serveBuiltSite, SIZES, type BuiltSite } from './built-site.ts';
import { faultsByAxe } from './axe.ts';
import { launchBrowser } from './find-browser.ts';

let browser: Browser;
let site: BuiltSite;

beforeAll(async () => {
  [browser, site] = await Promise.all([launchBrowser(), serveBuiltSite()]);
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
});

/** Opens the view; whatever goes wrong on the page fails the test that opened it. */
async function open(size: { width: number; height: number } = SIZES.laptop): Promise<Page> {
  const { page, faults } = await openWorkbench(browser, site, size, 'proposal');
  onTestFinished(async () => {
    await page.close();
    expect(faults).toEqual([]);
  });
  await answered(page);
  return page;
}

const answered = (page: Page): Promise<unknown> => page.waitForSelector('.pp-answer[aria-busy="false"] h1');

const plain = (text: string): string => text.replaceAll('\u00a0', ' ').replaceAll(/\s+/g, ' ').trim();

const text = async (page: Page, selector: string): Promise<string> =>
  plain(await page.locator(selector).innerText());

const report = answerProposal();

/** What is proposed on the sheet, by pad id. */
async function onSheet(page: Page): Promise<Record<string, string>> {
  await page.locator('.wb-views a', { hasText: 'Sheet' }).click();
  await page.waitForSelector('.sh-share');
  const cells = await page.locator('input[data-cell="proposed"]').all();
  const entries = await Promise.all(
    cells.map(async (cell) => [await cell.getAttribute('data-pad'), await cell.inputValue()] as const),
  );
  return Object.fromEntries(entries.filter(([, value]) => value !== '')) as Record<string, string>;
}

describe('the proposed setup in a browser', () => {
  it('says what the study says, every key with its reason', async () => {
    const page = await open();
    expect(await text(page, '.pp-answer h1')).toBe(plain(report.answer));
    expect(await text(page, '.pp-spread')).toBe(report.spreadSentence);
    expect(await page.locator('.pp-row').count()).toBe(report.keys.length);
    const gSharp = report.keys.find(({ pad }) => pad === 'g-sharp')!;
    expect(await text(page, '.pp-row[data-key="g-sharp"] .pp-why')).toBe(gSharp.why);
    expect(await text(page, '.pp-row[data-key="g-sharp"] .pp-proposed')).toMatch(
      /^7\.\d mm \(0\.\d{3} in\)$/,
    );
  });

  it('takes the first three in one step, which undo takes back', async () => {
    const page = await open();
    await page.locator('[data-act="take-first"]').click();
    await page.waitForSelector('[data-act="take-first"][aria-pressed="true"]');
    expect(await text(page, '.pp-taken')).toContain('Taken: 3 openings are proposed');
    // What is taken is not what to press next.
    const grounds = await page
      .locator('.pp-button')
      .evaluateAll((all) => all.map((el) => getComputedStyle(el).backgroundColor));
    const strong = await page.evaluate(() => {
      const probe = document.body.appendChild(document.createElement('i'));
      probe.style.background = 'var(--vw-try)';
      const { backgroundColor } = getComputedStyle(probe);
      probe.remove();
      return backgroundColor;
    });
    expect(grounds).not.toContain(strong);
    expect(await page.getByRole('button', { name: 'Undo' }).isEnabled()).toBe(true);
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.waitForSelector('[data-act="take-first"][aria-pressed="false"]');
    expect(await page.getByRole('button', { name: 'Undo' }).isEnabled()).toBe(false);
  });

  it('works everything out again around a locked key, by keyboard', async () => {
    const page = await open();
    const lock = page.getByRole('button', { name: 'Lock B', exact: true });
    await lock.focus();
    await page.keyboard.press('Enter');
    await page.waitForSelector('.pp-row[data-key="b"][data-reason="locked"]');
    await answered(page);
    expect(await text(page, '.pp-answer h1')).toBe(plain(answerProposal({ locked: ['b'] }).answer));
    expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe('Lock B');
    await page.keyboard.press('Enter');
    await page.waitForSelector('.pp-row[data-key="b"][data-reason="vent"]');
  });

  it('keeps its locks and what is preferred over a reload', async () => {
    const page = await open();
    await page.getByRole('button', { name: 'Lock B', exact: true }).click();
    await page.locator('[data-act="prefer"] input[value="few moves"]').check();
    await page.locator('.wb-kept', { hasText: '✓ saved' }).waitFor();
    await page.reload();
    await page.waitForSelector('.pp-row[data-key="b"][data-reason="locked"]');
    await answered(page);
    expect(await text(page, '.pp-answer h1')).toBe(
      plain(answerProposal({ locked: ['b'], prefer: 'few moves' }).answer),
    );
    expect(await page.locator('[data-act="prefer"] input:checked').inputValue()).toBe('few moves');
  });

  it('bends to what is preferred', async () => {
    const page = await open();
    await page.locator('[data-act="prefer"] input[value="low keys"]').check();
    await expect
      .poll(() => text(page, '.pp-answer h1'))
      .toBe(plain(answerProposal({ prefer: 'low keys' }).answer));
  });

  it.each(Object.entries(SIZES))('keeps within a %s, and axe finds nothing', async (_, size) => {
    const page = await open(size);
    // The head of the page is every view's: its navigation has tests of its own.
    const wide = await page.evaluate(() =>
      [...document.querySelectorAll('.pp-page *')]
        .filter((e) => e.closest('.pp-head') === null && e.getBoundingClientRect().right > innerWidth + 0.5)
        .map((e) => `${e.tagName}.${e.className.toString()}`),
    );
    expect(wide).toEqual([]);
    expect(await faultsByAxe(page)).toEqual([]);
    const small = await page.evaluate(() =>
      [...document.querySelectorAll('.pp-page button, .pp-page summary, .pp-name a')]
        .filter((e) => e.getBoundingClientRect().height < 44)
        .map((e) => e.textContent),
    );
    expect(small).toEqual([]);
  });

  it('prints the answer and every key, not what is pressed', async () => {
    const page = await open();
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.pp-row .pp-why').last().isVisible()).toBe(true);
    for (const hidden of ['.pp-take', '.pp-lock'])
      expect(await page.locator(hidden).first().isVisible()).toBe(false);
  });

  it('stands on the sheet once taken', async () => {
    const page = await open();
    await page.locator('[data-act="take-all"]').click();
    await page.waitForSelector('[data-act="take-all"][aria-pressed="true"]');
    const moved = report.keys.filter(({ moveMm }) => moveMm !== 0);
    const cells = await onSheet(page);
    expect(Object.keys(cells).sort()).toEqual(moved.map(({ pad }) => pad).sort());
  });
});
