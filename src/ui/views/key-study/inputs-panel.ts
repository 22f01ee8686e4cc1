import { html, nothing, type TemplateResult } from 'lit';
import type { MeasuringPoint } from '../../../acoustics/index.ts';
import '../../parts/vw-bench-field.ts';
import '../../parts/vw-choice.ts';
import type { Bench } from '../../shell/bench.ts';
import { dayFields } from '../day-fields.ts';
import type { KeyStudyView } from './key-study-view.model.ts';
import { POINTS } from './try-panel.ts';

/** What was measured on the key, and the day. */
export function inputsPanel(view: KeyStudyView, bench: Bench): TemplateResult {
  return html`
    <section class="ks-inputs" aria-labelledby="ks-inputs-title" @focusin=${() => bench.expectTyping()}>
      <h2 id="ks-inputs-title">Measured on this key</h2>
      <p class="ks-how">
        Type 7.9 mm, 7,9, 0.310 in, 5/16 or 310 thou. A plain number is in the unit chosen above; Escape shows
        what is in use again. Read with more care than usual, write its ± with it: 7.9 ± 0.1.
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
      <div class="ks-fields">${dayFields(view.dayFields, bench)}</div>
      <ul class="ks-paper">
        ${view.inputLines.map((line) => html`<li>${line}</li>`)}
      </ul>
    </section>
  `;
}
