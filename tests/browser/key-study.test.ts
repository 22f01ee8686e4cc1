import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import { ventingAt, type VentingStudy } from '../../src/acoustics/index.ts';
import { formatBoth } from '../../src/documents/length-format.ts';
import { parseLength } from '../../src/documents/length.ts';
import { study, sureReport, TENOR } from '../ui/demo.ts';
import {
  openWorkbench,
  serveBuiltSite,
  SIZES,
  waitForAnswer,
  type BuiltSite,
  type WatchedPage,
} from './built-site.ts';
import { launchBrowser } from './find-browser.ts';
import { faultsByAxe } from './axe.ts';

/** Cents and per cent: the browser's exponentials and Node's differ in the last digit, and no more. */
const SAME = 1e-9;

let browser: Browser;
let site: BuiltSite;

beforeAll(async () => {
  [browser, site] = await Promise.all([launchBrowser(), serveBuiltSite()]);
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
});

/** Opens the workbench; whatever goes wrong on the page fails the test that opened it. */
async function open(size: { width: number; height: number } = SIZES.laptop): Promise<Page> {
  const { page, faults }: WatchedPage = await openWorkbench(browser, site, size);
  onTestFinished(async () => {
    await page.close();
    expect(faults).toEqual([]);
  });
  return page;
}

interface Plotted {
  readonly traces: { readonly name: string; readonly x: number[]; readonly y: (number | null)[] }[];
  readonly proposedX: number;
  readonly words: string[];
}

/** What the curve's own data hold. */
async function plotted(page: Page): Promise<Plotted> {
  return page.evaluate(() => {
    interface Drawn extends Element {
      data: { name: string; x: ArrayLike<number>; y: ArrayLike<number | null> }[];
      layout: { shapes: { x0: number }[]; annotations: { text: string }[] };
    }
    const host = document.querySelector('.vw-chart-host') as Drawn;
    return {
      traces: host.data.map(({ name, x, y }) => ({ name, x: Array.from(x), y: Array.from(y) })),
      proposedX: host.layout.shapes[0].x0,
      words: host.layout.annotations.map((a) => a.text),
    };
  });
}

/** The one trace of a name. */
function traceOf({ traces }: Pick<Plotted, 'traces'>, name: string): Plotted['traces'][number] {
  const found = traces.filter((trace) => trace.name === name);
  expect(found, name).toHaveLength(1);
  return found[0];
}

/** Waits for the curve to show the proposed opening at a place, and gives what it holds then. */
async function plottedAt(page: Page, x: number): Promise<Plotted> {
  await expect.poll(async () => (await plotted(page)).proposedX).toBeCloseTo(x, 6);
  await expect.poll(async () => traceOf(await plotted(page), 'proposed share').x[0]).toBeCloseTo(x, 6);
  return plotted(page);
}

function expectSame(got: readonly (number | null)[], wanted: readonly (number | null)[]): void {
  expect(got).toHaveLength(wanted.length);
  got.forEach((value, i) => expect(Math.abs(value! - wanted[i]!)).toBeLessThanOrEqual(SAME));
}

/** Holds the drawn curve against a study run here. */
function expectCurve({ traces }: Plotted, wanted: VentingStudy): void {
  const notes = wanted.context.governed.length;
  // The notes, the vent share, two marks of the proposed opening, two faint lines for a parallel pad.
  expect(traces).toHaveLength(notes + 5);
  for (let i = 0; i < notes; i++) {
    expectSame(
      traces[i].x,
      wanted.curve.map((p) => p.pose.front * 1000),
    );
    expectSame(
      traces[i].y,
      wanted.curve.map((p) => p.notes[i]!.cents),
    );
  }
  expectSame(
    traces[notes].y,
    wanted.curve.map((p) => 100 * p.ventShare),
  );
  expectSame(
    traceOf({ traces }, 'vent share, parallel pad').y,
    wanted.parallelCurve.map((p) => 100 * p.ventShare),
  );
}

