import { makePadPose, poseAtAngle, type Hinge, type MeasuringPoint } from '../../acoustics/index.ts';
import { formatLength, type LengthUnit } from '../../documents/length-format.ts';
import type { PadGeometry } from '../state/study-report.ts';

/**
 * The side view of a key, to scale, in millimetres: x away from the rod along the rim plane with the hole's
 * centre at 0, y down from the rim plane as screens count.
 *
 * Rim, chimney, bore, rod place, pad and every gap are to scale; cup, arm, post and metal thickness are only
 * drawn, since nobody measured them.
 */
export interface PadDrawing {
  readonly leftMm: number;
  readonly topMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly bodyPath: string;
  readonly boreAirPath: string;
  /** the bore's wall as it would run on across the hole */
  readonly crownPath: string;
  readonly rod: Spot;
  /** pad, cup and arm, closed; turned by the swing */
  readonly padPath: string;
  readonly cupPath: string;
  readonly armPath: string;
  readonly turn: string;
  readonly ghostTurn: string;
  /** the far edge of the face, where a finger takes hold */
  readonly grip: Spot;
  readonly gaps: readonly GapMark[];
  readonly openMm: Readonly<Record<MeasuringPoint, number>>;
  readonly scaleBarMm: number;
  /** the hole, inside its rim */
  readonly holeAcrossMm: number;
  readonly words: string;
}

/** A place in the drawing, mm. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** One gap, drawn where it is read and written below. */
export interface GapMark {
  readonly at: MeasuringPoint;
  readonly x: number;
  readonly yFace: number;
  readonly value: string;
}

/** How a drawing lies in a frame on the screen. */
export interface DrawingPlace {
  readonly pxPerMm: number;
  /** of the hole's centre on the rim plane, px from the frame's corner */
  readonly x: number;
  readonly y: number;
  /** where each gap's words stand, px, in the gaps' order */
  readonly labels: readonly { readonly x: number; readonly y: number; readonly fromX: number }[];
  /** whether the words stand beside the picture, at the rim, rather than below it */
  readonly beside: boolean;
}

/** Drawn, not measured. */
const METAL_MM = 0.7;
const CUP_RISE_MM = 1.8;

const POINTS: readonly MeasuringPoint[] = ['back', 'centre', 'front'];

