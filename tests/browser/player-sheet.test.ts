import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import type { BenchContents } from '../../src/documents/bench-contents.ts';
import { makeSheetFile } from '../../src/documents/player-sheet-file.ts';
import { makePlayerSheet } from '../../src/documents/player-sheet.ts';
import {
  everyKeySet,
  ofTheExample,
  playerSheetFacts,
  raisedD,
  setLikeAnother,
  wishedForAll,
} from '../ui/demo-player-sheet.ts';
import { withSet } from '../../src/ui/state/key-lengths.ts';
import { onTheBench } from '../ui/demo.ts';
import { openWorkbench, serveBuiltSite, SIZES, waitForView, type BuiltSite } from './built-site.ts';
import { faultsByAxe } from './axe.ts';
import { launchBrowser } from './find-browser.ts';
import { printed, spaceless } from './printed-pdf.ts';

let browser: Browser;
let site: BuiltSite;

beforeAll(async () => {
  [browser, site] = await Promise.all([launchBrowser(), serveBuiltSite()]);
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
});

/** Opens the player’s sheet of some visit of the demo alto; whatever goes wrong on the page fails the test. */
async function open(
  contents: BenchContents | null = raisedD(),
  size: { width: number; height: number } = SIZES.laptop,
): Promise<Page> {
  const { page, faults } = await openWorkbench(browser, site, size, 'player-sheet');
  onTestFinished(async () => {
    await page.close();
    expect(faults).toEqual([]);
  });
  if (contents !== null) await bring(page, contents);
  return page;
}

/** Puts a visit on the bench of the horn in hand. */
async function bring(page: Page, contents: BenchContents): Promise<void> {
  await page.evaluate((brought) => {
    const { store } = document.querySelector('vw-workbench')!.bench!;
    store.update((state) => {
      const horn = state.horns[state.hornId];
      const { horn: own, visit, asFound, proposed, asSet } = horn.contents;
      const next = {
        horn: { ...own, document: brought.horn.document },
        visit: {
          ...visit,
          document: {
            ...brought.visit.document,
            asFound: visit.document.asFound,
            proposed: visit.document.proposed,
            asSet: visit.document.asSet,
          },
        },
        asFound: { ...asFound, document: brought.asFound.document },
        proposed: { ...proposed, document: brought.proposed.document },
        asSet: { ...asSet, document: brought.asSet.document },
      };
      const after = { ...horn, contents: next, past: [...horn.past, horn.contents] };
      return { ...state, horns: { ...state.horns, [state.hornId]: after } };
    });
  }, contents);
  await settled(page);
}

/** Waits until the numbers on the sheet are those of what is on the bench. */
async function settled(page: Page): Promise<void> {
  await page.waitForSelector('.ps-desk[aria-busy="false"] .ps-page[data-fit]');
}

const sentence = (page: Page, id: string) => page.locator(`[data-sentence="${id}"]`);
const choosePaper = (page: Page, paper: string) =>
  page.locator(`vw-choice[data-act="paper"] input[value="${paper}"]`).check();
const wordsOf = async (page: Page, id: string): Promise<string> =>
  (await sentence(page, id).innerText()).replace(' ✎', '').replaceAll('\u00a0', ' ').trim();

const PAPER_PT = { A4: [595, 842], Letter: [612, 792] } as const;

/** How near to the edge of the paper words may come, points. */
const EDGE_PT = 12;
/** Type on the player’s page is no smaller, but for rounding of the printer. */
const LEAST_PT = 11 - 0.05;
/** Paper sizes in whole points. */
const PAPER_ROUNDING_PT = 1;

