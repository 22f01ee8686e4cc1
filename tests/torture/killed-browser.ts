import { spawn, type ChildProcess } from 'node:child_process';
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { chromium, type Browser, type Page } from 'playwright-core';
import { findBrowser } from '../browser/find-browser.ts';

/** A real browser on a profile that outlives it. */
export interface KillableBrowser {
  /** its first page, on the workbench */
  readonly page: Page;
  /** Kills the browser and every process it started, at once, as `kill -9` does. */
  kill(): Promise<void>;
}

/** How long a browser may take to start on a busy machine, ms. */
const START_MS = 60_000;

/** Starts a browser of its own on a profile and opens a page there. */
export async function startOn(profile: string): Promise<KillableBrowser> {
  const { executablePath, args } = await findBrowser();
  // A killed browser leaves its lock behind.
  for (const name of ['SingletonLock', 'SingletonCookie', 'SingletonSocket', 'DevToolsActivePort']) {
    rmSync(join(profile, name), { force: true });
  }
  const child = spawn(
    executablePath,
    [
      ...args,
      '--headless',
      '--no-sandbox',
      '--no-first-run',
      '--disable-gpu',
      '--disable-dev-shm-usage',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      '--remote-debugging-port=0',
      `--user-data-dir=${profile}`,
      'about:blank',
    ],
    { detached: true, stdio: ['ignore', 'ignore', 'pipe'] },
  );
  const ended = new Promise<void>((done) => child.once('exit', () => done()));
  try {
    const browser = await chromium.connectOverCDP(await debuggerOf(child), { timeout: START_MS });
    return {
      page: await firstPage(browser),
      async kill() {
        killAll(child);
        await ended;
        await browser.close().catch(() => undefined);
      },
    };
  } catch (error) {
    killAll(child);
    throw error;
  }
}

/** The whole group of processes: the one that writes to the disk is not the one with the window. */
function killAll(child: ChildProcess): void {
  if (child.pid !== undefined && child.exitCode === null) process.kill(-child.pid, 'SIGKILL');
}

async function firstPage(browser: Browser): Promise<Page> {
  const [context] = browser.contexts();
  return context.pages()[0] ?? (await context.newPage());
}

/** Where a starting browser says it listens. */
function debuggerOf(child: ChildProcess): Promise<string> {
  return new Promise((found, failed) => {
    let said = '';
    const timer = setTimeout(() => failed(new Error(`the browser did not start: ${said}`)), START_MS);
    child.stderr!.on('data', (chunk: Buffer) => {
      said += chunk.toString();
      const url = /DevTools listening on (ws:\S+)/.exec(said)?.[1];
      if (url === undefined) return;
      clearTimeout(timer);
      found(url);
    });
    child.once('exit', (code) => failed(new Error(`the browser ended with ${code}: ${said}`)));
  });
}
