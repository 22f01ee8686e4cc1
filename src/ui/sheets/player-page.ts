import { html, nothing, type TemplateResult } from 'lit';
import { formatLength, type LengthUnit } from '../../documents/length-format.ts';
import { signed } from '../../documents/player-sheet-lengths.ts';
import type { SheetFile } from '../../documents/player-sheet-file.ts';
import type { PlayerSheet, SheetPart } from '../../documents/player-sheet.ts';
import { curveDrawing, markInText } from './curve-drawing.ts';
import { pageFoot } from './file-page.ts';
import { sheetSentence, type SentenceActs } from './sheet-sentence.ts';

/** The page the player takes home. */
export function playerPage(
  sheet: PlayerSheet,
  unit: LengthUnit,
  acts: SentenceActs,
  foot: SheetFile['foot'],
): TemplateResult {
  return html`
    <header class="ps-head">
      <p class="ps-horn">${sheet.hornName}</p>
      <dl>
        ${sheet.head.map(
          ({ label, text }) =>
            html`<div>
              <dt>${label}</dt>
              <dd>${text}</dd>
            </div>`,
        )}
      </dl>
    </header>
    <h1>${sheetSentence(sheet.headline, acts)}</h1>
    ${sheet.wish === null ? nothing : html`<p class="ps-wish"><b>Your wish</b> “${sheet.wish}”</p>`}
    ${part(sheet.decided, acts)} ${keyTable(sheet)}
    <div class="ps-pair">${noteTable(sheet)} ${curve(sheet, unit)}</div>
    ${sheet.parts.map((each) => html`${part(each, acts)}${each.id === 'wish' ? wishTable(sheet) : nothing}`)}
    <section class="ps-consent" aria-label="Consent">
      <p>${sheetSentence(sheet.consent, acts)}</p>
      <p class="ps-rules"><span>Signed</span><i></i><span>Date</span><i class="ps-short"></i></p>
    </section>
    ${pageFoot(foot, 1)}
  `;
}

function part({ id, heading, sentences }: SheetPart, acts: SentenceActs): TemplateResult {
  return html`
    <section class="ps-part" data-part=${id}>
      <h2>${heading}</h2>
      ${
        id === 'decided'
          ? sentences.map((sentence) => html`<p>${sheetSentence(sentence, acts)}</p>`)
          : html`<p>${sentences.map((sentence) => sheetSentence(sentence, acts))}</p>`
      }
    </section>
  `;
}

function keyTable({ keys }: PlayerSheet): TemplateResult {
  if (keys.rows.length === 0) return html`<p class="ps-rest">${keys.rest}</p>`;
  return html`
    <table class="ps-keys">
      <caption class="ps-hidden">
        Openings at the front, as found and as set
      </caption>
      <thead>
        <tr>
          <th scope="col">Key, at the front</th>
          <th scope="col">As found</th>
          <th scope="col">As set</th>
          <th scope="col">Vented</th>
        </tr>
      </thead>
      <tbody>
        ${keys.rows.map(
          ({ pad, name, found, set, vented, readAt }) =>
            html`<tr data-pad=${pad}>
              <th scope="row">${name}${readAt === '' ? nothing : html` <small>${readAt}</small>`}</th>
              <td>${inOne(found)}</td>
              <td>${inOne(set)}</td>
              <td>${inOne(vented)}</td>
            </tr>`,
        )}
      </tbody>
    </table>
    <p class="ps-rest">${keys.rest}</p>
  `;
}

function noteTable({ notes }: PlayerSheet): TemplateResult {
  const isHeard = notes.rows.some(({ heardCents }) => heardCents !== '');
  return html`
    <section class="ps-notes">
      <h2>What it does to the notes</h2>
      ${
        notes.rows.length === 0
          ? nothing
          : html`<table>
              <thead>
                <tr>
                  <th scope="col">Note</th>
                  <th scope="col">cents</th>
                  <th scope="col">strength, dB</th>
                  ${isHeard ? html`<th scope="col">heard</th>` : nothing}
                </tr>
              </thead>
              <tbody>
                ${notes.rows.map(
                  ({ fingering, label, cents, strengthDb, heardCents }) =>
                    html`<tr data-fingering=${fingering}>
                      <th scope="row">${label}</th>
                      <td>${inOne(cents)}</td>
                      <td>${strengthDb === '' ? '–' : inOne(strengthDb)}</td>
                      ${isHeard ? html`<td>${heardCents === '' ? '–' : heardCents}</td>` : nothing}
                    </tr>`,
                )}
              </tbody>
            </table>`
      }
      <p class="ps-rest">${notes.rest}</p>
    </section>
  `;
}

/** What a wish for all keys would do, the notes it changes most side by side. */
function wishTable({ wishNotes }: PlayerSheet): TemplateResult | typeof nothing {
  if (wishNotes === null) return nothing;
  const { rows, rest } = wishNotes;
  const row = (heading: string, of: (note: (typeof rows)[number]) => string): TemplateResult =>
    html`<tr>
      <th scope="row">${heading}</th>
      ${rows.map((note) => html`<td>${of(note) === '' ? '–' : inOne(of(note))}</td>`)}
    </tr>`;
  return html`
    ${
      rows.length === 0
        ? nothing
        : html`<table class="ps-wish-notes">
            <caption class="ps-hidden">
              What the wish would do to the notes
            </caption>
            <thead>
              <tr>
                <th scope="col">Note</th>
                ${rows.map(({ label }) => html`<th scope="col">${label}</th>`)}
              </tr>
            </thead>
            <tbody>
              ${row('cents', ({ cents }) => cents)} ${row('strength, dB', ({ strengthDb }) => strengthDb)}
            </tbody>
          </table>`
    }
    <p class="ps-rest">${rest}</p>
  `;
}

function curve({ curve: told }: PlayerSheet, unit: LengthUnit): TemplateResult | typeof nothing {
  if (told === null) return nothing;
  const other = unit === 'mm' ? 'thou' : 'mm';
  return html`
    <section class="ps-curve-part">
      <h2>The ${told.keyName} key at every opening</h2>
      ${curveDrawing(told)}
      <table>
        <thead>
          <tr>
            <th scope="col">Opening</th>
            <th scope="col">at the front</th>
            <th scope="col">vented</th>
            ${told.noteName === null ? nothing : html`<th scope="col">${told.noteName}, cents</th>`}
          </tr>
        </thead>
        <tbody>
          ${told.marks.map(
            ({ mark, label, frontMm, ventPercent, cents }) =>
              html`<tr data-mark=${mark}>
                <th scope="row">${markInText(mark)} ${label}</th>
                <td>${inOne(`${formatLength(frontMm, unit)} (${formatLength(frontMm, other)})`)}</td>
                <td>${inOne(`${ventPercent.toFixed(0)} %`)}</td>
                ${told.noteName === null ? nothing : html`<td>${cents === null ? '–' : signed(cents)}</td>`}
              </tr>`,
          )}
        </tbody>
      </table>
    </section>
  `;
}

/** Parts only before the other unit, where there is little room. */
function inOne(text: string): string {
  return text.replaceAll(' ', '\u00a0').replace('\u00a0(', ' (');
}
