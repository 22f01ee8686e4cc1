import { readFileSync } from 'node:fs';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import { readLibrary, setupOfVisit } from '../../src/documents/library-file.ts';
import { serveBuiltSite, SIZES, waitForView, type BuiltSite } from './built-site.ts';
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

/** A browser of its own, as on another machine. */
async function newContext(): Promise<BrowserContext> {
  const context = await browser.newContext({ viewport: SIZES.laptop, acceptDownloads: true });
  onTestFinished(() => context.close());
  return context;
}

/** Opens the sheet in a tab. @param before runs in the page before anything of its own */
async function openSheet(context: BrowserContext, before?: () => void): Promise<Page> {
  const page = await context.newPage();
  if (before !== undefined) await page.addInitScript(before);
  await page.goto(`${site.url}#sheet`);
  await cell(page, 'e').waitFor();
  return page;
}

/** The page afresh, as its browser kept it. */
async function reload(page: Page): Promise<void> {
  await page.reload();
  await cell(page, 'e').waitFor();
}

const cell = (page: Page, pad: string) => page.locator(`input[data-pad="${pad}"][data-cell="asSet"]`);

/** Types an opening as set, in mm at the front. */
async function set(page: Page, pad: string, mm: number): Promise<void> {
  await cell(page, pad).fill(String(mm));
  await cell(page, pad).press('Enter');
}

const isKept = (page: Page): Promise<void> => page.locator('.wb-kept', { hasText: '✓ saved' }).waitFor();
const alerts = (page: Page) => page.locator('.wb-alert:not([hidden]) p');

/** The openings as set of E in every visit that the library holds. */
function setOfE(page: Page): Promise<number[]> {
  return page.evaluate(async () => {
    const library = await document.querySelector('vw-workbench')!.bench!.library();
    const { records } = await library.read('all');
    return records.visits
      .flatMap((visit) => {
        const set = records.setups.find((s) => s.id === visit.document.asSet)!;
        return set.document.keys.filter((k) => k.pad === 'e').map((k) => k.openingMm!);
      })
      .sort((a, b) => a - b);
  });
}

/** Changes the records of one kind as nothing but a fault, or another program, would. */
function spoil(page: Page, kind: 'horns' | 'setups' | 'visits', document: unknown): Promise<void> {
  return page.evaluate(
    ([store, spoiled]) =>
      new Promise<void>((done, failed) => {
        const opening = indexedDB.open('ventwright');
        opening.onerror = () => failed(opening.error);
        opening.onsuccess = () => {
          const database = opening.result;
          const transaction = database.transaction(store, 'readwrite');
          const cursor = transaction.objectStore(store).openCursor();
          cursor.onsuccess = () => cursor.result?.update({ ...cursor.result.value, document: spoiled });
          transaction.oncomplete = () => {
            database.close();
            done();
          };
          transaction.onerror = () => failed(transaction.error);
        };
      }),
    [kind, document] as const,
  );
}

/** What a press saves as a file. */
async function savedFile(page: Page, press: string): Promise<string> {
  const [download] = await Promise.all([page.waitForEvent('download'), page.locator(press).click()]);
  return readFileSync(await download.path(), 'utf8');
}

