import { html, nothing, type TemplateResult } from 'lit';
import type { Bench } from '../../shell/bench.ts';
import type { PlayedNoteRow, PlayedNotes } from './played-notes.model.ts';

/** Every note as played: how far from the fitted horn, and which key could explain it. */
export function playedNotes(view: PlayedNotes | null, noteId: string, bench: Bench): TemplateResult {
  if (view === null) {
    return html`
      <section class="sc-played" aria-label="Notes as played">
        <p class="vw-empty">
          Log a few notes under <a href="#played">Played</a>, and every note shows here how far the horn is
          from what it should do, and which key could explain it.
        </p>
      </section>
    `;
  }
  return html`
    <section class="sc-played" aria-labelledby="sc-played-title">
      <h2 id="sc-played-title">${view.title}</h2>
      <p>${view.told} <a href="#played">The fit</a></p>
      <div class="sc-played-scroll" tabindex="0" role="region" aria-label="Every note played">
        <table>
          <thead>
            <tr>
              <th scope="col">note</th>
              <th scope="col">played</th>
              <th scope="col">left, cents</th>
              <th scope="col" class="sc-left-head">flat · sharp</th>
              <th scope="col">what could explain it</th>
            </tr>
          </thead>
          <tbody>
            ${view.rows.map((row) => playedRow(row, noteId, bench))}
          </tbody>
        </table>
      </div>
    </section>
  `;
}

function playedRow(
  { id, label, played, left, bar, outside, words }: PlayedNoteRow,
  noteId: string,
  bench: Bench,
) {
  return html`
    <tr class=${id === noteId ? 'picked' : ''}>
      <th scope="row">
        <button
          type="button"
          aria-pressed=${id === noteId ? 'true' : 'false'}
          @click=${() => bench.chooseNote(id)}
        >
          ${label}
        </button>
      </th>
      <td>${played}</td>
      <td class=${outside ? 'outside' : ''}>${left}</td>
      <td class="sc-left" aria-hidden="true">
        ${
          bar === null
            ? nothing
            : html`<span
                ><i
                  class=${outside ? 'outside' : ''}
                  style=${`left:${(100 * bar.from).toFixed(1)}%;width:${(100 * bar.length).toFixed(1)}%`}
                ></i
              ></span>`
        }
      </td>
      <td class="sc-cause">${words}</td>
    </tr>
  `;
}
