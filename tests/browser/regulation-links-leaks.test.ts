import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import {
  studyHeightOrLeak,
  studyLeak,
  followOpenings,
  makeAirColumn,
  ringGap,
  seatLeak,
  withOpening,
} from '../../src/acoustics/index.ts';
import { reportHeightOrLeak } from '../../src/documents/height-or-leak-report.ts';
import { costWords, heightOrLeakSentence } from '../../src/documents/height-or-leak-words.ts';
import { plusMinusOf } from '../../src/documents/plus-minus.ts';
import { loadHorn } from '../../src/documents/to-acoustics.ts';
import { noteLabel } from '../../src/ui/parts/note-names.ts';
import { fingeringOf } from '../acoustics/demo-horns.ts';
import { ALTO } from '../ui/demo.ts';
import { openWorkbench, serveBuiltSite, SIZES, waitForAnswer, type BuiltSite } from './built-site.ts';
import { launchBrowser } from './find-browser.ts';
import { faultsByAxe } from './axe.ts';

/** Read off the screen: a tenth of a millimetre, a decibel or a cent. */
const TENTH = 0.0501;
/** Pages stand still: px a line of the page may move by rounding. */
const STILL_PX = 1;

let browser: Browser;
let site: BuiltSite;

beforeAll(async () => {
  [browser, site] = await Promise.all([launchBrowser(), serveBuiltSite()]);
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
});

/** Opens a view; whatever goes wrong on the page fails the test that opened it. */
async function open(
  view: 'links' | 'leaks' | 'key',
  size: { width: number; height: number } = SIZES.laptop,
): Promise<Page> {
  const { page, faults } = await openWorkbench(browser, site, size, view);
  onTestFinished(async () => {
    await page.close();
    expect(faults).toEqual([]);
  });
  return page;
}

const alto = loadHorn(ALTO);
if (!alto.ok) throw new Error(alto.issues[0].message);
const { horn, setup } = alto.value;
const air = makeAirColumn({ mouthpieceC: ALTO.setup.airC ?? 26.85 });

const text = async (page: Page, selector: string): Promise<string> =>
  (await page.locator(selector).innerText()).replaceAll('\u00a0', ' ').replaceAll('\n', ' ').trim();
/** What is written in a drawing. */
const drawn = async (page: Page, selector: string): Promise<string> =>
  ((await page.locator(selector).textContent()) ?? '').replaceAll('\u00a0', ' ').trim();
/** Edges are rounded to whole pixels. */
const ONE_PIXEL = 1.01;

const headline = (page: Page): Promise<string> => text(page, '.ks-answer h1');
const slide = (page: Page, driver: string, mm: string): Promise<void> =>
  page.locator(`[data-driver="${driver}"] input[type="range"]`).fill(mm);
const cell = (page: Page, table: string, row: string, column: number): Promise<string> =>
  page
    .locator(`${table} tr`, { has: page.locator(`th:text-is("${row}")`) })
    .locator('td')
    .nth(column)
    .innerText();
async function typeInto(page: Page, field: string, typed: string): Promise<void> {
  const input = page.locator(`[data-field="${field}"] input`);
  await input.fill(typed);
  await input.press('Enter');
  await input.press('Tab');
}

