import type { BenchContents, SetupRole } from '../../documents/bench-contents.ts';
import { formatBoth, type LengthUnit } from '../../documents/length-format.ts';
import type { Origin } from '../../documents/readings.ts';
import type { HornDocument } from '../../documents/horn-document.ts';
import { knownHornLength, knownSetupLength, type KnownLength } from '../../documents/sheet-edits.ts';
import { boreAtHoleMm } from '../../documents/to-acoustics.ts';
import type { LengthId } from './fields.ts';
import type { ReasonInput } from './reasons.ts';

/** What a key’s venting is worked out from, in the order a bench reads it; the adhesive bed has no part in it. */
const VENTING_LENGTHS: readonly (readonly [LengthId, string])[] = [
  ['diameterMm', 'hole diameter'],
  ['padDiameterMm', 'pad diameter'],
  ['hingeMm', 'rod to pad centre'],
  ['hingeHeightMm', 'rod above the rim'],
  ['chimneyMm', 'chimney'],
  ['rimMm', 'rim'],
  ['padThicknessMm', 'pad thickness'],
];

/** What was measured needs no word: its ± says how well. */
export const FROM: Readonly<Record<Origin, string>> = {
  measured: '',
  template: 'from the example',
  derived: 'worked out',
};

/** `7.9 mm (0.311 in) ± 0.2 mm` and where it comes from. */
export function lengthInput(
  label: string,
  { mm, plusMinusMm, origin, tool, readOn }: KnownLength,
  unit: LengthUnit,
): ReasonInput {
  const half = unit === 'mm' ? `${plainNumber(plusMinusMm)} mm` : `${(plusMinusMm / 25.4).toFixed(3)} in`;
  return {
    label,
    value: plusMinusMm === 0 ? formatBoth(mm, unit) : `${formatBoth(mm, unit)} ± ${half}`,
    from: [
      origin === 'measured' && tool !== null ? `with a ${tool}` : FROM[origin],
      readOn === null ? '' : `read on ${readOn}`,
    ]
      .filter((words) => words !== '')
      .join(', '),
  };
}

/** The lengths of hole, pad, hinge and bore that decide how a key vents. */
export function ventingInputs(contents: BenchContents, pad: string, unit: LengthUnit): ReasonInput[] {
  const read = VENTING_LENGTHS.flatMap(([field, label]) => {
    const known =
      field === 'padDiameterMm' || field === 'padThicknessMm'
        ? knownSetupLength(contents.asFound.document, pad, field)
        : field === 'openingMm' || field === 'adhesiveBedMm'
          ? null
          : knownHornLength(contents.horn.document, pad, field);
    return known === null ? [] : [lengthInput(label, known, unit)];
  });
  return [...read, boreInput(contents.horn.document, pad, unit)];
}

/** Worked out from the bore as written, and taken as exact: a place on it has a ± of its own, its width has none. */
function boreInput(horn: HornDocument, pad: string, unit: LengthUnit): ReasonInput {
  return {
    label: 'bore at the hole',
    value: formatBoth(boreAtHoleMm(horn, pad), unit),
    from: 'from the bore’s table, taken as exact',
  };
}

/** Which reading of an opening it is. */
export const OPENED: Readonly<Record<SetupRole, string>> = {
  asFound: 'as found',
  proposed: 'as proposed',
  asSet: 'as set',
};

/** The opening a key was read at, as set or as proposed where it was. */
export function openingInput(
  contents: BenchContents,
  pad: string,
  role: SetupRole,
  unit: LengthUnit,
): ReasonInput[] {
  for (const from of [role, 'asFound'] as const) {
    const { document } = contents[from];
    const known = knownSetupLength(document, pad, 'openingMm');
    if (known === null) continue;
    const at = document.keys.find((key) => key.pad === pad)?.measuredAt;
    const where = at === undefined ? '' : ` at the ${at}`;
    return [lengthInput(`opening ${OPENED[from]}${where}`, known, unit)];
  }
  return [];
}

function plainNumber(value: number): string {
  return String(Number(value.toFixed(2)));
}
