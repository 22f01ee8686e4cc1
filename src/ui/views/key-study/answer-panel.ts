import { html, nothing, type TemplateResult } from 'lit';
import type { LengthUnit } from '../../../documents/length-format.ts';
import { told } from '../../parts/told.ts';
import type { KeyStudyView, StudyView } from './key-study-view.model.ts';

/** The answer, what it means, where the key stands, what its links say, and how far all that holds. */
export function answerPanel(view: KeyStudyView): TemplateResult {
  const { study, unit } = view;
  const cautions = [view.problem, view.calibrated, ...(study?.warnings ?? [])].filter(
    (line) => line !== null,
  );
  return html`
    <section
      class="ks-answer"
      aria-label="Answer"
      aria-live="polite"
      aria-busy=${view.waiting ? 'true' : 'false'}
    >
      <div class="ks-said">
        <h1>
          ${study === null ? 'Working it out from the bore, the holes and the pad…' : told(study.answer.headline, study.reasons.point, unit)}
        </h1>
        <p class="ks-standing">
          ${study === null ? nothing : told(study.answer.standing, study.reasons.present, unit)}
        </p>
      </div>
      ${study === null ? nothing : why(study, unit)}
      ${
        cautions.length === 0
          ? nothing
          : html`<ul class="ks-cautions" aria-label="Limits of this answer">
              ${cautions.map((line) => html`<li>${line}</li>`)}
            </ul>`
      }
    </section>
  `;
}

function why({ answer, reasons }: StudyView, unit: LengthUnit): TemplateResult {
  return html`<div class="ks-why">
    <p>${answer.reason}</p>
    <p><strong>${told(answer.sure, reasons.point, unit)}</strong></p>
    <p data-part="tilt">${told(answer.tilt, reasons.present, unit)}</p>
  </div>`;
}

/** What the key and its links do to each other. It grows and shrinks with the slider, and moves no slider. */
export function linksPanel({ study, linked }: KeyStudyView): TemplateResult | typeof nothing {
  if (!linked) return nothing;
  return html`
    <section class="ks-links" aria-label="Links of this key" aria-live="polite">
      ${(study?.links ?? []).map(
        ({ text, pressing }) =>
          html`<p class=${pressing ? 'ks-pressing' : ''}>${pressing ? '▶ ' : nothing}${text}</p>`,
      )}
    </section>
  `;
}
