import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openWorkbench, serveBuiltSite, SIZES, waitForSheet, type BuiltSite } from './built-site.ts';
import { launchBrowser } from './find-browser.ts';
import { faultsByAxe } from './axe.ts';

let site: BuiltSite;
let browser: Browser;

beforeAll(async () => {
  site = await serveBuiltSite();
  browser = await launchBrowser();
});
afterAll(async () => {
  await browser.close();
  await site.close();
});

async function openSheet(size: keyof typeof SIZES): Promise<Page> {
  const { page } = await openWorkbench(browser, site, SIZES[size], 'sheet');
  await waitForSheet(page);
  return page;
}

const SHARE = '.sh-row[data-pad="e"] .sh-share vw-reason';

/** Where a figure and its open panel are on the screen. */
async function boxes(page: Page, figure: string) {
  const first = page.locator(figure).first();
  const panel = first.locator('.panel[data-placed]');
  await panel.waitFor();
  return {
    figure: (await first.locator('button.figure').boundingBox())!,
    panel: (await panel.boundingBox())!,
  };
}

async function violations(page: Page): Promise<string[]> {
  return faultsByAxe(page);
}

describe('a figure that opens its reason', () => {
  it('is opened and left by keyboard, and the focus comes back to it', async () => {
    const page = await openSheet('laptop');
    const figure = page.locator(`${SHARE} button.figure`);
    await figure.focus();
    await page.keyboard.press('Enter');
    const panel = page.getByRole('dialog');
    await panel.waitFor();
    expect(await figure.getAttribute('aria-expanded')).toBe('true');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Escape');
    await panel.waitFor({ state: 'hidden' });
    expect(await figure.getAttribute('aria-expanded')).toBe('false');
    expect(await figure.evaluate((el) => (el.getRootNode() as ShadowRoot).activeElement === el)).toBe(true);
    await page.close();
  });

  it('is opened from a cell of its row, and the focus comes back to the figure', async () => {
    const page = await openSheet('laptop');
    const enough = '.sh-row[data-pad="e"] .sh-enough vw-reason';
    for (const [keys, selector] of [
      ['Alt+Enter', enough],
      ['Alt+Shift+Enter', SHARE],
    ] as const) {
      await page.locator('input[data-pad="e"][data-cell="asSet"]').focus();
      await page.keyboard.press(keys);
      await boxes(page, selector);
      await page.keyboard.press('Escape');
      await page.getByRole('dialog').waitFor({ state: 'hidden' });
    }
    await page.close();
  });

  it.each(['laptop', 'tablet', 'phone'] as const)('is not covered by its panel on a %s', async (size) => {
    const page = await openSheet(size);
    for (const selector of ['h1 vw-reason', SHARE, '.sh-row[data-pad="highFSharp"] .sh-enough vw-reason']) {
      if ((await page.locator(selector).count()) === 0) continue;
      await page.locator(selector).first().click();
      const { figure, panel } = await boxes(page, selector);
      expect(figure.y + figure.height <= panel.y + 1 || panel.y + panel.height <= figure.y + 1).toBe(true);
      expect(figure.y).toBeGreaterThanOrEqual(-1);
      expect(panel.y + panel.height).toBeLessThanOrEqual(SIZES[size].height + 1);
      expect(panel.x + panel.width).toBeLessThanOrEqual(SIZES[size].width + 1);
      await page.keyboard.press('Escape');
    }
    await page.close();
  });

  it('goes when something else is touched, and leaves the page as it was', async () => {
    const page = await openSheet('phone');
    const height = (): Promise<number> => page.evaluate(() => document.documentElement.scrollHeight);
    const before = await height();
    await page.locator(SHARE).click();
    await boxes(page, SHARE);
    await page.locator('.sh-row[data-pad="e"] .sh-name').click({ trial: true });
    await page.mouse.click(SIZES.phone.width - 3, SIZES.phone.height / 2);
    await page.getByRole('dialog').waitFor({ state: 'hidden' });
    expect(await height()).toBe(before);
    await page.close();
  });

  it('leads to the heading of its note, and the way back leads to the sheet', async () => {
    const page = await openSheet('laptop');
    await page.locator(SHARE).click();
    await page.getByRole('link', { name: 'Read the note' }).click();
    await page.waitForSelector('.nt-page h1');
    expect(await page.evaluate(() => location.hash)).toBe('#notes/venting-study/vent-share-from-what');
    const heading = page.locator('#vent-share-from-what');
    const top = (await heading.boundingBox())!.y;
    expect(top).toBeGreaterThanOrEqual(-1);
    expect(top).toBeLessThan(300);
    await page.goBack();
    await page.waitForSelector('.sh-share');
    await page.close();
  });

  it.each(['light', 'dark'] as const)('is fit for everybody with its panel open, %s', async (colorScheme) => {
    const page = await openSheet('laptop');
    await page.emulateMedia({ colorScheme });
    await page.locator(SHARE).click();
    await boxes(page, SHARE);
    expect(await violations(page)).toEqual([]);
    await page.close();
  });

  it('leaves nothing of itself on paper', async () => {
    const page = await openSheet('laptop');
    await page.locator(SHARE).click();
    await boxes(page, SHARE);
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator(`${SHARE} .panel`).isVisible()).toBe(false);
    const line = await page
      .locator(`${SHARE} button.figure`)
      .evaluate((el) => getComputedStyle(el).textDecorationLine);
    expect(line).toBe('none');
    await page.close();
  });
});