describe('links, built', () => {
  it('lets bis, G♯ and F♯ auxiliary follow the lower stack, as the core has it, and tells the notes', async () => {
    const page = await open('links');
    expect(await headline(page)).toMatch(/^No link holds a pad down/);
    for (const driver of ['d', 'e', 'f']) await slide(page, driver, '6');
    const after = ['d', 'e', 'f'].reduce(
      (now, id) => withOpening(now, id, { at: 'front', height: 0.006 }),
      setup,
    );
    const { pads, notes } = followOpenings(horn, setup, after, air);
    await expect
      .poll(() => headline(page))
      .toMatch(/^As proposed, the [DE] key’s arm holds F♯ auxiliary down/);
    for (const [id, name] of [
      ['f-sharp-auxiliary', 'F♯ auxiliary'],
      ['g-sharp', 'G♯'],
      ['bis', 'bis'],
    ]) {
      const stands = Number(/^([\d.]+)/.exec(await cell(page, '.ln-pads', name, 2))![1]);
      expect(Math.abs(stands - pads.find((p) => p.pad === id)!.after.front * 1000)).toBeLessThan(TENTH);
    }
    await expect.poll(() => text(page, '#ln-notes-title')).toMatch(/^Notes that suffer: \d+ of 44$/);
    const rows = await page.locator('.ln-note-list li').allInnerTexts();
    for (const row of rows) {
      const change = notes.find(
        ({ fingering }) =>
          row.startsWith(`${noteLabel(fingering.id)}\n`) || row.startsWith(`${noteLabel(fingering.id)} −`),
      )!;
      const cents = Number(/([−+]?[\d.]+) cents/.exec(row)![1].replace('−', '-'));
      expect(Math.abs(cents - change.change!.cents)).toBeLessThan(TENTH);
    }
    expect(rows.length).toBeGreaterThan(10);
  });

  it('counts a movement of a slider as one step, and takes it back', async () => {
    const page = await open('links');
    // One movement, however slow the machine: a hand rests longer than these lie apart.
    await page.locator('[data-driver="e"] input[type="range"]').evaluate((slider: HTMLInputElement) => {
      for (const mm of ['7.5', '7', '6.5', '6']) {
        slider.value = mm;
        slider.dispatchEvent(new Event('input', { bubbles: true }));
      }
    });
    await expect.poll(() => headline(page)).toMatch(/^As proposed/);
    await page.locator('button[aria-label="Undo"]').click();
    await expect.poll(() => headline(page)).toMatch(/^No link holds/);
    expect(await page.locator('button[aria-label="Undo"]').isDisabled()).toBe(true);
    await page.locator('button[aria-label="Redo"]').click();
    await expect.poll(() => headline(page)).toMatch(/^As proposed/);
    await page.locator('.ln-try .ks-quiet').click();
    await expect.poll(() => headline(page)).toMatch(/^No link holds/);
  });

  it('closes the driven key under the driver, by keyboard and by hand, down to what the screw leaves', async () => {
    const page = await open('links');
    await page.locator('select[data-act="link"]').selectOption('e > f-sharp-auxiliary');
    await typeInto(page, 'drivenGap', '2 papers');
    await expect
      .poll(() => headline(page))
      .toBe('Press E home and F♯ auxiliary is left open by 2 papers (0.050 mm).');
    const driven = (): Promise<string> => drawn(page, 'vw-stack-drawing text.value.driven');
    const press = page.locator('[data-act="press"]');
    await press.focus();
    await page.keyboard.press('End');
    await expect.poll(driven).toBe('2 papers (0.050 mm)');
    expect(await text(page, '.ln-moving li:nth-child(2)')).toBe('F♯ auxiliary 2 papers (0.050 mm)');
    await page.keyboard.press('Home');
    await expect.poll(driven).toBe('7.2 mm');
    const knob = (await page.locator('vw-stack-drawing .hold').boundingBox())!;
    const [x, y] = [knob.x + knob.width / 2, knob.y + knob.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x, y + 25, { steps: 4 });
    await page.mouse.up();
    const after = Number((await driven()).replace(' mm', ''));
    expect(after).toBeLessThan(6);
    expect(after).toBeGreaterThan(1);
  });

  it('keeps what is typed, refused or not, while other views are looked at', async () => {
    const page = await open('links');
    await typeInto(page, 'ratio', 'about nine');
    await expect
      .poll(() => text(page, '[data-field="ratio"] #told'))
      .toMatch(/^Invalid travel ratio: “about nine”; expected a number .* Still in use: 0\.9\d/);
    await typeInto(page, 'drivenGap', '-1 paper');
    await expect.poll(() => headline(page)).toMatch(/^No link holds/);
    await page.locator('.rg-tabs a', { hasText: 'Leaks' }).click();
    await page.waitForSelector('vw-leak-map table');
    await page.locator('.rg-tabs a', { hasText: 'Links' }).click();
    await page.waitForSelector('vw-stack-drawing svg');
    expect(await page.locator('[data-field="ratio"] input').inputValue()).toBe('about nine');
    expect(await page.locator('[data-field="drivenGap"] input').inputValue()).toBe('-1 paper');
    expect(await text(page, '[data-field="drivenGap"] #told')).toContain('is kept off 1 paper (0.025 mm)');
    await page.locator('[data-field="ratio"] input').press('Escape');
    await expect.poll(() => page.locator('[data-field="ratio"] input').inputValue()).toMatch(/^0\.9/);
  });

  it('makes a ratio of two readings', async () => {
    const page = await open('links');
    await page.locator('select[data-act="link"]').selectOption('low-b > low-c-sharp');
    expect(await text(page, '[data-field="ratio"] #told')).toContain('not known');
    await page.locator('.ln-more summary').first().click();
    for (const [field, typed] of [
      ['firstDriver', '8 mm'],
      ['firstDriven', '7,2'],
      ['secondDriver', '2'],
      ['secondDriven', '1.8'],
    ] as const) {
      await typeInto(page, field, typed);
    }
    await expect.poll(() => text(page, '.ln-offer >> nth=0')).toMatch(/^Ratio 0\.90 ± 0\.06/);
    await page.locator('.ln-offer button').first().click();
    await expect.poll(() => page.locator('[data-field="ratio"] input').inputValue()).toBe('0.90');
    const row = page.locator('.ln-links tr', { hasText: 'low B → low C♯' });
    expect(await row.locator('td').first().innerText()).toBe('0.90');
  });

  it('tells what an opening asked of bis needs, and proposes it', async () => {
    const page = await open('links');
    await typeInto(page, 'asked', '5.6');
    await expect
      .poll(() => text(page, '.ln-asked .rg-said'))
      .toMatch(/^bis at 5\.6 mm .* needs \d stops raised/);
    await page.locator('.ln-asked > .ks-quiet').click();
    await expect.poll(() => text(page, '.ln-asked .rg-said')).toContain('is had as it stands');
    expect(Number(/([\d.]+) mm/.exec(await cell(page, '.ln-pads', 'bis', 2))![1])).toBeGreaterThanOrEqual(
      5.6,
    );
  });

  it('stands still while a slider moves', async () => {
    const page = await open('links');
    const top = async (): Promise<number> => (await page.locator('.ln-try').boundingBox())!.y;
    const before = await top();
    for (const mm of ['6', '5', '8.5']) {
      await slide(page, 'f', mm);
      await page.waitForTimeout(400);
      expect(Math.abs((await top()) - before)).toBeLessThanOrEqual(STILL_PX);
    }
  });
});

