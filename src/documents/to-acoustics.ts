import {
  makeBore,
  radiusAt,
  type Bore,
  type BoreStation,
  type Horn,
  type KeySetup,
  type Rest,
  type Setup,
  type ToneHole,
} from '../acoustics/index.ts';
import { isWhole, layered, type WholeSetup } from './complete-setup.ts';
import { hornSchema, type HornDocument } from './horn-document.ts';
import { hornIssues, missingIssues, setupIssues } from './horn-checks.ts';
import { knownRatio, type SetupOfLinks } from './link-ratios.ts';
import { readWith, type DocumentIssue, type ReadOutcome } from './schema-parts.ts';
import { setupSchema, type SetupDocument } from './setup-document.ts';

const MM = 1e-3;

/** A horn and one setup of it, as documents: what every answer is worked out from. */
export interface HornAndSetup {
  readonly horn: HornDocument;
  readonly setup: SetupDocument;
}

/** A horn and a setup in SI, with the documents they came from. */
export interface LoadedHorn {
  readonly documents: { readonly horn: HornDocument; readonly setup: WholeSetup };
  readonly horn: Horn;
  readonly setup: Setup;
}

/** Reads a horn document: every issue at once. */
export function readHornDocument(input: unknown): ReadOutcome<HornDocument> {
  const read = readWith(hornSchema, input);
  return read.ok ? unlessIssues(read.value, contradictions(read.value)) : read;
}

/** Reads a setup document for a horn, whole or sparse: every issue at once. */
export function readSetupDocument(input: unknown, horn: HornDocument): ReadOutcome<SetupDocument> {
  const read = readWith(setupSchema, input);
  return read.ok ? unlessIssues(read.value, setupIssues(horn, read.value, '')) : read;
}

/**
 * Reads a horn and a setup of it: every issue at once, or both in SI.
 *
 * @param input two documents; issues of the setup have paths that begin with `setup.`
 */
export function loadHorn(input: {
  readonly horn: unknown;
  readonly setup: unknown;
}): ReadOutcome<LoadedHorn> {
  const readHorn = readWith(hornSchema, input.horn);
  const readSetup = readWith(setupSchema, input.setup);
  if (!readHorn.ok || !readSetup.ok) {
    const ofSetup = readSetup.ok ? [] : readSetup.issues.map((i) => ({ ...i, path: `setup.${i.path}` }));
    return { ok: false, issues: [...(readHorn.ok ? [] : readHorn.issues), ...ofSetup] };
  }
  const horn = readHorn.value;
  const issues = [
    ...contradictions(horn),
    ...setupIssues(horn, readSetup.value, 'setup.'),
    ...missingIssues(horn, readSetup.value, 'setup.'),
  ];
  if (issues.length > 0) return { ok: false, issues };
  const setup: WholeSetup = { ...readSetup.value, keys: readSetup.value.keys.filter(isWhole) };
  return {
    ok: true,
    value: {
      documents: { horn, setup },
      horn: hornFromDocument(horn, setup),
      setup: setupFromDocument(setup),
    },
  };
}

function contradictions(horn: HornDocument): DocumentIssue[] {
  const issues = hornIssues(horn);
  return issues.length > 0 ? issues : wideHoleIssues(horn);
}

function unlessIssues<T>(value: T, issues: readonly DocumentIssue[]): ReadOutcome<T> {
  return issues.length > 0 ? { ok: false, issues } : { ok: true, value };
}

/** Reads a setup, whole or sparse, over the one a horn was loaded with. */
export function loadSetupOver(loaded: LoadedHorn, input: unknown): ReadOutcome<LoadedHorn> {
  const { horn, setup } = loaded.documents;
  const read = readSetupDocument(input, horn);
  if (!read.ok) return read;
  return loadHorn({ horn, setup: layered(read.value, { ...setup, keys: [...setup.keys] }) });
}

/** Bench units to SI, for a document already checked; a setup's link ratios go before the horn's. */
export function hornFromDocument(document: HornDocument, setup?: SetupOfLinks): Horn {
  const { bore, neckStart } = boreOf(document);
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
      links: document.links.map((link) => {
        const { driver, driven, effect } = link;
        const known = knownRatio(document, setup, link);
        return { driver, driven, effect, ...(known === null ? {} : { ratio: known.ratio }) };
      }),
    },
  };
}

/** The bore from the mouthpiece's tip to the bell, and where the neck's small end lies in it, m. */
function boreOf(document: HornDocument): { readonly bore: Bore; readonly neckStart: number } {
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
  return { bore, neckStart };
}

/** Diameter of the bore where a hole stands on it, mm. @throws RangeError for a pad the horn has not */
export function boreAtHoleMm(document: HornDocument, pad: string): number {
  const hole = document.holes.find(({ id }) => id === pad);
  if (hole === undefined) throw new RangeError(`invalid pad: ${pad}; expected one of the horn's`);
  const { bore, neckStart } = boreOf(document);
  return (2 * radiusAt(bore, neckStart + hole.positionMm * MM)) / MM;
}

/** Bench units to SI, for a document already checked. */
export function setupFromDocument(document: WholeSetup): Setup {
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
function wideHoleIssues(document: HornDocument): DocumentIssue[] {
  const horn = hornFromDocument(document);
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
