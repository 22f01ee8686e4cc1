import { css, html, LitElement, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { placeTo } from './grid-stops.model.ts';
import { VwReason } from './vw-reason.ts';

const ROW = 'tr, [role="row"]';
const CELL = 'td, th, [role="cell"], [role="rowheader"]';
const STOPS = `:is(${CELL}) :is(button, a[href], vw-reason)`;

/**
 * A table whose many figures, buttons and links are one stop of the tabulator; the arrows go from one to the next.
 *
 * @slot - the table, or what has its roles
 */
@customElement('vw-grid-table')
export class VwGridTable extends LitElement {
  static override styles = css`
    :host {
      display: block;
    }
  `;

  /** where the tabulator comes in */
  #at: HTMLElement | null = null;

  /** Rows come and go with what is shown. */
  readonly #rows = new MutationObserver(() => this.#settle());

  override render(): TemplateResult {
    return html`<slot @slotchange=${() => this.#settle()}></slot>`;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#rows.observe(this, { childList: true, subtree: true });
    this.addEventListener('keydown', this.#pressed);
    this.addEventListener('focusin', this.#entered);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#rows.disconnect();
    this.removeEventListener('keydown', this.#pressed);
    this.removeEventListener('focusin', this.#entered);
  }

  get #stops(): HTMLElement[] {
    return [...this.querySelectorAll<HTMLElement>(STOPS)];
  }

  /** One stop is the tabulator’s, the others the arrows’. */
  #settle(): void {
    this.querySelector('table, [role="table"]')?.setAttribute('role', 'grid');
    const stops = this.#stops;
    if (this.#at === null || !stops.includes(this.#at)) this.#at = stops[0] ?? null;
    for (const stop of stops) {
      const isPassed = stop !== this.#at;
      if (stop instanceof VwReason) stop.passed = isPassed;
      else stop.tabIndex = isPassed ? -1 : 0;
    }
  }

  #entered = (event: FocusEvent): void => {
    const stop = this.#stops.find((each) => each === event.target);
    if (stop === undefined || stop === this.#at) return;
    this.#at = stop;
    this.#settle();
  };

  #pressed = (event: KeyboardEvent): void => {
    if (event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return;
    // In a reason that is open the arrows read on.
    if (event.composedPath().some((part) => part instanceof Element && part.matches('[popover]'))) return;
    const stops = this.#stops;
    const rows = [...this.querySelectorAll(ROW)];
    const places = stops.map((stop) => {
      const [row, cell] = [stop.closest(ROW)!, stop.closest(CELL)!];
      return { row: rows.indexOf(row), column: [...row.children].indexOf(cell) };
    });
    const to = placeTo(places, stops.indexOf(event.target as HTMLElement), event.key);
    if (to === null) return;
    event.preventDefault();
    stops[to].focus();
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-grid-table': VwGridTable;
  }
}
