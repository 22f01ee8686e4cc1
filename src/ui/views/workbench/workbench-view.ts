import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { LengthUnit } from '../../../documents/length-format.ts';
import '../../parts/vw-choice.ts';
import type { Bench } from '../../shell/bench.ts';
import type { BenchState, ViewName } from '../../state/bench-state.ts';
import { adoptStyles } from '../adopt-styles.ts';
import '../key-study/key-study-view.ts';
import '../scale/scale-view.ts';
import { workbenchStyles } from './workbench-view.styles.ts';

const VIEWS: readonly { readonly name: ViewName; readonly label: string; readonly title: string }[] = [
  { name: 'key', label: 'Key', title: 'Ventwright: one key, every opening' },
  { name: 'scale', label: 'Scale', title: 'Ventwright: the whole horn, live' },
];

const UNITS = [
  { value: 'mm', label: 'mm' },
  { value: 'thou', label: 'inch' },
];

/** The page: what is on the bench, and the view of it. */
@customElement('vw-workbench')
export class VwWorkbench extends LitElement {
  @property({ attribute: false }) bench: Bench | null = null;

  #shown: BenchState | null = null;
  #stop: (() => void) | null = null;

  override createRenderRoot(): HTMLElement {
    adoptStyles(workbenchStyles);
    return this;
  }

  override willUpdate(changed: Map<PropertyKey, unknown>): void {
    if (!changed.has('bench') || this.bench === null) return;
    const { store } = this.bench;
    this.#stop?.();
    this.#stop = store.subscribe(() => {
      const state = store.get();
      const before = this.#shown;
      if (
        before === null ||
        before.view !== state.view ||
        before.hornId !== state.hornId ||
        before.unit !== state.unit ||
        before.alert !== state.alert
      ) {
        this.requestUpdate();
      }
    });
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#stop?.();
  }

  override render(): TemplateResult {
    const { bench } = this;
    if (bench === null) return html``;
    const state = bench.store.get();
    this.#shown = state;
    return html`
      <header class="wb-top">
        <p class="wb-mark">Ventwright</p>
        <nav class="wb-views" aria-label="View">
          ${VIEWS.map(
            ({ name, label }) =>
              html`<a href="#${name}" aria-current=${name === state.view ? 'page' : 'false'}>${label}</a>`,
          )}
        </nav>
        <vw-choice
          label="Horn"
          quiet-label
          data-act="horn"
          .options=${state.shelf.map(({ id, label }) => ({ value: id, label }))}
          .value=${state.hornId}
          @vw-choice-change=${(e: CustomEvent<{ value: string }>) => void bench.takeHorn(e.detail.value)}
        ></vw-choice>
        <vw-choice
          label="Lengths in"
          quiet-label
          data-act="unit"
          .options=${UNITS}
          .value=${state.unit}
          @vw-choice-change=${(e: CustomEvent<{ value: string }>) => bench.setUnit(e.detail.value as LengthUnit)}
        ></vw-choice>
      </header>
      ${this.#alert(state, bench)}
      <div @vw-browser-failure=${this.#failed}>
        ${
          state.view === 'key'
            ? html`<vw-key-study .bench=${bench}></vw-key-study>`
            : html`<vw-scale-view .bench=${bench}></vw-scale-view>`
        }
      </div>
    `;
  }

  #alert({ alert }: BenchState, bench: Bench): TemplateResult {
    return html`
      <div role="alert" class="wb-alert" ?hidden=${alert === null}>
        ${
          alert === null
            ? nothing
            : html`<p>${alert}</p>
                <button type="button" @click=${() => bench.dismissAlert()}>Close</button>`
        }
      </div>
    `;
  }

  override updated(): void {
    const view = this.#shown?.view;
    document.title = VIEWS.find(({ name }) => name === view)?.title ?? document.title;
  }

  #failed = (event: CustomEvent<{ readonly message: string }>): void => {
    this.bench?.tell(event.detail.message);
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-workbench': VwWorkbench;
  }
}
