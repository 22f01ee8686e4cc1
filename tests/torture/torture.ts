import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { findAgain, momentFound, streamEdits, whyNotFound, type Streamed } from './edit-stream.ts';
import { startOn } from './killed-browser.ts';

/** The kill comes while one of so many edits, by chance, is made or on its way. */
const MOST_EDITS = 16;
/** A page that is too slow is killed all the same, ms. */
const LONGEST_WAIT_MS = 15_000;

/** What was found after every kill. */
export interface TortureReport {
  readonly kills: number;
  /** edits made before the kills */
  readonly made: number;
  /** edits the page had said were saved */
  readonly acknowledged: number;
  /** edits found again, some of which the page had no time to acknowledge */
  readonly found: number;
  /** kills that came while an edit was on its way */
  readonly midway: number;
  /** starts after which the bench showed the visit that was edited, of itself */
  readonly cameBack: number;
  /** what was lost: one sentence a round; empty where nothing was */
  readonly lost: readonly string[];
}

/** What a torture is told. */
export interface TortureOptions {
  readonly rounds: number;
  readonly seed: number;
  readonly url: string;
  /** called after each round */
  readonly onRound?: (round: number, sentence: string) => void;
}

/**
 * Kills a browser again and again in the middle of a stream of edits, opens it again on the same profile, and looks
 * for every edit the page had said was saved. What is found must be a moment of the stream: no half of a write.
 */
export async function torture({ rounds, seed, url, onRound }: TortureOptions): Promise<TortureReport> {
  const profile = mkdtempSync(join(tmpdir(), 'ventwright-torture-'));
  const random = dice(seed);
  const lost: string[] = [];
  let [made, acknowledged, found, midway, cameBack] = [0, 0, 0, 0, 0];
  let last: Streamed | null = null;
  try {
    for (let round = 0; round <= rounds; round++) {
      const { page, kill } = await startOn(profile);
      try {
        await page.goto(url);
        await page.waitForFunction(() => document.querySelector('vw-workbench')?.bench);
        // The runner marks the names of functions it hands to the page by a helper that only it has.
        await page.evaluate('globalThis.__name = (named) => named');
        if (last !== null) {
          const again = await findAgain(page, last.hornId, last.visitId);
          const moment = momentFound(last, again);
          if (moment === null) {
            lost.push(
              `round ${round}: of ${JSON.stringify(last)} the library holds ${JSON.stringify(again)}: ` +
                (await whyNotFound(page, last.hornId, last.visitId)),
            );
          }
          if ((await benchShows(page)) === last.visitId) cameBack++;
          made += last.edits.length;
          acknowledged += last.saved;
          found += moment ?? 0;
          if (last.edits.length > (moment ?? 0) || (moment ?? 0) > last.saved) midway++;
          onRound?.(round, `made ${last.edits.length}, saved ${last.saved}, found ${moment ?? 'not'}`);
        }
        if (round === rounds) break;
        last = await streamEdits(page, {
          newVisit: round > 0 && random() < 0.25,
          pausesMs: Array.from({ length: 7 }, () => Math.floor(random() ** 2 * 60)),
          from: Math.floor(random() * 6000),
        });
        const enough = 1 + Math.floor(random() * MOST_EDITS);
        for (let waited = 0; last.edits.length < enough && waited < LONGEST_WAIT_MS; waited += 5)
          await pause(5);
        await pause(random() * 40);
      } finally {
        await kill();
      }
    }
  } finally {
    rmSync(profile, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
  }
  return { kills: rounds, made, acknowledged, found, midway, cameBack, lost };
}

/** The visit that lies on the bench, once the page has brought back what was last there. */
async function benchShows(page: Page): Promise<string> {
  const shown = (): string => {
    const { horns, hornId } = document.querySelector('vw-workbench')!.bench!.store.get();
    return horns[hornId].contents.visit.id;
  };
  await page
    .waitForFunction(
      () => document.querySelector('vw-workbench')!.bench!.store.get().keeping.kind === 'saved',
      undefined,
      { timeout: 5000 },
    )
    .catch(() => undefined);
  return page.evaluate(shown);
}

/** Numbers from 0 to 1 that a seed gives again. */
function dice(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

const pause = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms));
