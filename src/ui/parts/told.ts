import { html, type TemplateResult } from 'lit';
import type { LengthUnit } from '../../documents/length-format.ts';
import type { Reason } from '../state/reasons.ts';
import { cutAtFigures } from './reason-view.model.ts';
import { withMarks } from './told-marks.model.ts';
import './vw-reason.ts';

/** A figure that opens its reason. @param text what is shown, where that is more than the figure itself */
export function figure(reason: Reason, unit: LengthUnit, text: unknown = reason.figure): TemplateResult {
  return html`<vw-reason .reason=${reason} .unit=${unit}>${text}</vw-reason>`;
}

/** A sentence in which the figures that have reasons open them; a mark after a figure stays on its line. */
export function told(
  text: string,
  reasons: readonly Reason[],
  unit: LengthUnit,
): (string | TemplateResult)[] {
  return withMarks(cutAtFigures(text, reasons)).map(({ piece, mark }) => {
    if (typeof piece === 'string') return piece;
    return mark === '' ? figure(piece, unit) : withMark(figure(piece, unit), mark);
  });
}

/** A line may break beside a figure, which is a box of its own in it: not before a mark. */
function withMark(shown: TemplateResult, mark: string): TemplateResult {
  return html`<span class="vw-marked">${shown}${mark}</span>`;
}

/** A figure that opens its reason where it has one. */
export function figureOr(text: string, reason: Reason | null, unit: LengthUnit): string | TemplateResult {
  return reason === null ? text : figure(reason, unit, text);
}

/** A figure in a row of fields, which the tabulator passes by. */
export function figureInRow(reason: Reason, unit: LengthUnit): TemplateResult {
  return html`<vw-reason passed .reason=${reason} .unit=${unit}>${reason.figure}</vw-reason>`;
}
