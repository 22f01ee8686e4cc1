import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { inTurn, tone, wavFile } from '../ui/played-tones.ts';
import { openWorkbench, serveBuiltSite, SIZES, type BuiltSite } from './built-site.ts';
import { launchBrowser } from './find-browser.ts';

const RATE = 48_000;

/** What an alto’s F4 sounds at, Hz. */
const F4_HZ = 440 * 2 ** (-13 / 12);

let site: BuiltSite;
let folder: string;
let wav: string;

beforeAll(async () => {
  site = await serveBuiltSite();
  folder = mkdtempSync(join(tmpdir(), 'ventwright-microphone-'));
  wav = join(folder, 'f4.wav');
  writeFileSync(wav, wavFile(inTurn([tone(F4_HZ, { sampleRate: RATE, seconds: 60 })], RATE, 0.3), RATE));
});

afterAll(async () => {
  await site?.close();
  rmSync(folder, { recursive: true });
});

/** Chromium with a microphone that plays the file; it is allowed to listen, or a person has yet to say. */
const withMicrophone = (...more: readonly string[]): Promise<Browser> =>
  launchBrowser([
    '--use-fake-device-for-media-stream',
    `--use-file-for-fake-audio-capture=${wav}%noloop`,
    ...more,
  ]);

/** Keeps what the page listens with, and what it asked for. */
async function watchMicrophone(page: Page): Promise<void> {
  await page.evaluate(() => {
    const devices = navigator.mediaDevices;
    const ask = devices.getUserMedia.bind(devices);
    const kept: { asked: unknown; streams: MediaStream[] } = { asked: null, streams: [] };
    Object.assign(globalThis, { kept });
    devices.getUserMedia = async (constraints) => {
      kept.asked = constraints;
      const stream = await ask(constraints);
      kept.streams.push(stream);
      return stream;
    };
  });
}

const tracks = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    (globalThis as unknown as { kept: { streams: MediaStream[] } }).kept.streams.flatMap((stream) =>
      stream.getTracks().map(({ readyState }) => readyState),
    ),
  );

const listenButton = '[data-act="listen"]';

