import { html, nothing, type TemplateResult } from 'lit';
import type { LengthUnit } from '../../../documents/length-format.ts';
import { figureOr } from '../../parts/told.ts';
import type { Cell, ComparisonTable } from './comparison-tables.model.ts';

/** A table of what was compared: a row a note or a key, a group of columns a measure. */
export function comparisonTable(table: ComparisonTable, label: string, unit: LengthUnit): TemplateResult {
  const { groups } = table;
  return html`
    <div class="sd-scroll" tabindex="0" role="region" aria-label=${label}>
      <table>
        <thead>
          <tr>
            <th scope="col" rowspan="2" class="sd-first">${table.first}</th>
            ${groups.map(
              ({ title, heads, kind }) =>
                html`<th scope="colgroup" colspan=${heads.length} class=${`sd-opens ${kind}`}>${title}</th>`,
            )}
          </tr>
          <tr>
            ${groups.map(({ heads, kind }) =>
              heads.map(
                ({ letter, reason }, i) =>
                  html`<th scope="col" class=${`${i === 0 ? 'sd-opens ' : ''}${kind}`} data-letter=${letter}>
                    ${figureOr(letter, reason, unit)}
                  </th>`,
              ),
            )}
          </tr>
        </thead>
        <tbody>
          ${table.rows.map(
            ({ id, label: name, cells }) =>
              html`<tr data-row=${id}>
                <th scope="row" class="sd-first">${name}</th>
                ${cells.map((group, g) =>
                  group.map((cell, i) =>
                    cellOf(cell, `${i === 0 ? 'sd-opens ' : ''}${groups[g].kind}`, unit),
                  ),
                )}
              </tr>`,
          )}
        </tbody>
      </table>
    </div>
  `;
}

function cellOf(
  { text, plusMinus, under, shown, reason }: Cell,
  of: string,
  unit: LengthUnit,
): TemplateResult {
  return html`<td class=${shown === false ? `${of} unsure` : of}>
    ${figureOr(text, reason ?? null, unit)}${plusMinus === undefined ? nothing : html`<span class="aside"> ±&nbsp;${plusMinus}</span>`}${under === undefined ? nothing : html`<small>${under}</small>`}
  </td>`;
}
