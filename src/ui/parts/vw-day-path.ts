import { html, LitElement, nothing, svg, type SVGTemplateResult, type TemplateResult } from 'lit';
import { customElement, property, query } from 'lit/decorators.js';
import { SAID, type DayStepName, type Said } from '../../documents/day-steps.ts';
import { SAY_WORDS, type DayPathView, type StepKey, type StepRow } from './day-path-view.model.ts';
import type { PathFold } from '../state/guidance-state.ts';
import { controlStyles } from './control.styles.ts';
import { placePanel } from './place-panel.ts';
import { dayPathStyles } from './vw-day-path.styles.ts';

/** Width of one key of the drawing, in its own units. */
const KEY_WIDTH = 26;
const KEY_HEIGHT = 26;

/**
 * The day at the bench on one line: a row of keys that shut as their steps are filled, and what is next. Its steps
 * lie over the page, beside the line, on a phone along its foot; they go with Escape, and when something else is
 * touched.
 *
 * @fires vw-path-go - when a person asks to be led to a step
 * @fires vw-path-say - when a person says a step is done or not needed, or takes that back
 * @fires vw-path-fold - when a person unfolds the path, folds it, or puts it away
 */
@customElement('vw-day-path')
export class VwDayPath extends LitElement {
  static override styles = [controlStyles, dayPathStyles];

  @property({ attribute: false }) path: DayPathView | null = null;

  /** Whether every step is listed. */
  @property({ type: Boolean }) unfolded = false;

  @query('#steps') private steps!: HTMLElement | null;
  @query('.fold') private opener!: HTMLButtonElement | null;

  #letGo: (() => void) | null = null;
  /** whether the focus was among the steps when they went */
  #wasInside = false;

  override render(): TemplateResult {
    const { path, unfolded } = this;
    if (path === null) return html`<section aria-label="The day"><div class="line"></div></section>`;
    return html`
      <section aria-label="The day">
        <div class="line">
          <svg class="keys" viewBox="0 0 ${KEY_WIDTH * path.rows.length} ${KEY_HEIGHT}" aria-hidden="true">
            ${path.rows.map(({ key }, i) => svg`<g transform="translate(${i * KEY_WIDTH} 0)">${drawnKey(key)}</g>`)}
          </svg>
          <p class="where">${path.where}</p>
          ${
            path.next === null
              ? html`<p class="through">The day is through.</p>`
              : html`<button
                  type="button"
                  class="next"
                  data-act="next"
                  @click=${() => this.#go(path.nextName!)}
                >
                  ${path.next}
                </button>`
          }
          <button
            type="button"
            class="fold"
            data-act="fold"
            popovertarget="steps"
            aria-expanded=${unfolded ? 'true' : 'false'}
          >
            <span class="word">The day,</span> ${path.through}
            <svg class="hook" viewBox="0 0 12 12" aria-hidden="true"><path d="M2 4l4 4 4-4" /></svg>
          </button>
        </div>
        <div
          id="steps"
          popover
          aria-label="Steps of the day"
          @beforetoggle=${this.#before}
          @toggle=${this.#toggled}
        >
          ${unfolded ? this.#steps(path) : nothing}
        </div>
      </section>
    `;
  }

  /** Who folds the path from outside is followed. */
  override updated(): void {
    if (!this.unfolded && this.steps?.matches(':popover-open')) this.steps.hidePopover();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#let();
  }

  #before = ({ newState }: ToggleEvent): void => {
    if (newState === 'open') this.unfolded = true;
    else this.#wasInside = this.contains(document.activeElement);
  };

  #toggled = ({ newState }: ToggleEvent): void => {
    const isOpen = newState === 'open';
    if (isOpen) this.#letGo = placePanel(this.steps!, this.opener!);
    else this.#let();
    this.unfolded = isOpen;
    this.#fold(isOpen ? 'open' : 'line');
    // Where nothing else was gone to, the hand goes on at the line.
    const isLost = document.activeElement === document.body || document.activeElement === this;
    if (!isOpen && this.#wasInside && isLost) this.opener?.focus({ preventScroll: true });
  };

