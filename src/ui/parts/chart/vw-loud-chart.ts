import type { PropertyValues } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { CONFIG } from './figure.ts';
import { makeLoudFigure, type LoudChartModel } from './loud-figure.ts';
import { PlotHost, type Plotly, type PlotSize } from './plot-host.ts';

/** Strength of one note against the level of playing. */
@customElement('vw-loud-chart')
export class VwLoudChart extends PlotHost {
  @property({ attribute: false }) model: LoudChartModel | null = null;

  #drawn: LoudChartModel | null = null;

  override updated(changed: PropertyValues): void {
    if (changed.has('model')) this.schedule();
  }

  protected override words(): string {
    return this.model?.summary ?? 'On its way.';
  }

  protected override paint(plotly: Plotly, host: HTMLElement, size: PlotSize, afresh: boolean): void {
    if (this.model === null || (this.#drawn === this.model && !afresh)) return;
    this.#drawn = this.model;
    const { data, layout } = makeLoudFigure(this.model, this.colours(), size);
    void plotly.react(host, data, layout, CONFIG);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-loud-chart': VwLoudChart;
  }
}
