import { html, nothing, type TemplateResult } from 'lit';
import { LONGEST_SENTENCE, type SheetSentence } from '../../documents/player-sheet-edits.ts';
import { unbroken } from '../parts/note-names.ts';

/** What a hand can do with a sentence. */
export interface SentenceActs {
  /** the sentence that is being written, or null */
  readonly writing: string | null;
  write(id: string | null): void;
  rewrite(sentence: SheetSentence, words: string | null): void;
}

/** A sentence that can be rewritten in its place; on paper only its words are there. */
export function sheetSentence(sentence: SheetSentence, acts: SentenceActs): TemplateResult {
  const { id } = sentence;
  const text = unbroken(sentence.text);
  if (acts.writing === id) return inHand(sentence, acts);
  const pressed = (event: KeyboardEvent): void => {
    if (event.key !== 'Enter' && event.key !== ' ') return;
    event.preventDefault();
    acts.write(id);
  };
  return html`<span
      class="ps-sentence ps-screen ${sentence.isOutdated ? 'ps-outdated' : ''}"
      role="button"
      tabindex="0"
      data-sentence=${id}
      aria-description=${description(sentence)}
      @click=${() => acts.write(id)}
      @keydown=${pressed}
      >${text === '' ? html`<i>left out</i>` : text}${sentence.isRewritten ? html` <b aria-hidden="true">✎</b>` : nothing}</span
    ><span class="ps-ink">${text}</span> `;
}

function description({ isRewritten, isOutdated }: SheetSentence): string {
  if (isOutdated) return 'Rewritten before the numbers changed. Press to write it otherwise.';
  return isRewritten ? 'Rewritten. Press to write it otherwise.' : 'Press to write it otherwise.';
}

function inHand(sentence: SheetSentence, acts: SentenceActs): TemplateResult {
  const { id, text, written } = sentence;
  const keep = (event: Event): void => {
    const { value } = event.currentTarget as HTMLTextAreaElement;
    // Kept as it is, an older sentence is one of today’s.
    if (value.trim() !== text || sentence.isOutdated) acts.rewrite(sentence, value);
  };
  const pressed = (event: KeyboardEvent): void => {
    const area = event.currentTarget as HTMLTextAreaElement;
    if (event.key === 'Escape') area.value = text;
    else if (event.key !== 'Enter' || event.shiftKey) return;
    event.preventDefault();
    keep(event);
    acts.write(null);
  };
  return html`<span class="ps-writing ps-screen">
      <textarea
        aria-label="This sentence"
        rows=${Math.max(2, Math.ceil(text.length / 70))}
        maxlength=${LONGEST_SENTENCE}
        data-writing=${id}
        data-shown=${text}
        .value=${text}
        @keydown=${pressed}
        @change=${keep}
      ></textarea>
      <span class="ps-writing-acts">
        <button type="button" data-act="sentence-done" @click=${() => acts.write(null)}>Done</button>
        <button
          type="button"
          data-act="sentence-restore"
          ?disabled=${!sentence.isRewritten}
          title=${written}
          @click=${() => {
            acts.rewrite(sentence, null);
            acts.write(null);
          }}
        >
          As written by Ventwright
        </button>
        <span class="ps-hint">Enter keeps it, Escape leaves it; empty leaves it out.</span>
      </span> </span
    ><span class="ps-ink">${unbroken(text)}</span>`;
}
