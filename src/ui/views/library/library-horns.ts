import { html, nothing, type TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { live } from 'lit/directives/live.js';
import type { LibraryDesk } from '../../shell/library-desk.ts';
import type { Renaming } from '../../state/library-desk-state.ts';
import type { HornDetail, HornRow, SetupRow, VisitRow } from './library-view.model.ts';

/** The list of horns. */
export function hornList(rows: readonly HornRow[], desk: LibraryDesk): TemplateResult {
  return html`
    <ul class="lb-horns">
      ${repeat(
        rows,
        ({ id }) => id,
        (row) => hornRow(row, desk),
      )}
    </ul>
  `;
}

function hornRow(row: HornRow, desk: LibraryDesk): TemplateResult {
  const { id, name, facts, lastVisit, visits, isOnBench, trouble, detail } = row;
  const isShown = detail !== null;
  return html`
    <li class="lb-horn ${isShown ? 'lb-shown' : ''}" data-horn=${id}>
      <button type="button" class="lb-open" @click=${() => void desk.open(id)}>
        <b>${name}</b> <span>${facts}</span>
        ${trouble === null ? nothing : html`<span class="lb-trouble">${trouble}</span>`}
      </button>
      <p class="lb-when">${lastVisit} <span>${isOnBench ? 'on the bench' : visits}</span></p>
      <button
        type="button"
        class="lb-more"
        aria-expanded=${isShown ? 'true' : 'false'}
        aria-label=${`${isShown ? 'Less' : 'More'} of ${name}`}
        @click=${() => void desk.show(isShown ? null : id)}
      >
        ${isShown ? 'Less' : 'More'}
      </button>
      ${detail === null ? nothing : hornDetail(row, detail, desk)}
    </li>
  `;
}

function hornDetail({ id, name }: HornRow, detail: HornDetail, desk: LibraryDesk): TemplateResult {
  if (detail.isComing) return html`<div class="lb-detail" aria-busy="true"></div>`;
  const { visits, setups, issues, isReadable, renaming } = detail;
  return html`
    <div class="lb-detail">
      ${issues.length === 0 ? nothing : unread(issues)}
      ${
        renaming === null
          ? html`<p class="lb-acts">
              <button
                type="button"
                class="lb-button"
                ?disabled=${!isReadable}
                @click=${() => desk.startRenaming('horns', id, name)}
              >
                Rename
              </button>
              <button
                type="button"
                class="lb-button"
                ?disabled=${!isReadable}
                @click=${() => void desk.duplicateHorn(id)}
              >
                Duplicate
              </button>
              <button type="button" class="lb-button" @click=${() => void desk.saveHornAsFile(id)}>
                Save as a file
              </button>
              <button type="button" class="lb-button" @click=${() => void desk.removeHorn(id)}>Remove</button>
            </p>`
          : nameField('Name of the horn', renaming, desk)
      }
      ${
        visits.length === 0
          ? nothing
          : html`<h3>Visits</h3>
              <ul class="lb-parts">
                ${repeat(
                  visits,
                  (visit) => visit.id,
                  (visit) => visitRow(id, visit, desk),
                )}
              </ul>`
      }
      ${
        setups.length === 0
          ? nothing
          : html`<h3>Setups kept beside the visits</h3>
              <ul class="lb-parts">
                ${repeat(
                  setups,
                  (setup) => setup.id,
                  (setup) => setupRow(setup, desk),
                )}
              </ul>`
      }
    </div>
  `;
}

function unread(issues: readonly string[]): TemplateResult {
  return html`
    <div class="lb-unread">
      <p>
        Not all of this horn can be read. What cannot is kept as it is, and goes along when it is saved as a
        file.
      </p>
      <ul>
        ${issues.map((issue) => html`<li>${issue}</li>`)}
      </ul>
    </div>
  `;
}

function visitRow(hornId: string, { id, date, words }: VisitRow, desk: LibraryDesk): TemplateResult {
  return html`
    <li>
      <button type="button" class="lb-open" @click=${() => void desk.open(hornId, id)}>
        <b>${date}</b> <span>${words}</span>
      </button>
      <button
        type="button"
        class="lb-button"
        aria-label=${`Duplicate the visit of ${date}`}
        @click=${() => void desk.duplicateVisit(id)}
      >
        Duplicate
      </button>
      <button
        type="button"
        class="lb-button"
        aria-label=${`Remove the visit of ${date}`}
        @click=${() => void desk.removeVisit(id)}
      >
        Remove
      </button>
    </li>
  `;
}

function setupRow({ id, name, renaming }: SetupRow, desk: LibraryDesk): TemplateResult {
  if (renaming !== null) return html`<li>${nameField('Name of the setup', renaming, desk)}</li>`;
  return html`
    <li>
      <p class="lb-name">${name}</p>
      <button
        type="button"
        class="lb-button"
        aria-label=${`Rename ${name}`}
        @click=${() => desk.startRenaming('setups', id, name)}
      >
        Rename
      </button>
      <button
        type="button"
        class="lb-button"
        aria-label=${`Duplicate ${name}`}
        @click=${() => void desk.duplicateSetup(id)}
      >
        Duplicate
      </button>
      <button
        type="button"
        class="lb-button"
        aria-label=${`Remove ${name}`}
        @click=${() => void desk.removeSetup(id)}
      >
        Remove
      </button>
    </li>
  `;
}

/** A name being written: Enter takes it, Escape leaves it as it was. */
function nameField(label: string, { text, problem }: Renaming, desk: LibraryDesk): TemplateResult {
  return html`
    <form
      class="lb-rename"
      @submit=${(e: Event) => {
        e.preventDefault();
        void desk.finishRenaming();
      }}
      @keydown=${(e: KeyboardEvent) => {
        if (e.key === 'Escape') desk.dropRenaming();
      }}
    >
      <label>
        <span>${label}</span>
        <input
          autofocus
          autocomplete="off"
          .value=${live(text)}
          aria-invalid=${problem === null ? 'false' : 'true'}
          aria-describedby="lb-name-problem"
          @input=${(e: Event) => desk.typeName((e.target as HTMLInputElement).value)}
        />
      </label>
      <button type="submit" class="lb-button lb-first">Rename</button>
      <button type="button" class="lb-button" @click=${() => desk.dropRenaming()}>Leave it</button>
      <p id="lb-name-problem" class="lb-problem">${problem ?? nothing}</p>
    </form>
  `;
}
