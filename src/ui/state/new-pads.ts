import { levelledTurn, ownPose, poseAtAngle } from '../../acoustics/index.ts';
import type { BenchContents } from '../../documents/bench-contents.ts';
import { layered } from '../../documents/complete-setup.ts';
import type { Reading } from '../../documents/readings.ts';
import type { KeySetupDocument, SetupDocument } from '../../documents/setup-document.ts';
import { withOpeningReading, withSetupLength } from '../../documents/sheet-edits.ts';
import type { LoadedHorn } from '../../documents/to-acoustics.ts';

/** A pad and the bed it lies on. */
export interface NewPad {
  readonly pad: string;
  readonly diameterMm: number;
  readonly thicknessMm: number;
  readonly bedMm: number;
}

/** What is proposed is meant, not read. */
const MEANT: Reading = { origin: 'derived', plusMinusMm: 0 };

/** What of a key’s setup is its pad. */
const PAD_FIELDS = ['padDiameterMm', 'padThicknessMm', 'adhesiveBedMm'] as const;

/** Lengths that differ by less are one, mm. */
const SAME_MM = 0.005;

/**
 * Proposes pads where they are other than those as found: a pad of the same size whose thickness differs by no
 * more than a batch does is the pad it has.
 */
export function withProposedPads(
  contents: BenchContents,
  pads: readonly NewPad[],
  toleranceMm: number,
): BenchContents {
  const { proposed, asFound } = contents;
  const document = pads.reduce((setup, { pad, diameterMm, thicknessMm, bedMm }) => {
    const now = asFound.document.keys.find((k) => k.pad === pad);
    const isSame =
      Math.abs((now?.padThicknessMm ?? NaN) - thicknessMm) <= toleranceMm + SAME_MM &&
      Math.abs((now?.padDiameterMm ?? NaN) - diameterMm) < SAME_MM;
    const wanted = { padDiameterMm: diameterMm, padThicknessMm: thicknessMm, adhesiveBedMm: bedMm };
    return PAD_FIELDS.reduce(
      (next, field) => withSetupLength(next, pad, field, isSame ? null : wanted[field], MEANT),
      setup,
    );
  }, proposed.document);
  return { ...contents, proposed: { ...proposed, document } };
}

/** No pad proposed for any key; openings stay. */
export function withoutProposedPads(contents: BenchContents): BenchContents {
  const { proposed } = contents;
  const document = proposed.document.keys.reduce(
    (setup, { pad }) => PAD_FIELDS.reduce((next, field) => withSetupLength(next, pad, field, null), setup),
    proposed.document,
  );
  return { ...contents, proposed: { ...proposed, document } };
}

/** Keys that get another pad, as proposed or as set: another thickness or another size, not only another bed. */
export function keysWithNewPads({ asFound, proposed, asSet }: BenchContents): KeySetupDocument[] {
  return layered(proposed.document, asSet.document).keys.filter((key) => {
    const was = asFound.document.keys.find((k) => k.pad === key.pad);
    return (['padThicknessMm', 'padDiameterMm'] as const).some(
      (field) => key[field] !== undefined && Math.abs(key[field] - (was?.[field] ?? NaN)) >= SAME_MM,
    );
  });
}

/** Writes a key’s pad as proposed into the setup as set, or takes it out again. */
export function withPadSet(contents: BenchContents, pad: string, isIn: boolean): BenchContents {
  const { asSet, proposed } = contents;
  const wanted = proposed.document.keys.find((k) => k.pad === pad);
  const document = PAD_FIELDS.reduce((setup, field) => {
    const mm = wanted?.[field];
    return mm === undefined ? setup : withSetupLength(setup, pad, field, isIn ? mm : null, MEANT);
  }, asSet.document);
  return document === asSet.document ? contents : { ...contents, asSet: { ...asSet, document } };
}

/**
 * The setup as found once new pads are in and levelled, every stop as it was: a thicker pad shuts the key
 * earlier and leaves it less open.
 */
export function withNewPadsIn(found: LoadedHorn, keys: readonly KeySetupDocument[]): SetupDocument {
  const { setup } = found.documents;
  return keys.reduce<SetupDocument>(
    (next, { pad, padThicknessMm, padDiameterMm }) => {
      const { hinge } = found.horn.holes.find((h) => h.id === pad)!;
      const old = found.setup.keys.get(pad)!;
      const before = ownPose(found.horn, found.setup, pad);
      const thicker = padThicknessMm === undefined ? 0 : padThicknessMm / 1000 - old.padThickness;
      const angle = Math.max(0, before.angle - levelledTurn(hinge!, old.padThickness, thicker));
      const radius = padDiameterMm === undefined ? old.padRadius : padDiameterMm / 2000;
      const frontMm = Math.max(0, poseAtAngle(hinge!, radius, angle).front * 1000);
      const opened = withOpeningReading(next, pad, { mm: frontMm, at: 'front' }, { origin: 'derived' });
      return [['padThicknessMm', padThicknessMm] as const, ['padDiameterMm', padDiameterMm] as const].reduce(
        (s, [field, mm]) =>
          mm === undefined ? s : withSetupLength(s, pad, field, mm, { origin: 'derived' }),
        opened,
      );
    },
    { ...setup, keys: [...setup.keys] },
  );
}
