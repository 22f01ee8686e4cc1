import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { guard } from 'lit/directives/guard.js';
import { controlStyles } from '../../../parts/control.styles.ts';
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
  static override styles = [
    controlStyles,
    css`
      .scroll {
        overflow-x: auto;
      }
      table {
        border-collapse: separate;
        border-spacing: 0;
        font-size: 0.75rem;
        line-height: 1;
      }
      th {
        font-weight: 400;
        cursor: pointer;
      }
      thead th {
        height: 7rem;
        padding: 0 0 4px;
        vertical-align: bottom;
      }
      thead th span {
        display: inline-block;
        writing-mode: vertical-rl;
        text-orientation: sideways;
        rotate: 180deg;
        white-space: nowrap;
      }
      tbody th,
      .corner {
        position: sticky;
        left: 0;
        z-index: 1;
        min-width: 10.5rem;
        padding: 0 0.5rem 0 0;
        text-align: right;
        white-space: nowrap;
        font-size: 0.8125rem;
        background: var(--vw-sheet);
      }
      td {
        min-width: 24px;
        height: 26px;
        padding: 0;
        border: 0.5px solid var(--vw-well);
        text-align: center;
        letter-spacing: -0.03em;
        cursor: pointer;
      }
      td.corner {
        border: 0;
      }
      th.picked {
        background: var(--vw-try);
        color: #fff;
        font-weight: 700;
      }
      td.row {
        border-block: 2px solid var(--vw-try);
      }
      td.column {
        border-inline: 2px solid var(--vw-try);
      }
      :focus-visible {
        outline: 3px solid var(--vw-ink);
        outline-offset: -2px;
      }
      .under {
        display: flex;
        flex-wrap: wrap;
        justify-content: space-between;
        gap: 0.25rem 1rem;
        margin: 0.35rem 0 0;
        font-size: 0.875rem;
        min-height: 2.8em;
      }
      .under p {
        margin: 0;
      }
      .legend {
        color: var(--vw-soft);
        font-size: 0.8125rem;
      }
      .legend b {
        display: inline-block;
        padding: 0.15rem 0.4rem;
        font-weight: 400;
      }
      @media (max-width: 700px) {
        tbody th,
        .corner {
          min-width: 8rem;
          max-width: 8rem;
          white-space: normal;
          line-height: 1.15;
        }
        td {
          min-width: 30px;
          height: 44px;
        }
      }
      @media print {
        .scroll {
          overflow: visible;
        }
        table {
          font-size: 0.4375rem;
        }
        td {
          min-width: 0;
          width: 13px;
          height: 15px;
        }
        tbody th,
        .corner {
          min-width: 0;
          font-size: 0.5rem;
        }
      }
    `,
  ];

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
            <td class="corner" role="presentation"></td>
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
            ({ label, cells }, r) =>
              html`<tr>
                <th
                  scope="row"
                  data-row=${r}
                  data-column="-1"
                  tabindex=${tab(r, -1)}
                  class=${r === chosen.row ? 'picked' : ''}
                >
                  ${label}
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
