import { keyedHoles } from '../../../../documents/horn-document.ts';
import type { PadFitReport } from '../../../../documents/pad-fit-report.ts';
import type { HornAndSetup } from '../../../../documents/to-acoustics.ts';
import { fineLength } from './fine-lengths.ts';
import type { LengthUnit } from '../../../../documents/length-format.ts';

/**
 * A cup as its pad first touches, seen from the side, to scale in millimetres: x away from the rod, y down from
 * the rim plane as screens count. Rod, rim, hole, pad, bed and lean are to scale; cup, arm and post are drawn.
 */
export interface CupDrawing {
  readonly leftMm: number;
  readonly topMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly rod: { readonly x: number; readonly y: number };
  readonly rimPath: string;
  readonly cupPath: string;
  readonly armPath: string;
  readonly bed: Box;
  readonly pad: Box;
  /** how the key leans when the pad first touches, as the picture turns it, degrees; 0 where it seats flat */
  readonly turnDeg: number;
  /** where it gapes, at the rim: x, and from the rim plane up to y; null where it seats flat */
  readonly gape: { readonly x: number; readonly y: number; readonly words: string } | null;
  readonly words: string;
}

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Drawn, not measured. */
const METAL_MM = 0.8;
const CHIMNEY_SHOWN_MM = 4;

/** The cup of one key with the pad it takes, or the nearest there is. */
export function makeCupDrawing(documents: HornAndSetup, fit: PadFitReport, unit: LengthUnit): CupDrawing {
  const hole = keyedHoles(documents.horn).find((h) => h.id === fit.pad)!;
  const { hingeMm, hingeHeightMm } = hole.key;
  const radius = hole.diameterMm / 2;
  const padRadius = fit.choice.diameterMm / 2;
  const seatRadius = Math.min(padRadius, radius + hole.rimMm);
  const { thicknessMm, bedMm } = fit.choice;
  // Parallel to the rim the face stands so far below it: by the seat where it fits, by what is left over where not.
  const sunkMm = thicknessMm + bedMm - fit.floorMm;
  const lean = Math.atan2(fit.gapMm, 2 * seatRadius) * (fit.touches === 'front' ? -1 : 1);
  const faceY = fit.fits ? sunkMm : fit.leftOverMm;
  const left = hingeMm - padRadius;
  const inside = Math.max(padRadius, (hole.key.cupDiameterMm ?? 0) / 2);
  const box = (bottom: number, height: number): Box => ({
    x: left,
    y: bottom - height,
    width: 2 * padRadius,
    height,
  });
  const floorY = faceY - thicknessMm - bedMm;
  const wall = (thicknessMm + bedMm) * 0.6;
  const [a, b] = [hingeMm - inside, hingeMm + inside];
  const right = b + METAL_MM + 3;
  const top = floorY - METAL_MM - 4 - (right - hingeMm) * Math.max(0, Math.sin(lean));
  const rod = { x: 0, y: -hingeHeightMm };
  const leftMm = Math.min(-4, a - METAL_MM - 2);
  const bottom = Math.max(CHIMNEY_SHOWN_MM + 1, rod.y + 4);
  const gapeX = fit.touches === 'front' ? hingeMm - seatRadius : hingeMm + seatRadius;
  return {
    leftMm,
    topMm: Math.min(top, rod.y - 4),
    widthMm: right - leftMm + 8,
    heightMm: bottom - Math.min(top, rod.y - 4),
    rod,
    rimPath: [-1, 1]
      .map((side) => {
        const inner = hingeMm + side * radius;
        const outer = inner + side * hole.rimMm;
        return `M${n(inner)} ${CHIMNEY_SHOWN_MM}V0H${n(outer)}V${CHIMNEY_SHOWN_MM}Z`;
      })
      .join(''),
    cupPath:
      `M${n(a)} ${n(floorY + wall)}V${n(floorY)}H${n(b)}V${n(floorY + wall)}` +
      `H${n(b + METAL_MM)}V${n(floorY - METAL_MM)}H${n(a - METAL_MM)}V${n(floorY + wall)}Z`,
    armPath: `M${n(rod.x)} ${n(rod.y)}L${n(Math.max(a, 2))} ${n(floorY - METAL_MM)}L${n(hingeMm)} ${n(floorY - METAL_MM)}`,
    bed: box(faceY - thicknessMm, bedMm),
    pad: box(faceY, thicknessMm),
    turnDeg: (-lean * 180) / Math.PI,
    gape:
      fit.gapMm < 0.005
        ? null
        : {
            x: gapeX,
            y: -fit.gapMm,
            words: fineLength(fit.gapMm, unit),
          },
    words: wordsFor(hole.name, fit, unit),
  };
}

function wordsFor(name: string, fit: PadFitReport, unit: LengthUnit): string {
  const { thicknessMm, bedMm } = fit.choice;
  const filled = `pad ${fineLength(thicknessMm, unit)} on a bed of ${fineLength(bedMm, unit)} under a floor ${fineLength(fit.floorMm, unit)} above the rim`;
  if (fit.fits) return `${name}: ${filled}. It seats flat, all round at once.`;
  const side = fit.leftOverMm > 0 ? 'proud' : 'short';
  const far = fit.touches === 'back' ? 'front' : 'back';
  return `${name}: ${filled}. ${fineLength(Math.abs(fit.leftOverMm), unit)} ${side}: the ${fit.touches} touches first and the ${far} gapes ${fineLength(fit.gapMm, unit)}.`;
}

function n(mm: number): string {
  return String(Math.round(mm * 1000) / 1000);
}
