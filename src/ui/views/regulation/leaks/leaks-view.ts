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
import { besidePanel } from './beside-panel.ts';
import { besideStyles } from './beside.styles.ts';
import { askedPanel, faultPanel, playedPanel } from './leaks-panels.ts';
import { notesTable, picturePanel } from './leaks-picture.ts';
import { makeLeaksView, type LeaksView } from './leaks-view.model.ts';
import { leaksStyles } from './leaks-view.styles.ts';
import './vw-leak-map.ts';

const SURE =
  'One key moved, or one pad leaking all round, at a time. Leather that gives closes part of a gap under the finger, ' +
  'so a real leak costs less. How many decibels a player feels is not published: 1 dB is our convention.';

/**
 * Is it the height or a leak? For the note the player asks about the one beside the other; then any leak on every
 * note, how wide it may be, and which leak hurts most.
 */
@customElement('vw-leaks-view')
export class VwLeaksView extends BenchView {
  protected override readonly pageStyles = [
    keyStudyStyles,
    keyStudySizeStyles,
    regulationTabsStyles,
    regulationStyles,
    leaksStyles,
    besideStyles,
  ];

  override render(): TemplateResult {
    if (this.bench === null) return html``;
    const acts = this.bench.leaks;
    const view = makeLeaksView(this.bench.store.get());
    return html`
      <main class="ks-page rg-page lk-page">
        ${regulationTabs('leaks')} ${askedPanel(view, acts)} ${this.#answer(view)} ${besidePanel(view, acts)}
        ${playedPanel(view)} ${faultPanel(view, acts)} ${picturePanel(view, acts)} ${this.#map(view, acts)}
        ${view.played === null ? nothing : notesTable(view.played)}
        <footer class="ks-foot">
          <p>
            One fault is played at a time: everywhere else pads stand as they are and seal. A paper is a
            cigarette paper, 0.025 mm. Height is that of the resonance; what a gap lets through goes with its
            cube; pitch hardly moves.
          </p>
          <p>
            ${view.hornName}. Heat loosens adhesive and can hurt lacquer: floating a pad is for trained hands.
          </p>
        </footer>
      </main>
    `;
  }

  #answer({ beside, noteLabel, problem, played, unit, start }: LeaksView): TemplateResult {
    const cautions = [...(problem === null ? [] : [problem]), ...(played?.warnings ?? [])];
    return html`
      <section
        class="ks-answer"
        aria-label="Answer"
        aria-live="polite"
        aria-busy=${beside === null && problem === null ? 'true' : 'false'}
      >
        <div class="ks-said">
          <h1>
            ${beside === null ? `Comparing height and leaks for ${noteLabel}…` : told(beside.headline, beside.reasons, unit)}
          </h1>
          <p class="ks-standing">${beside?.standing ?? nothing}</p>
        </div>
        <div class="ks-why"><p>${start} ${SURE}</p></div>
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
          <h2 id="lk-map-title">Which leak hurts which notes</h2>
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
