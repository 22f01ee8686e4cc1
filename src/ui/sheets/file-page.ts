import { html, type TemplateResult } from 'lit';
import type { SheetFile } from '../../documents/player-sheet-file.ts';

/** The page for the shop’s file: every reading of the visit. */
export function filePage(file: SheetFile): TemplateResult {
  return html`
    <header class="ps-file-head">
      <h2>For the shop’s file</h2>
      <p>${file.head}</p>
      <p class="ps-legend">${file.legend}</p>
    </header>
    <div class="ps-scroll" role="region" aria-label="Every reading" tabindex="0">
      <table class="ps-readings">
        <thead>
          <tr>
            <th scope="col">Pad</th>
            ${file.columns.map((label) => html`<th scope="col">${label}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${file.rows.map(
            ({ pad, number, name, cells }) =>
              html`<tr data-reading=${pad}>
                <th scope="row">${number} ${name}</th>
                ${cells.map(({ value, origin }) => html`<td>${value}<small>${origin}</small></td>`)}
              </tr>`,
          )}
        </tbody>
      </table>
    </div>
    <dl class="ps-entries">
      ${file.entries.map(
        ({ label, text }) =>
          html`<div>
            <dt>${label}</dt>
            <dd>${text}</dd>
          </div>`,
      )}
    </dl>
    ${pageFoot(file.foot, 2)}
  `;
}

/** Horn, date and page, at the foot of both pages. */
export function pageFoot({ horn, date }: SheetFile['foot'], page: number): TemplateResult {
  return html`<p class="ps-foot"><span>${horn}</span><span>${date}, page ${page} of 2</span></p>`;
}
