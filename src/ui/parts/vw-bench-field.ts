import { css, html, LitElement, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import { controlStyles } from './control.styles.ts';

/**
 * A measurement typed the way the bench writes it, with what was understood said back below.
 *
 * @slot - a choice that belongs to the number, such as its measuring point
 * @fires vw-field-change - when a person has finished typing something new
 * @fires vw-field-restore - when a person wants to see what is in use instead of what was typed
 */
@customElement('vw-bench-field')
export class VwBenchField extends LitElement {
  static override shadowRootOptions: ShadowRootInit = {
    ...LitElement.shadowRootOptions,
    delegatesFocus: true,
  };

  static override styles = [
    controlStyles,
    css`
      .line {
        display: flex;
        flex-wrap: wrap;
        gap: var(--vw-space-1) var(--vw-space-2);
      }
      label {
        display: block;
        font-size: var(--vw-text-aside);
        font-weight: 600;
      }
      input {
        flex: 1 1 4.75rem;
        width: 4.75rem;
        min-width: 0;
        min-height: var(--vw-touch);
        padding: 0 0.6rem;
        border: 1px solid var(--vw-soft);
        border-radius: var(--vw-round);
        background: var(--vw-sheet);
        font-size: var(--vw-text-lead);
      }
      input[aria-invalid='true'] {
        border: 2px solid var(--vw-wrong);
        background: var(--vw-wrong-ground);
      }
      .echo,
      .problem {
        margin: 0.1rem 0 0;
        min-height: 1.3em;
        font-size: var(--vw-text-note);
        line-height: 1.3;
        color: var(--vw-soft);
      }
      .problem {
        color: var(--vw-wrong);
        font-weight: 600;
      }
    `,
  ];

  @property() label = '';

  @property() hint = '';

  /** what the field holds, as typed or as the document has it */
  @property() text = '';

  /** what is in use, in every unit */
  @property() echo = '';

  /** what is wrong with the text, or null */
  @property({ attribute: false }) problem: string | null = null;

  override render(): TemplateResult {
    const wrong = this.problem !== null;
    return html`
      <label for="typed">${this.label}</label>
      <div class="line">
        <input
          id="typed"
          type="text"
          autocomplete="off"
          autocapitalize="off"
          spellcheck="false"
          enterkeyhint="done"
          .value=${live(this.text)}
          data-shown=${this.text}
          aria-invalid=${wrong ? 'true' : 'false'}
          aria-describedby="told"
          @change=${this.#typed}
          @keydown=${this.#pressed}
        />
        <slot></slot>
      </div>
      <p id="told" class=${wrong ? 'problem' : 'echo'} aria-live="polite">
        ${wrong ? this.problem : this.hint === '' ? this.echo : `${this.echo} · ${this.hint}`}
      </p>
    `;
  }

  #typed = (event: Event): void => {
    const text = (event.target as HTMLInputElement).value;
    if (text === this.text) return;
    this.dispatchEvent(
      new CustomEvent('vw-field-change', { bubbles: true, composed: true, detail: { text } }),
    );
  };

  /** Enter takes the number and marks it, ready for the next; Escape shows what is in use again. */
  #pressed = (event: KeyboardEvent): void => {
    const input = event.target as HTMLInputElement;
    if (event.key === 'Enter') input.select();
    if (event.key !== 'Escape') return;
    if (this.problem === null) input.value = this.text;
    else this.dispatchEvent(new CustomEvent('vw-field-restore', { bubbles: true, composed: true }));
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-bench-field': VwBenchField;
  }
  interface HTMLElementEventMap {
    'vw-field-change': CustomEvent<{ readonly text: string }>;
    'vw-field-restore': CustomEvent;
  }
}
