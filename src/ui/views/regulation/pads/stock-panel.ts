import { html, type TemplateResult } from 'lit';
import { usualStock } from '../../../../documents/stock-document.ts';
import type { Bench } from '../../../shell/bench.ts';
import type { StockFieldView, StockView } from './stock-view.model.ts';

/** What lies in the drawer: thicknesses, and the lengths a pad is chosen by. */
export function stockPanel(view: StockView, bench: Bench): TemplateResult {
  return html`
    <details class="pd-stock" @focusin=${() => bench.pads.expectTyping()}>
      <summary><b>Your stock</b> <span>${view.summary}</span></summary>
      <div class="pd-classes">
        <p id="pd-classes">Thicknesses in the drawer</p>
        <ul aria-labelledby="pd-classes">
          ${view.classes.map(
            ({ mm, label }) => html`
              <li>
                ${label}
                <button
                  type="button"
                  aria-label="Take ${label} out of the stock"
                  ?disabled=${view.classes.length === 1}
                  @click=${() => bench.pads.dropThickness(mm)}
                >
                  ✕
                </button>
              </li>
            `,
          )}
        </ul>
        ${field(view.add, bench)}
      </div>
      <div class="pd-fields">${view.fields.map((plan) => field(plan, bench))}</div>
      <p class="pd-kept">
        Kept in this browser, for every horn.
        <button type="button" class="rg-quiet" @click=${() => bench.pads.setStock(usualStock())}>
          Back to the usual stock
        </button>
      </p>
    </details>
  `;
}

function field({ id, label, hint, text, echo, problem }: StockFieldView, bench: Bench): TemplateResult {
  return html`
    <vw-bench-field
      data-stock=${id}
      .label=${label}
      .hint=${hint}
      .text=${text}
      .echo=${echo}
      .problem=${problem}
      @vw-field-change=${(e: CustomEvent<{ text: string }>) => void bench.pads.typeStock(id, e.detail.text)}
      @vw-field-restore=${() => bench.pads.restoreStock(id)}
    ></vw-bench-field>
  `;
}
