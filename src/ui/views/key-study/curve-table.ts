import { html, type TemplateResult } from 'lit';
import { guard } from 'lit/directives/guard.js';
import type { LengthUnit } from '../../../documents/length-format.ts';
import { told } from '../../parts/told.ts';
import type { StudyView } from './key-study-view.model.ts';

/** The numbers behind the curve. */
export function curveTable(study: StudyView, unit: LengthUnit): TemplateResult {
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
