import { html, nothing, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { told } from '../../../parts/told.ts';
import type { LeaksActs } from '../../../shell/leaks-acts.ts';
import type { LeakShape } from '../../../state/leak-fault.ts';
import { driverOf, type LeaksView, type Option } from './leaks-view.model.ts';

const SHAPES = [
  { value: 'ring', label: 'all round' },
  { value: 'front', label: 'front' },
  { value: 'back', label: 'back' },
];
const ARCS = [30, 60, 90, 180].map((deg) => ({ value: String(deg), label: `${deg}°` }));
const SHUTS = [
  { value: 'late', label: 'late' },
  { value: 'early', label: 'early' },
];
const LOSSES = [1, 3, 6].map((db) => ({ value: String(db), label: `${db} dB` }));
/** Of the slider, papers. */
const PAPERS = { low: 0.25, high: 8, step: 0.25, mm: 0.025 };

/** The leak in hand: where, why, how wide, and the note that sets a limit. */
export function faultPanel(view: LeaksView, acts: LeaksActs): TemplateResult {
  const { fault, gap } = view;
  const from = (value: string): void => {
    const link = driverOf(value);
    if (link === null) acts.atPad(fault.pad);
    else acts.atLink(link.driver, fault.pad);
  };
  return html`
    <section class="ks-try lk-fault" aria-labelledby="lk-fault-title" @focusin=${() => acts.expectTyping()}>
      <div class="lk-group">
        <h2 id="lk-fault-title">The leak</h2>
        <div class="lk-choices">
          ${select('Pad', 'pad', view.pads, fault.pad, (value) => acts.atPad(value))}
          ${select('Cause', 'source', view.sources, view.source, from)} ${shapeChoice(view, acts)}
        </div>
      </div>
      <div class="lk-group">
        <h2>How wide</h2>
        <div class="lk-gap">
          <vw-bench-field
            data-field="gap"
            .label=${gap.label}
            .hint=${gap.hint}
            .text=${gap.text}
            .echo=${gap.echo}
            .problem=${gap.problem}
            @vw-field-change=${(e: CustomEvent<{ text: string }>) => void acts.typeGap(e.detail.text)}
            @vw-field-restore=${() => acts.restoreGap()}
          ></vw-bench-field>
          <input
            type="range"
            data-act="gap"
            aria-label="Gap in papers"
            aria-valuetext=${gap.echo}
            min=${PAPERS.low}
            max=${PAPERS.high}
            step=${PAPERS.step}
            .value=${live(String(Math.round(view.papers / PAPERS.step) * PAPERS.step))}
            @input=${(e: Event) => acts.setGap((e.target as HTMLInputElement).valueAsNumber * PAPERS.mm)}
          />
        </div>
      </div>
      <div class="lk-group">
        <h2>How wide it may be</h2>
        <div class="lk-choices">
          <vw-choice
            label=${`until ${view.noteLabel} loses`}
            data-act="loss"
            .options=${LOSSES}
            .value=${String(view.lostDb)}
            @vw-choice-change=${(e: CustomEvent<{ value: string }>) => acts.setLostDb(Number(e.detail.value))}
          ></vw-choice>
        </div>
      </div>
    </section>
  `;
}

/** The note the player asks about, or the key it speaks under. */
export function askedPanel(view: LeaksView, acts: LeaksActs): TemplateResult {
  const shut = view.speaksUnder === '' ? [{ value: '', label: 'none: all pads shut' }] : [];
  return html`
    <div class="lk-asked">
      ${select('The player asks about', 'note', view.notes, view.noteId, (value) => acts.setNote(value))}
      ${select('which speaks under', 'asked-key', [...shut, ...view.keys], view.speaksUnder, (value) => acts.askKey(value))}
    </div>
  `;
}

/** The leak in hand in words. */
export function playedPanel({ played, waiting, unit }: LeaksView): TemplateResult {
  const reasons = played?.answer.reasons ?? [];
  return html`
    <section
      class="lk-played"
      aria-label="The leak in hand"
      aria-live="polite"
      aria-busy=${waiting && played === null ? 'true' : 'false'}
    >
      <h2>
        ${played === null ? 'Playing every note with the leak and without…' : told(played.answer.headline, reasons, unit)}
      </h2>
      <p class="lk-limit-said">${played === null ? nothing : told(played.answer.standing, reasons, unit)}</p>
      <p>${played?.answer.second ?? nothing}</p>
    </section>
  `;
}

/** What part of a seat stands off, or how a link is out. */
function shapeChoice({ fault }: LeaksView, acts: LeaksActs): TemplateResult {
  if (fault.source.kind === 'link') {
    return html`<vw-choice
      label="It shuts"
      data-act="shuts"
      .options=${SHUTS}
      .value=${fault.source.shuts}
      @vw-choice-change=${(e: CustomEvent<{ value: string }>) =>
        acts.setShuts(e.detail.value as 'late' | 'early')}
    ></vw-choice>`;
  }
  return html`
    <vw-choice
      label="Open"
      data-act="shape"
      .options=${SHAPES}
      .value=${fault.shape}
      @vw-choice-change=${(e: CustomEvent<{ value: string }>) => acts.setShape(e.detail.value as LeakShape)}
    ></vw-choice>
    ${
      fault.shape === 'ring'
        ? nothing
        : select('over', 'arc', ARCS, String(fault.arcDeg), (v) => acts.setArc(Number(v)))
    }
  `;
}

function select(
  label: string,
  act: string,
  options: readonly Option[],
  value: string,
  pick: (value: string) => void,
): TemplateResult {
  return html`
    <label class="rg-select">
      <span>${label}</span>
      <select
        data-act=${act}
        .value=${live(value)}
        @change=${(e: Event) => pick((e.target as HTMLSelectElement).value)}
      >
        ${options.map(
          (option) =>
            html`<option value=${option.value} ?selected=${option.value === value}>${option.label}</option>`,
        )}
      </select>
    </label>
  `;
}
