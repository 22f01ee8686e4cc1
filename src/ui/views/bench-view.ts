import { LitElement, type CSSResult } from 'lit';
import { property } from 'lit/decorators.js';
import type { Bench } from '../shell/bench.ts';
import type { BenchState } from '../state/bench-state.ts';
import { adoptStyles } from './adopt-styles.ts';

/**
 * What every view of the bench shares: it is given the bench, follows its state while it stands in the page, and
 * is drawn in the page's own tree, where the charts' library puts its styles too.
 */
export abstract class BenchView extends LitElement {
  @property({ attribute: false }) bench: Bench | null = null;

  /** adopted by the page, once each */
  protected abstract readonly pageStyles: readonly CSSResult[];

  #stop: (() => void) | null = null;
  #drawn: readonly unknown[] = [];

  /** What of the state the view shows: it is drawn anew when a part of it is another. */
  protected drawnFrom(state: BenchState): readonly unknown[] {
    return [state];
  }

  /** Called when what is shown has changed. */
  protected drawAnew(): void {
    this.requestUpdate();
  }

  override createRenderRoot(): HTMLElement {
    adoptStyles(...this.pageStyles);
    return this;
  }

  override willUpdate(changed: Map<PropertyKey, unknown>): void {
    if (!changed.has('bench') || this.bench === null) return;
    const { store } = this.bench;
    this.#stop?.();
    this.#drawn = this.drawnFrom(store.get());
    this.#stop = store.subscribe(() => {
      const next = this.drawnFrom(store.get());
      if (next.every((part, i) => part === this.#drawn[i])) return;
      this.#drawn = next;
      this.drawAnew();
    });
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#stop?.();
  }
}
