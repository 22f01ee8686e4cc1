import { html, nothing, svg, type TemplateResult } from 'lit';
import { NEEDLE_CENTS, type NeedleView } from './played-view.model.ts';

const WIDTH = 400;
const MIDDLE = WIDTH / 2;
const at = (cents: number): number => MIDDLE + (cents / NEEDLE_CENTS) * (MIDDLE - 12);

/** Marks in cents, and how tall they stand. */
const MARKS = [-50, -40, -30, -20, -10, -5, 0, 5, 10, 20, 30, 40, 50];

/**
 * How far off the note is, as a column of air on a rule: it leans out of the middle to the flat or the sharp side.
 * Its room is kept while nothing is listened for, so that nothing jumps.
 */
export function needle(view: NeedleView | null): TemplateResult {
  return html`
    <div class="pl-needle" aria-hidden="true">${drawing(view)}</div>
    <p class="pl-sure">${view === null ? nothing : view.sure}</p>
  `;
}

function drawing(view: NeedleView | null): TemplateResult {
  return html`
    <svg viewBox="0 0 ${WIDTH} 64" preserveAspectRatio="xMidYMid meet">
      <rect class="pl-close" x=${at(-5)} y="10" width=${at(5) - at(-5)} height="26"></rect>
      ${view === null || view.note === '–' ? nothing : leaning(view)}
      ${MARKS.map(
        (mark) => svg`
          <line class="pl-mark" x1=${at(mark)} x2=${at(mark)} y1="36" y2=${mark % 10 === 0 ? 44 : 40}></line>
          ${
            mark % 10 === 0
              ? svg`<text x=${at(mark)} y="58">${mark === 0 ? '0' : `${mark < 0 ? '−' : '+'}${Math.abs(mark)}`}</text>`
              : nothing
          }
        `,
      )}
    </svg>
  `;
}

/** The column out of the middle, and its tip. */
function leaning({ cents, isSteady }: NeedleView): TemplateResult {
  const x = at(cents);
  const [from, to] = [Math.min(MIDDLE, x), Math.max(MIDDLE, x)];
  return svg`
    <rect
      class=${isSteady ? 'pl-lean pl-steady' : 'pl-lean'}
      x=${from}
      y="14"
      width=${to - from}
      height="18"
    ></rect>
    <path class="pl-tip" d="M${x} 36l-6-30h12z"></path>
  `;
}
