import { css, html, nothing, svg, type SVGTemplateResult, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { FramedDrawing } from './framed-drawing.ts';
import { frontMmAt, type PadDrawing } from './pad-drawing.model.ts';
import { placeStack, type StackDrawing, type StackPlace } from './stack-drawing.model.ts';
import { VwPadDrawing } from './vw-pad-drawing.ts';
import type { PadGeometry } from '../state/study-report.ts';

/** What is written under one of the keys. */
export interface StackWords {
  readonly name: string;
  readonly value: string;
}

/**
 * Two keys and the arm between them, from the side and to scale: press the driver and see the driven key close.
 *
 * @fires vw-press-change - while a person drags the driver about its rod
 */
@customElement('vw-stack-drawing')
export class VwStackDrawing extends FramedDrawing {
  static override styles = [
    ...VwPadDrawing.styles,
    css`
      .link-arm {
        fill: none;
        stroke: var(--vw-ink);
        stroke-width: 7;
        stroke-linecap: round;
        stroke-linejoin: round;
      }
      .link-fill {
        fill: none;
        stroke: var(--vw-try);
        stroke-width: 4.5;
        stroke-linecap: round;
        stroke-linejoin: round;
      }
      .driven .link-fill {
        stroke: var(--vw-found);
      }
      .screw {
        stroke: var(--vw-ink);
        stroke-width: 4;
      }
      text.name {
        fill: var(--vw-ink);
        font-size: 15px;
        font-weight: 700;
      }
      text.driven {
        fill: var(--vw-found);
      }
    `,
  ];

  @property({ attribute: false }) drawing: StackDrawing | null = null;

  @property({ attribute: false }) driver: PadGeometry | null = null;

  /** mm at the driver's front, between which a drag may go: home and at rest */
  @property({ type: Number }) home = 0;

  @property({ type: Number }) rest = 0;

  @property({ attribute: false }) driverWords: StackWords = { name: '', value: '' };

  @property({ attribute: false }) drivenWords: StackWords = { name: '', value: '' };

  /** the whole picture, said */
  @property() words = '';

  #dragging: number | null = null;

  override render(): TemplateResult {
    const { drawing: d, frame } = this;
    if (d === null || frame === null || frame.height < 80) return html``;
    const place = placeStack(d, frame);
    const bar = d.scaleBarMm * place.pxPerMm;
    const edge = frame.width - 10;
    return html`
      <svg viewBox="0 0 ${frame.width} ${frame.height}" role="img" aria-label=${this.words}>
        ${svg`
          <clipPath id="shown">
            <rect x=${d.leftMm} y=${d.topMm} width=${d.widthMm} height=${d.heightMm} />
          </clipPath>
          <g clip-path="url(#shown)" transform="translate(${place.x} ${place.y}) scale(${place.pxPerMm})">
            <line class="rim" x1=${d.leftMm} y1="0" x2=${d.leftMm + d.widthMm} y2="0" />
            <g class="driven" transform="translate(${d.drivenAt} 0) scale(-1 1)" data-part="driven">
              ${keyShape(d.driven, d.drivenTurn, d.drivenArm)}
            </g>
            <g transform="translate(${d.driverAt} 0)" data-part="driver">
              ${keyShape(d.driver, d.driverTurn, d.driverArm)}
            </g>
            ${d.screw === null ? nothing : svg`<line class="screw" x1=${d.screw.head.x} y1=${d.screw.head.y} x2=${d.screw.tip.x} y2=${d.screw.tip.y} />`}
          </g>
          ${this.#label(place, d.driverAt, this.driverWords, '')}
          ${this.#label(place, d.drivenAt, this.drivenWords, 'driven')}
          <text class="found" x="8" y="18">┄ at rest</text>
          <text class="scale" x=${edge} y="16">${d.scaleBarMm} mm</text>
          <line class="bar" x1=${edge - bar} y1="22" x2=${edge} y2="22" />
          ${
            this.rest > this.home
              ? svg`<g transform="translate(${place.x + d.grip.x * place.pxPerMm} ${place.y + d.grip.y * place.pxPerMm})">
                  <circle class="knob" r="8" />
                  <circle class="hold" r="26"
                    @pointerdown=${this.#take} @pointermove=${this.#drag} @pointerup=${this.#let} @pointercancel=${this.#let} />
                </g>`
              : nothing
          }
        `}
      </svg>
    `;
  }

  #label(place: StackPlace, at: number, { name, value }: StackWords, kind: string): SVGTemplateResult {
    const x = place.x + at * place.pxPerMm;
    return svg`
      <text class="name ${kind}" x=${x} y=${place.wordsY}>${name}</text>
      <text class="value ${kind}" x=${x} y=${place.wordsY + 19}>${value}</text>
    `;
  }

  #take = (event: PointerEvent): void => {
    this.#dragging = event.pointerId;
    (event.currentTarget as Element).setPointerCapture(event.pointerId);
    event.preventDefault();
  };

  #drag = (event: PointerEvent): void => {
    const { drawing, driver, frame } = this;
    if (this.#dragging !== event.pointerId || drawing === null || driver === null || frame === null) return;
    const toDrawing = this.renderRoot.querySelector('svg')!.getScreenCTM()?.inverse();
    if (!toDrawing) return;
    const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(toDrawing);
    const place = placeStack(drawing, frame);
    const x = (at.x - place.x) / place.pxPerMm - drawing.driverAt;
    const y = (at.y - place.y) / place.pxPerMm;
    const share = (this.rest - frontMmAt(driver, x, y)) / (this.rest - this.home);
    const pressed = Math.min(Math.max(share, 0), 1);
    this.dispatchEvent(
      new CustomEvent('vw-press-change', { bubbles: true, composed: true, detail: { pressed } }),
    );
  };

  #let = (): void => {
    this.#dragging = null;
  };
}

/** A key with its arm, in its own frame, over the ghost of how it stands at rest. */
function keyShape(key: PadDrawing, turn: string, arm: string | null): SVGTemplateResult {
  return svg`
    <path class="air" d=${key.boreAirPath} />
    <path class="crown" d=${key.crownPath} />
    <path class="body" d=${key.bodyPath} />
    <g transform=${key.ghostTurn}>
      <path class="ghost" d=${key.cupPath} />
      <path class="ghost" d=${key.padPath} />
    </g>
    <g transform=${turn}>
      <path class="arm" d=${key.armPath} />
      <path class="arm-fill" d=${key.armPath} />
      <path class="cup" d=${key.cupPath} />
      <path class="pad" d=${key.padPath} />
      ${arm === null ? nothing : svg`<path class="link-arm" d=${arm} /><path class="link-fill" d=${arm} />`}
    </g>
    <circle class="rod" cx=${key.rod.x} cy=${key.rod.y} r="1.3" />
  `;
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-stack-drawing': VwStackDrawing;
  }
  interface HTMLElementEventMap {
    'vw-press-change': CustomEvent<{ readonly pressed: number }>;
  }
}
