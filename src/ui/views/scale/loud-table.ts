import { html, nothing, type TemplateResult } from 'lit';
import type { LoudChartModel } from '../../parts/chart/loud-figure.ts';
import { makeLoudTable } from './loud-table.model.ts';

/** The numbers behind the picture of loud playing, folded away. */
export function loudTable(chart: LoudChartModel): TemplateResult {
  return html`
    <details class="sc-loud-table">
      <summary>In numbers</summary>
      <table>
        <thead>
          <tr>
            <th scope="col">kPa</th>
            <th scope="col">as found</th>
            ${chart.proposed === null ? nothing : html`<th scope="col">as proposed</th>`}
          </tr>
        </thead>
        <tbody>
          ${makeLoudTable(chart).map(
            ({ pressure, found, proposed }) =>
              html`<tr>
                <th scope="row">${pressure}</th>
                <td>${found}</td>
                ${proposed === null ? nothing : html`<td>${proposed}</td>`}
              </tr>`,
          )}
        </tbody>
      </table>
    </details>
  `;
}
