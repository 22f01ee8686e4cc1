import { html, nothing, svg, type PropertyValues, type SVGTemplateResult, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { signedCents } from '../note-names.ts';
import { CONFIG } from './figure.ts';
import { PlotHost, type Plotly, type PlotSize } from './plot-host.ts';
import {
  nearestMark,
  placeScale,
  xPx,
  yPx,
  type ScaleChartModel,
  type ScaleLive,
  type ScalePanelId,
  type ScalePlace,
} from './scale-chart.model.ts';
import { makeScaleFigure, scaleRangesUpdate } from './scale-figure.ts';

/** The rows where a note is a mark; its move is a bar. */
const MARKED: readonly ScalePanelId[] = ['pitch', 'strength', 'cutoff'];

/** A move smaller than this has no number at its bar, cents. */
const LEAST_NUMBERED_CENTS = 0.3;
/** A number needs so much room, px. */
const NUMBER_PX = 19;

/**
 * Every note of the horn. The frame and the horn as found are drawn by the library, seldom; what follows a
 * moving key is a layer of its own over it, at every frame.
 *
 * @fires vw-note-change - when a person picks a note
 * @fires vw-chart-drawn - each time the frame has been drawn
 */
@customElement('vw-scale-chart')
export class VwScaleChart extends PlotHost {
  @property({ attribute: false }) model: ScaleChartModel | null = null;

  @property({ attribute: false }) live: ScaleLive | null = null;

  /** says everything about one mark */
  @property({ attribute: false }) tell: (index: number) => string = () => '';

  @state() private place: ScalePlace | null = null;

  @state() private pointed = -1;

  #drawn: ScaleChartModel | null = null;
  /** the mark picked last, be it not yet shown */
  #picked = -1;
  #size: PlotSize = { width: 0, height: 0 };

  override willUpdate(changed: PropertyValues): void {
    if (changed.has('live') && this.live !== null) this.#picked = this.live.picked;
    if (changed.has('model') && this.model !== null && this.#size.width > 0) {
      this.place = placeScale(this.model, this.#size);
      this.pointed = -1;
    }
  }

  override updated(changed: PropertyValues): void {
    if (changed.has('model')) this.schedule();
  }

  protected override words(): string {
    return this.model?.summary ?? 'The scale is on its way.';
  }

  protected override paint(plotly: Plotly, host: HTMLElement, size: PlotSize, afresh: boolean): void {
    const drawn = this.#drawn;
    if (this.model === null || (drawn === this.model && !afresh)) return;
    this.#drawn = this.model;
    if (drawn?.marks === this.model.marks && !afresh) {
      void plotly.relayout(host, scaleRangesUpdate(this.model));
      return;
    }
    this.#size = size;
    this.place = placeScale(this.model, size);
    const { data, layout } = makeScaleFigure(this.model, this.colours(), size);
    void plotly.react(host, data, layout, CONFIG).then(() => {
      this.dispatchEvent(new CustomEvent('vw-chart-drawn', { bubbles: true, composed: true }));
    });
  }

  override render(): TemplateResult {
    const { model, live, place } = this;
    return html`${super.render()}${
      model === null || live === null || place === null ? nothing : this.#layer(model, live, place)
    }`;
  }

  #layer(model: ScaleChartModel, live: ScaleLive, place: ScalePlace): TemplateResult {
    const told = this.pointed >= 0 ? this.pointed : live.picked;
    const { width, height } = this.#size;
    return html`
      <svg class="vw-live" width=${width} height=${height} aria-hidden="true">
        ${live.lit.map((share, i) => (share > 0 ? this.#band(model, place, i, 'lit', share) : nothing))}
        ${live.picked < 0 ? nothing : this.#band(model, place, live.picked, 'picked', 1)}
        ${model.marks.map((_, i) => this.#whisker(model, live, place, 'pitch', i))}
        ${MARKED.map((panel) => model.marks.map((_, i) => this.#mark(model, live, place, panel, i)))}
        ${live.moved ? model.marks.map((_, i) => this.#bar(model, live, place, i)) : this.#hint(place)}
        ${live.moved ? model.marks.map((_, i) => this.#whisker(model, live, place, 'move', i)) : nothing}
      </svg>
      <p class="vw-told" aria-hidden="true">${told < 0 ? nothing : this.tell(told)}</p>
      <div
        class="vw-picker"
        role="slider"
        tabindex="0"
        aria-label="Note"
        aria-valuemin="1"
        aria-valuemax=${model.marks.length}
        aria-valuenow=${live.picked + 1}
        aria-valuetext=${live.picked < 0 ? 'no note of these' : this.tell(live.picked)}
        @click=${this.#clicked}
        @pointermove=${this.#moved}
        @pointerleave=${this.#left}
        @keydown=${this.#keyed}
      ></div>
    `;
  }

  #band(
    model: ScaleChartModel,
    place: ScalePlace,
    i: number,
    kind: string,
    share: number,
  ): SVGTemplateResult {
    const { usual, x } = model.marks[i];
    const width = place.pxPerNote * (usual ? 0.9 : 0.4);
    const [top] = place.panels.pitch;
    return svg`<rect class=${`band ${kind}`} data-note=${model.marks[i].id}
      x=${xPx(model, place, x) - width / 2} y=${top} width=${width} height=${place.panels.cutoff[1] - top}
      style=${kind === 'lit' ? `fill-opacity: ${(0.06 + 0.22 * share).toFixed(3)}` : ''} />`;
  }

  /** One note as proposed, and the way it has come. */
  #mark(
    model: ScaleChartModel,
    live: ScaleLive,
    place: ScalePlace,
    panel: ScalePanelId,
    i: number,
  ): SVGTemplateResult {
    const mark = model.marks[i];
    const value = live.values[panel][i];
    const found = model.panels[panel].found[i];
    const x = xPx(model, place, mark.x);
    const beyond = found === null ? null : yPx(model, place, panel, found);
    if (value === null) return svg``;
    const to = yPx(model, place, panel, value);
    if (to.beyond !== null) {
      const up = to.beyond === 'above';
      return svg`<path class="beyond" data-panel=${panel} data-note=${mark.id} data-value=${value}
          d=${`M ${x - 4} ${to.y + (up ? 8 : -8)} h 8 l -4 ${up ? -7 : 7} z`} />
        ${
          panel === 'pitch' && place.pxPerNote >= NUMBER_PX
            ? svg`<text class="number" x=${x} y=${to.y + (up ? 19 : -11)}>${Math.round(value)}</text>`
            : nothing
        }`;
    }
    const size = mark.usual ? (panel === 'pitch' ? 3.6 : 2.9) : 2.6;
    return svg`
      ${
        live.moved && beyond !== null && Math.abs(to.y - beyond.y) > 0.5
          ? svg`<line class="way" x1=${x} x2=${x} y1=${beyond.y} y2=${to.y} />`
          : nothing
      }
      ${
        mark.usual
          ? svg`<circle class="proposed" data-panel=${panel} data-note=${mark.id} data-value=${value}
              cx=${x} cy=${to.y} r=${size} />`
          : svg`<path class="proposed" data-panel=${panel} data-note=${mark.id} data-value=${value}
              d=${`M ${x} ${to.y - size} l ${size} ${size} l ${-size} ${size} l ${-size} ${-size} z`} />`
      }`;
  }

  /** How far a note's pitch or its move may be off; cut off at the row's edges. */
  #whisker(
    model: ScaleChartModel,
    live: ScaleLive,
    place: ScalePlace,
    panel: 'pitch' | 'move',
    i: number,
  ): SVGTemplateResult {
    const mark = model.marks[i];
    const value = live.values[panel][i];
    const half = live.plusMinus[panel][i];
    if (value === null || half === null) return svg``;
    const x = xPx(model, place, mark.x);
    const [from, to] = [value + half, value - half].map((end) => yPx(model, place, panel, end).y);
    return svg`<line class="whisker" data-whisker=${panel} data-note=${mark.id} data-half=${half}
      x1=${x} x2=${x} y1=${from} y2=${to} />`;
  }

  /** What the moves' row says while it is empty. */
  #hint({ left, panels }: ScalePlace): SVGTemplateResult {
    const [upper, lower] = panels.move;
    return svg`<text class="hint" x=${(left + this.#size.width) / 2} y=${(upper + lower) / 2 - 8}>
      Slide a key’s opening: every note’s move stands here
    </text>`;
  }

  /** How far one note moves. */
  #bar(model: ScaleChartModel, live: ScaleLive, place: ScalePlace, i: number): SVGTemplateResult {
    const mark = model.marks[i];
    const move = live.values.move[i];
    if (move === null) return svg``;
    const zero = yPx(model, place, 'move', 0).y;
    const { y } = yPx(model, place, 'move', move);
    const width = Math.max(place.pxPerNote * (mark.usual ? 0.4 : 0.16), 2);
    const x = xPx(model, place, mark.x);
    const numbered = mark.usual && Math.abs(move) >= LEAST_NUMBERED_CENTS && place.pxPerNote >= NUMBER_PX;
    return svg`<rect class=${mark.usual ? 'bar' : 'bar other'} data-panel="move" data-note=${mark.id} data-value=${move}
        x=${x - width / 2} width=${width} y=${Math.min(y, zero)} height=${Math.abs(y - zero)} />
      ${
        numbered
          ? svg`<text class="number" x=${x} y=${y + (move > 0 ? -3 : 10)}>${signedCents(move).slice(1)}</text>`
          : nothing
      }`;
  }

  #at(event: MouseEvent): number {
    if (this.model === null || this.place === null) return -1;
    const box = (event.currentTarget as Element).getBoundingClientRect();
    return nearestMark(this.model, this.place, event.clientX - box.left);
  }

  #clicked = (event: MouseEvent): void => this.#say(this.#at(event));

  #moved = (event: PointerEvent): void => {
    if (event.pointerType === 'mouse') this.pointed = this.#at(event);
  };

  #left = (): void => {
    this.pointed = -1;
  };

  /** Arrows walk along the scale; Home and End are its ends. */
  #keyed = (event: KeyboardEvent): void => {
    if (this.model === null) return;
    const last = this.model.marks.length - 1;
    const here = this.#picked;
    const to: Readonly<Record<string, number>> = {
      ArrowRight: Math.min(here + 1, last),
      ArrowUp: Math.min(here + 1, last),
      ArrowLeft: Math.max(here - 1, 0),
      ArrowDown: Math.max(here - 1, 0),
      Home: 0,
      End: last,
    };
    const next = to[event.key];
    if (next === undefined) return;
    event.preventDefault();
    this.#say(next);
  };

  #say(index: number): void {
    const id = this.model?.marks[index]?.id;
    if (id === undefined) return;
    this.#picked = index;
    this.dispatchEvent(new CustomEvent('vw-note-change', { bubbles: true, composed: true, detail: { id } }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-scale-chart': VwScaleChart;
  }
  interface HTMLElementEventMap {
    'vw-note-change': CustomEvent<{ readonly id: string }>;
  }
}