export function makePadDrawing(
  geometry: PadGeometry,
  openings: { readonly frontMm: number; readonly foundFrontMm: number; readonly reachMm: number },
  unit: LengthUnit,
): PadDrawing {
  const { hingeMm, hingeHeightMm, padRadiusMm, padThicknessMm, holeRadiusMm, rimMm } = geometry;
  const hinge = hingeOf(geometry);
  const pose = poseOf(geometry, openings.frontMm);
  const highest = poseOf(geometry, openings.reachMm);
  const place = (angle: number, s: number, above = 0): { x: number; y: number } => ({
    x: s * Math.cos(angle) + (hingeHeightMm - above) * Math.sin(angle) - hingeMm,
    y: -(hingeHeightMm + s * Math.sin(angle) - (hingeHeightMm - above) * Math.cos(angle)),
  });

  const cupTop = padThicknessMm + CUP_RISE_MM;
  const bore = boreOutline(geometry);
  const left = -hingeMm - 2;
  const right = Math.max(holeRadiusMm + rimMm, padRadiusMm) + 2.5;
  const top = Math.min(place(highest.angle, hingeMm + padRadiusMm, cupTop).y, -hingeHeightMm - 2) - 0.5;
  const width = right - left;
  const degrees = (angle: number): string =>
    `rotate(${(-angle * 180) / Math.PI} ${-hingeMm} ${-hingeHeightMm})`;
  const cupRadius = padRadiusMm + METAL_MM;
  const shoulder = -padThicknessMm - 0.4 * METAL_MM;
  const skirt = -0.45 * padThicknessMm;
  return {
    leftMm: left,
    topMm: top,
    widthMm: width,
    heightMm: bore.depth - top,
    bodyPath: bore.wall,
    boreAirPath: bore.air,
    crownPath: bore.crown,
    rod: { x: -hingeMm, y: -hingeHeightMm },
    padPath: padPath(padRadiusMm, padThicknessMm),
    cupPath:
      `M ${-cupRadius} ${skirt} V ${shoulder} Q ${-0.86 * cupRadius} ${-cupTop} 0 ${-cupTop}` +
      ` Q ${0.86 * cupRadius} ${-cupTop} ${cupRadius} ${shoulder} V ${skirt} Z`,
    armPath:
      `M ${-hingeMm} ${-hingeHeightMm} Q ${-0.8 * hingeMm} ${-cupTop - 1.2} ${-0.3 * padRadiusMm} ${-cupTop - 0.2}` +
      ` L ${0.25 * padRadiusMm} ${-cupTop}`,
    turn: degrees(pose.angle),
    ghostTurn: degrees(poseOf(geometry, openings.foundFrontMm).angle),
    grip: place(pose.angle, hingeMm + padRadiusMm),
    gaps: POINTS.map((at): GapMark => {
      const face = place(pose.angle, hingeMm + sign(at) * padRadiusMm);
      return { at, x: face.x, yFace: face.y, value: formatLength(pose[at] * 1000, unit) };
    }),
    openMm: { front: pose.front * 1000, centre: pose.centre * 1000, back: pose.back * 1000 },
    holeAcrossMm: 2 * holeRadiusMm,
    scaleBarMm: width > 60 ? 20 : width > 32 ? 10 : 5,
    words:
      `Side view to scale. The pad is open ${POINTS.map(
        (at) => `${formatLength(pose[at] * 1000, unit)} at the ${at}`,
      )
        .reverse()
        .join(', ')}; swung ${((pose.angle * 180) / Math.PI).toFixed(0)} degrees about the rod, ` +
      `${formatLength(hinge.distance * 1000, unit)} from the pad’s centre.`,
  };
}

/** px below the picture for two lines of words, and the least between two words' middles. */
const WORDS_PX = 40;
const WORD_GAP_PX = 78;

/**
 * Fits a drawing into a frame, as large as it goes: with the words below it in a tall frame, in a wide one with
 * the back's words on its left, the front's on its right and the centre's in the bore.
 */
export function placeDrawing(
  drawing: PadDrawing,
  frame: { readonly width: number; readonly height: number },
): DrawingPlace {
  const { leftMm, topMm, widthMm, heightMm } = drawing;
  const below = Math.min(frame.width / widthMm, (frame.height - WORDS_PX) / heightMm);
  const beside = Math.min((frame.width - 2 * WORD_GAP_PX) / widthMm, (frame.height - 6) / heightMm);
  const roomInHole = drawing.holeAcrossMm * beside >= WORD_GAP_PX + 6;
  const pxPerMm = Math.max(below, roomInHole ? beside : 0, 0);
  const x = (frame.width - widthMm * pxPerMm) / 2 - leftMm * pxPerMm;
  const y = -topMm * pxPerMm;
  const fromXs = drawing.gaps.map((gap) => x + gap.x * pxPerMm);
  if (roomInHole && beside > below) {
    const left = x + leftMm * pxPerMm;
    const right = left + widthMm * pxPerMm;
    const labelXs = [left - WORD_GAP_PX / 2 + 6, x, right + WORD_GAP_PX / 2 - 2];
    return {
      pxPerMm,
      x,
      y,
      labels: labelXs.map((labelX, i) => ({ x: labelX, y: y + 24, fromX: fromXs[i] })),
      beside: true,
    };
  }
  const labelXs = spacedLabels(fromXs, WORD_GAP_PX, WORD_GAP_PX / 2, frame.width - WORD_GAP_PX / 2);
  const labelY = y + (topMm + heightMm) * pxPerMm + 16;
  return {
    pxPerMm,
    x,
    y,
    labels: labelXs.map((labelX, i) => ({ x: labelX, y: labelY, fromX: fromXs[i] })),
    beside: false,
  };
}

