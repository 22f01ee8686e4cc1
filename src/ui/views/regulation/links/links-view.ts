import { html, nothing, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import '../../../parts/vw-bench-field.ts';
import '../../../parts/vw-opening-slider.ts';
import '../../../parts/vw-stack-drawing.ts';
import type { Bench } from '../../../shell/bench.ts';
import type { LinksActs } from '../../../shell/links-acts.ts';
import { BenchView } from '../../bench-view.ts';
import { keyStudySizeStyles } from '../../key-study/key-study-sizes.styles.ts';
import { keyStudyStyles } from '../../key-study/key-study-view.styles.ts';
import { regulationTabs, regulationTabsStyles } from '../regulation-tabs.ts';
import { regulationStyles } from '../regulation.styles.ts';
import { askedPanel, linkPanel, linksTable, notesPanel, padsTable } from './links-panels.ts';
import { linksStyles } from './links-view.styles.ts';
import { endsOf, makeLinksView, type LinkedHornView, type LinksView } from './links-view.model.ts';

/** What the links allow: which pads they hold down, what shuts together, and what follows lower keys. */
@customElement('vw-links-view')
export class VwLinksView extends BenchView {
  protected override readonly pageStyles = [
    keyStudyStyles,
    keyStudySizeStyles,
    regulationTabsStyles,
    regulationStyles,
    linksStyles,
  ];

  override render(): TemplateResult {
    const { bench } = this;
    if (bench === null) return html``;
    const acts = bench.links;
    const view = makeLinksView(bench.store.get());
    const { horn } = view;
    return html`
      <main class="ks-page rg-page ln-page">
        ${regulationTabs('links')} ${this.#answer(view)}
        ${
          horn === null
            ? nothing
            : html`${this.#stack(horn, acts)} ${this.#sliders(horn, bench, acts)} ${notesPanel(horn)}
              ${padsTable(horn)} ${linksTable(horn, (value) => this.#pick(horn, value))}
              ${askedPanel(horn, bench, acts)} ${linkPanel(horn, this.#endsIn(horn), acts)}`
        }
        <footer class="ks-foot">
          <p>
            An arm lets its driven pad rise to ratio × the driver’s front opening, whatever the pad’s own stop
            says. Paper means cigarette paper, 0.025 mm. Cents and decibels are differences of one horn with
            itself, which the model tells far better than absolute pitch.
          </p>
          <p>${view.hornName}. Bending arms and filing screws is for trained hands; what they do stays.</p>
        </footer>
      </main>
    `;
  }

  #answer({ problem, horn }: LinksView): TemplateResult {
    const answer = horn?.answer ?? null;
    return html`
      <section class="ks-answer" aria-label="Answer" aria-live="polite">
        <div class="ks-said">
          <h1>${answer?.headline ?? 'The links of this horn cannot be told.'}</h1>
          <p class="ks-standing">${answer?.standing ?? nothing}</p>
        </div>
        <div class="ks-why">
          ${
            answer === null || answer.notes === ''
              ? nothing
              : html`<p class="rg-notes" aria-busy=${horn?.waiting ? 'true' : 'false'}>${answer.notes}</p>`
          }
          <p><strong>${answer?.sure ?? nothing}</strong></p>
        </div>
        ${
          problem === null
            ? nothing
            : html`<ul class="ks-cautions" aria-label="Limits of this answer">
                <li>${problem}</li>
              </ul>`
        }
      </section>
    `;
  }

  #stack(horn: LinkedHornView, acts: LinksActs): TemplateResult {
    const { stack } = horn;
    const ends = this.#endsIn(horn);
    return html`
      <section class="rg-panel ln-stack" aria-labelledby="ln-stack-title">
        <div class="ln-head">
          <h2 id="ln-stack-title">Press a key</h2>
          <label class="rg-select">
            <span>Link</span>
            <select
              data-act="link"
              .value=${live(horn.chosen)}
              @change=${(e: Event) => this.#pick(horn, (e.target as HTMLSelectElement).value)}
            >
              ${horn.choices.map(
                ({ value, label }) =>
                  html`<option value=${value} ?selected=${value === horn.chosen}>${label}</option>`,
              )}
            </select>
          </label>
        </div>
        <vw-stack-drawing
          .drawing=${stack.drawing}
          .driver=${stack.driverGeometry}
          .home=${stack.homeMm}
          .rest=${stack.restMm}
          .driverWords=${stack.driverWords}
          .drivenWords=${stack.drivenWords}
          .words=${stack.words}
          @vw-press-change=${(e: CustomEvent<{ pressed: number }>) => acts.press(ends, e.detail.pressed)}
        ></vw-stack-drawing>
        <label class="ln-press">
          <span>Press ${stack.driverWords.name}</span>
          <input
            type="range"
            min="0"
            max="100"
            step="1"
            data-act="press"
            aria-valuetext=${stack.pressedWords}
            .value=${live(String(Math.round(100 * stack.pressed)))}
            @input=${(e: Event) => acts.press(ends, (e.target as HTMLInputElement).valueAsNumber / 100)}
          />
          <button type="button" class="ks-quiet" @click=${() => acts.press(ends, stack.pressed < 1 ? 1 : 0)}>
            ${stack.pressed < 1 ? 'home' : 'let go'}
          </button>
        </label>
        <ul class="ln-moving" aria-label="As pressed, at each front">
          ${stack.moving.map(
            ({ name, value, shareOfTen }) => html`
              <li>
                <span class="ln-name">${name}</span>
                <span class="ln-bar" aria-hidden="true"
                  ><i style=${`width:${Math.min(100, 100 * (shareOfTen ?? 0))}%`}></i
                  >${(shareOfTen ?? 0) > 1 ? html`<b>▸</b>` : nothing}</span
                >
                <span class="ln-value">${value}</span>
              </li>
            `,
          )}
        </ul>
        <p class="ln-caption">Bars go to ten papers. ${stack.caption}</p>
      </section>
    `;
  }

  #sliders(horn: LinkedHornView, bench: Bench, acts: LinksActs): TemplateResult {
    return html`
      <section class="ks-try ln-try" aria-labelledby="ln-try-title">
        <div class="ln-head">
          <h2 id="ln-try-title">Keys that drive others</h2>
          <button
            type="button"
            class="ks-quiet"
            ?disabled=${!horn.proposes}
            @click=${() => bench.withdrawProposals()}
          >
            ● all ${horn.withdrawn}
          </button>
        </div>
        <div class="ln-sliders">
          ${horn.sliders.map(
            (slider) => html`
              <div
                role="group"
                aria-label=${`${slider.name} key`}
                data-driver=${slider.id}
                @vw-opening-change=${(e: CustomEvent<{ frontMm: number }>) =>
                  acts.propose(slider.id, e.detail.frontMm)}
              >
                <p class="ln-reading"><b>${slider.name}</b> ${slider.valueText}, ${slider.told}</p>
                <vw-opening-slider
                  .value=${slider.frontMm}
                  .low=${slider.lowMm}
                  .high=${slider.highMm}
                  .found=${slider.foundMm}
                  .valueText=${`${slider.name}: ${slider.valueText}`}
                ></vw-opening-slider>
              </div>
            `,
          )}
        </div>
      </section>
    `;
  }

  #endsIn(horn: LinkedHornView) {
    // What is chosen is always one of the choices.
    return endsOf(horn.choices, horn.chosen)!;
  }

  #pick(horn: LinkedHornView, value: string): void {
    const ends = endsOf(horn.choices, value);
    if (ends !== null) this.bench?.links.pick(ends);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-links-view': VwLinksView;
  }
}
