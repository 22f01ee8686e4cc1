import { html, nothing, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import '../../parts/vw-choice.ts';
import type { PlayedSetup } from '../../../documents/pitch-log.ts';
import type { Bench } from '../../shell/bench.ts';
import { hornInHand, type BenchState } from '../../state/bench-state.ts';
import { playedOf } from '../../state/played-log.ts';
import { BenchView } from '../bench-view.ts';
import { calibrationPanel } from './calibration-panel.ts';
import { calibrationStyles } from './calibration-panel.styles.ts';
import { needle } from './needle.ts';
import { playedRow } from './played-row.ts';
import { makePlayedView, type PlayedView } from './played-view.model.ts';
import { playedSizes } from './played-sizes.styles.ts';
import { playedStyles } from './played-view.styles.ts';

const SETUPS = [
  { value: 'as found', label: 'as found' },
  { value: 'as set', label: 'as set' },
];

/** The notes played: typed, listened to, or brought in. */
@customElement('vw-played-view')
export class VwPlayedView extends BenchView {
  protected override readonly pageStyles = [playedStyles, calibrationStyles, playedSizes];

  protected override drawnFrom(state: BenchState): readonly unknown[] {
    return [state.hornId, hornInHand(state).contents, state.played, state.calibration];
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    // Nobody listens behind another view.
    this.bench?.played.stop();
  }

  override render(): TemplateResult {
    const { bench } = this;
    if (bench === null) return html``;
    const state = bench.store.get();
    const view = makePlayedView(state);
    return html`
      <main class="pl-page">
        <section class="pl-answer" aria-label="Answer" ?data-listening=${view.needle !== null}>
          <h1>${view.headline}</h1>
          <p class="pl-standing" role="status">${view.standing}</p>
          ${needle(view.needle)}
        </section>
        ${this.#ways(view, state, bench)} ${this.#told(state, bench)} ${calibrationPanel(bench, state)}
        ${this.#list(view, bench)}
      </main>
    `;
  }

  #ways(view: PlayedView, state: BenchState, bench: Bench): TemplateResult {
    const played = playedOf(state);
    const isOff = played.listening === 'off';
    return html`
      <section class="pl-ways" aria-label="Ways to log">
        <vw-choice
          label="Played"
          data-act="played-setup"
          .options=${SETUPS}
          .value=${played.setup}
          @vw-choice-change=${(e: CustomEvent<{ value: string }>) =>
            bench.played.setSetup(e.detail.value as PlayedSetup)}
        ></vw-choice>
        <button
          type="button"
          class="pl-button pl-first"
          data-act="listen"
          ?disabled=${played.listening === 'asking'}
          @click=${() => (isOff ? void bench.played.listen() : bench.played.stop())}
        >
          ${isOff ? 'Listen' : played.listening === 'asking' ? 'Asking …' : 'Stop listening'}
        </button>
        <label class="pl-as">
          <span>Log what is heard as</span>
          <select
            data-act="log-as"
            @change=${(e: Event) => bench.played.setFingering((e.target as HTMLSelectElement).value || null)}
          >
            <option value="" ?selected=${played.fingering === null}>the nearest note</option>
            ${view.rows.map(
              ({ id, label }) =>
                html`<option value=${id} ?selected=${id === played.fingering}>${label}</option>`,
            )}
          </select>
        </label>
        ${this.#chooser('From a recording', 'audio/*,.wav', (file) => bench.played.fromRecording(file))}
        ${this.#chooser('From a table', '.csv,text/csv,text/plain', (file) => bench.played.fromTable(file))}
        <button
          type="button"
          class="pl-button"
          data-act="save-log"
          ?disabled=${view.takeCount === 0}
          @click=${() => void bench.played.saveTable()}
        >
          Save as a table
        </button>
        <p class="pl-promise">
          Sound is listened to on this machine and forgotten: only the cents are kept, and nothing leaves it.
        </p>
      </section>
    `;
  }

  #chooser(label: string, accept: string, take: (file: File) => Promise<void>): TemplateResult {
    const chosen = (event: Event): void => {
      const input = event.target as HTMLInputElement;
      const file = input.files?.[0];
      // The same file can be chosen again.
      input.value = '';
      if (file !== undefined) void take(file);
    };
    return html`
      <label class="pl-button pl-file">
        <span>${label}</span>
        <input type="file" accept=${accept} @change=${chosen} />
      </label>
    `;
  }

  #told(state: BenchState, bench: Bench): TemplateResult {
    const { problem, issues } = playedOf(state);
    const isTold = problem !== null || issues.length > 0;
    return html`
      <div class="pl-told" role="alert" ?hidden=${!isTold}>
        ${problem === null ? nothing : html`<p>${problem}</p>`}
        ${
          issues.length === 0
            ? nothing
            : html`<ul>
                ${issues.map((line) => html`<li>${line}</li>`)}
              </ul>`
        }
        ${
          isTold
            ? html`<button type="button" class="pl-button" @click=${() => bench.played.dismiss()}>
                Close
              </button>`
            : nothing
        }
      </div>
    `;
  }

  #list(view: PlayedView, bench: Bench): TemplateResult {
    return html`
      <section class="pl-list" aria-label="Notes played">
        <p class="pl-hint">
          Type the cents a tuner shows and press Enter; typing again adds a take. A sharp note is plus.
        </p>
        <table>
          <thead>
            <tr>
              <th scope="col">Note</th>
              <th scope="col" class="pl-target">should sound</th>
              <th scope="col" class="pl-typed">cents to log</th>
              <th scope="col">logged, cents</th>
              <th scope="col" class="pl-count">takes</th>
            </tr>
          </thead>
          <tbody>
            ${repeat(
              view.rows,
              ({ id }) => id,
              (row) => playedRow(row, bench),
            )}
          </tbody>
        </table>
      </section>
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-played-view': VwPlayedView;
  }
}
