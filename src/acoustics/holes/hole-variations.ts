import type { Air } from '../air/air.ts';
import { makeLineTerms, turnSlopesToRadius, turnSlopesToTemperature } from '../bore/wall-losses.ts';
import type { Complex } from '../numerics/complex.ts';
import type { OnePort } from '../two-port.ts';
import { innerLengthSlope, matchingLengthSlope, type HoleShape } from './hole-lengths.ts';
import { holeTermsAt, makeHoleMotion, makeHoleTerms, writeHoleSlope } from './hole-terms.ts';
import type { HoleTube } from './hole-tube.ts';
import { writeLeakMotion } from './leak-terms.ts';

/**
 * Where {@link holeVariationsAt} writes: slopes of Y_s as re, im pairs.
 *
 *   0, 1 per m of end length   2, 3 per m of chimney   4, 5 per m of hole radius, the end length's own
 *   change left out   6, 7 per °C   8…11 the gap's friction as {@link gapFrictionAt} writes it
 */
export type HoleVariations = Float64Array;

/**
 * How a hole's shunt admittance answers to what the bench can change.
 *
 * @param f         Hz
 * @param logSlopes of the air, per °C
 * @param admittance takes Y_s itself, re and im
 */
export function holeVariationsAt(
  shape: HoleShape,
  tube: HoleTube,
  f: number,
  logSlopes: Air,
  out: HoleVariations,
  admittance: OnePort,
  extra?: Complex,
): void {
  holeTermsAt(tube, f, terms, true, extra);
  const { perMetre, friction, ends } = terms;
  admittance[0] = tube.area * ends[10];
  admittance[1] = tube.area * ends[11];

  motion.fill(0);
  motion[5] = tube.walls.inertancePerHz * f;
  writeHoleSlope(tube, terms, motion, out, 0);

  motion.fill(0);
  for (let i = 0; i < 4; i++) motion[i] = perMetre[i];
  writeHoleSlope(tube, terms, motion, out, 2);

  setPerRadius(shape, tube, f, extra);
  writeHoleSlope(tube, terms, motion, out, 4);
  // Y_s = S_h q, and S_h grows as well.
  const perRadius = 2 / shape.holeRadius;
  out[4] += perRadius * tube.area * ends[10];
  out[5] += perRadius * tube.area * ends[11];

  setPerDegree(tube, f, logSlopes);
  writeHoleSlope(tube, terms, motion, out, 6);
  for (let i = 0; i < 4; i++) out[8 + i] = friction[i];
}

const terms = makeHoleTerms();
const motion = makeHoleMotion();
const turned = makeLineTerms();

/** What a metre more of hole radius moves; the end length's own change is left out. */
function setPerRadius(shape: HoleShape, tube: HoleTube, f: number, extra: Complex | undefined): void {
  const { walls, length, leak } = tube;
  turned.set(terms.perMetre);
  turnSlopesToRadius(walls, f, turned);
  const longer = matchingLengthSlope(shape);
  for (let i = 0; i < 4; i++) motion[i] = turned[4 + i] * length + turned[i] * longer;
  // What stands outside is the same impedance whatever the hole's area; e carries the area.
  const perRadius = 2 / shape.holeRadius;
  motion[4] = perRadius * (tube.radiationPerHz2 * f * f + (extra?.re ?? 0));
  motion[5] = perRadius * (extra?.im ?? 0);
  motion[6] = walls.inertancePerHz * f * innerLengthSlope(shape);
  if (leak === null) return;
  const ofLeak = { log: -perRadius, friction: 0, radius: 1, radiation: perRadius };
  writeLeakMotion(terms.leak, ofLeak, motion, 4);
}

/** What a degree more moves. @param logSlopes of the air, per °C */
function setPerDegree(tube: HoleTube, f: number, logSlopes: Air): void {
  const { walls, length, leak } = tube;
  const { friction, ends } = terms;
  turned.set(terms.perMetre);
  turnSlopesToTemperature(walls, f, logSlopes, turned);
  for (let i = 0; i < 4; i++) motion[i] = turned[4 + i] * length;
  const { density } = logSlopes;
  const radiation = density - logSlopes.soundSpeed;
  const rub = tube.gapPerHz * f;
  const thinner = 0.5 * (density - logSlopes.viscosity);
  motion[4] =
    tube.radiationPerHz2 * f * f * radiation - rub * (friction[1] * density + friction[3] * thinner);
  motion[5] = tube.endPerHz * f * density + rub * (friction[0] * density + friction[2] * thinner);
  motion[6] = ends[12] * density;
  if (leak === null) return;
  writeLeakMotion(terms.leak, { log: -density, friction: thinner, radius: 0, radiation }, motion, 4);
}
