import { html, type TemplateResult } from 'lit';
import type { Guidance } from '../../shell/guidance.ts';

/** What guides a person can be called up again here, or put away. */
export function libraryGuides(guidance: Guidance): TemplateResult {
  const isOut = guidance.store.get().fold !== 'away';
  return html`
    <section class="lb-bench" aria-labelledby="lb-guides">
      <h2 id="lb-guides">Finding the way</h2>
      <p>
        The story takes three minutes, on the example alto. The path of the day is the line under the head:
        what is done, and what is next.
      </p>
      <p class="lb-acts">
        <button type="button" class="lb-button" data-act="story" @click=${() => void guidance.turnTo(0)}>
          Tell the story
        </button>
        <button
          type="button"
          class="lb-button"
          data-act="path"
          @click=${() => guidance.fold(isOut ? 'away' : 'line')}
        >
          ${isOut ? 'Put the path of the day away' : 'Lay out the path of the day'}
        </button>
      </p>
    </section>
  `;
}
