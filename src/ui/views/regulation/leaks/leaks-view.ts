import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { guard } from 'lit/directives/guard.js';
import { live } from 'lit/directives/live.js';
import '../../../parts/vw-bench-field.ts';
import '../../../parts/vw-choice.ts';
import type { Bench } from '../../../shell/bench.ts';
import { makeLeaksActs, type LeaksActs } from '../../../shell/leaks-acts.ts';
import type { LeakShape } from '../../../state/leak-fault.ts';
import { adoptStyles } from '../../adopt-styles.ts';
import { keyStudySizeStyles } from '../../key-study/key-study-sizes.styles.ts';
import { keyStudyStyles } from '../../key-study/key-study-view.styles.ts';
import { regulationTabs, regulationTabsStyles } from '../regulation-tabs.ts';
import { regulationStyles } from '../regulation.styles.ts';
import { driverOf, makeLeaksView, type LeaksView, type Option, type PlayedLeak } from './leaks-view.model.ts';
import { leaksStyles } from './leaks-view.styles.ts';
import './vw-leak-map.ts';

const SHAPES = [
  { value: 'ring', label: 'all round' },
  { value: 'front', label: 'front' },
  { value: 'back', label: 'back' },
];
const ARCS = [30, 60, 90, 180].map((deg) => ({ value: String(deg), label: `${deg}°` }));
const SHUTS = [
  { value: 'late', label: 'late' },
  { value: 'early', label: 'early' },
];
const LOSSES = [1, 3, 6].map((db) => ({ value: String(db), label: `${db} dB` }));
/** Of the slider, papers. */
const PAPERS = { low: 0.25, high: 8, step: 0.25, mm: 0.025 };

/** What a leak costs: every note it touches, how wide it may be, and which leak hurts most. */
@customElement('vw-leaks-view')
export class VwLeaksView extends LitElement {
  @property({ attribute: false }) bench: Bench | null = null;

  #stop: (() => void) | null = null;
  #acts: LeaksActs | null = null;

  override createRenderRoot(): HTMLElement {
    adoptStyles(keyStudyStyles, keyStudySizeStyles, regulationTabsStyles, regulationStyles, leaksStyles);
    return this;
  }

  override willUpdate(changed: Map<PropertyKey, unknown>): void {
    if (!changed.has('bench') || this.bench === null) return;
    this.#acts = makeLeaksActs(this.bench.store);
    this.#stop?.();
    this.#stop = this.bench.store.subscribe(() => this.requestUpdate());
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#stop?.();
  }

  override render(): TemplateResult {
    const acts = this.#acts;
    if (this.bench === null || acts === null) return html``;
    const view = makeLeaksView(this.bench.store.get());
    return html`
      <main class="ks-page rg-page lk-page">
        ${regulationTabs('leaks')} ${this.#answer(view)} ${this.#fault(view, acts)}
        ${this.#picture(view, acts)} ${this.#map(view, acts)}
        ${view.played === null ? nothing : this.#table(view.played)}
        <footer class="ks-foot">
          <p>
            Pads stand as found and seal everywhere else. A paper is a cigarette paper, 0.025 mm. Height is
            that of the resonance; it falls with the cube of the gap, pitch hardly moves.
          </p>
          <p>
            ${view.hornName}. Heat loosens adhesive and can hurt lacquer: floating a pad is for trained hands.
          </p>
        </footer>
      </main>
    `;
  }

