import { html, nothing, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import { INSTRUMENTS, type Instrument } from '../../../documents/horn-document.ts';
import type { LibraryRecords } from '../../../documents/library-file.ts';
import '../../parts/vw-choice.ts';
import '../../parts/vw-horn-picture.ts';
import type { Bench } from '../../shell/bench.ts';
import { fetchExample, today } from '../../shell/demo-horns.ts';
import { startHorn } from '../../shell/templates.ts';
import type { BenchState } from '../../state/bench-state.ts';
import { BenchView } from '../bench-view.ts';
import {
  makeDraft,
  makeNewHornView,
  type FirstGroup,
  type FirstKey,
  type NewHornDraft,
  type NewHornField,
  type NewHornView,
} from './new-horn-view.model.ts';
import { newHornStyles } from './new-horn-view.styles.ts';

const CHOICES = INSTRUMENTS.map((value) => ({ value, label: value }));

/** What was typed here and not started yet stays while other views are looked at. */
let kept: NewHornDraft | null = null;

/** A horn that comes to the bench for the first time. */
@customElement('vw-new-horn')
export class VwNewHorn extends BenchView {
  @state() private draft: NewHornDraft = kept ?? makeDraft(today());

  @state() private example: LibraryRecords | null = null;

  @state() private isStarting = false;

  protected override readonly pageStyles = [newHornStyles];

  override connectedCallback(): void {
    super.connectedCallback();
    void this.#fetch(this.draft.instrument);
  }

  /** Its own numbers are a draft: of the state only the unit shows. */
  protected override drawnFrom({ unit }: BenchState): readonly unknown[] {
    return [unit];
  }

  override willUpdate(changed: Map<PropertyKey, unknown>): void {
    super.willUpdate(changed);
    kept = this.draft;
  }

  override render(): TemplateResult {
    const { bench } = this;
    if (bench === null) return html``;
    const view = makeNewHornView(this.draft, this.example, bench.store.get().unit);
    return html`
      <main class="nh-page">
        <section class="nh-head">
          <h1>${view.title}</h1>
          <p>
            Four readings of a key are enough for its venting answer. Until you take them, every number is an
            invented ${view.instrument}’s and marked as an example with its ±.
          </p>
        </section>
        ${this.#form(view, bench)} ${this.#first(view)}
      </main>
    `;
  }

  #form(view: NewHornView, bench: Bench): TemplateResult {
    return html`
      <form class="nh-form" novalidate @submit=${(e: Event) => void this.#start(e, bench)}>
        <vw-choice
          label="It is a"
          data-act="instrument"
          .options=${CHOICES}
          .value=${view.instrument}
          @vw-choice-change=${(e: CustomEvent<{ value: string }>) => void this.#take(e.detail.value as Instrument)}
        ></vw-choice>
        <div class="nh-fields">${view.fields.map((field) => this.#field(field))}</div>
        ${view.problems.map((problem) => html`<p class="nh-problem" role="alert">${problem}</p>`)}
        <p class="nh-go">
          <button type="submit" ?disabled=${this.example === null || this.isStarting}>
            Start this ${view.instrument}
          </button>
          <span>opens its sheet; everything can be changed there</span>
        </p>
      </form>
    `;
  }

  #field({ id, label, hint, text, problem }: NewHornField): TemplateResult {
    const wrong = problem !== null;
    return html`
      <div class="nh-field">
        <label for="nh-${id}">${label}</label>
        <input
          id="nh-${id}"
          name=${id}
          type=${id === 'date' ? 'date' : 'text'}
          autocomplete="off"
          spellcheck="false"
          .value=${live(text)}
          aria-invalid=${wrong ? 'true' : 'false'}
          aria-describedby="nh-${id}-told"
          @input=${(e: Event) => this.#type(id, (e.target as HTMLInputElement).value)}
        />
        <p id="nh-${id}-told" class=${wrong ? 'nh-problem' : 'nh-hint'}>${problem ?? hint}</p>
      </div>
    `;
  }

  #first(view: NewHornView): TemplateResult | typeof nothing {
    if (view.picture === null) return nothing;
    return html`
      <section class="nh-first" aria-labelledby="nh-first">
        <h2 id="nh-first">Measure first</h2>
        <p>
          ${view.readings.map(
            ({ words, how }, i) =>
              html`${i === 0 ? '' : ', '}<b>${words}</b> <span class="nh-how">${how}</span>`,
          )}.
          From the lower stack on, which feeds the links.
        </p>
        <p class="nh-note">
          Pitch in cents rests on the example’s bore and hole places, and says so, until those are measured
          too. Printed, this page has room to write.
        </p>
        <vw-horn-picture
          .picture=${view.picture}
          @vw-key-choose=${(e: CustomEvent<{ keyId: string }>) => this.#look(e.detail.keyId)}
        ></vw-horn-picture>
        <div class="nh-groups">${view.groups.map((group) => this.#group(group, view))}</div>
      </section>
    `;
  }

  #group({ words, keys }: FirstGroup, { readings, unitWord }: NewHornView): TemplateResult {
    return html`
      <table>
        <caption>
          ${words}
          <span>example, ${unitWord}</span>
        </caption>
        <thead>
          <tr>
            <th scope="col">Key</th>
            ${readings.map(
              ({ words: reading, plusMinus }) =>
                html`<th scope="col">${reading}<br /><span>${plusMinus}</span></th>`,
            )}
          </tr>
        </thead>
        <tbody>
          ${keys.map((key) => this.#key(key))}
        </tbody>
      </table>
    `;
  }

  #key({ id, number, name, selected, lengths }: FirstKey): TemplateResult {
    return html`
      <tr data-key=${id} class=${selected ? 'nh-chosen' : ''}>
        <th scope="row"><b>${number}</b> ${name}</th>
        ${lengths.map((length) => html`<td><span>${length}</span></td>`)}
      </tr>
    `;
  }

  #type(id: NewHornField['id'], text: string): void {
    const { told, issues } = this.draft;
    this.draft = {
      ...this.draft,
      told: { ...told, [id]: text },
      issues: issues.filter((issue) => issue.path !== id),
    };
  }

  async #take(instrument: Instrument): Promise<void> {
    this.draft = { ...this.draft, instrument };
    await this.#fetch(instrument);
  }

  async #fetch(instrument: Instrument): Promise<void> {
    try {
      const example = await fetchExample(instrument);
      // A later choice may have come in first.
      if (this.draft.instrument === instrument) this.example = example;
    } catch (error) {
      this.bench?.tell(`The example ${instrument} could not be fetched: ${String(error)}`);
    }
  }

  #look(keyId: string): void {
    this.draft = { ...this.draft, keyId };
    void this.updateComplete.then(() =>
      this.querySelector(`tr[data-key="${CSS.escape(keyId)}"]`)?.scrollIntoView({ block: 'nearest' }),
    );
  }

  async #start(event: Event, bench: Bench): Promise<void> {
    event.preventDefault();
    const { example, draft } = this;
    // One touch is one horn.
    if (this.isStarting || example === null) return;
    if (example.horns[0].document.instrument !== draft.instrument) return;
    this.isStarting = true;
    const issues = await startHorn(bench, example, draft.told);
    this.isStarting = false;
    if (issues.length === 0) {
      this.draft = makeDraft(today());
      kept = null;
      return;
    }
    this.draft = { ...this.draft, issues };
    await this.updateComplete;
    this.querySelector<HTMLInputElement>('[aria-invalid="true"]')?.focus();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-new-horn': VwNewHorn;
  }
}
