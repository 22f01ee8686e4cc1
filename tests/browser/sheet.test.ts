import type { Browser, BrowserContext, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import type { BenchContents } from '../../src/documents/bench-contents.ts';
import { keyedHoles } from '../../src/documents/horn-document.ts';
import { openingAt, withSet } from '../../src/ui/state/key-lengths.ts';
import { findEnough, makeSheetReport } from '../../src/ui/state/sheet-numbers.ts';
import { ALTO, onTheBench, preparedSheet } from '../ui/demo.ts';
import { openWorkbench, serveBuiltSite, SIZES, waitForSheet, type BuiltSite } from './built-site.ts';
import { launchBrowser } from './find-browser.ts';
import { faultsByAxe } from './axe.ts';

/** A converted opening may differ in its last digits. */
const SAME_MM = 1e-9;

let browser: Browser;
let site: BuiltSite;

beforeAll(async () => {
  [browser, site] = await Promise.all([launchBrowser(), serveBuiltSite()]);
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
});

/** Opens the sheet; whatever goes wrong on the page fails the test that opened it. */
async function open(size: { width: number; height: number } = SIZES.laptop): Promise<Page> {
  const { page, faults } = await openWorkbench(browser, site, size, 'sheet');
  onTestFinished(async () => {
    await page.close();
    expect(faults).toEqual([]);
  });
  return page;
}

const PADS = keyedHoles(ALTO.horn).map(({ id }) => id);

const cell = (page: Page, pad: string, column: string): Locator =>
  page.locator(`input[data-pad="${pad}"][data-cell="${column}"]`);

const inFocus = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const { pad, cell: column } = (document.activeElement as HTMLElement).dataset;
    return `${pad} ${column}`;
  });

const text = async (locator: Locator): Promise<string> =>
  (await locator.innerText()).replaceAll('\u00a0', ' ').replaceAll('\n', ' ').trim();

/** What the page holds on its bench. */
const contentsOf = (page: Page): Promise<BenchContents> =>
  page.evaluate(() => {
    const { horns, hornId } = document.querySelector('vw-workbench')!.bench!.store.get();
    return horns[hornId].contents;
  });

const stepsOf = (page: Page): Promise<{ past: number; future: number }> =>
  page.evaluate(() => {
    const { horns, hornId } = document.querySelector('vw-workbench')!.bench!.store.get();
    return { past: horns[hornId].past.length, future: horns[hornId].future.length };
  });

const isSaved = (page: Page) => expect.poll(() => text(page.locator('.wb-kept'))).toBe('✓ saved');

async function typeInto(page: Page, pad: string, column: string, typed: string): Promise<void> {
  await cell(page, pad, column).fill(typed);
  await cell(page, pad, column).press('Enter');
}

