import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { controlStyles } from './control.styles.ts';
import type { NoteMap } from './note-map.model.ts';

/**
 * Which key moves which note: keys down, notes across. Arrows walk, Enter or Space picks the note and the key of
 * a cell; on a name it picks that one alone.
 *
 * @fires vw-note-change - when a person picks a note
 * @fires vw-key-change - when a person picks a key
 */
@customElement('vw-note-map')
export class VwNoteMap extends LitElement {
  static override styles = [
    controlStyles,
    css`
      .scroll {
        overflow-x: auto;
      }
      table {
        border-collapse: collapse;
        width: 100%;
        table-layout: fixed;
        font-size: var(--vw-text-cell);
        line-height: 1;
        letter-spacing: -0.03em;
      }
      .corner {
        width: 7.25rem;
      }
      th {
        font-weight: 400;
        cursor: pointer;
      }
      thead th {
        height: 5.1rem;
        padding: 0 0 3px;
        vertical-align: bottom;
        text-align: left;
      }
      thead th span {
        display: inline-block;
        writing-mode: vertical-rl;
        text-orientation: sideways;
        rotate: 180deg;
        white-space: nowrap;
        letter-spacing: 0;
      }
      tbody th {
        padding: 0 0.35rem 0 0;
        text-align: right;
        white-space: nowrap;
        letter-spacing: 0;
        font-size: var(--vw-text-fine);
      }
      td {
        height: 19px;
        padding: 0;
        border: 1px solid var(--vw-well);
        text-align: center;
        cursor: pointer;
      }
      .opens {
        border-left: 2px solid var(--vw-soft);
      }
      th.picked {
        background: var(--vw-try);
        color: var(--vw-on-try);
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
        position: relative;
        z-index: 1;
      }
      .under {
        display: flex;
        flex-wrap: wrap;
        justify-content: space-between;
        gap: var(--vw-space-1) var(--vw-space-4);
        margin: 0.35rem 0 0;
        font-size: var(--vw-text-aside);
        min-height: 1.4em;
      }
      .under p {
        margin: 0;
      }
      .legend {
        display: flex;
        align-items: center;
        color: var(--vw-soft);
        font-size: var(--vw-text-note);
        gap: var(--vw-space-2);
      }
      .legend b {
        display: inline-block;
        padding: 0.15rem 0.4rem;
        font-weight: 400;
      }
      @container (max-width: 1000px) {
        td {
          font-size: 0;
          height: 22px;
        }
      }
    `,
  ];

  @property({ attribute: false }) map: NoteMap | null = null;

  @property() note = '';

  @property({ attribute: 'pad' }) key = '';

  /** where the keyboard stands: −1 is the row or column of names */
  @state() private row: number | null = null;
  @state() private column: number | null = null;

  /** what the pointer is on */
  @state() private pointed: { row: number; column: number } | null = null;

