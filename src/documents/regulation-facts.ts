import type { CupToFit, Horn, LinkScrew } from '../acoustics/index.ts';
import { keyedHoles, type KeyedHole } from './horn-document.ts';
import { frontArmMm, knownRatio } from './link-ratios.ts';
import type { WholeKeySetup } from './setup-document.ts';
import type { LoadedHorn } from './to-acoustics.ts';

const MM = 1e-3;

/** A cup's floor as known, and how. */
export interface KnownCup {
  readonly cup: CupToFit;
  readonly floorFrom: 'measured' | 'derived';
}

/** What a horn's documents say for regulation beyond what sound needs, in SI. */
export interface RegulationFacts {
  /** the horn, with ratios from arms where none was measured */
  readonly horn: Horn;
  /** links whose ratio comes from the arms */
  readonly fromArms: readonly { readonly driver: string; readonly driven: string }[];
  readonly screws: readonly LinkScrew[];
  /** by pad: travel of its touch, and of its foot cork, per travel of its front */
  readonly touchPerFront: ReadonlyMap<string, number>;
  readonly footPerFront: ReadonlyMap<string, number>;
  readonly cups: readonly KnownCup[];
}

/** Gathers what regulation needs from a horn and its setup. */
export function regulationFacts(loaded: LoadedHorn): RegulationFacts {
  const { horn: document, setup } = loaded.documents;
  const keyed = keyedHoles(document);
  const keys = new Map(setup.keys.map((key) => [key.pad, key]));
  const perFront = (armMm: (hole: KeyedHole) => number | undefined): Map<string, number> =>
    new Map(
      keyed.flatMap((hole) => {
        const arm = armMm(hole);
        return arm === undefined ? [] : [[hole.id, arm / frontArmMm(document, setup, hole.id)!] as const];
      }),
    );
  const fromArms = document.links.filter((link) => knownRatio(document, setup, link)?.from === 'arms');
  return {
    horn: loaded.horn,
    fromArms: fromArms.map(({ driver, driven }) => ({ driver, driven })),
    screws: (setup.links ?? []).flatMap(({ driver, driven, drivenGapMm }) =>
      drivenGapMm === undefined ? [] : [{ driver, driven, left: drivenGapMm * MM }],
    ),
    touchPerFront: perFront((hole) => hole.key.touchArmMm),
    footPerFront: perFront((hole) => hole.key.footArmMm),
    cups: keyed.flatMap((hole) => knownCup(hole, keys.get(hole.id)!) ?? []),
  };
}

/** A cup's floor as measured, or as pad, bed and seat add up to it; null where neither is known. */
function knownCup(hole: KeyedHole, key: WholeKeySetup): KnownCup | null {
  const { cupFloorMm, cupDiameterMm } = hole.key;
  const { padThicknessMm, adhesiveBedMm, seatMm, padDiameterMm } = key;
  const derivedMm =
    adhesiveBedMm === undefined || seatMm === undefined ? undefined : padThicknessMm + adhesiveBedMm - seatMm;
  const floorMm = cupFloorMm ?? derivedMm;
  if (floorMm === undefined) return null;
  return {
    cup: {
      pad: hole.id,
      floor: floorMm * MM,
      padDiameter: padDiameterMm * MM,
      ...(cupDiameterMm === undefined ? {} : { cupDiameter: cupDiameterMm * MM }),
      ...(seatMm === undefined ? {} : { seat: seatMm * MM }),
    },
    floorFrom: cupFloorMm === undefined ? 'derived' : 'measured',
  };
}
