import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { preview } from 'vite';
import type { ViewName } from '../../src/ui/state/view-names.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

/** Where the site was built to: dist/, unless `VENTWRIGHT_DIST` names another folder. */
const DIST = resolve(ROOT, process.env.VENTWRIGHT_DIST ?? 'dist');

/** The built site, served. */
export interface BuiltSite {
  readonly url: string;
  close(): Promise<void>;
}

/** Serves the built site on a free port of this machine. @throws Error where nothing has been built */
export async function serveBuiltSite(): Promise<BuiltSite> {
  if (!existsSync(join(DIST, 'index.html'))) {
    throw new Error(`There is no built site in ${DIST}. Run npm run build first; npm test does.`);
  }
  return serveSite(DIST);
}

/** Serves a built site in any folder. */
export async function serveSite(folder: string): Promise<BuiltSite> {
  const server = await preview({
    root: ROOT,
    logLevel: 'silent',
    build: { outDir: folder },
    preview: { host: '127.0.0.1', port: 20_000 + (process.pid % 30_000), open: false },
  });
  return { url: server.resolvedUrls!.local[0], close: () => server.close() };
}

/** The sizes the screen is made for. */
export const SIZES = {
  laptop: { width: 1280, height: 800 },
  tablet: { width: 820, height: 1180 },
  phone: { width: 390, height: 844 },
} as const;

/** A page with what went wrong on it. */
export interface WatchedPage {
  readonly page: Page;
  /** console errors, page errors and requests to anywhere but the site */
  readonly faults: string[];
}

/** Opens the workbench at one of its views and waits for the first picture; with the story, as on a first visit. */
export async function openWorkbench(
  browser: Browser,
  site: BuiltSite,
  size: { readonly width: number; readonly height: number },
  view: ViewName = 'key',
  { story = false }: { readonly story?: boolean } = {},
): Promise<WatchedPage> {
  const page = await browser.newPage({ viewport: size, hasTouch: size.width < 900 });
  // The story of a first visit has its own tests; elsewhere somebody has been here before.
  if (!story) await page.addInitScript(() => localStorage.setItem('ventwright.story', 'shown'));
  const faults: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(`console: ${message.text()}`);
  });
  page.on('pageerror', (error) => faults.push(`page: ${error.message}`));
  page.on('request', (request) => {
    const url = request.url();
    if (!url.startsWith(site.url) && !url.startsWith('data:') && !url.startsWith('blob:')) {
      faults.push(`request: ${url}`);
    }
  });
  await page.goto(`${site.url}#${view}`);
  await WAITS[view](page);
  return { page, faults };
}

/** What a view has to show before it counts as open. */
const WAITS: Readonly<Record<ViewName, (page: Page) => Promise<void>>> = {
  sheet: waitForBars,
  key: waitForCurve,
  scale: waitForScale,
  played: waitForPlayed,
  proposal: async (page) => void (await page.waitForSelector('.pp-row')),
  'side-by-side': waitForSideBySide,
  library: waitForLibrary,
  new: waitForExample,
  links: waitForLinks,
  leaks: waitForLeakMap,
  pads: waitForTabs,
  work: waitForTabs,
  'player-sheet': async (page) => void (await page.waitForSelector('.ps-page[data-fit]')),
  notes: async (page) => void (await page.waitForSelector('.nt-page h1')),
};

/** Waits until a view shows what it has to show. */
export const waitForView = (page: Page, view: ViewName): Promise<void> => WAITS[view](page);

/** Waits until the first curve has been drawn. */
export async function waitForCurve(page: Page): Promise<void> {
  await page.waitForFunction(() => performance.getEntriesByName('first-curve').length > 0);
}

/** Waits until the first scale has been drawn and the key in hand can be moved. */
export async function waitForScale(page: Page): Promise<void> {
  await page.waitForFunction(() => performance.getEntriesByName('first-scale').length > 0);
  await page.waitForSelector('vw-opening-slider');
}

/** Waits until every key of the sheet has its vent share. */
async function waitForBars(page: Page): Promise<void> {
  await page.waitForSelector('.sh-share');
}

/** Waits until every key of the sheet has its answer. */
export async function waitForSheet(page: Page): Promise<void> {
  await page.waitForSelector('.sh-answer[aria-busy="false"]');
}

/** Waits until the example a new horn may start from is drawn. */
export async function waitForExample(page: Page): Promise<void> {
  await page.waitForSelector('vw-horn-picture svg');
}

/** Waits until the notes that may be logged are listed. */
async function waitForPlayed(page: Page): Promise<void> {
  await page.waitForSelector('.pl-list input');
}

/** Waits until the first comparison has been drawn, or until the page says what to do as there is none to draw. */
async function waitForSideBySide(page: Page): Promise<void> {
  await page.waitForFunction(
    () =>
      performance.getEntriesByName('first-side-by-side').length > 0 ||
      document.querySelector('.sd-answer[aria-busy="false"] ~ .vw-empty') !== null,
  );
}

/** Opens side by side and puts another horn beside the one in hand: something to draw. */
export async function openComparison(
  ...[browser, site, size]: Parameters<typeof openWorkbench>
): Promise<WatchedPage> {
  const watched = await openWorkbench(browser, site, size, 'side-by-side');
  await watched.page.selectOption('select[data-act="horn-B"]', { label: 'Demo tenor' });
  await watched.page.waitForFunction(() => performance.getEntriesByName('first-side-by-side').length > 0);
  return watched;
}

/** Waits until the library has been listed. */
export async function waitForLibrary(page: Page): Promise<void> {
  await page.waitForSelector('.lb-page[aria-busy="false"]');
}

/** Waits until the stack that moves is drawn. */
async function waitForLinks(page: Page): Promise<void> {
  await page.waitForSelector('vw-stack-drawing svg');
}

/** Waits until every leak has been played on every note. */
async function waitForLeakMap(page: Page): Promise<void> {
  await page.waitForSelector('vw-leak-map table');
  await page.waitForSelector('.lk-columns button');
}

/** Waits until a view of regulation stands under its tabs with its answer. */
async function waitForTabs(page: Page): Promise<void> {
  await page.waitForSelector('.rg-tabs');
  await page.waitForSelector('main h1');
}

/** Waits until no study is on its way. */
export async function waitForAnswer(page: Page): Promise<void> {
  await page.waitForSelector('.ks-answer[aria-busy="false"]');
}