describe('two tabs on one horn', () => {
  it('show one another what was changed, and say so', async () => {
    const context = await newContext();
    const mine = await openSheet(context);
    await set(mine, 'e', 7);
    await isKept(mine);
    const theirs = await openSheet(context);
    expect(Number.parseFloat(await cell(theirs, 'e').inputValue())).toBe(7);
    await set(theirs, 'e', 8);
    await isKept(theirs);
    await expect.poll(async () => Number.parseFloat(await cell(mine, 'e').inputValue())).toBe(8);
    expect(await alerts(mine).allInnerTexts()).toEqual([expect.stringContaining('Another tab changed')]);
  });

  it('never write over one another: a person keeps both, or takes the other’s', async () => {
    const context = await newContext();
    const first = await openSheet(context);
    await set(first, 'e', 7);
    await isKept(first);
    // A tab that hears nothing, as one the system had put to sleep.
    const asleep = await openSheet(context, () => {
      BroadcastChannel.prototype.addEventListener = () => undefined;
    });
    await set(first, 'e', 8);
    await isKept(first);
    await set(asleep, 'e', 9);
    await asleep.locator('.wb-kept', { hasText: 'not saved' }).waitFor();
    expect(await setOfE(first)).toEqual([8]);
    // Wherever the sheet is scrolled to, what is not saved is in sight.
    await asleep.evaluate(() => scrollTo(0, document.documentElement.scrollHeight));
    const box = (await alerts(asleep).boundingBox())!;
    expect(box.y + box.height).toBeLessThanOrEqual(SIZES.laptop.height);
    await asleep.getByRole('button', { name: 'Keep this as a copy' }).click();
    await isKept(asleep);
    expect(await setOfE(first)).toEqual([8, 9]);
    expect(Number.parseFloat(await cell(asleep, 'e').inputValue())).toBe(9);

    await reload(asleep);
    const before = await setOfE(first);
    const shown = Number.parseFloat(await cell(asleep, 'e').inputValue());
    expect(before).toContain(shown);
  });

  it('let the one that comes second take what the other wrote', async () => {
    const context = await newContext();
    const first = await openSheet(context);
    await set(first, 'e', 7);
    await isKept(first);
    const asleep = await openSheet(context, () => {
      BroadcastChannel.prototype.addEventListener = () => undefined;
    });
    await set(first, 'e', 8);
    await isKept(first);
    await set(asleep, 'e', 9);
    await asleep.getByRole('button', { name: 'Take the other tab’s' }).click();
    await isKept(asleep);
    expect(Number.parseFloat(await cell(asleep, 'e').inputValue())).toBe(8);
    expect(await setOfE(first)).toEqual([8]);
    await set(asleep, 'e', 6);
    await expect.poll(() => setOfE(first)).toEqual([6]);
  });
});

describe('a browser without room', () => {
  it('has that said, keeps what is typed on the bench, lets it be saved as a file, and saves it once there is room', async () => {
    const context = await newContext();
    const page = await openSheet(context);
    const devtools = await context.newCDPSession(page);
    const origin = new URL(site.url).origin;
    // Before anything is written: the browser remembers for a while how much room it found.
    await devtools.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1 });
    await set(page, 'e', 8);
    await page.locator('.wb-kept', { hasText: 'not saved' }).waitFor();
    expect(await alerts(page).allInnerTexts()).toEqual([
      expect.stringMatching(/^Not saved: this browser has no/),
    ]);
    expect(await setOfE(page)).toEqual([]);
    expect(Number.parseFloat(await cell(page, 'e').inputValue())).toBe(8);

    await page.evaluate(() => (location.hash = '#library'));
    await waitForView(page, 'library');
    const file = await savedFile(page, '.lb-bench button >> nth=0');
    expect(setInFile(file)).toEqual([8]);

    await devtools.send('Storage.overrideQuotaForOrigin', { origin });
    await page.evaluate(() => (location.hash = '#sheet'));
    await set(page, 'f', 6);
    await isKept(page);
    expect(await setOfE(page)).toEqual([8]);
  });
});

/** The openings as set of E in every visit of a file. */
function setInFile(text: string): number[] {
  const { records, issues } = readLibrary(JSON.parse(text), () => 'none');
  expect(issues).toEqual([]);
  return records.visits.map(
    ({ document }) =>
      setupOfVisit(records.setups, document, 'asSet')!.keys.find((k) => k.pad === 'e')!.openingMm!,
  );
}

describe('a browser that refuses its storage', () => {
  it('has that said with the first change, and what is in memory can be saved as a file', async () => {
    const context = await newContext();
    const page = await openSheet(context, () => {
      IDBFactory.prototype.open = () => {
        throw new DOMException('denied', 'SecurityError');
      };
    });
    await set(page, 'e', 7.5);
    await page.locator('.wb-kept', { hasText: 'not saved' }).waitFor();
    expect(await alerts(page).allInnerTexts()).toEqual([
      expect.stringContaining('This browser refuses to keep a library here'),
    ]);
    await page.evaluate(() => (location.hash = '#library'));
    await waitForView(page, 'library');
    expect(await page.locator('.lb-caution').innerText()).toContain('refuses to keep a library');
    expect(setInFile(await savedFile(page, '[data-act="save-all"]'))).toEqual([7.5]);
  });
});

