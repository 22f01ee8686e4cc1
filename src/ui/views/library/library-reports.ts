import { html, nothing, type TemplateResult } from 'lit';
import type { LibraryDesk } from '../../shell/library-desk.ts';
import type { FileReport } from '../../state/library-desk-state.ts';

/** What became of the files that were brought in. */
export function fileReports(reports: readonly FileReport[], desk: LibraryDesk): TemplateResult {
  return html`
    <section class="lb-reports" aria-labelledby="lb-reports">
      <h2 id="lb-reports">Files brought in</h2>
      ${reports.map(
        ({ fileName, told, issues }) => html`
          <article>
            <h3>${fileName}</h3>
            ${
              told.length === 0
                ? nothing
                : html`<ul class="lb-told">
                    ${told.map((text) => html`<li>${text}</li>`)}
                  </ul>`
            }
            ${issues.length === 0 ? nothing : issueTable(issues)}
          </article>
        `,
      )}
      <button type="button" class="lb-button" @click=${() => desk.closeReports()}>Close</button>
    </section>
  `;
}

/** The most lines shown of one file; the rest is counted. */
const MOST_LINES = 300;

function issueTable(issues: FileReport['issues']): TemplateResult {
  const more = issues.length - MOST_LINES;
  return html`
    <table class="lb-issues">
      <thead>
        <tr>
          <th scope="col">Where</th>
          <th scope="col">What is wrong</th>
        </tr>
      </thead>
      <tbody>
        ${issues.slice(0, MOST_LINES).map(
          ({ where, message }) =>
            html`<tr>
              <td>${where}</td>
              <td>${message}</td>
            </tr>`,
        )}
        ${
          more > 0
            ? html`<tr>
                <td></td>
                <td>and ${more} more like these</td>
              </tr>`
            : nothing
        }
      </tbody>
    </table>
  `;
}
