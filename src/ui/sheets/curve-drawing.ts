import { html, svg, type SVGTemplateResult, type TemplateResult } from 'lit';
import type { CurveMark, SheetCurve } from '../../documents/player-sheet-curve.ts';
import { drawCurve } from './curve-drawing.model.ts';

/** The curve as ink: own shapes for the marks, so that it tells them apart without colour. */
export function curveDrawing(curve: SheetCurve): TemplateResult {
  const { widthPt, heightPt, frame, path, band, xTicks, yTicks, marks } = drawCurve(curve);
  const middle = (frame.left + frame.right) / 2;
  return html`
    <svg
      class="ps-curve"
      viewBox="0 0 ${widthPt} ${heightPt}"
      role="img"
      aria-labelledby="ps-curve-title ps-curve-told"
    >
      <title id="ps-curve-title">The ${curve.keyName} key at every opening</title>
      <desc id="ps-curve-told">${curve.told}</desc>
      <g aria-hidden="true">
        ${
          band === null
            ? null
            : svg`<rect class="ps-band" x=${band.x} y=${frame.top} width=${band.width}
                height=${frame.bottom - frame.top}></rect>`
        }
        ${yTicks.map(
          ({ y, text }) =>
            svg`<path class="ps-rule" d="M${frame.left} ${y}H${frame.right}"></path>
              <text x=${frame.left - 4} y=${y + 4} text-anchor="end">${text}</text>`,
        )}
        ${xTicks.map(
          ({ x, text }) =>
            svg`<path class="ps-tick" d="M${x} ${frame.bottom}v3"></path>
              <text x=${x} y=${frame.bottom + 14} text-anchor="middle">${text}</text>`,
        )}
        <path class="ps-line" d=${path}></path>
        ${marks.map(({ mark, x, y }) => svg`<g transform="translate(${x} ${y})">${markShape(mark)}</g>`)}
        <text x=${middle} y=${heightPt - 4} text-anchor="middle">mm open at the front; up: % vented</text>
      </g>
    </svg>
  `;
}

/** The shape a mark has on the curve and in the table beside it. */
function markShape(mark: CurveMark): SVGTemplateResult {
  switch (mark) {
    case 'as found':
      return svg`<circle class="ps-hollow" r="4.2"></circle>`;
    case 'as set':
    case 'as proposed':
      return svg`<circle class="ps-solid" r="4.2"></circle>`;
    case 'wish':
      return svg`<path class="ps-hollow" d="M0 -5.5L5.2 4H-5.2Z"></path>`;
    case 'enough':
      return svg`<path class="ps-enough" d="M0 -14V14"></path>`;
  }
}

/** The same shape in a line of text. */
export function markInText(mark: CurveMark): TemplateResult {
  return html`<svg class="ps-mark" viewBox="-7 -7 14 14" aria-hidden="true">${markShape(mark)}</svg>`;
}
