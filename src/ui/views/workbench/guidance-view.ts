import { html, nothing, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { DayStepName, Said } from '../../../documents/day-steps.ts';
import { makeDayPathView } from '../../parts/day-path-view.model.ts';
import '../../parts/vw-day-path.ts';
import '../../parts/vw-story.ts';
import { guidanceOf, type Guidance } from '../../shell/guidance.ts';
import { hornInHand, type BenchState } from '../../state/bench-state.ts';
import { pathInHand, pathParts } from '../../state/day-path-in-hand.ts';
import type { DayPath } from '../../state/day-path.ts';
import type { PathFold } from '../../state/guidance-state.ts';
import { makeStoryView } from '../../state/story.ts';
import { BenchView } from '../bench-view.ts';
import { guidanceStyles } from './guidance-view.styles.ts';
import { markOnly } from './story-mark.ts';

/** What guides a person round the bench: the path of the day under the head, and under it the story. */
@customElement('vw-guidance')
export class VwGuidance extends BenchView {
  protected override readonly pageStyles = [guidanceStyles];

  #parts: readonly unknown[] = [];
  #path: DayPath | null = null;
  #stopGuidance: (() => void) | null = null;
  #hasAskedStanding = false;

  /** Tells the page how much of its top the story stands on: what is scrolled to stands below it. */
  readonly #room = new ResizeObserver(([{ target }]) =>
    document.documentElement.style.setProperty('--gd-room', `${target.clientHeight}px`),
  );

  get #guidance(): Guidance | null {
    return this.bench === null ? null : guidanceOf(this.bench);
  }

  /** The story tells what any view comes to; the path depends on less. */
  protected override drawnFrom(state: BenchState): readonly unknown[] {
    return this.#guidance!.store.get().card === null ? this.#partsOf(state) : [state];
  }

  /** A hand that is moving is let finish: the path follows once it rests. */
  #partsOf(state: BenchState): readonly unknown[] {
    if (this.#parts.length > 0 && hornInHand(state).movement !== null) return this.#parts;
    return pathParts(state, this.#guidance!.store.get().mayBeCleared);
  }

  override willUpdate(changed: Map<PropertyKey, unknown>): void {
    super.willUpdate(changed);
    if (!changed.has('bench')) return;
    this.#stopGuidance?.();
    this.#stopGuidance = this.#guidance?.store.subscribe(() => this.requestUpdate()) ?? null;
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#stopGuidance?.();
    this.#room.disconnect();
  }

  override render(): TemplateResult {
    const guidance = this.#guidance;
    if (guidance === null) return html``;
    const { fold, card } = guidance.store.get();
    return html`
      ${fold === 'away' ? nothing : this.#day(guidance, fold)}
      ${card === null ? nothing : this.#story(guidance, card)}
    `;
  }

  #day(guidance: Guidance, fold: PathFold): TemplateResult {
    return html`
      <vw-day-path
        .path=${makeDayPathView(this.#pathNow(guidance))}
        ?unfolded=${fold === 'open'}
        @vw-path-go=${(e: CustomEvent<{ name: DayStepName }>) => this.#go(guidance, e.detail.name)}
        @vw-path-say=${(e: CustomEvent<{ name: DayStepName; said: Said | null }>) =>
          guidance.say(e.detail.name, e.detail.said)}
        @vw-path-fold=${(e: CustomEvent<{ fold: PathFold }>) => guidance.fold(e.detail.fold)}
      >
        <button type="button" class="gd-tell" data-act="story" @click=${() => void guidance.turnTo(0)}>
          Tell the story
        </button>
      </vw-day-path>
    `;
  }

  #pathNow({ store }: Guidance): DayPath {
    const state = this.bench!.store.get();
    const parts = this.#partsOf(state);
    if (this.#path === null || parts.some((part, i) => part !== this.#parts[i])) {
      this.#path = pathInHand(state, store.get().mayBeCleared);
      this.#parts = parts;
    }
    return this.#path;
  }

  #story(guidance: Guidance, card: number): TemplateResult {
    return html`
      <vw-story
        .story=${makeStoryView(this.bench!.store.get(), card)}
        @vw-story-turn=${(e: CustomEvent<{ card: number }>) => void guidance.turnTo(e.detail.card)}
        @vw-story-leave=${() => this.#leave(guidance)}
      ></vw-story>
    `;
  }

  #go(guidance: Guidance, name: DayStepName): void {
    const { steps, earlier } = this.#pathNow(guidance);
    if (name === 'last visit' && earlier.length > 0) void guidance.compareWithLast(earlier[0].id);
    else guidance.go(steps.find((step) => step.name === name)!.goal);
    if (guidance.store.get().fold === 'open') guidance.fold('line');
  }

  /** Whoever was in the story stands at the line of the day then, not at the top of the page. */
  #leave(guidance: Guidance): void {
    const hadFocus = this.querySelector('vw-story')?.matches(':focus-within') ?? false;
    void guidance.turnTo(null);
    if (hadFocus) this.querySelector('vw-day-path')?.focus();
  }

  override updated(): void {
    const guidance = this.#guidance;
    if (guidance === null) return;
    const { fold, card, mayBeCleared } = guidance.store.get();
    this.toggleAttribute('data-away', fold === 'away');
    const story = this.querySelector('vw-story');
    if (story !== null) this.#room.observe(story);
    else {
      this.#room.disconnect();
      document.documentElement.style.removeProperty('--gd-room');
    }
    void markOnly(card === null ? null : makeStoryView(this.bench!.store.get(), card).mark);
    // Once something is kept, whether the browser may clear it is worth knowing.
    if (mayBeCleared !== null || this.#hasAskedStanding) return;
    if (this.bench!.store.get().keeping.kind !== 'saved') return;
    this.#hasAskedStanding = true;
    void guidance.askStanding();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-guidance': VwGuidance;
  }
}
