import type { CurveMark, SheetCurve } from '../../documents/player-sheet-curve.ts';

/** The drawing of a curve, in points of paper, from the top left. */
export interface CurveDrawing {
  readonly widthPt: number;
  readonly heightPt: number;
  /** inside the axes */
  readonly frame: {
    readonly left: number;
    readonly top: number;
    readonly right: number;
    readonly bottom: number;
  };
  readonly path: string;
  /** where the ± of the point of diminishing return reaches; null where there is none */
  readonly band: { readonly x: number; readonly width: number } | null;
  readonly xTicks: readonly { readonly x: number; readonly text: string }[];
  readonly yTicks: readonly { readonly y: number; readonly text: string }[];
  readonly marks: readonly { readonly mark: CurveMark; readonly x: number; readonly y: number }[];
}

const WIDTH_PT = 292;
const HEIGHT_PT = 104;
const FRAME = { left: 34, top: 8, right: WIDTH_PT - 8, bottom: HEIGHT_PT - 32 } as const;

/** Steps an axis may have, mm. */
const STEPS_MM = [0.5, 1, 2, 5, 10];
const MOST_TICKS = 9;

/** Lays the curve out on paper: millimetres across, share of full venting up. */
export function drawCurve(curve: SheetCurve): CurveDrawing {
  const fronts = [...curve.points, ...curve.marks].map(({ frontMm }) => frontMm);
  const endMm = Math.max(...fronts);
  const stepMm = STEPS_MM.find((step) => endMm / step <= MOST_TICKS) ?? STEPS_MM[STEPS_MM.length - 1];
  const x = (mm: number): number => FRAME.left + (mm / endMm) * (FRAME.right - FRAME.left);
  const y = (percent: number): number => FRAME.bottom - (percent / 100) * (FRAME.bottom - FRAME.top);
  const enough = curve.marks.find(({ mark }) => mark === 'enough');
  const half = curve.enoughPlusMinusMm;
  return {
    widthPt: WIDTH_PT,
    heightPt: HEIGHT_PT,
    frame: FRAME,
    path: curve.points
      .map(({ frontMm, ventPercent }, i) => `${i === 0 ? 'M' : 'L'}${pt(x(frontMm))} ${pt(y(ventPercent))}`)
      .join(''),
    band:
      enough === undefined || half === null
        ? null
        : bandOf(x(Math.max(0, enough.frontMm - half)), x(Math.min(endMm, enough.frontMm + half))),
    xTicks: Array.from({ length: Math.floor(endMm / stepMm) + 1 }, (_, i) => ({
      x: x(i * stepMm),
      text: String(i * stepMm),
    })),
    yTicks: [0, 50, 100].map((percent) => ({ y: y(percent), text: String(percent) })),
    marks: curve.marks.map(({ mark, frontMm, ventPercent }) => ({ mark, x: x(frontMm), y: y(ventPercent) })),
  };
}

function bandOf(from: number, to: number): { readonly x: number; readonly width: number } {
  return { x: from, width: to - from };
}

const pt = (value: number): string => value.toFixed(2);
