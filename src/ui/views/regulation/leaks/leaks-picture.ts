import { html, nothing, type TemplateResult } from 'lit';
import { guard } from 'lit/directives/guard.js';
import type { LeaksActs } from '../../../shell/leaks-acts.ts';
import type { LeaksView, PlayedLeak } from './leaks-view.model.ts';

/** A bar for every note. */
export function picturePanel({ played }: LeaksView, acts: LeaksActs): TemplateResult {
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

/** The numbers behind the bars. */
export function notesTable(played: PlayedLeak): TemplateResult {
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

/** What stands after a bar's number, for who does not see the bar. */
function heard(text: string): string {
  return text === '' ? 'loses nothing' : text === 'lost' ? '' : ' dB lost';
}
