import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { controlStyles } from '../../parts/control.styles.ts';
import '../../parts/vw-choice.ts';
import { chooseTheme, rememberedTheme, type ThemeChoice } from '../../shell/theme.ts';

const CHOICES: readonly { readonly value: ThemeChoice; readonly label: string }[] = [
  { value: 'light', label: 'Light' },
  { value: 'dark', label: 'Dark' },
  { value: 'machine', label: 'As the machine' },
];

/** Light or dark: one button in the head that lets the three choices down below it. */
@customElement('vw-theme-choice')
export class VwThemeChoice extends LitElement {
  static override styles = [
    controlStyles,
    css`
      :host {
        position: relative;
      }
      button {
        display: grid;
        place-items: center;
        width: var(--vw-touch);
        height: var(--vw-touch);
        padding: 0;
        color: var(--vw-head-ink);
        background: none;
        border: 1px solid var(--vw-head-edge);
        border-radius: var(--vw-round);
        cursor: pointer;
      }
      button:focus-visible {
        outline: 3px solid var(--vw-head-ink);
        outline-offset: 1px;
      }
      svg {
        width: 20px;
        height: 20px;
      }
      .ring {
        fill: none;
        stroke: currentcolor;
        stroke-width: 2;
      }
      .half {
        fill: currentcolor;
      }
      .let-down {
        position: absolute;
        top: calc(100% + var(--vw-space-1));
        right: 0;
        z-index: 6;
        padding: var(--vw-space-2);
        color: var(--vw-ink);
        background: var(--vw-sheet);
        border: 1px solid var(--vw-soft);
        border-radius: var(--vw-round);
      }
    `,
  ];

  @state() private open = false;
  @state() private choice: ThemeChoice = rememberedTheme();

  override connectedCallback(): void {
    super.connectedCallback();
    addEventListener('storage', this.#recall);
    addEventListener('pointerdown', this.#elsewhere);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('storage', this.#recall);
    removeEventListener('pointerdown', this.#elsewhere);
  }

  override render(): TemplateResult {
    return html`
      <div @keydown=${this.#keyed} @focusout=${this.#left}>
        <button
          type="button"
          aria-label="Light or dark"
          aria-expanded=${this.open ? 'true' : 'false'}
          @click=${() => (this.open = !this.open)}
        >
          <svg viewBox="0 0 20 20" aria-hidden="true">
            <circle class="ring" cx="10" cy="10" r="8" />
            <path class="half" d="M10 2a8 8 0 0 0 0 16z" />
          </svg>
        </button>
        ${this.open ? this.#choices() : nothing}
      </div>
    `;
  }

  #choices(): TemplateResult {
    return html`<div class="let-down">
      <vw-choice
        label="Light or dark"
        quiet-label
        .options=${CHOICES}
        .value=${this.choice}
        @vw-choice-change=${(event: CustomEvent<{ readonly value: string }>) =>
          this.#pick(event.detail.value as ThemeChoice)}
      ></vw-choice>
    </div>`;
  }

  #pick(choice: ThemeChoice): void {
    this.choice = choice;
    chooseTheme(choice);
  }

  #recall = (): void => {
    this.choice = rememberedTheme();
  };

  #elsewhere = (event: Event): void => {
    if (this.open && !event.composedPath().includes(this)) this.open = false;
  };

  #left = (event: FocusEvent): void => {
    const to = event.relatedTarget;
    if (to instanceof Node && !this.renderRoot.contains(to)) this.open = false;
  };

  #keyed = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape' || !this.open) return;
    this.open = false;
    this.renderRoot.querySelector('button')!.focus();
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-theme-choice': VwThemeChoice;
  }
}
