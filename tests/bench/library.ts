import type { Browser, Page } from 'playwright-core';
import { SIZES, waitForView, type BuiltSite } from '../browser/built-site.ts';
import { inventedLibrary } from '../ui/invented-library.ts';
import type { LiveRow } from './live.ts';
import { quantile, spreadOf } from './timing.ts';

const HORNS = 500;
const SETUPS = 10;
/** horns written at a time, each time under other ids */
const AT_A_TIME = 50;
const OPENINGS = 7;
const SEARCH = 'korosi tenor 1';

/** How long a full library takes to be looked at and searched, in the built site. */
export async function libraryRows(browser: Browser, site: BuiltSite): Promise<LiveRow[]> {
  const page = await browser.newPage({ viewport: SIZES.laptop });
  await page.goto(`${site.url}#library`);
  await waitForView(page, 'library');
  await page.evaluate('globalThis.__name = (named) => named');
  await fill(page);
  const opened: number[] = [];
  const searched: number[] = [];
  for (let i = 0; i < OPENINGS; i++) {
    // Another view first, with everything fetched, as it is when somebody goes to the library from the bench.
    await page.goto(`${site.url}#new`);
    await page.reload();
    await waitForView(page, 'new');
    await page.waitForLoadState('networkidle');
    await page.evaluate('globalThis.__name = (named) => named');
    const times = await lookAndSearch(page, HORNS, SEARCH);
    opened.push(times.openedMs);
    searched.push(...times.searchedMs);
  }
  await page.close();
  const horns = `${HORNS} horns with ${SETUPS} setups each`;
  return [
    {
      name: 'the library from a click to painted, in the built site',
      ours: quantile(opened, 0.5),
      spread: spreadOf(opened),
      note: `${horns}; median of ${opened.length}, each after a reload; slowest ${Math.max(...opened).toFixed(0)} ms`,
    },
    {
      name: 'a letter of a search to painted, in the built site',
      ours: quantile(searched, 0.95),
      spread: spreadOf(searched),
      note: `${horns}; 95th percentile of ${searched.length}; median ${quantile(searched, 0.5).toFixed(0)} ms`,
    },
  ];
}

/** Puts the horns into the page's library. */
async function fill(page: Page): Promise<void> {
  await page.evaluate(
    async ([some, copies]) => {
      const library = await document.querySelector('vw-workbench')!.bench!.library();
      const text = JSON.stringify(some);
      for (let i = 0; i < copies; i++) {
        const outcome = await library.add(
          JSON.parse(text.replaceAll('"invented-', `"invented-${i}-`)) as typeof some,
        );
        if (outcome.kind !== 'saved') throw new Error(`the library was not filled: ${outcome.kind}`);
      }
    },
    [inventedLibrary(AT_A_TIME, SETUPS), HORNS / AT_A_TIME] as const,
  );
}

/** From the click until every horn of the list is painted, and the same for each letter of a search, ms. */
function lookAndSearch(
  page: Page,
  horns: number,
  search: string,
): Promise<{ openedMs: number; searchedMs: number[] }> {
  return page.evaluate(
    async ([count, words]) => {
      const frame = (): Promise<number> => new Promise(requestAnimationFrame);
      // A message comes after the frame that is being made has been handed over.
      const afterPaint = (): Promise<void> =>
        frame().then(
          () =>
            new Promise((done) => {
              const { port1, port2 } = new MessageChannel();
              port1.onmessage = () => done();
              port2.postMessage(null);
            }),
        );
      const from = performance.now();
      document.querySelector<HTMLAnchorElement>('a[href="#library"]')!.click();
      while (document.querySelectorAll('.lb-horn').length < count) await frame();
      await afterPaint();
      const openedMs = performance.now() - from;
      const input = document.querySelector<HTMLInputElement>('.lb-search input')!;
      const searchedMs: number[] = [];
      for (let i = 1; i <= words.length; i++) {
        const start = performance.now();
        input.value = words.slice(0, i);
        input.dispatchEvent(new Event('input'));
        await afterPaint();
        searchedMs.push(performance.now() - start);
      }
      if (document.querySelectorAll('.lb-horn').length === 0) throw new Error('the search found nothing');
      return { openedMs, searchedMs };
    },
    [horns, search] as const,
  );
}
