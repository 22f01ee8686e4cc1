import { makeHoleTube, type Air, type Network } from '../../src/acoustics/index.ts';
import { makeWalls } from '../../src/acoustics/bore/wall-losses.ts';

/** Air whose layers are a millionth of a millionth of the tube: losses off, by the same code. */
export function inviscid(air: Air): Air {
  return { ...air, viscosity: air.viscosity * 1e-24 };
}

/** A network with its losses off. */
export function lossless(network: Network): Network {
  return {
    ...network,
    bellAir: inviscid(network.bellAir),
    elements: network.elements.map((e) => {
      if (e.kind === 'bore') {
        const air = inviscid(e.piece.air);
        return { ...e, piece: { ...e.piece, air, walls: makeWalls(e.piece.walls.radius, air) } };
      }
      const air = inviscid(e.air);
      if (e.kind === 'volume') return { ...e, air };
      return { ...e, air, tube: makeHoleTube(e.hole, e.end, air) };
    }),
  };
}
