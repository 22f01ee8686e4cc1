import type { HoleDocument, HornDocument } from '../../documents/horn-document.ts';
import { formatLength, type LengthUnit } from '../../documents/length-format.ts';
import type { SetupDocument } from '../../documents/setup-document.ts';

/**
 * The horn's wall slit along its back and laid flat, seen from outside, to scale, in millimetres: x along the
 * bore from the neck's small end, y round the wall from the line of the stacks, plus to the player's right.
 *
 *          neck                                    bell
 *        ___________________________________________ |   +π a(x)
 *       |______________ line of the stacks _________ |    0
 *                                                    |   −π a(x)
 *
 * Holes and pads keep their true sizes and their true distances along and round the wall. The flare below the
 * last pad is left away.
 */
export interface HornPicture {
  /** from the neck's small end to where the drawing stops */
  readonly lengthMm: number;
  /** room from the line of the stacks to either edge */
  readonly halfMm: number;
  /** half the wall's width along the bore, from neck to bell */
  readonly edge: readonly PicturePoint[];
  /** whether the bell's flare is left away at the end */
  readonly cut: boolean;
  /** where one section of the bore meets the next */
  readonly joints: readonly PictureJoint[];
  /** from neck to bell */
  readonly pads: readonly PicturePad[];
  readonly vents: readonly PictureHole[];
  /** whether any hole's place round the wall is known */
  readonly knowsAround: boolean;
  readonly scaleBarMm: number;
  readonly scaleBarWords: string;
  readonly words: string;
}

export interface PicturePoint {
  readonly xMm: number;
  readonly halfMm: number;
}

export interface PictureJoint extends PicturePoint {
  /** of the section that ends there */
  readonly section: string;
}

export interface PictureHole {
  readonly id: string;
  readonly name: string;
  readonly xMm: number;
  readonly yMm: number;
  readonly holeMm: number;
}

export interface PicturePad extends PictureHole {
  readonly number: number;
  readonly padMm: number;
  readonly rests: 'open' | 'closed';
  /** 0 to 1, or null where it is not known */
  readonly ventShare: number | null;
  readonly selected: boolean;
  /** what a screen reader says */
  readonly said: string;
}

/** What a picture shows besides the documents. */
export interface HornPictureOptions {
  /** the chosen key’s pad id */
  readonly selected?: string;
  /** 0 to 1 by pad id, or null where it is not known */
  readonly ventShareOf?: (padId: string) => number | null;
  readonly unit?: LengthUnit;
}

/** Wall beyond the outermost pads that is drawn still, mm. */
const MARGIN_MM = 6;

/** How much wider than at the last hole the wall is drawn: beyond this the bell's flare says nothing. */
const FLARE = 1.12;

/** A pad whose size is not known is drawn so much wider than its hole, mm. **Source:** from memory. */
const OVERLAP_MM = 4;

/**
 * Lays a horn's wall flat.
 *
 * @param setup whole or sparse; where it leaves a pad's diameter out, the pad is drawn a little over its hole
 */
export function makeHornPicture(
  horn: HornDocument,
  setup: SetupDocument,
  { selected, ventShareOf = () => null, unit = 'mm' }: HornPictureOptions = {},
): HornPicture {
  const bore = horn.bore.flatMap((section) => section.points);
  const place = (hole: HoleDocument): PictureHole => ({
    id: hole.id,
    name: hole.name,
    xMm: hole.positionMm,
    yMm: (boreMmAt(bore, hole.positionMm) / 2) * (((hole.aroundDeg ?? 0) * Math.PI) / 180),
    holeMm: hole.diameterMm,
  });
  const pads = horn.holes.flatMap((hole): PicturePad[] => {
    if (hole.key === null) return [];
    const padMm = setup.keys.find((k) => k.pad === hole.id)?.padDiameterMm ?? hole.diameterMm + OVERLAP_MM;
    const ventShare = ventShareOf(hole.id);
    return [
      {
        ...place(hole),
        number: hole.number,
        padMm,
        rests: hole.rests,
        ventShare,
        selected: hole.id === selected,
        said: saidOf(hole, padMm, ventShare, unit),
      },
    ];
  });
  pads.sort((a, b) => a.xMm - b.xMm);
  const vents = horn.holes.filter((hole) => hole.key === null).map(place);
  const knowsAround = horn.holes.some((hole) => hole.aroundDeg !== undefined);
  const scaleBarMm = unit === 'mm' ? 50 : 50.8;
  return {
    ...wallOf(bore, pads, vents),
    joints: horn.bore.slice(0, -1).map(({ section, points }) => {
      const xMm = points[points.length - 1].positionMm;
      return { section, xMm, halfMm: (boreMmAt(bore, xMm) / 2) * Math.PI };
    }),
    pads,
    vents,
    knowsAround,
    scaleBarMm,
    scaleBarWords: unit === 'mm' ? '50 mm' : '2 in',
    words: `The wall of ${horn.name} laid flat from neck to bell, with ${pads.length} pads to scale`,
  };
}

