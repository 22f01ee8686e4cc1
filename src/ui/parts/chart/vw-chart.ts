import type { PropertyValues } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { ChartModel, ProposedMark } from './chart.model.ts';
import { CONFIG, makeFigure, proposedUpdate } from './figure.ts';
import { PlotHost, type Plotly, type PlotSize } from './plot-host.ts';

/**
 * The curve of a key.
 *
 * @fires vw-chart-drawn - each time the whole figure has been drawn
 */
@customElement('vw-chart')
export class VwChart extends PlotHost {
  @property({ attribute: false }) model: ChartModel | null = null;

  @property({ attribute: false }) proposed: ProposedMark | null = null;

  #drawn: ChartModel | null = null;

  override updated(changed: PropertyValues): void {
    if (changed.has('model') || changed.has('proposed')) this.schedule();
  }

  protected override words(): string {
    return this.model?.summary ?? 'The curve is on its way.';
  }

  protected override paint(plotly: Plotly, host: HTMLElement, size: PlotSize, afresh: boolean): void {
    if (this.model === null || this.proposed === null) return;
    if (this.#drawn === this.model && !afresh) {
      const { data, layout, traces } = proposedUpdate(this.model, this.proposed, size.width);
      void plotly.update(host, data, layout, traces);
      return;
    }
    this.#drawn = this.model;
    const { data, layout } = makeFigure(this.model, this.proposed, this.colours(), size);
    void plotly.react(host, data, layout, CONFIG).then(() => {
      this.dispatchEvent(new CustomEvent('vw-chart-drawn', { bubbles: true, composed: true }));
    });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-chart': VwChart;
  }
  interface HTMLElementEventMap {
    'vw-chart-drawn': CustomEvent;
  }
}
