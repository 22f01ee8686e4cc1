import { html, nothing, type TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { styleMap } from 'lit/directives/style-map.js';
import type { LengthUnit } from '../../../documents/length-format.ts';
import type { Origin } from '../../../documents/readings.ts';
import { figureInRow } from '../../parts/told.ts';
import type { Reason } from '../../state/reasons.ts';
import type { CellView } from './sheet-cells.model.ts';
import type { BarView, RowView } from './sheet-rows.model.ts';
import type { SheetView } from './sheet-view.model.ts';

/** A number’s origin by shape, not colour alone. */
export const ORIGIN_MARKS: Readonly<Record<Origin, string>> = { measured: '●', template: '◌', derived: '△' };

/** Read on a visit before: known, and not read today. */
export const BEFORE_MARK = '◐';

const MARKS = { asFound: '', proposed: '▶', asSet: '■' } as const;

/** The rows of every key, to type into. */
export function sheetTable(view: SheetView): TemplateResult {
  const isOpenings = view.columns === 'openings';
  return html`
    <div class="sh-table sh-${view.columns}" role="table" aria-label="Every key">
      <div role="rowgroup" class="sh-head-group">
        <div role="row" class="sh-row sh-row-head">
          <span role="columnheader" class="sh-key">key</span>
          ${view.columnHeads.map((head) => html`<span role="columnheader">${head}</span>`)}
          ${
            isOpenings
              ? html`<span role="columnheader" class="sh-axis"
                    ><span>vent share</span>
                    <span class="sh-axis-ends" aria-hidden="true"
                      ><i>${view.barFromPercent} %</i><i>100 %</i></span
                    ></span
                  >
                  <span role="columnheader">enough, ${view.readAt}</span>
                  <span role="columnheader" class="sh-rules">what rules</span>`
              : nothing
          }
        </div>
      </div>
      ${repeat(
        view.groups,
        ({ name }) => name,
        ({ name, rows }) => html`
          <div role="rowgroup">
            <div role="row" class="sh-group">
              <span role="rowheader">${name}</span>
            </div>
            ${repeat(
              rows,
              ({ pad }) => pad,
              (row) => sheetRow(row, isOpenings, view.unit),
            )}
          </div>
        `,
      )}
    </div>
  `;
}

function sheetRow(row: RowView, isOpenings: boolean, unit: LengthUnit): TemplateResult {
  const problems = row.cells.filter(({ problem }) => problem !== null);
  return html`
    <div role="row" class="sh-row ${row.inHand ? 'sh-in-hand' : ''}" data-pad=${row.pad}>
      <div role="rowheader" class="sh-key">
        <a
          href="#key"
          class="sh-name"
          data-act="study"
          tabindex="-1"
          aria-label="Study pad ${row.number}, ${row.name} key"
          ><b>${row.number}</b> <span>${row.name}</span></a
        >
        <span class="sh-sub">
          ${row.vents === '' ? nothing : html`<span>vents ${row.vents}</span>`}
          ${row.fromExample === 0 ? nothing : html`<span class="sh-example">◌ ${row.fromExample} of 4 not read</span>`}
          ${isOpenings && row.rules !== '' ? html`<span class="sh-rules-small">${row.rules}</span>` : nothing}
        </span>
      </div>
      ${row.cells.map((cell) => sheetCell(row, cell))}
      ${
        isOpenings
          ? html`<div role="cell" class="sh-bar-cell">
                ${row.bar === null ? nothing : bar(row.bar, row.reasons.share, unit)}
              </div>
              <div role="cell" class="sh-enough sh-is-${row.leaving?.kind ?? 'waiting'}">
                ${
                  row.leaving === null
                    ? html`<span class="sh-told">…</span>`
                    : html`<b
                          >${row.reasons.enough === null ? row.leaving.at : figureInRow(row.reasons.enough, unit)}</b
                        >
                        <span class="sh-told">${row.leaving.told}</span>`
                }
              </div>
              <div role="cell" class="sh-rules">${row.rules}</div>`
          : nothing
      }
      ${
        problems.length === 0
          ? nothing
          : html`<div role="cell" class="sh-problems">
              ${problems.map(({ cell, problem }) => html`<p id=${problemId(row.pad, cell)}>${problem}</p>`)}
            </div>`
      }
    </div>
  `;
}

const problemId = (pad: string, cell: string): string => `sh-problem-${pad}-${cell}`;

function sheetCell(row: RowView, cell: CellView): TemplateResult {
  const wrong = cell.problem !== null;
  return html`
    <div role="cell" class="sh-cell" data-column=${cell.cell}>
      <span class="sh-label" aria-hidden="true">${cell.label}</span>
      <input
        type="text"
        autocomplete="off"
        autocapitalize="off"
        spellcheck="false"
        enterkeyhint="next"
        data-pad=${row.pad}
        data-cell=${cell.cell}
        data-shown=${cell.text}
        data-origin=${cell.origin ?? nothing}
        data-read-on=${cell.readOn ?? nothing}
        .value=${cell.text}
        aria-label=${cell.said}
        aria-invalid=${wrong ? 'true' : 'false'}
        aria-describedby=${wrong ? problemId(row.pad, cell.cell) : nothing}
      />
      <span class="sh-known" aria-hidden="true"
        ><span
          >${cell.plusMinus}
          ${cell.origin === null ? nothing : html`<i class="sh-${cell.origin}">${cell.readOn === null ? ORIGIN_MARKS[cell.origin] : BEFORE_MARK}</i>`}
          ${cell.readAt === '' ? nothing : html`<em>${cell.readAt.charAt(0)}</em>`}</span
        >
        <span>${cell.second}</span></span
      >
    </div>
  `;
}

/** Vent share as found, proposed and as set, and where more height stops helping. */
function bar(
  { marks, band, enough, words, as, said }: BarView,
  reason: Reason | null,
  unit: LengthUnit,
): TemplateResult {
  const at = (place: number): ReturnType<typeof styleMap> => styleMap({ left: `${100 * place}%` });
  return html`
    <div class="sh-bar">
      <span class="sh-share"
        >${reason === null ? words : figureInRow(reason, unit)} <small>${as}</small></span
      >
      <span class="sh-track" role="img" aria-label=${said}>
        <span
          class="sh-band"
          style=${styleMap({ left: `${100 * band[0]}%`, width: `${100 * (band[1] - band[0])}%` })}
        ></span>
        ${enough === null ? nothing : html`<span class="sh-tick" style=${at(enough)}></span>`}
        ${marks.map(({ kind, place }) => html`<span class="sh-mark sh-${kind}" style=${at(place)}>${MARKS[kind]}</span>`)}
      </span>
    </div>
  `;
}