describe('the sheet, built', () => {
  it('shows for every key the core’s own vent share and where more height stops helping', async () => {
    const page = await open();
    await waitForSheet(page);
    const sheet = preparedSheet(onTheBench('alto'));
    const { keys } = makeSheetReport(sheet);
    expect(await page.locator('.sh-row[data-pad]').count()).toBe(PADS.length);
    let below = 0;
    for (const { pad, asFound } of keys) {
      const row = page.locator(`.sh-row[data-pad="${pad}"]`);
      const enough = findEnough(sheet, pad);
      if (enough.kind !== 'reached') throw new Error(`${pad} has an answer`);
      expect(await text(row.locator('.sh-share'))).toMatch(
        new RegExp(`^${Math.round(100 * asFound.ventShare)} ± `),
      );
      expect(await text(row.locator('.sh-enough b'))).toBe(`${enough.frontMm.toFixed(1)} mm`);
      const off = Math.hypot(asFound.plusMinusMm!, enough.plusMinusMm ?? 0);
      if (enough.frontMm - asFound.frontMm > off) below++;
    }
    expect(await text(page.locator('.sh-answer h1'))).toMatch(
      new RegExp(
        `^${below} keys stand low, and more height still helps: B by 3\\.2 ± 0\\.\\d mm, G by 2\\.0 ± 0\\.\\d mm`,
      ),
    );
    expect(await text(page.locator('.sh-row[data-pad="e"] .sh-key'))).toContain('vents F');
  });

  it('is filled in down the column by the keyboard alone', async () => {
    const page = await open();
    await cell(page, PADS[0], 'asSet').focus();
    for (const [i, pad] of PADS.entries()) {
      expect(await inFocus(page)).toBe(`${pad} asSet`);
      await page.keyboard.type(`${(5 + i / 10).toFixed(1)}`);
      await page.keyboard.press(i % 2 === 0 ? 'Enter' : 'ArrowDown');
    }
    await expect
      .poll(async () =>
        (await contentsOf(page)).asSet.document.keys.map(({ pad, openingMm }) => [pad, openingMm]),
      )
      .toEqual(PADS.map((pad, i) => [pad, Number((5 + i / 10).toFixed(1))]));
    const { document } = (await contentsOf(page)).asSet;
    for (const key of document.keys) {
      expect(key.measuredAt).toBe('front');
      expect(key.readings!.openingMm!.origin).toBe('measured');
    }
    await page.keyboard.press('ArrowUp');
    expect(await inFocus(page)).toBe(`${PADS[PADS.length - 2]} asSet`);
    await page.keyboard.press('Tab');
    expect(await inFocus(page)).toBe(`${PADS[PADS.length - 1]} openingMm`);
    await isSaved(page);
    await waitForSheet(page);
    expect(await text(page.locator('.sh-answer .ks-standing'))).toMatch(/^As set, where it was set/);
  });

  it('keeps the key in hand that Enter took a reading of, until the next is written on', async () => {
    const page = await open();
    const inHand = () => page.locator('.sh-in-hand').getAttribute('data-pad');
    await cell(page, 'e', 'asSet').click();
    await page.keyboard.type('8.2');
    await page.keyboard.press('Enter');
    const next = PADS[PADS.indexOf('e') + 1];
    expect(await inFocus(page)).toBe(`${next} asSet`);
    expect(await inHand()).toBe('e');
    await page.keyboard.type('5');
    await expect.poll(inHand).toBe(next);
    await page.keyboard.press('Escape');
    expect(await cell(page, next, 'asSet').inputValue()).toBe('');
    await page.keyboard.press('ArrowUp');
    await expect.poll(inHand).toBe('e');
  });

  it('proposes all keys lower and takes all proposals back by the keyboard alone, each one step', async () => {
    const page = await open();
    const proposed = async () => (await contentsOf(page)).proposed.document.keys.length;
    const told = page.locator('.sh-told-all');
    await cell(page, 'e', 'asSet').click();
    await page.locator('#sh-shift').focus();
    await page.keyboard.type('1 mm');
    await page.keyboard.press('Enter');
    await expect
      .poll(() => text(page.locator('#sh-shift-problem')))
      .toMatch(/^Invalid shift of all keys: “1 mm”; expected a length and which way/);
    expect(await page.locator('#sh-shift').inputValue()).toBe('1 mm');
    await page.keyboard.type(' lower');
    await page.keyboard.press('Enter');
    await expect.poll(proposed).toBe(PADS.length);
    expect(await text(told)).toBe(
      `${PADS.length} keys proposed 1.0 mm (0.039 in) lower than before, at the front.`,
    );
    expect((await stepsOf(page)).past).toBe(1);
    expect(await page.locator('.sh-in-hand').getAttribute('data-pad')).toBe('e');
    await page.locator('[data-act="withdraw-all"]').focus();
    await page.keyboard.press('Enter');
    await expect.poll(proposed).toBe(0);
    expect(await text(told)).toBe(`${PADS.length} proposals withdrawn; every key is told as found again.`);
    await page.locator('button[aria-label="Undo"]').click();
    await expect.poll(proposed).toBe(PADS.length);
    expect(await text(told)).toBe('');
    await page.locator('button[aria-label="Undo"]').click();
    await expect.poll(proposed).toBe(0);
    expect(await page.locator('.sh-in-hand').getAttribute('data-pad')).toBe('e');
  });

  it('keeps what a hand is typing while the answers come in', async () => {
    const page = await browser.newPage({ viewport: SIZES.laptop });
    onTestFinished(() => page.close());
    await page.goto(`${site.url}#sheet`);
    const target = cell(page, 'e', 'asSet');
    await target.click();
    for (const letter of '9.12 mm') {
      await page.keyboard.type(letter);
      await page.waitForTimeout(150);
    }
    expect(await target.inputValue()).toBe('9.12 mm');
    await page.keyboard.press('Enter');
    await expect
      .poll(async () => (await contentsOf(page)).asSet.document.keys.map((k) => k.openingMm))
      .toEqual([9.12]);
    expect(await target.inputValue()).toBe('9.12 mm');
  });

  it('goes back and forth over twenty steps, by keys and by buttons', async () => {
    const page = await open();
    const before = await contentsOf(page);
    for (let i = 0; i < 20; i++) {
      const column = ['openingMm', 'proposed', 'asSet'][i % 3];
      await typeInto(page, PADS[i], column, `${(5.1 + i / 20).toFixed(2)}`);
      await expect.poll(async () => (await stepsOf(page)).past).toBe(i + 1);
    }
    const after = await contentsOf(page);
    await page.locator('.sh-page').click({ position: { x: 4, y: 4 } });
    for (let i = 0; i < 10; i++) await page.keyboard.press('Control+z');
    for (let i = 0; i < 10; i++) await page.getByRole('button', { name: 'Undo', exact: true }).click();
    expect(await contentsOf(page)).toEqual(before);
    expect(await stepsOf(page)).toEqual({ past: 0, future: 20 });
    expect(await cell(page, PADS[0], 'openingMm').inputValue()).toBe('10.0');
    for (let i = 0; i < 10; i++) await page.keyboard.press('Control+Shift+Z');
    for (let i = 0; i < 10; i++) await page.getByRole('button', { name: 'Redo', exact: true }).click();
    expect(await contentsOf(page)).toEqual(after);
    await isSaved(page);
  });

  it('takes either unit, and the next number in the unit named last, after a reload too', async () => {
    const page = await open();
    await typeInto(page, 'e', 'openingMm', '0.310 in');
    await expect.poll(() => cell(page, 'd', 'openingMm').inputValue()).toBe('0.315');
    expect(await cell(page, 'e', 'openingMm').inputValue()).toBe('0.310 in');
    await typeInto(page, 'd', 'openingMm', '312');
    await typeInto(page, 'f', 'openingMm', '5/16');
    const opening = async (pad: string): Promise<number> =>
      (await contentsOf(page)).asFound.document.keys.find((k) => k.pad === pad)!.openingMm!;
    await expect.poll(() => opening('f')).toBeCloseTo(7.9375, 9);
    expect(await opening('e')).toBeCloseTo(7.874, 9);
    expect(await opening('d')).toBeCloseTo(7.9248, 9);
    await isSaved(page);
    await page.reload();
    await waitForSheet(page);
    expect(await cell(page, 'e', 'openingMm').inputValue()).toBe('0.310');
    await typeInto(page, 'e', 'openingMm', '7,9 mm');
    await expect.poll(() => cell(page, 'd', 'openingMm').inputValue()).toBe('7.9');
  });

  it('refuses what cannot be with a sentence beside the key, and keeps the text until Escape', async () => {
    const page = await open();
    await typeInto(page, 'e', 'openingMm', 'eight');
    const problem = page.locator('.sh-row[data-pad="e"] .sh-problems');
    await expect
      .poll(async () => text(problem))
      .toBe(
        'Invalid opening as found: “eight”; expected a length such as 7.9 mm, 0.310 in, 5/16 or 310 thou. ' +
          'Still in use: 8.0 mm (0.315 in) at the front.',
      );
    expect(await cell(page, 'e', 'openingMm').inputValue()).toBe('eight');
    expect(await cell(page, 'e', 'openingMm').getAttribute('aria-invalid')).toBe('true');
    await typeInto(page, 'e', 'asSet', '58');
    await expect.poll(() => text(problem)).toContain('expected at most');
    expect((await stepsOf(page)).past).toBe(0);
    await cell(page, 'e', 'openingMm').press('Escape');
    await cell(page, 'e', 'asSet').press('Escape');
    expect(await cell(page, 'e', 'openingMm').inputValue()).toBe('8.0');
    expect(await cell(page, 'e', 'asSet').inputValue()).toBe('');
    expect(await problem.count()).toBe(0);
    await cell(page, 'e', 'openingMm').fill('');
    await cell(page, 'e', 'openingMm').press('Enter');
    await expect.poll(() => cell(page, 'e', 'openingMm').inputValue()).toBe('8.0');
  });

  it('reads at the measuring point chosen, and a single key where its text says', async () => {
    const page = await open();
    await page.locator('vw-choice[data-act="read-at"] label', { hasText: 'centre' }).click();
    await typeInto(page, 'd', 'asSet', '5.0');
    await typeInto(page, 'e', 'asSet', '9.1 front');
    await typeInto(page, 'e', 'asSet', '9.2');
    await typeInto(page, 'f', 'proposed', '5.0');
    await expect.poll(async () => (await stepsOf(page)).past).toBe(4);
    const { asSet, proposed } = await contentsOf(page);
    expect(asSet.document.keys.map((k) => [k.pad, k.openingMm, k.measuredAt])).toEqual([
      ['d', 5, 'centre'],
      ['e', 9.2, 'front'],
    ]);
    const front = openingAt(ALTO, 'f', { mm: 5, at: 'centre' }, 'front');
    expect(proposed.document.keys[0].measuredAt).toBe('front');
    expect(Math.abs(proposed.document.keys[0].openingMm! - front)).toBeLessThan(SAME_MM);
    await page.locator('vw-choice[data-act="read-at"] label', { hasText: 'front' }).click();
    await expect.poll(() => cell(page, 'f', 'proposed').inputValue()).toBe(front.toFixed(1));
    expect(await cell(page, 'd', 'asSet').getAttribute('aria-label')).toContain('read at the centre');
  });

  it('fills down from a copied column, as one step', async () => {
    const page = await open();
    await cell(page, 'd', 'proposed').focus();
    await page.evaluate(() => {
      const clipboardData = new DataTransfer();
      clipboardData.setData('text/plain', '9,1\t9.0\n8.9\t\nwide\t8.7\n');
      document.activeElement!.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true }));
    });
    await expect.poll(async () => (await stepsOf(page)).past).toBe(1);
    const { proposed, asSet } = await contentsOf(page);
    expect(proposed.document.keys.map((k) => [k.pad, k.openingMm])).toEqual([
      ['d', 9.1],
      ['e', 8.9],
    ]);
    expect(asSet.document.keys.map((k) => [k.pad, k.openingMm])).toEqual([
      ['d', 9],
      ['side-f-sharp', 8.7],
    ]);
    expect(await text(page.locator('.sh-row[data-pad="side-f-sharp"] .sh-problems'))).toContain('“wide”');
  });

  it('proposes what is enough for every key that lacks height, in one step that can be undone', async () => {
    const page = await open();
    await waitForSheet(page);
    await page.locator('[data-act="propose-enough"]').click();
    await expect.poll(async () => (await stepsOf(page)).past).toBe(1);
    const { proposed } = await contentsOf(page);
    const sheet = preparedSheet(onTheBench('alto'));
    for (const { pad, openingMm } of proposed.document.keys) {
      const enough = findEnough(sheet, pad);
      expect(enough.kind).toBe('reached');
      if (enough.kind !== 'reached') continue;
      expect(openingMm! - enough.frontMm).toBeGreaterThanOrEqual(-1e-6);
      expect(openingMm! - enough.frontMm).toBeLessThan(0.1);
    }
    await page.keyboard.press('Control+z');
    expect((await contentsOf(page)).proposed.document.keys).toEqual([]);
  });

  it('says which link rules, as set and as proposed', async () => {
    const page = await open();
    await typeInto(page, 'f-sharp-auxiliary', 'proposed', '8.7');
    await expect
      .poll(() => text(page.locator('.sh-row[data-pad="f-sharp-auxiliary"] > .sh-rules')))
      .toMatch(/^own stop; proposed: held at \d\.\d by (D|E|F)$/);
    await typeInto(page, 'a', 'asSet', '4.5');
    await waitForSheet(page);
    await expect
      .poll(() => text(page.locator('.sh-row[data-pad="bis"] > .sh-rules')))
      .toBe('held at 4.0 by A');
    const contents = withSet(onTheBench('alto'), 'a', { mm: 4.5, at: 'front' });
    const bis = makeSheetReport(preparedSheet(contents)).keys.find((k) => k.pad === 'bis')!;
    expect(await text(page.locator('.sh-row[data-pad="bis"] .sh-share'))).toMatch(
      new RegExp(`^${Math.round(100 * bis.asSet.ventShare)} ± `),
    );
  });

  it('measures hole, pad and rod, and says of each number where it comes from', async () => {
    const page = await open();
    await page.locator('vw-choice[data-act="columns"] label', { hasText: 'Measures' }).click();
    await typeInto(page, 'e', 'diameterMm', '30.2');
    await typeInto(page, 'e', 'hingeHeightMm', '−0,5');
    await typeInto(page, 'e', 'adhesiveBedMm', '0.4');
    await expect.poll(async () => (await stepsOf(page)).past).toBe(3);
    const { horn, asFound } = await contentsOf(page);
    const hole = horn.document.holes.find((h) => h.id === 'e')!;
    expect([hole.diameterMm, hole.key!.hingeHeightMm]).toEqual([30.2, -0.5]);
    expect(asFound.document.keys.find((k) => k.pad === 'e')!.adhesiveBedMm).toBe(0.4);
    expect(await cell(page, 'e', 'diameterMm').getAttribute('aria-label')).toBe(
      'Pad 7, E key, hole diameter, measured, plus or minus 0.1 mm',
    );
    await typeInto(page, 'e', 'adhesiveBedMm', '');
    await expect
      .poll(async () => (await contentsOf(page)).asFound.document.keys.find((k) => k.pad === 'e'))
      .not.toHaveProperty('adhesiveBedMm');
    await typeInto(page, 'e', 'diameterMm', '36');
    await expect
      .poll(() => text(page.locator('.sh-row[data-pad="e"] .sh-problems')))
      .toContain('expected more than its hole');
  });
});

