import { html, nothing, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { MeasuringPoint } from '../../../acoustics/index.ts';
import '../../parts/vw-choice.ts';
import type { VwReason } from '../../parts/vw-reason.ts';
import { told } from '../../parts/told.ts';
import '../../parts/vw-horn-picture.ts';
import type { Bench } from '../../shell/bench.ts';
import { hornInHand, type SheetColumns } from '../../state/bench-state.ts';
import { calibratedWords } from '../../state/calibration-source.ts';
import type { FieldId } from '../../state/fields.ts';
import type { CellText } from '../../state/read-sheet.ts';
import { wishEntryStyles } from '../../sheets/wish-entry.styles.ts';
import { BenchView } from '../bench-view.ts';
import { keyStudyStyles } from '../key-study/key-study-view.styles.ts';
import { actsOnAll } from './acts-on-all.ts';
import { sheetHead } from './sheet-head.ts';
import { sheetSizeStyles } from './sheet-sizes.styles.ts';
import { BEFORE_MARK, sheetTable } from './sheet-table.ts';
import { makeSheetView, type SheetView } from './sheet-view.model.ts';
import { sheetCellStyles } from './sheet-cells.styles.ts';
import { sheetStyles } from './sheet-view.styles.ts';

const COLUMNS = [
  { value: 'openings', label: 'Openings' },
  { value: 'measures', label: 'Measures' },
];
const POINTS = [
  { value: 'front', label: 'front' },
  { value: 'centre', label: 'centre' },
  { value: 'back', label: 'back' },
];

/** The bench sheet: every key a row, as found, proposed and as set. */
@customElement('vw-sheet-view')
export class VwSheetView extends BenchView {
  /** whether the horn is drawn where there is little room for it; beside the answer it always is */
  @state() private drawn = false;

  protected override readonly pageStyles = [
    keyStudyStyles,
    sheetStyles,
    sheetCellStyles,
    sheetSizeStyles,
    wishEntryStyles,
  ];

  override render(): TemplateResult {
    const { bench } = this;
    if (bench === null) return html``;
    const now = bench.store.get();
    const view = makeSheetView(now);
    const calibrated = calibratedWords(hornInHand(now).contents);
    return html`
      <main class="sh-page ${this.drawn ? '' : 'sh-folded'}">
        ${this.#answer(view, bench)}
        <section class="sh-about" aria-label="Horn, player and day">${sheetHead(view, bench)}</section>
        <section class="sh-picture" aria-label="The horn">
          <vw-horn-picture
            .picture=${view.picture}
            @vw-key-choose=${(e: CustomEvent<{ keyId: string }>) => this.#goTo(e.detail.keyId)}
          ></vw-horn-picture>
        </section>
        ${this.#tools(view, bench)}
        <section
          class="sh-sheet"
          aria-label="Sheet"
          @keydown=${this.#pressed}
          @change=${this.#typed}
          @paste=${this.#pasted}
          @focusin=${this.#entered}
          @input=${this.#written}
          @focusout=${this.#left}
          @click=${this.#clicked}
        >
          ${sheetTable(view)}
        </section>
        <footer class="ks-foot">
          ${calibrated === null ? nothing : html`<p>${calibrated}</p>`}
          <p>
            ± is what a reading of its kind repeats to; a number from the example may differ that much from
            this horn. Bending a key to its height is for trained hands.
          </p>
        </footer>
      </main>
    `;
  }

  #answer(view: SheetView, bench: Bench): TemplateResult {
    return html`
      <section class="sh-answer" aria-label="Answer" aria-busy=${view.busy ? 'true' : 'false'}>
        <h1>${told(view.answer.headline, view.answer.reasons, view.unit)}</h1>
        <p class="ks-standing">${view.answer.standing}</p>
        <p class="sh-sure">${view.answer.sure}</p>
        ${view.problem === null ? nothing : html`<p class="sh-caution">${view.problem}</p>`}
        ${view.contradictions.map((text) => html`<p class="sh-caution">${text}</p>`)}
        <div class="sh-acts">
          <button
            type="button"
            class="ks-quiet"
            data-act="propose-enough"
            ?disabled=${Object.keys(view.enoughForAll).length === 0}
            @click=${() => bench.proposeAll(view.enoughForAll)}
          >
            ▶ ${view.enoughAct}
          </button>
          ${actsOnAll(view.all, bench)}
        </div>
        ${
          view.all.problem === null
            ? nothing
            : html`<p class="vw-wrong" id="sh-shift-problem" role="alert">${view.all.problem}</p>`
        }
        <p class="sh-told-all" role="status">${view.all.told}</p>
      </section>
    `;
  }

  #tools(view: SheetView, bench: Bench): TemplateResult {
    return html`
      <div class="sh-tools">
        <vw-choice
          label="Columns"
          quiet-label
          data-act="columns"
          .options=${COLUMNS}
          .value=${view.columns}
          @vw-choice-change=${(e: CustomEvent<{ value: string }>) => bench.setColumns(e.detail.value as SheetColumns)}
        ></vw-choice>
        <vw-choice
          label="read at"
          data-act="read-at"
          .options=${POINTS}
          .value=${view.readAt}
          @vw-choice-change=${(e: CustomEvent<{ value: string }>) => bench.setReadAt(e.detail.value as MeasuringPoint)}
        ></vw-choice>
        <button
          type="button"
          class="ks-quiet sh-show"
          data-act="draw"
          aria-pressed=${this.drawn ? 'true' : 'false'}
          @click=${() => (this.drawn = !this.drawn)}
        >
          the horn
        </button>
        <p class="sh-legend">
          <span>in ${view.unitWords}</span> <span>● measured</span>
          ${view.hasBefore ? html`<span>${BEFORE_MARK} on a visit before</span>` : nothing}
          <span>◌ from the example</span>
          ${
            view.columns === 'openings'
              ? html`<span class="sh-asFound">○ as found</span> <span class="sh-proposed">▶ proposed</span>
                  <span class="sh-asSet">■ as set</span> <span class="sh-tick-legend">┃ enough</span>`
              : nothing
          }
        </p>
        <p class="sh-how">
          Enter goes down the column. 7.9, 7,9 mm, 0.310 in and 5/16 are understood; 4.0 c is read at the
          centre for that key. Escape shows what is in use; Alt and Enter, why.
        </p>
      </div>
    `;
  }

  /** The cell a key was pressed or text was typed in. */
  #cellOf(event: Event): HTMLInputElement | null {
    const { target } = event;
    return target instanceof HTMLInputElement && target.dataset.cell !== undefined ? target : null;
  }

  /** Enter and the arrows go along the column, and what was typed is taken on the way. */
  #pressed = (event: KeyboardEvent): void => {
    const input = this.#cellOf(event);
    if (input !== null && event.altKey && event.key === 'Enter') {
      event.preventDefault();
      const place = event.shiftKey ? '.sh-share' : '.sh-enough';
      input.closest('.sh-row')!.querySelector<VwReason>(`${place} vw-reason`)?.press();
      return;
    }
    if (input === null || event.altKey || event.ctrlKey || event.metaKey) return;
    if (event.key === 'Escape') {
      if (input.getAttribute('aria-invalid') === 'true' && input.value === input.dataset.shown) {
        this.bench?.restoreCell(input.dataset.pad!, input.dataset.cell as FieldId);
      } else {
        input.value = input.dataset.shown!;
      }
      input.select();
      return;
    }
    const by = event.key === 'ArrowUp' ? -1 : event.key === 'Enter' || event.key === 'ArrowDown' ? 1 : 0;
    if (by === 0) return;
    event.preventDefault();
    const column = this.#column(input.dataset.cell!);
    const next = column[column.indexOf(input) + (event.key === 'Enter' && event.shiftKey ? -1 : by)];
    // Leaving a field is what takes its text; at the end of the column it is left and come back to.
    if (next === undefined) input.blur();
    this.#goingOn = event.key === 'Enter';
    (next ?? input).focus();
    this.#goingOn = false;
  };

  #column(cell: string): HTMLInputElement[] {
    return [...this.querySelectorAll<HTMLInputElement>(`input[data-cell="${cell}"]`)];
  }

  #typed = (event: Event): void => {
    const input = this.#cellOf(event);
    if (input === null || input.value === input.dataset.shown) return;
    void this.#take(input);
  };

  #inWriting: HTMLInputElement | null = null;

  /** Enter takes what was typed and goes on: the key it was typed on stays in hand until the next is written on. */
  #goingOn = false;

  #written = (event: Event): void => {
    this.#inWriting = this.#cellOf(event);
    if (this.#inWriting !== null) this.#choose(this.#inWriting.dataset.pad!);
  };

  /** Read and found to be what the example or a visit before has: it is a reading of today, though the text is no other. */
  #left = (event: FocusEvent): void => {
    const input = this.#cellOf(event);
    if (input === null || input !== this.#inWriting) return;
    this.#inWriting = null;
    const { shown, origin, readOn } = input.dataset;
    const isOfToday = origin !== 'template' && readOn === undefined;
    if (!isOfToday && input.value === shown) void this.#take(input);
  };

  /** What was typed and left nothing new gives way to what is in use. */
  async #take(input: HTMLInputElement): Promise<void> {
    await this.bench?.typeCells([textOf(input, input.value)]);
    await this.updateComplete;
    if (document.activeElement !== input) input.value = input.dataset.shown!;
  }

  /** A column copied from a spreadsheet fills down from here, several fill to the right. */
  #pasted = (event: ClipboardEvent): void => {
    const input = this.#cellOf(event);
    const lines = (event.clipboardData?.getData('text/plain') ?? '').replace(/\r?\n$/, '').split(/\r?\n/);
    if (input === null || (lines.length === 1 && !lines[0].includes('\t'))) return;
    event.preventDefault();
    const cells = [...input.closest('.sh-row')!.querySelectorAll<HTMLInputElement>('input[data-cell]')].map(
      (cell) => cell.dataset.cell!,
    );
    const from = cells.indexOf(input.dataset.cell!);
    const row = this.#column(input.dataset.cell!).indexOf(input);
    const entries = lines.flatMap((line, i) =>
      line.split('\t').flatMap((text, j): CellText[] => {
        const target = cells[from + j] === undefined ? undefined : this.#column(cells[from + j])[row + i];
        return target === undefined || text.trim() === '' ? [] : [textOf(target, text)];
      }),
    );
    void this.bench?.typeCells(entries);
  };

  /** Coming into a cell marks its text, ready to be typed over, and, but for Enter, takes its key in hand. */
  #entered = (event: FocusEvent): void => {
    const input = this.#cellOf(event);
    if (input === null) return;
    input.select();
    this.bench?.expectTyping();
    if (!this.#goingOn) this.#choose(input.dataset.pad!);
  };

  #clicked = (event: Event): void => {
    const row = (event.target as Element).closest<HTMLElement>('.sh-row[data-pad]');
    if (row !== null) this.#choose(row.dataset.pad!);
  };

  #choose(pad: string): void {
    const { bench } = this;
    if (bench === null) return;
    const { horns, hornId } = bench.store.get();
    if (horns[hornId].keyId !== pad) bench.chooseKey(pad);
  }

  /** A key chosen on the picture: its row comes into sight. */
  #goTo(pad: string): void {
    this.#choose(pad);
    const row = this.querySelector<HTMLElement>(`.sh-row[data-pad="${CSS.escape(pad)}"]`);
    const calm = matchMedia('(prefers-reduced-motion: reduce)').matches;
    row?.scrollIntoView({ block: 'center', behavior: calm ? 'auto' : 'smooth' });
  }
}

function textOf(input: HTMLInputElement, text: string): CellText {
  return { pad: input.dataset.pad!, cell: input.dataset.cell as FieldId, text };
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-sheet-view': VwSheetView;
  }
}