function saidOf(hole: HoleDocument, padMm: number, ventShare: number | null, unit: LengthUnit): string {
  const share = ventShare === null ? '' : `, vent share ${Math.round(100 * ventShare)} %`;
  return (
    `${hole.number}, ${hole.name}, rests ${hole.rests}, hole ${formatLength(hole.diameterMm, unit)}, ` +
    `pad ${formatLength(padMm, unit)}${share}`
  );
}

type BorePoint = HornDocument['bore'][number]['points'][number];

/** Bore diameter at a place, mm; beyond the ends, that of the end. */
function boreMmAt(bore: readonly BorePoint[], xMm: number): number {
  const next = bore.findIndex((p) => p.positionMm >= xMm);
  if (next < 0) return bore[bore.length - 1].diameterMm;
  if (next === 0) return bore[0].diameterMm;
  const [a, b] = [bore[next - 1], bore[next]];
  const step = b.positionMm - a.positionMm;
  return step === 0
    ? b.diameterMm
    : a.diameterMm + ((xMm - a.positionMm) / step) * (b.diameterMm - a.diameterMm);
}

/** The wall as far as it is drawn: past the last pad, until the bell's flare grows too wide. */
function wallOf(
  bore: readonly BorePoint[],
  pads: readonly PicturePad[],
  vents: readonly PictureHole[],
): Pick<HornPicture, 'lengthMm' | 'halfMm' | 'edge' | 'cut'> {
  const all = [
    ...pads.map((p) => ({ ...p, acrossMm: p.padMm })),
    ...vents.map((v) => ({ ...v, acrossMm: v.holeMm })),
  ];
  const endMm = bore[bore.length - 1].positionMm;
  const lastMm = Math.max(...all.map((p) => p.xMm));
  const leastMm = Math.min(endMm, Math.max(...all.map((p) => p.xMm + p.acrossMm / 2)) + MARGIN_MM);
  const widest = FLARE * boreMmAt(bore, lastMm);
  const stop = bore.find((p) => p.positionMm > leastMm && p.diameterMm > widest);
  const lengthMm = stop === undefined ? endMm : Math.max(leastMm, crossingMm(bore, widest, stop));
  const edge = [
    ...bore.filter((p) => p.positionMm < lengthMm),
    { positionMm: lengthMm, diameterMm: boreMmAt(bore, lengthMm) },
  ].map((p) => ({ xMm: p.positionMm, halfMm: (p.diameterMm / 2) * Math.PI }));
  const halfMm = Math.max(
    ...edge.map((p) => p.halfMm),
    ...all.map((p) => Math.abs(p.yMm) + p.acrossMm / 2 + MARGIN_MM),
  );
  return { lengthMm, halfMm, edge, cut: lengthMm < endMm };
}

/** Where the bore grows to a diameter on its way to a point that is wider, mm. */
function crossingMm(bore: readonly BorePoint[], diameterMm: number, stop: BorePoint): number {
  const before = bore[bore.indexOf(stop) - 1];
  if (before === undefined || before.diameterMm >= diameterMm) return before?.positionMm ?? 0;
  const share = (diameterMm - before.diameterMm) / (stop.diameterMm - before.diameterMm);
  return before.positionMm + share * (stop.positionMm - before.positionMm);
}