const leakInHand = (page: Page): Promise<string> => text(page, '.lk-played h2');
const waitForBeside = (page: Page): Promise<unknown> =>
  page.waitForSelector('.lk-beside table', { timeout: 60_000 });

describe('height beside leak, built', () => {
  it('starts from the note under the key studied and tells what to look for first, as the core compares it', async () => {
    const page = await open('key');
    await page.locator('vw-key-strip [data-key="d"]').click();
    await page.evaluate(() => (location.hash = 'leaks'));
    await waitForBeside(page);
    expect(await page.locator('select[data-act="note"]').inputValue()).toBe('E4');
    expect(await page.locator('select[data-act="asked-key"]').inputValue()).toBe('d');
    const study = studyHeightOrLeak(horn, setup, fingeringOf('E4'), air, {
      plusMinus: plusMinusOf(alto.value),
    });
    const report = reportHeightOrLeak(horn, fingeringOf('E4'), study);
    expect(await headline(page)).toBe(heightOrLeakSentence(report));
    const [worst] = report.leaks;
    const row = page.locator('.lk-beside tr', { has: page.locator(`[data-leak="${worst.pad}"]`) });
    const cells = (await row.locator('td').allInnerTexts()).map((cell) => cell.replaceAll('\u00a0', ' '));
    expect(cells.slice(0, 2)).toEqual([costWords(worst.at[1]), costWords(worst.at[0])]);
  });

  it('asks by note or by key, takes a pad in hand, and is kept while other views are looked at', async () => {
    const page = await open('leaks');
    await waitForBeside(page);
    expect(await headline(page)).toMatch(/^For F4, /);
    await page.locator('select[data-act="asked-key"]').selectOption('g');
    await expect.poll(() => headline(page), { timeout: 60_000 }).toMatch(/^For A4, /);
    await page.locator('select[data-act="note"]').selectOption('Bb3');
    await expect
      .poll(() => headline(page), { timeout: 60_000 })
      .toMatch(/^For B♭3, .* no key’s height moves it\.$/);
    await page.locator('[data-leak="g"]').click();
    await expect.poll(() => leakInHand(page)).toContain('under G costs');
    await page.locator('.rg-tabs a', { hasText: 'Links' }).click();
    await page.waitForSelector('vw-stack-drawing svg');
    await page.locator('.rg-tabs a', { hasText: 'Leaks' }).click();
    await expect.poll(() => headline(page)).toMatch(/^For B♭3, /);
  });

  it('leads from a key to its study and comes back to the same note', async () => {
    const page = await open('leaks');
    await waitForBeside(page);
    await page.locator('[data-height="d"]').click();
    await waitForAnswer(page);
    expect(await page.evaluate(() => document.querySelector('vw-workbench')!.bench!.store.get().view)).toBe(
      'key',
    );
    expect(await text(page, '.ks-key')).toContain('D');
    await page.evaluate(() => (location.hash = 'leaks'));
    await page.waitForSelector('.lk-beside table');
    expect(await headline(page)).toMatch(/^For F4, /);
  });

  it('opens the reason of a figure, with what its ± is made of', async () => {
    const page = await open('leaks');
    await waitForBeside(page);
    await page.locator('.ks-answer h1 vw-reason').first().click();
    const panel = page.locator('.ks-answer h1 vw-reason [role="dialog"]').first();
    await expect.poll(() => panel.innerText()).toContain('What a leak costs');
    expect(await panel.innerText()).toContain('The gap is meant, not read');
  });

  it('says what its lists are sorted by', async () => {
    const page = await open('leaks');
    await waitForBeside(page);
    const sorted = await page.locator('[aria-sort="descending"]').allInnerTexts();
    expect(sorted).toHaveLength(3);
    for (const head of sorted) expect(head).toMatch(/▼$/);
  });
});

