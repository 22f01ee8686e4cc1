import { html, nothing, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import '../../../parts/vw-bench-field.ts';
import '../../../parts/vw-choice.ts';
import { told } from '../../../parts/told.ts';
import type { LeaksActs } from '../../../shell/leaks-acts.ts';
import { BenchView } from '../../bench-view.ts';
import { keyStudySizeStyles } from '../../key-study/key-study-sizes.styles.ts';
import { keyStudyStyles } from '../../key-study/key-study-view.styles.ts';
import { regulationTabs, regulationTabsStyles } from '../regulation-tabs.ts';
import { regulationStyles } from '../regulation.styles.ts';
import { faultPanel, notesTable, picturePanel } from './leaks-panels.ts';
import { makeLeaksView, type LeaksView } from './leaks-view.model.ts';
import { leaksStyles } from './leaks-view.styles.ts';
import './vw-leak-map.ts';

/** What a leak costs: every note it touches, how wide it may be, and which leak hurts most. */
@customElement('vw-leaks-view')
export class VwLeaksView extends BenchView {
  protected override readonly pageStyles = [
    keyStudyStyles,
    keyStudySizeStyles,
    regulationTabsStyles,
    regulationStyles,
    leaksStyles,
  ];

  override render(): TemplateResult {
    if (this.bench === null) return html``;
    const acts = this.bench.leaks;
    const view = makeLeaksView(this.bench.store.get());
    return html`
      <main class="ks-page rg-page lk-page">
        ${regulationTabs('leaks')} ${this.#answer(view)} ${faultPanel(view, acts)} ${picturePanel(view, acts)}
        ${this.#map(view, acts)} ${view.played === null ? nothing : notesTable(view.played)}
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

  #answer({ played, problem, waiting, unit }: LeaksView): TemplateResult {
    const cautions = [...(problem === null ? [] : [problem]), ...(played?.warnings ?? [])];
    const reasons = played?.answer.reasons ?? [];
    return html`
      <section
        class="ks-answer"
        aria-label="Answer"
        aria-live="polite"
        aria-busy=${waiting && played === null ? 'true' : 'false'}
      >
        <div class="ks-said">
          <h1>
            ${played === null ? 'Playing every note with the leak and without…' : told(played.answer.headline, reasons, unit)}
          </h1>
          <p class="ks-standing">
            ${played === null ? nothing : told(played.answer.standing, reasons, unit)}
          </p>
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
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-leaks-view': VwLeaksView;
  }
}
