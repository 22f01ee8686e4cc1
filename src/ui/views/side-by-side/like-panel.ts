import { html, nothing, type TemplateResult } from 'lit';
import type { MatchedBy } from '../../../acoustics/index.ts';
import '../../parts/vw-choice.ts';
import type { Bench } from '../../shell/bench.ts';
import type { LikeView } from './like.model.ts';

/** The horn in hand set to the openings of a column: which, by what, and what cannot. */
export function likePanel(view: LikeView, bench: Bench): TemplateResult {
  const { heading, columns, chosen, measures, by, meaning, act, disabled, taken, words, left } = view;
  return html`
    <section class="sd-like" aria-labelledby="sd-like-title">
      <h2 id="sd-like-title">${heading}</h2>
      <div class="sd-like-acts">
        ${
          columns.length < 2
            ? nothing
            : html`<vw-choice
                label="Column"
                data-act="like-column"
                .options=${columns}
                .value=${chosen}
                @vw-choice-change=${(e: CustomEvent<{ value: string }>) =>
                  bench.sideBySide((side) => ({ ...side, likeColumn: Number(e.detail.value) }))}
              ></vw-choice>`
        }
        <vw-choice
          label="By"
          data-act="like-by"
          .options=${measures}
          .value=${by}
          @vw-choice-change=${(e: CustomEvent<{ value: string }>) =>
            bench.sideBySide((side) => ({ ...side, likeBy: e.detail.value as MatchedBy }))}
        ></vw-choice>
        <button
          type="button"
          class="ks-quiet"
          data-act="like"
          ?disabled=${disabled}
          @click=${() => bench.proposal.takeLike(view.frontsMm, view.column, view.keeps)}
        >
          ${taken ? '✓ ' : ''}${act}
        </button>
      </div>
      <p class="sd-like-words">${meaning}</p>
      <p role="status" class="sd-like-words">
        ${words}
        ${taken ? html`<a href="#scale">What it does to the scale</a> <a href="#sheet">See the sheet</a>` : nothing}
      </p>
      ${
        left.length === 0
          ? nothing
          : html`<ul class="ks-cautions" aria-label="Keys that cannot be set so">
              ${left.map((line) => html`<li>${line}</li>`)}
            </ul>`
      }
    </section>
  `;
}
