import { ratioFromArms, type CupToFit, type Horn, type LinkScrew } from '../acoustics/index.ts';
import { keyedHoles, type KeyedHole } from './horn-document.ts';
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
  const frontArmMm = (hole: KeyedHole): number => hole.key.hingeMm + keys.get(hole.id)!.padDiameterMm / 2;
  const perFront = (armMm: (hole: KeyedHole) => number | undefined): Map<string, number> =>
    new Map(
      keyed.flatMap((hole) => {
        const arm = armMm(hole);
        return arm === undefined ? [] : [[hole.id, arm / frontArmMm(hole)] as const];
      }),
    );
  const armsOf = (driver: string, driven: string): number | null => {
    const link = document.links.find((l) => l.driver === driver && l.driven === driven);
    const [from, to] = [driver, driven].map((id) => keyed.find((h) => h.id === id));
    if (link?.driverArmMm === undefined || link.drivenArmMm === undefined || !from || !to) return null;
    return ratioFromArms({
      driverArm: link.driverArmMm * MM,
      driverFront: frontArmMm(from) * MM,
      drivenArm: link.drivenArmMm * MM,
      drivenFront: frontArmMm(to) * MM,
    });
  };
  const fromArms: { driver: string; driven: string }[] = [];
  const links = loaded.horn.keywork.links.map((link) => {
    const ratio = link.ratio === undefined ? armsOf(link.driver, link.driven) : null;
    if (ratio === null) return link;
    fromArms.push({ driver: link.driver, driven: link.driven });
    return { ...link, ratio };
  });
  return {
    horn: { ...loaded.horn, keywork: { ...loaded.horn.keywork, links } },
    fromArms,
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
