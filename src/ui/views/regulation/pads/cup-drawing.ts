import { html, svg, type TemplateResult } from 'lit';
import type { CupDrawing } from './cup-drawing.model.ts';

/** The cup in hand as its pad first touches; a sentence where its floor is not known. */
export function cupDrawing(drawing: CupDrawing | null): TemplateResult {
  if (drawing === null) {
    return html`<p class="pd-no-drawing">
      Choose a key with a measured cup in the table, and it is drawn here to scale.
    </p>`;
  }
  const { leftMm, topMm, widthMm, heightMm, rod, bed, pad, turnDeg, gape } = drawing;
  const line = widthMm / 300;
  const letter = widthMm / 24;
  const labelY = topMm + heightMm + letter;
  return html`
    <figure>
      <svg
        viewBox="${leftMm} ${topMm} ${widthMm} ${heightMm + letter * 1.3}"
        role="img"
        aria-label=${drawing.words}
      >
        ${svg`
          <path class="rim" d=${drawing.rimPath} stroke-width=${line} />
          <g transform="rotate(${turnDeg} ${rod.x} ${rod.y})">
            <rect class="pad" x=${pad.x} y=${pad.y} width=${pad.width} height=${pad.height} stroke-width=${line} />
            <rect class="bed" x=${bed.x} y=${bed.y} width=${bed.width} height=${bed.height} />
            <path class="arm" d=${drawing.armPath} stroke-width=${line * 5} />
            <path class="cup" d=${drawing.cupPath} stroke-width=${line} />
          </g>
          <circle class="rod" cx=${rod.x} cy=${rod.y} r="1.8" stroke-width=${line} />
          ${
            gape === null
              ? ''
              : svg`
                <line class="gape" x1=${gape.x} x2=${gape.x} y1="0" y2=${gape.y} stroke-width=${line * 3} />
                <text x=${gape.x} y=${labelY} font-size=${letter} text-anchor="middle">${gape.words}</text>`
          }
        `}
      </svg>
      <figcaption>${drawing.words} <span>To scale.</span></figcaption>
    </figure>
  `;
}
