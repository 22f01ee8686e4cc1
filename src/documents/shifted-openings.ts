import {
  holeOf,
  keySetupOf,
  largestOpening,
  ownPose,
  type Horn,
  type MeasuringPoint,
  type Setup,
} from '../acoustics/index.ts';
import type { LoadedToCompare } from './compare-loaded.ts';
import { keyedHoles } from './horn-document.ts';
import { regulationFacts } from './regulation-facts.ts';
import { withOpeningReading } from './sheet-edits.ts';
import type { SetupDocument } from './setup-document.ts';
import { loadHorn, type LoadedHorn } from './to-acoustics.ts';

/** What ends the way of a key that is moved: it is shut, its hinge swings no further, its foot cork is used up. */
export type EndOfWay = 'shut' | 'hinge' | 'foot cork';

/** One key’s own stop, moved on, mm at the front. */
export interface ShiftedOpening {
  readonly pad: string;
  readonly fromMm: number;
  readonly toMm: number;
  /** what kept it from going the whole way; null where it went */
  readonly endedBy: EndOfWay | null;
}

const MM = 1e-3;

/** Far below what is read, far above rounding, mm. */
const ROUNDING_MM = 1e-9;

/** Own stops moved by the same amount at the front, each as far as the key can go; arms are left out. */
export function shiftedOpenings(loaded: LoadedHorn, byMm: number): ShiftedOpening[] {
  const { horn, setup, documents } = loaded;
  const { footPerFront } = regulationFacts(loaded);
  return keyedHoles(documents.horn).map(({ id }) => {
    const fromMm = ownPose(horn, setup, id).front / MM;
    const perFront = footPerFront.get(id);
    const corkMm = documents.setup.keys.find(({ pad }) => pad === id)?.footCorkMm;
    const corkEndMm = perFront === undefined || corkMm === undefined ? Infinity : fromMm + corkMm / perFront;
    const hingeEndMm = largestFrontMm(horn, setup, id);
    const toMm = Math.min(Math.max(fromMm + byMm, 0), hingeEndMm, corkEndMm);
    const lacks = Math.abs(fromMm + byMm - toMm) > ROUNDING_MM;
    const endedBy = byMm < 0 ? 'shut' : corkEndMm < hingeEndMm ? 'foot cork' : 'hinge';
    return { pad: id, fromMm, toMm, endedBy: lacks ? endedBy : null };
  });
}

function largestFrontMm(horn: Horn, setup: Setup, id: string): number {
  return largestOpening(holeOf(horn, id).hinge!, keySetupOf(setup, id).padRadius, 'front') / MM;
}

/**
 * A horn with every own stop moved by the same amount. What was read stays read: its error is the same before and
 * after, so that the difference is far surer than either.
 */
export function withEveryKeyShifted(
  loaded: LoadedHorn,
  byMm: number,
  name: string,
):
  | { readonly ok: true; readonly value: LoadedToCompare; readonly openings: readonly ShiftedOpening[] }
  | { readonly ok: false; readonly message: string } {
  const { horn, setup } = loaded.documents;
  const openings = shiftedOpenings(loaded, byMm);
  const keyOf = new Map(setup.keys.map((key) => [key.pad, key]));
  const document = openings.reduce<SetupDocument>(
    (now, { pad, toMm }) =>
      // A pad that is shut is shut, however it was read before.
      withOpeningReading(
        now,
        pad,
        { mm: toMm, at: 'front' },
        toMm === 0 ? { origin: 'derived', plusMinusMm: 0 } : keyOf.get(pad)!.readings?.openingMm,
      ),
    { ...setup, keys: [...setup.keys], name },
  );
  const read = loadHorn({ horn, setup: document });
  if (!read.ok) return { ok: false, message: read.issues[0].message };
  const readAs = new Map(
    openings.flatMap(({ pad, toMm }) => {
      const { openingMm, measuredAt } = keyOf.get(pad)!;
      const opening: { at: MeasuringPoint; height: number } = { at: measuredAt, height: openingMm * MM };
      return toMm === 0 ? [] : [[pad, opening] as const];
    }),
  );
  return { ok: true, value: { ...read.value, readAs }, openings };
}