/** The front opening, mm, that puts the far edge of the face in line with a point, seen from the rod. */
export function frontMmAt(geometry: PadGeometry, xMm: number, yMm: number): number {
  const { hingeMm, hingeHeightMm, padRadiusMm } = geometry;
  const closed = Math.atan2(-hingeHeightMm, hingeMm + padRadiusMm);
  const pointed = Math.atan2(-yMm - hingeHeightMm, xMm + hingeMm);
  return poseAtAngle(hingeOf(geometry), padRadiusMm / 1000, pointed - closed).front * 1000;
}

function hingeOf({ hingeMm, hingeHeightMm }: PadGeometry): Hinge {
  return { distance: hingeMm / 1000, height: hingeHeightMm / 1000 };
}

function poseOf(geometry: PadGeometry, frontMm: number): ReturnType<typeof makePadPose> {
  return makePadPose(hingeOf(geometry), geometry.padRadiusMm / 1000, { at: 'front', height: frontMm / 1000 });
}

function sign(at: MeasuringPoint): number {
  return { front: 1, centre: 0, back: -1 }[at];
}

function padPath(radius: number, thickness: number): string {
  const soft = Math.min(0.25 * thickness, 0.2 * radius);
  return (
    `M ${-radius} ${-soft} Q ${-radius} 0 ${-radius + soft} 0 H ${radius - soft} Q ${radius} 0 ${radius} ${-soft}` +
    ` V ${-thickness} H ${-radius} Z`
  );
}

/** The body cut across under the hole: the bore a circle, the chimney standing on it. */
function boreOutline(geometry: PadGeometry): {
  wall: string;
  air: string;
  crown: string;
  depth: number;
} {
  const { boreRadiusMm: R, chimneyMm, holeRadiusMm: b, rimMm } = geometry;
  const outer = R + METAL_MM;
  const w = b + rimMm;
  const sag = (radius: number, x: number): number => radius - Math.sqrt(Math.max(radius * radius - x * x, 0));
  const inner = (x: number): number => chimneyMm + sag(R, x);
  const shell = (x: number): number => chimneyMm - METAL_MM + sag(outer, x);
  // As much of the body as lies under the rod and the pad, but never round the far side.
  const reach = Math.min(w * 1.3, 0.94 * R);
  const depth = inner(reach) + METAL_MM;
  const side = (k: 1 | -1): string => {
    const turn = k === 1 ? 1 : 0;
    return (
      `M ${k * b} 0 H ${k * w} V ${shell(w)} A ${outer} ${outer} 0 0 ${turn} ${k * reach} ${shell(reach)}` +
      ` L ${k * reach} ${inner(reach)} A ${R} ${R} 0 0 ${1 - turn} ${k * b} ${inner(b)} Z`
    );
  };
  return {
    wall: `${side(1)} ${side(-1)}`,
    air:
      `M ${-b} 0 H ${b} V ${inner(b)} A ${R} ${R} 0 0 1 ${reach} ${inner(reach)}` +
      ` H ${-reach} A ${R} ${R} 0 0 1 ${-b} ${inner(b)} Z`,
    crown: `M ${-b} ${inner(b)} A ${R} ${R} 0 0 1 ${b} ${inner(b)}`,
    depth,
  };
}

/** Places in a row, from left to right, moved apart as far as words need and kept inside the picture. */
function spacedLabels(xs: readonly number[], gap: number, low: number, high: number): number[] {
  const out = xs.map((x) => Math.min(Math.max(x, low), high));
  for (let i = 1; i < out.length; i++) out[i] = Math.max(out[i], out[i - 1] + gap);
  for (let i = out.length - 1, limit = high; i >= 0; i--, limit = out[i + 1] - gap) {
    out[i] = Math.min(out[i], limit);
  }
  return out;
}
