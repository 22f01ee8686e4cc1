import { css, html, LitElement, svg, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { controlStyles } from './control.styles.ts';
import type { StripPad } from './key-strip.model.ts';

/** Screen px per mm of pad: pads are to scale among themselves, their places evened out for fingers. */
const PX_PER_MM = 0.62;
const ROOM_PX = 34;

/**
 * The horn unrolled from mouthpiece to bell, one touch per pad: its number, its name and the note it vents.
 *
 * @fires vw-key-change - when a person picks another pad
 */
@customElement('vw-key-strip')
export class VwKeyStrip extends LitElement {
  static override styles = [
    controlStyles,
    css`
      .strip {
        position: relative;
        display: flex;
        overflow-x: auto;
        scrollbar-width: thin;
        background: var(--vw-sheet);
        border: 1px solid var(--vw-edge);
        border-radius: var(--vw-round);
      }
      .row {
        position: relative;
        display: flex;
        flex: 1 0 auto;
      }
      /* The body, widening to the bell. */
      .row::before {
        content: '';
        position: absolute;
        inset: 2px 0 auto;
        height: 36px;
        background: var(--vw-felt);
        clip-path: polygon(0 40%, 88% 8%, 100% 0, 100% 100%, 88% 92%, 0 60%);
      }
      button {
        position: relative;
        flex: 1 0 52px;
        min-width: 52px;
        min-height: 84px;
        padding: 2px 1px 3px;
        border: 0;
        border-radius: 0;
        background: none;
        display: flex;
        flex-direction: column;
        align-items: center;
        cursor: pointer;
        line-height: 1.2;
        scroll-margin-inline: 80px;
      }
      button:hover {
        background: var(--vw-try-weak);
      }
      button[aria-checked='true'] {
        background: var(--vw-try);
        color: var(--vw-on-try);
      }
      :focus-visible {
        outline: 3px solid var(--vw-ink);
        outline-offset: -4px;
      }
      svg {
        display: block;
        width: ${ROOM_PX}px;
        height: 36px;
      }
      circle {
        stroke: var(--vw-ink);
        stroke-width: 1.5;
        fill: var(--vw-sheet);
      }
      circle.closed {
        fill: var(--vw-leather);
      }
      [aria-checked='true'] circle {
        stroke: var(--vw-on-try);
        stroke-width: 2.5;
      }
      [aria-checked='true'] circle.open {
        fill: var(--vw-try);
      }
      .number {
        font-size: var(--vw-text-aside);
        font-weight: 700;
      }
      .name,
      .vents {
        font-size: var(--vw-text-cell);
        white-space: nowrap;
        letter-spacing: -0.02em;
      }
      .vents {
        color: var(--vw-soft);
        min-height: 1.2em;
      }
      [aria-checked='true'] .vents {
        color: var(--vw-on-try);
      }
      .edited {
        font-size: var(--vw-text-cell);
      }
      @media print {
        :host {
          display: none;
        }
      }
    `,
  ];

  /** in the order they stand on the horn, mouthpiece first */
  @property({ attribute: false }) pads: readonly StripPad[] = [];

  @property() value = '';

  override render(): TemplateResult {
    return html`
      <div class="strip">
        <div class="row" role="radiogroup" aria-label="Key, from mouthpiece to bell" @keydown=${this.#move}>
          ${this.pads.map((pad) => this.#touch(pad))}
        </div>
      </div>
    `;
  }

  #touch(pad: StripPad): TemplateResult {
    const chosen = pad.id === this.value;
    const said =
      `${pad.number}, ${pad.name}, rests ${pad.rests}` +
      `${pad.vents === '' ? '' : `, vents ${pad.vents}`}${pad.edited ? ', changed' : ''}`;
    return html`
      <button
        type="button"
        role="radio"
        data-key=${pad.id}
        aria-checked=${chosen ? 'true' : 'false'}
        aria-label=${said}
        tabindex=${chosen ? 0 : -1}
        @click=${() => this.#pick(pad.id)}
      >
        <svg viewBox="${-ROOM_PX / 2} -18 ${ROOM_PX} 36" aria-hidden="true">
          ${svg`<circle class=${pad.rests} r=${(pad.padMm * PX_PER_MM) / 2} />`}
        </svg>
        <span class="number">${pad.number}${pad.edited ? html`<span class="edited">✎</span>` : ''}</span>
        <span class="name">${shortName(pad.name)}</span>
        <span class="vents">${pad.vents === '' ? '' : `♪ ${pad.vents}`}</span>
      </button>
    `;
  }

  override updated(changed: Map<PropertyKey, unknown>): void {
    if (!changed.has('value')) return;
    const strip = this.renderRoot.querySelector('.strip')!;
    const chosen = this.#buttonOf(this.value);
    if (chosen === null || strip.scrollWidth <= strip.clientWidth) return;
    strip.scrollLeft = chosen.offsetLeft - (strip.clientWidth - chosen.offsetWidth) / 2;
  }

  #buttonOf(id: string): HTMLButtonElement | null {
    return this.renderRoot.querySelector<HTMLButtonElement>(`button[data-key="${id}"]`);
  }

  #pick(id: string): void {
    if (id === this.value) return;
    this.dispatchEvent(new CustomEvent('vw-key-change', { bubbles: true, composed: true, detail: { id } }));
  }

  /** Arrows walk along the horn, round its ends; Home is the mouthpiece, End the bell. */
  #move = (event: KeyboardEvent): void => {
    const last = this.pads.length - 1;
    const here = this.pads.findIndex((pad) => pad.id === this.value);
    const to: Readonly<Record<string, number>> = {
      ArrowRight: here === last ? 0 : here + 1,
      ArrowDown: here === last ? 0 : here + 1,
      ArrowLeft: here === 0 ? last : here - 1,
      ArrowUp: here === 0 ? last : here - 1,
      Home: 0,
      End: last,
    };
    const next = to[event.key];
    if (next === undefined) return;
    event.preventDefault();
    const { id } = this.pads[next];
    this.#buttonOf(id)?.focus();
    this.#pick(id);
  };
}

/** A name short enough to stand under its pad; the whole name is said and shown when chosen. */
function shortName(name: string): string {
  return name.replace('auxiliary', 'aux');
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-key-strip': VwKeyStrip;
  }
  interface HTMLElementEventMap {
    'vw-key-change': CustomEvent<{ readonly id: string }>;
  }
}
