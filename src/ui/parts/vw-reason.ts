import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { LengthUnit } from '../../documents/length-format.ts';
import type { Reason } from '../state/reasons.ts';
import { GLOSSARY } from './glossary-words.ts';
import { placePanel } from './place-panel.ts';
import { makeReasonView, type ReasonView } from './reason-view.model.ts';
import { reasonStyles } from './vw-reason.styles.ts';

/**
 * A figure that opens its reason: what it is, how it is worked out, from what, how far it holds. The panel takes
 * nothing away from the page: it goes when something else is touched, or with Escape.
 *
 * @slot - the figure as it stands in its line
 */
@customElement('vw-reason')
export class VwReason extends LitElement {
  static override styles = reasonStyles;

  @property({ attribute: false }) reason: Reason | null = null;
  @property({ attribute: false }) unit: LengthUnit = 'mm';

  /** whether the tabulator passes it by, because it goes from field to field there; its row opens it otherwise */
  @property({ type: Boolean }) passed = false;

  @state() private open = false;

  @query('.figure') private button!: HTMLButtonElement;
  @query('.panel') private panel!: HTMLElement;

  #letGo: (() => void) | null = null;
  /** whether the focus was in the panel when it went */
  #wasInside = false;

  override render(): TemplateResult {
    const { reason } = this;
    if (reason === null) return html`<slot></slot>`;
    return html`<button
        type="button"
        class="figure"
        popovertarget="panel"
        tabindex=${this.passed ? -1 : 0}
        aria-haspopup="dialog"
        aria-expanded=${this.open ? 'true' : 'false'}
        aria-description="opens its reason"
      >
        <slot></slot>
      </button>
      <div
        id="panel"
        class="panel"
        popover
        role="dialog"
        aria-label="Why ${reason.figure}"
        tabindex="-1"
        @beforetoggle=${this.#before}
        @toggle=${this.#toggled}
      >
        ${this.open ? this.#content(makeReasonView(reason, GLOSSARY, this.unit)) : nothing}
      </div>`;
  }

  override focus(options?: FocusOptions): void {
    this.button.focus(options);
  }

  /** Opens the reason as a press would. */
  press(): void {
    this.button.focus({ preventScroll: true });
    this.button.click();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#close();
  }

  #content(view: ReasonView): TemplateResult {
    const { title, of, meanings, formula, inputs, parts, remarks, holdsFor, sources, noteHref } = view;
    return html`
      <header>
        <p><b>${view.figure}</b> <span>${title}, ${of}</span></p>
        <button
          type="button"
          class="close"
          aria-label="Close"
          popovertarget="panel"
          popovertargetaction="hide"
        >
          ✕
        </button>
      </header>
      <div class="body">
        ${meanings.map(({ word, meaning }) => html`<p><span class="word">${word}</span>: ${meaning}</p>`)}
        <div>
          <p class="label">Worked out</p>
          <p>${formula}</p>
        </div>
        ${remarks.map((remark) => html`<p>${remark}</p>`)}
        ${
          inputs.length === 0
            ? nothing
            : html`<div>
                <p class="label" id="inputs">From</p>
                <ul aria-labelledby="inputs">
                  ${inputs.map(
                    ({ label, value, from }) =>
                      html`<li>
                        <span>${label}</span> <span>${value}</span> ${
                          from === '' ? nothing : html`<small>${from}</small>`
                        }
                      </li>`,
                  )}
                </ul>
              </div>`
        }
        ${
          parts.length === 0
            ? nothing
            : html`<div>
                <p class="label" id="parts">Its ± is made of</p>
                <ul aria-labelledby="parts">
                  ${parts.map(
                    ({ label, size, known }) =>
                      html`<li>
                        <span>${label}</span> <span>${size}</span> ${
                          known === '' ? nothing : html`<small>${known}</small>`
                        }
                      </li>`,
                  )}
                </ul>
              </div>`
        }
        <div>
          <p class="label">Holds for</p>
          <p>${holdsFor}</p>
        </div>
        <div>
          <p class="label">Source</p>
          <p>${sources}</p>
        </div>
        <a class="note" href=${noteHref}>Read the note</a>
      </div>
    `;
  }

  /** What the panel says is there before it is shown. */
  #before = (event: ToggleEvent): void => {
    this.open = event.newState === 'open';
    if (this.open) this.performUpdate();
    else this.#wasInside = this.panel.contains(this.shadowRoot!.activeElement);
  };

  #toggled = (event: ToggleEvent): void => {
    if (event.newState !== 'open') {
      this.#close();
      // Where nothing else was touched, reading goes on at the figure.
      if (this.#wasInside) this.button.focus({ preventScroll: true });
      return;
    }
    this.#letGo = placePanel(this.panel, this.button);
    this.panel.focus({ preventScroll: true });
  };

  #close(): void {
    this.open = false;
    this.#letGo?.();
    this.#letGo = null;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-reason': VwReason;
  }
}
