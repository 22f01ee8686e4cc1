import type { MeasureTarget } from '../../parts/sureness.model.ts';
import type { Bench } from '../../shell/bench.ts';

/** Frames a view is waited for: its code may still be on its way. */
const MOST_FRAMES = 180;

/** Takes a key up and puts the hand into one of its measured fields, from whatever view. */
export async function goToField(bench: Bench, { pad, field }: MeasureTarget): Promise<void> {
  bench.chooseKey(pad);
  if (bench.store.get().view !== 'key') location.hash = '#key';
  for (let frame = 0; frame < MOST_FRAMES; frame++) {
    await new Promise((done) => requestAnimationFrame(done));
    const found = document.querySelector<HTMLElement>(
      `vw-key-study .ks-inputs vw-bench-field[data-field="${field}"]`,
    );
    if (found === null) continue;
    // A frame more: the page goes to its top when the view is another.
    await new Promise((done) => requestAnimationFrame(done));
    found.focus({ preventScroll: true });
    found.scrollIntoView({ block: 'center' });
    return;
  }
}
