import { html, nothing, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { Bench } from '../../../shell/bench.ts';
import { hornInHand, type BenchState } from '../../../state/bench-state.ts';
import { BenchView } from '../../bench-view.ts';
import { answerStyles } from '../answer.styles.ts';
import { regulationTabs, regulationTabsStyles } from '../regulation-tabs.ts';
import { moveItem } from './move-item.ts';
import { seatsPanel } from './seats-panel.ts';
import { workSizeStyles } from './work-sizes.styles.ts';
import { makeWorkView, type DoneRow, type WorkView } from './work-view.model.ts';
import { workStyles } from './work-view.styles.ts';

/** What of the state this view shows. */
function shownOf(now: BenchState): readonly unknown[] {
  return [now.hornId, hornInHand(now).contents, now.unit, now.work];
}

/** The order of work: what is left, what is done, and what came back. */
@customElement('vw-work-view')
export class VwWorkView extends BenchView {
  protected override readonly pageStyles = [regulationTabsStyles, answerStyles, workStyles, workSizeStyles];

  protected override drawnFrom(state: BenchState): readonly unknown[] {
    return shownOf(state);
  }

  override render(): TemplateResult {
    const { bench } = this;
    if (bench === null) return html``;
    const view = makeWorkView(bench.store.get());
    return html`
      <main class="wk-page ${view.moves.length === 0 ? 'wk-none' : ''}">
        ${regulationTabs('work')}
        <p class="wk-head">${view.head}</p>
        <section class="rg-answer" aria-label="Answer" aria-live="polite">
          <h1>${view.headline}</h1>
          <p class="rg-standing">${view.standing}</p>
          ${view.reasons.map((reason) => html`<p class="rg-reason">${reason}</p>`)}
          ${
            view.warnings.length === 0
              ? nothing
              : html`<ul class="rg-cautions" aria-label="Limits of this plan">
                  ${view.warnings.map((line) => html`<li>${line}</li>`)}
                </ul>`
          }
        </section>
        ${this.#list(view, bench)} ${this.#done(view, bench)} ${seatsPanel(view.seats, bench)}
        <p class="rg-caution">
          The usual caution: bending, filing and heat are for trained hands, a little at a time, the key
          supported; where training and this page differ, training is right.
        </p>
      </main>
    `;
  }

  #list(view: WorkView, bench: Bench): TemplateResult | typeof nothing {
    if (view.moves.length === 0) return nothing;
    return html`
      <section class="wk-list" aria-labelledby="wk-list" @focusin=${() => bench.work.expectTyping()}>
        <h2 id="wk-list">Left to do</h2>
        <button type="button" class="rg-quiet" @click=${() => print()}>Print the list</button>
        <ol>
          ${repeat(
            view.moves,
            ({ key }) => key,
            (row) => moveItem(row, bench),
          )}
        </ol>
      </section>
    `;
  }

  #done({ done }: WorkView, bench: Bench): TemplateResult | typeof nothing {
    if (done.length === 0) return nothing;
    return html`
      <section class="wk-done" aria-labelledby="wk-done">
        <h2 id="wk-done">Done</h2>
        <ol>
          ${done.map((row) => this.#doneItem(row, bench))}
        </ol>
      </section>
    `;
  }

  #doneItem({ index, what, came, within }: DoneRow, bench: Bench): TemplateResult {
    return html`
      <li class=${within ? '' : 'wk-out'}>
        <span class="wk-tick" aria-hidden="true">${within ? '✓' : '↻'}</span>
        <span>${what}: <b>${came}</b>${within ? '' : ' – outside its tolerance, on the list again'}</span>
        ${
          index === null
            ? nothing
            : html`<button
                type="button"
                class="rg-quiet"
                aria-label="Take back: ${what}"
                @click=${() => bench.work.takeBack(index)}
              >
                Take back
              </button>`
        }
      </li>
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-work-view': VwWorkView;
  }
}
