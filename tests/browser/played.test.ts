import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findFingering, noteFrequency } from '../../src/acoustics/index.ts';
import { inTurn, tone, wavFile } from '../ui/played-tones.ts';
import { openWorkbench, serveBuiltSite, SIZES, waitForView, type BuiltSite } from './built-site.ts';
import { launchBrowser } from './find-browser.ts';
import { faultsByAxe } from './axe.ts';

const RATE = 48_000;
const hzOf = (id: string, off: number): number =>
  noteFrequency(findFingering(id)!.note, -9) * 2 ** (off / 1200);

let site: BuiltSite;
let browser: Browser;
let folder: string;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'ventwright-played-'));
  site = await serveBuiltSite();
  browser = await launchBrowser();
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
  rmSync(folder, { recursive: true });
});

const logged = (page: Page, id: string): Promise<string> =>
  page
    .locator('tr', { has: page.locator(`input[data-note="${id}"]`) })
    .locator('.pl-cents')
    .innerText();

describe('a microphone', () => {
  it('hears notes and logs them within a cent', async () => {
    const played = [
      ['F4', 8],
      ['C5', -13],
      ['D5', 21],
    ] as const;
    const parts = played.map(([id, off], i) =>
      tone(hzOf(id, off), { sampleRate: RATE, seconds: 1.6, attack: 0.08, seed: i + 1 }),
    );
    const wav = join(folder, 'played.wav');
    writeFileSync(wav, wavFile(inTurn(parts, RATE, 0.6), RATE));
    const hearing = await launchBrowser([
      '--use-fake-device-for-media-stream',
      '--use-fake-ui-for-media-stream',
      `--use-file-for-fake-audio-capture=${wav}%noloop`,
    ]);
    try {
      const { page, faults } = await openWorkbench(hearing, site, SIZES.laptop, 'played');
      await page.locator('[data-act="listen"]').click();
      await page.locator('[data-listening]').waitFor();
      for (const [id, off] of played) {
        await expect.poll(() => logged(page, id), { timeout: 15_000 }).not.toBe('');
        const cents = Number((await logged(page, id)).trim().replace('−', '-').split(' ')[0]);
        expect(Math.abs(cents - off)).toBeLessThan(1);
      }
      await page.locator('[data-act="listen"]').click();
      expect(await page.locator('[data-act="listen"]').innerText()).toBe('Listen');
      expect(faults).toEqual([]);
    } finally {
      await hearing.close();
    }
  }, 90_000);

  it('that is refused is told in a sentence, and cents can still be typed', async () => {
    const { page, faults } = await openWorkbench(browser, site, SIZES.laptop, 'played');
    await page.locator('[data-act="listen"]').click();
    await page.locator('.pl-told p').waitFor();
    expect(await page.locator('.pl-told p').innerText()).toMatch(
      /microphone.*type cents|Cents can be typed/i,
    );
    await page.locator('input[data-note="G4"]').fill('-4');
    await page.keyboard.press('Enter');
    await expect.poll(() => logged(page, 'G4')).toContain('−4.0');
    expect(faults).toEqual([]);
    await page.close();
  }, 60_000);
});

