import { html, nothing, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { figure, figureOr, told } from '../../../parts/told.ts';
import '../../../parts/vw-grid-table.ts';
import type { Bench } from '../../../shell/bench.ts';
import type { LinksActs } from '../../../shell/links-acts.ts';
import type { LinkEnds, LinkFieldId } from '../../../state/links-state.ts';
import type { FieldView } from '../../key-study/measured-fields.model.ts';
import type { LinkedHornView } from './links-view.model.ts';

/** The notes that suffer by what is proposed or set. */
export function notesPanel({ told: way, notesTitle, tables: { notes } }: LinkedHornView): TemplateResult {
  return html`
    <section class="rg-panel ln-notes" aria-labelledby="ln-notes-title">
      <h2 id="ln-notes-title">${notesTitle}</h2>
      ${
        way !== 'as found'
          ? html`<ul class="ln-note-list">
              ${notes.map(({ note, change }) => html`<li><b>${note}</b> <span>${change}</span></li>`)}
            </ul>`
          : html`<p>Every key stands as found. Set a key lower and see which pads and notes go with it.</p>`
      }
    </section>
  `;
}

/** Every driven pad: its own stop, what its links allow, how it stands. */
export function padsTable({ told: way, tables: { pads }, unit }: LinkedHornView): TemplateResult {
  const isChanged = way !== 'as found';
  return html`
    <section class="rg-panel ln-pads" aria-labelledby="ln-pads-title">
      <h2 id="ln-pads-title">Pads that links drive, ${way}, at the front</h2>
      <div class="rg-scroll rg-wide" tabindex="0" role="region" aria-label="Table of driven pads">
        <vw-grid-table
          ><table>
            <thead>
              <tr>
                <th scope="col">pad</th>
                <th scope="col">own stop</th>
                <th scope="col">links allow</th>
                <th scope="col">stands</th>
                <th scope="col">what rules</th>
                ${
                  isChanged
                    ? html`<th scope="col">as found</th>
                        <th scope="col">vent share</th>`
                    : nothing
                }
              </tr>
            </thead>
            <tbody>
              ${pads.map(
                (row) =>
                  html`<tr class=${row.held ? 'rg-wrong' : ''}>
                    <th scope="row">${row.name}</th>
                    <td>${row.own}</td>
                    <td>${figureOr(row.allowed, row.reasons.allowed, unit)}</td>
                    <td><b>${figure(row.reasons.stands, unit)}</b></td>
                    <td>${row.held ? '▼ ' : ''}${row.rules}</td>
                    ${
                      isChanged
                        ? html`<td>${row.was}</td>
                            <td>${row.share}</td>`
                        : nothing
                    }
                  </tr>`,
              )}
            </tbody>
          </table></vw-grid-table
        >
      </div>
      <p class="rg-swipe">Swipe the table for what links allow and what rules ▸</p>
    </section>
  `;
}

/** Every link: ratio, what it allows, lost motion, what is left when it shuts. */
export function linksTable(
  { tables: { links }, chosen, unit }: LinkedHornView,
  pick: (value: string) => void,
): TemplateResult {
  return html`
    <section class="rg-panel ln-links" aria-labelledby="ln-links-title">
      <h2 id="ln-links-title">Links</h2>
      <div class="rg-scroll rg-wide" tabindex="0" role="region" aria-label="Table of links">
        <vw-grid-table
          ><table>
            <thead>
              <tr>
                <th scope="col">driver → driven</th>
                <th scope="col">ratio</th>
                <th scope="col">allows</th>
                <th scope="col">lost at front</th>
                <th scope="col">lost at touch</th>
                <th scope="col">left when pressed home</th>
              </tr>
            </thead>
            <tbody>
              ${links.map(
                (row) =>
                  html`<tr class=${row.value === chosen ? 'rg-picked' : ''}>
                    <th scope="row">
                      <button
                        type="button"
                        class="rg-row"
                        aria-pressed=${row.value === chosen ? 'true' : 'false'}
                        @click=${() => pick(row.value)}
                      >
                        ${row.driver} → ${row.driven}
                      </button>
                    </th>
                    <td>${row.ratio}</td>
                    <td>${figureOr(row.allows, row.reasons.allows, unit)}</td>
                    <td>${figureOr(row.lostAtFront, row.reasons.lostAtFront, unit)}</td>
                    <td>${figureOr(row.lostAtTouch, row.reasons.lostAtTouch, unit)}</td>
                    <td class=${row.apart ? 'rg-flag' : ''}>
                      ${row.apart ? '▲ ' : ''}${figureOr(row.left, row.reasons.left, unit)}
                    </td>
                  </tr>`,
              )}
            </tbody>
          </table></vw-grid-table
        >
      </div>
      <p class="rg-swipe">Swipe the table for lost motion and what is left ▸</p>
    </section>
  `;
}

/** What is known and typed of the link in hand. */
export function linkPanel(horn: LinkedHornView, ends: LinkEnds, acts: LinksActs): TemplateResult {
  const { fields } = horn;
  const field = (view: FieldView<LinkFieldId>): TemplateResult => html`
    <vw-bench-field
      data-field=${view.id}
      .label=${view.label}
      .hint=${view.hint}
      .text=${view.text}
      .echo=${view.echo}
      .problem=${view.problem}
      @vw-field-change=${(e: CustomEvent<{ text: string }>) => void acts.type(ends, view.id, e.detail.text)}
      @vw-field-restore=${() => acts.restore(ends, view.id)}
    ></vw-bench-field>
  `;
  const { fromReadings, fromArms } = fields;
  return html`
    <section class="rg-panel ln-link" aria-labelledby="ln-link-title" @focusin=${() => acts.expectTyping()}>
      <h2 id="ln-link-title">${horn.linkTitle}, as found</h2>
      <div class="ks-fields">${field(fields.gap)} ${field(fields.ratio)}</div>
      <details class="ln-more">
        <summary>Ratio from two readings: move the driver, read the driven</summary>
        <div class="ks-fields">${fields.readings.map(field)}</div>
        <p class="ln-offer">
          <span>${fromReadings.words}</span>
          <button
            type="button"
            class="ks-quiet"
            ?disabled=${fromReadings.ratio === null}
            @click=${() => fromReadings.ratio !== null && acts.useRatio(ends, fromReadings.ratio)}
          >
            Use this ratio
          </button>
        </p>
      </details>
      <details class="ln-more">
        <summary>Ratio from the arms</summary>
        <div class="ks-fields">${fields.arms.map(field)}</div>
        <p class="ln-offer">
          <span>${fromArms.words}</span>
          <button
            type="button"
            class="ks-quiet"
            ?disabled=${fromArms.arms === null}
            @click=${() => fromArms.arms !== null && acts.useArms(ends, fromArms.arms)}
          >
            Use the arms
          </button>
        </p>
      </details>
    </section>
  `;
}

/** A least opening asked of a driven pad, and what it needs. */
export function askedPanel({ asked, unit }: LinkedHornView, bench: Bench, acts: LinksActs): TemplateResult {
  const { field, proposes } = asked;
  return html`
    <section class="rg-panel ln-asked" aria-labelledby="ln-asked-title" @focusin=${() => acts.expectTyping()}>
      <h2 id="ln-asked-title">The other way round: ask an opening</h2>
      <div class="ln-ask">
        <label class="rg-select">
          <span>Pad</span>
          <select
            data-act="asked-pad"
            .value=${live(asked.padId)}
            @change=${(e: Event) => acts.askPad((e.target as HTMLSelectElement).value)}
          >
            ${asked.pads.map(
              ({ id, name }) => html`<option value=${id} ?selected=${id === asked.padId}>${name}</option>`,
            )}
          </select>
        </label>
        <vw-bench-field
          data-field="asked"
          .label=${field.label}
          .hint=${field.hint}
          .text=${field.text}
          .echo=${field.echo}
          .problem=${field.problem}
          @vw-field-change=${(e: CustomEvent<{ text: string }>) => void acts.typeAsked(asked.padId, e.detail.text)}
          @vw-field-restore=${() => acts.restoreAsked()}
        ></vw-bench-field>
      </div>
      ${
        asked.answer === null
          ? nothing
          : html`
              <p class="rg-said" aria-live="polite">${asked.answer}</p>
              <vw-grid-table
                ><table>
                  <thead>
                    <tr>
                      <th scope="col">pad</th>
                      <th scope="col">needs</th>
                      <th scope="col">so</th>
                    </tr>
                  </thead>
                  <tbody>
                    ${asked.rows.map(
                      (row) =>
                        html`<tr class=${row.short ? 'rg-picked' : ''}>
                          <th scope="row">${row.pad}</th>
                          <td>${told(row.needed, row.reasons, unit)}</td>
                          <td>${told(row.raise, row.reasons, unit)}</td>
                        </tr>`,
                    )}
                  </tbody>
                </table></vw-grid-table
              >
              ${asked.ratios.map((text) => html`<p>${text}</p>`)}
              <button
                type="button"
                class="ks-quiet"
                ?disabled=${proposes === null}
                @click=${() => proposes !== null && bench.proposeAll(proposes)}
              >
                Propose these openings
              </button>
            `
      }
    </section>
  `;
}
