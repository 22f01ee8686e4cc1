import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import type { BenchContents } from '../../src/documents/bench-contents.ts';
import { keyedHoles } from '../../src/documents/horn-document.ts';
import type { ViewName } from '../../src/ui/state/view-names.ts';
import { ALTO } from '../ui/demo.ts';
import { faultsByAxe } from './axe.ts';
import {
  openWorkbench,
  serveBuiltSite,
  SIZES,
  waitForCurve,
  waitForSheet,
  waitForView,
  type BuiltSite,
} from './built-site.ts';
import { launchBrowser } from './find-browser.ts';

/** What a finger in a glove needs, px, less what the browser rounds. */
const FINGER_PX = 44 - 0.01;

/** Every reading typed, every move and link checked off: more than other tests do, ms. */
const WHOLE_DAY_MS = 180_000;

const KEYS = keyedHoles(ALTO.horn).length;

let browser: Browser;
let site: BuiltSite;

beforeAll(async () => {
  [browser, site] = await Promise.all([launchBrowser(), serveBuiltSite()]);
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
});

/** Opens a view; whatever goes wrong on the page fails the test that opened it. */
async function open(
  view: ViewName = 'sheet',
  size: { width: number; height: number } = SIZES.laptop,
): Promise<Page> {
  const { page, faults } = await openWorkbench(browser, site, size, view);
  onTestFinished(async () => {
    await page.close();
    expect(faults).toEqual([]);
  });
  await page.waitForSelector('vw-day-path .fold');
  return page;
}

const next = (page: Page): Locator => page.locator('vw-day-path .next');
const fold = (page: Page): Locator => page.locator('vw-day-path .fold');
const step = (page: Page, name: string): Locator => page.locator(`vw-day-path li[data-step="${name}"]`);

const says = (page: Page, words: string | RegExp): Promise<void> =>
  expect.poll(async () => (await next(page).innerText()).replaceAll('\u00a0', ' ')).toMatch(words);

const inFocus = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const element = document.activeElement as HTMLElement;
    const { pad, cell } = element.dataset;
    return pad === undefined ? element.id : `${pad} ${cell}`;
  });

const onBench = (page: Page): Promise<BenchContents> =>
  page.evaluate(() => {
    const { horns, hornId } = document.querySelector('vw-workbench')!.bench!.store.get();
    return horns[hornId].contents;
  });

const look = async (page: Page, view: ViewName): Promise<void> => {
  await page.evaluate((name) => (location.hash = name), view);
  await waitForView(page, view);
};

