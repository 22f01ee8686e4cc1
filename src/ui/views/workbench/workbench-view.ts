import { html, nothing, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import type { LengthUnit } from '../../../documents/length-format.ts';
import '../../parts/vw-choice.ts';
import type { Bench } from '../../shell/bench.ts';
import { hornInHand, type BenchState } from '../../state/bench-state.ts';
import { rememberedFold } from '../../shell/remembered-guidance.ts';
import { whenSettled } from '../../shell/settled.ts';
import type { Keeping } from '../../state/keeping.ts';
import type { ViewName } from '../../state/view-names.ts';
import { BenchView } from '../bench-view.ts';
import { newerNotice } from './newer-notice.ts';
import { entryOf, VIEWS } from './views.ts';
import './vw-theme-choice.ts';
import { workbenchStyles } from './workbench-view.styles.ts';

const UNITS = [
  { value: 'mm', label: 'mm' },
  { value: 'thou', label: 'inch' },
];

/** What of the state the head of the page shows. */
function shownOf(state: BenchState): readonly unknown[] {
  const { past, future } = hornInHand(state);
  return [
    state.view,
    state.hornId,
    state.shelf,
    state.unit,
    state.alert,
    state.newer,
    state.keeping,
    past.length === 0,
    future.length === 0,
  ];
}

/**
 * Resolves when the page's head has been painted. A worker gets its first question through the page's own thread: what
 * was asked before is passed on here, and is worked out while the view is drawn.
 */
const oncePainted = (): Promise<void> =>
  new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)));

/** The page: what is on the bench, and the view of it. */
@customElement('vw-workbench')
export class VwWorkbench extends BenchView {
  protected override readonly pageStyles = [workbenchStyles];

  readonly #loaded = new Set<ViewName>();

  protected override drawnFrom(state: BenchState): readonly unknown[] {
    return shownOf(state);
  }

  override connectedCallback(): void {
    super.connectedCallback();
    addEventListener('keydown', this.#shortcut);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('keydown', this.#shortcut);
  }

  override render(): TemplateResult {
    const { bench } = this;
    if (bench === null) return html``;
    const state = bench.store.get();
    const { past, future } = hornInHand(state);
    return html`
      <header class="wb-top">
        <p class="wb-mark">Ventwright</p>
        <nav class="wb-views" aria-label="View">
          ${VIEWS.filter(({ label }) => label !== null).map(
            ({ name, label }) =>
              html`<a href="#${name}" aria-current=${name === entryOf(state.view) ? 'page' : 'false'}
                >${label}</a
              >`,
          )}
        </nav>
        <div class="wb-steps">
          <button
            type="button"
            aria-label="Undo"
            title="Undo: every step since this page was opened"
            ?disabled=${past.length === 0}
            @click=${() => bench.undo()}
          >
            ↶
          </button>
          <button
            type="button"
            aria-label="Redo"
            ?disabled=${future.length === 0}
            @click=${() => bench.redo()}
          >
            ↷
          </button>
        </div>
        <span class="wb-kept wb-${state.keeping.kind}" role="status">${keptWords(state.keeping)}</span>
        <select
          class="wb-horn"
          aria-label="Horn"
          data-act="horn"
          .value=${live(state.hornId)}
          @change=${(e: Event) => void bench.takeHorn((e.target as HTMLSelectElement).value)}
        >
          ${state.shelf.map(
            ({ id, label }) => html`<option value=${id} ?selected=${id === state.hornId}>${label}</option>`,
          )}
        </select>
        <vw-choice
          label="Lengths in"
          quiet-label
          data-act="unit"
          .options=${UNITS}
          .value=${state.unit}
          @vw-choice-change=${(e: CustomEvent<{ value: string }>) => bench.setUnit(e.detail.value as LengthUnit)}
        ></vw-choice>
        <vw-theme-choice></vw-theme-choice>
      </header>
      <div class="wb-alerts">${this.#alert(state, bench)} ${this.#conflict(state, bench)}</div>
      ${state.newer === 'ready' ? newerNotice(bench) : nothing}
      <vw-guidance .bench=${bench} ?data-away=${rememberedFold() === 'away'}></vw-guidance>
      <div @vw-browser-failure=${this.#failed}>${this.#view(state.view, bench)}</div>
      <footer class="wb-foot" ?hidden=${state.view === 'notes'}>
        <a href="#notes">How the numbers are made</a>
      </footer>
    `;
  }

  #view(name: ViewName, bench: Bench): TemplateResult | typeof nothing {
    if (this.#loaded.has(name)) return VIEWS.find((view) => view.name === name)!.show(bench);
    void this.#load(name, true);
    return nothing;
  }

  /** Fetches a view's code. @param told whether a failure is told: only where somebody waits for the view */
  async #load(name: ViewName, told: boolean): Promise<void> {
    const isFirst = this.#loaded.size === 0;
    if (isFirst) {
      await oncePainted();
      void this.#loadGuidance();
    }
    try {
      await VIEWS.find((view) => view.name === name)!.load();
    } catch (error) {
      if (told) this.bench?.tell(`This view could not be fetched: ${String(error)}`);
      return;
    }
    this.#loaded.add(name);
    if (this.bench?.store.get().view === name) this.requestUpdate();
    if (isFirst) void this.#fetchOthers();
  }

