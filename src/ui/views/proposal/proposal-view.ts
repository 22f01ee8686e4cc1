import { html, nothing, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { Preference } from '../../../documents/proposal-choices.ts';
import '../../parts/vw-choice.ts';
import { unbroken } from '../../parts/note-names.ts';
import type { Bench } from '../../shell/bench.ts';
import { hornInHand, type BenchState } from '../../state/bench-state.ts';
import { BenchView } from '../bench-view.ts';
import { answerStyles } from '../regulation/answer.styles.ts';
import { keysTable } from './keys-table.ts';
import { pitchPanel } from './pitch-panel.ts';
import { makeProposalView, type ProposalView } from './proposal-view.model.ts';
import { proposalSizeStyles } from './proposal-sizes.styles.ts';
import { proposalStyles } from './proposal-view.styles.ts';

/** The proposed setup: every key with its reason, few keys for most of it, and what it does to the pitch. */
@customElement('vw-proposal-view')
export class VwProposalView extends BenchView {
  protected override readonly pageStyles = [answerStyles, proposalStyles, proposalSizeStyles];

  protected override drawnFrom(state: BenchState): readonly unknown[] {
    return [state.hornId, hornInHand(state).contents, state.unit, state.proposal];
  }

  override render(): TemplateResult {
    const { bench } = this;
    if (bench === null) return html``;
    const view = makeProposalView(bench.store.get());
    return html`
      <main class="pp-page">
        ${this.#answer(view)} ${this.#take(view, bench)} ${pitchPanel(view)} ${keysTable(view, bench)}
        ${
          view.cautions.length === 0
            ? nothing
            : html`<ul class="rg-cautions pp-cautions" aria-label="What to keep in mind">
                ${view.cautions.map((line) => html`<li>${line}</li>`)}
              </ul>`
        }
      </main>
    `;
  }

  #answer({ waiting, problem, headline, start, gain }: ProposalView): TemplateResult {
    return html`
      <section
        class="rg-answer pp-answer"
        aria-label="Answer"
        aria-live="polite"
        aria-busy=${waiting ? 'true' : 'false'}
      >
        <h1>${unbroken(movesKept(headline))}</h1>
        <p class="pp-gain">${start}${gain === null ? nothing : ` ${gain}`}</p>
        ${problem === null ? nothing : html`<p class="pp-problem" role="alert">No proposal: ${problem}</p>`}
      </section>
    `;
  }

  #take({ prefer, preferences, takes, takenWords, waiting }: ProposalView, bench: Bench): TemplateResult {
    return html`
      <section class="pp-take" aria-label="Take it">
        <vw-choice
          label="Prefer"
          data-act="prefer"
          .options=${preferences}
          .value=${prefer}
          @vw-choice-change=${(e: CustomEvent<{ value: string }>) =>
            bench.proposal.prefer(e.detail.value as Preference)}
        ></vw-choice>
        <div class=${takes.some(({ taken }) => taken) ? 'pp-buttons settled' : 'pp-buttons'}>
          ${takes.map(
            ({ id, label, frontsMm, taken }) => html`
              <button
                type="button"
                class="pp-button"
                data-act="take-${id}"
                ?disabled=${waiting}
                aria-pressed=${taken ? 'true' : 'false'}
                @click=${() => bench.proposal.take(frontsMm)}
              >
                ${taken ? '✓ ' : ''}${label}
              </button>
            `,
          )}
        </div>
        <p class="pp-taken" role="status">
          ${takenWords}
          ${
            takes.some(({ taken }) => taken)
              ? html`<a href="#sheet">See the sheet</a> <a href="#work">The order of work</a>`
              : nothing
          }
        </p>
      </section>
    `;
  }
}

/** A key’s name stays beside its move: `G +1.8 mm`. */
const movesKept = (sentence: string): string => sentence.replace(/ (?=[+−]\d)/g, '\u00a0');

declare global {
  interface HTMLElementTagNameMap {
    'vw-proposal-view': VwProposalView;
  }
}