describe('the microphone', () => {
  it('is asked for as it is, and let go when the view is left; what sounded is kept', async () => {
    const browser = await withMicrophone('--use-fake-ui-for-media-stream');
    try {
      const { page, faults } = await openWorkbench(browser, site, SIZES.laptop, 'played');
      await watchMicrophone(page);
      await page.locator(listenButton).click();
      await page.locator('h1', { hasText: 'F4' }).waitFor();
      expect(await tracks(page)).toEqual(['live']);
      const asked = await page.evaluate(
        () => (globalThis as unknown as { kept: { asked: unknown } }).kept.asked,
      );
      expect(asked).toEqual({
        audio: { echoCancellation: false, noiseSuppression: false, autoGainControl: false },
      });
      // A note is logged once it has been held for half a second.
      await page.locator('.pl-sure', { hasText: /steady for (0\.[6-9]|[1-9])/ }).waitFor();
      await page.locator('.wb-views a', { hasText: 'Library' }).click();
      await expect.poll(() => tracks(page)).toEqual(['ended']);
      await page.locator('.wb-views a', { hasText: 'Played' }).click();
      await page.locator(listenButton, { hasText: 'Listen' }).waitFor();
      const row = page.locator('tr', { has: page.locator('input[data-note="F4"]') });
      await expect.poll(() => row.locator('.pl-cents').innerText()).toMatch(/^[+−]?0\.\d/);
      expect(faults).toEqual([]);
    } finally {
      await browser.close();
    }
  }, 90_000);

  it('is let go when another horn is taken in hand, and nothing is logged of that one', async () => {
    const browser = await withMicrophone('--use-fake-ui-for-media-stream');
    try {
      const { page, faults } = await openWorkbench(browser, site, SIZES.laptop, 'played');
      await watchMicrophone(page);
      await page.locator(listenButton).click();
      await page.locator('.pl-sure', { hasText: 'steady' }).waitFor();
      await page.locator('[data-act="horn"]').selectOption({ label: 'Demo tenor' });
      await expect.poll(() => tracks(page)).toEqual(['ended']);
      await page.locator('h1', { hasText: 'No note is logged as found' }).waitFor();
      expect(await page.locator(listenButton).innerText()).toBe('Listen');
      expect(faults).toEqual([]);
    } finally {
      await browser.close();
    }
  }, 90_000);

  it('that is taken away is told, and listening can begin again', async () => {
    const browser = await withMicrophone('--use-fake-ui-for-media-stream');
    try {
      const { page } = await openWorkbench(browser, site, SIZES.laptop, 'played');
      await watchMicrophone(page);
      await page.locator(listenButton).click();
      await page.locator('h1', { hasText: 'F4' }).waitFor();
      await page.evaluate(() => {
        const { streams } = (globalThis as unknown as { kept: { streams: MediaStream[] } }).kept;
        // What the browser does when the device is pulled out.
        streams[0].getAudioTracks()[0].dispatchEvent(new Event('ended'));
      });
      await page.locator('.pl-told p', { hasText: 'The microphone went away' }).waitFor();
      expect(await tracks(page)).toEqual(['ended']);
      await page.locator(listenButton).click();
      await page.locator('h1', { hasText: 'F4' }).waitFor();
      expect(await page.locator('.pl-told').isVisible()).toBe(false);
    } finally {
      await browser.close();
    }
  }, 90_000);

  it('that is refused, missing or hidden is told by its own sentence each', async () => {
    const sentences = {
      NotAllowedError: /refused the microphone\. Allow it .* type cents/,
      NotFoundError: /^No microphone was found.*type cents/,
      NotSupportedError: /^The microphone could not be used: .* Cents can be typed from a tuner\.$/,
    };
    for (const open of [() => withMicrophone('--deny-permission-prompts'), () => launchBrowser()]) {
      const browser = await open();
      try {
        const { page, faults } = await openWorkbench(browser, site, SIZES.phone, 'played');
        const told = page.locator('.pl-told p');
        // Why there is none is the browser's to say: one without a window has nobody to ask.
        const why = await page.evaluate(() =>
          navigator.mediaDevices.getUserMedia({ audio: true }).then(
            () => 'heard',
            (error: unknown) => (error as DOMException).name,
          ),
        );
        await page.locator(listenButton).click();
        await told.waitFor();
        expect(await told.innerText()).toMatch(sentences[why as keyof typeof sentences]);
        expect(await page.locator(listenButton).innerText()).toBe('Listen');
        for (const [name, sentence] of Object.entries(sentences)) {
          await page.evaluate((error) => {
            navigator.mediaDevices.getUserMedia = () => Promise.reject(new DOMException('No sound', error));
          }, name);
          await page.locator(listenButton).click();
          await page.locator('.pl-told p', { hasText: sentence }).waitFor();
        }
        // As on a page that is neither of this machine nor over https.
        await page.evaluate(() => Object.defineProperty(navigator, 'mediaDevices', { value: undefined }));
        await page.locator(listenButton).click();
        await page.locator('.pl-told p', { hasText: 'over https' }).waitFor();
        expect(faults).toEqual([]);
      } finally {
        await browser.close();
      }
    }
  }, 90_000);
});

describe('a long recording', () => {
  it('does not hold the page while it is listened to', async () => {
    const browser = await launchBrowser();
    try {
      const { page, faults } = await openWorkbench(browser, site, SIZES.laptop, 'played');
      const samples = tone(F4_HZ, { sampleRate: RATE, seconds: 30 });
      const buffer = Buffer.from(wavFile(inTurn([samples, samples], RATE, 0.5), RATE));
      await page.evaluate(() => {
        const held = { begun: performance.now(), longest: 0 };
        Object.assign(globalThis, { held });
        let before = performance.now();
        setInterval(() => {
          const now = performance.now();
          held.longest = Math.max(held.longest, now - before);
          before = now;
        }, 10);
      });
      await page
        .locator('.pl-file input')
        .first()
        .setInputFiles({ name: 'f4.wav', mimeType: 'audio/wav', buffer });
      await page.locator('.pl-standing', { hasText: '2 of 2 notes of “f4.wav” were logged' }).waitFor();
      const share = await page.evaluate(() => {
        const { begun, longest } = (globalThis as unknown as { held: { begun: number; longest: number } })
          .held;
        return longest / (performance.now() - begun);
      });
      // In one go it would be held for nearly all of it; what the machine does besides makes it more than a turn.
      expect(share).toBeLessThan(0.5);
      expect(faults).toEqual([]);
    } finally {
      await browser.close();
    }
  }, 90_000);
});
