import { html, nothing, type TemplateResult } from 'lit';
import type { Bench } from '../../shell/bench.ts';
import type { PlayedRow, TakeView } from './played-view.model.ts';

/** One fingering: where cents are typed, what its takes come to, and each of them. */
export function playedRow(row: PlayedRow, bench: Bench): TemplateResult {
  const { id, label, typed } = row;
  const problemId = `pl-problem-${id.replaceAll(/[^a-zA-Z0-9]/g, '-')}`;
  return html`
    <tr class=${row.cents === '' ? '' : 'pl-logged'}>
      <th scope="row">${label}</th>
      <td class="pl-target">${row.target}</td>
      <td>
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
      <td>${takeList(label, row.takes, bench)}</td>
    </tr>
  `;
}

/** Logs what was typed; the field is empty again once it is logged, unless a hand has gone on in it. */
async function logTyped(id: string, input: HTMLInputElement, bench: Bench): Promise<void> {
  const { value } = input;
  await bench.played.typeCents(id, value);
  const isRefused = bench.store.get().played.typed[id] !== undefined;
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

function takeList(label: string, takes: readonly TakeView[], bench: Bench): TemplateResult | typeof nothing {
  if (takes.length === 0) return nothing;
  return html`
    <details class="pl-takes">
      <summary aria-label=${`Takes of ${label}: ${takes.length}`}>${takes.length}</summary>
      <ul>
        ${takes.map(
          ({ index, words, leftOut }) => html`
            <li class=${leftOut ? 'pl-aside' : ''}>
              <span>${words}${leftOut ? ', set aside' : ''}</span>
              <button
                type="button"
                class="pl-small"
                @click=${() => void bench.played.setAside(index, !leftOut)}
              >
                ${leftOut ? 'Count it' : 'Set aside'}
              </button>
              <button type="button" class="pl-small" @click=${() => void bench.played.remove(index)}>
                Remove
              </button>
            </li>
          `,
        )}
      </ul>
    </details>
  `;
}
