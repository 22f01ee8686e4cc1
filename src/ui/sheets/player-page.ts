import { html, nothing, type TemplateResult } from 'lit';
import type { SheetFile } from '../../documents/player-sheet-file.ts';
import type { PlayerSheet, SheetPart } from '../../documents/player-sheet.ts';
import { pageFoot } from './file-page.ts';
import { curve, keyTable, noteTable, wishTable, type FiguresOnScreen } from './player-page-tables.ts';
import { sheetSentence, type SentenceActs } from './sheet-sentence.ts';

/** The page the player takes home. */
export function playerPage(
  sheet: PlayerSheet,
  figures: FiguresOnScreen,
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
    ${sheet.decided.sentences.length === 0 ? nothing : part(sheet.decided, acts)} ${keyTable(sheet, figures)}
    <div class="ps-pair">${noteTable(sheet, figures)} ${curve(sheet, figures)}</div>
    ${sheet.parts.map((each) => html`${part(each, acts)}${each.id === 'wish' ? wishTable(sheet, figures) : nothing}`)}
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
