import type { MeasuringPoint } from '../../../acoustics/index.ts';
import { formatBoth, formatLength } from '../../../documents/length-format.ts';
import { dayInHand, hornInHand, keyInHand, type BenchState } from '../../state/bench-state.ts';
import {
  DAY_FIELDS,
  LENGTH_FIELDS,
  type DayFieldId,
  type FieldId,
  type LengthId,
} from '../../state/fields.ts';
import { knownHornLength, knownSetupLength } from '../../../documents/sheet-edits.ts';
import { unbroken } from '../../parts/note-names.ts';
import { barePlusMinus, sign } from '../../parts/plus-minus-words.ts';
import type { KeyMeasurements } from '../../state/key-lengths.ts';
import { textInField } from '../../state/text-in-field.ts';

/** A text field as the screen shows it. */
export interface FieldView<Id extends string> {
  readonly id: Id;
  readonly label: string;
  readonly hint: string;
  readonly text: string;
  readonly echo: string;
  readonly problem: string | null;
}

/** Everything typed about the key in hand and the day. */
export interface MeasuredFields {
  readonly fields: readonly FieldView<FieldId>[];
  readonly measuredAt: MeasuringPoint;
  readonly measuredAtProblem: string | null;
  readonly dayFields: readonly FieldView<DayFieldId>[];
  readonly inputLines: readonly string[];
}

export function makeMeasuredFields(state: BenchState): MeasuredFields {
  const horn = hornInHand(state);
  const key = keyInHand(state);
  const typed = horn.typed[horn.keyId] ?? {};
  const kept = (value: string, problem: string | null = null): string | null =>
    problem === null ? null : `${sentence(problem)} Still in use: ${value}.`;
  const fields = LENGTH_FIELDS.map((plan): FieldView<FieldId> => {
    const value = key[plan.id as keyof Omit<KeyMeasurements, 'measuredAt'>];
    const text = typed[plan.id];
    return {
      id: plan.id,
      label: plan.label,
      hint: unbroken(
        `± ${barePlusMinus(plusMinusMm(state, plan.id), state.unit)} ${sign(state.unit)} · ${plan.hint}`,
      ),
      text: textInField(text, value, formatLength(value, state.unit)),
      echo: formatBoth(value, state.unit),
      problem: kept(formatBoth(value, state.unit), text?.problem),
    };
  });
  const day = dayInHand(state);
  const dayFields = DAY_FIELDS.map((plan): FieldView<DayFieldId> => {
    const number = day[plan.id];
    const value = `${trimmed(number)} ${plan.unit}`;
    const text = horn.dayTyped[plan.id];
    return {
      id: plan.id,
      label: plan.label,
      hint: plan.hint,
      text: textInField(text, number, value),
      echo: value,
      problem: kept(value, text?.problem),
    };
  });
  return {
    fields,
    measuredAt: key.measuredAt,
    measuredAtProblem: kept(`at the ${key.measuredAt}`, typed.measuredAt?.problem),
    dayFields,
    inputLines: [...fields, ...dayFields].map((f) =>
      f.id === 'openingMm' ? `${f.label}: ${f.echo} at the ${key.measuredAt}` : `${f.label}: ${f.echo}`,
    ),
  };
}

/** How far a length of the key in hand may be off. */
function plusMinusMm(state: BenchState, id: LengthId): number {
  const { contents, keyId } = hornInHand(state);
  const known =
    id === 'openingMm' || id === 'padDiameterMm' || id === 'padThicknessMm' || id === 'adhesiveBedMm'
      ? knownSetupLength(contents.asFound.document, keyId, id)
      : knownHornLength(contents.horn.document, keyId, id);
  return known?.plusMinusMm ?? 0;
}

function trimmed(value: number): string {
  return String(Math.round(value * 100) / 100);
}

/** A message as a sentence: capital first, full stop last. */
export function sentence(message: string): string {
  const text = message.charAt(0).toUpperCase() + message.slice(1);
  return /[.!?]$/.test(text) ? text : `${text}.`;
}
