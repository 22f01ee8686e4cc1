import { html, nothing, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { fetchChartLibrary } from '../../parts/chart/plot-host.ts';
import '../../parts/vw-key-strip.ts';
import { BenchView } from '../bench-view.ts';
import { answerPanel, linksPanel } from './answer-panel.ts';
import { curveTable } from './curve-table.ts';
import { inputsPanel } from './inputs-panel.ts';
import { keyStudySizeStyles } from './key-study-sizes.styles.ts';
import { HONESTY, makeKeyStudyView } from './key-study-view.model.ts';
import { keyStudyStyles } from './key-study-view.styles.ts';
import { surePanel } from './sure-panel.ts';
import { tryPanel } from './try-panel.ts';

/** The key study: how far one key has to open before more height stops helping. */
@customElement('vw-key-study')
export class VwKeyStudy extends BenchView {
  protected override readonly pageStyles = [keyStudyStyles, keyStudySizeStyles];

  /** While the worker runs its first study, the curve's library comes in. */
  override firstUpdated(): void {
    requestAnimationFrame(() =>
      setTimeout(() => {
        // A failure is told by the chart itself, which asks again.
        fetchChartLibrary().catch(() => undefined);
      }),
    );
  }

  #isTold = false;

  /** Marks when the first answer is on screen, for whoever measures a cold load. */
  override updated(): void {
    if (this.#isTold || this.querySelector('.ks-said h1 vw-reason') === null) return;
    this.#isTold = true;
    requestAnimationFrame(() => performance.mark('key-answer'));
  }

  override render(): TemplateResult {
    const { bench } = this;
    if (bench === null) return html``;
    const view = makeKeyStudyView(bench.store.get());
    const { study } = view;
    return html`
      <main class="ks-page ${view.linked ? 'ks-linked' : ''}">
        <section class="ks-keys" aria-label="Choose a key">
          <vw-key-strip
            .pads=${view.strip}
            .value=${view.keyId}
            @vw-key-change=${(e: CustomEvent<{ id: string }>) => bench.chooseKey(e.detail.id)}
          ></vw-key-strip>
          <p class="ks-key"><b>${view.keyTitle}</b> <span>${view.keyDetail}</span></p>
        </section>
        ${answerPanel(view)} ${linksPanel(view)}
        ${study === null ? this.#blank() : tryPanel(view, study, bench)} ${surePanel(view, bench)}
        ${inputsPanel(view, bench)} ${study === null ? nothing : curveTable(study, view.unit)}
        <footer class="ks-foot">
          ${study === null ? nothing : html`<p>${study.answer.rule}</p>`}
          ${view.calibrated === null ? html`<p>${HONESTY}</p>` : nothing}
          <p>Bending a key to its height is for trained hands.</p>
        </footer>
      </main>
    `;
  }

  /** Room for what is on its way. */
  #blank(): TemplateResult {
    return html`
      <section class="ks-try" aria-hidden="true"></section>
      <section class="ks-side" aria-hidden="true"></section>
      <section class="ks-curve" aria-hidden="true"></section>
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-key-study': VwKeyStudy;
  }
}
