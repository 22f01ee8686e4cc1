import { html, nothing, type TemplateResult } from 'lit';
import { figureOr } from '../../../parts/told.ts';
import type { Bench } from '../../../shell/bench.ts';
import type { PadChangePlan } from '../../../state/pads-state.ts';
import type { ChangedRow, MovedRow, PadChangeView } from './pad-change-view.model.ts';

const SCOPES = [
  { value: 'all', label: 'every key' },
  { value: 'key', label: 'one key' },
];
const HOWS = [
  { value: 'to', label: 'new thickness' },
  { value: 'by', label: 'change of' },
];
const SEATINGS = [
  { value: 'levelled', label: 'levelled' },
  { value: 'dropped in', label: 'dropped in' },
];

/** What a new choice of how starts from, mm. */
const STARTS_MM = { to: 0.18 * 25.4, by: 0.5 } as const;

/** The choice of pads, then pictures of openings and notes, then the numbers. */
export function changePanels(view: PadChangeView, bench: Bench): TemplateResult {
  return html`
    ${plan(view, bench)}
    ${
      view.rows.length === 0
        ? nothing
        : html`
            <section class="pd-openings" aria-labelledby="pd-openings">
              <h2 id="pd-openings">Openings at the front</h2>
              <p class="pd-how">
                <i class="found"></i> as found, <i class="then"></i> with the other pad,
                <i class="back"></i> where the old venting is back
              </p>
              <ul>
                ${view.rows.map(openingRow)}
              </ul>
            </section>
            <section class="pd-notes" aria-labelledby="pd-notes">
              <h2 id="pd-notes">Notes, cents and strength</h2>
              <p class="pd-how">flat to the left, sharp to the right; strength in dB</p>
              <div class="pd-many" tabindex="0" role="region" aria-label="Every note">
                <ul>
                  ${view.notes.map(noteRow)}
                </ul>
              </div>
            </section>
            ${numbers(view)}
          `
    }
  `;
}

function plan({ plan: now, choices, field, keyWords }: PadChangeView, bench: Bench): TemplateResult {
  const pick =
    <K extends keyof PadChangePlan>(part: K) =>
    (e: CustomEvent<{ value: string }>): void =>
      bench.pads.plan({ [part]: e.detail.value } as Partial<PadChangePlan>);
  return html`
    <section class="pd-plan" aria-label="The other pads" @focusin=${() => bench.pads.expectTyping()}>
      <vw-choice
        label="On"
        data-act="scope"
        .options=${SCOPES.map((s) => (s.value === 'key' ? { ...s, label: `one key: ${keyWords}` } : s))}
        .value=${now.scope}
        @vw-choice-change=${pick('scope')}
      ></vw-choice>
      <vw-choice
        label="Told as"
        data-act="how"
        .options=${HOWS}
        .value=${now.how}
        @vw-choice-change=${(e: CustomEvent<{ value: string }>) => {
          const how = e.detail.value as PadChangePlan['how'];
          bench.pads.plan({ how, mm: STARTS_MM[how] });
        }}
      ></vw-choice>
      <vw-choice
        label="Seated"
        data-act="seating"
        .options=${SEATINGS}
        .value=${now.seating}
        @vw-choice-change=${pick('seating')}
      ></vw-choice>
      <div class="pd-choices" role="group" aria-label=${field.label}>
        ${choices.map(
          ({ mm, label, chosen }) => html`
            <button
              type="button"
              class="rg-quiet"
              aria-pressed=${chosen ? 'true' : 'false'}
              @click=${() => bench.pads.plan({ mm })}
            >
              ${label}
            </button>
          `,
        )}
      </div>
      <vw-bench-field
        data-field="plan"
        .label=${field.label}
        .text=${field.text}
        .echo=${field.echo}
        .problem=${field.problem}
        @vw-field-change=${(e: CustomEvent<{ text: string }>) => void bench.pads.typePlan(e.detail.text)}
        @vw-field-restore=${() => bench.pads.restorePlan()}
      ></vw-bench-field>
    </section>
  `;
}

function openingRow({ id, number, name, front, before, after, restored }: ChangedRow): TemplateResult {
  const [low, high] = [Math.min(before, after), Math.max(before, after)];
  return html`
    <li data-key=${id}>
      <span><b>${number}</b> ${name}</span>
      <span class="pd-track" aria-hidden="true">
        <i class="moved" style="left:${100 * low}%;width:${100 * (high - low)}%"></i>
        <i class="found" style="left:${100 * before}%"></i>
        ${restored === null ? nothing : html`<i class="back" style="left:${100 * restored}%"></i>`}
        <i class="then" style="left:${100 * after}%"></i>
      </span>
      <span>${front}</span>
    </li>
  `;
}

function noteRow({ id, note, cents, db, reach }: MovedRow): TemplateResult {
  const left = 50 + 50 * Math.min(0, reach);
  return html`
    <li data-note=${id}>
      <span>${note}</span>
      <span class="pd-track pd-either" aria-hidden="true">
        <i class="moved" style="left:${left}%;width:${50 * Math.abs(reach)}%"></i>
      </span>
      <span>${cents}</span>
      <span>${db}</span>
    </li>
  `;
}

const COLUMNS = [
  'Key',
  'Thicker by',
  'Front',
  'Centre',
  'Vent share',
  'Old venting at the front',
  'Foot cork',
  'Dropped in, touches',
];

function numbers({ rows, links, unit }: PadChangeView): TemplateResult {
  return html`
    <details class="pd-numbers" open>
      <summary>The numbers, key by key</summary>
      <div class="pd-scroll" tabindex="0" role="region" aria-label="Table of keys">
        <table>
          <thead>
            <tr>
              ${COLUMNS.map((column) => html`<th scope="col">${column}</th>`)}
            </tr>
          </thead>
          <tbody>
            ${rows.map(
              (row) =>
                html`<tr>
                  <th scope="row">${row.number} ${row.name}</th>
                  <td>${row.thicker}</td>
                  <td>${row.front}</td>
                  <td>${row.centre}</td>
                  <td>${row.share}</td>
                  <td>${figureOr(row.restore, row.reason, unit)}</td>
                  <td>${row.cork}</td>
                  <td>${row.droppedIn}</td>
                </tr>`,
            )}
          </tbody>
        </table>
      </div>
      ${
        links.length === 0
          ? nothing
          : html`<h3>Links that shut both at once are put out</h3>
              <ul>
                ${links.map((line) => html`<li>${line}</li>`)}
              </ul>`
      }
    </details>
  `;
}