describe('leaks, built', () => {
  it('tells what two papers under F♯ auxiliary cost, as the core plays it', async () => {
    const page = await open('leaks');
    const { notes } = studyLeak(horn, setup, seatLeak('f-sharp-auxiliary', ringGap(0.05e-3)), air);
    const worst = notes.reduce((a, b) =>
      (b.played.found ? b.played.loss.lostDb : Infinity) > (a.played.found ? a.played.loss.lostDb : Infinity)
        ? b
        : a,
    );
    const lostDb = worst.played.found ? worst.played.loss.lostDb : NaN;
    expect(await leakInHand(page)).toBe(
      `2 papers (0.050 mm) all round under F♯ auxiliary costs ${noteLabel(worst.fingering.id)} ${lostDb.toFixed(1)} dB, more than any other note.`,
    );
    await page.locator('.lk-page .ks-table summary').click();
    const d4 = page.locator('.lk-page .ks-table tbody tr', { has: page.locator('th:text-is("D4")') });
    const played = notes.find((n) => n.fingering.id === 'D4')!.played;
    const [db, cents] = await d4.locator('td').allInnerTexts();
    if (!played.found) throw new Error('D4 sounds');
    expect(Math.abs(Number(db.replace('−', '-')) + played.loss.lostDb)).toBeLessThan(TENTH);
    expect(Math.abs(Number(cents.replace('−', '-')) - played.loss.cents)).toBeLessThan(TENTH);
    expect(await text(page, '.lk-limit-said')).toMatch(
      /^Before F4 loses 3 dB, .* by 3\.\d papers \(0\.0\d\d mm\)\.$/,
    );
  });

  it('takes another pad, cause, gap, note and limit', async () => {
    const page = await open('leaks');
    await page.locator('select[data-act="source"]').selectOption('e');
    await typeInto(page, 'gap', '4');
    await page.locator('select[data-act="note"]').selectOption('F#4');
    await expect
      .poll(() => leakInHand(page))
      .toMatch(/^4 papers \(0\.100 mm\) at F♯ auxiliary’s front because the link from E/);
    await expect
      .poll(() => text(page, '.lk-limit-said'))
      .toMatch(/^Before F♯4 loses 3 dB, F♯ auxiliary may hang by/);
    await page.locator('vw-choice[data-act="shuts"] label', { hasText: 'early' }).click();
    await expect.poll(() => text(page, '.lk-limit-said')).toMatch(/^F♯4 loses only \d\.\d dB at 0\.50 mm\.$/);
    await page.locator('select[data-act="pad"]').selectOption('e');
    await page.locator('vw-choice[data-act="shape"] label', { hasText: 'front' }).click();
    await page.locator('select[data-act="arc"]').selectOption('30');
    await expect.poll(() => leakInHand(page)).toContain('over 30° at the front under E');
    await typeInto(page, 'gap', 'a hair');
    await expect
      .poll(() => text(page, '[data-field="gap"] #told'))
      .toContain('Still in use: 4 papers (0.100 mm).');
    await page.locator('vw-choice[data-act="loss"] label', { hasText: '1 dB' }).click();
    await expect.poll(() => text(page, '.lk-limit-said')).toContain('1 dB');
  });

  it('maps every leak on every note; the keyboard walks and a cell is taken in hand', async () => {
    const page = await open('leaks');
    const rows = page.locator('vw-leak-map tbody tr');
    expect(await rows.count()).toBe(
      horn.holes.filter((h) => h.hinge !== null).length + horn.keywork.links.length,
    );
    expect(await page.locator('vw-leak-map [tabindex="0"]').count()).toBe(1);
    const first = page.locator('vw-leak-map td[data-row="0"][data-column="0"]');
    await first.focus();
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Enter');
    const place = (await rows.first().locator('th').innerText()).replace(/ [\d.]+$/, '');
    await expect.poll(() => leakInHand(page)).toContain(`under ${place}`);
    expect(await page.locator('select[data-act="note"]').inputValue()).toBe('C4');
    const before = await first.innerText();
    await page.locator('vw-choice[data-act="map-gap"] label', { hasText: '4 papers' }).click();
    await expect.poll(async () => Number(await first.innerText())).toBeGreaterThan(2 * Number(before));
  });

  it('prints the answer, the picture and the map', async () => {
    const page = await open('leaks');
    await waitForBeside(page);
    await page.emulateMedia({ media: 'print' });
    for (const shown of ['.ks-answer h1', '.lk-beside', '.lk-columns', 'vw-leak-map table']) {
      expect(await page.locator(shown).isVisible()).toBe(true);
    }
    for (const hidden of ['.rg-tabs', '.lk-fault', '.wb-views']) {
      expect(await page.locator(hidden).isVisible()).toBe(false);
    }
  });
});

