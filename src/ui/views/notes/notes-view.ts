import { html, nothing, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { BenchState } from '../../state/bench-state.ts';
import { BenchView } from '../bench-view.ts';
import { NOTE_PICTURES, NOTE_TEXTS } from './note-files.ts';
import { notePlaceOf } from '../../state/note-places.ts';
import { noteBlocks } from './note-template.ts';
import { makeNotesView, type NoteEntry, type NotesView } from './notes-view.model.ts';
import { notesStyles } from './notes-view.styles.ts';

/** The notes: what every number rests on, to be read at the bench. */
@customElement('vw-notes-view')
export class VwNotesView extends BenchView {
  protected override readonly pageStyles = [notesStyles];

  #place: string | null = null;

  protected override drawnFrom(state: BenchState): readonly unknown[] {
    return [state.view, state.place];
  }

  override render(): TemplateResult | typeof nothing {
    const state = this.bench?.store.get();
    if (state === undefined || state.view !== 'notes') return nothing;
    const view = makeNotesView(NOTE_TEXTS, state.place);
    return view.kind === 'list' ? noteList(view) : note(view);
  }

  /** What was asked for comes to the top, and reading goes on from there. */
  override updated(): void {
    const state = this.bench?.store.get();
    if (state === undefined || state.view !== 'notes' || state.place === this.#place) return;
    const isFirst = this.#place === null;
    this.#place = state.place;
    const { heading } = notePlaceOf(state.place);
    if (heading === '') {
      if (!isFirst) scrollTo(0, 0);
    } else {
      const target = this.querySelector<HTMLElement>(`#${CSS.escape(heading)}`);
      target?.scrollIntoView({ block: 'start' });
      target?.focus({ preventScroll: true });
    }
  }
}

function noteList({ headline, standing, physics, words }: NotesView & { kind: 'list' }): TemplateResult {
  const entries = (list: readonly NoteEntry[]): TemplateResult => html`
    <ul class="nt-entries">
      ${list.map(
        ({ href, title, about }) =>
          html`<li>
            <a href=${href}><b>${about}</b> <span>${title}</span></a>
          </li>`,
      )}
    </ul>
  `;
  return html`
    <main class="nt-page nt-list">
      <h1>${headline}</h1>
      <p class="nt-standing">${standing}</p>
      ${entries(physics)}
      <h2>To look up</h2>
      ${entries(words)}
    </main>
  `;
}

function note(view: NotesView & { kind: 'note' }): TemplateResult {
  const { blocks, contents, before, next } = view;
  return html`
    <main class="nt-page nt-note">
      <nav class="nt-aside" aria-label="Notes">
        <a class="nt-all" href="#notes">← All notes</a>
        ${
          contents.length < 2
            ? nothing
            : html`<ol>
                ${contents.map(
                  ({ href, text, inHand }) =>
                    html`<li><a href=${href} aria-current=${inHand ? 'true' : 'false'}>${text}</a></li>`,
                )}
              </ol>`
        }
      </nav>
      <article>${noteBlocks(blocks, NOTE_PICTURES)}</article>
      <nav class="nt-on" aria-label="Read on">
        ${before === null ? html`<span></span>` : html`<a href=${before.href}>← ${before.title}</a>`}
        ${next === null ? nothing : html`<a href=${next.href}>${next.title} →</a>`}
      </nav>
    </main>
  `;
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-notes-view': VwNotesView;
  }
}
