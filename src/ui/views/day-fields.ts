import { html, type TemplateResult } from 'lit';
import '../parts/vw-bench-field.ts';
import type { Bench } from '../shell/bench.ts';
import type { DayFieldId } from '../state/fields.ts';
import type { FieldView } from './key-study/measured-fields.model.ts';

/** What the day does, to be written in. */
export function dayFields(fields: readonly FieldView<DayFieldId>[], bench: Bench): TemplateResult[] {
  return fields.map(
    (field) => html`
      <vw-bench-field
        data-field=${field.id}
        .label=${field.label}
        .hint=${field.hint}
        .text=${field.text}
        .echo=${field.echo}
        .problem=${field.problem}
        @vw-field-change=${(e: CustomEvent<{ text: string }>) => void bench.typeDay(field.id, e.detail.text)}
        @vw-field-restore=${() => bench.restoreDay(field.id)}
      ></vw-bench-field>
    `,
  );
}
