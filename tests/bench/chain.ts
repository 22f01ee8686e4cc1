import { innerLength, matchingLength, type Air, type Network } from '../../src/acoustics/index.ts';

/**
 * A network as a flat list of numbers, so that other programs can compute the same chain. SI units.
 * What stands here is the input of the physics, never one of its results.
 */
export interface ChainAir {
  readonly soundSpeed: number;
  readonly density: number;
  readonly viscosity: number;
  readonly heatRatio: number;
  readonly prandtlRoot: number;
}

/** A cone piece: length and end radii, m. */
export interface ChainBore {
  readonly kind: 'bore';
  readonly length: number;
  readonly r1: number;
  readonly r2: number;
  readonly air: ChainAir;
}

/**
 * A hole: radius, chimney with matching length, inner and end length, m (null: closed); series part, Ω per Hz;
 * the end length's share in the thin gap under the pad, and the gap, m (0: none).
 */
export interface ChainHole {
  readonly kind: 'hole';
  readonly radius: number;
  readonly tube: number;
  readonly inner: number;
  readonly end: number | null;
  readonly halfSeriesPerHz: number;
  readonly gapShare: number;
  readonly gap: number;
  readonly air: ChainAir;
}

/** The whole chain from the mouthpiece to the bell. */
export interface Chain {
  readonly elements: readonly (ChainBore | ChainHole)[];
  readonly bellRadius: number;
  readonly bellCorrection: number;
  readonly bellAir: ChainAir;
}

/** Writes a network out as a chain. */
export function chainOf(network: Network): Chain {
  return {
    elements: network.elements
      .filter((e) => e.kind !== 'volume')
      .map((e) =>
        e.kind === 'bore'
          ? {
              kind: 'bore',
              length: e.piece.length,
              r1: e.piece.r1,
              r2: e.piece.r2,
              air: airOf(e.piece.air),
            }
          : {
              kind: 'hole',
              radius: e.hole.holeRadius,
              tube: e.hole.chimney + matchingLength(e.hole),
              inner: innerLength(e.hole),
              end: e.end.endLength === Infinity ? null : e.end.endLength,
              halfSeriesPerHz: e.halfSeriesPerHz,
              gapShare: e.end.gap?.share ?? 0,
              gap: e.end.gap?.opening ?? 0,
              air: airOf(e.air),
            },
      ),
    bellRadius: network.bellRadius,
    bellCorrection: network.bellCorrection,
    bellAir: airOf(network.bellAir),
  };
}

function airOf({ soundSpeed, density, viscosity, heatRatio, prandtlRoot }: Air): ChainAir {
  return { soundSpeed, density, viscosity, heatRatio, prandtlRoot };
}
