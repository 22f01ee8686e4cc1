import { html, nothing, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { DayStepName, Said } from '../../../documents/day-steps.ts';
import { makeDayPathView } from '../../parts/day-path-view.model.ts';
import '../../parts/vw-day-path.ts';
import { guidanceOf, type Guidance } from '../../shell/guidance.ts';
import { hornInHand, type BenchState } from '../../state/bench-state.ts';
import { pathInHand, pathParts } from '../../state/day-path-in-hand.ts';
import type { DayPath } from '../../state/day-path.ts';
import type { PathFold } from '../../state/guidance-state.ts';
import { BenchView } from '../bench-view.ts';
import { guidanceStyles } from './guidance-view.styles.ts';

/** What guides a person round the bench: the path of the day under the head, and the story. */
@customElement('vw-guidance')
export class VwGuidance extends BenchView {
  protected override readonly pageStyles = [guidanceStyles];

  #parts: readonly unknown[] = [];
  #path: DayPath | null = null;
  #stopGuidance: (() => void) | null = null;

  /** A hand that is moving is let finish: the path follows once it rests. */
  protected override drawnFrom(state: BenchState): readonly unknown[] {
    if (this.#parts.length > 0 && hornInHand(state).movement !== null) return this.#parts;
    const { mayBeCleared } = this.#guidance!.store.get();
    this.#parts = pathParts(state, mayBeCleared);
    return this.#parts;
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
  }

  get #guidance(): Guidance | null {
    return this.bench === null ? null : guidanceOf(this.bench);
  }

  override render(): TemplateResult {
    const guidance = this.#guidance;
    if (guidance === null) return html``;
    const { fold, mayBeCleared } = guidance.store.get();
    return html`${fold === 'away' ? nothing : this.#day(guidance, fold, mayBeCleared)}`;
  }

  #day(guidance: Guidance, fold: PathFold, mayBeCleared: boolean | null): TemplateResult {
    const path = pathInHand(this.bench!.store.get(), mayBeCleared);
    this.#path = path;
    return html`
      <vw-day-path
        .path=${makeDayPathView(path)}
        ?unfolded=${fold === 'open'}
        @vw-path-go=${(e: CustomEvent<{ name: DayStepName }>) => this.#go(e.detail.name)}
        @vw-path-say=${(e: CustomEvent<{ name: DayStepName; said: Said | null }>) =>
          guidance.say(e.detail.name, e.detail.said)}
        @vw-path-fold=${(e: CustomEvent<{ fold: PathFold }>) => guidance.fold(e.detail.fold)}
      ></vw-day-path>
    `;
  }

  #go(name: DayStepName): void {
    const step = this.#path?.steps.find((s) => s.name === name);
    if (step === undefined) return;
    const last = this.#path?.earlier[0];
    if (name === 'last visit' && last !== undefined) void this.#guidance!.compareWithLast(last.id);
    else this.#guidance!.go(step.goal);
    if (this.#guidance!.store.get().fold === 'open') this.#guidance!.fold('line');
  }

  /** Once something is kept, whether the browser may clear it is worth knowing. */
  override updated(): void {
    if (this.#guidance === null) return;
    const { fold, mayBeCleared } = this.#guidance.store.get();
    this.toggleAttribute('data-away', fold === 'away');
    if (mayBeCleared === null && this.bench?.store.get().keeping.kind === 'saved' && !this.#asked) {
      this.#asked = true;
      void this.#guidance.askStanding();
    }
  }
  #asked = false;
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-guidance': VwGuidance;
  }
}
