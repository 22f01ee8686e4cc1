import { readFileSync } from 'node:fs';
import type { Browser, Download, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import type { BenchContents } from '../../src/documents/bench-contents.ts';
import { libraryFile, readLibrary } from '../../src/documents/library-file.ts';
import { inventedFile, inventedLibrary } from '../ui/invented-library.ts';
import { openWorkbench, serveBuiltSite, SIZES, type BuiltSite } from './built-site.ts';
import { launchBrowser } from './find-browser.ts';
import { faultsByAxe } from './axe.ts';

/** What a finger in a glove needs, px, less what the browser rounds. */
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

interface ChosenFile {
  readonly name: string;
  readonly mimeType: string;
  readonly buffer: Buffer;
}

const file = (name: string, text: string): ChosenFile => ({
  name,
  mimeType: name.endsWith('.csv') ? 'text/csv' : 'application/json',
  buffer: Buffer.from(text),
});

/** Opens an empty library; whatever goes wrong on it fails the test that opened it. */
async function open(size: { width: number; height: number } = SIZES.laptop): Promise<Page> {
  const { page, faults } = await openWorkbench(browser, site, size, 'library');
  onTestFinished(async () => {
    await page.close();
    expect(faults).toEqual([]);
  });
  return page;
}

async function bringIn(page: Page, ...files: readonly ChosenFile[]): Promise<void> {
  const before = await page.locator('.lb-reports article').count();
  await page.locator('.lb-chooser input').setInputFiles([...files]);
  await expect.poll(() => page.locator('.lb-reports article').count()).toBe(before + files.length);
  await page.waitForSelector('.lb-page[aria-busy="false"]');
}

const horns = (page: Page): Promise<string[]> => page.locator('.lb-horn > .lb-open b').allInnerTexts();
const reports = (page: Page): Promise<string> => page.locator('.lb-reports').innerText();
const act = (page: Page, name: string) =>
  page.locator('.lb-detail > .lb-acts').getByRole('button', { name, exact: true });

async function more(page: Page, name: string): Promise<void> {
  await page.getByRole('button', { name: `More of ${name}`, exact: true }).click();
  await page.waitForSelector('.lb-detail > .lb-acts');
}

const onBench = (page: Page): Promise<BenchContents> =>
  page.evaluate(() => {
    const { horns: all, hornId } = document.querySelector('vw-workbench')!.bench!.store.get();
    return all[hornId].contents;
  });

async function textOf(download: Promise<Download>): Promise<{ name: string; text: string }> {
  const done = await download;
  return { name: done.suggestedFilename(), text: readFileSync(await done.path(), 'utf8') };
}

describe('the library', () => {
  it('lists what a file brings, searches as one types, and opens a horn at its latest visit', async () => {
    const page = await open();
    expect(await page.locator('.lb-head h1').innerText()).toBe('No horn is kept yet');
    await bringIn(page, file('shop.json', inventedFile(6)));
    expect(await reports(page)).toContain('6 horns were added: “Larkfield alto 1000”');
    expect(await horns(page)).toHaveLength(6);
    await page.locator('.lb-search input').fill('SOHNE tenor');
    await expect.poll(() => horns(page)).toEqual(['Ostrava & Söhne tenor 1037']);
    expect(await page.locator('.lb-head h1').innerText()).toBe('1 of 6 horns');
    await page.locator('.lb-horn > .lb-open').click();
    await page.waitForSelector('vw-sheet-view');
    const { horn, visit } = await onBench(page);
    expect([horn.document.name, visit.document.date]).toEqual(['Ostrava & Söhne tenor 1037', '2021-02-12']);
  });

  it('copies, renames and removes a horn, and puts it back as it was', async () => {
    const page = await open();
    await bringIn(page, file('shop.json', inventedFile(1)));
    await more(page, 'Larkfield alto 1000');
    await act(page, 'Duplicate').click();
    await expect.poll(() => horns(page)).toContain('Larkfield alto 1000 copy');
    await act(page, 'Rename').click();
    await page.locator('.lb-rename input').fill('');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.locator('.lb-rename .lb-problem').innerText()).toContain('0 letters');
    await page.locator('.lb-rename input').fill('<img src=x onerror=document.title="hit">');
    await page.keyboard.press('Enter');
    await expect.poll(() => horns(page)).toContain('<img src=x onerror=document.title="hit">');
    expect(await page.locator('.lb-page img').count()).toBe(0);
    expect(await page.title()).not.toContain('hit');
    await act(page, 'Remove').click();
    await expect.poll(() => horns(page)).toEqual(['Larkfield alto 1000 copy']);
    expect(await page.evaluate(() => (document.activeElement as HTMLElement).dataset.act)).toBe(
      'undo-removal',
    );
    await page.keyboard.press('Enter');
    await expect.poll(() => horns(page)).toHaveLength(2);
    await more(page, '<img src=x onerror=document.title="hit">');
    expect(await page.locator('.lb-parts').first().locator('li').count()).toBe(3);
  });

  it('copies and removes single visits and setups', async () => {
    const page = await open();
    await bringIn(page, file('shop.json', inventedFile(1)));
    await more(page, 'Larkfield alto 1000');
    const [visits, setups] = [page.locator('.lb-parts').first(), page.locator('.lb-parts').last()];
    await visits.getByRole('button', { name: 'Duplicate the visit of 11 Jan 2020' }).click();
    await expect.poll(() => visits.locator('li').count()).toBe(4);
    await visits.getByRole('button', { name: 'Remove the visit of 12 Jan 2021' }).click();
    await expect.poll(() => visits.locator('li').count()).toBe(3);
    expect(await page.locator('.lb-when').first().innerText()).toContain('11 Jan 2020');
    await setups.getByRole('button', { name: 'Duplicate First bench sheet' }).click();
    await expect.poll(() => setups.locator('li').count()).toBe(2);
    await setups.getByRole('button', { name: 'Remove First bench sheet', exact: true }).click();
    await expect.poll(() => setups.locator('li').count()).toBe(1);
    await page.locator('[data-act="undo-removal"]').click();
    await expect.poll(() => setups.locator('li').count()).toBe(2);
    await page.locator('[data-act="undo-removal"]').click();
    await expect.poll(() => visits.locator('li').count()).toBe(4);
    expect(await page.locator('[data-act="undo-removal"]').count()).toBe(0);
    await visits.locator('.lb-open').last().click();
    await page.waitForSelector('vw-sheet-view');
    expect((await onBench(page)).visit.document.date).toBe('2019-01-10');
  });

  it('goes out as one file and comes in again elsewhere, the same', async () => {
    const page = await open();
    await bringIn(page, file('shop.json', inventedFile(3)));
    const saved = textOf(page.waitForEvent('download'));
    await page.locator('[data-act="save-all"]').click();
    const { name, text } = await saved;
    expect(name).toMatch(/^ventwright-library-\d{4}-\d\d-\d\d\.json$/);
    const read = readLibrary(JSON.parse(text), () => 'none');
    expect(read.issues).toEqual([]);
    const byId = <R extends { readonly id: string }>(records: readonly R[]): R[] =>
      [...records].sort((a, b) => (a.id < b.id ? -1 : 1));
    const sent = inventedLibrary(3);
    expect(byId(read.records.setups)).toEqual(byId(sent.setups));
    expect(byId(read.records.visits)).toEqual(byId(sent.visits));
    await bringIn(page, file('again.json', text));
    expect(await reports(page)).toContain('are here already, the same');
    expect(await horns(page)).toHaveLength(3);
    const changed = {
      ...sent,
      horns: sent.horns.map((h) => ({ ...h, document: { ...h.document, remark: 'changed elsewhere' } })),
    };
    await bringIn(page, file('other.json', JSON.stringify(libraryFile(changed))));
    expect(await horns(page)).toHaveLength(6);
    expect(await horns(page)).toContain('Larkfield alto 1000 (from other.json)');
  });

  it('takes several files let go over it, and tells all that is wrong with each', async () => {
    const page = await open();
    const good = inventedLibrary(1);
    const [horn] = good.horns;
    const bad = {
      ...libraryFile(good),
      horns: [{ ...horn, document: { ...horn.document, name: '', transpositionSemitones: 'two' } }],
    };
    const deep = `${'['.repeat(5000)}${']'.repeat(5000)}`;
    const texts = [
      ['good.json', JSON.stringify(libraryFile(good))],
      ['bad.json', JSON.stringify(bad)],
      ['deep.json', deep],
      ['torn.json', '{"kind": "ventwright lib'],
      ['holiday.txt', 'nothing to do with horns'],
    ];
    await page.evaluate((all) => {
      const dataTransfer = new DataTransfer();
      for (const [name, text] of all) dataTransfer.items.add(new File([text], name));
      const target = document.querySelector('.lb-page')!;
      for (const type of ['dragover', 'drop']) {
        target.dispatchEvent(new DragEvent(type, { dataTransfer, bubbles: true, cancelable: true }));
      }
    }, texts);
    await expect.poll(() => page.locator('.lb-reports article').count()).toBe(5);
    const rows = page.locator('.lb-reports article').nth(1).locator('tbody tr');
    await expect
      .poll(() => rows.allInnerTexts())
      .toContainEqual(
        expect.stringMatching(/horns\[0\]\.document\.name\s+invalid horn name: ""; expected a text/),
      );
    expect(await rows.allInnerTexts()).toContainEqual(expect.stringMatching(/transposition.*"two"/s));
    const text = await reports(page);
    expect(text).toContain('nested too deeply');
    expect(text).toContain('the file is not JSON');
    expect(text).toContain('no row of headers with padNumber or padId was found');
    expect(await horns(page)).toEqual(['Larkfield alto 1000']);
  });

  it('refuses a file of 50 MB before reading it', async () => {
    const page = await open();
    await page.evaluate(() => {
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([new Uint8Array(50_000_000)], 'huge.json'));
      dispatchEvent(new DragEvent('drop', { dataTransfer, cancelable: true }));
    });
    await expect.poll(() => reports(page)).toContain('the file is too large: 50 MB; expected at most 44 MB');
  });

  it('brings a sheet onto the bench as one step, and writes it out again', async () => {
    const page = await open();
    const before = await onBench(page);
    const sheet = 'padId;asSetOpeningMm;asSetMeasuredAt\r\ne;7,25;front\r\nf;none;front\r\n';
    await bringIn(page, file('sheet.csv', `\uFEFF${sheet}`));
    expect(await reports(page)).toContain('of “Larkfield alto, demo” on the bench came from this sheet');
    expect(await page.locator('.lb-issues tbody tr').first().innerText()).toMatch(/row 3/);
    const set = (await onBench(page)).asSet.document.keys.find((k) => k.pad === 'e');
    expect(set!.openingMm).toBe(7.25);
    const saved = textOf(page.waitForEvent('download'));
    await page.getByRole('button', { name: 'Sheet as CSV, decimal commas' }).click();
    const { name, text } = await saved;
    expect(name).toMatch(/^Larkfield-alto-demo-sheet-.*\.csv$/);
    expect(text).toContain(';7,25;front');
    await page.getByRole('button', { name: 'Undo' }).click();
    expect((await onBench(page)).asSet.document.keys).toEqual(before.asSet.document.keys);
  });

  it('lists 500 horns of ten setups within a second of asking, and searches them as one types', async () => {
    const page = await open();
    await page.evaluate(async (pair) => {
      const library = await document.querySelector('vw-workbench')!.bench!.library();
      const text = JSON.stringify(pair);
      const all = Array.from({ length: 250 }, (_all, i) => {
        return JSON.parse(text.replaceAll('"invented-', `"invented-${i}-`)) as typeof pair;
      });
      const outcome = await library.add({
        horns: all.flatMap((r) => r.horns),
        setups: all.flatMap((r) => r.setups),
        visits: all.flatMap((r) => r.visits),
      });
      if (outcome.kind !== 'saved') throw new Error(outcome.kind);
    }, inventedLibrary(2));
    await page.reload();
    await page.waitForSelector('.lb-horn');
    const spent = await page.evaluate(async () => {
      const view = document.querySelector('vw-library-view')!;
      const library = await document.querySelector('vw-workbench')!.bench!.library();
      const from = performance.now();
      const entries = await library.list();
      const input = document.querySelector<HTMLInputElement>('.lb-search input')!;
      const listed = performance.now();
      input.value = 'korosi TENOR';
      input.dispatchEvent(new Event('input'));
      await view.updateComplete;
      view.getBoundingClientRect();
      const now = performance.now();
      const shown = document.querySelectorAll('.lb-horn').length;
      return { count: entries.length, listMs: listed - from, searchMs: now - listed, shown };
    });
    console.log(
      `500 horns listed in ${spent.listMs.toFixed(0)} ms, searched in ${spent.searchMs.toFixed(0)} ms`,
    );
    expect(spent.count).toBe(500);
    expect(spent.shown).toBe(250);
    expect(spent.listMs).toBeLessThan(1000);
    expect(spent.searchMs).toBeLessThan(1000);
  });
});

describe.each(Object.entries(SIZES))('the library on a %s', (_name, size) => {
  it('has targets for a gloved finger, nothing cut off sideways, and no fault axe can find', async () => {
    const page = await open(size);
    await bringIn(page, file('shop.json', inventedFile(3)));
    await more(page, 'Larkfield alto 1000');
    const small = await page.evaluate((least) => {
      const targets = [
        ...document.querySelectorAll<HTMLElement>('.lb-page button, .lb-page a, .lb-search input'),
      ];
      return targets
        .filter((target) => target.getBoundingClientRect().height < least)
        .map((target) => target.textContent!.trim());
    }, FINGER_PX);
    expect(small).toEqual([]);
    const cut = await page.evaluate((width) => {
      const parts = [...document.querySelectorAll<HTMLElement>('.lb-page, .lb-page *')];
      return parts.filter((p) => p.getBoundingClientRect().right > width + 0.5).map((p) => p.className);
    }, size.width);
    expect(cut).toEqual([]);
    const violations = await faultsByAxe(page);
    expect(violations).toEqual([]);
  });
});
