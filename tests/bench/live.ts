import type { Browser, Page } from 'playwright-core';
import { openWorkbench, serveBuiltSite, SIZES, waitForSheet } from '../browser/built-site.ts';
import { launchBrowser } from '../browser/find-browser.ts';
import { libraryRows } from './library.ts';
import { loadingRows } from './loading.ts';
import { quantile, spreadOf } from './timing.ts';

/** How fast the built site follows a hand or a question, measured in a real browser. */
export interface LiveRow {
  readonly name: string;
  /** ms */
  readonly ours: number;
  readonly spread: number;
  readonly note: string;
}

const DRAGS = 240;
const WARM_UP = 40;
/** Cells typed on the sheet, and how many of them warm it up. */
const CELLS = 60;
const CELLS_WARM_UP = 10;

/**
 * Drags the E key's opening on the scale view, one step per frame's answer, and times each; then looks at a full
 * library and searches it.
 *
 * @returns the rows, or why there are none
 */
export async function liveRows(): Promise<LiveRow[] | string> {
  let browser: Browser;
  try {
    browser = await launchBrowser();
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
  try {
    const site = await serveBuiltSite();
    try {
      const { page } = await openWorkbench(browser, site, SIZES.laptop, 'scale');
      // The runner marks the names of functions it hands to the page by a helper that only it has.
      await page.evaluate('globalThis.__name = (named) => named');
      const painted = (await dragTimes(page)).slice(WARM_UP);
      const worked = (await workerTimes(page)).slice(WARM_UP);
      const { page: sheet } = await openWorkbench(browser, site, SIZES.laptop, 'sheet');
      await sheet.evaluate('globalThis.__name = (named) => named');
      await waitForSheet(sheet);
      const typed = (await cellTimes(sheet)).slice(CELLS_WARM_UP);
      return [
        {
          name: 'whole horn with all derivatives, in the worker of the built site',
          ours: quantile(worked, 0.5),
          spread: spreadOf(worked),
          note: `median of ${worked.length}; 95th percentile ${quantile(worked, 0.95).toFixed(1)} ms`,
        },
        {
          name: 'drag to painted, whole scale, in the built site',
          ours: quantile(painted, 0.95),
          spread: spreadOf(painted),
          note: `95th percentile of ${painted.length}; median ${quantile(painted, 0.5).toFixed(1)} ms`,
        },
        {
          name: 'cell typed to its bar redrawn, whole sheet, in the built site',
          ours: quantile(typed, 0.95),
          spread: spreadOf(typed),
          note: `95th percentile of ${typed.length}; median ${quantile(typed, 0.5).toFixed(1)} ms`,
        },
        ...(await loadingRows(site)),
        ...(await libraryRows(browser, site)),
      ];
    } finally {
      await site.close();
    }
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  } finally {
    await browser.close();
  }
}

/** From each input event of the slider to the frame with F4's mark at its new place, ms. */
async function dragTimes(page: Page): Promise<number[]> {
  return page.evaluate(async (drags) => {
    const slider = document
      .querySelector('vw-opening-slider')!
      .shadowRoot!.querySelector<HTMLInputElement>('input')!;
    const value = (): string | null =>
      document.querySelector('.vw-live [data-panel="pitch"][data-note="F4"]')!.getAttribute('data-value');
    const frame = (): Promise<number> => new Promise(requestAnimationFrame);
    // A message comes after the frame that is being made has been handed over.
    const afterPaint = (): Promise<void> =>
      new Promise((done) => {
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () => done();
        port2.postMessage(null);
      });
    const times: number[] = [];
    for (let i = 0; i < drags; i++) {
      // A browser hands a hand's moves to the page at the start of a frame.
      await frame();
      const before = value();
      const start = performance.now();
      slider.value = String(5 + 0.1 * (i % 60));
      slider.dispatchEvent(new Event('input'));
      while (value() === before) await frame().then(afterPaint);
      times.push(performance.now() - start);
      // Not in step with the frames.
      await new Promise((done) => setTimeout(done, 3 + ((i * 7) % 17)));
    }
    return times;
  }, DRAGS);
}

/** From a cell of the sheet that is left to its key's mark at the new place, ms. */
async function cellTimes(page: Page): Promise<number[]> {
  return page.evaluate(async (cells) => {
    const row = document.querySelector('.sh-row[data-pad="e"]')!;
    const input = row.querySelector<HTMLInputElement>('input[data-cell="asSet"]')!;
    const place = (): string | undefined => row.querySelector<HTMLElement>('.sh-mark.sh-asSet')?.style.left;
    const frame = (): Promise<number> => new Promise(requestAnimationFrame);
    const times: number[] = [];
    for (let i = 0; i < cells; i++) {
      await frame();
      const before = place();
      const start = performance.now();
      input.value = String(7 + 0.1 * (i % 30));
      input.dispatchEvent(new Event('change', { bubbles: true }));
      while (place() === before) await frame();
      times.push(performance.now() - start);
      // What is asked of the worker meanwhile is done before the next.
      await new Promise((done) => setTimeout(done, 150));
    }
    return times;
  }, CELLS);
}

/** The same work asked of a worker of its own, ms in the worker. */
async function workerTimes(page: Page): Promise<number[]> {
  const url = page.workers()[0].url();
  const horn = await page.evaluate(() => {
    const { horn, asFound } = document.querySelector('vw-workbench')!.bench!.store.get().horns[
      'demo-alto'
    ].contents;
    return { horn: horn.document, setup: asFound.document };
  });
  return page.evaluate(
    async ([workerUrl, sent, runs]) => {
      const worker = new Worker(workerUrl, { type: 'module' });
      const ask = (request: object): Promise<{ tookMs: number; outcome: { ok: boolean } }> =>
        new Promise((done) => {
          worker.onmessage = ({ data }) => done(data);
          worker.postMessage(request);
        });
      await ask({ kind: 'scale', id: 1, documents: sent, airC: 26.85, a4Hz: 440 });
      const times: number[] = [];
      for (let i = 0; i < runs; i++) {
        const proposedMm = { e: 5 + 0.1 * (i % 60), f: 7 };
        const { tookMs, outcome } = await ask({ kind: 'move', id: 2 + i, scaleId: 1, proposedMm });
        if (!outcome.ok) throw new Error('the whole horn was not played');
        times.push(tookMs);
      }
      worker.terminate();
      return times;
    },
    [url, horn, DRAGS] as const,
  );
}
