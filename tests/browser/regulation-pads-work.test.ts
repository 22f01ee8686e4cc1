import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import { makeAirColumn } from '../../src/acoustics/index.ts';
import { loadHorn } from '../../src/documents/to-acoustics.ts';
import { noteLabel, signedCents } from '../../src/ui/parts/note-names.ts';
import { answerPadChange } from '../../src/ui/state/pad-change-answer.ts';
import { ALTO, plain } from '../ui/demo.ts';
import { openWorkbench, serveBuiltSite, SIZES, type BuiltSite } from './built-site.ts';
import { faultsByAxe } from './axe.ts';
import { launchBrowser } from './find-browser.ts';

/** A finger, px, less what rounding of a layout takes. */
const FINGER_PX = 44 - 0.01;

let browser: Browser;
let site: BuiltSite;

beforeAll(async () => {
  [browser, site] = await Promise.all([launchBrowser(), serveBuiltSite()]);
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
});

type View = 'pads' | 'work';

async function open(
  view: View,
  size: { readonly width: number; readonly height: number } = SIZES.laptop,
): Promise<Page> {
  const { page, faults } = await openWorkbench(browser, site, size, view);
  onTestFinished(async () => {
    await page.close();
    expect(faults).toEqual([]);
  });
  return page;
}

const text = async (page: Page, selector: string): Promise<string> =>
  plain(await page.locator(selector).first().innerText())
    .replaceAll('\n', ' ')
    .trim();
const cell = (page: Page, pad: string, field = 'cupFloorMm') =>
  page.locator(`.pd-row[data-key="${pad}"] [data-cell="${field}"]`);
const row = (page: Page, pad: string) => page.locator(`.pd-row[data-key="${pad}"]`);

async function type(page: Page, pad: string, words: string): Promise<void> {
  await cell(page, pad).fill(words);
  await cell(page, pad).blur();
}

async function reload(page: Page, selector: string): Promise<void> {
  await expect.poll(() => text(page, '.wb-top')).toMatch(/saved/);
  await page.reload();
  await page.waitForSelector(selector);
}

describe('pads for cups, built', () => {
  it('fits a cup as it is typed, tells what is not in the drawer, and has it all again after a reload', async () => {
    const page = await open('pads');
    await type(page, 'e', '6.4 mm');
    await expect.poll(() => text(page, '.rg-answer h1')).toContain('E (5.60 to 6.40 mm)');
    expect(await row(page, 'e').innerText()).toContain('nothing fits');
    await reload(page, '.pd-row');
    expect(await cell(page, 'e').inputValue()).toBe('6.40 mm');
    await expect.poll(() => text(page, '.rg-answer h1')).toContain('E (5.60 to 6.40 mm)');
  });

  it('keeps what cannot be read, says why, and shows what is in use at Escape', async () => {
    const page = await open('pads');
    const before = await cell(page, 'f').inputValue();
    await type(page, 'f', 'deep');
    await expect
      .poll(() => row(page, 'f').innerText())
      .toContain('invalid cup floor: “deep”; expected a length such as');
    expect(await cell(page, 'f').inputValue()).toBe('deep');
    await cell(page, 'f').press('Escape');
    await expect.poll(() => cell(page, 'f').inputValue()).toBe(before);
    expect(await cell(page, 'f').getAttribute('aria-invalid')).toBe('false');
  });

  it('is filled in down the column with the keyboard alone', async () => {
    const page = await open('pads');
    await cell(page, 'low-b-flat').focus();
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.type('0.190 in');
    await page.keyboard.press('Enter');
    await page.keyboard.type('4,9');
    await page.keyboard.press('Enter');
    await expect.poll(() => row(page, 'low-b-flat').innerText()).toContain('fits');
    await expect.poll(() => cell(page, 'low-b').inputValue()).toBe('4,9');
    expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe(
      'Cup floor of low C♯',
    );
  });

  it('draws the cup of the key that is chosen', async () => {
    const page = await open('pads');
    await type(page, 'a', '2.0');
    await row(page, 'a').locator('.pd-key').click();
    await expect
      .poll(() => text(page, '.pd-drawing figcaption'))
      .toMatch(/^A: pad .+ the back touches first/);
    expect(await page.locator('.pd-drawing .gape').count()).toBe(1);
  });

  it('keeps the stock in this browser, for a horn’s next visit and the next horn', async () => {
    const page = await open('pads');
    await type(page, 'e', '6.4 mm');
    await expect.poll(() => row(page, 'e').innerText()).toContain('nothing fits');
    await page.locator('.pd-stock summary').click();
    await page.locator('[data-stock="thickness"] input').fill('6 mm');
    await page.locator('[data-stock="thickness"] input').press('Enter');
    await expect.poll(() => row(page, 'e').innerText()).toContain('✓ fits');
    await reload(page, '.pd-row');
    await page.locator('.pd-stock summary').click();
    expect(await page.locator('.pd-classes li').allInnerTexts()).toHaveLength(5);
    await page.getByRole('button', { name: 'Take 6.00 mm (0.236 in) out of the stock' }).click();
    await expect.poll(() => row(page, 'e').innerText()).toContain('nothing fits');
  });

  it('says that a kept stock cannot be read, and goes on with the usual one', async () => {
    const page = await open('pads');
    await page.evaluate(() =>
      localStorage.setItem('ventwright.stock', '{"kind":"ventwright stock","version":9}'),
    );
    await page.reload();
    await page.waitForSelector('.pd-row');
    expect(await text(page, '.wb-alert')).toContain('written by a newer Ventwright');
    await page.locator('.pd-stock summary').click();
    expect(await page.locator('.pd-classes li').allInnerTexts()).toHaveLength(4);
  });

  it('proposes what fits, and the work has new pads to seat', async () => {
    const page = await open('pads');
    await type(page, 'f', '5.1');
    await expect.poll(() => row(page, 'f').innerText()).toContain('4.57 mm (0.180 in)');
    await page.getByRole('button', { name: 'Propose these pads' }).click();
    await page.locator('.pd-proposed a').click();
    await page.waitForSelector('.wk-move');
    expect(await text(page, '.wk-move[data-move="seat f"]')).toContain('New pad for F, seated level');
    expect(await text(page, '.wk-move[data-move="height f"]')).toContain('reckoned for the new pad');
  });

  it('prints the list to order without what only a screen needs', async () => {
    const page = await open('pads');
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.pd-order table').isVisible()).toBe(true);
    for (const selector of ['.pd-question', '.pd-drawing', '.pd-take-them button', '.rg-tabs']) {
      expect([selector, await page.locator(selector).first().isVisible()]).toEqual([selector, false]);
    }
  });
});