describe('the player’s sheet on paper', () => {
  const visits = {
    'one key raised': raisedD(),
    'every key set, and long names': everyKeySet(),
    'all keys wished lower, nothing set': wishedForAll(onTheBench('alto')),
    'all keys wished lower, every key set': wishedForAll(everyKeySet()),
    'every key set like another horn': setLikeAnother(everyKeySet(), 'front'),
    'all keys wished lower, every key set like another horn': setLikeAnother(
      wishedForAll(everyKeySet()),
      'vent share',
    ),
  };
  for (const [name, contents] of Object.entries(visits)) {
    for (const paper of ['A4', 'Letter'] as const) {
      it(`is two pages of ${paper} with all its words and numbers: ${name}`, async () => {
        const page = await open(contents);
        await choosePaper(page, paper);
        await expect.poll(() => page.locator('.ps-fits').innerText()).toBe('Both pages fit.');
        const { pages, isTagged, fields, hasScripts, outline } = await printed(page);
        expect(pages).toHaveLength(2);
        expect([isTagged, fields, hasScripts]).toEqual([true, 0, false]);
        expect(pages.map(({ links }) => links)).toEqual([0, 0]);
        for (const { widthPt, heightPt, runs, fonts } of pages) {
          expect(Math.abs(widthPt - PAPER_PT[paper][0])).toBeLessThan(PAPER_ROUNDING_PT);
          expect(Math.abs(heightPt - PAPER_PT[paper][1])).toBeLessThan(PAPER_ROUNDING_PT);
          expect(fonts.length).toBeGreaterThan(0);
          expect(fonts.filter(({ isEmbedded }) => !isEmbedded)).toEqual([]);
          const outside = runs.filter(
            ({ x, right, y }) =>
              x < EDGE_PT || right > widthPt - EDGE_PT || y < EDGE_PT || y > heightPt - EDGE_PT,
          );
          expect(outside).toEqual([]);
        }
        expect(pages[0].runs.filter(({ sizePt }) => sizePt < LEAST_PT)).toEqual([]);

        const facts = playerSheetFacts(contents);
        const sheet = makePlayerSheet(contents, facts, 'mm');
        expect(sheet.wishNotes === null).toBe(contents.visit.document.wishShiftMm === undefined);
        const told = [
          sheet.hornName,
          ...sheet.head.flatMap(({ label, text }) => [label, text]),
          ...(sheet.wish === null ? [] : [sheet.wish]),
          sheet.headline.text,
          ...sheet.decided.sentences.map(({ text }) => text),
          ...sheet.keys.rows.flatMap((row) => [row.name, row.found, row.set, row.vented]),
          sheet.keys.rest,
          ...sheet.notes.rows.flatMap((row) => [row.label, row.cents]),
          sheet.notes.rest,
          ...(sheet.wishNotes?.rows ?? []).flatMap((row) => [row.label, row.cents]),
          ...(sheet.wishNotes === null ? [] : [sheet.wishNotes.rest]),
          ...sheet.curve!.marks.map(({ label }) => label),
          ...sheet.parts.flatMap(({ heading, sentences }) => [heading, ...sentences.map(({ text }) => text)]),
          sheet.consent.text,
          'Signed',
          'page 1 of 2',
        ];
        expect(told.filter((text) => !pages[0].words.includes(spaceless(text)))).toEqual([]);
        const file = makeSheetFile(contents, facts);
        const filed = [
          file.head,
          file.legend,
          ...file.rows.flatMap(({ name: key, cells }) => [key, ...cells.flatMap((c) => [c.value, c.origin])]),
          ...file.entries.flatMap(({ label, text }) => [label, text]),
          'page 2 of 2',
        ];
        expect(filed.filter((text) => !pages[1].words.includes(spaceless(text)))).toEqual([]);

        const roles = new Set(pages.flatMap(({ structure }) => structure.map(({ role }) => role)));
        for (const role of ['H1', 'H2', 'P', 'Table', 'TH', 'TD'])
          expect([role, roles.has(role)]).toEqual([role, true]);
        const figure = pages[0].structure.find(({ role }) => role === 'Figure');
        expect(figure?.alt).toMatch(/^The .+ key at every opening/);
        expect(outline.length).toBeGreaterThan(0);
      });
    }
  }

  it('says of an untouched horn that nothing was set, and has no curve', async () => {
    const page = await open(onTheBench('alto'));
    const { pages } = await printed(page);
    expect(pages).toHaveLength(2);
    expect(pages[0].words).toContain(spaceless('The horn leaves as it was found: no key stands otherwise.'));
    expect(pages[0].words).toContain(spaceless('Seals were not recorded.'));
    expect(pages[0].structure.some(({ role }) => role === 'Figure')).toBe(false);
  });

  it('prints the words of a person, a sentence under the hand too, and nothing a hand needs', async () => {
    const page = await open();
    await sentence(page, 'limits').click();
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.type('Trust the differences.');
    await page.keyboard.press('Enter');
    await sentence(page, 'cautions').click();
    const { pages } = await printed(page);
    expect(pages).toHaveLength(2);
    expect(pages[0].words).toContain(spaceless('Trust the differences.'));
    expect(pages[0].words).toContain(spaceless('Torch, adhesive, bending and filing'));
    expect(pages[0].words).not.toContain(spaceless('As written by Ventwright'));
    expect(pages[0].words).not.toContain('✎');
  });

  it('says when a page is fuller than its paper, and loses no word of it', async () => {
    const page = await open(everyKeySet());
    const long = 'It was a long day at the bench, and all of it is told here. '.repeat(16).trim();
    await sentence(page, 'seals').click();
    await page.locator('[data-writing="seals"]').fill(long);
    await page.keyboard.press('Enter');
    await expect.poll(() => page.locator('.ps-fits').innerText()).toMatch(/^A page is fuller than one sheet/);
    const { pages } = await printed(page);
    expect(pages.map(({ words }) => words).join('')).toContain(spaceless(long));
  });
});

