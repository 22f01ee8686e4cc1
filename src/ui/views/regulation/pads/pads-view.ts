import { html, nothing, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import '../../../parts/vw-bench-field.ts';
import '../../../parts/vw-choice.ts';
import { told } from '../../../parts/told.ts';
import '../../../parts/vw-key-strip.ts';
import { makeKeyStrip } from '../../../parts/key-strip.model.ts';
import type { Bench } from '../../../shell/bench.ts';
import { documentsInHand, hornInHand, type BenchState } from '../../../state/bench-state.ts';
import { changedSince } from '../../../state/horn-on-bench.ts';
import type { PadsQuestion } from '../../../state/pads-state.ts';
import { BenchView } from '../../bench-view.ts';
import { regulationTabs, regulationTabsStyles } from '../regulation-tabs.ts';
import { answerStyles } from '../answer.styles.ts';
import { changePanels } from './change-panels.ts';
import { cupDrawing } from './cup-drawing.ts';
import { cupsTable, orderList } from './cups-table.ts';
import { makePadChangeView, type PadChangeView } from './pad-change-view.model.ts';
import { makePadFitView, type PadFitView } from './pad-fit-view.model.ts';
import { padsSizeStyles } from './pads-sizes.styles.ts';
import { padsTableStyles } from './pads-tables.styles.ts';
import { padsStyles } from './pads-view.styles.ts';
import { stockPanel } from './stock-panel.ts';
import { makeStockView } from './stock-view.model.ts';

const QUESTIONS = [
  { value: 'fit', label: 'Pads for these cups' },
  { value: 'change', label: 'Thicker or thinner pads' },
];

/** What of the state this view shows. */
function shownOf(now: BenchState): readonly unknown[] {
  const { contents, keyId } = hornInHand(now);
  return [now.hornId, contents, keyId, now.unit, now.pads];
}

/** Which pad for which cup, and what other pads do. */
@customElement('vw-pads-view')
export class VwPadsView extends BenchView {
  protected override readonly pageStyles = [
    regulationTabsStyles,
    answerStyles,
    padsStyles,
    padsTableStyles,
    padsSizeStyles,
  ];

  protected override drawnFrom(state: BenchState): readonly unknown[] {
    return shownOf(state);
  }

  override render(): TemplateResult {
    const { bench } = this;
    if (bench === null) return html``;
    const now = bench.store.get();
    const { question } = now.pads;
    return html`
      <main class="pd-page pd-${question}">
        ${regulationTabs('pads')}
        <vw-choice
          class="pd-question"
          label="Ask about"
          quiet-label
          data-act="question"
          .options=${QUESTIONS}
          .value=${question}
          @vw-choice-change=${(e: CustomEvent<{ value: string }>) =>
            bench.pads.ask(e.detail.value as PadsQuestion)}
        ></vw-choice>
        ${
          question === 'fit'
            ? this.#fit(makePadFitView(now), now, bench)
            : this.#change(makePadChangeView(now), now, bench)
        }
      </main>
    `;
  }

  #strip(now: BenchState, bench: Bench): TemplateResult {
    return html`
      <section class="pd-keys" aria-label="Choose a key">
        <vw-key-strip
          .pads=${makeKeyStrip(documentsInHand(now), changedSince(hornInHand(now)), null)}
          .value=${hornInHand(now).keyId}
          @vw-key-change=${(e: CustomEvent<{ id: string }>) => bench.chooseKey(e.detail.id)}
        ></vw-key-strip>
      </section>
    `;
  }

  #fit(view: PadFitView, now: BenchState, bench: Bench): TemplateResult {
    return html`
      <section class="rg-answer" aria-label="Answer" aria-live="polite">
        <h1>${view.answer.headline}</h1>
        <p class="rg-standing">${view.answer.standing}</p>
        ${view.answer.reasons.map((reason) => html`<p class="rg-reason">${reason}</p>`)}
      </section>
      <section class="pd-drawing" aria-label="The cup in hand">${cupDrawing(view.drawing)}</section>
      ${stockPanel(makeStockView(now), bench)} ${cupsTable(view, bench)} ${orderList(view, bench)}
      <p class="rg-caution">
        ${view.caution === '' ? nothing : `${view.caution} `}The usual caution: where training and this page
        differ, training is right.
      </p>
    `;
  }

  #change(view: PadChangeView, now: BenchState, bench: Bench): TemplateResult {
    return html`
      ${view.plan.scope === 'key' ? this.#strip(now, bench) : nothing}
      <section
        class="rg-answer"
        aria-label="Answer"
        aria-live="polite"
        aria-busy=${view.waiting ? 'true' : 'false'}
      >
        <h1>${told(view.answer.headline, view.answer.figures, view.unit)}</h1>
        <p class="rg-standing">${view.answer.standing}</p>
        ${view.answer.reasons.map((reason) => html`<p class="rg-reason">${reason}</p>`)}
        ${
          view.cautions.length === 0
            ? nothing
            : html`<ul class="rg-cautions" aria-label="Limits of this answer">
                ${view.cautions.map((line) => html`<li>${line}</li>`)}
              </ul>`
        }
      </section>
      ${changePanels(view, bench)}
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-pads-view': VwPadsView;
  }
}
