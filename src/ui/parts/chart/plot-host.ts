import { html, LitElement, type TemplateResult } from 'lit';
import { watchTheme } from '../../shell/theme.ts';
import type { ChartColours } from './chart-colours.ts';

export type Plotly = (typeof import('plotly.js-dist'))['default'];

/** px */
export interface PlotSize {
  readonly width: number;
  readonly height: number;
}

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
/** The tokens of lines that carry their names. */
const LINES = [1, 2, 3, 4, 5, 6, 7, 8];
/** Too small to draw in, px. */
const LEAST_PX = 90;

/**
 * What every picture by the drawing library shares: it is fetched, drawn at the element's size, once per frame,
 * and fitted to paper. It stands in the page's own tree, since the library puts its styles there.
 *
 * @fires vw-browser-failure - when the library could not be fetched
 */
export abstract class PlotHost extends LitElement {
  #plotly: Plotly | null = null;
  #size: PlotSize = { width: 0, height: 0 };
  #frame = 0;
  #watch: ResizeObserver | null = null;
  #stopTheme: (() => void) | null = null;
  #otherColours = false;
  /** while it is printed the screen's size is not its size */
  #onPaper = false;

  /** Draws at a size, if there is something to draw; `afresh` where its size or its colours are others than before. */
  protected abstract paint(plotly: Plotly, host: HTMLElement, size: PlotSize, afresh: boolean): void;

  /** The picture in words. */
  protected abstract words(): string;

  override createRenderRoot(): HTMLElement {
    return this;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#watch = new ResizeObserver(() => this.schedule());
    this.#watch.observe(this);
    this.#stopTheme = watchTheme(() => {
      this.#otherColours = true;
      this.schedule();
    });
    addEventListener('beforeprint', this.#toPaper);
    addEventListener('afterprint', this.#fromPaper);
    fetchChartLibrary().then(
      (plotly) => {
        this.#plotly = plotly;
        this.schedule();
      },
      (error: unknown) => this.#tell(error),
    );
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#watch?.disconnect();
    this.#stopTheme?.();
    removeEventListener('beforeprint', this.#toPaper);
    removeEventListener('afterprint', this.#fromPaper);
    cancelAnimationFrame(this.#frame);
  }

  override render(): TemplateResult {
    return html`<div class="vw-chart-host" role="img" aria-label=${this.words()}></div>`;
  }

  /** Once per frame, whatever came since the last. The first takes long: the words beside it are shown a frame before. */
  protected schedule(): void {
    if (this.#plotly === null || this.#onPaper) return;
    cancelAnimationFrame(this.#frame);
    const draw = (): void =>
      this.#paintAt({ width: Math.floor(this.clientWidth), height: Math.floor(this.clientHeight) });
    const isFirst = this.#size.width === 0;
    this.#frame = requestAnimationFrame(isFirst ? () => (this.#frame = requestAnimationFrame(draw)) : draw);
  }

  #paintAt(size: PlotSize): void {
    const host = this.querySelector<HTMLElement>('.vw-chart-host');
    if (this.#plotly === null || host === null) return;
    if (!(size.width > LEAST_PX && size.height > LEAST_PX)) return;
    const afresh = this.#otherColours || size.width !== this.#size.width || size.height !== this.#size.height;
    this.#size = size;
    this.#otherColours = false;
    this.paint(this.#plotly, host, size, afresh);
  }

  /** Paper has a height of its own where the view says one, as `--vw-paper-height`. */
  #toPaper = (): void => {
    this.#onPaper = true;
    this.#otherColours = true;
    cancelAnimationFrame(this.#frame);
    const asked = Number.parseFloat(getComputedStyle(this).getPropertyValue('--vw-paper-height'));
    this.#paintAt({
      width: Math.min(PAPER_PX, this.#size.width),
      height: asked > LEAST_PX ? asked : this.#size.height,
    });
  };

  #fromPaper = (): void => {
    this.#onPaper = false;
    this.#otherColours = true;
    this.schedule();
  };

  #tell(error: unknown): void {
    this.dispatchEvent(
      new CustomEvent('vw-browser-failure', {
        bubbles: true,
        composed: true,
        detail: { message: `The curve’s drawing library could not be fetched: ${String(error)}` },
      }),
    );
  }

  protected colours(): ChartColours {
    const tokens = getComputedStyle(this);
    const token = (name: string): string => tokens.getPropertyValue(name).trim();
    return {
      ink: token('--vw-ink'),
      soft: token('--vw-soft'),
      edge: token('--vw-edge'),
      grid: token('--vw-grid'),
      found: token('--vw-found'),
      enough: token('--vw-enough'),
      proposed: token('--vw-try'),
      band: token('--vw-enough-weak'),
      sheet: token('--vw-sheet'),
      filled: token('--vw-filled'),
      other: token('--vw-other'),
      lines: LINES.map((n) => token(`--vw-line-${n}`)),
    };
  }
}

declare global {
  interface HTMLElementEventMap {
    'vw-browser-failure': CustomEvent<{ readonly message: string }>;
  }
}
