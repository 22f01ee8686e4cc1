import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench } from '../../shell/bench.ts';
import { DEMO_HORNS } from '../../shell/demo-horns.ts';
import { guidanceOf } from '../../shell/guidance.ts';
import { deskOf, type LibraryDesk } from '../../shell/library-desk.ts';
import { hornInHand } from '../../state/bench-state.ts';
import type { LibraryDeskState } from '../../state/library-desk-state.ts';
import { adoptStyles } from '../adopt-styles.ts';
import { libraryGuides } from './library-guides.ts';
import { hornList } from './library-horns.ts';
import { fileReports } from './library-reports.ts';
import { librarySizes } from './library-sizes.styles.ts';
import { makeLibraryView, type LibraryView } from './library-view.model.ts';
import { libraryStyles } from './library-view.styles.ts';

/** The horns kept in this browser, and the ways in and out of it. */
@customElement('vw-library-view')
export class VwLibraryView extends LitElement {
  @property({ attribute: false }) bench: Bench | null = null;

  #stop: (() => void) | null = null;
  #removed = 0;

  override createRenderRoot(): HTMLElement {
    adoptStyles(libraryStyles, librarySizes);
    return this;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    // A file dropped beside the mark must not take the page away.
    addEventListener('dragover', this.#over);
    addEventListener('dragleave', this.#leave);
    addEventListener('drop', this.#drop);
    if (this.bench !== null) this.#follow(this.bench);
  }

  override willUpdate(changed: Map<PropertyKey, unknown>): void {
    // Put back into the page, it follows already.
    if (changed.has('bench') && this.bench !== null && this.#stop === null) this.#follow(this.bench);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('dragover', this.#over);
    removeEventListener('dragleave', this.#leave);
    removeEventListener('drop', this.#drop);
    this.#stop?.();
    this.#stop = null;
  }

  #follow(bench: Bench): void {
    const desk = deskOf(bench);
    this.#stop?.();
    const named = (): string => {
      const { horn } = hornInHand(bench.store.get()).contents;
      return `${horn.id} ${horn.document.name}`;
    };
    let shown = named();
    const stops = [
      desk.store.subscribe(() => this.requestUpdate()),
      guidanceOf(bench).store.subscribe(() => this.requestUpdate()),
      bench.store.subscribe(() => {
        if (named() === shown) return;
        shown = named();
        this.requestUpdate();
      }),
    ];
    this.#stop = () => stops.forEach((stop) => stop());
    this.#removed = desk.store.get().removed.length;
    void desk.look();
  }

  override render(): TemplateResult {
    const { bench } = this;
    if (bench === null) return html``;
    const desk = deskOf(bench);
    const state = desk.store.get();
    const { document } = hornInHand(bench.store.get()).contents.horn;
    const view = makeLibraryView(state, bench.store.get().hornId);
    return html`
      <main class="lb-page" aria-busy=${state.entries === null ? 'true' : 'false'}>
        <section class="lb-head">
          <h1>${view.title}</h1>
          <p>${view.lead}</p>
          ${state.caution === null ? nothing : html`<p class="lb-caution">${state.caution}</p>`}
        </section>
        ${this.#ways(view, desk)} ${this.#status(view, state, desk)}
        ${state.reports.length === 0 ? nothing : fileReports(state.reports, desk)}
        <section class="lb-list" aria-label="Horns">
          ${view.empty === null ? nothing : html`<p class="vw-empty">${view.empty}</p>`}
          ${hornList(view.rows, desk)}
        </section>
        ${this.#onBench(document.name, desk)} ${this.#examples(bench)} ${libraryGuides(guidanceOf(bench))}
        <p class="lb-drop" aria-hidden="true">Let go to bring the files in</p>
      </main>
    `;
  }

  #ways(view: LibraryView, desk: LibraryDesk): TemplateResult {
    return html`
      <div class="lb-ways">
        <label class="lb-search">
          <span>Search</span>
          <input
            type="search"
            autocomplete="off"
            spellcheck="false"
            placeholder="name, maker, serial, owner, player …"
            ?disabled=${!view.isSearchable}
            .value=${desk.store.get().search}
            @input=${(e: Event) => desk.search((e.target as HTMLInputElement).value)}
          />
        </label>
        <a class="lb-button lb-first" href="#new">New horn</a>
        ${this.#chooser('Bring in files', desk)}
        <button
          type="button"
          class="lb-button"
          data-act="save-all"
          ?disabled=${!view.hasHorns}
          @click=${() => void desk.saveAllAsFile()}
        >
          Save all as one file
        </button>
      </div>
    `;
  }

  #chooser(label: string, desk: LibraryDesk): TemplateResult {
    return html`
      <label class="lb-button lb-chooser">
        <input
          type="file"
          multiple
          accept=".json,.csv,.txt,.tsv,application/json,text/csv"
          @change=${(e: Event) => {
            const input = e.target as HTMLInputElement;
            const files = [...(input.files ?? [])];
            input.value = '';
            if (files.length > 0) void desk.bringIn(files);
          }}
        />
        ${label}
      </label>
    `;
  }

  /** What was last done or went wrong; its place is kept, so that nothing jumps. */
  #status(view: LibraryView, { busy, done, problem }: LibraryDeskState, desk: LibraryDesk): TemplateResult {
    return html`
      <div class="lb-status">
        <p role="status" class=${problem === null ? '' : 'lb-problem'}>
          ${problem ?? (busy === null ? (done ?? view.order) : `${busy} …`)}
        </p>
        ${
          view.undo === null
            ? nothing
            : html`<button
                type="button"
                class="lb-button"
                data-act="undo-removal"
                @click=${() => void desk.undoRemoval()}
              >
                Put back ${view.undo}
              </button>`
        }
      </div>
    `;
  }

  #onBench(name: string, desk: LibraryDesk): TemplateResult {
    return html`
      <section class="lb-bench" aria-labelledby="lb-bench">
        <h2 id="lb-bench">On the bench: ${name}</h2>
        <p>
          As a file it can be carried to another computer, kept or not. The sheet opens in any spreadsheet and
          can be brought in again, onto the horn that is on the bench then.
        </p>
        <p class="lb-acts">
          <button type="button" class="lb-button" @click=${() => desk.saveBenchAsFile()}>
            Save as a file
          </button>
          <button type="button" class="lb-button" @click=${() => desk.saveSheetAsFile(false)}>
            Sheet as CSV
          </button>
          <button type="button" class="lb-button" @click=${() => desk.saveSheetAsFile(true)}>
            Sheet as CSV, decimal commas
          </button>
        </p>
      </section>
    `;
  }

  #examples(bench: Bench): TemplateResult {
    return html`
      <section class="lb-bench" aria-labelledby="lb-examples">
        <h2 id="lb-examples">Examples</h2>
        <p>Invented horns to try things on. A new horn of your own starts from one of them too.</p>
        <p class="lb-acts">
          ${DEMO_HORNS.map(
            ({ id, label }) => html`
              <button type="button" class="lb-button" @click=${() => void this.#take(bench, id)}>
                ${label}
              </button>
            `,
          )}
        </p>
      </section>
    `;
  }

  async #take(bench: Bench, id: string): Promise<void> {
    await bench.takeHorn(id);
    location.hash = '#key';
  }

  override updated(): void {
    const desk = this.bench === null ? null : deskOf(this.bench);
    const removed = desk?.store.get().removed.length ?? 0;
    // What was under the hand is gone: the way back is the next best thing.
    if (removed > this.#removed) this.querySelector<HTMLElement>('[data-act="undo-removal"]')?.focus();
    this.#removed = removed;
  }

  #hasFiles = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') ?? false;

  #over = (event: DragEvent): void => {
    if (!this.#hasFiles(event)) return;
    event.preventDefault();
    this.querySelector('.lb-page')?.classList.add('lb-over');
  };

  #leave = (event: DragEvent): void => {
    if (event.relatedTarget === null) this.querySelector('.lb-page')?.classList.remove('lb-over');
  };

  #drop = (event: DragEvent): void => {
    this.querySelector('.lb-page')?.classList.remove('lb-over');
    if (!this.#hasFiles(event) || this.bench === null) return;
    event.preventDefault();
    void deskOf(this.bench).bringIn([...event.dataTransfer!.files]);
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-library-view': VwLibraryView;
  }
}