describe('other pads, built', () => {
  it('shows the change of every note as the core plays it', async () => {
    const page = await open('pads');
    await page.locator('vw-choice[data-act="question"] label', { hasText: 'Thicker' }).click();
    await page.waitForSelector('.pd-notes li');
    const read = loadHorn(ALTO);
    if (!read.ok) throw new Error(read.issues[0].message);
    const thickerMm = Object.fromEntries(
      read.value.documents.setup.keys.map((k) => [k.pad, 0.18 * 25.4 - k.padThicknessMm]),
    );
    const air = makeAirColumn({ mouthpieceC: ALTO.setup.airC ?? 26.85 });
    const wanted = answerPadChange(read.value, { thickerMm, seating: 'levelled' }, air, 440);
    const shown = await page
      .locator('.pd-notes li')
      .evaluateAll((rows) =>
        rows.map((r) => [r.querySelector('span')!.textContent, r.querySelectorAll('span')[2].textContent]),
      );
    expect(new Map(shown as [string, string][])).toEqual(
      new Map(wanted.notes.map((n) => [noteLabel(n.fingering), signedCents(n.changeCents!)])),
    );
    expect(wanted.notes.some((n) => n.changeCents! < -5)).toBe(true);
  });

  it('follows a thickness that is touched or typed, on every key or on one', async () => {
    const page = await open('pads');
    await page.locator('vw-choice[data-act="question"] label', { hasText: 'Thicker' }).click();
    await page.locator('.pd-choices button', { hasText: '5.08 mm' }).click();
    await expect.poll(() => text(page, '.rg-answer h1')).toContain('5.08 mm (0.200 in) pads on all 23 keys');
    await page.locator('vw-choice[data-act="scope"] label', { hasText: 'one key' }).click();
    await expect.poll(() => text(page, '.rg-answer h1')).toContain('A pad of 5.08 mm (0.200 in) on E');
    const field = page.locator('[data-field="plan"] input');
    await field.fill('eleven');
    await field.press('Enter');
    await expect.poll(() => text(page, '[data-field="plan"] #told')).toContain('Still in use: 5.08 mm');
    await field.fill('3.6 mm');
    await field.press('Enter');
    await expect.poll(() => text(page, '.rg-answer h1')).toContain('A pad of 3.60 mm (0.142 in) on E');
    expect(await text(page, '.rg-answer h1')).toContain('gives 0.');
  });
});

