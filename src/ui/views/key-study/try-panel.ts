import { html, nothing, type TemplateResult } from 'lit';
import type { MeasuringPoint } from '../../../acoustics/index.ts';
import type { LengthUnit } from '../../../documents/length-format.ts';
import '../../parts/chart/vw-chart.ts';
import '../../parts/vw-bench-field.ts';
import '../../parts/vw-choice.ts';
import '../../parts/vw-opening-slider.ts';
import '../../parts/vw-pad-drawing.ts';
import { figureOr } from '../../parts/told.ts';
import type { Bench } from '../../shell/bench.ts';
import type { Measure } from '../../state/bench-state.ts';
import type { KeyStudyView, StudyView } from './key-study-view.model.ts';
import type { ProposalView } from './proposal.model.ts';

/** Where an opening may be read. */
export const POINTS = [
  { value: 'front', label: 'front' },
  { value: 'centre', label: 'centre' },
  { value: 'back', label: 'back' },
];
const MEASURES = [
  { value: 'pitch', label: 'pitch' },
  { value: 'strength', label: 'strength' },
  { value: 'rise time', label: 'rise time' },
];

/** The proposed opening and what it does, the pad from the side, the curve. */
export function tryPanel(view: KeyStudyView, study: StudyView, bench: Bench): TemplateResult {
  return html`${proposed(view, study, bench)}${fromTheSide(study, bench)}${curve(view, study, bench)}`;
}

function proposed(view: KeyStudyView, { proposal }: StudyView, bench: Bench): TemplateResult {
  const { field } = proposal;
  return html`
    <section class="ks-try" aria-label="Proposed opening" @vw-opening-change=${proposes(bench)}>
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
      ${effectOf(proposal, view.unit)}
    </section>
  `;
}

function effectOf(proposal: ProposalView, unit: LengthUnit): TemplateResult {
  return html`
    <div class="ks-effect">
      <h2>${proposal.heading}</h2>
      <dl class=${proposal.changes.length > 8 ? 'ks-many' : ''}>
        ${proposal.changes.map(
          (note) =>
            html`<div>
              <dt>${note.label}</dt>
              <dd>
                ${figureOr(note.change, note.reason, unit)}${note.plusMinus === '' ? nothing : html`<small> ±&nbsp;${note.plusMinus}</small>`}
              </dd>
            </div>`,
        )}
        <div class="ks-share">
          <dt>vent share</dt>
          <dd>${proposal.shareWords}</dd>
        </div>
      </dl>
    </div>
  `;
}

function fromTheSide({ proposal, drawing, report }: StudyView, bench: Bench): TemplateResult {
  return html`
    <section class="ks-side" aria-label="Side view" @vw-opening-change=${proposes(bench)}>
      <vw-pad-drawing
        .drawing=${drawing}
        .geometry=${report.geometry}
        .low=${proposal.lowMm}
        .high=${proposal.highMm}
      ></vw-pad-drawing>
    </section>
  `;
}

function curve(view: KeyStudyView, study: StudyView, bench: Bench): TemplateResult {
  return html`
    <section class="ks-curve" aria-label="Curve">
      <vw-choice
        label="Curve of"
        data-act="measure"
        .options=${MEASURES}
        .value=${view.measure}
        @vw-choice-change=${(e: CustomEvent<{ value: string }>) => bench.setMeasure(e.detail.value as Measure)}
      ></vw-choice>
      <p class="ks-legend" aria-hidden="true"><i></i> low register <i class="dashed"></i> octave register</p>
      <vw-chart
        .model=${study.chart}
        .proposed=${study.proposed}
        @vw-chart-drawn=${firstCurveDrawn}
      ></vw-chart>
    </section>
  `;
}

function proposes(bench: Bench): (event: CustomEvent<{ readonly frontMm: number }>) => void {
  return (event) => bench.propose(event.detail.frontMm);
}

/** Marks when the first curve is on screen, for whoever measures a cold load. */
function firstCurveDrawn(): void {
  if (performance.getEntriesByName('first-curve').length > 0) return;
  requestAnimationFrame(() => performance.mark('first-curve'));
}