  #answer({ played, problem, waiting }: LeaksView): TemplateResult {
    const cautions = [...(problem === null ? [] : [problem]), ...(played?.warnings ?? [])];
    return html`
      <section
        class="ks-answer"
        aria-label="Answer"
        aria-live="polite"
        aria-busy=${waiting && played === null ? 'true' : 'false'}
      >
        <div class="ks-said">
          <h1>${played?.answer.headline ?? 'Playing every note with the leak and without…'}</h1>
          <p class="ks-standing">${played?.answer.standing ?? nothing}</p>
        </div>
        <div class="ks-why">
          <p class="rg-notes">${played?.answer.second ?? nothing}</p>
          <p>${played?.answer.sure ?? nothing}</p>
        </div>
        ${
          cautions.length === 0
            ? nothing
            : html`<ul class="ks-cautions" aria-label="Limits of this answer">
                ${cautions.map((line) => html`<li>${line}</li>`)}
              </ul>`
        }
      </section>
    `;
  }

  #fault(view: LeaksView, acts: LeaksActs): TemplateResult {
    const { fault, gap } = view;
    const from = (value: string): void => {
      const link = driverOf(value);
      if (link === null) acts.atPad(fault.pad);
      else acts.atLink(link.driver, fault.pad);
    };
    return html`
      <section class="ks-try lk-fault" aria-labelledby="lk-fault-title" @focusin=${() => acts.expectTyping()}>
        <div class="lk-group">
          <h2 id="lk-fault-title">The leak</h2>
          <div class="lk-choices">
            ${select('Pad', 'pad', view.pads, fault.pad, (value) => acts.atPad(value))}
            ${select('Cause', 'source', view.sources, view.source, from)} ${this.#shape(view, acts)}
          </div>
        </div>
        <div class="lk-group">
          <h2>How wide</h2>
          <div class="lk-gap">
            <vw-bench-field
              data-field="gap"
              .label=${gap.label}
              .hint=${gap.hint}
              .text=${gap.text}
              .echo=${gap.echo}
              .problem=${gap.problem}
              @vw-field-change=${(e: CustomEvent<{ text: string }>) => void acts.typeGap(e.detail.text)}
              @vw-field-restore=${() => acts.restoreGap()}
            ></vw-bench-field>
            <input
              type="range"
              data-act="gap"
              aria-label="Gap in papers"
              aria-valuetext=${gap.echo}
              min=${PAPERS.low}
              max=${PAPERS.high}
              step=${PAPERS.step}
              .value=${live(String(Math.round(view.papers / PAPERS.step) * PAPERS.step))}
              @input=${(e: Event) => acts.setGap((e.target as HTMLInputElement).valueAsNumber * PAPERS.mm)}
            />
          </div>
        </div>
        <div class="lk-group">
          <h2>How wide it may be</h2>
          <div class="lk-choices">
            ${select('until', 'note', view.notes, view.noteId, (value) => acts.setNote(value))}
            <vw-choice
              label="loses"
              data-act="loss"
              .options=${LOSSES}
              .value=${String(view.lostDb)}
              @vw-choice-change=${(e: CustomEvent<{ value: string }>) => acts.setLostDb(Number(e.detail.value))}
            ></vw-choice>
          </div>
        </div>
      </section>
    `;
  }

  /** What part of a seat stands off, or how a link is out. */
  #shape({ fault }: LeaksView, acts: LeaksActs): TemplateResult {
    if (fault.source.kind === 'link') {
      return html`<vw-choice
        label="It shuts"
        data-act="shuts"
        .options=${SHUTS}
        .value=${fault.source.shuts}
        @vw-choice-change=${(e: CustomEvent<{ value: string }>) =>
          acts.setShuts(e.detail.value as 'late' | 'early')}
      ></vw-choice>`;
    }
    return html`
      <vw-choice
        label="Open"
        data-act="shape"
        .options=${SHAPES}
        .value=${fault.shape}
        @vw-choice-change=${(e: CustomEvent<{ value: string }>) => acts.setShape(e.detail.value as LeakShape)}
      ></vw-choice>
      ${
        fault.shape === 'ring'
          ? nothing
          : select('over', 'arc', ARCS, String(fault.arcDeg), (v) => acts.setArc(Number(v)))
      }
    `;
  }

  #picture({ played }: LeaksView, acts: LeaksActs): TemplateResult {
    return html`
      <section class="rg-panel lk-picture" aria-labelledby="lk-picture-title">
        <h2 id="lk-picture-title">Height every note loses, dB</h2>
        <div class="lk-scroll">
          <div class="lk-columns" role="group" aria-label=${played?.words ?? ''}>
            ${
              played === null
                ? nothing
                : html`<i class="lk-limit" style=${`--share:${played.limitShare}`} aria-hidden="true"></i>
                    ${played.columns.map(
                      ({ id, label, share, text, picked }) => html`
                        <button
                          type="button"
                          data-note=${id}
                          aria-pressed=${picked ? 'true' : 'false'}
                          @click=${() => acts.setNote(id)}
                        >
                          <span class="lk-note">${label}</span>
                          <span class="lk-bar" style=${`--share:${share}`}>
                            <b>${text}</b><span class="lk-heard">${heard(text)}</span><i></i>
                          </span>
                        </button>
                      `,
                    )}`
            }
          </div>
        </div>
      </section>
    `;
  }

  #map(view: LeaksView, acts: LeaksActs): TemplateResult {
    return html`
      <section
        class="rg-panel lk-map"
        aria-labelledby="lk-map-title"
        @vw-leak-pick=${(
          e: CustomEvent<{ place: { pad: string; by: string | null } | null; note: string | null }>,
        ) => {
          const { place, note } = e.detail;
          if (note !== null) acts.setNote(note);
          if (place === null) return;
          if (place.by === null) acts.atPad(place.pad);
          else acts.atLink(place.by, place.pad);
        }}
      >
        <div class="lk-head">
          <h2 id="lk-map-title">Which leak hurts which notes, the worst first</h2>
          <vw-choice
            label="Every leak"
            data-act="map-gap"
            .options=${view.mapGaps}
            .value=${view.mapGap}
            @vw-choice-change=${(e: CustomEvent<{ value: string }>) => acts.setMapGap(Number(e.detail.value))}
          ></vw-choice>
        </div>
        <div class="lk-map-room" aria-busy=${view.mapWaiting ? 'true' : 'false'}>
          ${
            view.map === null
              ? html`<p>Playing every note with every leak…</p>`
              : html`<vw-leak-map .map=${view.map} .note=${view.noteId} .place=${view.place}></vw-leak-map>`
          }
        </div>
      </section>
    `;
  }

  #table(played: PlayedLeak): TemplateResult {
    return html`
      <details class="ks-table">
        <summary>The numbers behind the picture</summary>
        <p>${played.words}</p>
        <div class="ks-scroll" tabindex="0" role="region" aria-label="Table of the notes">
          ${guard(
            [played.rows],
            () =>
              html`<table>
                <thead>
                  <tr>
                    <th scope="col">note</th>
                    <th scope="col">height dB</th>
                    <th scope="col">cents</th>
                    <th scope="col">rise time</th>
                  </tr>
                </thead>
                <tbody>
                  ${played.rows.map(
                    ({ note, db, cents, rise }) =>
                      html`<tr>
                        <th scope="row">${note}</th>
                        <td>${db}</td>
                        <td>${cents}</td>
                        <td>${rise}</td>
                      </tr>`,
                  )}
                </tbody>
              </table>`,
          )}
        </div>
      </details>
    `;
  }
}

/** What stands after a bar's number, for who does not see the bar. */
function heard(text: string): string {
  return text === '' ? 'loses nothing' : text === 'lost' ? '' : ' dB lost';
}

function select(
  label: string,
  act: string,
  options: readonly Option[],
  value: string,
  pick: (value: string) => void,
): TemplateResult {
  return html`
    <label class="rg-select">
      <span>${label}</span>
      <select
        data-act=${act}
        .value=${live(value)}
        @change=${(e: Event) => pick((e.target as HTMLSelectElement).value)}
      >
        ${options.map(
          (option) =>
            html`<option value=${option.value} ?selected=${option.value === value}>${option.label}</option>`,
        )}
      </select>
    </label>
  `;
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-leaks-view': VwLeaksView;
  }
}
