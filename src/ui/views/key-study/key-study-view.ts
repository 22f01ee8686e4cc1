import { html, nothing, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { guard } from 'lit/directives/guard.js';
import type { MeasuringPoint } from '../../../acoustics/index.ts';
import { fetchChartLibrary } from '../../parts/chart/plot-host.ts';
import '../../parts/chart/vw-chart.ts';
import '../../parts/vw-bench-field.ts';
import '../../parts/vw-choice.ts';
import '../../parts/vw-key-strip.ts';
import '../../parts/vw-opening-slider.ts';
import '../../parts/vw-pad-drawing.ts';
import '../../parts/vw-sureness.ts';
import type { LengthUnit } from '../../../documents/length-format.ts';
import { figureOr, told } from '../../parts/told.ts';
import type { Bench } from '../../shell/bench.ts';
import type { Measure } from '../../state/bench-state.ts';
import { goToField } from './go-to-field.ts';
import { HONESTY, makeKeyStudyView, type KeyStudyView, type StudyView } from './key-study-view.model.ts';
import type { NoteSureness } from './study-sureness.model.ts';
import { keyStudySizeStyles } from './key-study-sizes.styles.ts';
import { keyStudyStyles } from './key-study-view.styles.ts';
import { BenchView } from '../bench-view.ts';

const POINTS = [
  { value: 'front', label: 'front' },
  { value: 'centre', label: 'centre' },
  { value: 'back', label: 'back' },
];
const MEASURES = [
  { value: 'pitch', label: 'pitch' },
  { value: 'strength', label: 'strength' },
  { value: 'rise time', label: 'rise time' },
];

/** The key study: how far one key has to open before more height stops helping. */
@customElement('vw-key-study')
export class VwKeyStudy extends BenchView {
  protected override readonly pageStyles = [keyStudyStyles, keyStudySizeStyles];

  /** While the worker runs its first study, the curve's library comes in. */
  override firstUpdated(): void {
    requestAnimationFrame(() =>
      setTimeout(() => {
        // A failure is told by the chart itself, which asks again.
        fetchChartLibrary().catch(() => undefined);
      }),
    );
  }

  override render(): TemplateResult {
    const { bench } = this;
    if (bench === null) return html``;
    const view = makeKeyStudyView(bench.store.get());
    return html`
      <main class="ks-page">
        <section class="ks-keys" aria-label="Choose a key">
          <vw-key-strip
            .pads=${view.strip}
            .value=${view.keyId}
            @vw-key-change=${(e: CustomEvent<{ id: string }>) => bench.chooseKey(e.detail.id)}
          ></vw-key-strip>
          <p class="ks-key"><b>${view.keyTitle}</b> <span>${view.keyDetail}</span></p>
        </section>
        ${this.#answer(view)} ${view.study === null ? this.#blank() : this.#bench(view, view.study, bench)}
        ${this.#sure(view, bench)} ${this.#inputs(view, bench)}
        ${view.study === null ? nothing : this.#table(view.study, view.unit)}
        <footer class="ks-foot">
          ${view.study === null ? nothing : html`<p>${view.study.answer.rule}</p>`}
          ${view.calibrated === null ? html`<p>${HONESTY}</p>` : nothing}
          <p>${view.hornName}: an invented horn. Bending a key to its height is for trained hands.</p>
        </footer>
      </main>
    `;
  }

  #answer(view: KeyStudyView): TemplateResult {
    const { study } = view;
    const cautions = [view.problem, view.calibrated, ...(study?.warnings ?? [])].filter(
      (line) => line !== null,
    );
    return html`
      <section
        class="ks-answer"
        aria-label="Answer"
        aria-live="polite"
        aria-busy=${view.waiting ? 'true' : 'false'}
      >
        <div class="ks-said">
          <h1>
            ${study === null ? 'Working it out from the bore, the holes and the pad…' : told(study.answer.headline, study.reasons.point, view.unit)}
          </h1>
          <p class="ks-standing">
            ${study === null ? nothing : told(study.answer.standing, study.reasons.present, view.unit)}
          </p>
        </div>
        ${
          study === null
            ? nothing
            : html`<div class="ks-why">
                <p>${study.answer.reason}</p>
                <p><strong>${told(study.answer.sure, study.reasons.point, view.unit)}</strong></p>
                <p data-part="tilt">${told(study.answer.tilt, study.reasons.present, view.unit)}</p>
                ${study.answer.links.map(
                  (link) =>
                    html`<p class=${link.pressing ? 'ks-pressing' : ''}>
                      ${link.pressing ? '▶ ' : nothing}${link.text}
                    </p>`,
                )}
              </div>`
        }
        ${
          cautions.length === 0
            ? nothing
            : html`<ul class="ks-cautions" aria-label="Limits of this answer">
                ${cautions.map((line) => html`<li>${line}</li>`)}
              </ul>`
        }
      </section>
    `;
  }

  #blank(): TemplateResult {
    return html`
      <section class="ks-try" aria-hidden="true"></section>
      <section class="ks-side" aria-hidden="true"></section>
      <section class="ks-curve" aria-hidden="true"></section>
    `;
  }

  #bench(view: KeyStudyView, study: StudyView, bench: Bench): TemplateResult {
    const { proposal } = study;
    const { field } = proposal;
    return html`
      <section class="ks-try" aria-label="Proposed opening" @vw-opening-change=${this.#opened}>
        <vw-bench-field
          data-field="proposed"
          .label=${field.label}
          .hint=${field.hint}
          .text=${field.text}
          .echo=${field.echo}
          .problem=${field.problem}
          @focusin=${() => bench.expectTyping()}
          @vw-field-change=${(e: CustomEvent<{ text: string }>) => void bench.type('proposed', e.detail.text)}
          @vw-field-restore=${() => bench.restore('proposed')}
        >
          <vw-choice
            label="Read openings at"
            quiet-label
            data-act="read-at"
            .options=${POINTS}
            .value=${view.readAt}
            @vw-choice-change=${(e: CustomEvent<{ value: string }>) =>
              bench.setReadAt(e.detail.value as MeasuringPoint)}
          ></vw-choice>
          <button
            type="button"
            class="ks-quiet ks-back"
            aria-label=${proposal.takes === null ? 'Propose the opening as found' : 'Propose the opening that is enough'}
            ?disabled=${proposal.taken}
            @click=${() => bench.propose(proposal.takes)}
          >
            ${proposal.takes === null ? '● as found' : '▲ enough'}
          </button>
        </vw-bench-field>
        <vw-opening-slider
          .value=${proposal.frontMm}
          .low=${proposal.lowMm}
          .high=${proposal.highMm}
          .found=${proposal.foundMm}
          .enough=${proposal.enoughMm}
          .valueText=${proposal.valueText}
        ></vw-opening-slider>
        <div class="ks-effect">
          <h2>${proposal.heading}</h2>
          <dl class=${proposal.changes.length > 8 ? 'ks-many' : ''}>
            ${proposal.changes.map(
              (note) =>
                html`<div>
                  <dt>${note.label}</dt>
                  <dd>
                    ${figureOr(note.change, note.reason, view.unit)}${note.plusMinus === '' ? nothing : html`<small> ±&nbsp;${note.plusMinus}</small>`}
                  </dd>
                </div>`,
            )}
            <div class="ks-share">
              <dt>vent share</dt>
              <dd>${proposal.shareWords}</dd>
            </div>
          </dl>
        </div>
      </section>
      <section class="ks-side" aria-label="Side view" @vw-opening-change=${this.#opened}>
        <vw-pad-drawing
          .drawing=${study.drawing}
          .geometry=${study.report.geometry}
          .low=${proposal.lowMm}
          .high=${proposal.highMm}
        ></vw-pad-drawing>
      </section>
      <section class="ks-curve" aria-label="Curve">
        <vw-choice
          label="Curve of"
          data-act="measure"
          .options=${MEASURES}
          .value=${view.measure}
          @vw-choice-change=${(e: CustomEvent<{ value: string }>) => bench.setMeasure(e.detail.value as Measure)}
        ></vw-choice>
        <p class="ks-legend" aria-hidden="true">
          <i></i> low register <i class="dashed"></i> octave register
        </p>
        <vw-chart .model=${study.chart} .proposed=${study.proposed} @vw-chart-drawn=${this.#drawn}></vw-chart>
      </section>
    `;
  }

  /** The parts of the ±, what to measure next, and every note with its ±. */
  #sure({ study, unit }: KeyStudyView, bench: Bench): TemplateResult {
    if (study === null) return html`<section class="ks-sure" aria-hidden="true"></section>`;
    const { panel, notes } = study.sureness;
    return html`
      <section
        class="ks-sure"
        aria-labelledby="ks-sure-title"
        @vw-measure=${(e: HTMLElementEventMap['vw-measure']) => void goToField(bench, e.detail)}
      >
        <h2 id="ks-sure-title">How sure?</h2>
        <vw-sureness .sureness=${panel}></vw-sureness>
        ${notes.length === 0 ? nothing : noteTable(notes, unit)}
      </section>
    `;
  }

  #inputs(view: KeyStudyView, bench: Bench): TemplateResult {
    return html`
      <section class="ks-inputs" aria-labelledby="ks-inputs-title" @focusin=${() => bench.expectTyping()}>
        <h2 id="ks-inputs-title">Measured on this key</h2>
        <p class="ks-how">
          Type 7.9 mm, 7,9, 0.310 in, 5/16 or 310 thou. A plain number is in the unit chosen above; Escape
          shows what is in use again. Read with more care than usual, write its ± with it: 7.9 ± 0.1.
        </p>
        <div class="ks-fields">
          ${view.fields.map(
            (field) => html`
              <vw-bench-field
                class=${field.id === 'openingMm' ? 'ks-wide' : ''}
                data-field=${field.id}
                .label=${field.label}
                .hint=${field.hint}
                .text=${field.text}
                .echo=${field.id === 'openingMm' ? `${field.echo} at the ${view.measuredAt}` : field.echo}
                .problem=${field.id === 'openingMm' ? (field.problem ?? view.measuredAtProblem) : field.problem}
                @vw-field-change=${(e: CustomEvent<{ text: string }>) => void bench.type(field.id, e.detail.text)}
                @vw-field-restore=${() => bench.restore(field.id)}
              >
                ${
                  field.id === 'openingMm'
                    ? html`<vw-choice
                        label="Measured at the"
                        quiet-label
                        data-act="measured-at"
                        .options=${POINTS}
                        .value=${view.measuredAt}
                        @vw-choice-change=${(e: CustomEvent<{ value: string }>) =>
                          void bench.setMeasuredAt(e.detail.value as MeasuringPoint)}
                      ></vw-choice>`
                    : nothing
                }
              </vw-bench-field>
            `,
          )}
        </div>
        <h2>The day</h2>
        <div class="ks-fields">
          ${view.dayFields.map(
            (field) => html`
              <vw-bench-field
                data-field=${field.id}
                .label=${field.label}
                .hint=${field.hint}
                .text=${field.text}
                .echo=${field.echo}
                .problem=${field.problem}
                @vw-field-change=${(e: CustomEvent<{ text: string }>) => void bench.typeDay(field.id, e.detail.text)}
                @vw-field-restore=${() => bench.restoreDay(field.id)}
              ></vw-bench-field>
            `,
          )}
        </div>
        <ul class="ks-paper">
          ${view.inputLines.map((line) => html`<li>${line}</li>`)}
        </ul>
      </section>
    `;
  }

  #table(study: StudyView, unit: LengthUnit): TemplateResult {
    return html`
      <details class="ks-table">
        <summary>The numbers behind the curve</summary>
        <p>${study.chart.summary}</p>
        <div class="ks-scroll" tabindex="0" role="region" aria-label="Table of the curve">
          <table>
            <thead>
              <tr>
                ${study.tableHead.map((cell) => html`<th scope="col">${told(cell, study.headReasons, unit)}</th>`)}
              </tr>
            </thead>
            <tbody>
              ${guard([study.tableRows], () =>
                study.tableRows.map(
                  (row) =>
                    html`<tr>
                      <th scope="row">${row.opening}</th>
                      <td>${row.share}</td>
                      ${row.cells.map((cell) => html`<td>${cell}</td>`)}
                    </tr>`,
                ),
              )}
            </tbody>
          </table>
        </div>
      </details>
    `;
  }

  #opened = (event: CustomEvent<{ readonly frontMm: number }>): void => {
    this.bench?.propose(event.detail.frontMm);
  };

  /** Marks when the first curve is on screen, for whoever measures a cold load. */
  #drawn = (): void => {
    if (performance.getEntriesByName('first-curve').length > 0) return;
    requestAnimationFrame(() => performance.mark('first-curve'));
  };
}

/** Every governed note; a change inside its ± stands pale. */
function noteTable(notes: readonly NoteSureness[], unit: LengthUnit): TemplateResult {
  return html`
    <table class="ks-notes">
      <thead>
        <tr>
          <th scope="col">note</th>
          <th scope="col">cents as found</th>
          <th scope="col">moves to enough, cents</th>
        </tr>
      </thead>
      <tbody>
        ${notes.map(
          ({ id, label, pitch, change, shown, reasons }) =>
            html`<tr data-note=${id}>
              <th scope="row">${label}</th>
              <td>${figureOr(pitch, reasons.pitch, unit)}</td>
              <td class=${shown ? '' : 'ks-pale'}>
                ${figureOr(change, reasons.change, unit)}${shown || change === '–' ? nothing : html`<small>cannot be shown</small>`}
              </td>
            </tr>`,
        )}
      </tbody>
    </table>
  `;
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-key-study': VwKeyStudy;
  }
}
