import { html, nothing, type TemplateResult } from 'lit';
import type { LengthUnit } from '../../../documents/length-format.ts';
import { unbroken } from '../../parts/note-names.ts';
import { figure } from '../../parts/told.ts';
import '../../parts/vw-grid-table.ts';
import type { Bench } from '../../shell/bench.ts';
import type { KeyRow, ProposalView } from './proposal-view.model.ts';

/** Every key: as it stands, proposed, why, and its lock. */
export function keysTable({ rows, waiting, unit }: ProposalView, bench: Bench): TemplateResult {
  return html`
    <section class="pp-keys" aria-labelledby="pp-keys" aria-busy=${waiting ? 'true' : 'false'}>
      <h2 id="pp-keys">Every key</h2>
      <p class="pp-how">
        Openings at the front. A locked key stays where it stands, and the rest is worked out around it; locks
        are kept with the visit.
      </p>
      <vw-grid-table
        ><div role="table" aria-label="Every key, as it stands and proposed" class="pp-table">
          <div role="row" class="pp-head">
            <span role="columnheader">Key</span>
            <span role="columnheader">As it stands</span>
            <span role="columnheader">Proposed</span>
            <span role="columnheader">Move</span>
            <span role="columnheader">Why</span>
            <span role="columnheader">Lock</span>
          </div>
          ${rows.map((row) => keyRow(row, unit, bench))}
        </div></vw-grid-table
      >
    </section>
  `;
}

function keyRow(row: KeyRow, unit: LengthUnit, bench: Bench): TemplateResult {
  return html`
    <div role="row" class="pp-row" data-key=${row.pad} data-reason=${row.reason}>
      <span role="rowheader" class="pp-name">
        <a href="#key" @click=${() => bench.chooseKey(row.pad)}><b>${row.number}</b> ${row.name}</a>
        ${
          row.place === null
            ? nothing
            : html`<small class="pp-place" title="Place on the short list">${ordinal(row.place)}</small>`
        }
      </span>
      <span role="cell" class="pp-found" data-label="As it stands">${unbroken(row.found)}</span>
      <span role="cell" class="pp-proposed" data-label="Proposed"
        >${row.opens === null ? 'stays' : figure(row.opens, unit)}</span
      >
      <span role="cell" class="pp-move"
        >${row.move === '' ? html`<i aria-hidden="true">·</i>` : unbroken(row.move)}</span
      >
      <span role="cell" class="pp-why"
        >${unbroken(row.why)}${row.few === null ? nothing : html` <small>${unbroken(row.few)}.</small>`}</span
      >
      <span role="cell" class="pp-lock">
        <button
          type="button"
          class="rg-quiet"
          data-act="lock"
          aria-pressed=${row.locked ? 'true' : 'false'}
          aria-label="Lock ${row.name}"
          @click=${() => bench.proposal.toggleLock(row.pad)}
        >
          ${row.locked ? 'Locked' : 'Lock'}
        </button>
      </span>
    </div>
  `;
}

const ordinal = (place: number): string =>
  place === 1 ? '1st' : place === 2 ? '2nd' : place === 3 ? '3rd' : `${place}th`;
