import { html, nothing, type TemplateResult } from 'lit';
import type { LengthUnit } from '../../../../documents/length-format.ts';
import { figure } from '../../../parts/told.ts';
import type { Bench } from '../../../shell/bench.ts';
import type { CupCell, CupRow, CupTake, PadFitView } from './pad-fit-view.model.ts';

const KIND_WORDS: Readonly<Record<CupTake['kind'], string>> = {
  fits: '✓ fits',
  'measure each': '✓ measure each pad',
  'nothing fits': '✕ nothing fits',
};

/** One row a cup: its lengths to type, the pad it takes, and what that leaves. */
export function cupsTable({ rows, unit }: PadFitView, bench: Bench): TemplateResult {
  return html`
    <section class="pd-cups" aria-labelledby="pd-cups" @focusin=${() => bench.pads.expectTyping()}>
      <h2 id="pd-cups">Every cup</h2>
      <p class="pd-how">
        Cup floor to rim with the cup held parallel to it. Empty the field to take a reading away. Bars:
        <i class="pad"></i> pad, <i class="bed"></i> bed, <i class="floor"></i> where they must end.
      </p>
      <div role="table" aria-label="Cups and their pads" class="pd-table">
        <div role="row" class="pd-head">
          <span role="columnheader">Key</span>
          ${rows[0].cells.map(({ label }) => html`<span role="columnheader">${label}</span>`)}
          <span role="columnheader">Takes</span>
          <span role="columnheader">Bed</span>
          <span role="columnheader">Batch’s thickest leaves</span>
          <span role="columnheader">thinnest leaves</span>
        </div>
        ${rows.map((row) => cupRow(row, unit, bench))}
      </div>
    </section>
  `;
}

function cupRow(row: CupRow, unit: LengthUnit, bench: Bench): TemplateResult {
  const { take } = row;
  return html`
    <div role="row" class="pd-row ${row.chosen ? 'pd-chosen' : ''}" data-key=${row.id}>
      <span role="rowheader">
        <button
          type="button"
          class="pd-key"
          aria-pressed=${row.chosen ? 'true' : 'false'}
          @click=${() => bench.chooseKey(row.id)}
        >
          <b>${row.number}</b> ${row.name}
        </button>
      </span>
      ${row.cells.map((cell) => cupCell(cell, row, bench))}
      ${
        take === null
          ? html`<span role="cell" class="pd-why">${row.why}</span> <span role="cell" class="pd-none"></span
              ><span role="cell" class="pd-none"></span> <span role="cell" class="pd-none"></span>`
          : html`
              <span role="cell" class="pd-take" data-kind=${take.kind}>
                <b>${KIND_WORDS[take.kind]}</b>
                ${take.kind === 'nothing fits' ? 'nearest ' : ''}${figure(take.reason, unit)} ${bar(take)}
                ${take.says === '' ? nothing : html`<small>${take.says}</small>`}
              </span>
              <span role="cell" class="pd-bed" data-label="Bed">${take.bed}</span>
              <span role="cell" class="pd-bed" data-label="Thickest">${take.batch?.thickest}</span>
              <span role="cell" class="pd-bed" data-label="Thinnest">${take.batch?.thinnest}</span>
            `
      }
      ${row.cells.map(({ id, problem }) =>
        problem === null
          ? nothing
          : html`<span role="cell" class="pd-problem" id="pd-${row.id}-${id}-wrong">${problem}.</span>`,
      )}
    </div>
  `;
}

function bar({ padShare, bedShare, floorShare }: CupTake): TemplateResult {
  return html`
    <span class="pd-bar" aria-hidden="true">
      <i class="pad" style="width:${100 * padShare}%"></i><i class="bed" style="width:${100 * bedShare}%"></i
      ><i class="floor" style="left:${100 * floorShare}%"></i>
    </span>
  `;
}

function cupCell({ id, label, text, echo, problem }: CupCell, row: CupRow, bench: Bench): TemplateResult {
  const told = `pd-${row.id}-${id}`;
  return html`
    <span role="cell" class="pd-cell" data-label=${label}>
      <input
        type="text"
        inputmode="decimal"
        autocomplete="off"
        spellcheck="false"
        data-cell=${id}
        data-shown=${text}
        aria-label="${label} of ${row.name}"
        aria-invalid=${problem === null ? 'false' : 'true'}
        aria-describedby=${problem === null ? told : `${told}-wrong`}
        .value=${text}
        @change=${(e: Event) => void bench.pads.typeCup(row.id, id, (e.target as HTMLInputElement).value)}
        @keydown=${(e: KeyboardEvent) => pressed(e, () => bench.pads.restoreCup(row.id, id))}
      />
      <small id=${told}>${echo}</small>
    </span>
  `;
}

/** Enter goes to the same length of the next cup, Escape shows what is in use again. */
function pressed(event: KeyboardEvent, restore: () => void): void {
  const input = event.target as HTMLInputElement;
  if (event.key === 'Escape') {
    input.value = input.dataset['shown'] ?? '';
    restore();
  }
  if (event.key !== 'Enter') return;
  const cells = [
    ...(input
      .closest('.pd-table')
      ?.querySelectorAll<HTMLInputElement>(`[data-cell="${input.dataset['cell'] ?? ''}"]`) ?? []),
  ];
  const next = cells[cells.indexOf(input) + 1];
  if (next === undefined) input.blur();
  else {
    next.focus();
    next.select();
  }
}

/** What to order, by size and thickness. */
export function orderList(
  { order, orderTotal, toPropose, proposed }: PadFitView,
  bench: Bench,
): TemplateResult | typeof nothing {
  if (order.length === 0) return nothing;
  return html`
    <section class="pd-order" aria-labelledby="pd-order">
      <h2 id="pd-order">To order: ${orderTotal} ${orderTotal === 1 ? 'pad' : 'pads'}</h2>
      <p class="pd-take-them">
        <button type="button" class="rg-quiet" @click=${() => void bench.pads.propose(toPropose)}>
          Propose these pads
        </button>
        <button
          type="button"
          class="rg-quiet"
          ?disabled=${proposed === 0}
          @click=${() => void bench.pads.propose([])}
        >
          Withdraw
        </button>
        <button type="button" class="rg-quiet" @click=${() => print()}>Print this list</button>
      </p>
      <p class="pd-proposed" aria-live="polite">
        ${
          proposed === 0
            ? 'Not proposed yet. Proposed, they come onto the list of work: seats to make, stops to set back.'
            : html`${proposed === 1 ? 'One key gets' : `${proposed} keys get`} another pad; what that asks is
                on <a href="#work">Work</a>.`
        }
      </p>
      <table>
        <thead>
          <tr>
            <th scope="col">Pads</th>
            <th scope="col">Across</th>
            <th scope="col">Thick</th>
            <th scope="col">For</th>
          </tr>
        </thead>
        <tbody>
          ${order.map(
            ({ count, across, thick, pads }) =>
              html`<tr>
                <th scope="row">${count}</th>
                <td>${across}</td>
                <td>${thick}</td>
                <td>${pads}</td>
              </tr>`,
          )}
        </tbody>
      </table>
    </section>
  `;
}
