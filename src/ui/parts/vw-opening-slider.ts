import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import { styleMap } from 'lit/directives/style-map.js';
import { controlStyles } from './control.styles.ts';

/** What one press of an arrow or a button moves the front by, mm. */
const STEP_MM = 0.1;
const THUMB_PX = 34;

/**
 * How far the key is proposed to open at the front.
 *
 * @fires vw-opening-change - while a person moves it
 */
@customElement('vw-opening-slider')
export class VwOpeningSlider extends LitElement {
  static override styles = [
    controlStyles,
    css`
      .line {
        display: flex;
        align-items: center;
        gap: 0.35rem;
      }
      button {
        flex: none;
        width: var(--vw-touch);
        height: var(--vw-touch);
        border: 1px solid var(--vw-soft);
        border-radius: var(--vw-round);
        background: var(--vw-sheet);
        font-size: var(--vw-text-page);
        line-height: 1;
        cursor: pointer;
        touch-action: manipulation;
      }
      .track {
        position: relative;
        flex: 1;
        min-width: 0;
        padding-top: 16px;
      }
      input {
        display: block;
        width: 100%;
        height: var(--vw-touch);
        margin: 0;
        appearance: none;
        background: none;
        cursor: pointer;
        touch-action: pan-y;
      }
      input::-webkit-slider-runnable-track {
        height: 12px;
        border-radius: 6px;
        background: var(--vw-well);
        border: 1px solid var(--vw-soft);
      }
      input::-moz-range-track {
        height: 12px;
        border-radius: 6px;
        background: var(--vw-well);
        border: 1px solid var(--vw-soft);
      }
      input::-webkit-slider-thumb {
        appearance: none;
        width: ${THUMB_PX}px;
        height: ${THUMB_PX}px;
        margin-top: -12px;
        border: 3px solid var(--vw-sheet);
        border-radius: 9px;
        background: var(--vw-try);
        box-shadow: 0 0 0 1px var(--vw-ink);
      }
      input::-moz-range-thumb {
        width: ${THUMB_PX - 6}px;
        height: ${THUMB_PX - 6}px;
        border: 3px solid var(--vw-sheet);
        border-radius: 9px;
        background: var(--vw-try);
        box-shadow: 0 0 0 1px var(--vw-ink);
      }
      .mark {
        position: absolute;
        top: 0;
        width: 0;
        display: flex;
        justify-content: center;
        font-size: var(--vw-text-note);
        line-height: 18px;
        pointer-events: none;
      }
      .mark::after {
        content: '';
        position: absolute;
        top: 17px;
        height: 12px;
        border-left: 2px solid currentcolor;
      }
      .found {
        color: var(--vw-found);
      }
      .enough {
        color: var(--vw-enough);
      }
    `,
  ];

  @property({ type: Number }) value = 0;

  @property({ type: Number }) low = 0;

  @property({ type: Number }) high = 1;

  /** where the key stands as found, mm at the front */
  @property({ type: Number }) found = 0;

  /** where more height stops helping, mm at the front; null where that is nowhere in reach */
  @property({ attribute: false }) enough: number | null = null;

  @property({ attribute: 'value-text' }) valueText = '';

  override render(): TemplateResult {
    return html`
      <div class="line">
        <button type="button" aria-label="lower by 0.1 mm" @click=${() => this.#say(this.value - STEP_MM)}>
          −
        </button>
        <div class="track">
          ${this.#mark('found', '●', this.found)}
          ${this.enough === null ? nothing : this.#mark('enough', '▲', this.enough)}
          <input
            type="range"
            aria-label="Proposed opening"
            aria-valuetext=${this.valueText}
            min=${this.low}
            max=${this.high}
            step=${STEP_MM}
            .value=${live(String(Math.round(this.value * 10) / 10))}
            @input=${this.#moved}
          />
        </div>
        <button type="button" aria-label="raise by 0.1 mm" @click=${() => this.#say(this.value + STEP_MM)}>
          +
        </button>
      </div>
    `;
  }

  #mark(kind: 'found' | 'enough', glyph: string, at: number): TemplateResult {
    const share = Math.min(Math.max((at - this.low) / (this.high - this.low), 0), 1);
    const left = `calc(${THUMB_PX / 2}px + (100% - ${THUMB_PX}px) * ${share})`;
    return html`<span class="mark ${kind}" style=${styleMap({ left })} aria-hidden="true">${glyph}</span>`;
  }

  #moved = (event: Event): void => this.#say((event.target as HTMLInputElement).valueAsNumber);

  #say(frontMm: number): void {
    const rounded = Math.round(Math.min(Math.max(frontMm, this.low), this.high) * 10) / 10;
    this.dispatchEvent(
      new CustomEvent('vw-opening-change', { bubbles: true, composed: true, detail: { frontMm: rounded } }),
    );
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-opening-slider': VwOpeningSlider;
  }
  interface HTMLElementEventMap {
    'vw-opening-change': CustomEvent<{ readonly frontMm: number }>;
  }
}
