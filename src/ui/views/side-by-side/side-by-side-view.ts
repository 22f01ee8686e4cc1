import { html, nothing, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { guard } from 'lit/directives/guard.js';
import { live } from 'lit/directives/live.js';
import type { MeasuringPoint } from '../../../acoustics/index.ts';
import '../../parts/chart/vw-side-by-side-chart.ts';
import '../../parts/vw-choice.ts';
import '../../parts/vw-sureness.ts';
import type { Bench } from '../../shell/bench.ts';
import { chooseColumns, type SideOrder } from '../../state/side-by-side-state.ts';
import { BenchView } from '../bench-view.ts';
import { goToField } from '../key-study/go-to-field.ts';
import { keyStudySizeStyles } from '../key-study/key-study-sizes.styles.ts';
import { keyStudyStyles } from '../key-study/key-study-view.styles.ts';
import { columnChooser } from './column-chooser.ts';
import { comparisonTable } from './comparison-table.ts';
import { likePanelStyles } from './like-panel.styles.ts';
import { likePanel } from './like-panel.ts';
import type { DifferenceSureness } from './difference-sureness.model.ts';
import { sideBySideSizeStyles } from './side-by-side-sizes.styles.ts';
import { makeSideBySideView, type SideBySideView } from './side-by-side-view.model.ts';
import type { ComparisonView } from './comparison-view.model.ts';
import { sideBySideStyles } from './side-by-side-view.styles.ts';

const ORDERS: readonly { readonly value: SideOrder; readonly label: string }[] = [
  { value: 'difference', label: 'what differs most' },
  { value: 'pitch', label: 'low to high' },
];
const POINTS: readonly { readonly value: MeasuringPoint; readonly label: string }[] = [
  { value: 'front', label: 'front' },
  { value: 'centre', label: 'centre' },
  { value: 'back', label: 'back' },
];

/** Two to four setups side by side: what the player would notice, every note, every key. */
@customElement('vw-side-by-side')
export class VwSideBySide extends BenchView {
  protected override readonly pageStyles = [
    keyStudyStyles,
    keyStudySizeStyles,
    sideBySideStyles,
    likePanelStyles,
    sideBySideSizeStyles,
  ];

  override render(): TemplateResult {
    const { bench } = this;
    if (bench === null) return html``;
    const view = makeSideBySideView(bench.store.get());
    const { comparison } = view;
    return html`
      <main class=${view.columns.length > 2 ? 'ks-page sd-page many' : 'ks-page sd-page'}>
        ${this.#answer(view)}
        ${columnChooser(view, { choose: (columns) => bench.sideBySide((side) => chooseColumns(side, columns)) })}
        ${view.like === null ? nothing : likePanel(view.like, bench)}
        ${view.nothingApart === null ? nothing : html`<p class="vw-empty">${view.nothingApart.words}</p>`}
        ${comparison === null || view.nothingApart !== null ? nothing : this.#picture(comparison)}
        ${view.sureness === null ? nothing : this.#sure(view.sureness, bench)}
        ${comparison === null || view.nothingApart?.hasTables === false ? nothing : this.#tables(comparison, view, bench)}
        ${view.nothingApart?.hasTables === false ? nothing : this.#foot(comparison)}
      </main>
    `;
  }

  #answer({ comparison, sentences, waiting, problem, hint, day }: SideBySideView): TemplateResult {
    const cautions = [problem, hint, ...(comparison?.cautions ?? [])].filter((line) => line !== null);
    const pads = comparison?.pads ?? null;
    return html`
      <section class="ks-answer sd-answer" aria-label="Answer" aria-busy=${waiting ? 'true' : 'false'}>
        <h1 class=${sentences.length > 1 ? 'several' : ''} aria-live="polite">
          ${
            sentences.length === 0
              ? problem === null
                ? 'Playing every note of each…'
                : 'Nothing can be held side by side yet.'
              : sentences.map((sentence) => html`<span>${sentence}</span> `)
          }
        </h1>
        <p class="sd-day">${day}</p>
        ${
          cautions.length === 0
            ? nothing
            : html`<ul class="ks-cautions" aria-label="Limits of this answer">
                ${cautions.map((line) => html`<li>${line}</li>`)}
              </ul>`
        }
        ${
          pads === null
            ? nothing
            : html`<details class="sd-limits">
                <summary>${pads.summary}</summary>
                <ul>
                  ${pads.list.map((line) => html`<li>${line}</li>`)}
                </ul>
              </details>`
        }
      </section>
    `;
  }

  #foot(comparison: ComparisonView | null): TemplateResult {
    return html`
      <footer class="ks-foot">
        <p>${comparison?.limits ?? nothing}</p>
        <p>
          Filled marks and dark numbers can be shown; hollow marks and pale numbers lie inside their own ±.
          Every opening counts as it stands, links followed.
        </p>
      </footer>
    `;
  }

  #picture({ chart }: ComparisonView): TemplateResult {
    return html`
      <section class="sd-chart" aria-labelledby="sd-chart-title">
        <h2 id="sd-chart-title">Every written note beside ${chart.reference.letter}</h2>
        <vw-side-by-side-chart .model=${chart} @vw-chart-drawn=${this.#drawn}></vw-side-by-side-chart>
        <p class="sd-summary">${chart.summary}</p>
      </section>
    `;
  }

  #tables({ notes, keys }: ComparisonView, view: SideBySideView, bench: Bench): TemplateResult {
    const { unit } = bench.store.get();
    return html`
      <section class="sd-table" aria-labelledby="sd-notes-title">
        <div class="sd-table-head">
          <h2 id="sd-notes-title">Notes</h2>
          <vw-choice
            label="Sorted by"
            data-act="order"
            .options=${ORDERS}
            .value=${view.order}
            @vw-choice-change=${(e: CustomEvent<{ value: string }>) => this.#sort(bench, e.detail.value as SideOrder)}
          ></vw-choice>
        </div>
        ${guard([notes, unit], () => comparisonTable(notes, 'Table of every note', unit))}
      </section>
      <section class="sd-table" aria-labelledby="sd-keys-title">
        <div class="sd-table-head">
          <h2 id="sd-keys-title">Keys</h2>
          <vw-choice
            label="Openings at"
            data-act="at"
            .options=${POINTS}
            .value=${view.at}
            @vw-choice-change=${(e: CustomEvent<{ value: string }>) => bench.setReadAt(e.detail.value as MeasuringPoint)}
          ></vw-choice>
        </div>
        ${guard([keys, unit], () => comparisonTable(keys, 'Table of every key', unit))}
      </section>
    `;
  }

  /** One note's difference: the parts of its ±, and what to measure next. */
  #sure({ noteId, heading, told, panel, options }: DifferenceSureness, bench: Bench): TemplateResult {
    const choose = (event: Event): void => {
      const { value } = event.target as HTMLSelectElement;
      bench.sideBySide((side) => ({ ...side, noteId: value }));
    };
    return html`
      <section
        class="sd-sure"
        aria-labelledby="sd-sure-title"
        @vw-measure=${(e: HTMLElementEventMap['vw-measure']) => void goToField(bench, e.detail)}
      >
        <div class="sd-table-head">
          <h2 id="sd-sure-title">How sure? ${heading}</h2>
          <label class="sd-select sd-note">
            <span>Note</span>
            <select data-act="sure-note" .value=${live(noteId)} @change=${choose}>
              ${options.map(({ id, label }) => html`<option value=${id} ?selected=${id === noteId}>${label}</option>`)}
            </select>
          </label>
        </div>
        <p class="sd-told"><b>${told}</b></p>
        <vw-sureness .sureness=${panel}></vw-sureness>
      </section>
    `;
  }

  #sort(bench: Bench, order: SideOrder): void {
    bench.sideBySide((side) => ({ ...side, order }));
  }

  /** Marks when the first comparison is on screen, for whoever measures a cold load. */
  #drawn = (): void => {
    if (performance.getEntriesByName('first-side-by-side').length > 0) return;
    requestAnimationFrame(() => performance.mark('first-side-by-side'));
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-side-by-side': VwSideBySide;
  }
}
