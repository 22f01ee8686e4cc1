import { makePadPose } from '../../acoustics/index.ts';
import type { LengthUnit } from '../../documents/length-format.ts';
import type { PadGeometry } from '../state/study-report.ts';
import { makePadDrawing, type PadDrawing, type Spot } from './pad-drawing.model.ts';

/** One of the two keys of a link. */
export interface LinkedKey {
  readonly name: string;
  readonly geometry: PadGeometry;
  /** at the front, before anything is pressed */
  readonly standsMm: number;
  /** at the front, as it is drawn; null where it cannot be said */
  readonly nowMm: number | null;
}

/** A link to draw. */
export interface LinkToDraw {
  readonly driver: LinkedKey;
  readonly driven: LinkedKey;
  /** driven front per driver front; null where it is not known */
  readonly ratio: number | null;
  /** what the driven pad lacks to what the arm lets it open, mm at its front; 0 while they touch */
  readonly lostMm: number;
}

/**
 * Driver and driven key from the side, face to face, in millimetres: x to the right from the driver's rod, y
 * down from the rim plane.
 *
 *     driver's rod ○━━━━━━━━━━━━━━━━━┓ screw
 *                  ╲▁▁▁▁▁▁ pad       ▼         driven key's rod, its key mirrored
 *                                    ━━━━━━━━━━━━━━━━━━━○
 *                                         pad ▁▁▁▁▁▁▁╱
 *
 * Pads, holes, rods and openings are to scale. Keys stand one behind the other on a horn; here they face each
 * other so that the arm can be seen, which meets the driven key where the ratio wants it.
 */
export interface StackDrawing {
  readonly leftMm: number;
  readonly topMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly driver: PadDrawing;
  readonly driven: PadDrawing;
  /** where the keys' holes are: the middle of each on the rim plane */
  readonly driverAt: number;
  readonly drivenAt: number;
  /** as SVG transforms about each key's rod, in its own frame */
  readonly driverTurn: string;
  readonly drivenTurn: string;
  /** in the frame of each key; null where the ratio is not known */
  readonly driverArm: string | null;
  readonly drivenArm: string | null;
  /** the driver's screw, from its arm down to its tip, in the drawing; null likewise */
  readonly screw: { readonly head: Spot; readonly tip: Spot } | null;
  /** driver's grip, in the drawing */
  readonly grip: Spot;
  readonly scaleBarMm: number;
}

/** Drawn, not measured, mm: between the two pads, the arm above the cups, the screw's length. */
const BETWEEN_MM = 14;
const ARM_ABOVE_MM = 6;
const SCREW_MM = 4;
/** How far the driven key's arm runs on beneath the screw, mm. */
const PLATE_MM = 8;
/** As much of the bore as is shown, mm. */
const BORE_MM = 7;
/** Room beside the rods, mm. */
const SIDE_MM = 3;

export function makeStackDrawing(link: LinkToDraw, unit: LengthUnit): StackDrawing {
  const { driver, driven, ratio } = link;
  const from = keyDrawing(driver, unit);
  const to = keyDrawing(driven, unit);
  const reachOf = ({ geometry }: LinkedKey): number => geometry.hingeMm + geometry.padRadiusMm;
  const [rhoD, rhoV] = [reachOf(driver), reachOf(driven)];
  const span = rhoD + BETWEEN_MM + rhoV;
  const arms = ratio === null ? null : armsFor(ratio, rhoD, rhoV, span);
  const level = -Math.max(driver.geometry.padThicknessMm, driven.geometry.padThicknessMm) - ARM_ABOVE_MM;
  const top = Math.min(from.topMm, to.topMm, level - SCREW_MM - 2);
  const depth = Math.min(
    Math.max(from.topMm + from.heightMm, to.topMm + to.heightMm),
    Math.max(driver.geometry.chimneyMm, driven.geometry.chimneyMm) + BORE_MM,
  );
  const driverAt = driver.geometry.hingeMm;
  const drivenAt = span - driven.geometry.hingeMm;
  const highest = armTop(link, arms, top, level);
  return {
    leftMm: -SIDE_MM,
    topMm: highest,
    widthMm: span + 2 * SIDE_MM,
    heightMm: depth - highest,
    driver: from,
    driven: to,
    driverAt,
    drivenAt,
    driverTurn: from.turn,
    drivenTurn: to.turn,
    driverArm: arms === null ? null : armPath(driver.geometry, arms.driverMm, level - SCREW_MM),
    drivenArm: arms === null ? null : armPath(driven.geometry, arms.drivenMm + PLATE_MM, level),
    screw: arms === null ? null : screwFor(link, arms, span, level),
    grip: { x: from.grip.x + driverAt, y: from.grip.y },
    scaleBarMm: span > 90 ? 20 : span > 45 ? 10 : 5,
  };
}

