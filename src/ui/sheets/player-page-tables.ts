import { html, nothing, type TemplateResult } from 'lit';
import type { LengthUnit } from '../../documents/length-format.ts';
import { bothWithPlusMinus, signed } from '../../documents/player-sheet-lengths.ts';
import type { PlayerSheet } from '../../documents/player-sheet.ts';
import { figure } from '../parts/told.ts';
import type { Reason } from '../state/reasons.ts';
import { curveDrawing, markInText } from './curve-drawing.ts';
import type { PlayerSheetReasons } from './player-sheet-reasons.model.ts';

/** What the figures of the page open on the screen. */
export interface FiguresOnScreen {
  readonly reasons: PlayerSheetReasons;
  readonly unit: LengthUnit;
}

/** The keys that moved. */
export function keyTable(
  { keys, isProposal }: PlayerSheet,
  { reasons, unit }: FiguresOnScreen,
): TemplateResult | typeof nothing {
  if (keys.rows.length === 0) return nothing;
  return html`
    <table class="ps-keys">
      <caption class="ps-hidden">
        Openings at the front, as found and ${isProposal ? 'as proposed' : 'as set'}
      </caption>
      <thead>
        <tr>
          <th scope="col">Key, at the front</th>
          <th scope="col">As found</th>
          <th scope="col">${isProposal ? 'As proposed' : 'As set'}</th>
          <th scope="col">Vented</th>
        </tr>
      </thead>
      <tbody>
        ${keys.rows.map(
          ({ pad, name, found, set, vented, readAt }) =>
            html`<tr data-pad=${pad}>
              <th scope="row">${name}${readAt === '' ? nothing : html` <small>${readAt}</small>`}</th>
              <td>${figureOrInk(found, reasons.keys[pad].found, unit)}</td>
              <td>${figureOrInk(set, reasons.keys[pad].set, unit)}</td>
              <td>${figureOrInk(vented, reasons.keys[pad].vented, unit)}</td>
            </tr>`,
        )}
      </tbody>
    </table>
    <p class="ps-rest">${keys.rest}</p>
  `;
}

/** What it does to the notes. */
export function noteTable(
  { notes, isProposal }: PlayerSheet,
  { reasons, unit }: FiguresOnScreen,
): TemplateResult {
  const isHeard = notes.rows.some(({ heardCents }) => heardCents !== '');
  return html`
    <section class="ps-notes">
      <h2>What it ${isProposal ? 'would do' : 'does'} to the notes</h2>
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
                      <td>${figureOrInk(cents, reasons.notes[fingering].cents, unit)}</td>
                      <td>
                        ${figureOrInk(strengthDb === '' ? '–' : strengthDb, reasons.notes[fingering].strengthDb, unit)}
                      </td>
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
export function wishTable(
  { wishNotes }: PlayerSheet,
  { reasons, unit }: FiguresOnScreen,
): TemplateResult | typeof nothing {
  if (wishNotes === null) return nothing;
  const { rows, rest } = wishNotes;
  const row = (heading: string, of: 'cents' | 'strengthDb'): TemplateResult =>
    html`<tr>
      <th scope="row">${heading}</th>
      ${rows.map((note) => {
        const text = note[of] === '' ? '–' : note[of];
        return html`<td>${figureOrInk(text, reasons.wishNotes[note.fingering][of], unit)}</td>`;
      })}
    </tr>`;
  return html`
    ${
      rows.length === 0
        ? nothing
        : html`<table class="ps-wish-notes" style="--ps-cells: ${rows.length + 1}">
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
              ${row('cents', 'cents')}
              ${rows.every(({ strengthDb }) => strengthDb === '') ? nothing : row('strength, dB', 'strengthDb')}
            </tbody>
          </table>`
    }
    <p class="ps-rest">${rest}</p>
  `;
}

/** One key at every opening. */
export function curve(
  { curve: told }: PlayerSheet,
  { reasons, unit }: FiguresOnScreen,
): TemplateResult | typeof nothing {
  if (told === null) return nothing;
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
            ({ mark, label, frontMm, plusMinusMm, ventPercent, cents }) =>
              html`<tr data-mark=${mark}>
                <th scope="row">${markInText(mark)} ${label}</th>
                <td>
                  ${figureOrInk(bothWithPlusMinus(frontMm, plusMinusMm, unit), reasons.curve[mark]?.opening ?? null, unit)}
                </td>
                <td>
                  ${figureOrInk(`${ventPercent.toFixed(0)} %`, reasons.curve[mark]?.vented ?? null, unit)}
                </td>
                ${told.noteName === null ? nothing : html`<td>${figureOrInk(cents === null ? '–' : signed(cents), reasons.curve[mark]?.cents ?? null, unit)}</td>`}
              </tr>`,
          )}
        </tbody>
      </table>
    </section>
  `;
}

/** A figure that opens its reason on the screen; on paper only its words are there. */
function figureOrInk(text: string, reason: Reason | null, unit: LengthUnit): TemplateResult | string {
  const words = inOne(text);
  if (reason === null) return words;
  return html`<span class="ps-screen">${figure(reason, unit, words)}</span
    ><span class="ps-ink">${words}</span>`;
}

/** Parts only before the other unit and an arrow, where there is little room. */
function inOne(text: string): string {
  return text.replaceAll(' ', '\u00a0').replace('\u00a0(', ' (').replace('\u00a0→', ' →');
}