it.each([
  { view: 'leaks', table: '.lk-beside > .rg-panel > .rg-scroll' },
  { view: 'links', table: '.ln-pads .rg-scroll, .ln-links .rg-scroll' },
] as const)(
  'on a phone the tables of $view move within themselves, the name staying, and say so',
  async ({ view, table: tables }) => {
    const page = await open(view, SIZES.phone);
    if (view === 'leaks') await waitForBeside(page);
    const hints = await page.locator('.rg-swipe').all();
    expect(hints).toHaveLength(2);
    for (const hint of hints) expect(await hint.isVisible()).toBe(true);
    for (const table of await page.locator(tables).all()) {
      const moved = await table.evaluate((room) => {
        room.scrollLeft = room.scrollWidth;
        const edges = (el: Element) => el.getBoundingClientRect();
        const row = room.querySelector('tbody tr')!;
        return {
          by: room.scrollLeft,
          nameFromLeft: edges(row.firstElementChild!).left - edges(room).left,
          lastBeyond: edges(row.lastElementChild!).right - edges(room).right,
        };
      });
      expect(moved.by).toBeGreaterThan(0);
      expect(Math.abs(moved.nameFromLeft)).toBeLessThan(ONE_PIXEL);
      expect(moved.lastBeyond).toBeLessThan(ONE_PIXEL);
    }
  },
);

describe.each(Object.entries(SIZES))('links and leaks on a %s', (name, size) => {
  it.each(['links', 'leaks'] as const)(
    '%s meets the accessibility rules, never scrolls sideways, and has no touch lower than 44 px',
    async (view) => {
      const page = await open(view, size);
      if (view === 'links') {
        await slide(page, 'f', '6');
        await expect.poll(() => headline(page)).toMatch(/^As proposed/);
        for (const summary of await page.locator('.ln-more summary').all()) await summary.click();
        await typeInto(page, 'asked', '5.6');
        await page.waitForSelector('.ln-asked table');
      } else {
        await waitForBeside(page);
        await page.locator('.lk-lesser summary').click();
      }
      const violations = await faultsByAxe(page);
      expect(violations).toEqual([]);
      const { wide, low } = await page.evaluate(() => {
        const all = (root: ParentNode): Element[] =>
          [...root.querySelectorAll('*')].flatMap((el) => [el, ...(el.shadowRoot ? all(el.shadowRoot) : [])]);
        return {
          wide: document.documentElement.scrollWidth - document.documentElement.clientWidth,
          low: all(document)
            .filter((el) =>
              el.matches('button:not(.figure), summary, select, input:not([type="radio"]), fieldset, nav a'),
            )
            .map((el) => ({
              what: `${el.tagName} ${el.className}`,
              height: el.getBoundingClientRect().height,
            }))
            .filter(({ height }) => height > 0 && height < 44),
        };
      });
      expect(wide).toBe(0);
      expect(low).toEqual([]);
      const picture = view === 'links' ? 'vw-stack-drawing' : '.lk-beside';
      const box = (await page.locator(picture).boundingBox())!;
      if (name !== 'phone') expect(box.y).toBeLessThan(size.height * 0.75);
    },
  );
});
