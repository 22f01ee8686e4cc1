import { html, nothing, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { guard } from 'lit/directives/guard.js';
import { live } from 'lit/directives/live.js';
import '../../parts/chart/vw-scale-chart.ts';
import '../../parts/vw-choice.ts';
import '../../parts/vw-key-strip.ts';
import '../../parts/vw-note-map.ts';
import '../../parts/vw-opening-slider.ts';
import type { Bench } from '../../shell/bench.ts';
import type { NoteNaming, NoteSpan } from '../../state/bench-state.ts';
import type { ScaleNumbers } from '../../state/scale-report.ts';
import { BenchView } from '../bench-view.ts';
import { keyStudySizeStyles } from '../key-study/key-study-sizes.styles.ts';
import { keyStudyStyles } from '../key-study/key-study-view.styles.ts';
import { alternatesPanel, loudPanel, notePanel, scaleTable, surePanel } from './scale-panels.ts';
import { playedNotes } from './played-notes.ts';
import { playedNotesStyles } from './played-notes.styles.ts';
import { scaleChartStyles } from './scale-chart.styles.ts';
import { scaleLowerStyles } from './scale-lower.styles.ts';
import { scalePanelStyles } from './scale-panels.styles.ts';
import { scaleSizeStyles } from './scale-sizes.styles.ts';
import { makeScaleView, type KeySlider, type ScaleView, type WholeScaleView } from './scale-view.model.ts';
import { scaleStyles } from './scale-view.styles.ts';

const NAMINGS = [
  { value: 'written', label: 'written' },
  { value: 'concert', label: 'concert' },
];
const SPANS = [
  { value: 'all', label: 'all' },
  { value: 'low', label: 'low' },
  { value: 'octave', label: 'octave' },
];

/** The whole horn, live: every note as found and as proposed, and which key moves which. */
@customElement('vw-scale-view')
export class VwScaleView extends BenchView {
  /** ends the wait for the next frame */
  #go: () => void = () => undefined;
  #shown: ScaleNumbers | null = null;

  protected override readonly pageStyles = [
    keyStudyStyles,
    keyStudySizeStyles,
    scaleStyles,
    scaleChartStyles,
    scalePanelStyles,
    scaleLowerStyles,
    playedNotesStyles,
    scaleSizeStyles,
  ];

  protected override drawAnew(): void {
    super.drawAnew();
    if (this.#hasNewNumbers()) this.#go();
  }

  #hasNewNumbers(): boolean {
    return this.bench?.store.get().scale.proposed !== this.#shown;
  }

  /**
   * Once per frame, whatever came since the last; but numbers from the physics are drawn as they come, so that
   * the frame under way shows them: there is one answer at a time, and the next is asked for at the next move.
   */
  protected override async scheduleUpdate(): Promise<void> {
    if (this.hasUpdated && !this.#hasNewNumbers()) {
      await new Promise<void>((done) => {
        this.#go = done;
        requestAnimationFrame(() => done());
      });
    }
    super.scheduleUpdate();
  }

  override render(): TemplateResult {
    const { bench } = this;
    if (bench === null) return html``;
    const state = bench.store.get();
    this.#shown = state.scale.proposed;
    const view = makeScaleView(state);
    return html`
      <main
        class="ks-page sc-page"
        @vw-key-change=${(e: CustomEvent<{ id: string }>) => bench.chooseKey(e.detail.id)}
        @vw-note-change=${(e: CustomEvent<{ id: string }>) => bench.chooseNote(e.detail.id)}
      >
        <section class="ks-keys" aria-label="Choose a key">
          <vw-key-strip .pads=${view.strip} .value=${view.keyId}></vw-key-strip>
          <p class="ks-key"><b>${view.keyTitle}</b> <span>${view.keyDetail}</span></p>
        </section>
        ${this.#answer(view, bench)} ${this.#chart(view, bench)} ${this.#try(view, view.slider, bench)}
        ${view.scale === null ? nothing : this.#rest(view, view.scale, bench)}
        <footer class="ks-foot">
          <p>
            Only openings you proposed yourself count here; every other key stands as found. Links are
            followed: a key set lower takes along the pads its arm holds.
          </p>
          <p>Bending a key to its height is for trained hands.</p>
        </footer>
      </main>
    `;
  }

  #answer(view: ScaleView, bench: Bench): TemplateResult {
    const { scale } = view;
    const cautions = [view.problem, view.calibrated, ...(scale?.limits.lines ?? [])].filter(
      (line) => line !== null,
    );
    const pads = scale?.limits.pads ?? null;
    return html`
      <section class="ks-answer" aria-label="Answer" aria-busy=${view.waiting ? 'true' : 'false'}>
        <div class="ks-said">
          <h1>${scale?.answer.headline ?? 'Playing every note from the bore, the holes and the pads…'}</h1>
          <p class="ks-standing">${scale?.answer.standing ?? nothing}</p>
          <p class="sc-heard" aria-live="polite">${scale?.restedHeadline ?? nothing}</p>
        </div>
        ${
          scale === null
            ? nothing
            : html`<div class="ks-why">
                <p><strong>${scale.answer.sure}</strong></p>
                ${this.#proposals(scale, bench)}
              </div>`
        }
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
            : html`<details class="sc-limits">
                <summary>${pads.summary}</summary>
                <ul>
                  ${pads.list.map((line) => html`<li>${line}</li>`)}
                </ul>
              </details>`
        }
      </section>
    `;
  }

  #proposals({ proposals }: WholeScaleView, bench: Bench): TemplateResult {
    if (proposals.length === 0) return html`<p class="sc-proposed">Every key stands as found.</p>`;
    return html`
      <p class="sc-proposed">
        Proposed otherwise than found, at the front:
        <button type="button" class="sc-back" @click=${() => bench.withdrawProposals()}>all as found</button>
      </p>
      <ul class="sc-chips">
        ${proposals.map(
          ({ id, words }) =>
            html`<li>
              <button type="button" class="ks-quiet" @click=${() => bench.chooseKey(id)}>${words}</button>
            </li>`,
        )}
      </ul>
      <ul class="ks-paper">
        ${proposals.map(({ onPaper }) => html`<li>${onPaper}</li>`)}
      </ul>
    `;
  }

  #chart(view: ScaleView, bench: Bench): TemplateResult {
    const { scale } = view;
    return html`
      <section class="ks-curve sc-chart" aria-label="Every note">
        <div class="sc-tools">
          <vw-choice
            label="Show"
            quiet-label
            data-act="span"
            .options=${SPANS}
            .value=${view.span}
            @vw-choice-change=${(e: CustomEvent<{ value: string }>) => bench.setSpan(e.detail.value as NoteSpan)}
          ></vw-choice>
          <vw-choice
            label="Note names"
            quiet-label
            data-act="naming"
            .options=${NAMINGS}
            .value=${view.naming}
            @vw-choice-change=${(e: CustomEvent<{ value: string }>) => bench.setNaming(e.detail.value as NoteNaming)}
          ></vw-choice>
          <label class="sc-select">
            A4
            <select
              data-act="a4"
              .value=${live(String(view.a4Hz))}
              @change=${(e: Event) => bench.setA4(Number((e.target as HTMLSelectElement).value))}
            >
              ${view.a4Choices.map(
                (hz) => html`<option value=${hz} ?selected=${hz === view.a4Hz}>${hz} Hz</option>`,
              )}
            </select>
          </label>
          <p class="ks-legend sc-legend" aria-hidden="true">
            <span class="found">○ as found</span> <span class="proposed">● as proposed</span>
            <span>◇ alternate</span>
            ${scale?.chart.played === null ? nothing : html`<span>× as played</span>`}
          </p>
        </div>
        ${
          scale === null
            ? nothing
            : html`<vw-scale-chart
                .model=${scale.chart}
                .live=${scale.live}
                .tell=${scale.tell}
                @vw-chart-drawn=${this.#drawn}
              ></vw-scale-chart>`
        }
      </section>
    `;
  }

  #try(view: ScaleView, slider: KeySlider | null, bench: Bench): TemplateResult {
    return html`
      <section
        class="ks-try sc-try"
        aria-label="Proposed opening"
        @vw-opening-change=${(e: CustomEvent<{ frontMm: number }>) => bench.propose(e.detail.frontMm)}
      >
        <h2>${view.keyTitle}</h2>
        ${
          slider === null
            ? html`<p class="sc-reading">How far it can go is on its way…</p>`
            : html`
                <p class="sc-reading">
                  <b>${slider.valueText}</b> ${slider.proposed ? 'proposed' : 'as found'}
                </p>
                <vw-opening-slider
                  data-key=${view.keyId}
                  .value=${slider.frontMm}
                  .low=${slider.lowMm}
                  .high=${slider.highMm}
                  .found=${slider.foundMm}
                  .enough=${slider.enoughMm}
                  .valueText=${slider.valueText}
                ></vw-opening-slider>
                <div class="sc-set">
                  <button
                    type="button"
                    class="ks-quiet"
                    ?disabled=${!slider.proposed}
                    @click=${() => bench.propose(null)}
                  >
                    ● as found
                  </button>
                  <button
                    type="button"
                    class="ks-quiet"
                    ?disabled=${slider.enoughTaken}
                    @click=${() => bench.propose(slider.enoughMm)}
                  >
                    ▲ enough
                  </button>
                  <a class="sc-link" href="#key">Study this key</a>
                </div>
              `
        }
      </section>
    `;
  }

  #rest(view: ScaleView, scale: WholeScaleView, bench: Bench): TemplateResult {
    return html`
      ${notePanel(view, scale, bench)} ${surePanel(scale, bench)}
      ${playedNotes(scale.played, view.noteId, bench)} ${loudPanel(scale)}
      <section class="sc-map" aria-labelledby="sc-map-title">
        <h2 id="sc-map-title">Which key moves which note, ${scale.moved ? 'as proposed' : 'as found'}</h2>
        <vw-note-map .map=${scale.map} .note=${view.noteId} .key=${view.keyId}></vw-note-map>
      </section>
      ${alternatesPanel(view, scale)}
      <details class="ks-table">
        <summary>The numbers behind the chart</summary>
        <p>${scale.chart.summary}</p>
        ${guard([scale.rows, view.unit], () => scaleTable(scale, view.unit))}
      </details>
      <section class="sc-paper-table">
        ${guard([scale.rows, view.unit], () => scaleTable(scale, view.unit))}
      </section>
    `;
  }

  /** Marks when the first scale is on screen, for whoever measures a cold load. */
  #drawn = (): void => {
    if (performance.getEntriesByName('first-scale').length > 0) return;
    requestAnimationFrame(() => performance.mark('first-scale'));
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-scale-view': VwScaleView;
  }
}
