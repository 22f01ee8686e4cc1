import { html, nothing, type TemplateResult } from 'lit';
import { figureOr } from '../../parts/told.ts';
import type { Bench } from '../../shell/bench.ts';
import type { BenchState } from '../../state/bench-state.ts';
import { makeCalibrationPanel, type UnknownRow } from './calibration-panel.model.ts';

/** What the notes played say of mouthpiece, air and bell, and whether pitches are worked out with it. */
export function calibrationPanel(bench: Bench, state: BenchState): TemplateResult {
  const panel = makeCalibrationPanel(state);
  if (!panel.usable) {
    return html`<section class="cb-panel" aria-label="Calibration">
      <p class="vw-empty">${panel.answer}</p>
    </section>`;
  }
  return html`
    <section class="cb-panel" aria-labelledby="cb-title" aria-busy=${panel.waiting ? 'true' : 'false'}>
      <h2 id="cb-title">What the notes say of the horn</h2>
      <p class="cb-answer" role="status">${panel.answer}</p>
      ${panel.problem === null ? nothing : html`<p class="vw-unsaid">${panel.problem}</p>`}
      <label class="cb-use">
        <input
          type="checkbox"
          data-act="use-calibration"
          .checked=${panel.inUse}
          @change=${(e: Event) => bench.calibration.use((e.target as HTMLInputElement).checked)}
        />
        <span>Use it for every pitch here</span>
      </label>
      <table class="cb-table">
        <thead>
          <tr>
            <th scope="col">Fit</th>
            <th scope="col">against what is written</th>
            <th scope="col" class="cb-told">how well told</th>
          </tr>
        </thead>
        <tbody>
          ${panel.rows.map((row) => unknownRow(row, bench))}
        </tbody>
      </table>
      <ul class="cb-sentences">
        ${panel.sentences.map((sentence) => html`<li>${sentence}</li>`)}
      </ul>
      <p class="cb-limits">
        A fit is of the model: its numbers are those that make it play as this horn was played. What is left
        of every note, and which key could explain it, is on the <a href="#scale">Scale</a>.
      </p>
    </section>
  `;
}

function unknownRow(
  { unknown, label, fitted, value, reason, narrowed, standing }: UnknownRow,
  bench: Bench,
): TemplateResult {
  return html`
    <tr>
      <th scope="row">
        <label>
          <input
            type="checkbox"
            data-unknown=${unknown}
            .checked=${fitted}
            @change=${(e: Event) => bench.calibration.fit(unknown, (e.target as HTMLInputElement).checked)}
          />
          <span>${label}</span>
        </label>
      </th>
      <td class="cb-value">${figureOr(value, reason, bench.store.get().unit)}</td>
      <td class="cb-told">
        ${
          narrowed === null
            ? nothing
            : html`<span class="cb-bar" aria-hidden="true"
                ><i style=${`width:${(100 * narrowed).toFixed(0)}%`}></i
              ></span>`
        }
        <span class="cb-standing">${standing}</span>
      </td>
    </tr>
  `;
}
