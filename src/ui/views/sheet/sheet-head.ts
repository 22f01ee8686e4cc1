import { html, nothing, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import type { Bench } from '../../shell/bench.ts';
import { wishEntry } from '../../sheets/wish-entry.ts';
import type { HeadFieldId } from '../../state/fields.ts';
import { dayFields } from '../day-fields.ts';
import type { HeadView, SheetView } from './sheet-view.model.ts';

const LONG: readonly HeadFieldId[] = ['wish', 'notes'];

/** Horn, player and day: folded to a line, and unfolded to write in. */
export function sheetHead(view: SheetView, bench: Bench): TemplateResult {
  return html`
    <details class="sh-who">
      <summary><b>${view.hornName}</b> <span>${view.headLine}</span></summary>
      <div class="sh-fields" @focusin=${() => bench.expectTyping()}>
        ${view.head.map((field) => headField(field, bench))} ${wishEntry(view.wish, bench)}
        ${dayFields(view.dayFields, bench)}
      </div>
    </details>
    <div class="sh-visits">
      <label>
        Visit
        <select
          data-act="visit"
          .value=${live(view.visitId)}
          @change=${(e: Event) => void openVisit(bench, (e.target as HTMLSelectElement).value)}
        >
          ${view.visits.map(
            ({ id, label }) => html`<option value=${id} ?selected=${id === view.visitId}>${label}</option>`,
          )}
        </select>
      </label>
      <button type="button" class="ks-quiet" data-act="new-visit" @click=${() => bench.newVisit()}>
        New visit
      </button>
      <a class="ks-quiet" href="#player-sheet">Player’s sheet</a>
    </div>
  `;
}

async function openVisit(bench: Bench, visitId: string): Promise<void> {
  const problem = await bench.openHorn(bench.store.get().hornId, visitId);
  if (problem !== null) bench.tell(problem);
}

/** What was typed and changed nothing gives way to what is in use. */
function showAgain(input: HTMLInputElement): void {
  if (document.activeElement !== input) input.value = input.dataset.shown!;
}

function headField({ id, label, text, problem }: HeadView, bench: Bench): TemplateResult {
  const wrong = problem !== null;
  const typed = (event: Event): void => {
    const { value } = event.target as HTMLInputElement;
    if (value !== text)
      void bench.typeHead(id, value).then(() => showAgain(event.target as HTMLInputElement));
  };
  const pressed = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape') return;
    if (wrong) bench.restoreHead(id);
    else (event.target as HTMLInputElement).value = text;
  };
  const told = wrong ? `sh-told-${id}` : nothing;
  return html`
    <div class="sh-field ${LONG.includes(id) ? 'sh-long' : ''}">
      <label for="sh-${id}">${label}</label>
      ${
        LONG.includes(id)
          ? html`<textarea
              id="sh-${id}"
              rows="2"
              data-shown=${text}
              .value=${text}
              aria-invalid=${wrong ? 'true' : 'false'}
              aria-describedby=${told}
              @change=${typed}
              @keydown=${pressed}
            ></textarea>`
          : html`<input
              id="sh-${id}"
              type=${id === 'date' ? 'date' : 'text'}
              autocomplete="off"
              data-shown=${text}
              .value=${text}
              aria-invalid=${wrong ? 'true' : 'false'}
              aria-describedby=${told}
              @change=${typed}
              @keydown=${pressed}
            />`
      }
      ${wrong ? html`<p class="sh-field-problem" id="sh-told-${id}">${problem}</p>` : nothing}
    </div>
  `;
}
