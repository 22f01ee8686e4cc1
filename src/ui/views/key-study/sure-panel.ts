import { html, nothing, type TemplateResult } from 'lit';
import type { LengthUnit } from '../../../documents/length-format.ts';
import { figureOr } from '../../parts/told.ts';
import '../../parts/vw-sureness.ts';
import type { Bench } from '../../shell/bench.ts';
import { goToField } from './go-to-field.ts';
import type { KeyStudyView } from './key-study-view.model.ts';
import type { NoteSureness } from './study-sureness.model.ts';

/** The parts of the ±, what to measure next, and every note with its ±. */
export function surePanel({ study, unit }: KeyStudyView, bench: Bench): TemplateResult {
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
