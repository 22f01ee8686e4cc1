import { LitElement } from 'lit';
import { state } from 'lit/decorators.js';

/** Width and height an element has on the page, px. */
export interface Frame {
  readonly width: number;
  readonly height: number;
}

/** A drawing that is fitted to the room its element has, and drawn anew when that changes. */
export abstract class FramedDrawing extends LitElement {
  /** null before the page gave it room */
  @state() protected frame: Frame | null = null;

  #watch: ResizeObserver | null = null;

  override connectedCallback(): void {
    super.connectedCallback();
    this.#watch = new ResizeObserver(() => {
      this.frame = { width: this.clientWidth, height: this.clientHeight };
    });
    this.#watch.observe(this);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#watch?.disconnect();
  }
}
