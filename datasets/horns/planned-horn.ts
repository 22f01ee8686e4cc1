import type { WholeSetup } from '../../src/documents/complete-setup.ts';
import { HORN_VERSION, type HornDocument } from '../../src/documents/horn-document.ts';
import { SETUP_VERSION } from '../../src/documents/setup-document.ts';
import { LINKS, PAD_NAMES, TOUCHES } from './keywork.ts';
import type { HornPlan, PadPlan } from './plan.ts';

/** What is solved: the hole places, the axis length, and the shape of neck and mouthpiece. Millimetres. */
export interface Solved {
  readonly length: number;
  readonly places: Readonly<Record<number, number>>;
  /** changes of: the neck's diameter a quarter, half and three quarters down; diameters, then lengths of the mouthpiece's chamber and bore; places of body and neck vent */
  readonly shape: readonly number[];
}

/** A planned horn and its setup. */
export interface PlannedHorn {
  readonly horn: HornDocument;
  readonly setup: WholeSetup;
}

const RIM = 1;
const VENT_CHIMNEY = 6;
/** How much a driven pad's arm leaves between the link's limit and the pad's own stop: a little lost motion. */
const SLACK = 1.03;

const hundredths = (mm: number): number => Math.round(mm * 100) / 100;

/** The documents a plan and its solved numbers make. */
export function makeDocument(plan: HornPlan, solved: Solved): PlannedHorn {
  const horn: HornDocument = {
    kind: 'ventwright horn',
    version: HORN_VERSION,
    name: plan.name,
    maker: 'Larkfield (invented)',
    remark:
      'An invented horn. Hole places, neck taper and mouthpiece are solved so that it plays in tune with this setup.',
    origin: 'measured',
    instrument: plan.instrument,
    transpositionSemitones: plan.transposition,
    mouthpiece: { pieces: mouthpieceOf(plan, solved), reedVolumeMm3: plan.reedVolumeMm3 },
    bore: boreOf(plan, solved),
    bellCorrectionMm: 0,
    holes: [...padHolesOf(plan, solved), ...ventsOf(plan, solved)].sort((a, b) => a.number - b.number),
    touches: TOUCHES,
    links: linksOf(plan),
  };
  return { horn, setup: setupOf(plan) };
}

function mouthpieceOf(plan: HornPlan, { shape }: Solved): HornDocument['mouthpiece']['pieces'] {
  return plan.mouthpiece.map(([length, start, end], i) => ({
    lengthMm: hundredths(length + (i === 0 ? 0 : shape[4 + i])),
    startDiameterMm: hundredths(start + (i === 0 ? 0 : shape[2 + i])),
    endDiameterMm: hundredths(end + (i === 0 ? 0 : shape[2 + i])),
  }));
}

function boreOf(plan: HornPlan, { length, shape }: Solved): HornDocument['bore'] {
  const slope = 2 * Math.tan((plan.halfAngle * Math.PI) / 180);
  const cone = (x: number): number => plan.neckEntrance + slope * x;
  const neck = [0, 0.25, 0.5, 0.75, 1].map((u, i) => ({
    positionMm: hundredths(u * plan.neckLength),
    diameterMm: hundredths(cone(u * plan.neckLength) + (i > 0 && i < 4 ? shape[i - 1] : 0)),
  }));
  const flareStart = length - plan.flareLength;
  const point = (x: number): { positionMm: number; diameterMm: number } => {
    const u = Math.max(0, (x - flareStart) / plan.flareLength);
    // The flare rises as the cube: gentle where it leaves the cone, wide at the rim.
    const widening = (plan.bellRim - cone(length)) * u ** 3;
    return { positionMm: hundredths(x), diameterMm: hundredths(cone(x) + widening) };
  };
  const flare = [0, 0.2, 0.35, 0.5, 0.6, 0.7, 0.8, 0.88, 0.94, 1].map((u) =>
    point(flareStart + u * plan.flareLength),
  );
  const bowStart = plan.straight ? flareStart : 0.66 * length;
  const bow = { section: 'bow' as const, points: [point(bowStart), point(flareStart)] };
  return [
    { section: 'neck', points: neck },
    { section: 'body', points: [point(plan.neckLength), point(bowStart)] },
    ...(plan.straight ? [] : [bow]),
    { section: 'bell', points: flare },
  ];
}

function padHolesOf(plan: HornPlan, { places }: Solved): HornDocument['holes'] {
  return plan.pads.map((p) => {
    const [id, name, rests] = PAD_NAMES[p.number];
    return {
      number: p.number,
      id,
      name,
      rests,
      positionMm: hundredths(places[p.number]),
      diameterMm: p.hole,
      chimneyMm: p.chimney,
      rimMm: RIM,
      aroundDeg: plan.around[p.number],
      key: keyOf(plan, p),
    };
  });
}

/** Adhesive under a pad that fits, and how deep its rim sits in it, mm. */
const BED = 0.5;
const SEAT = 0.2;
/** A hand-made horn's cups are not alike: how much deeper each is than its pad asks, mm, by pad number. */
const UNEVEN = [0, 0.2, -0.1, 0.3, 0, 0.1, -0.2, 0.6, 0.1, -0.3];
/** The foot cork's travel is about a quarter of the front's. */
const FOOT_LEVERAGE = 4;
/** Pads with a pearl of their own, and how far it lies beyond the pad's centre, mm. */
const PEARLED = [6, 7, 9, 12, 14, 17];
const PEARL_BEYOND = 8;

function keyOf(plan: HornPlan, p: PadPlan): NonNullable<HornDocument['holes'][number]['key']> {
  return {
    hingeMm: p.hinge,
    hingeHeightMm: p.hingeHeight,
    cupFloorMm: hundredths(plan.padThickness + BED - SEAT + UNEVEN[p.number % UNEVEN.length]),
    cupDiameterMm: p.pad,
    footArmMm: hundredths((p.hinge + p.pad / 2) / FOOT_LEVERAGE),
    ...(PEARLED.includes(p.number) ? { touchArmMm: p.hinge + PEARL_BEYOND } : {}),
  };
}

function ventsOf(plan: HornPlan, { shape }: Solved): HornDocument['holes'] {
  const vents = [
    [23, plan.vents.body + shape[7], plan.vents.bodyHole],
    [24, plan.vents.neck + shape[8], plan.vents.neckHole],
  ] as const;
  return vents.map(([number, place, diameterMm]) => {
    const [id, name, rests] = PAD_NAMES[number];
    return {
      number,
      id,
      name,
      rests,
      positionMm: hundredths(place),
      diameterMm,
      chimneyMm: VENT_CHIMNEY,
      rimMm: RIM,
      aroundDeg: plan.around[number],
      key: null,
    };
  });
}

function linksOf(plan: HornPlan): HornDocument['links'] {
  const front = new Map(plan.pads.map((p) => [PAD_NAMES[p.number][0], p.front]));
  return LINKS.map(({ driver, driven, effect, arm }) => ({
    driver,
    driven,
    effect,
    ...(arm
      ? { travelRatio: Math.round((SLACK * 1000 * front.get(driven)!) / front.get(driver)!) / 1000 }
      : {}),
  }));
}

function setupOf(plan: HornPlan): WholeSetup {
  return {
    kind: 'ventwright setup',
    version: SETUP_VERSION,
    name: 'As it left the maker (invented)',
    origin: 'measured',
    airC: 26.85,
    keys: plan.pads.map((p) => ({
      pad: PAD_NAMES[p.number][0],
      openingMm: p.front,
      measuredAt: 'front',
      padDiameterMm: p.pad,
      padThicknessMm: plan.padThickness,
    })),
  };
}
