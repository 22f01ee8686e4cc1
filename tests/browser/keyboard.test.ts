import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { VIEW_NAMES } from '../../src/ui/state/view-names.ts';
import { openWorkbench, serveBuiltSite, SIZES, waitForSheet, type BuiltSite } from './built-site.ts';
import { launchBrowser } from './find-browser.ts';

const PATIENCE_MS = 120_000;
/** Beyond every control of the fullest view. */
const MOST_TABS = 600;

let site: BuiltSite;
let browser: Browser;

beforeAll(async () => {
  [site, browser] = [await serveBuiltSite(), await launchBrowser()];
});
afterAll(async () => {
  await browser?.close();
  await site?.close();
});

/** What the page keeps of a walk with the Tab key. */
interface Walk {
  /** Takes up what has the focus. @returns whether it is one that was not met before */
  step(): boolean;
  /** controls met that look the same with the focus as without */
  readonly unseen: string[];
  /** controls that can be touched and were never met */
  missed(): string[];
}

/** Runs in the page: says what is focused, how it looks, and what there is to be focused. */
function makeWalk(): Walk {
  const CONTROLS = 'a[href], button, input, select, textarea, summary, [tabindex]';
  const met = new Set<Element>();
  const unseen: string[] = [];
  let last: { element: Element; look: string } | null = null;

  const deepest = (): Element | null => {
    let element = document.activeElement;
    while (element?.shadowRoot?.activeElement) element = element.shadowRoot.activeElement;
    return element === document.body ? null : element;
  };
  const nameOf = (element: Element): string => {
    const label = element instanceof HTMLInputElement ? element.labels?.[0]?.textContent : null;
    const words = element.getAttribute('aria-label') ?? label ?? element.textContent ?? '';
    const host =
      element.getRootNode() instanceof ShadowRoot
        ? (element.getRootNode() as ShadowRoot).host.localName
        : 'page';
    return `${host} ${element.localName} “${words.trim().slice(0, 40)}”`;
  };
  /** An outline, a frame, a ground or a stroke, of the control or of what stands for it. */
  const lookOf = (element: Element): string => {
    const around = [
      element,
      element.parentElement,
      element.parentElement?.parentElement,
      ...element.children,
    ];
    return around
      .filter((one): one is Element => one instanceof Element)
      .map((one) => {
        const {
          outlineStyle,
          outlineWidth,
          outlineColor,
          boxShadow,
          borderColor,
          stroke,
          strokeWidth,
          backgroundColor,
        } = getComputedStyle(one);
        const outline = outlineStyle === 'none' ? 'none' : `${outlineStyle} ${outlineWidth} ${outlineColor}`;
        return [outline, boxShadow, borderColor, stroke, strokeWidth, backgroundColor].join();
      })
      .join(';');
  };
  const all = (root: Document | ShadowRoot): Element[] =>
    [...root.querySelectorAll('*')].flatMap((element) => [
      ...(element.matches(CONTROLS) ? [element] : []),
      ...(element.shadowRoot ? all(element.shadowRoot) : []),
    ]);
  const canBeTouched = (element: Element): boolean => {
    // What lies in a folded part of the page is not there until it is unfolded.
    const isThere =
      element.getClientRects().length > 0 && element.checkVisibility({ visibilityProperty: true });
    const isOn = !element.matches(':disabled, [tabindex="-1"], [type="hidden"]');
    return isThere && isOn && element.closest('[inert]') === null;
  };
  /** Of radio buttons in one group the Tab key meets one. */
  const isOfMetGroup = (element: Element): boolean => {
    const group = element.closest('[role="radiogroup"], fieldset');
    return (
      group !== null &&
      element.matches('[type="radio"], [role="radio"]') &&
      [...met].some((one) => group.contains(one))
    );
  };

  return {
    unseen,
    step: () => {
      const element = deepest();
      // A day has its own steps from day to month to year.
      if (element !== null && element === last?.element) return true;
      // With the focus gone on, the one before looks as it does without.
      if (last !== null && lookOf(last.element) === last.look) unseen.push(nameOf(last.element));
      last = element === null ? null : { element, look: lookOf(element) };
      if (element === null || met.has(element)) return false;
      met.add(element);
      return true;
    },
    missed: () =>
      all(document)
        .filter((element) => canBeTouched(element) && !met.has(element) && !isOfMetGroup(element))
        .map(nameOf),
  };
}

/** Goes through a whole page by Tab. */
async function walk(
  page: Page,
): Promise<{ readonly met: number; readonly unseen: string[]; readonly missed: string[] }> {
  await page.evaluate(`window.walk = (${makeWalk.toString()})()`);
  const step = (): Promise<boolean> => page.evaluate(() => (window as unknown as { walk: Walk }).walk.step());
  let met = 0;
  for (; met < MOST_TABS; met++) {
    await page.keyboard.press('Tab');
    if (!(await step())) break;
  }
  const told = await page.evaluate(() => {
    const { walk: done } = window as unknown as { walk: Walk };
    return { unseen: done.unseen, missed: done.missed() };
  });
  return { met, ...told };
}

const THEMES = ['light', 'dark'] as const;
const IN_BOTH = VIEW_NAMES.flatMap((view) => THEMES.map((theme) => ({ view, theme })));