describe('what was done on the sheet', () => {
  /** Two pages of one browser share its library. */
  async function shared(): Promise<BrowserContext> {
    const context = await browser.newContext({ viewport: SIZES.laptop });
    onTestFinished(() => context.close());
    return context;
  }

  it('is there after a reload: horn, player, notes, openings, and the visit', async () => {
    const page = await open();
    await typeInto(page, 'e', 'asSet', '9.1');
    await page.locator('.sh-who summary').click();
    await page.getByLabel('Player', { exact: true }).fill('Mira Testfall');
    await page.getByLabel('Notes', { exact: true }).fill('stuffy low notes');
    await page.getByLabel('Horn', { exact: true }).last().fill('Mira’s alto');
    await page.getByLabel('Date', { exact: true }).fill('2026-05-04');
    await page.getByLabel('Owner', { exact: true }).focus();
    await expect.poll(async () => (await stepsOf(page)).past).toBe(5);
    await isSaved(page);
    const before = await contentsOf(page);
    await page.reload();
    await waitForSheet(page);
    expect(await contentsOf(page)).toEqual(before);
    expect(await text(page.locator('.sh-who summary'))).toContain(
      'Mira’s alto 2026-05-04 · for Mira Testfall',
    );
    expect(await cell(page, 'e', 'asSet').inputValue()).toBe('9.1');
    await page.getByRole('button', { name: 'New visit' }).click();
    await expect.poll(() => page.locator('[data-act="visit"] option').count()).toBe(2);
    await isSaved(page);
    await waitForSheet(page);
    const found = (await contentsOf(page)).asFound.document.keys.find((k) => k.pad === 'e')!;
    expect(found.openingMm).toBe(9.1);
    await page.locator('[data-act="visit"]').selectOption({ label: '2026-05-04, Mira Testfall' });
    await expect.poll(() => cell(page, 'e', 'asSet').inputValue()).toBe('9.1');
    expect(await contentsOf(page)).toEqual(before);
  });

  it('is refused in the head too where it cannot be, and keeps the text', async () => {
    const page = await open();
    await page.locator('.sh-who summary').click();
    await page.locator('vw-bench-field[data-field="a4Hz"] input').fill('900');
    await page.locator('vw-bench-field[data-field="a4Hz"] input').press('Enter');
    await expect
      .poll(() => text(page.locator('vw-bench-field[data-field="a4Hz"] #told')))
      .toBe('Invalid A4: 900 Hz; expected 390 to 470 Hz. Still in use: 440 Hz.');
    const name = page.locator('#sh-name');
    await name.fill('');
    await name.press('Tab');
    await expect.poll(() => text(page.locator('#sh-told-name'))).toContain('Invalid horn name');
    await name.press('Escape');
    await expect.poll(() => name.inputValue()).toBe('Larkfield alto, demo');
  });

  it('shows in another tab that has nothing to save, as a step that can be undone', async () => {
    const context = await shared();
    const [a, b] = [await context.newPage(), await context.newPage()];
    await a.goto(`${site.url}#sheet`);
    await typeInto(a, 'e', 'asSet', '9.1');
    await isSaved(a);
    await b.goto(`${site.url}#sheet`);
    await expect.poll(() => cell(b, 'e', 'asSet').inputValue()).toBe('9.1');
    await typeInto(a, 'e', 'asSet', '9.4');
    await expect.poll(() => cell(b, 'e', 'asSet').inputValue()).toBe('9.4');
    await expect.poll(() => text(b.locator('[role="alert"] >> nth=0'))).toContain('Another tab changed');
    expect(await stepsOf(b)).toEqual({ past: 1, future: 0 });
    await typeInto(b, 'd', 'asSet', '9.2');
    await expect.poll(() => cell(a, 'd', 'asSet').inputValue()).toBe('9.2');
  });
});

