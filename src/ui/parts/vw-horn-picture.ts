import { html, LitElement, nothing, svg, type SVGTemplateResult, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { controlStyles } from './control.styles.ts';
import type { HornPicture } from './horn-picture.model.ts';
import { padAt, placeHornPicture, type HornPicturePlace, type PadPlace } from './horn-picture-place.model.ts';
import { hornPictureStyles } from './vw-horn-picture.styles.ts';

/** A touch this far beside a pad still means it, px. */
const REACH_PX = 30;

/**
 * The horn's seen from outside, laid flat: to scale: every pad where it stands, one of them chosen.
 *
 * @fires vw-key-choose - when a person picks another pad
 */
@customElement('vw-horn-picture')
export class VwHornPicture extends LitElement {
  static override styles = [controlStyles, hornPictureStyles];

  @property({ attribute: false }) picture: HornPicture | null = null;

  @state() private width = 0;

  #watch: ResizeObserver | null = null;

  #place: HornPicturePlace | null = null;

  override connectedCallback(): void {
    super.connectedCallback();
    this.#watch = new ResizeObserver(() => {
      this.width = this.clientWidth;
    });
    this.#watch.observe(this);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#watch?.disconnect();
  }

  override render(): TemplateResult {
    const { picture, width } = this;
    if (picture === null || width < 40) return html``;
    const place = placeHornPicture(picture, width);
    this.#place = place;
    const chosen = place.pads.find(({ pad }) => pad.selected);
    const stop = chosen ?? place.pads[0];
    return html`
      <div class="room">
        <svg
          width=${place.width}
          height=${place.height}
          viewBox="0 0 ${place.width} ${place.height}"
          role="radiogroup"
          aria-label="${picture.words}. Key, from neck to bell"
          @click=${this.#touch}
          @keydown=${this.#move}
        >
          ${svg`
            <path class="wall" d=${place.wallPath} />
            <path class="middle" d=${place.middlePath} />
            <path class="joints" d=${place.jointsPath} />
            ${place.pads.map(({ pad, leader }) => svg`<path class="leader ${pad.selected ? 'chosen' : ''}" d=${leader} />`)}
            ${place.vents.map((v) => svg`<circle class="vent" cx=${v.x} cy=${v.y} r=${Math.max(1.2, v.holePx / 2)} />`)}
            ${place.pads.map((p) => this.#key(p, p === stop))}
          `}
        </svg>
      </div>
      ${this.#foot(picture, place)}
    `;
  }

  #key({ pad, x, y, padPx, holePx, label, name, levelPath }: PadPlace, isStop: boolean): SVGTemplateResult {
    const middle = label.left + label.width / 2;
    const numberY = label.top + label.height / 2 + (name === '' ? 5 : -2);
    return svg`
      <g
        class="key"
        role="radio"
        data-key=${pad.id}
        aria-checked=${pad.selected ? 'true' : 'false'}
        aria-label=${pad.said}
        tabindex=${isStop ? 0 : -1}
      >
        <title>${pad.said}</title>
        <circle class="pad ${pad.rests}" cx=${x} cy=${y} r=${padPx / 2} />
        <circle class="hole" cx=${x} cy=${y} r=${holePx / 2} />
        ${levelPath === null ? nothing : svg`<path class="level" d=${levelPath} />`}
        <rect class="slot" x=${label.left + 1} y=${label.top + 1} rx="5"
          width=${label.width - 2} height=${label.height - 2} />
        <text class="number" x=${middle} y=${numberY}>${pad.number}</text>
        ${name === '' ? nothing : svg`<text class="name" x=${middle} y=${numberY + 15}>${name}</text>`}
      </g>
    `;
  }

  #foot(picture: HornPicture, place: HornPicturePlace): TemplateResult {
    const isFilled = picture.pads.some((pad) => pad.ventShare !== null);
    const sides = place.upright ? 'player’s right at the left' : 'player’s left on top';
    return html`
      <p class="foot">
        <span>
          <span class="bar" style="width:${picture.scaleBarMm * place.pxPerMm}px"></span
          >${picture.scaleBarWords}
        </span>
        <span>
          seen from outside, laid flat: ${place.upright ? 'neck on top' : 'neck at the left'},
          ${picture.knowsAround ? sides : 'places round the wall not known'}
        </span>
        <span><span class="sample"></span>rests open</span>
        <span><span class="sample closed"></span>rests closed</span>
        ${isFilled ? html`<span><span class="sample level"></span>filled to its vent share</span>` : nothing}
      </p>
    `;
  }

  /** A touch on a pad or its words means that pad; beside one, the nearest. */
  #touch = (event: MouseEvent): void => {
    const key = (event.target as Element).closest('[data-key]')?.getAttribute('data-key');
    if (key !== null && key !== undefined) {
      this.#choose(key);
      return;
    }
    const box = this.renderRoot.querySelector('svg')!.getBoundingClientRect();
    const near = padAt(this.#place!, event.clientX - box.left, event.clientY - box.top, REACH_PX);
    if (near !== null) this.#choose(near.id);
  };

  #choose(keyId: string): void {
    const chosen = this.picture?.pads.find((pad) => pad.selected)?.id;
    if (keyId === chosen) return;
    this.dispatchEvent(
      new CustomEvent('vw-key-choose', { bubbles: true, composed: true, detail: { keyId } }),
    );
  }

  /** Arrows walk along the horn, round its ends; Home is the neck, End the bell. */
  #move = (event: KeyboardEvent): void => {
    const pads = this.#place?.pads ?? [];
    const last = pads.length - 1;
    const here = pads.findIndex(({ pad }) => pad.id === (event.target as Element).getAttribute('data-key'));
    if (here < 0) return;
    const to: Readonly<Record<string, number>> = {
      ArrowRight: here === last ? 0 : here + 1,
      ArrowDown: here === last ? 0 : here + 1,
      ArrowLeft: here === 0 ? last : here - 1,
      ArrowUp: here === 0 ? last : here - 1,
      Home: 0,
      End: last,
      ' ': here,
      Enter: here,
    };
    const next = to[event.key];
    if (next === undefined) return;
    event.preventDefault();
    const { id } = pads[next].pad;
    this.renderRoot.querySelector<SVGGElement>(`[data-key="${CSS.escape(id)}"]`)?.focus();
    this.#choose(id);
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-horn-picture': VwHornPicture;
  }
  interface HTMLElementEventMap {
    'vw-key-choose': CustomEvent<{ readonly keyId: string }>;
  }
}
