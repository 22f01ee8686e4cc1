import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { styleMap } from 'lit/directives/style-map.js';
import { controlStyles } from './control.styles.ts';
import type { PartView } from './plus-minus-parts.model.ts';
import type { MeasureTarget, Sureness, SurenessNext } from './sureness.model.ts';

/**
 * How sure an answer is: the parts of its ±, the greatest first, and what to measure next.
 *
 * @fires vw-measure - when a person wants to type a measurement that would narrow the ±
 */
@customElement('vw-sureness')
export class VwSureness extends LitElement {
  static override styles = [
    controlStyles,
    css`
      :host {
        container-type: inline-size;
        font-size: var(--vw-text-aside);
      }
      .both {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: var(--vw-space-2) var(--vw-space-5);
      }
      @container (min-width: 40rem) {
        .both {
          grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
        }
      }
      p,
      h3,
      ul,
      ol {
        margin: 0;
      }
      .told {
        font-size: var(--vw-text-control);
      }
      h3 {
        font-size: var(--vw-text-aside);
        font-weight: 600;
        color: var(--vw-soft);
      }
      ul,
      ol {
        padding: 0;
        list-style: none;
      }
      .parts li {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        gap: 0 var(--vw-space-3);
        padding: 0.2rem 0 0.25rem;
      }
      .parts .size {
        white-space: nowrap;
        text-align: right;
      }
      .parts small {
        grid-column: 1 / -1;
        font-size: var(--vw-text-note);
        color: var(--vw-soft);
      }
      .bar {
        grid-column: 1 / -1;
        height: 6px;
        background: var(--vw-well);
        print-color-adjust: exact;
      }
      .bar i {
        display: block;
        height: 100%;
        min-width: 2px;
        background: var(--vw-unsure, var(--vw-soft));
      }
      .model .bar i {
        background: repeating-linear-gradient(
          90deg,
          var(--vw-unsure, var(--vw-soft)) 0 5px,
          var(--vw-well) 5px 8px
        );
      }
      .next li {
        padding: 0.25rem 0 0.35rem;
        border-bottom: 1px solid var(--vw-well);
      }
      .next button,
      .next a {
        display: inline-grid;
        place-items: center;
        min-height: var(--vw-touch);
        padding: 0 0.35rem;
        margin-left: -0.35rem;
        color: var(--vw-try);
        text-decoration: underline;
        background: none;
        border: 0;
        cursor: pointer;
      }
      .closing {
        padding-top: 0.25rem;
      }
      @media print {
        .next button,
        .next a {
          display: none;
        }
      }
    `,
  ];

  @property({ attribute: false }) sureness: Sureness | null = null;

  override render(): TemplateResult | typeof nothing {
    const { sureness } = this;
    if (sureness === null) return nothing;
    const { told, parts, next, closing } = sureness;
    return html`
      <p class="told">${told}</p>
      <div class="both">
        <div>
          <h3 id="parts">Its parts, added by their squares</h3>
          <ul class="parts" aria-labelledby="parts">
            ${parts.map(partItem)}
          </ul>
        </div>
        <div>
          <h3 id="next">Measure next</h3>
          ${
            next.length === 0
              ? nothing
              : html`<ol class="next" aria-labelledby="next">
                  ${next.map((each) => this.#next(each))}
                </ol>`
          }
          ${closing === '' ? nothing : html`<p class="closing">${closing}</p>`}
        </div>
      </div>
    `;
  }

  #next({ text, target, link }: SurenessNext): TemplateResult {
    return html`<li>
      <p>${text}</p>
      ${
        target === null
          ? nothing
          : html`<button
              type="button"
              data-pad=${target.pad}
              data-field=${target.field}
              aria-label=${`Type it: ${text}`}
              @click=${() => this.#measure(target)}
            >
              Type it
            </button>`
      }
      ${link === null ? nothing : html`<a href=${link.href}>${link.label}</a>`}
    </li>`;
  }

  #measure(target: MeasureTarget): void {
    this.dispatchEvent(new CustomEvent('vw-measure', { bubbles: true, composed: true, detail: target }));
  }
}

function partItem({ label, known, size, share, kind }: PartView): TemplateResult {
  return html`<li class=${kind}>
    <span>${label}</span> <span class="size">${size}</span>
    <span class="bar" aria-hidden="true"
      ><i style=${styleMap({ width: `${(100 * share).toFixed(1)}%` })}></i
    ></span>
    ${known === '' ? nothing : html`<small>${known}</small>`}
  </li>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-sureness': VwSureness;
  }
  interface HTMLElementEventMap {
    'vw-measure': CustomEvent<MeasureTarget>;
  }
}
