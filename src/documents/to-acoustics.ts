import {
  makeBore,
  radiusAt,
  type BoreStation,
  type Horn,
  type KeySetup,
  type Rest,
  type Setup,
  type ToneHole,
} from '../acoustics/index.ts';
import { hornSchema, setupSchema, type HornDocument, type SetupDocument } from './horn-document.ts';
import { hornIssues, setupIssues } from './horn-checks.ts';
import { readWith, type DocumentIssue, type ReadOutcome } from './schema-parts.ts';

const MM = 1e-3;

/** A horn and its own setup, in SI, with the document they came from. */
export interface LoadedHorn {
  readonly document: HornDocument;
  readonly horn: Horn;
  readonly setup: Setup;
}

/** Reads a horn document: every issue at once, or the horn in SI. */
export function loadHorn(input: unknown): ReadOutcome<LoadedHorn> {
  const read = readWith(hornSchema, input);
  if (!read.ok) return read;
  const document = read.value;
  const issues = [...hornIssues(document), ...setupIssues(document, document.setup, 'setup.')];
  if (issues.length > 0) return { ok: false, issues };
  const horn = hornFromDocument(document);
  const tooWide = wideHoleIssues(document, horn);
  if (tooWide.length > 0) return { ok: false, issues: tooWide };
  return { ok: true, value: { document, horn, setup: setupFromDocument(document.setup) } };
}

/** Reads a setup document for a horn. */
export function loadSetup(
  input: unknown,
  horn: HornDocument,
): ReadOutcome<{ document: SetupDocument; setup: Setup }> {
  const read = readWith(setupSchema, input);
  if (!read.ok) return read;
  const issues = setupIssues(horn, read.value, '');
  if (issues.length > 0) return { ok: false, issues };
  return { ok: true, value: { document: read.value, setup: setupFromDocument(read.value) } };
}

/** Bench units to SI, for a document already checked. */
export function hornFromDocument(document: HornDocument): Horn {
  const stations: BoreStation[] = [];
  let x = 0;
  for (const piece of document.mouthpiece.pieces) {
    stations.push({ x, radius: (piece.startDiameterMm / 2) * MM });
    x += piece.lengthMm * MM;
    stations.push({ x, radius: (piece.endDiameterMm / 2) * MM });
  }
  const neckStart = x;
  const points = document.bore.flatMap((section) => section.points);
  for (const point of points) {
    stations.push({ x: neckStart + point.positionMm * MM, radius: (point.diameterMm / 2) * MM });
  }
  const bore = makeBore(stations, (points[0].diameterMm / 2) * MM, document.bellCorrectionMm * MM);
  const holes: ToneHole[] = document.holes.map((hole) => {
    const at = neckStart + hole.positionMm * MM;
    return {
      id: hole.id,
      number: hole.number,
      name: hole.name,
      x: at,
      boreRadius: radiusAt(bore, at),
      holeRadius: (hole.diameterMm / 2) * MM,
      chimney: hole.chimneyMm * MM,
      rimThickness: hole.rimMm * MM,
      hinge:
        hole.key === null ? null : { distance: hole.key.hingeMm * MM, height: hole.key.hingeHeightMm * MM },
    };
  });
  return {
    name: document.name,
    transposition: document.transpositionSemitones,
    bore,
    neckStart,
    extraMouthpieceVolume: 0,
    reedVolume: document.mouthpiece.reedVolumeMm3 * MM ** 3,
    holes: holes.sort((a, b) => a.x - b.x),
    keywork: {
      rests: new Map<string, Rest>(document.holes.map((hole) => [hole.id, hole.rests])),
      touches: document.touches.map((touch) => ({
        id: touch.id,
        closes: touch.closes,
        opens: touch.opens.map(({ pad, whileDown, whileUp, frontMm }) => ({
          pad,
          ...(whileDown === undefined ? {} : { whileDown }),
          ...(whileUp === undefined ? {} : { whileUp }),
          ...(frontMm === undefined ? {} : { front: frontMm * MM }),
        })),
      })),
      links: document.links.map(({ driver, driven, effect, travelRatio }) => ({
        driver,
        driven,
        effect,
        ...(travelRatio === undefined ? {} : { ratio: travelRatio }),
      })),
    },
  };
}

/** Bench units to SI, for a document already checked. */
export function setupFromDocument(document: SetupDocument): Setup {
  const keys = new Map<string, KeySetup>();
  for (const key of document.keys) {
    keys.set(key.pad, {
      opening: { at: key.measuredAt, height: key.openingMm * MM },
      padRadius: (key.padDiameterMm / 2) * MM,
      padThickness: key.padThicknessMm * MM,
    });
  }
  return { keys };
}

/** Holes wider than the bore they stand on. */
function wideHoleIssues(document: HornDocument, horn: Horn): DocumentIssue[] {
  return document.holes.flatMap((hole, i) => {
    const { boreRadius } = horn.holes.find((h) => h.id === hole.id)!;
    const boreMm = (2 * boreRadius) / MM;
    if (hole.diameterMm <= boreMm) return [];
    return [
      {
        path: `holes[${i}].diameterMm`,
        code: 'range',
        message: `invalid hole diameter of pad ${hole.number}: ${hole.diameterMm} mm; expected at most the bore’s there, ${boreMm.toFixed(1)} mm`,
      },
    ];
  });
}