describe('a page loaded anew', () => {
  it('has the head’s list of horns, and no horn that is gone', async () => {
    const context = await newContext();
    const page = await openSheet(context);
    await set(page, 'e', 7);
    await isKept(page);
    const list = (): Promise<string[]> => page.locator('select[data-act="horn"] option').allInnerTexts();
    const before = await list();
    const copy = await page.evaluate(async () => {
      const { bench } = document.querySelector('vw-workbench')!;
      const library = await bench!.library();
      const { records } = await library.read('all');
      const [horn] = records.horns;
      const [id, name] = ['a second', 'A second alto'];
      const setups = records.setups
        .filter((s) => s.document.keys.length > 5)
        .map(({ document }) => ({ id: 'its setup', hornId: id, document }));
      await library.add({ horns: [{ id, document: { ...horn.document, name } }], setups, visits: [] });
      await bench!.openHorn(id);
      await bench!.takeHorn(horn.id);
      return { id, name };
    });
    await expect.poll(list).toEqual([...before, copy.name]);
    await reload(page);
    await expect.poll(list).toEqual([...before, copy.name]);
    await page.evaluate(async (id) => {
      const library = await document.querySelector('vw-workbench')!.bench!.library();
      await library.remove({ hornId: id, ids: 'all' });
    }, copy.id);
    await reload(page);
    await expect.poll(list).toEqual(before);
  });
});

describe('records that cannot be read', () => {
  it('a damaged horn is told of, listed, and carried away as it is; the bench goes on', async () => {
    const context = await newContext();
    const page = await openSheet(context);
    await set(page, 'e', 7);
    await isKept(page);
    await spoil(page, 'horns', { kind: 'ventwright horn', version: 2, name: 'Gnawed', holes: 'gone' });
    await reload(page);
    await expect
      .poll(() => alerts(page).allInnerTexts())
      .toEqual([expect.stringContaining('cannot be read')]);
    await page.evaluate(() => (location.hash = '#library'));
    await waitForView(page, 'library');
    const file = await savedFile(page, '[data-act="save-all"]');
    expect(file).toContain('Gnawed');
    expect(file).toContain('"openingMm":7,');
  });

  it('a visit written by a newer program is told of and kept as it is, and the horn opens', async () => {
    const context = await newContext();
    const page = await openSheet(context);
    await set(page, 'e', 7);
    await isKept(page);
    const newer = { kind: 'ventwright visit', version: 99, temper: 'sunny' };
    await spoil(page, 'visits', newer);
    await reload(page);
    await expect
      .poll(async () => (await alerts(page).allInnerTexts()).join(' '))
      .toContain('newer Ventwright, in version 99');
    await set(page, 'e', 8);
    await isKept(page);
    const raw = await page.evaluate(async () => {
      const library = await document.querySelector('vw-workbench')!.bench!.library();
      return JSON.stringify(await library.raw('all'));
    });
    expect(raw).toContain('sunny');
    expect(raw).toContain('"openingMm":7');
    expect(raw).toContain('"openingMm":8');
  });

  it('a library laid out by a newer program is read, and nothing in it is changed', async () => {
    const context = await newContext();
    const page = await openSheet(context);
    await set(page, 'e', 7);
    await isKept(page);
    await page.evaluate(async () => {
      // The page lets its own hold on the database go when a newer one is asked for.
      await new Promise<void>((done, failed) => {
        const opening = indexedDB.open('ventwright', 7);
        opening.onupgradeneeded = () => opening.result.createObjectStore('photographs');
        opening.onsuccess = () => {
          opening.result.close();
          done();
        };
        opening.onerror = () => failed(opening.error);
      });
    });
    await reload(page);
    await expect.poll(async () => Number.parseFloat(await cell(page, 'e').inputValue())).toBe(7);
    await set(page, 'e', 8);
    await page.locator('.wb-kept', { hasText: 'not saved' }).waitFor();
    expect((await alerts(page).allInnerTexts()).join(' ')).toContain('newer Ventwright');
    expect(await setOfE(page)).toEqual([7]);
  });
});
