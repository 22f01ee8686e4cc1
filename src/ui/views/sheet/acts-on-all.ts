import { html, nothing, type TemplateResult } from 'lit';
import type { Bench } from '../../shell/bench.ts';
import type { ActsOnAll } from './sheet-view.model.ts';

/** All keys moved at once, and all proposals taken back. */
export function actsOnAll({ text, problem, proposed }: ActsOnAll, { sheet, store }: Bench): TemplateResult {
  const wrong = problem !== null;
  const submitted = (event: SubmitEvent): void => {
    event.preventDefault();
    const input = (event.currentTarget as HTMLFormElement).elements.namedItem('by') as HTMLInputElement;
    // What was done is told below; what was refused stays to be mended.
    void sheet.shiftAll(input.value).then(() => {
      if (store.get().sheet.shiftTyped === null) input.value = '';
    });
  };
  const pressed = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape') return;
    (event.currentTarget as HTMLInputElement).value = '';
    sheet.restoreShift();
  };
  return html`
    <form data-act="shift-all" @submit=${submitted}>
      <label for="sh-shift">All keys by</label>
      <input
        id="sh-shift"
        name="by"
        type="text"
        autocomplete="off"
        autocapitalize="off"
        spellcheck="false"
        enterkeyhint="done"
        placeholder="1 mm lower"
        .value=${text}
        aria-invalid=${wrong ? 'true' : 'false'}
        aria-describedby=${wrong ? 'sh-shift-problem' : nothing}
        @keydown=${pressed}
      />
      <button type="submit" class="ks-quiet">Propose</button>
    </form>
    <button
      type="button"
      class="ks-quiet"
      data-act="withdraw-all"
      ?disabled=${proposed === 0}
      @click=${() => void sheet.withdrawAll()}
    >
      Withdraw all proposals
    </button>
  `;
}