describe('the player’s sheet on screen', () => {
  it('is at the true proportion of its paper', async () => {
    const page = await open();
    const shape = async (): Promise<number> => {
      const { width, height } = (await page.locator('[data-page="player"]').boundingBox())!;
      return height / width;
    };
    expect(Math.abs((await shape()) - 297 / 210)).toBeLessThan(0.01);
    await choosePaper(page, 'Letter');
    await expect.poll(async () => Math.abs((await shape()) - 11 / 8.5)).toBeLessThan(0.01);
  });

  it('has sentences rewritten by the keyboard alone, undone, redone and given back', async () => {
    const page = await open();
    const before = await wordsOf(page, 'decided d');
    await sentence(page, 'decided d').focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).toBe('TEXTAREA');
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.type('I raised D so that low E speaks.');
    await page.keyboard.press('Enter');
    expect(await wordsOf(page, 'decided d')).toBe('I raised D so that low E speaks.');
    await expect
      .poll(() => page.evaluate(() => (document.activeElement as HTMLElement).dataset.sentence))
      .toBe('decided d');
    await page.locator('button[aria-label="Undo"]').click();
    await expect.poll(() => wordsOf(page, 'decided d')).toBe(before);
    await page.locator('button[aria-label="Redo"]').click();
    await expect.poll(() => wordsOf(page, 'decided d')).toBe('I raised D so that low E speaks.');
    await sentence(page, 'decided d').focus();
    await page.keyboard.press('Space');
    await page.locator('[data-act="sentence-restore"]').press('Enter');
    await expect.poll(() => wordsOf(page, 'decided d')).toBe(before);
  });

  it('keeps what was rewritten over a reload', async () => {
    const page = await open();
    await sentence(page, 'consent').click();
    await page.locator('[data-writing="consent"]').fill('Agreed at the bench.');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.locator('.wb-kept').innerText()).toBe('✓ saved');
    await page.reload();
    await waitForView(page, 'player-sheet');
    await settled(page);
    expect(await wordsOf(page, 'consent')).toBe('Agreed at the bench.');
    expect(await wordsOf(page, 'decided d')).toContain('from 8.0 to 8.9 mm');
  });

  it('leaves a sentence alone on Escape, and out where it is emptied', async () => {
    const page = await open();
    const before = await wordsOf(page, 'seals');
    await sentence(page, 'seals').click();
    await page.keyboard.type('nothing of it');
    await page.keyboard.press('Escape');
    expect(await wordsOf(page, 'seals')).toBe(before);
    await sentence(page, 'seals').click();
    await page.locator('[data-writing="seals"]').fill('');
    await page.keyboard.press('Enter');
    await expect.poll(() => wordsOf(page, 'seals')).toBe('left out');
    const { pages } = await printed(page);
    expect(pages[0].words).not.toContain(spaceless(before));
  });

  it('asks which key the wish is about, and reads how far open it is wanted', async () => {
    const page = await open(onTheBench('alto'));
    await page.locator('[data-act="wish-key"]').selectOption('e');
    await settled(page);
    const field = page.locator('vw-bench-field[data-field="wish-opening"] input');
    await field.fill('wide');
    await field.press('Enter');
    await expect
      .poll(() => page.locator('vw-bench-field[data-field="wish-opening"] .problem').innerText())
      .toMatch(/opening wished for/);
    await field.fill('0.25 in');
    await field.press('Enter');
    await expect
      .poll(() => wordsOf(page, 'wish'))
      .toMatch(/^With the E key at 6\.4 mm \(0\.250 in\) at the front, as wished/);
    const visit = await page.evaluate(() => {
      const { horns, hornId } = document.querySelector('vw-workbench')!.bench!.store.get();
      return horns[hornId].contents.visit.document;
    });
    expect([visit.wishKey, visit.wishOpeningMm?.toFixed(2)]).toEqual(['e', '6.35']);
    expect(await page.locator('.ps-curve').count()).toBe(1);
  });

  it('is reached from the bench sheet, where the wish can be named too', async () => {
    const page = await open();
    await page.goto(`${site.url}#sheet`);
    await page.locator('.sh-who summary').click();
    await page.locator('.sh-fields [data-act="wish-key"]').selectOption('f');
    await page.locator('a[href="#player-sheet"]').first().click();
    await settled(page);
    expect(await page.locator('[data-act="wish-key"]').inputValue()).toBe('f');
  });

  it('says on the screen and on paper that its figures are of before the last change', async () => {
    const page = await open();
    const over = page.locator('.ps-anew');
    expect(await over.innerText()).toBe('');
    const words = 'Working the page out anew: these figures are of before the last change.';
    // A question that is not answered yet, for as long as it takes to print.
    const ask = (by: number): Promise<void> =>
      page.evaluate((more) => {
        const { store } = document.querySelector('vw-workbench')!.bench!;
        store.update((state) => {
          const { facts } = state.playerSheet;
          const asked = { ...facts, asked: facts.asked + more };
          return { ...state, playerSheet: { ...state.playerSheet, facts: asked } };
        });
      }, by);
    await ask(1);
    await expect.poll(() => over.innerText()).toBe(words);
    expect(await page.locator('[data-act="print"]').isDisabled()).toBe(true);
    const { pages } = await printed(page);
    expect(pages).toHaveLength(2);
    for (const paper of pages) expect(paper.words).toContain(spaceless(words));
    await ask(-1);
    await expect.poll(() => over.innerText()).toBe('');
  });

  for (const unit of ['mm', 'thou'] as const) {
    it(`is no wider than a phone with the widest figures it has, ${unit}`, async () => {
      const keys = ['d', 'e', 'f-sharp-auxiliary', 'low-c'];
      const set = keys.reduce(
        (now, pad) => withSet(now, pad, { mm: 10.3, at: 'front' }),
        ofTheExample(onTheBench('alto')),
      );
      const page = await open(wishedForAll(set), SIZES.phone);
      await page.evaluate((chosen) => {
        const { store } = document.querySelector('vw-workbench')!.bench!;
        store.update((state) => ({ ...state, unit: chosen }));
      }, unit);
      const { width } = SIZES.phone;
      const outside = (): Promise<string[]> =>
        page.evaluate(
          (right) =>
            [...document.querySelectorAll('.ps-page *')]
              .filter((part) => part.closest('.ps-scroll, .ps-measure, .ps-hidden') === null)
              .filter((part) => part.getBoundingClientRect().right > right)
              .map((part) => `${part.tagName} ${part.textContent}`),
          width,
        );
      await expect
        .poll(() => page.locator('.ps-keys').innerText())
        .toContain(unit === 'mm' ? 'mm (' : 'in (');
      expect(await outside()).toEqual([]);
    });
  }

  for (const [name, size] of Object.entries(SIZES)) {
    for (const colorScheme of ['light', 'dark'] as const) {
      it(`is clean to an accessibility check and no wider than a ${name}, ${colorScheme}`, async () => {
        const page = await open(raisedD(), size);
        await page.emulateMedia({ colorScheme });
        const theme = () => page.evaluate(() => getComputedStyle(document.documentElement).colorScheme);
        await expect.poll(theme).toBe(colorScheme);
        expect(await faultsByAxe(page)).toEqual([]);
        await sentence(page, 'headline').click();
        expect(await faultsByAxe(page)).toEqual([]);
        const overflow = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
        expect(overflow).toBeLessThanOrEqual(0);
      });
    }
  }
});
