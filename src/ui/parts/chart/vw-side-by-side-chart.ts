import type { PropertyValues } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { CONFIG } from './figure.ts';
import { PlotHost, type Plotly, type PlotSize } from './plot-host.ts';
import type { SideBySideChartModel } from './side-by-side-chart.model.ts';
import { makeSideBySideFigure } from './side-by-side-figure.ts';

/**
 * Every note of some setups against the first.
 *
 * @fires vw-chart-drawn - each time it has been drawn
 */
@customElement('vw-side-by-side-chart')
export class VwSideBySideChart extends PlotHost {
  @property({ attribute: false }) model: SideBySideChartModel | null = null;

  #drawn: SideBySideChartModel | null = null;

  override updated(changed: PropertyValues): void {
    if (changed.has('model')) this.schedule();
  }

  protected override words(): string {
    return this.model?.summary ?? 'The differences are on their way.';
  }

  protected override paint(plotly: Plotly, host: HTMLElement, size: PlotSize, afresh: boolean): void {
    if (this.model === null || (this.#drawn === this.model && !afresh)) return;
    this.#drawn = this.model;
    const { data, layout } = makeSideBySideFigure(this.model, this.colours(), size);
    void plotly.react(host, data, layout, CONFIG).then(() => {
      this.dispatchEvent(new CustomEvent('vw-chart-drawn', { bubbles: true, composed: true }));
    });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-side-by-side-chart': VwSideBySideChart;
  }
}
