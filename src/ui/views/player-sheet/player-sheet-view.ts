import { html, nothing, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { LengthUnit } from '../../../documents/length-format.ts';
import type { SheetSentence } from '../../../documents/player-sheet-edits.ts';
import '../../parts/vw-choice.ts';
import { filePage } from '../../sheets/file-page.ts';
import { playerPage } from '../../sheets/player-page.ts';
import { printedPageStyles } from '../../sheets/printed-page.styles.ts';
import type { SentenceActs } from '../../sheets/sheet-sentence.ts';
import { wishEntry } from '../../sheets/wish-entry.ts';
import { wishEntryStyles } from '../../sheets/wish-entry.styles.ts';
import type { Bench } from '../../shell/bench.ts';
import { hornInHand, type BenchState } from '../../state/bench-state.ts';
import { BenchView } from '../bench-view.ts';
import { fitPage, setFit } from './fit-page.ts';
import {
  fitSentence,
  makePlayerSheetView,
  PAPERS,
  type Paper,
  type PlayerSheetPages,
  type PlayerSheetView,
} from './player-sheet-view.model.ts';
import { playerSheetStyles } from './player-sheet-view.styles.ts';

const PAPER_OPTIONS = PAPERS.map((paper) => ({ value: paper, label: paper }));

/** The player’s sheet, as it will be printed, and the page for the shop’s file. */
@customElement('vw-player-sheet')
export class VwPlayerSheet extends BenchView {
  protected override readonly pageStyles = [printedPageStyles, playerSheetStyles, wishEntryStyles];

  @state() private paper: Paper = 'A4';
  /** the sentence that is being written */
  @state() private writing: string | null = null;
  @state() private fits = true;

  protected override drawnFrom(now: BenchState): readonly unknown[] {
    return [now.hornId, hornInHand(now).contents, now.unit, now.playerSheet];
  }

  override render(): TemplateResult | typeof nothing {
    const { bench } = this;
    if (bench === null) return nothing;
    const { unit } = bench.store.get();
    const view = makePlayerSheetView(bench.store.get());
    return html`
      <main class="ps-desk" aria-busy=${view.busy ? 'true' : 'false'}>
        ${this.#tools(view, bench)}
        <div class="ps-pages">
          <div class="ps-anew" role="status">
            ${view.anew === null ? nothing : html`<p class="vw-waiting">${view.anew}</p>`}
          </div>
          ${
            view.pages === null
              ? html`<p class=${view.instead?.isWrong === true ? 'vw-wrong' : 'vw-waiting'} role="status">
                  ${view.instead?.text}
                </p>`
              : this.#pages(view.pages, unit, bench)
          }
        </div>
      </main>
    `;
  }

  #pages({ player, reasons, file }: PlayerSheetPages, unit: LengthUnit, bench: Bench): TemplateResult {
    const acts: SentenceActs = {
      writing: this.writing,
      write: (id) => this.#write(id),
      rewrite: (sentence: SheetSentence, words) => bench.playerSheet.rewrite(sentence, words),
    };
    return html`
      <article class="ps-page ps-${this.paper}" data-page="player" aria-label="For the player">
        ${playerPage(player, { reasons, unit }, acts, file.foot)}
      </article>
      <article class="ps-page ps-file ps-${this.paper}" data-page="file" aria-label="For the shop’s file">
        ${filePage(file)}
      </article>
    `;
  }

  #tools(view: PlayerSheetView, bench: Bench): TemplateResult {
    return html`
      <section class="ps-tools" aria-label="Before printing">
        <p class="ps-about">The player’s sheet. Press a sentence to put it in your own words.</p>
        <div class="ps-row">
          <button
            type="button"
            class="ps-print"
            data-act="print"
            ?disabled=${view.pages === null || view.busy}
            @click=${() => print()}
          >
            Print
          </button>
          <vw-choice
            label="Paper"
            quiet-label
            data-act="paper"
            .options=${PAPER_OPTIONS}
            .value=${this.paper}
            @vw-choice-change=${(e: CustomEvent<{ value: string }>) => {
              this.paper = e.detail.value as Paper;
            }}
          ></vw-choice>
        </div>
        <p class="ps-fits ${this.fits ? '' : 'ps-full'}" role="status">
          ${view.pages === null ? '' : fitSentence(this.fits)}
        </p>
        ${wishEntry(view.wish, bench)}
        ${
          view.outdated.length === 0
            ? nothing
            : html`<div class="ps-list">
                <h2>Rewritten before the numbers changed</h2>
                <ul>
                  ${view.outdated.map((text) => html`<li>${text}</li>`)}
                </ul>
              </div>`
        }
        ${
          view.missing.length === 0
            ? nothing
            : html`<div class="ps-list">
                <h2>What is missing</h2>
                <ul>
                  ${view.missing.map((text) => html`<li>${text}</li>`)}
                </ul>
                <a href="#sheet">To the bench sheet</a>
              </div>`
        }
      </section>
    `;
  }

  #write(id: string | null): void {
    const before = this.writing;
    this.writing = id;
    const selector = id === null ? `[data-sentence="${before}"]` : `[data-writing="${id}"]`;
    void this.updateComplete.then(() => this.querySelector<HTMLElement>(selector)?.focus());
  }

  /** Type is as large as the paper allows. */
  override updated(): void {
    let fits = true;
    for (const page of this.querySelectorAll<HTMLElement>('.ps-page')) {
      if (page.parentElement?.className === 'ps-measure') continue;
      const found = fitPage(page);
      setFit(page, found.fit);
      page.dataset.fit = found.fit.size;
      fits &&= found.fits;
    }
    this.fits = fits;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-player-sheet': VwPlayerSheet;
  }
}