describe('the list of notes', () => {
  it('is typed down by keyboard, set aside, removed, undone, and is there after a reload', async () => {
    const { page, faults } = await openWorkbench(browser, site, SIZES.laptop, 'played');
    await page.locator('input[data-note="F4"]').focus();
    for (const text of ['3', '−5', 'sharp']) {
      await page.keyboard.type(text);
      await page.keyboard.press('Enter');
    }
    await page.locator('.pl-problem').waitFor();
    expect(await page.locator('.pl-problem').innerText()).toContain('“sharp”');
    expect(await logged(page, 'F4')).toContain('+3.0');
    expect(await logged(page, 'F#4')).toContain('−5.0');
    expect(await page.locator('input[data-note="F4"]').inputValue()).toBe('');
    const row = page.locator('tr', { has: page.locator('input[data-note="F4"]') });
    await row.getByRole('button', { name: 'Takes of F4: 1' }).click();
    const take = page.getByRole('list', { name: 'Takes of F4' });
    await take.getByRole('button', { name: 'Set aside' }).click();
    await expect.poll(() => logged(page, 'F4')).toBe('');
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => logged(page, 'F4')).toContain('+3.0');
    await take.locator('select').selectOption('E4');
    await expect.poll(() => logged(page, 'E4')).toContain('+103.0');
    expect(await logged(page, 'F4')).toBe('');
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => logged(page, 'F4')).toContain('+3.0');
    await page.locator('.wb-kept', { hasText: '✓ saved' }).waitFor();
    await page.reload();
    await waitForView(page, 'played');
    await expect.poll(() => logged(page, 'F4')).toContain('+3.0');
    expect(faults).toEqual([]);
    await page.close();
  }, 60_000);

  it('takes in a table and a recording, and gives a table back', async () => {
    const { page, faults } = await openWorkbench(browser, site, SIZES.laptop, 'played');
    const files = page.locator('.pl-file input');
    const table = { name: 'log.csv', mimeType: 'text/csv', buffer: Buffer.from('E4;-2,5\nH4;1\n') };
    await files.nth(1).setInputFiles(table);
    await expect.poll(() => logged(page, 'E4')).toContain('−2.5');
    expect(await page.locator('.pl-told li').innerText()).toContain('row 2');
    const recording = tone(hzOf('B4', 5), { sampleRate: RATE, seconds: 1.2 });
    const buffer = Buffer.from(wavFile(inTurn([recording], RATE, 0.2), RATE));
    await files.nth(0).setInputFiles({ name: 'b.wav', mimeType: 'audio/wav', buffer });
    await expect.poll(() => logged(page, 'B4')).toMatch(/\+(4\.[5-9]|5\.[0-4])/);
    const saving = page.waitForEvent('download');
    await page.locator('[data-act="save-log"]').click();
    expect((await saving).suggestedFilename()).toMatch(/played .*\.csv$/);
    await files
      .nth(0)
      .setInputFiles({ name: 'no.wav', mimeType: 'audio/wav', buffer: Buffer.from('no sound') });
    await page.locator('.pl-told p', { hasText: 'could not be read as sound' }).waitFor();
    expect(faults).toEqual([]);
    await page.close();
  }, 60_000);
});

describe('a text in the middle of being typed', () => {
  it('stays whatever is logged meanwhile', async () => {
    const { page, faults } = await openWorkbench(browser, site, SIZES.laptop, 'played');
    const input = page.locator('input[data-note="C5"]');
    await input.focus();
    await page.keyboard.type('−1');
    const table = { name: 'log.csv', mimeType: 'text/csv', buffer: Buffer.from('C5,4\nD5,5\n') };
    await page.locator('.pl-file input').nth(1).setInputFiles(table);
    await expect.poll(() => logged(page, 'C5')).toContain('+4.0');
    expect(await input.inputValue()).toBe('−1');
    await input.focus();
    await page.keyboard.type('2');
    await page.keyboard.press('Enter');
    await expect.poll(() => logged(page, 'C5')).toContain('−4.0');
    expect(faults).toEqual([]);
    await page.close();
  }, 60_000);
});

describe.each(['light', 'dark'] as const)('in the %s', (colorScheme) => {
  it('has nothing that hinders a person, at every size', async () => {
    for (const size of [SIZES.laptop, SIZES.phone]) {
      const { page } = await openWorkbench(browser, site, size, 'played');
      await page.emulateMedia({ colorScheme });
      await page.locator('input[data-note="F4"]').fill('sharp');
      await page.keyboard.press('Enter');
      await page.locator('.pl-problem').waitFor();
      await page.locator('input[data-note="G4"]').fill('3');
      await page.keyboard.press('Enter');
      await page.getByRole('button', { name: 'Takes of G4: 1' }).click();
      await page.getByRole('list', { name: 'Takes of G4' }).waitFor();
      const violations = await faultsByAxe(page);
      expect(violations).toEqual([]);
      const overflow = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      expect(overflow).toBeLessThanOrEqual(0);
      await page.close();
    }
  }, 60_000);
});
