import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { guard } from 'lit/directives/guard.js';
import { controlStyles } from '../../../parts/control.styles.ts';
import { leakMapStyles } from './leak-map.styles.ts';
import type { LeakMapView } from './leak-map.model.ts';
import { placeKey } from './leaks-view.model.ts';

/** A cell of the map; −1 stands on the names. */
interface Place {
  readonly row: number;
  readonly column: number;
}

/**
 * Which leak hurts which notes: places down, the worst first, notes across. Arrows walk; Enter, Space or a click
 * picks.
 *
 * @fires vw-leak-pick - when a person picks a place, a note, or both
 */
@customElement('vw-leak-map')
export class VwLeakMap extends LitElement {
  static override styles = [controlStyles, leakMapStyles];

  @property({ attribute: false }) map: LeakMapView | null = null;

  @property() note = '';

  /** as {@link placeKey} */
  @property() place = '';

  @state() private stand: Place | null = null;

  @state() private pointed: Place | null = null;

  override render(): TemplateResult {
    const { map } = this;
    if (map === null) return html``;
    const chosen: Place = {
      row: map.rows.findIndex(({ pad, by }) => placeKey(pad, by) === this.place),
      column: map.notes.findIndex(({ id }) => id === this.note),
    };
    const stand = this.stand ?? { row: Math.max(chosen.row, 0), column: Math.max(chosen.column, 0) };
    const shown = this.pointed ?? stand;
    return html`
      <div class="scroll">
        ${guard([map, chosen.row, chosen.column, stand.row, stand.column], () => this.#table(map, chosen, stand))}
      </div>
      <div class="under">
        <p class="told">${map.rows[shown.row]?.cells[shown.column]?.words ?? nothing}</p>
        <p class="legend">
          dB lost
          ${map.legend.map(
            ({ text, ground, ink }) => html`<b style=${`background:${ground};color:${ink}`}>${text}</b>`,
          )}
          ✕ note lost
        </p>
      </div>
    `;
  }

  #table(map: LeakMapView, chosen: Place, stand: Place): TemplateResult {
    const tab = (row: number, column: number): number =>
      row === stand.row && column === stand.column ? 0 : -1;
    return html`
      <table
        role="grid"
        aria-label="Height lost in dB, places of the leak down, notes across"
        @click=${this.#clicked}
        @keydown=${this.#keyed}
        @focusin=${this.#focused}
        @pointerover=${this.#over}
        @pointerleave=${() => (this.pointed = null)}
      >
        <thead>
          <tr>
            <th scope="col" class="corner" aria-sort="descending">
              Leak at, by the most dB any note loses ▼
            </th>
            ${map.notes.map(
              ({ label }, c) =>
                html`<th
                  scope="col"
                  data-row="-1"
                  data-column=${c}
                  tabindex=${tab(-1, c)}
                  class=${c === chosen.column ? 'picked' : ''}
                >
                  <span>${label}</span>
                </th>`,
            )}
          </tr>
        </thead>
        <tbody>
          ${map.rows.map(
            ({ label, most, cells }, r) =>
              html`<tr>
                <th
                  scope="row"
                  data-row=${r}
                  data-column="-1"
                  tabindex=${tab(r, -1)}
                  class=${r === chosen.row ? 'picked' : ''}
                >
                  ${label} <b class="most">${most}</b>
                </th>
                ${cells.map(
                  ({ text, ground, ink, words }, c) =>
                    html`<td
                      role="gridcell"
                      data-row=${r}
                      data-column=${c}
                      tabindex=${tab(r, c)}
                      aria-label=${words}
                      class=${`${r === chosen.row ? 'row ' : ''}${c === chosen.column ? 'column' : ''}`}
                      style=${`background:${ground};color:${ink}`}
                    >
                      ${text}
                    </td>`,
                )}
              </tr>`,
          )}
        </tbody>
      </table>
    `;
  }

  #placeOf(event: Event): Place | null {
    const cell = (event.target as Element).closest<HTMLElement>('[data-row]');
    return cell === null ? null : { row: Number(cell.dataset.row), column: Number(cell.dataset.column) };
  }

  #clicked = (event: MouseEvent): void => {
    const place = this.#placeOf(event);
    if (place === null) return;
    this.stand = place;
    this.#pick(place);
  };

  #focused = (event: FocusEvent): void => {
    this.stand = this.#placeOf(event) ?? this.stand;
  };

  #over = (event: PointerEvent): void => {
    const place = this.#placeOf(event);
    this.pointed = place !== null && place.row >= 0 && place.column >= 0 ? place : null;
  };

  #keyed = (event: KeyboardEvent): void => {
    const place = this.#placeOf(event);
    if (place === null || this.map === null) return;
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      this.#pick(place);
      return;
    }
    const { row, column } = place;
    const to: Readonly<Record<string, Place>> = {
      ArrowRight: { row, column: column + 1 },
      ArrowLeft: { row, column: column - 1 },
      ArrowDown: { row: row + 1, column },
      ArrowUp: { row: row - 1, column },
      Home: { row, column: 0 },
      End: { row, column: this.map.notes.length - 1 },
      PageUp: { row: 0, column },
      PageDown: { row: this.map.rows.length - 1, column },
    };
    const next = to[event.key];
    if (next === undefined) return;
    event.preventDefault();
    this.renderRoot
      .querySelector<HTMLElement>(`[data-row="${next.row}"][data-column="${next.column}"]`)
      ?.focus();
  };

  #pick({ row, column }: Place): void {
    const place = this.map?.rows[row];
    const note = this.map?.notes[column];
    const detail = {
      place: place === undefined ? null : { pad: place.pad, by: place.by },
      note: note?.id ?? null,
    };
    this.dispatchEvent(new CustomEvent('vw-leak-pick', { bubbles: true, composed: true, detail }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-leak-map': VwLeakMap;
  }
  interface HTMLElementEventMap {
    'vw-leak-pick': CustomEvent<{
      readonly place: { readonly pad: string; readonly by: string | null } | null;
      readonly note: string | null;
    }>;
  }
}