  #let(): void {
    this.#letGo?.();
    this.#letGo = null;
  }

  /** Goes to what is next, else to where the day unfolds. */
  override focus(): void {
    this.renderRoot.querySelector<HTMLElement>('.next, .fold')?.focus();
  }

  #steps(path: DayPathView): TemplateResult {
    return html`
      <ol>
        ${path.rows.map((row) => this.#step(row))}
      </ol>
      <p class="away">
        <button type="button" data-act="put-away" @click=${() => this.#fold('away')}>
          Put the path away
        </button>
        <span>It can be laid out again from the library.</span>
        <slot></slot>
      </p>
    `;
  }

  #step({ name, title, key, standing, told, act, hand }: StepRow): TemplateResult {
    return html`
      <li
        data-step=${name}
        aria-current=${key.isHere ? 'step' : 'false'}
        class=${key.isNext ? 'is-next' : ''}
      >
        <svg class="key" viewBox="0 0 ${KEY_WIDTH} ${KEY_HEIGHT}" aria-hidden="true">${drawnKey(key)}</svg>
        <div class="words">
          <p class="name"><b>${title}</b> <span>${standing}</span></p>
          <p class="told">${told}</p>
        </div>
        <div class="acts">
          <button type="button" class="go" data-act="go" @click=${() => this.#go(name)}>${act}</button>
          ${
            hand === 'say'
              ? SAID.map(
                  (said) =>
                    html`<button
                      type="button"
                      data-act=${said}
                      aria-label="${title}: ${SAY_WORDS[said].toLowerCase()}"
                      @click=${() => this.#say(name, said)}
                    >
                      ${SAY_WORDS[said]}
                    </button>`,
                )
              : hand === 'take back'
                ? html`<button
                    type="button"
                    data-act="take-back"
                    aria-label="${title}: take back what was said"
                    @click=${() => this.#say(name, null)}
                  >
                    Take it back
                  </button>`
                : nothing
          }
        </div>
      </li>
    `;
  }

  /** The steps go first: with them the focus goes back to the line, and from there on to where the step is worked on. */
  #go(name: DayStepName): void {
    if (this.unfolded) this.steps?.hidePopover();
    this.dispatchEvent(new CustomEvent('vw-path-go', { bubbles: true, composed: true, detail: { name } }));
  }

  #say(name: DayStepName, said: Said | null): void {
    const detail = { name, said };
    this.dispatchEvent(new CustomEvent('vw-path-say', { bubbles: true, composed: true, detail }));
  }

  #fold(fold: PathFold): void {
    this.dispatchEvent(new CustomEvent('vw-path-fold', { bubbles: true, composed: true, detail: { fold } }));
  }
}

/** A key seen from the side: its post at the left, its pad over the rim of a hole in the tube. */
function drawnKey({ standing, openDeg, isHere }: StepKey): SVGTemplateResult {
  return svg`
    <path class="tube" d="M0 24.2H8V18.6M22 18.6V24.2H26" />
    ${isHere ? svg`<path class="here" d="M8 24.2H22" />` : nothing}
    ${
      standing === 'not needed'
        ? svg`<path class="idle" d="M10 18.6H20" />`
        : svg`<g transform="rotate(${-openDeg} 3.6 16.4)">
            <path class="arm" d="M3.6 16.4L7.5 12.4H20" />
            <rect class="pad ${standing.replace(' ', '-')}" x="6.6" y="13.2" width="16.8" height="4.8" rx="1.2" />
          </g>
          <circle class="post" cx="3.6" cy="16.4" r="1.8" />`
    }
  `;
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-day-path': VwDayPath;
  }
  interface HTMLElementEventMap {
    'vw-path-go': CustomEvent<{ readonly name: DayStepName }>;
    'vw-path-say': CustomEvent<{ readonly name: DayStepName; readonly said: Said | null }>;
    'vw-path-fold': CustomEvent<{ readonly fold: PathFold }>;
  }
}
