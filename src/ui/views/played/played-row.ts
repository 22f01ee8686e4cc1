import { html, nothing, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import type { Bench } from '../../shell/bench.ts';
import { refusedOf } from '../../state/played-log.ts';
import type { PlayedRow, TakeView } from './played-view.model.ts';

/** One fingering: where cents are typed, what its takes come to, and each of them. */
export function playedRow(row: PlayedRow, bench: Bench): TemplateResult {
  const { id, label, typed } = row;
  const problemId = `pl-problem-${id.replaceAll(/[^a-zA-Z0-9]/g, '-')}`;
  return html`
    <tr class=${row.takes.length === 0 ? '' : 'pl-logged'}>
      <th scope="row">${label}</th>
      <td class="pl-target">${row.target}</td>
      <td class="pl-typed">
        <input
          type="text"
          inputmode="text"
          autocomplete="off"
          spellcheck="false"
          data-note=${id}
          data-shown=${typed?.text ?? ''}
          aria-label=${`Cents of ${label}`}
          aria-invalid=${typed === null ? 'false' : 'true'}
          aria-describedby=${typed === null ? nothing : problemId}
          .value=${typed?.text ?? ''}
          @change=${(e: Event) => void logTyped(id, e.target as HTMLInputElement, bench)}
          @keydown=${onKey}
        />
        ${typed === null ? nothing : html`<p class="pl-problem" id=${problemId}>${typed.problem}</p>`}
      </td>
      <td class="pl-cents">${row.cents} <span>${row.spread}</span></td>
      <td class="pl-count">${takeCount(row, bench)}</td>
    </tr>
    ${row.isOpen && row.takes.length > 0 ? takeRows(row, bench) : nothing}
  `;
}

/** Logs what was typed; the field is empty again once it is logged, unless a hand has gone on in it. */
async function logTyped(id: string, input: HTMLInputElement, bench: Bench): Promise<void> {
  const { value } = input;
  await bench.played.typeCents(id, value);
  const isRefused = refusedOf(bench.store.get())[id] !== undefined;
  if (!isRefused && input.value === value) input.value = '';
}

/** Enter goes on to the next note, as down the column of a sheet. */
function onKey(event: KeyboardEvent): void {
  if (event.key !== 'Enter') return;
  const input = event.target as HTMLInputElement;
  const inputs = [...input.closest('table')!.querySelectorAll<HTMLInputElement>('input[data-note]')];
  const next = inputs[inputs.indexOf(input) + (event.shiftKey ? -1 : 1)];
  if (next === undefined) input.blur();
  else next.focus();
}

/** How many takes there are, and what lays them open. */
function takeCount({ id, label, takes, isOpen }: PlayedRow, bench: Bench): TemplateResult | typeof nothing {
  if (takes.length === 0) return nothing;
  return html`
    <button
      type="button"
      class="pl-small"
      aria-label=${`Takes of ${label}: ${takes.length}`}
      aria-expanded=${isOpen ? 'true' : 'false'}
      @click=${() => bench.played.open(isOpen ? null : id)}
    >
      ${takes.length} ${isOpen ? '▴' : '▾'}
    </button>
  `;
}

/** Every take of a note, under its row. */
function takeRows({ id, label, takes }: PlayedRow, bench: Bench): TemplateResult {
  return html`
    <tr class="pl-takes pl-logged">
      <td colspan="5">
        <ul aria-label=${`Takes of ${label}`}>
          ${takes.map((take) => takeLine(id, take, bench))}
        </ul>
      </td>
    </tr>
  `;
}

function takeLine(id: string, { index, words, leftOut, choices }: TakeView, bench: Bench): TemplateResult {
  return html`
    <li class=${leftOut ? 'pl-aside' : ''}>
      <span>${words}${leftOut ? ', set aside' : ''}</span>
      <select
        aria-label="Fingering it was played with"
        .value=${live(id)}
        @change=${(e: Event) => void bench.played.reassign(index, (e.target as HTMLSelectElement).value)}
      >
        ${choices.map(
          (choice) => html`<option value=${choice.id} ?selected=${choice.id === id}>${choice.label}</option>`,
        )}
      </select>
      <button type="button" class="pl-small" @click=${() => void bench.played.setAside(index, !leftOut)}>
        ${leftOut ? 'Count it' : 'Set aside'}
      </button>
      <button type="button" class="pl-small" @click=${() => void bench.played.remove(index)}>Remove</button>
    </li>
  `;
}
