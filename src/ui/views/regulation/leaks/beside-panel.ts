import { html, nothing, type TemplateResult } from 'lit';
import { guard } from 'lit/directives/guard.js';
import { figureOr } from '../../../parts/told.ts';
import '../../../parts/vw-grid-table.ts';
import type { LengthUnit } from '../../../../documents/length-format.ts';
import type { LeaksActs } from '../../../shell/leaks-acts.ts';
import type { BesideView, HeightRow, LeakRow } from './beside.model.ts';
import type { LeaksView } from './leaks-view.model.ts';

/** What the heights of a note’s keys can still bring beside what leaks would cost it, on one scale. */
export function besidePanel(view: LeaksView, acts: LeaksActs): TemplateResult {
  const { beside, unit, fault, noteLabel } = view;
  const inHand = fault.source.kind === 'seat' ? fault.pad : null;
  return html`
    <section
      class="lk-beside"
      aria-label="Height beside leak"
      aria-busy=${beside === null ? 'true' : 'false'}
    >
      ${
        beside === null
          ? html`<p class="vw-waiting">
              Playing ${noteLabel} with every key at enough and every pad leaking…
            </p>`
          : guard([beside, unit, inHand], () => [
              heightsTable(beside, noteLabel, unit, acts),
              leaksTable(beside, noteLabel, { unit, inHand, acts }),
            ])
      }
    </section>
  `;
}

function heightsTable(
  { heights, fullDb }: BesideView,
  note: string,
  unit: LengthUnit,
  acts: LeaksActs,
): TemplateResult {
  return html`
    <div class="rg-panel">
      <h2>What height would still bring ${note}</h2>
      ${
        heights.length === 0
          ? html`<p>No key’s height moves it by a cent.</p>`
          : html`<div
              class="rg-scroll rg-wide"
              tabindex="0"
              role="region"
              aria-label="Keys whose height the note hears"
            >
              <vw-grid-table
                ><table>
                  <thead>
                    <tr>
                      <th scope="col">key</th>
                      <th scope="col" aria-sort="descending">brings, most first ▼</th>
                      <th scope="col">cents</th>
                      <th scope="col">stands at</th>
                      <th scope="col">enough</th>
                    </tr>
                  </thead>
                  <tbody>
                    ${heights.map((row) => heightRow(row, unit, acts))}
                  </tbody>
                </table></vw-grid-table
              >
            </div>`
      }
      ${heights.length === 0 ? nothing : html`<p class="rg-swipe">Swipe the table for cents and openings ▸</p>`}
      <p class="lk-scale">Bars of both lists are on one scale; the longest is ${fullDb}.</p>
    </div>
  `;
}

function heightRow(row: HeightRow, unit: LengthUnit, acts: LeaksActs): TemplateResult {
  return html`<tr>
    <th scope="row">
      <a class="rg-row" href="#key" data-height=${row.pad} @click=${() => acts.studyKey(row.pad)}
        >${row.name}</a
      >
    </th>
    <td class="lk-db lk-brings" style=${`--share:${row.share}`}>
      ${figureOr(row.gain.text, row.gain.reason, unit)}
    </td>
    <td>${row.cents}</td>
    <td>${row.stands}</td>
    <td>${row.enough}</td>
  </tr>`;
}

/** What a row of leaks needs besides itself. */
interface LeakManner {
  readonly unit: LengthUnit;
  /** the pad whose own seat is the leak in hand; null for a link */
  readonly inHand: string | null;
  readonly acts: LeaksActs;
}

function leaksTable({ leaks, lesser }: BesideView, note: string, manner: LeakManner): TemplateResult {
  return html`
    <div class="rg-panel">
      <h2>What a leak under one pad would cost ${note}</h2>
      ${
        leaks.length === 0
          ? html`<p>It shuts no pad that could leak.</p>`
          : html`<div class="rg-scroll rg-wide" tabindex="0" role="region" aria-label="Pads the note shuts">
                <vw-grid-table
                  ><table>
                    <thead>
                      <tr>
                        <th scope="col">pad</th>
                        <th scope="col" aria-sort="descending">two papers, worst first ▼</th>
                        <th scope="col">one paper</th>
                        <th scope="col">cents at two</th>
                        <th scope="col">shut by</th>
                      </tr>
                    </thead>
                    <tbody>
                      ${leaks.map((row) => leakRow(row, manner))}
                    </tbody>
                  </table></vw-grid-table
                >
              </div>
              <p class="rg-swipe">Swipe the table for cents, and for what shuts the pad ▸</p>`
      }
      ${lesser.length === 0 ? nothing : lesserTable(lesser, manner)}
    </div>
  `;
}

function lesserTable(lesser: readonly LeakRow[], manner: LeakManner): TemplateResult {
  return html`
    <details class="lk-lesser">
      <summary>${lesser.length} more ${lesser.length === 1 ? 'pad' : 'pads'} that would cost less</summary>
      <div class="rg-scroll rg-wide" tabindex="0" role="region" aria-label="Pads that would cost less">
        <vw-grid-table
          ><table aria-label="pad, two papers, one paper, cents at two papers, shut by">
            <tbody>
              ${lesser.map((row) => leakRow(row, manner))}
            </tbody>
          </table></vw-grid-table
        >
      </div>
    </details>
  `;
}

function leakRow(row: LeakRow, { unit, inHand, acts }: LeakManner): TemplateResult {
  return html`<tr class=${row.pad === inHand ? 'rg-picked' : ''}>
    <th scope="row">
      <button
        type="button"
        class="rg-row"
        data-leak=${row.pad}
        aria-pressed=${row.pad === inHand ? 'true' : 'false'}
        @click=${() => acts.atPad(row.pad)}
      >
        ${row.name}
      </button>
    </th>
    <td class="lk-db" style=${`--share:${row.shareTwo}`}>${figureOr(row.two.text, row.two.reason, unit)}</td>
    <td class="lk-db" style=${`--share:${row.shareOne}`}>${figureOr(row.one.text, row.one.reason, unit)}</td>
    <td>${row.cents}</td>
    <td>${row.shutBy === 'spring' ? 'its spring' : 'fingers'}</td>
  </tr>`;
}