  /** What guides stands above what is looked at, and comes with it; without it the bench works all the same. */
  async #loadGuidance(): Promise<void> {
    try {
      await import('./guidance-view.ts');
    } catch (error) {
      this.bench?.tell(`The path of the day could not be fetched: ${String(error)}`);
    }
  }

  /** What is not looked at yet comes in after the first picture, so that it is there without a network. */
  async #fetchOthers(): Promise<void> {
    await whenSettled();
    for (const { name } of VIEWS) if (!this.#loaded.has(name)) await this.#load(name, false);
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

  /** Another tab wrote over what is here: a person says what is kept. */
  #conflict({ keeping }: BenchState, bench: Bench): TemplateResult | typeof nothing {
    if (keeping.kind === 'refused') {
      return html`<div role="alert" class="wb-alert"><p>${keeping.message}</p></div>`;
    }
    if (keeping.kind !== 'conflict') return nothing;
    return html`
      <div role="alert" class="wb-alert">
        <p>Another tab changed this horn meanwhile; what was done here since is not saved.</p>
        <button type="button" @click=${() => void bench.settleConflict('theirs')}>
          Take the other tab’s
        </button>
        <button type="button" @click=${() => void bench.settleConflict('copy')}>Keep this as a copy</button>
      </div>
    `;
  }

  #viewBefore: string | null = null;

  override updated(): void {
    const view = this.bench?.store.get().view;
    // Another view begins with its answer, however far down the one before was read.
    if (this.#viewBefore !== null && view !== this.#viewBefore) scrollTo(0, 0);
    this.#viewBefore = view ?? null;
    document.title = VIEWS.find(({ name }) => name === view)?.title ?? document.title;
  }

  /** Ctrl or ⌘ with Z undoes, with Shift too or with Y redoes; a text under the hand keeps its own undo. */
  #shortcut = (event: KeyboardEvent): void => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey || this.bench === null) return;
    const key = event.key.toLowerCase();
    const act = key === 'z' ? (event.shiftKey ? 'redo' : 'undo') : key === 'y' ? 'redo' : null;
    if (act === null || isBeingTyped(event.composedPath()[0])) return;
    event.preventDefault();
    this.bench[act]();
  };

  #failed = (event: CustomEvent<{ readonly message: string }>): void => {
    this.bench?.tell(event.detail.message);
  };
}

function keptWords({ kind }: Keeping): string {
  switch (kind) {
    case 'untouched':
      return '';
    case 'saving':
      return 'saving…';
    case 'saved':
      return '✓ saved';
    case 'refused':
    case 'conflict':
      return 'not saved';
  }
}

/** Whether a field holds something that has not been taken yet. */
function isBeingTyped(target: EventTarget | undefined): boolean {
  if (target instanceof HTMLTextAreaElement || target instanceof HTMLInputElement) {
    const { shown } = target.dataset;
    return shown === undefined
      ? !['radio', 'range', 'checkbox'].includes(target.type)
      : target.value !== shown;
  }
  return false;
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-workbench': VwWorkbench;
  }
}