describe.each(Object.entries(SIZES))('on a %s', (name, size) => {
  it('meets the accessibility rules, with a mistake on screen and the head unfolded too', async () => {
    const page = await open(size);
    await waitForSheet(page);
    const violations = (): Promise<string[]> => faultsByAxe(page);
    expect(await violations()).toEqual([]);
    await typeInto(page, 'e', 'openingMm', 'eight');
    await expect.poll(() => page.locator('.sh-problems').count()).toBe(1);
    await page.locator('.sh-who summary').click();
    if (name !== 'laptop') await page.locator('[data-act="draw"]').click();
    expect(await violations()).toEqual([]);
    await page.locator('vw-choice[data-act="columns"] label', { hasText: 'Measures' }).click();
    expect(await violations()).toEqual([]);
  });

  it('never scrolls sideways, lets nothing overlap, and has no touch lower than 44 px', async () => {
    const page = await open(size);
    await waitForSheet(page);
    await typeInto(page, 'd', 'asSet', '4.9 c');
    await typeInto(page, 'e', 'openingMm', 'eight');
    await page.locator('[data-act="propose-enough"]').click();
    for (const columns of ['Openings', 'Measures']) {
      await page.locator('vw-choice[data-act="columns"] label', { hasText: columns }).click();
      const { wide, overlaps, low } = await page.evaluate(() => {
        const boxes = (selector: string): { what: string; box: DOMRect }[] =>
          [...document.querySelectorAll(selector)]
            .map((el) => ({
              what: `${el.className} ${el.textContent.trim().slice(0, 30)}`,
              box: el.getBoundingClientRect(),
            }))
            .filter(({ box }) => box.width > 0 && box.height > 0);
        const found: string[] = [];
        for (const row of document.querySelectorAll('.sh-row[data-pad]')) {
          const parts = [...row.children]
            .map((el) => ({ el, box: el.getBoundingClientRect() }))
            .filter(({ box }) => box.width > 0);
          for (const [i, a] of parts.entries()) {
            for (const b of parts.slice(i + 1)) {
              const across = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left);
              const down = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top);
              if (across > 1 && down > 1) found.push(`${a.el.className} / ${b.el.className}`);
            }
          }
        }
        // Nothing written in a cell runs out of it.
        for (const known of document.querySelectorAll('.sh-known')) {
          const room = known.parentElement!.getBoundingClientRect();
          for (const part of known.children) {
            if (part.getBoundingClientRect().right > room.right + 1)
              found.push(`runs out: ${known.textContent}`);
          }
        }
        return {
          wide: document.documentElement.scrollWidth - document.documentElement.clientWidth,
          overlaps: found,
          low: boxes('.sh-page button, .sh-page summary, .sh-page input, .sh-page select')
            .filter(({ box }) => box.height < 44)
            .map(({ what, box }) => `${what}: ${box.height}`),
        };
      });
      expect([wide, overlaps, low]).toEqual([0, [], []]);
    }
  });
});

it('prints every key with its numbers', async () => {
  const page = await open();
  await typeInto(page, 'e', 'asSet', '9.1');
  await page.emulateMedia({ media: 'print' });
  for (const shown of ['.sh-answer h1', '.sh-who summary', 'vw-horn-picture', '.sh-row[data-pad="e"]']) {
    expect(await page.locator(shown).isVisible()).toBe(true);
  }
  for (const hidden of ['.wb-views', '.sh-visits', '.sh-acts', '.sh-how']) {
    expect(await page.locator(hidden).isVisible()).toBe(false);
  }
  expect(await page.locator('.sh-row[data-pad]').count()).toBe(PADS.length);
});
