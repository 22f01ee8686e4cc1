import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import { formatBoth } from '../../src/documents/length-format.ts';
import { STORY } from '../../src/ui/state/story-cards.ts';
import type { ViewName } from '../../src/ui/state/view-names.ts';
import { report } from '../ui/demo.ts';
import { faultsByAxe } from './axe.ts';
import { openWorkbench, serveBuiltSite, SIZES, waitForView, type BuiltSite } from './built-site.ts';
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

/** Opens the workbench as on a first visit; whatever goes wrong on the page fails the test that opened it. */
async function firstVisit(size: { width: number; height: number } = SIZES.laptop): Promise<Page> {
  const { page, faults } = await openWorkbench(browser, site, size, 'key', { story: true });
  onTestFinished(async () => {
    await page.close();
    expect(faults).toEqual([]);
  });
  await page.waitForSelector('vw-story h2');
  return page;
}

const words = async (page: Page, part: 'h2' | 'p'): Promise<string> =>
  (await page.locator(`vw-story ${part}`).innerText()).replaceAll('\u00a0', ' ');

/** Waits for a card with its numbers. */
const isTold = (page: Page, title: string): Promise<void> =>
  expect
    .poll(async () => `${await words(page, 'h2')}: ${await words(page, 'p')}`, { timeout: 15_000 })
    .toMatch(new RegExp(`^${title.replaceAll('?', '\\?')} \\d of ${STORY.length}: (?!The numbers are on)`));

const shown = (page: Page): Promise<{ view: ViewName; keyId: string; past: number; kept: string }> =>
  page.evaluate(() => {
    const { view, horns, hornId, keeping } = document.querySelector('vw-workbench')!.bench!.store.get();
    const { keyId, past } = horns[hornId];
    return { view, keyId, past: past.length, kept: keeping.kind };
  });

describe('the story, built', () => {
  it('is told by keyboard through the real views, and changes nothing', async () => {
    const page = await firstVisit();
    await page.locator('vw-story .next').focus();
    for (const [i, { title, place }] of STORY.entries()) {
      await isTold(page, title);
      const { view, keyId } = await shown(page);
      if (place !== null) expect([title, view]).toEqual([title, place.view]);
      if (place?.keyId) expect([title, keyId]).toEqual([title, place.keyId]);
      if (place?.mark) await page.waitForSelector('[data-story-mark]');
      if (i < STORY.length - 1) await page.keyboard.press('Enter');
    }
    expect(await shown(page)).toMatchObject({ past: 0, kept: 'untouched' });
    await page.keyboard.press('Enter');
    await expect.poll(() => page.locator('vw-story').count()).toBe(0);
    expect(await page.locator('[data-story-mark]').count()).toBe(0);
    expect(await page.evaluate(() => document.activeElement?.localName)).toBe('vw-day-path');
  });

  it('tells the core’s own numbers', async () => {
    const page = await firstVisit();
    await page.locator('vw-story .next').click();
    await isTold(page, STORY[1].title);
    const { present } = report('d');
    expect(await words(page, 'p')).toContain(formatBoth(present.frontMm, 'mm'));
    await page.locator('[data-act="unit"] input[value="thou"]').click();
    await expect.poll(() => words(page, 'p')).toContain(formatBoth(present.frontMm, 'thou'));
  });

  it('comes of itself once, and again on asking', async () => {
    const page = await firstVisit();
    await page.reload();
    await waitForView(page, 'key');
    await page.waitForSelector('vw-day-path .fold');
    expect(await page.locator('vw-story').count()).toBe(0);
    await page.evaluate(() => (location.hash = 'library'));
    await waitForView(page, 'library');
    await page.locator('.lb-bench [data-act="story"]').click();
    await page.waitForSelector('vw-story h2');
    expect(await words(page, 'h2')).toContain(STORY[0].title);
  });

  it('waits while something else is looked at, and can be left at any card by Escape', async () => {
    const page = await firstVisit();
    await page.locator('vw-story .next').click();
    await isTold(page, STORY[1].title);
    await page.getByRole('link', { name: 'Library' }).click();
    await waitForView(page, 'library');
    expect(await words(page, 'p')).toContain('goes on where you left it');
    await page.locator('vw-story [data-act="show"]').click();
    await waitForView(page, 'key');
    await isTold(page, STORY[1].title);
    await page.locator('vw-story [data-act="back"]').focus();
    await page.keyboard.press('Escape');
    await expect.poll(() => page.locator('vw-story').count()).toBe(0);
  });

  it('leaves the foot to what the page has to tell', async () => {
    const page = await firstVisit();
    await page.evaluate(() => document.querySelector('vw-workbench')!.bench!.tell('The lamp has gone out.'));
    const alert = page.locator('.wb-alert', { hasText: 'The lamp has gone out.' });
    const bottom = async (part: ReturnType<Page['locator']>): Promise<number> => {
      const box = (await part.boundingBox())!;
      return box.y + box.height;
    };
    await expect.poll(() => bottom(alert)).toBe(SIZES.laptop.height);
    expect(await bottom(page.locator('vw-story'))).toBeLessThan((await alert.boundingBox())!.y);
    await page.getByRole('button', { name: 'Close' }).click();
  });

  it('keeps a proposal that a person takes on the way', async () => {
    const page = await firstVisit();
    await page.locator('vw-story .next').click();
    await page.locator('vw-story .next').click();
    await isTold(page, STORY[2].title);
    await page.locator('vw-opening-slider input[type="range"]').fill('9.5');
    await expect.poll(async () => (await shown(page)).past).toBe(1);
    await page.locator('vw-story .next').click();
    await isTold(page, STORY[3].title);
    expect((await shown(page)).past).toBe(1);
  });

  it.each(Object.entries(SIZES))(
    'on the %s covers nothing, keeps what it speaks of in sight, and no fault axe can find',
    async (_name, size) => {
      const page = await firstVisit(size);
      const boxOf = async (part: string) => (await page.locator(part).first().boundingBox())!;
      const [view, first] = [await boxOf('main'), await boxOf('vw-story')];
      expect(first.y + first.height).toBeLessThanOrEqual(view.y + 1);
      for (const { title, place } of STORY.slice(0, 4)) {
        await isTold(page, title);
        if (place !== null) {
          await page.waitForSelector('[data-story-mark]');
          // A page that scrolls gently takes its time.
          await expect
            .poll(async () => {
              const [mark, card] = [await boxOf('[data-story-mark]'), await boxOf('vw-story')];
              return (
                mark.y >= card.y + card.height - 1 &&
                mark.y + Math.min(mark.height, size.height / 2) <= size.height + 1
              );
            })
            .toBe(true);
        }
        if (title !== STORY[3].title) await page.locator('vw-story .next').click();
      }
      await page.evaluate(() => scrollTo(0, document.documentElement.scrollHeight));
      await expect.poll(async () => (await boxOf('vw-story')).y).toBe(0);
      const band = await boxOf('vw-story');
      expect(band.height).toBeLessThan(size.height * 0.3);
      const buttons = await page.locator('vw-story button').all();
      for (const button of buttons) {
        const box = (await button.boundingBox())!;
        expect(box.height).toBeGreaterThanOrEqual(44 - 0.01);
        expect(box.x + box.width).toBeLessThanOrEqual(size.width);
      }
      for (const theme of ['light', 'dark'] as const) await page.emulateMedia({ colorScheme: theme });
      expect(await faultsByAxe(page, 'vw-guidance')).toEqual([]);
    },
  );
});
