import { css, html, svg, type SVGTemplateResult, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { FramedDrawing } from './framed-drawing.ts';
import { controlStyles } from './control.styles.ts';
import {
  frontMmAt,
  placeDrawing,
  type DrawingPlace,
  type GapMark,
  type PadDrawing,
} from './pad-drawing.model.ts';
import type { PadGeometry } from '../state/study-report.ts';

/**
 * The key from the side, to scale, standing as proposed over the ghost of how it was found.
 *
 * @fires vw-opening-change - while a person drags the pad about its rod
 */
@customElement('vw-pad-drawing')
export class VwPadDrawing extends FramedDrawing {
  static override styles = [
    controlStyles,
    css`
      :host {
        position: relative;
      }
      svg {
        position: absolute;
        inset: 0;
        display: block;
        width: 100%;
        height: 100%;
        font-variant-numeric: tabular-nums;
        user-select: none;
      }
      .air {
        fill: var(--vw-air);
      }
      .body {
        fill: var(--vw-metal);
        stroke: var(--vw-ink);
        stroke-width: 0.75;
      }
      .crown {
        fill: none;
        stroke: var(--vw-soft);
        stroke-width: 1;
        stroke-dasharray: 2 4;
      }
      .rod {
        fill: var(--vw-sheet);
        stroke: var(--vw-ink);
        stroke-width: 1.5;
      }
      .arm {
        fill: none;
        stroke: var(--vw-ink);
        stroke-width: 5;
        stroke-linecap: round;
      }
      .arm-fill {
        fill: none;
        stroke: var(--vw-metal);
        stroke-width: 3;
        stroke-linecap: round;
      }
      .pad {
        fill: var(--vw-leather);
        stroke: var(--vw-ink);
        stroke-width: 1;
      }
      .cup {
        fill: var(--vw-metal);
        stroke: var(--vw-ink);
        stroke-width: 1.25;
      }
      .ghost {
        fill: none;
        stroke: var(--vw-found);
        stroke-width: 1.5;
        stroke-dasharray: 5 4;
      }
      path,
      circle,
      line {
        vector-effect: non-scaling-stroke;
      }
      .rim {
        stroke: var(--vw-soft);
        stroke-width: 1;
        stroke-dasharray: 2 3;
      }
      .gap {
        stroke: var(--vw-try);
        stroke-width: 2.5;
      }
      .lead {
        fill: none;
        stroke: var(--vw-try);
        stroke-width: 1;
        stroke-dasharray: 1 3;
      }
      text {
        fill: var(--vw-soft);
        font-size: 13px;
        text-anchor: middle;
      }
      /* Words over the picture stand clear of its lines. */
      text {
        paint-order: stroke;
        stroke: var(--vw-sheet);
        stroke-width: 3px;
        stroke-linejoin: round;
      }
      text.inside {
        stroke: var(--vw-air);
      }
      text.value {
        font-size: 16px;
        font-weight: 700;
        fill: var(--vw-try);
      }
      text.found {
        fill: var(--vw-found);
        text-anchor: start;
      }
      text.scale {
        text-anchor: end;
      }
      .bar {
        stroke: var(--vw-ink);
        stroke-width: 2;
      }
      .hold {
        fill: transparent;
        cursor: grab;
        touch-action: none;
      }
      .hold:active {
        cursor: grabbing;
      }
      .knob {
        fill: var(--vw-try);
        stroke: var(--vw-sheet);
        stroke-width: 2;
        pointer-events: none;
      }
      @media print {
        .hold,
        .knob {
          display: none;
        }
      }
    `,
  ];

  @property({ attribute: false }) drawing: PadDrawing | null = null;

  @property({ attribute: false }) geometry: PadGeometry | null = null;

  /** mm at the front, between which a drag may go */
  @property({ type: Number }) low = 0;

  @property({ type: Number }) high = 0;

  #dragging: number | null = null;

  override render(): TemplateResult {
    const { drawing: d, frame } = this;
    if (d === null || frame === null || frame.height < 80) return html``;
    const place = placeDrawing(d, frame);
    const bar = d.scaleBarMm * place.pxPerMm;
    const edge = frame.width - 10;
    return html`
      <svg viewBox="0 0 ${frame.width} ${frame.height}" role="img" aria-label=${d.words}>
        ${svg`
          <g transform="translate(${place.x} ${place.y}) scale(${place.pxPerMm})">
            <path class="air" d=${d.boreAirPath} />
            <path class="crown" d=${d.crownPath} />
            <path class="body" d=${d.bodyPath} />
            <line class="rim" x1=${d.leftMm} y1="0" x2=${d.leftMm + d.widthMm} y2="0" />
            <g transform=${d.ghostTurn} data-part="ghost">
              <path class="ghost" d=${d.cupPath} />
              <path class="ghost" d=${d.padPath} />
            </g>
            <g transform=${d.turn} data-part="pad">
              <path class="arm" d=${d.armPath} />
              <path class="arm-fill" d=${d.armPath} />
              <path class="cup" d=${d.cupPath} />
              <path class="pad" d=${d.padPath} />
            </g>
            <circle class="rod" cx=${d.rod.x} cy=${d.rod.y} r="1.3" />
            ${d.gaps.map((gap) => svg`<line class="gap" data-gap=${gap.at} x1=${gap.x} y1=${gap.yFace} x2=${gap.x} y2="0" />`)}
          </g>
          ${d.gaps.map((gap, i) => this.#words(gap, place, i))}
          <text class="found" x="8" y="18">┄ as found</text>
          <text class="scale" x=${edge} y="16">${d.scaleBarMm} mm</text>
          <line class="bar" x1=${edge - bar} y1="22" x2=${edge} y2="22" />
          <g transform="translate(${place.x + d.grip.x * place.pxPerMm} ${place.y + d.grip.y * place.pxPerMm})">
            <circle class="knob" r="8" />
            <circle class="hold" r="26"
              @pointerdown=${this.#take} @pointermove=${this.#drag} @pointerup=${this.#let} @pointercancel=${this.#let} />
          </g>
        `}
      </svg>
    `;
  }

  #words(gap: GapMark, place: DrawingPlace, i: number): SVGTemplateResult {
    const { x, y, fromX } = place.labels[i];
    const lead = place.beside
      ? `M ${fromX} ${place.y} L ${x} ${y - 13}`
      : `M ${fromX} ${place.y} V ${y - 34} L ${x} ${y - 14}`;
    const inside = place.beside && gap.at === 'centre' ? 'inside' : '';
    return svg`
      <path class="lead" d=${lead} />
      <text class=${inside} x=${x} y=${y}>${gap.at}</text>
      <text class="value ${inside}" data-value=${gap.at} x=${x} y=${y + 18}>${gap.value}</text>
    `;
  }

  #take = (event: PointerEvent): void => {
    this.#dragging = event.pointerId;
    (event.currentTarget as Element).setPointerCapture(event.pointerId);
    event.preventDefault();
  };

  #drag = (event: PointerEvent): void => {
    if (this.#dragging !== event.pointerId) return;
    if (this.geometry === null || this.drawing === null || this.frame === null) return;
    const frame = this.renderRoot.querySelector('svg')!;
    const toDrawing = frame.getScreenCTM()?.inverse();
    if (!toDrawing) return;
    const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(toDrawing);
    const place = placeDrawing(this.drawing, this.frame);
    const x = (at.x - place.x) / place.pxPerMm;
    const y = (at.y - place.y) / place.pxPerMm;
    const wanted = Math.round(frontMmAt(this.geometry, x, y) * 10) / 10;
    const frontMm = Math.min(Math.max(wanted, this.low), this.high);
    this.dispatchEvent(
      new CustomEvent('vw-opening-change', { bubbles: true, composed: true, detail: { frontMm } }),
    );
  };

  #let = (): void => {
    this.#dragging = null;
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-pad-drawing': VwPadDrawing;
  }
}
