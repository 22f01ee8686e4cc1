import { html, LitElement, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { ChartModel, ProposedMark } from './chart.model.ts';
import { CONFIG, makeFigure, proposedUpdate, type ChartColours } from './figure.ts';

type Plotly = (typeof import('plotly.js-dist'))['default'];

let library: Promise<Plotly> | null = null;

/** The drawing library is large: it is fetched once, and best asked for as soon as the page shows its words. */
export function fetchChartLibrary(): Promise<Plotly> {
  library ??= import('plotly.js-dist').then(
    (module) => module.default,
    (error: unknown) => {
      library = null;
      throw error;
    },
  );
  return library;
}

/** What paper is wide enough for, px. */
const PAPER_PX = 690;

/**
 * The curve. It stands in the page's own tree, since the drawing library puts its styles there.
 *
 * @fires vw-chart-drawn - each time the whole figure has been drawn
 */
@customElement('vw-chart')
export class VwChart extends LitElement {
  @property({ attribute: false }) model: ChartModel | null = null;

  @property({ attribute: false }) proposed: ProposedMark | null = null;

  #plotly: Plotly | null = null;
  #drawn: ChartModel | null = null;
  #size = { width: 0, height: 0 };
  #frame = 0;
  #watch: ResizeObserver | null = null;

  override createRenderRoot(): HTMLElement {
    return this;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#watch = new ResizeObserver(() => this.#schedule());
    this.#watch.observe(this);
    addEventListener('beforeprint', this.#toPaper);
    addEventListener('afterprint', this.#fromPaper);
    fetchChartLibrary().then(
      (plotly) => {
        this.#plotly = plotly;
        this.#schedule();
      },
      (error: unknown) => this.#tell(error),
    );
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#watch?.disconnect();
    removeEventListener('beforeprint', this.#toPaper);
    removeEventListener('afterprint', this.#fromPaper);
    cancelAnimationFrame(this.#frame);
  }

  override render(): TemplateResult {
    return html`<div
      class="vw-chart-host"
      role="img"
      aria-label=${this.model?.summary ?? 'The curve is on its way.'}
    ></div>`;
  }

  override updated(changed: PropertyValues): void {
    if (changed.has('model') || changed.has('proposed')) this.#schedule();
  }

  /** Once per frame, whatever came since the last. */
  #schedule(): void {
    if (this.#plotly === null) return;
    cancelAnimationFrame(this.#frame);
    this.#frame = requestAnimationFrame(() => this.#draw());
  }

  #draw(): void {
    const host = this.#host();
    const width = Math.floor(this.clientWidth);
    const height = Math.floor(this.clientHeight);
    if (this.#plotly === null || this.model === null || this.proposed === null || host === null) return;
    if (!(width > 120 && height > 120)) return;
    const sized = width === this.#size.width && height === this.#size.height;
    if (this.#drawn === this.model && sized) {
      const { data, layout, traces } = proposedUpdate(this.model, this.proposed, width);
      void this.#plotly.update(host, data, layout, traces);
      return;
    }
    this.#drawAt({ width, height });
  }

  #drawAt(size: { width: number; height: number }): void {
    const host = this.#host();
    if (this.#plotly === null || this.model === null || this.proposed === null || host === null) return;
    this.#drawn = this.model;
    this.#size = size;
    const { data, layout } = makeFigure(this.model, this.proposed, this.#colours(), size);
    void this.#plotly.react(host, data, layout, CONFIG).then(() => {
      this.dispatchEvent(new CustomEvent('vw-chart-drawn', { bubbles: true, composed: true }));
    });
  }

  #toPaper = (): void =>
    this.#drawAt({ width: Math.min(PAPER_PX, this.#size.width), height: this.#size.height });

  #fromPaper = (): void => this.#schedule();

  #tell(error: unknown): void {
    this.dispatchEvent(
      new CustomEvent('vw-browser-failure', {
        bubbles: true,
        composed: true,
        detail: { message: `The curve’s drawing library could not be fetched: ${String(error)}` },
      }),
    );
  }

  #host(): HTMLElement | null {
    return this.querySelector<HTMLElement>('.vw-chart-host');
  }

  #colours(): ChartColours {
    const tokens = getComputedStyle(this);
    const token = (name: string): string => tokens.getPropertyValue(name).trim();
    return {
      ink: token('--vw-ink'),
      soft: token('--vw-soft'),
      edge: token('--vw-edge'),
      found: token('--vw-found'),
      enough: token('--vw-enough'),
      proposed: token('--vw-try'),
      band: token('--vw-enough-weak'),
      sheet: token('--vw-sheet'),
    };
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-chart': VwChart;
  }
  interface HTMLElementEventMap {
    'vw-chart-drawn': CustomEvent;
    'vw-browser-failure': CustomEvent<{ readonly message: string }>;
  }
}
