import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { StoryView } from '../state/story.ts';
import { controlStyles } from './control.styles.ts';

/**
 * A card of the story, in the page's own flow: it covers nothing, takes no focus, and everything on the page goes on
 * working.
 *
 * @fires vw-story-turn - when a person turns to another card, or asks for the place of this one
 * @fires vw-story-leave - when a person leaves the story
 */
@customElement('vw-story')
export class VwStory extends LitElement {
  static override styles = [
    controlStyles,
    css`
      section {
        display: flex;
        align-items: center;
        gap: var(--vw-space-2) var(--vw-space-5);
        padding: 0.6rem 1rem;
        background: var(--vw-sheet);
        border-bottom: 4px solid var(--vw-leather);
      }
      .told {
        flex: 1;
        min-width: 0;
        /* A title and three lines: the page below stands still from card to card. */
        min-height: 5.75rem;
      }
      h2 {
        margin: 0;
        font-size: var(--vw-text-lead);
      }
      h2 span {
        margin-left: 0.35rem;
        font-size: var(--vw-text-aside);
        font-weight: 400;
        color: var(--vw-soft);
      }
      p {
        margin: 0;
        max-width: 58rem;
      }
      .acts {
        display: flex;
        gap: var(--vw-space-2);
      }
      button {
        min-height: var(--vw-touch);
        min-width: 5rem;
        padding: 0 0.9rem;
        background: var(--vw-sheet);
        border: 1px solid var(--vw-soft);
        border-radius: var(--vw-round);
        cursor: pointer;
        white-space: nowrap;
      }
      button:disabled {
        color: var(--vw-soft);
        border-color: var(--vw-edge);
        cursor: default;
      }
      .next {
        font-weight: 700;
        color: var(--vw-try);
        border-color: var(--vw-try);
      }
      .leave {
        border-color: transparent;
        color: var(--vw-soft);
        text-decoration: underline;
        text-underline-offset: 0.2em;
      }
      @media (max-width: 900px) {
        section {
          flex-direction: column;
          align-items: stretch;
          padding: 0.5rem 0.75rem;
        }
        .told {
          min-height: 0;
        }
        .acts button {
          flex: 1;
          min-width: 0;
          padding: 0 0.25rem;
        }
      }
      @media (max-width: 500px) {
        p {
          font-size: var(--vw-text-control);
        }
        .whole {
          position: absolute;
          clip-path: inset(50%);
        }
      }
    `,
  ];

  @property({ attribute: false }) story: StoryView | null = null;

  override render(): TemplateResult | typeof nothing {
    const { story } = this;
    if (story === null) return nothing;
    const { title, count, text, isThere, isFirst, isLast, card } = story;
    return html`
      <section aria-label="The story" @keydown=${this.#pressed}>
        <div class="told" aria-live="polite">
          <h2>${title} <span>${count}</span></h2>
          <p>${text}</p>
        </div>
        <div class="acts">
          <button type="button" class="leave" data-act="leave" @click=${() => this.#leave()}>
            Leave<span class="whole">&nbsp;the story</span>
          </button>
          <button type="button" data-act="back" ?disabled=${isFirst} @click=${() => this.#turn(card - 1)}>
            Back
          </button>
          <button
            type="button"
            class="next"
            data-act=${isThere ? 'next' : 'show'}
            @click=${() => (!isThere ? this.#turn(card) : isLast ? this.#leave() : this.#turn(card + 1))}
          >
            ${isThere ? (isLast ? 'The end' : 'Next') : 'Show it'}
          </button>
        </div>
      </section>
    `;
  }

  #pressed = (event: KeyboardEvent): void => {
    if (event.key === 'Escape') this.#leave();
  };

  #turn(card: number): void {
    this.dispatchEvent(new CustomEvent('vw-story-turn', { bubbles: true, composed: true, detail: { card } }));
  }

  #leave(): void {
    this.dispatchEvent(new CustomEvent('vw-story-leave', { bubbles: true, composed: true }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-story': VwStory;
  }
  interface HTMLElementEventMap {
    'vw-story-turn': CustomEvent<{ readonly card: number }>;
    'vw-story-leave': CustomEvent<void>;
  }
}