const answerFrontMm = (of: VentingStudy): number =>
  of.diminishingReturn.kind === 'none in reach' ? NaN : of.diminishingReturn.at.pose.front * 1000;

const text = async (page: Page, selector: string): Promise<string> =>
  (await page.locator(selector).innerText()).replaceAll('\u00a0', ' ').trim();

const padTurn = (page: Page): Promise<string | null> =>
  page.locator('vw-pad-drawing [data-part="pad"]').getAttribute('transform');

const input = (page: Page, field: string) =>
  page.locator(`vw-bench-field[data-field="${field}"] input#typed`);
const told = (page: Page, field: string) => page.locator(`vw-bench-field[data-field="${field}"] #told`);

async function typeInto(page: Page, field: string, typed: string): Promise<void> {
  await input(page, field).fill(typed);
  await input(page, field).press('Enter');
}

const e = study('e');
/** The answer's ±, as the core puts it together, mm. */
const half = sureReport('e').budgets.answerMm!.plusMinus;

describe('the key study, built', () => {
  it('opens with the E key’s answer, and its curve holds the core’s own numbers', async () => {
    const page = await open();
    expectCurve(await plotted(page), e);
    const mm = answerFrontMm(e);
    expect(await text(page, '.ks-answer h1')).toBe(
      `Open the E key to ${mm.toFixed(1)} ± ${half.toFixed(1)} mm (${(mm / 25.4).toFixed(3)} in) at the front.`,
    );
    expect(await page.locator('vw-key-strip [aria-checked="true"]').getAttribute('data-key')).toBe('e');
    expect(await page.locator('vw-key-strip [role="radio"]').count()).toBe(23);
  });

  it('shows answer, curve, slider and drawing on a laptop without scrolling', async () => {
    const page = await open();
    for (const part of ['.ks-answer', '.ks-curve', 'vw-opening-slider', '.ks-side']) {
      const box = (await page.locator(part).boundingBox())!;
      expect(box.y).toBeGreaterThanOrEqual(0);
      expect(box.y + box.height).toBeLessThanOrEqual(SIZES.laptop.height);
    }
  });

  it('moves marker, pad and sentence with the slider’s keys, to the core’s numbers', async () => {
    const page = await open();
    const slider = page.locator('vw-opening-slider input[type="range"]');
    const before = { turn: await padTurn(page), head: await text(page, '.ks-effect h2') };
    const boxes = async () =>
      Promise.all(
        ['.ks-try', '.ks-side', '.ks-curve', '.ks-inputs'].map((s) => page.locator(s).boundingBox()),
      );
    const layout = await boxes();
    await slider.focus();
    await page.keyboard.press('Home');
    for (let i = 0; i < 22; i++) await page.keyboard.press('ArrowRight');
    const got = await plottedAt(page, 2.5);
    const wanted = ventingAt(e.context, 2.5e-3);
    expectSame(
      traceOf(got, 'proposed').y,
      wanted.notes.map((n) => n!.cents),
    );
    expectSame(traceOf(got, 'proposed share').y, [100 * wanted.ventShare]);
    expect(await padTurn(page)).not.toBe(before.turn);
    const degrees = Number(/rotate\((\S+) /.exec((await padTurn(page))!)![1]);
    expect(degrees).toBeCloseTo((-wanted.pose.angle * 180) / Math.PI, 9);
    const head = await text(page, '.ks-effect h2');
    expect(head).not.toBe(before.head);
    expect(head).toBe(
      `Cents from found, 2.5 mm front = ${(1000 * wanted.end.equivalentParallel).toFixed(1)} mm parallel`,
    );
    // Its ± comes once the hand rests.
    await expect
      .poll(() => text(page, '.ks-effect dl > div:first-child dd'))
      .toMatch(new RegExp(`^−${(-wanted.notes[0]!.cents).toFixed(1)} ± \\d`));
    expect(await slider.getAttribute('aria-valuetext')).toBe('2.5 mm (0.098 in) at the front');
    expect(await boxes()).toEqual(layout);
  });

  it('follows the mouse on the slider and on the pad itself', async () => {
    const page = await open();
    const start = (await plotted(page)).proposedX;
    const track = (await page.locator('vw-opening-slider input[type="range"]').boundingBox())!;
    await page.mouse.click(track.x + 0.25 * track.width, track.y + track.height / 2);
    await expect.poll(async () => (await plotted(page)).proposedX).toBeLessThan(start - 3);
    const low = (await plotted(page)).proposedX;

    const grip = (await page.locator('vw-pad-drawing .hold').boundingBox())!;
    const x = grip.x + grip.width / 2;
    const y = grip.y + grip.height / 2;
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x, y - 20, { steps: 4 });
    await page.mouse.up();
    await expect.poll(async () => (await plotted(page)).proposedX).toBeGreaterThan(low + 1);
    const lifted = (await plotted(page)).proposedX;
    expect(await input(page, 'proposed').inputValue()).toBe(`${lifted.toFixed(1)} mm`);
  });

  it('keeps moving the pad under a drag while a study runs', async () => {
    const page = await open();
    await page.locator('vw-key-strip [data-key="g"]').click();
    await expect.poll(() => text(page, '.ks-answer h1')).toContain('the G key');
    // A hand that moves the slider once in every frame the page gives it.
    await page.evaluate(() => {
      const turns = new Set<string>();
      Object.assign(window, { turns });
      const within = (host: string, part: string): Element =>
        document.querySelector(host)!.shadowRoot!.querySelector(part)!;
      let mm = 2;
      const drag = (): void => {
        if (document.querySelector('.ks-answer[aria-busy="true"]') !== null) {
          turns.add(within('vw-pad-drawing', '[data-part="pad"]').getAttribute('transform')!);
        }
        const slider = within('vw-opening-slider', 'input') as HTMLInputElement;
        mm = mm > 9 ? 2 : mm + 0.1;
        slider.value = String(mm);
        slider.dispatchEvent(new Event('input'));
        requestAnimationFrame(drag);
      };
      requestAnimationFrame(drag);
    });
    await typeInto(page, 'airC', '16');
    await expect.poll(() => told(page, 'airC').innerText()).toContain('16 °C');
    await waitForAnswer(page);
    const turns = await page.evaluate(() => (window as unknown as { turns: Set<string> }).turns.size);
    expect(turns).toBeGreaterThanOrEqual(2);
  });

  it('tells everything in inches, and in millimetres again', async () => {
    const page = await open();
    const mm = await plotted(page);
    await page.locator('vw-choice[data-act="unit"] label', { hasText: 'inch' }).click();
    await expect.poll(async () => (await plotted(page)).traces[0].x[40]).toBeGreaterThan(100);
    const inch = await plotted(page);
    expectSame(
      inch.traces[0].x,
      mm.traces[0].x.map((x) => (x / 25.4) * 1000),
    );
    expectSame(inch.traces[0].y, mm.traces[0].y);
    const front = answerFrontMm(e);
    expect(await text(page, '.ks-answer h1')).toBe(
      `Open the E key to ${(front / 25.4).toFixed(3)} ± ${(half / 25.4).toFixed(3)} in (${front.toFixed(1)} mm) at the front.`,
    );
    expect(await input(page, 'padThicknessMm').inputValue()).toBe('0.161 in');
    expect(inch.words.join(' ')).toContain('thou');
    await page.locator('vw-choice[data-act="unit"] label', { hasText: 'mm' }).click();
    await expect.poll(() => input(page, 'padThicknessMm').inputValue()).toBe('4.1 mm');
  });

  it('takes an opening typed as 0.310 in, 5/16, 7,9 mm and 310 thou', async () => {
    const page = await open();
    for (const [typed, nearMm] of [
      ['0.310 in', 7.874],
      ['5/16', 7.9375],
      ['7,9 mm', 7.9],
      ['310 thou', 7.874],
    ] as const) {
      // The reader's own last digit: a resonance polished from another one may stop a step sooner.
      const read = parseLength(typed, 'opening', 'mm');
      const mm = read.ok ? read.mm : NaN;
      expect(mm).toBeCloseTo(nearMm, 12);
      await typeInto(page, 'openingMm', typed);
      const wanted = study('e', { e: { openingMm: mm } });
      await expect
        .poll(async () => Math.abs((await plotted(page)).traces[0].y[5]! - wanted.curve[5].notes[0]!.cents))
        .toBeLessThan(SAME);
      expectCurve(await plotted(page), wanted);
      const shown = `${formatBoth(mm, 'mm')} at the front`;
      expect(await told(page, 'openingMm').innerText()).toContain(shown);
      const asFound = `As found it stands at ${mm.toFixed(1)} ± 0.2 mm (${(mm / 25.4).toFixed(3)} in) at the front`;
      expect(await text(page, '.ks-standing')).toContain(asFound);
      expect(await input(page, 'openingMm').inputValue()).toBe(typed);
    }
  });

  it('refuses what cannot be, says why beside the field, keeps the text and the last good value', async () => {
    const page = await open();
    const before = await text(page, '.ks-standing');
    await typeInto(page, 'hingeMm', '10 mm');
    await expect
      .poll(() => told(page, 'hingeMm').innerText())
      .toMatch(
        /hinge distance: 10 mm; expected more than .* 17 mm\. Still in use: 21\.5 mm \(0\.846 in\)\.$/,
      );
    expect(await input(page, 'hingeMm').inputValue()).toBe('10 mm');
    expect(await input(page, 'hingeMm').getAttribute('aria-invalid')).toBe('true');
    await typeInto(page, 'padThicknessMm', 'thick');
    await expect
      .poll(() => told(page, 'padThicknessMm').innerText())
      .toMatch(/^Invalid pad thickness: “thick”; expected a length such as/);
    await typeInto(page, 'airC', '99');
    await expect
      .poll(() => told(page, 'airC').innerText())
      .toBe('Invalid air temperature: 99 °C; expected 0 to 45 °C. Still in use: 26.85 °C.');
    await typeInto(page, 'proposed', '40 mm');
    await expect
      .poll(() => told(page, 'proposed').innerText())
      .toMatch(/as far as this study looks\. Still in use/);
    expect(await text(page, '.ks-standing')).toBe(before);
    await input(page, 'hingeMm').press('Escape');
    await expect.poll(() => input(page, 'hingeMm').inputValue()).toBe('21.5 mm');
    expect(await input(page, 'hingeMm').getAttribute('aria-invalid')).toBe('false');
  });

  it('undoes and redoes, by button and by keys, whatever was done', async () => {
    const page = await open();
    const [undo, redo] = ['Undo', 'Redo'].map((name) => page.getByRole('button', { name, exact: true }));
    expect(await undo.isDisabled()).toBe(true);
    await typeInto(page, 'openingMm', '9');
    await expect.poll(() => told(page, 'openingMm').innerText()).toContain('9.0 mm');
    await typeInto(page, 'rimMm', '1.4');
    await expect.poll(() => told(page, 'rimMm').innerText()).toContain('1.4 mm');
    await undo.click();
    await expect.poll(() => input(page, 'rimMm').inputValue()).toBe('1.0 mm');
    await page.locator('.ks-page').press('Control+z');
    await expect.poll(() => input(page, 'openingMm').inputValue()).toBe('8.0 mm');
    await expect.poll(() => undo.isDisabled()).toBe(true);
    await page.locator('.ks-page').press('Control+Shift+Z');
    await expect.poll(() => input(page, 'openingMm').inputValue()).toBe('9');
    await redo.click();
    await expect.poll(() => input(page, 'rimMm').inputValue()).toBe('1.4');
    await waitForAnswer(page);
    const wanted = study('e', { e: { openingMm: 9, rimMm: 1.4 } });
    await expect
      .poll(async () => Math.abs((await plotted(page)).traces[0].y[5]! - wanted.curve[5].notes[0]!.cents))
      .toBeLessThan(SAME);
  });

  it('takes the measuring point as part of the opening', async () => {
    const page = await open();
    await page.locator('vw-choice[data-act="measured-at"] label', { hasText: 'centre' }).click();
    await expect.poll(() => told(page, 'openingMm').innerText()).toContain('8.0 mm (0.315 in) at the centre');
    await waitForAnswer(page);
    const wanted = study('e', { e: { measuredAt: 'centre' } });
    await expect
      .poll(() => text(page, '.ks-standing'))
      .toMatch(
        new RegExp(`^As found it stands at ${(wanted.present.pose.front * 1000).toFixed(1)} ± \\d\\.\\d mm`),
      );
    await page.locator('vw-choice[data-act="read-at"] label', { hasText: 'centre' }).click();
    await expect
      .poll(() => text(page, '.ks-standing'))
      .toMatch(/^As found it stands at 8\.0 ± 0\.\d mm \(0\.315 in\) at the centre/);
  });

  it('picks keys with the arrows, and forgets nothing typed on the one before', async () => {
    const page = await open();
    await typeInto(page, 'padThicknessMm', '0.180 in');
    await expect.poll(() => told(page, 'padThicknessMm').innerText()).toContain('4.6 mm');
    await page.locator('vw-key-strip [aria-checked="true"]').focus();
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => text(page, '.ks-key')).toContain('Pad 6 · D key');
    await waitForAnswer(page);
    const wanted = study('d', { e: { padThicknessMm: 4.572 } });
    await expect
      .poll(async () => (await plotted(page)).traces.length)
      .toBe(wanted.context.governed.length + 5);
    expectCurve(await plotted(page), wanted);
    expect(await input(page, 'padThicknessMm').inputValue()).toBe('4.1 mm');
    await page.keyboard.press('ArrowLeft');
    await expect.poll(() => input(page, 'padThicknessMm').inputValue()).toBe('0.180 in');
    await page.keyboard.press('Home');
    await expect.poll(() => text(page, '.ks-key')).toContain('Pad 25 · high F♯ key');
    await page.keyboard.press('ArrowLeft');
    await expect.poll(() => text(page, '.ks-key')).toContain('Pad 1 · low B♭ key');
  });

  it('puts the tenor on the bench', async () => {
    const page = await open();
    await page.locator('select[data-act="horn"]').selectOption('demo-tenor');
    const wanted = study('e', {}, {}, TENOR);
    await expect.poll(() => text(page, '.ks-standing')).toContain('As found it stands at 9.0 ± 0.2 mm');
    await expect
      .poll(async () => Math.abs((await plotted(page)).traces[0].y[0]! - wanted.curve[0].notes[0]!.cents))
      .toBeLessThan(SAME);
    expectCurve(await plotted(page), wanted);
  });

  it('names the key that rules where a link sets the opening', async () => {
    const page = await open();
    await page.locator('vw-key-strip [data-key="a"]').click();
    await waitForAnswer(page);
    await typeInto(page, 'openingMm', '4.5 mm');
    await expect.poll(() => told(page, 'openingMm').innerText()).toContain('4.5 mm');
    await page.locator('vw-key-strip [data-key="bis"]').click();
    await expect
      .poll(() => text(page, '.ks-answer h1'))
      .toMatch(/^The A key’s arm stops the bis key at 4\.0 ± 0\.\d mm/);
  });

  it('still answers, and says what is missing, when the curve’s library cannot be fetched', async () => {
    const page = await browser.newPage({ viewport: SIZES.laptop });
    onTestFinished(() => page.close());
    await page.route('**/plotly*', (route) => route.abort());
    await page.goto(site.url);
    await expect.poll(() => text(page, '[role="alert"]')).toContain('drawing library could not be fetched');
    await expect.poll(() => text(page, '.ks-answer h1')).toContain('Open the E key to');
    await page.getByRole('button', { name: 'Close' }).click();
    await expect.poll(() => page.locator('[role="alert"]').isVisible()).toBe(false);
  });

  it('prints the answer, the curve, the drawing and the inputs as text', async () => {
    const page = await open();
    await page.emulateMedia({ media: 'print' });
    for (const shown of ['.ks-answer h1', '.ks-curve vw-chart', 'vw-pad-drawing', '.ks-paper']) {
      expect(await page.locator(shown).isVisible()).toBe(true);
    }
    for (const hidden of ['vw-key-strip .strip', 'vw-opening-slider', '.ks-fields >> nth=0']) {
      expect(await page.locator(hidden).isVisible()).toBe(false);
    }
    expect(await text(page, '.ks-paper')).toContain('Rod to pad centre: 21.5 mm (0.846 in)');
  });

  it('refuses code made from text, and would refuse a call to elsewhere', async () => {
    const { page, faults } = await openWorkbench(browser, site, SIZES.laptop);
    expect(faults).toEqual([]);
    const broken = await page.evaluate(async () => {
      const directives: string[] = [];
      document.addEventListener('securitypolicyviolation', (event) =>
        directives.push(event.effectiveDirective),
      );
      // Out of the debugger's own call, which stands above the policy.
      await new Promise<void>((done) => {
        setTimeout(() => {
          try {
            new Function('return 1')();
          } catch {
            directives.push('thrown');
          }
          void fetch('https://127.0.0.2/').catch(() => setTimeout(done, 50));
        });
      });
      return directives;
    });
    expect(broken.toSorted()).toEqual(['connect-src', 'script-src', 'thrown']);
    await page.close();
  });
});