describe.each(IN_BOTH)('by the keyboard alone, the view $view in $theme', ({ view, theme }) => {
  it(
    'has every control within reach, and shows where one is',
    async () => {
      const { page } = await openWorkbench(browser, site, SIZES.laptop, view);
      // The sheet's figures come one by one: what came behind the walk was not missed.
      if (view === 'sheet') await waitForSheet(page);
      await page.emulateMedia({ colorScheme: theme });
      await page.waitForTimeout(500);
      const { met, unseen, missed } = await walk(page);
      expect(met).toBeGreaterThan(8);
      expect(met).toBeLessThan(MOST_TABS);
      expect(unseen).toEqual([]);
      expect(missed).toEqual([]);
      await page.close();
    },
    PATIENCE_MS,
  );
});

describe('a table of many figures', () => {
  it(
    'is one stop of the tabulator, and the arrows go from figure to figure in it',
    async () => {
      const { page } = await openWorkbench(browser, site, SIZES.laptop, 'links');
      const table = page.locator('.ln-links vw-grid-table');
      const inTable = (): Promise<string> =>
        page.evaluate(() => {
          const { activeElement } = document;
          const cell = activeElement?.closest<HTMLTableCellElement>('.ln-links td, .ln-links th');
          if (!cell) return '';
          return `${(cell.parentElement as HTMLTableRowElement).rowIndex}, ${cell.cellIndex} ${activeElement!.localName}`;
        });
      const figures = await table.locator('vw-reason').count();
      expect(figures).toBeGreaterThan(10);
      await table.locator('button').first().focus();
      expect(await inTable()).toBe('1, 0 button');
      await page.keyboard.press('ArrowRight');
      expect(await inTable()).toMatch(/^1, \d vw-reason$/);
      await page.keyboard.press('Enter');
      await page.waitForFunction(() =>
        document.querySelector('.ln-links vw-reason')!.shadowRoot!.querySelector('[data-placed]'),
      );
      await page.keyboard.press('Escape');
      // The focus has left the reason once it is back on the figure.
      await page.waitForFunction(() =>
        document
          .querySelector('.ln-links vw-reason')!
          .shadowRoot!.querySelector('.figure:focus[aria-expanded="false"]'),
      );
      expect(await inTable()).toMatch(/^1, \d vw-reason$/);
      await page.keyboard.press('Home');
      await page.keyboard.press('ArrowDown');
      expect(await inTable()).toBe('2, 0 button');
      await page.keyboard.press('Tab');
      expect(await inTable()).toBe('');
      await page.keyboard.press('Shift+Tab');
      expect(await inTable()).toBe('2, 0 button');
      await page.close();
    },
    PATIENCE_MS,
  );
});

describe.each([
  { view: 'proposal', table: '.pp-keys vw-grid-table', row: '.pp-row' },
  { view: 'leaks', table: '.lk-beside vw-grid-table', row: 'tbody tr' },
] as const)('the table of $view', ({ view, table, row }) => {
  it(
    'is one stop of the tabulator, and the arrows go to every link, figure and button in it',
    async () => {
      const { page } = await openWorkbench(browser, site, SIZES.laptop, view);
      await page.waitForSelector(`${table} ${row}`);
      const reached = (): Promise<{ readonly count: number; readonly at: number }> =>
        page.evaluate((selector) => {
          const stops = [...document.querySelector(selector)!.querySelectorAll('a[href], button, vw-reason')];
          return { count: stops.length, at: stops.indexOf(document.activeElement!) };
        }, table);
      const at = async (): Promise<number> => (await reached()).at;
      const { count } = await reached();
      expect(count).toBeGreaterThan(3);
      await page.locator(table).first().locator('a[href]').first().focus();
      const met = new Set<number>();
      // Right to the end of each row, and on at the head of the next.
      for (let i = 0; i < 2 * count; i++) {
        const here = await at();
        met.add(here);
        await page.keyboard.press('ArrowRight');
        if ((await at()) !== here) continue;
        await page.keyboard.press('Home');
        await page.keyboard.press('ArrowDown');
      }
      expect([...met].sort((a, b) => a - b)).toEqual(Array.from({ length: count }, (_, i) => i));
      const last = await at();
      await page.keyboard.press('Tab');
      expect(await at()).toBe(-1);
      await page.keyboard.press('Shift+Tab');
      expect(await at()).toBe(last);
      await page.close();
    },
    PATIENCE_MS,
  );
});

describe('the walk by Tab', () => {
  it(
    'notices a control that hides its focus, and one that the key cannot reach',
    async () => {
      const { page } = await openWorkbench(browser, site, SIZES.laptop, 'notes');
      await page.addStyleTag({ content: '.wb-views a:focus-visible { outline: none !important }' });
      // A select that swallows the key: what comes after it is never met.
      await page.evaluate(() =>
        document.querySelector('.wb-horn')!.addEventListener('keydown', (e) => e.preventDefault()),
      );
      const { unseen, missed } = await walk(page);
      expect(unseen).toContain('page a “Scale”');
      expect(missed.some((name) => name.includes('Light or dark'))).toBe(true);
      await page.close();
    },
    PATIENCE_MS,
  );
});