  override render(): TemplateResult {
    const { map } = this;
    if (map === null) return html``;
    const noteAt = map.notes.findIndex(({ id }) => id === this.note);
    const keyAt = map.keys.findIndex(({ id }) => id === this.key);
    const row = this.row ?? keyAt;
    const column = this.column ?? noteAt;
    const tab = (r: number, c: number): number => (r === row && c === column ? 0 : -1);
    const shown = this.pointed ?? { row, column };
    return html`
      <div class="scroll">
        <table
          role="grid"
          aria-label="Cents per millimetre at the front, keys down, notes across"
          @click=${this.#clicked}
          @keydown=${this.#keyed}
          @focusin=${this.#focused}
          @pointerover=${this.#pointedAt}
          @pointerleave=${() => (this.pointed = null)}
        >
          <thead>
            <tr>
              <td class="corner" role="presentation"></td>
              ${map.notes.map(
                ({ id, label, opens }, c) =>
                  html`<th
                    scope="col"
                    data-row="-1"
                    data-column=${c}
                    data-note=${id}
                    tabindex=${tab(-1, c)}
                    class=${`${opens ? 'opens ' : ''}${c === noteAt ? 'picked' : ''}`}
                  >
                    <span>${label}</span>
                  </th>`,
              )}
            </tr>
          </thead>
          <tbody>
            ${map.keys.map(
              ({ id, label }, r) =>
                html`<tr>
                  <th
                    scope="row"
                    data-row=${r}
                    data-column="-1"
                    data-key=${id}
                    tabindex=${tab(r, -1)}
                    class=${r === keyAt ? 'picked' : ''}
                  >
                    ${label}
                  </th>
                  ${map.cells[r].map(
                    (cell, c) =>
                      html`<td
                        role="gridcell"
                        data-row=${r}
                        data-column=${c}
                        tabindex=${tab(r, c)}
                        aria-label=${cell.words}
                        class=${`${map.notes[c].opens ? 'opens ' : ''}${r === keyAt ? 'row ' : ''}${c === noteAt ? 'column' : ''}`}
                        style=${`background:${cell.ground};color:${cell.ink}`}
                      >
                        ${cell.text}
                      </td>`,
                  )}
                </tr>`,
            )}
          </tbody>
        </table>
      </div>
      <div class="under">
        <p class="told">${map.cells[shown.row]?.[shown.column]?.words ?? nothing}</p>
        <p class="legend">
          cents per mm
          <span
            >${map.legend.map(
              ({ text, ground, ink }) => html`<b style=${`background:${ground};color:${ink}`}>${text}</b>`,
            )}</span
          >
        </p>
      </div>
    `;
  }

  #placeOf(event: Event): { row: number; column: number } | null {
    const cell = (event.target as Element).closest<HTMLElement>('[data-row]');
    return cell === null ? null : { row: Number(cell.dataset.row), column: Number(cell.dataset.column) };
  }

  #clicked = (event: MouseEvent): void => {
    const place = this.#placeOf(event);
    if (place === null) return;
    this.#stand(place.row, place.column);
    this.#pick(place.row, place.column);
  };

  #focused = (event: FocusEvent): void => {
    const place = this.#placeOf(event);
    if (place !== null) this.#stand(place.row, place.column);
  };

  #pointedAt = (event: PointerEvent): void => {
    const place = this.#placeOf(event);
    this.pointed = place !== null && place.row >= 0 && place.column >= 0 ? place : null;
  };

  #stand(row: number, column: number): void {
    this.row = row;
    this.column = column;
  }

  #keyed = (event: KeyboardEvent): void => {
    const place = this.#placeOf(event);
    if (place === null || this.map === null) return;
    const { row, column } = place;
    const to: Readonly<Record<string, readonly [number, number]>> = {
      ArrowRight: [row, column + 1],
      ArrowLeft: [row, column - 1],
      ArrowDown: [row + 1, column],
      ArrowUp: [row - 1, column],
      Home: [row, 0],
      End: [row, this.map.notes.length - 1],
      PageUp: [0, column],
      PageDown: [this.map.keys.length - 1, column],
    };
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      this.#pick(row, column);
      return;
    }
    const next = to[event.key];
    if (next === undefined) return;
    event.preventDefault();
    const [r, c] = next;
    const cell = this.renderRoot.querySelector<HTMLElement>(`[data-row="${r}"][data-column="${c}"]`);
    cell?.focus();
  };

  #pick(row: number, column: number): void {
    const { map } = this;
    if (map === null) return;
    if (column >= 0) this.#say('vw-note-change', map.notes[column].id);
    if (row >= 0) this.#say('vw-key-change', map.keys[row].id);
  }

  #say(event: 'vw-note-change' | 'vw-key-change', id: string): void {
    this.dispatchEvent(new CustomEvent(event, { bubbles: true, composed: true, detail: { id } }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-note-map': VwNoteMap;
  }
}