describe('how sure the key study is', () => {
  it('names the parts of the core’s ±, and leads by keyboard to what to measure next', async () => {
    const page = await open();
    const panel = page.locator('vw-sureness');
    const core = sureReport('e');
    expect((await panel.locator('.told').innerText()).replaceAll('\u00a0', ' ')).toContain(
      `± ${half.toFixed(2)} mm`,
    );
    const [first] = core.next;
    await panel.locator('.next button').first().focus();
    await page.keyboard.press('Enter');
    const focused = () =>
      page.evaluate(() => document.activeElement?.closest('[data-field]')?.getAttribute('data-field'));
    expect(first.kind).toBe('rimThickness');
    await expect.poll(focused).toBe('rimMm');
    await expect.poll(() => input(page, 'rimMm').isVisible()).toBe(true);
  });

  it('says of every note how far it may be off', async () => {
    const page = await open();
    const core = sureReport('e');
    const cells = await page.locator('.ks-notes tbody td:first-of-type').allInnerTexts();
    expect(cells.map((cell) => cell.split('±')[1].trim())).toEqual(
      core.budgets.pitchCents.map((budget) => budget!.plusMinus.toFixed(1)),
    );
  });
});

describe.each(Object.entries(SIZES))('on a %s', (_name, size) => {
  it('meets the accessibility rules, with a mistake on screen and the table open too', async () => {
    const page = await open(size);
    const violations = (): Promise<string[]> => faultsByAxe(page);
    expect(await violations()).toEqual([]);
    await typeInto(page, 'chimneyMm', 'tall');
    await expect.poll(() => told(page, 'chimneyMm').innerText()).toContain('Invalid');
    await page.locator('.ks-table summary').click();
    expect(await violations()).toEqual([]);
  });

  it('never scrolls sideways, on any key, and has no touch lower than 44 px', async () => {
    const page = await open(size);
    for (const key of ['g', 'low-b-flat', 'small-c', 'e']) {
      await page.locator(`vw-key-strip [data-key="${key}"]`).click();
      await waitForAnswer(page);
      const wide = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      );
      expect(wide).toBe(0);
    }
    const low = await page.evaluate(() => {
      const all = (root: ParentNode): Element[] =>
        [...root.querySelectorAll('*')].flatMap((el) => [el, ...(el.shadowRoot ? all(el.shadowRoot) : [])]);
      return all(document)
        .filter((el) => el.matches('button:not(.figure), summary, input, fieldset'))
        .filter((el) => !el.matches('[type="radio"]'))
        .map((el) => ({ what: `${el.tagName} ${el.className}`, height: el.getBoundingClientRect().height }))
        .filter(({ height }) => height > 0 && height < 44);
    });
    expect(low).toEqual([]);
  });
});
