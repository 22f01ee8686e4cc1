import { fitLink, ratioFromArms } from '../../../../acoustics/index.ts';
import { formatBoth, formatLength } from '../../../../documents/length-format.ts';
import { hornInHand, type BenchState } from '../../../state/bench-state.ts';
import { linkOf, setupLinkOf } from '../../../state/link-edits.ts';
import { textKey, type LinkEnds, type LinkFieldId } from '../../../state/links-state.ts';
import { textInField } from '../../../state/text-in-field.ts';
import type { FieldView } from '../../key-study/measured-fields.model.ts';
import { sentence } from '../../key-study/measured-fields.model.ts';
import { gapWords } from '../gap-words.ts';

/** A ratio that readings or arms give, to be taken into use. */
export interface OfferedRatio {
  /** `Ratio 0.93 ± 0.05`, or what is missing */
  readonly words: string;
  /** null where there is nothing to take */
  readonly ratio: number | null;
}

/** What is known and typed of the link in hand. */
export interface LinkFields {
  readonly gap: FieldView<LinkFieldId>;
  readonly ratio: FieldView<LinkFieldId>;
  readonly readings: readonly FieldView<LinkFieldId>[];
  readonly fromReadings: OfferedRatio;
  readonly arms: readonly FieldView<LinkFieldId>[];
  readonly fromArms: OfferedRatio & {
    readonly arms: { readonly driverArmMm: number; readonly drivenArmMm: number } | null;
  };
}

/** A front opening read with a wedge repeats to this, mm. **Source:** from memory. */
const READING_MM = 0.2;

const READINGS: readonly { readonly id: LinkFieldId; readonly label: string; readonly of: keyof LinkEnds }[] =
  [
    { id: 'firstDriver', label: 'Driver, first', of: 'driver' },
    { id: 'firstDriven', label: 'Driven, first', of: 'driven' },
    { id: 'secondDriver', label: 'Driver, moved', of: 'driver' },
    { id: 'secondDriven', label: 'Driven, moved', of: 'driven' },
  ];