describe('the notes', () => {
  it.each(['laptop', 'tablet', 'phone'] as const)(
    'are read without sideways scrolling on a %s',
    async (size) => {
      const { page, faults } = await openWorkbench(browser, site, SIZES[size], 'notes');
      const notes = await page
        .locator('.nt-entries a')
        .evaluateAll((links) => links.map((link) => link.getAttribute('href')!));
      expect(notes.length).toBeGreaterThan(7);
      for (const href of notes) {
        await page.goto(`${site.url}${href}`);
        await page.waitForSelector('.nt-note h1');
        const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
        expect([href, over]).toEqual([href, 0]);
      }
      expect(faults).toEqual([]);
      await page.close();
    },
  );

  it('show their drawings, and links lead on within the workbench', async () => {
    const { page } = await openWorkbench(browser, site, SIZES.laptop, 'notes');
    await page.locator('.nt-entries a[href="#notes/hinged-pad"]').click();
    const drawing = page.locator('.nt-picture img');
    await drawing.waitFor();
    await page.waitForFunction(
      () => document.querySelector<HTMLImageElement>('.nt-picture img')!.naturalWidth > 0,
    );
    await page.goto(`${site.url}#notes/uncertainty`);
    await page.locator('article a[href="#notes/whole-horn"]').first().click();
    await page.waitForFunction(() =>
      document.querySelector('.nt-note h1')?.textContent?.includes('whole horn'),
    );
    await page.close();
  });

  it('say so where there is none of that name', async () => {
    const { page } = await openWorkbench(browser, site, SIZES.phone, 'notes');
    await page.goto(`${site.url}#notes/no-such-note`);
    await page.getByText('There is no note called “no-such-note”').waitFor();
    await page.close();
  });

  it.each(['light', 'dark'] as const)('are fit for everybody, %s', async (colorScheme) => {
    const { page } = await openWorkbench(browser, site, SIZES.laptop, 'notes');
    await page.emulateMedia({ colorScheme });
    expect(await violations(page)).toEqual([]);
    for (const note of ['hinged-pad', 'regulation', 'sources']) {
      await page.goto(`${site.url}#notes/${note}`);
      await page.waitForSelector('.nt-note h1');
      expect([note, await violations(page)]).toEqual([note, []]);
    }
    await page.close();
  });
});