describe('the path of the day, built', () => {
  it(
    'leads through a whole day with a new horn, and loses nothing on the way',
    async () => {
      const page = await open('new');
      await page.locator('[data-act="instrument"] input[value="alto"]').click();
      await page.locator('.nh-form input[name="player"]').fill('Runa Falk');
      await page.locator('.nh-go button').click();
      await page.waitForFunction(() => location.hash === '#sheet');
      await waitForView(page, 'sheet');

      await says(page, 'Next: write down the wish');
      await next(page).click();
      await expect.poll(() => inFocus(page)).toBe('sh-wish');
      await page.keyboard.type('a freer low E');
      await page.keyboard.press('Tab');

      await says(page, `Next: read ${KEYS} openings`);
      await next(page).click();
      await expect.poll(() => inFocus(page)).toBe('low-b-flat openingMm');
      for (const mm of ['10', '10', '9.5']) {
        await page.keyboard.type(mm);
        await page.keyboard.press('Enter');
      }
      await says(page, `Next: read ${KEYS - 3} more openings`);
      await look(page, 'leaks');
      await look(page, 'library');
      await next(page).click();
      await expect.poll(() => inFocus(page)).toBe('low-c openingMm');
      for (let i = 3; i < KEYS; i++) {
        await page.keyboard.type('5.5');
        await page.keyboard.press('Enter');
      }

      await says(page, 'Next: check seals and links');
      await next(page).click();
      await waitForView(page, 'work');
      await fold(page).click();
      await step(page, 'seals and links').locator('[data-act="done"]').click();
      await page.keyboard.press('Escape');

      await says(page, 'Next: look at the proposal');
      await next(page).click();
      await waitForView(page, 'proposal');
      await look(page, 'sheet');
      await waitForSheet(page);
      await page.locator('[data-act="propose-enough"]').click();
      await says(page, /^Next: make \d+ moves?, lower stack/);
      await next(page).click();
      await waitForView(page, 'work');
      while ((await page.locator('.wk-check').count()) > 0) {
        const left = await page.locator('.wk-check').count();
        await page.locator('.wk-check').first().click();
        await expect.poll(() => page.locator('.wk-check').count()).not.toBe(left);
      }
      await says(page, 'Next: log what is played');
      await fold(page).click();
      expect(await step(page, 'lower stack').locator('.name span').innerText()).toBe('done');
      expect(await step(page, 'as set').locator('.told').innerText()).toContain('all that was proposed');
      await step(page, 'played').locator('[data-act="not needed"]').click();
      await step(page, 'player’s sheet').locator('.go').click();
      await waitForView(page, 'player-sheet');
      // A printer is not at hand: what a browser tells once the paper is out stands for it.
      await page.evaluate(() => dispatchEvent(new Event('afterprint')));

      await says(page, 'Next: save it as a file');
      await next(page).click();
      await waitForView(page, 'library');
      const saved = page.waitForEvent('download');
      await page.locator('.lb-bench button').first().click();
      await saved;
      await expect.poll(() => page.locator('vw-day-path .through').innerText()).toBe('The day is through.');

      const { visit, asFound, asSet, proposed } = await onBench(page);
      expect(visit.document).toMatchObject({ player: 'Runa Falk', wish: 'a freer low E' });
      expect(asFound.document.keys.map((key) => key.openingMm)).toEqual([
        10,
        10,
        9.5,
        ...Array.from({ length: KEYS - 3 }, () => 5.5),
      ]);
      expect(proposed.document.keys.length).toBeGreaterThan(0);
      expect(asSet.document.keys.length).toBe(proposed.document.keys.length);
      await page.reload();
      await page.waitForSelector('vw-day-path .through');
    },
    WHOLE_DAY_MS,
  );

  it('puts how a horn was left on a day before beside how it came, when it is back', async () => {
    const page = await open();
    await page.locator('.sh-who summary').click();
    await page.locator('#sh-date').fill('2025-05-12');
    await page.locator('#sh-player').fill('Runa Falk');
    await page.keyboard.press('Tab');
    await page.locator('input[data-pad="e"][data-cell="asSet"]').fill('9.1');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.locator('.wb-kept').innerText()).toBe('✓ saved');
    const before = await onBench(page);
    await page.locator('[data-act="new-visit"]').click();
    await says(page, 'Next: write down the wish');
    await next(page).click();
    await expect.poll(() => inFocus(page)).toBe('sh-wish');
    await page.keyboard.type('as it was');
    await page.keyboard.press('Tab');
    await says(page, `Next: read ${KEYS} openings again`);
    await fold(page).click();
    const told = await step(page, 'as found').locator('.told').innerText();
    expect(told).toMatch(/ from last time, 2025-05-12\. Read them again, or mark the step done/);
    await step(page, 'as found').locator('[data-act="done"]').click();
    await page.keyboard.press('Escape');
    await says(page, 'Next: compare with 2025-05-12');
    await next(page).click();
    await waitForView(page, 'side-by-side');
    const now = await onBench(page);
    expect(now.visit.id).not.toBe(before.visit.id);
    const chosen = await page.evaluate(
      () => document.querySelector('vw-workbench')!.bench!.store.get().sideBySide.chosen,
    );
    expect(chosen?.map(({ setupId }) => setupId)).toEqual([before.asSet.id, now.asFound.id]);
  });

  it('keeps a person’s word as a step that can be taken back and undone', async () => {
    const page = await open();
    await fold(page).click();
    await step(page, 'played').locator('[data-act="not needed"]').click();
    const words = step(page, 'played').locator('.name span');
    await expect.poll(() => words.innerText()).toBe('not needed');
    await page.getByRole('button', { name: 'Undo' }).click();
    await fold(page).click();
    await expect.poll(() => words.innerText()).toBe('not begun');
    await page.getByRole('button', { name: 'Redo' }).click();
    await fold(page).click();
    await expect.poll(() => words.innerText()).toBe('not needed');
    await step(page, 'played').locator('[data-act="take-back"]').click();
    await expect.poll(() => words.innerText()).toBe('not begun');
    expect((await onBench(page)).visit.document.daySteps).toBeUndefined();
  });

  it('can be put away for good and laid out again, and leaves no hole', async () => {
    const page = await open('key');
    const top = async (): Promise<number> => (await page.locator('main').boundingBox())!.y;
    const before = await top();
    await fold(page).click();
    await page.locator('vw-day-path [data-act="put-away"]').click();
    await expect.poll(() => page.locator('vw-day-path').count()).toBe(0);
    expect(await top()).toBeLessThan(before - 40);
    await page.reload();
    await waitForView(page, 'key');
    await page.waitForFunction(() => customElements.get('vw-guidance') !== undefined);
    expect(await page.locator('vw-day-path').count()).toBe(0);
    await look(page, 'library');
    await page.locator('[data-act="path"]').click();
    await page.waitForSelector('vw-day-path .fold');
    await look(page, 'key');
    expect(await top()).toBe(before);
  });

  it('comes with the first view, the story too: nothing jumps', async () => {
    const page = await browser.newPage({ viewport: SIZES.laptop, serviceWorkers: 'block' });
    onTestFinished(() => page.close());
    await page.addInitScript(() => {
      const tops = new Set<number>();
      const look = (): void => {
        const main = document.querySelector('main');
        if (main !== null) tops.add(main.getBoundingClientRect().y);
        requestAnimationFrame(look);
      };
      requestAnimationFrame(look);
      Object.assign(globalThis, { tops });
    });
    await page.goto(`${site.url}#key`);
    await page.waitForSelector('vw-day-path .fold');
    await page.waitForSelector('vw-story');
    await waitForCurve(page);
    const tops = await page.evaluate(() => [...(globalThis as unknown as { tops: Set<number> }).tops]);
    expect(tops).toHaveLength(1);
  });

  it('is walked by keyboard: unfolded, a step said, and folded again', async () => {
    const page = await open();
    await fold(page).focus();
    await page.keyboard.press('Enter');
    expect(await fold(page).getAttribute('aria-expanded')).toBe('true');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await expect.poll(() => step(page, 'horn in').locator('.name span').innerText()).toBe('done');
    await fold(page).focus();
    await page.keyboard.press('Space');
    await expect.poll(() => fold(page).getAttribute('aria-expanded')).toBe('false');
    expect(await page.locator('vw-day-path ol').count()).toBe(0);
  });

  it('lets its steps go with Escape, a choice, another view and a touch beside them', async () => {
    const page = await open();
    const listed = (): Promise<number> => page.locator('vw-day-path ol').count();
    const isOpen = (): Promise<string | null> => fold(page).getAttribute('aria-expanded');
    const unfold = async (): Promise<void> => {
      await fold(page).click();
      await expect.poll(listed).toBe(1);
    };
    await unfold();
    await step(page, 'played').locator('.go').focus();
    await page.keyboard.press('Escape');
    await expect.poll(listed).toBe(0);
    expect(await isOpen()).toBe('false');
    expect(await fold(page).evaluate((button) => button.matches(':focus'))).toBe(true);
    await unfold();
    await look(page, 'key');
    await expect.poll(listed).toBe(0);
    await unfold();
    await page.mouse.click(20, 400);
    await expect.poll(listed).toBe(0);
    await unfold();
    await step(page, 'played').locator('.go').click();
    await waitForView(page, 'played');
    await expect.poll(listed).toBe(0);
    await page.reload();
    await waitForView(page, 'played');
    expect(await listed()).toBe(0);
  });

  it('moves nothing on the page when it unfolds, and leaves a phone the view’s answer', async () => {
    for (const size of [SIZES.laptop, SIZES.phone]) {
      const page = await open('key', size);
      const answer = async (): Promise<{ y: number; height: number }> =>
        (await page.locator('main h1').boundingBox())!;
      const before = await answer();
      await fold(page).click();
      await page.waitForSelector('vw-day-path #steps[data-placed]');
      expect(await answer()).toEqual(before);
      if (size !== SIZES.phone) continue;
      const steps = (await page.locator('vw-day-path #steps').boundingBox())!;
      expect(steps.y).toBeGreaterThan(before.y + before.height);
      expect(steps.y + steps.height).toBeLessThanOrEqual(size.height + 0.5);
    }
  });

  it.each(Object.entries(SIZES))(
    'fits the %s, one line high, with targets for a gloved finger',
    async (_name, size) => {
      const page = await open('sheet', size);
      const line = (await page.locator('vw-day-path .line').boundingBox())!;
      expect(line.height).toBeLessThan(50);
      await fold(page).click();
      const faults = await page.evaluate(
        ([least, width]) => {
          const { shadowRoot } = document.querySelector('vw-day-path')!;
          return [...shadowRoot!.querySelectorAll<HTMLElement>('button, p, svg')].flatMap((part) => {
            const box = part.getBoundingClientRect();
            if (box.width === 0) return [];
            const isSmall = part.matches('button') && (box.height < least || box.width < least);
            const isCut = box.right > width + 0.5 || part.scrollWidth > part.clientWidth + 1;
            return isSmall || isCut ? [`${part.className} ${part.textContent.trim()}`] : [];
          });
        },
        [FINGER_PX, size.width] as const,
      );
      expect(faults).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(size.width);
      for (const theme of ['light', 'dark'] as const) await page.emulateMedia({ colorScheme: theme });
      expect(await faultsByAxe(page, 'vw-guidance')).toEqual([]);
    },
  );

  it('is not on paper', async () => {
    const page = await open();
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('vw-guidance').isVisible()).toBe(false);
  });
});
