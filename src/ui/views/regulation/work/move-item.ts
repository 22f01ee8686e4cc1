import { html, nothing, type TemplateResult } from 'lit';
import type { Bench } from '../../../shell/bench.ts';
import type { MoveRow } from './work-view.model.ts';

/** One move: what, from where, how it is tested, and what came back. On paper a box and room to write. */
export function moveItem(row: MoveRow, bench: Bench): TemplateResult {
  const { move, number, what, from, test, within, pass, text, problem, ask, hint } = row;
  const told = `wk-told-${number}`;
  return html`
    <li class="wk-move ${number === 1 ? 'wk-next' : ''}" data-move=${move.id}>
      ${pass === null ? nothing : html`<h3>${pass}</h3>`}
      <div class="wk-line">
        <span class="wk-box" aria-hidden="true"></span>
        <p class="wk-what"><span class="wk-number">${number}</span> <b>${what}</b> <span>${from}</span></p>
        <p class="wk-test">${test}; <span>${within}</span></p>
        <div class="wk-acts">
          <label>
            <span>${ask}</span>
            <input
              type="text"
              inputmode="decimal"
              autocomplete="off"
              spellcheck="false"
              data-shown=${text}
              aria-label="${what}: ${ask}"
              aria-invalid=${problem === null ? 'false' : 'true'}
              aria-describedby=${told}
              .value=${text}
              @change=${(e: Event) => void bench.work.typeBack(move, (e.target as HTMLInputElement).value)}
              @keydown=${(e: KeyboardEvent) => {
                if (e.key !== 'Escape') return;
                (e.target as HTMLInputElement).value = '';
                bench.work.restore(move.id);
              }}
            />
          </label>
          <button
            type="button"
            class="wk-check"
            aria-label="Done as asked: ${what}"
            @click=${() => bench.work.checkOff(move)}
          >
            Done
          </button>
          <small id=${told} class=${problem === null ? '' : 'wk-problem'}>${problem ?? hint}</small>
        </div>
      </div>
    </li>
  `;
}