describe('the order of work, built', () => {
  it('plans a leaking seat and its links, checks off, brings back what is out, and keeps it', async () => {
    const page = await open('work');
    expect(await text(page, '.rg-answer h1')).toContain('11 links were never read');
    await page.locator('[data-seat="e"]').click();
    await expect.poll(() => text(page, '.rg-answer h1')).toBe('Start: seat E.');
    await page.locator('.wk-move[data-move="seat e"] .wk-check').click();
    await expect.poll(() => text(page, '.rg-answer h1')).toContain('E shuts F♯ auxiliary with itself');
    const link = page.locator('.wk-move[data-move="link e > f-sharp-auxiliary"] input');
    await link.fill('3 papers');
    await link.press('Enter');
    await expect.poll(() => text(page, '.wk-done')).toContain('3 papers (0.075 mm)');
    expect(await text(page, '.wk-out')).toContain('outside its tolerance, on the list again');
    await page.locator('.wk-move[data-move="link e > f-sharp-auxiliary"] input').fill('0.5');
    await page.locator('.wk-move[data-move="link e > f-sharp-auxiliary"] input').press('Enter');
    await expect.poll(() => page.locator('.wk-done li').count()).toBe(3);
    await expect.poll(() => text(page, '.rg-answer h1')).toBe('All done: 3 moves made.');
    await reload(page, '.wk-done');
    expect(await page.locator('.wk-done li').count()).toBe(3);
    await page.locator('.wk-done button').last().click();
    await expect.poll(() => page.locator('.wk-done li').count()).toBe(2);
    await page.locator('.wb-steps button').first().click();
    await expect.poll(() => page.locator('.wk-done li').count()).toBe(3);
  });

  it('keeps a value it cannot read, with why', async () => {
    const page = await open('work');
    await page.locator('[data-seat="low-c"]').click();
    const back = page.locator('.wk-move[data-move="seat low-c"] input');
    await back.fill('some');
    await back.press('Enter');
    await expect.poll(() => text(page, '.wk-problem')).toContain('or papers such as 1.5');
    expect(await back.inputValue()).toBe('some');
    await back.press('Escape');
    await expect.poll(() => back.inputValue()).toBe('');
  });

  it('prints as a list with boxes and room to write', async () => {
    const page = await open('work');
    await page.locator('[data-seat="e"]').click();
    await page.waitForSelector('.wk-move');
    await page.emulateMedia({ media: 'print' });
    const boxes = await page
      .locator('.wk-box')
      .evaluateAll((all) => all.filter((box) => box.getBoundingClientRect().width > 10).length);
    expect(boxes).toBe(await page.locator('.wk-move').count());
    expect(await page.locator('.wk-seats').isVisible()).toBe(false);
    expect(await page.locator('.wk-acts').first().isVisible()).toBe(false);
  });
});

describe('pads and work, for every hand and eye', () => {
  const prepare: Readonly<Record<string, (page: Page) => Promise<void>>> = {
    'pads for cups': async (page) => {
      await type(page, 'e', '6.4');
      await type(page, 'f', 'deep');
      await page.locator('.pd-stock summary').click();
    },
    'other pads': async (page) => {
      await page.locator('vw-choice[data-act="question"] label', { hasText: 'Thicker' }).click();
      await page.locator('vw-choice[data-act="scope"] label', { hasText: 'one key' }).click();
      await page.waitForSelector('.pd-notes li');
    },
    work: async (page) => {
      for (const pad of ['e', 'f-sharp-auxiliary', 'body-vent']) {
        await page.locator(`[data-seat="${pad}"]`).click();
      }
      await page.locator('.wk-check').first().click();
      await page.waitForSelector('.wk-done');
    },
  };

  it.each(Object.keys(prepare))('%s meets the accessibility rules, on any screen', async (name) => {
    for (const size of Object.values(SIZES)) {
      const page = await open(name === 'work' ? 'work' : 'pads', size);
      await prepare[name](page);
      expect([size.width, await faultsByAxe(page)]).toEqual([size.width, []]);
    }
  });

  it.each(Object.keys(prepare))(
    '%s lies within the screen and has touches of a finger’s size',
    async (name) => {
      for (const size of Object.values(SIZES)) {
        const page = await open(name === 'work' ? 'work' : 'pads', size);
        await prepare[name](page);
        const { wide, low } = await page.evaluate(() => {
          const main = document.querySelector('main')!;
          const all = [...main.querySelectorAll('*')].filter(
            (e) => !e.closest('svg, vw-key-strip, .pd-scroll, [aria-hidden]'),
          );
          const touches = main.querySelectorAll('button:not(.figure), input, summary, a, select');
          const label = (e: Element): string =>
            `${e.tagName} ${e.className} ${e.textContent.trim().slice(0, 20)}`;
          const runsOut = (e: Element): boolean =>
            e.getBoundingClientRect().right > innerWidth + 0.5 ||
            (getComputedStyle(e).display !== 'inline' &&
              // A figure's reach for a finger goes past its own edge, and past nothing else's.
              !e.matches('input, vw-reason, :has(> vw-reason)') &&
              e.scrollWidth > e.clientWidth + 1);
          return {
            wide: all.filter(runsOut).map((e) => label(e)),
            low: [...touches]
              .map((e) => ({
                e,
                height: e.getBoundingClientRect().height,
                inline: e.closest('p') !== null && e.tagName === 'A',
              }))
              .filter(({ height, inline }) => height > 0 && !inline)
              .map(({ e, height }) => ({ what: label(e), height })),
          };
        });
        expect([size.width, wide]).toEqual([size.width, []]);
        expect(low.filter(({ height }) => height < FINGER_PX)).toEqual([]);
        expect(low.length).toBeGreaterThan(5);
      }
    },
  );
});
