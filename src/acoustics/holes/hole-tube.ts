import type { Air } from '../air/air.ts';
import { makeWalls, type Walls } from '../bore/wall-losses.ts';
import { innerLength, matchingLength, type HoleShape } from './hole-lengths.ts';
import type { LeakSlit } from './leak-slit.ts';

/** A hole under its pad, as the network needs it: how its chimney ends. */
export interface HoleEnd {
  /** m, everything beyond the rim plane as a length of the hole's own area; Infinity when closed */
  readonly endLength: number;
  /** 0 closed … 1 no pad: the hole's acoustic conductance as a share of what it is without a pad */
  readonly ventShare: number;
  /** m, the part of endLength that lies in the thin gap under the pad, and the gap itself; left out without a pad */
  readonly gap?: { readonly share: number; readonly opening: number };
  /** Pa·s/m, resistance times S_h that strong flow adds at the opening; left out when playing softly */
  readonly flowResistance?: number;
  /** the slit a shut pad leaks through; only with endLength Infinity, left out where the pad seals */
  readonly leak?: LeakSlit;
}

export const CLOSED: HoleEnd = Object.freeze({ endLength: Infinity, ventShare: 0 });

/** A hole and its end made ready to compute: its chimney as a lossy tube, its lumped ends. */
export interface HoleTube {
  readonly walls: Walls;
  /** t + t_m, m */
  readonly length: number;
  /** S_h, m² */
  readonly area: number;
  /** 2πρ t_i, per Hz: the inner length's inertance times S_h */
  readonly innerPerHz: number;
  /** 2πρ·endLength, per Hz; Infinity when closed */
  readonly endPerHz: number;
  /** πρS_h/c, per Hz²: the radiation resistance times S_h */
  readonly radiationPerHz2: number;
  /** Pa·s/m, the flow's extra resistance times S_h */
  readonly flowResistance: number;
  /** 2πρ·gap share, per Hz, and the gap, m; 0 without a pad */
  readonly gapPerHz: number;
  readonly gap: number;
  /** what a closed hole leaks through; null where it seals */
  readonly leak: LeakSlit | null;
}

/**
 * m, an end this long lets through less than 1e-20 of what the chimney's own air takes up at any audible
 * frequency: the hole is closed. Beyond it squares would overflow.
 */
const CLOSED_FROM = 1e30;

/** Makes a hole ready to compute. */
export function makeHoleTube(shape: HoleShape, end: HoleEnd, air: Air): HoleTube {
  const area = Math.PI * shape.holeRadius * shape.holeRadius;
  const walls = makeWalls(shape.holeRadius, air);
  return {
    walls,
    length: shape.chimney + matchingLength(shape),
    area,
    innerPerHz: walls.inertancePerHz * innerLength(shape),
    endPerHz: end.endLength < CLOSED_FROM ? walls.inertancePerHz * end.endLength : Infinity,
    radiationPerHz2: (Math.PI * air.density * area) / air.soundSpeed,
    flowResistance: end.flowResistance ?? 0,
    gapPerHz: walls.inertancePerHz * (end.gap?.share ?? 0),
    gap: end.gap?.opening ?? 0,
    leak: end.leak !== undefined && end.leak.stretches.length > 0 ? end.leak : null,
  };
}
