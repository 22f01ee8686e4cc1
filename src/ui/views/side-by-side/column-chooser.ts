import { html, nothing, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import type { Column } from '../../state/side-by-side-state.ts';
import type { ColumnView } from './side-by-side-columns.model.ts';
import type { SideBySideView } from './side-by-side-view.model.ts';

/** What a person does to the columns. */
export interface ColumnActs {
  /** null: the visit on the bench again */
  choose(columns: readonly Column[] | null): void;
}

/** Which setups of which horns stand side by side. */
export function columnChooser(view: SideBySideView, acts: ColumnActs): TemplateResult {
  const columns = view.columns.map(({ column }) => column);
  const replaced = (index: number, by: Column): Column[] => columns.map((c, i) => (i === index ? by : c));
  return html`
    <section class="sd-columns" aria-label="What stands side by side">
      ${view.columns.map(
        (column, index) => html`
          <fieldset class="sd-column" data-letter=${column.letter}>
            <legend>
              <b>${column.letter}</b> ${index === 0 ? 'what the others are held against' : 'beside A'}
            </legend>
            ${horns(column, (hornId) => acts.choose(replaced(index, { hornId, setupId: null })))}
            ${setups(column, (setupId) => acts.choose(replaced(index, { ...column.column, setupId })))}
            <p class="sd-on-paper">${column.onPaper}</p>
            <div class="sd-column-acts">
              ${
                index === 0
                  ? nothing
                  : html`<button
                      type="button"
                      class="sd-act"
                      @click=${() => acts.choose([columns[index], ...columns.filter((_, i) => i !== index)])}
                    >
                      hold the others against ${column.letter}
                    </button>`
              }
              ${
                index === 0 || !view.canRemove
                  ? nothing
                  : html`<button
                      type="button"
                      class="sd-act"
                      @click=${() => acts.choose(columns.filter((_, i) => i !== index))}
                    >
                      take ${column.letter} away
                    </button>`
              }
            </div>
            ${column.problem === null ? nothing : html`<p class="sd-problem">${column.problem}</p>`}
            ${column.waiting ? html`<p class="sd-waiting">Fetching this horn’s setups…</p>` : nothing}
          </fieldset>
        `,
      )}
      <div class="sd-more">
        <button
          type="button"
          class="ks-quiet"
          ?disabled=${view.next === null}
          @click=${() => acts.choose([...columns, view.next!])}
        >
          Add a column
        </button>
        <button type="button" class="ks-quiet" ?disabled=${view.isBench} @click=${() => acts.choose(null)}>
          This visit again
        </button>
      </div>
    </section>
  `;
}

function horns({ column, horns: list, letter }: ColumnView, chosen: (id: string) => void): TemplateResult {
  return html`
    <label class="sd-select">
      <span>Horn</span>
      <select
        data-act=${`horn-${letter}`}
        .value=${live(column.hornId)}
        @change=${(e: Event) => chosen((e.target as HTMLSelectElement).value)}
      >
        ${list.map(
          ({ id, label }) => html`<option value=${id} ?selected=${id === column.hornId}>${label}</option>`,
        )}
      </select>
    </label>
  `;
}

function setups(
  { column, setups: groups, letter }: ColumnView,
  chosen: (id: string) => void,
): TemplateResult {
  return html`
    <label class="sd-select">
      <span>Setup</span>
      <select
        data-act=${`setup-${letter}`}
        ?disabled=${groups.length === 0}
        .value=${live(column.setupId ?? '')}
        @change=${(e: Event) => chosen((e.target as HTMLSelectElement).value)}
      >
        ${groups.map(
          ({ title, offers }) =>
            html`<optgroup label=${title}>
              ${offers.map(
                ({ id, label }) =>
                  html`<option value=${id} ?selected=${id === column.setupId}>${label}</option>`,
              )}
            </optgroup>`,
        )}
      </select>
    </label>
  `;
}