function keyDrawing({ geometry, nowMm, standsMm }: LinkedKey, unit: LengthUnit): PadDrawing {
  const highest = Math.max(nowMm ?? standsMm, standsMm);
  return makePadDrawing(
    geometry,
    { frontMm: nowMm ?? standsMm, foundFrontMm: standsMm, reachMm: highest },
    unit,
  );
}

/** Arms of the true ratio k = (ρ_v/ρ_d)(a_d/a_v) that together span the drawing. */
function armsFor(
  ratio: number,
  rhoD: number,
  rhoV: number,
  span: number,
): { driverMm: number; drivenMm: number } {
  const drivenMm = span / (1 + (ratio * rhoD) / rhoV);
  return { driverMm: span - drivenMm, drivenMm };
}

/** An arm in its key's own frame, closed: up from the rod, then level to its tip. */
function armPath({ hingeMm, hingeHeightMm }: PadGeometry, lengthMm: number, level: number): string {
  return `M ${-hingeMm} ${-hingeHeightMm} L ${-hingeMm + 3} ${level} H ${lengthMm - hingeMm}`;
}

/** The screw, from the driver's arm down to the driven key's, or to where it stops short by the lost motion. */
function screwFor(
  { driver, driven, lostMm }: LinkToDraw,
  { driverMm, drivenMm }: { readonly driverMm: number; readonly drivenMm: number },
  span: number,
  level: number,
): { head: Spot; tip: Spot } {
  const head = tipOf(driver, driverMm, level - SCREW_MM);
  const [from, to] = [0, drivenMm + PLATE_MM].map((mm) => tipOf(driven, mm, level));
  // The driven key is mirrored; its arm is a straight line between these two places.
  const share = (span - head.x - from.x) / (to.x - from.x);
  const reach = driven.geometry.hingeMm + driven.geometry.padRadiusMm;
  const y = from.y + share * (to.y - from.y) - (lostMm * drivenMm) / reach;
  return { head, tip: { x: head.x, y } };
}

/** Where a place on a key's arm stands, x from its rod, turned with its key. */
function tipOf({ geometry, nowMm, standsMm }: LinkedKey, lengthMm: number, level: number): Spot {
  const angle = swing(geometry, nowMm ?? standsMm);
  const y = level + geometry.hingeHeightMm;
  return {
    x: lengthMm * Math.cos(angle) + y * Math.sin(angle),
    y: -geometry.hingeHeightMm + y * Math.cos(angle) - lengthMm * Math.sin(angle),
  };
}

function swing({ hingeMm, hingeHeightMm, padRadiusMm }: PadGeometry, frontMm: number): number {
  const hinge = { distance: hingeMm / 1000, height: hingeHeightMm / 1000 };
  return makePadPose(hinge, padRadiusMm / 1000, { at: 'front', height: frontMm / 1000 }).angle;
}

/** The highest anything stands, the turned arms included. */
function armTop(
  { driver, driven }: LinkToDraw,
  arms: { driverMm: number; drivenMm: number } | null,
  top: number,
  level: number,
): number {
  if (arms === null) return top;
  const highest = (key: LinkedKey, mm: number, y: number): number => tipOf({ ...key, nowMm: null }, mm, y).y;
  return Math.min(
    top,
    highest(driver, arms.driverMm, level - SCREW_MM) - 1.5,
    highest(driven, arms.drivenMm + PLATE_MM, level) - 1.5,
  );
}

/** How a drawing of a link lies in a frame on the screen. */
export interface StackPlace {
  readonly pxPerMm: number;
  /** of the driver's rod on the rim plane, px from the frame's corner */
  readonly x: number;
  readonly y: number;
  /** px, the first of two lines of words under each key */
  readonly wordsY: number;
}

/** px below the picture for two lines of words, and above it for the scale. */
const WORDS_PX = 44;
const HEAD_PX = 26;

/** Fits a drawing into a frame, as large as it goes, with words below. */
export function placeStack(
  { leftMm, topMm, widthMm, heightMm }: StackDrawing,
  frame: { readonly width: number; readonly height: number },
): StackPlace {
  const room = frame.height - WORDS_PX - HEAD_PX;
  const pxPerMm = Math.max(0, Math.min(frame.width / widthMm, room / heightMm));
  const y = HEAD_PX + (room - heightMm * pxPerMm) / 2 - topMm * pxPerMm;
  return {
    pxPerMm,
    x: (frame.width - widthMm * pxPerMm) / 2 - leftMm * pxPerMm,
    y,
    wordsY: y + (topMm + heightMm) * pxPerMm + 18,
  };
}
