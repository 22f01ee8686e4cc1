import { html, svg, type TemplateResult } from 'lit';
import type { PitchPicture } from './pitch-picture.model.ts';
import type { ProposalView } from './proposal-view.model.ts';

/** What the proposal does to the pitch: a picture, and the same in numbers. */
export function pitchPanel({ picture, spread, limits, notes, waiting }: ProposalView): TemplateResult {
  return html`
    <section class="pp-pitch" aria-labelledby="pp-pitch" aria-busy=${waiting ? 'true' : 'false'}>
      <h2 id="pp-pitch">What it does to the pitch</h2>
      <p class="pp-spread">${spread}</p>
      ${picture === null ? html`` : drawing(picture)}
      <p class="pp-how pp-legend">
        Cents from what a note is tuned by: <i class="found"></i> as it stands, <i class="proposed"></i> as
        proposed.
      </p>
      <details class="pp-notes">
        <summary>In numbers, every fingering</summary>
        <table>
          <thead>
            <tr>
              <th scope="col">Note</th>
              <th scope="col">As it stands</th>
              <th scope="col">Proposed</th>
              <th scope="col">Change, cents</th>
            </tr>
          </thead>
          <tbody>
            ${notes.map(
              ([note, found, proposed, change]) => html`
                <tr>
                  <th scope="row">${note}</th>
                  <td>${found}</td>
                  <td>${proposed}</td>
                  <td>${change}</td>
                </tr>
              `,
            )}
          </tbody>
        </table>
        <p class="pp-how">${limits}</p>
      </details>
    </section>
  `;
}

function drawing({ width, height, label, lines, marks }: PitchPicture): TemplateResult {
  return html`
    <svg class="pp-picture" viewBox="0 0 ${width} ${height}" role="img" aria-label=${label}>
      ${lines.map(
        ({ y, label: cents }) => svg`
          <line class="grid ${cents === '0' ? 'nought' : ''}" x1="56" x2=${width} y1=${y} y2=${y}></line>
          <text class="cents" x="48" y=${y + 4}>${cents}</text>
        `,
      )}
      ${marks.map(
        ({ x, found, proposed, label: note, named }) => svg`
          <g>
            <title>${note}</title>
            <line class="moved" x1=${x} x2=${x} y1=${found} y2=${proposed}></line>
            <circle class="found" cx=${x} cy=${found} r="4.5"></circle>
            <circle class="proposed" cx=${x} cy=${proposed} r="4.5"></circle>
            ${named === 'never' ? '' : svg`<text class="note ${named === 'always' ? '' : 'wide'}" x=${x} y=${height - 6}>${note}</text>`}
          </g>
        `,
      )}
    </svg>
  `;
}
