import { css, html, LitElement, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { controlStyles } from './control.styles.ts';

/** One of a few: what is kept, and what is shown. */
export interface ChoiceOption {
  readonly value: string;
  readonly label: string;
}

/**
 * A row of touches of which one is down.
 *
 * @fires vw-choice-change - when a person picks another
 */
@customElement('vw-choice')
export class VwChoice extends LitElement {
  static override styles = [
    controlStyles,
    css`
      fieldset {
        margin: 0;
        padding: 0;
        border: 0;
        min-width: 0;
        display: flex;
        align-items: center;
        gap: var(--vw-space-2);
      }
      legend {
        float: left;
        padding: 0;
        font-size: var(--vw-text-aside);
        color: var(--vw-soft);
      }
      .row {
        display: flex;
        border: 1px solid var(--vw-soft);
        border-radius: var(--vw-round);
        background: var(--vw-sheet);
        overflow: hidden;
      }
      label {
        position: relative;
        display: grid;
        place-items: center;
        min-height: calc(var(--vw-touch) - 2px);
        min-width: var(--vw-touch);
        padding: 0 var(--vw-choice-pad, 0.6rem);
        font-size: var(--vw-choice-size, 0.9375rem);
        cursor: pointer;
        white-space: nowrap;
      }
      label + label {
        border-left: 1px solid var(--vw-edge);
      }
      input {
        position: absolute;
        inset: 0;
        margin: 0;
        opacity: 0;
        cursor: pointer;
      }
      label:has(:checked) {
        background: var(--vw-try);
        color: var(--vw-on-try);
        font-weight: 600;
      }
      label:has(:focus-visible) {
        outline: 3px solid var(--vw-ink);
        outline-offset: -4px;
      }
    `,
  ];

  /** What is chosen, said before the row. */
  @property() label = '';

  /** Says the label to screen readers only. */
  @property({ type: Boolean, attribute: 'quiet-label' }) quietLabel = false;

  @property({ attribute: false }) options: readonly ChoiceOption[] = [];

  @property() value = '';

  override render(): TemplateResult {
    return html`
      <fieldset>
        <legend class=${this.quietLabel ? 'heard' : ''}>${this.label}</legend>
        <div class="row">
          ${this.options.map(
            (option) => html`
              <label>
                <input
                  type="radio"
                  name="choice"
                  .value=${option.value}
                  .checked=${option.value === this.value}
                  @change=${this.#pick}
                />
                <span>${option.label}</span>
              </label>
            `,
          )}
        </div>
      </fieldset>
    `;
  }

  #pick = (event: Event): void => {
    const input = event.target as HTMLInputElement;
    const value = input.value;
    this.dispatchEvent(
      new CustomEvent('vw-choice-change', { bubbles: true, composed: true, detail: { value } }),
    );
    // What is chosen is the owner's to say: a refused choice goes back to the last one in use.
    void this.updateComplete.then(() => this.#showChosen());
  };

  #showChosen(): void {
    for (const input of this.renderRoot.querySelectorAll('input')) input.checked = input.value === this.value;
  }

  override updated(): void {
    this.#showChosen();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-choice': VwChoice;
  }
  interface HTMLElementEventMap {
    'vw-choice-change': CustomEvent<{ readonly value: string }>;
  }
}
