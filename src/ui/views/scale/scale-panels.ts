import { html, nothing, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import '../../parts/chart/vw-loud-chart.ts';
import type { LengthUnit } from '../../../documents/length-format.ts';
import { figureOr, told } from '../../parts/told.ts';
import '../../parts/vw-sureness.ts';
import type { Bench } from '../../shell/bench.ts';
import { goToField } from '../key-study/go-to-field.ts';
import { loudTable } from './loud-table.ts';
import { HEAD_REASONS } from './note-reasons.model.ts';
import { SCALE_HEAD } from './scale-tables.model.ts';
import type { ScaleView, WholeScaleView } from './scale-view.model.ts';

/** The picked note and the keys that govern it. */
export function notePanel(view: ScaleView, { note }: WholeScaleView, bench: Bench): TemplateResult {
  return html`
    <section class="sc-note" aria-labelledby="sc-note-title">
      <div class="sc-note-head">
        <h2 id="sc-note-title">Note ${note.label}</h2>
        <label class="sc-select">
          Pick
          <select
            data-act="note"
            .value=${live(view.noteId)}
            @change=${(e: Event) => bench.chooseNote((e.target as HTMLSelectElement).value)}
          >
            ${note.options.map(
              ({ register, notes }) =>
                html`<optgroup label=${register}>
                  ${notes.map(
                    ({ id, label }) =>
                      html`<option value=${id} ?selected=${id === view.noteId}>${label}</option>`,
                  )}
                </optgroup>`,
            )}
          </select>
        </label>
      </div>
      <p class="sc-note-told">${told(note.told, note.reasons, view.unit)}</p>
      <p>${note.sentence}</p>
      <ul class="sc-governing" aria-label="Keys that govern it, per mm at the front">
        ${note.keys.map(
          (key) =>
            html`<li>
              <button
                type="button"
                aria-pressed=${key.id === view.keyId ? 'true' : 'false'}
                @click=${() => bench.chooseKey(key.id)}
              >
                <span class="name">${key.name}</span>
                <span class="bar" aria-hidden="true"
                  ><i class=${key.flattens ? 'flattens' : ''} style=${`width:${100 * key.share}%`}></i
                ></span>
                <span class="cents">${key.cents}<small> cents</small></span>
                <span class="strength">${key.strength}</span>
              </button>
            </li>`,
        )}
      </ul>
    </section>
  `;
}

/** The parts of its ±, and what to measure next. */
export function surePanel({ note }: WholeScaleView, bench: Bench): TemplateResult {
  const { sure, sureWaits, label } = note;
  return html`
    <section
      class="sc-sure"
      aria-labelledby="sc-sure-title"
      aria-busy=${sureWaits ? 'true' : 'false'}
      @vw-measure=${(e: HTMLElementEventMap['vw-measure']) => void goToField(bench, e.detail)}
    >
      <h2 id="sc-sure-title">How sure? ${label}</h2>
      ${
        sure === null
          ? html`<p>Working out how sure every note is…</p>`
          : sure.panel === null
            ? html`<p>${label} has no resonance near its pitch, and so no ±.</p>`
            : html`<vw-sureness .sureness=${sure.panel}></vw-sureness>
                ${sure.beside === '' ? nothing : html`<p class="sc-beside">${sure.beside}</p>`}`
      }
    </section>
  `;
}

/** What loud playing does to it. */
export function loudPanel({ note }: WholeScaleView): TemplateResult {
  return html`
    <section
      class="sc-loud"
      aria-labelledby="sc-loud-title"
      aria-busy=${note.loud === null ? 'true' : 'false'}
    >
      <h2 id="sc-loud-title">${note.label} played loud <span class="sc-estimate">estimate</span></h2>
      <p>${note.loud?.sentence ?? 'Playing it louder…'}</p>
      <vw-loud-chart .model=${note.loud?.chart ?? null}></vw-loud-chart>
      ${note.loud === null ? nothing : loudTable(note.loud.chart)}
    </section>
  `;
}

/** Other ways of fingering, beside the usual. */
export function alternatesPanel(view: ScaleView, { alternates }: WholeScaleView): TemplateResult {
  return html`
    <section class="sc-alternates" aria-labelledby="sc-alternates-title">
      <h2 id="sc-alternates-title">Alternates</h2>
      <table>
        <thead>
          <tr>
            <th scope="col">fingering</th>
            <th scope="col">against</th>
            <th scope="col">cents apart</th>
            <th scope="col">strength</th>
          </tr>
        </thead>
        <tbody>
          ${alternates.map(
            ({ id, label, against, cents, strength }) =>
              html`<tr class=${id === view.noteId ? 'picked' : ''}>
                <th scope="row">${label}</th>
                <td>${against}</td>
                <td>${cents}</td>
                <td>${strength}</td>
              </tr>`,
          )}
        </tbody>
      </table>
    </section>
  `;
}

/** The numbers behind the chart. */
export function scaleTable(scale: WholeScaleView, unit: LengthUnit): TemplateResult {
  return html`
    <div class="ks-scroll" tabindex="0" role="region" aria-label="Table of every note">
      <table>
        <thead>
          <tr>
            ${SCALE_HEAD.map((cell, i) => html`<th scope="col">${figureOr(cell, HEAD_REASONS[i], unit)}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${scale.rows.map(
            ({ label, cells }) =>
              html`<tr>
                <th scope="row">${label}</th>
                ${cells.map((cell) => html`<td>${cell}</td>`)}
              </tr>`,
          )}
        </tbody>
      </table>
    </div>
  `;
}