/** @param ratio in use, however it came; null where none is known */
export function makeLinkFields(
  state: BenchState,
  ends: LinkEnds,
  { ratio, from }: { readonly ratio: number | null; readonly from: 'reading' | 'arms' | null },
  nameOf: (pad: string) => string,
): LinkFields {
  const { contents } = hornInHand(state);
  const { unit } = state;
  const link = linkOf(contents.horn.document, ends);
  const gapMm = setupLinkOf(contents.asFound.document, ends)?.drivenGapMm ?? 0;
  const typedIn = (id: LinkFieldId) => state.links.texts[textKey(state.hornId, ends, id)];
  const field = (
    id: LinkFieldId,
    label: string,
    value: number | null,
    { written, echo, hint }: { readonly written: string; readonly echo: string; readonly hint: string },
  ): FieldView<LinkFieldId> => {
    const typed = typedIn(id);
    const inUse = value === null ? '' : ` Still in use: ${echo}.`;
    return {
      id,
      label,
      hint,
      text: value === null ? (typed?.text ?? '') : textInField(typed, value, written),
      echo,
      problem: typed?.problem ? `${sentence(typed.problem)}${inUse}` : null,
    };
  };
  const length = (id: LinkFieldId, label: string, known: number | undefined, hint: string) => {
    const value = typedIn(id)?.value ?? known ?? null;
    const [written, echo] =
      value === null ? ['', 'not read yet'] : [formatLength(value, unit), formatBoth(value, unit)];
    return field(id, label, value, { written, echo, hint });
  };
  const [driverName, drivenName] = [nameOf(ends.driver), nameOf(ends.driven)];
  const arm = (id: 'driverArm' | 'drivenArm'): number | undefined =>
    typedIn(id)?.value ?? (id === 'driverArm' ? link.driverArmMm : link.drivenArmMm);
  return {
    gap: field('drivenGap', 'Left when it shuts', gapMm, {
      written: gapMm === 0 ? '0' : `${gapMm < 0 ? '−' : ''}${gapWords(gapMm, unit)}`.replace(/ \(.*/, ''),
      echo: gapSaid(gapMm, driverName, drivenName, state.unit),
      hint: 'papers or a length; minus if the driver is kept off',
    }),
    ratio: field('ratio', 'Ratio', ratio, {
      written: ratio === null ? '' : plain(ratio),
      echo:
        ratio === null ? 'not known' : `${plain(ratio)}, ${from === 'arms' ? 'from the arms' : origin(link)}`,
      hint: 'driven front per driver front',
    }),
    readings: READINGS.map(({ id, label, of }) =>
      length(id, label, undefined, `front of ${of === 'driver' ? driverName : drivenName}`),
    ),
    fromReadings: offeredByReadings(READINGS.map(({ id }) => typedIn(id)?.value ?? null)),
    arms: [
      length('driverArm', 'Driver’s arm', link.driverArmMm, `rod of ${driverName} to the contact`),
      length('drivenArm', 'Driven arm', link.drivenArmMm, `rod of ${drivenName} to the contact`),
    ],
    fromArms: offeredByArms(state, ends, arm('driverArm'), arm('drivenArm')),
  };
}

function gapSaid(gapMm: number, driver: string, driven: string, unit: BenchState['unit']): string {
  if (gapMm === 0) return 'both shut at once';
  return gapMm > 0
    ? `late: ${driven} hangs ${gapWords(gapMm, unit)}`
    : `early: ${driver} is kept off ${gapWords(gapMm, unit)}`;
}

function origin({ ratioOrigin }: { readonly ratioOrigin?: string | undefined }): string {
  return ratioOrigin === 'template' ? 'from an example' : (ratioOrigin ?? 'measured');
}

/** The line through two readings, and how far their repeat may throw it. */
function offeredByReadings(values: readonly (number | null)[]): OfferedRatio {
  const read = values.filter((v): v is number => v !== null);
  if (read.length < 4) {
    return { words: 'Hold the driver at two places and read both fronts at each.', ratio: null };
  }
  const [d1, v1, d2, v2] = read.map((mm) => mm / 1000);
  const fit = fitLink([
    { driver: d1, driven: v1 },
    { driver: d2, driven: v2 },
  ]);
  if (!fit.found) return { words: `Cannot say: ${fit.reason}.`, ratio: null };
  const spread = (READING_MM * Math.SQRT2 * Math.hypot(1, fit.ratio)) / Math.abs(read[2] - read[0]);
  return { words: `Ratio ${plain(fit.ratio)} ± ${plain(spread)}`, ratio: fit.ratio };
}

function offeredByArms(
  state: BenchState,
  { driver, driven }: LinkEnds,
  driverArmMm: number | undefined,
  drivenArmMm: number | undefined,
): LinkFields['fromArms'] {
  if (driverArmMm === undefined || drivenArmMm === undefined) {
    return { words: 'Measure both arms from rod to contact.', ratio: null, arms: null };
  }
  const { horn, asFound } = hornInHand(state).contents;
  const frontArm = (pad: string): number | null => {
    const key = horn.document.holes.find((h) => h.id === pad)?.key;
    const across = asFound.document.keys.find((k) => k.pad === pad)?.padDiameterMm;
    return key && across !== undefined ? key.hingeMm + across / 2 : null;
  };
  const [driverFront, drivenFront] = [frontArm(driver), frontArm(driven)];
  if (driverFront === null || drivenFront === null || !(driverArmMm > 0 && drivenArmMm > 0)) {
    return { words: 'Cannot say: a rod distance is missing.', ratio: null, arms: null };
  }
  const ratio = ratioFromArms({ driverArm: driverArmMm, drivenArm: drivenArmMm, driverFront, drivenFront });
  return { words: `Ratio ${plain(ratio)}`, ratio, arms: { driverArmMm, drivenArmMm } };
}

/** Two digits after the point, no more than a ratio is good for. */
function plain(value: number): string {
  return (Math.round(value * 100) / 100).toFixed(2);
}
