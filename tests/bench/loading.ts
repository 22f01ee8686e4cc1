import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { SIZES, waitForCurve, type BuiltSite } from '../browser/built-site.ts';
import { launchBrowser } from '../browser/find-browser.ts';
import type { LiveRow } from './live.ts';
import { median, quantile, spreadOf } from './timing.ts';

/** First visits timed, each in a browser of its own that has seen nothing before. */
const VISITS = 9;

const DIST = fileURLToPath(new URL('../../dist', import.meta.url));

/** How long a first visit takes to its answer and its curve, against one that fetches every part of the program first. */
export async function loadingRows(site: BuiltSite): Promise<LiveRow[]> {
  const ours: Visit[] = [];
  const eager: Visit[] = [];
  for (let i = 0; i < VISITS; i++) {
    ours.push(await firstVisit(site, false));
    eager.push(await firstVisit(site, true));
  }
  const answers = ours.map(({ answerMs }) => answerMs);
  const times = ours.map(({ ms }) => ms);
  const others = eager.map(({ ms }) => ms);
  const kb = (bytes: number): string => (bytes / 1000).toFixed(0);
  return [
    {
      name: 'first visit to the first answer: the key study in words, with its ±',
      ours: median(answers),
      spread: spreadOf(answers),
      note: `median of ${VISITS}, worst ${quantile(answers, 1).toFixed(0)} ms`,
    },
    {
      name: 'first visit to the key study with its curve',
      ours: median(times),
      spread: spreadOf(times),
      note:
        `median of ${VISITS}, worst ${quantile(times, 1).toFixed(0)} ms; ${kb(ours[0].bytes)} kB in ${ours[0].files} files by then, ` +
        `of ${kb(wholeBytes())} kB in all; with every part fetched first ${median(others).toFixed(0)} ms, ` +
        `${(median(others) / median(times)).toFixed(2)} times as long; files unpacked, as a server without compression gives them`,
    },
  ];
}

interface Visit {
  /** from asking for the page to its first answer in words */
  readonly answerMs: number;
  /** from asking for the page to its first curve */
  readonly ms: number;
  /** what had come by then */
  readonly bytes: number;
  readonly files: number;
}

async function firstVisit(site: BuiltSite, everything: boolean): Promise<Visit> {
  const browser = await launchBrowser();
  try {
    const page = await browser.newPage({ viewport: SIZES.laptop });
    if (everything) {
      await page.route(site.url, async (route) => {
        const body = readFileSync(join(DIST, 'index.html'), 'utf8');
        await route.fulfill({ body: body.replace('<head>', `<head>${all()}`), contentType: 'text/html' });
      });
    }
    // A browser that opens a window is busy with its own parts for over a second; a person's stands open already.
    await page.waitForTimeout(WINDOW_RESTS_MS);
    await page.goto(site.url, { waitUntil: 'commit' });
    await waitForCurve(page);
    const [answerMs, ms] = await page.evaluate(() =>
      ['key-answer', 'first-curve'].map((name) => performance.getEntriesByName(name)[0].startTime),
    );
    const came = await page.evaluate(
      (until) =>
        (performance.getEntriesByType('resource') as PerformanceResourceTiming[])
          .filter((entry) => entry.responseEnd > 0 && entry.responseEnd <= until)
          .map(({ decodedBodySize }) => decodedBodySize),
      ms,
    );
    return { answerMs, ms, bytes: came.reduce((sum, n) => sum + n, 0), files: came.length };
  } finally {
    await browser.close();
  }
}

/** How long a window is left to come to rest before its visit, ms. */
const WINDOW_RESTS_MS = 2000;

/** Scripts of the site, so that all of them run before the page’s own. */
function all(): string {
  return readdirSync(join(DIST, 'assets'))
    .filter((name) => name.endsWith('.js') && !/worker/.test(name))
    .map((name) => `<link rel="modulepreload" href="./assets/${name}">`)
    .join('');
}

function wholeBytes(): number {
  return (readdirSync(DIST, { recursive: true, encoding: 'utf8' }) as string[])
    .map((name) => statSync(join(DIST, name)))
    .filter((entry) => entry.isFile())
    .reduce((sum, { size }) => sum + size, 0);
}
