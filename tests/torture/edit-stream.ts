import type { Page } from 'playwright-core';

/** One edit: the opening one key was set to. */
export interface StreamedEdit {
  readonly pad: string;
  readonly mm: number;
}

/** What a page did before it was killed, as it told of it. */
export interface Streamed {
  readonly hornId: string;
  readonly visitId: string;
  /** openings as set before the first edit, by pad */
  readonly before: Readonly<Record<string, number>>;
  readonly edits: StreamedEdit[];
  /** how many of the edits the page said were saved */
  saved: number;
}

/** What lies in the library of a visit: the openings as set, by pad; null where it cannot be read. */
export type Found = Readonly<Record<string, number>> | null;

/** What a stream is told. */
export interface StreamPlan {
  /** a visit of its own first: five records in one write */
  readonly newVisit: boolean;
  /** pauses between edits, ms, in turn */
  readonly pausesMs: readonly number[];
  /** goes on through the openings of earlier rounds, so that no two edits write the same number */
  readonly from: number;
}

/**
 * Sets one key after the other, as a hand on the sheet would, for as long as the page lives. Each edit is told as it
 * is made, and each time the page shows “saved”, how far.
 */
export async function streamEdits(page: Page, plan: StreamPlan): Promise<Streamed> {
  let streamed: Streamed | null = null;
  await page.exposeFunction('tellStart', (start: Omit<Streamed, 'edits' | 'saved'>) => {
    streamed = { ...start, edits: [], saved: 0 };
  });
  await page.exposeFunction('tellEdit', (edit: StreamedEdit) => void streamed!.edits.push(edit));
  await page.exposeFunction('tellSaved', (count: number) => {
    streamed!.saved = Math.max(streamed!.saved, count);
  });
  await page.evaluate(async ({ newVisit, pausesMs, from }) => {
    const { tellStart, tellEdit, tellSaved } = window as unknown as {
      tellStart(start: object): Promise<void>;
      tellEdit(edit: object): Promise<void>;
      tellSaved(count: number): Promise<void>;
    };
    const bench = document.querySelector('vw-workbench')!.bench!;
    const { store } = bench;
    if (newVisit) bench.newVisit();
    const inHand = () => store.get().horns[store.get().hornId].contents;
    const asSet = () =>
      Object.fromEntries(
        inHand().asSet.document.keys.flatMap(({ pad, openingMm }) =>
          openingMm === undefined ? [] : [[pad, openingMm]],
        ),
      );
    const pads = inHand().asFound.document.keys.map(({ pad }) => pad);
    const made = new Map([[inHand(), 0]]);
    await tellStart({ hornId: inHand().horn.id, visitId: inHand().visit.id, before: asSet() });
    let told = 0;
    store.subscribe(() => {
      const count = made.get(inHand());
      if (store.get().keeping.kind !== 'saved' || count === undefined || count <= told) return;
      told = count;
      void tellSaved(count);
    });
    const goOn = async (): Promise<void> => {
      for (let i = 0; ; i++) {
        const mm = (2000 + ((from + i) % 6000)) / 1000;
        const pad = pads[i % pads.length];
        await tellEdit({ pad, mm });
        await bench.typeCells([{ pad, cell: 'asSet', text: `${mm} mm` }]);
        // Nothing can have been written yet: that takes more than a turn.
        made.set(inHand(), i + 1);
        await new Promise((done) => setTimeout(done, pausesMs[i % pausesMs.length]));
      }
    };
    void goOn();
  }, plan);
  if (streamed === null) throw new Error('the page did not begin');
  return streamed;
}

/** What the library of a page holds of a visit. */
export async function findAgain(page: Page, hornId: string, visitId: string): Promise<Found> {
  return page.evaluate(
    async ([horn, visit]) => {
      const library = await document.querySelector('vw-workbench')!.bench!.library();
      const opened = await library.open(horn, visit);
      if (!opened.ok) return null;
      return Object.fromEntries(
        opened.contents.asSet.document.keys.flatMap(({ pad, openingMm }) =>
          openingMm === undefined ? [] : [[pad, openingMm]],
        ),
      );
    },
    [hornId, visitId] as const,
  );
}

/** What a library says of a visit that was not found again: for whoever has to look into it. */
export async function whyNotFound(page: Page, hornId: string, visitId: string): Promise<string> {
  return page.evaluate(
    async ([horn, visit]) => {
      const library = await document.querySelector('vw-workbench')!.bench!.library();
      const opened = await library.open(horn, visit);
      const { horns, setups, visits } = await library.raw('all');
      const counts = [`${horns.length} horns`, `${setups.length} setups`, `${visits.length} visits`];
      const isThere = visits.some(({ id }) => id === visit);
      return [
        opened.ok ? 'opens when asked again' : opened.message,
        ...opened.issues.map(({ path, message }) => `${path}: ${message}`),
        library.refusal ?? 'the browser keeps it',
        `${counts.join(', ')}; the visit is ${isThere ? '' : 'not '}among them`,
      ].join(' | ');
    },
    [hornId, visitId] as const,
  );
}

/** The openings after so many edits. */
export function after({ before, edits }: Streamed, count: number): Readonly<Record<string, number>> {
  return edits.slice(0, count).reduce((now, { pad, mm }) => ({ ...now, [pad]: mm }), before);
}

/** A length read from a text may differ from it in its last binary digit, mm. */
const ROUNDING_MM = 1e-9;

const same = (a: Readonly<Record<string, number>>, b: Readonly<Record<string, number>>): boolean => {
  const pads = new Set([...Object.keys(a), ...Object.keys(b)]);
  return [...pads].every((pad) => Math.abs(a[pad] - b[pad]) < ROUNDING_MM);
};

/**
 * Which moment of a stream was found again.
 *
 * @returns how many of the edits, at least as many as were said to be saved; null where it is no such moment
 */
export function momentFound(streamed: Streamed, found: Found): number | null {
  if (found === null) return streamed.saved === 0 ? 0 : null;
  for (let count = streamed.edits.length; count >= streamed.saved; count--) {
    if (same(after(streamed, count), found)) return count;
  }
  return null;
}
