import {
  closingHeightsUnderPad,
  contactOffset,
  holeOf,
  keySetupOf,
  standingFronts,
} from '../../../../acoustics/index.ts';
import { formatLength, type LengthUnit } from '../../../../documents/length-format.ts';
import { unbroken } from '../../../parts/note-names.ts';
import { makeStackDrawing, type LinkedKey, type StackDrawing } from '../../../parts/stack-drawing.model.ts';
import { frontsUnderPress } from '../../../parts/stack-motion.model.ts';
import type { StackWords } from '../../../parts/vw-stack-drawing.ts';
import type { PadGeometry } from '../../../state/study-report.ts';
import type { LinkEnds } from '../../../state/links-state.ts';
import { gapWords, papersOf } from '../gap-words.ts';
import type { LoadedLinks } from './loaded-links.ts';

/** One pad that goes down with the driver. */
export interface MovingPad {
  readonly id: string;
  readonly name: string;
  /** `5.0 mm`, `2 papers (0.050 mm)`, `shut`; `cannot say` where a ratio is missing on the way */
  readonly value: string;
  /** of ten papers, 0…1 and beyond; null where it cannot be said */
  readonly shareOfTen: number | null;
}

/** The drawing of the stack that moves. */
export interface StackView {
  readonly drawing: StackDrawing;
  readonly driverGeometry: PadGeometry;
  readonly restMm: number;
  readonly homeMm: number;
  readonly pressed: number;
  readonly pressedWords: string;
  readonly driverWords: StackWords;
  readonly drivenWords: StackWords;
  /** the driver and everything it reaches, as pressed */
  readonly moving: readonly MovingPad[];
  /** what the picture shows and what it does not */
  readonly caption: string;
  readonly words: string;
}

/** Gaps of less are told in papers. */
const PAPERS_BELOW_MM = 0.5;
const MM = 1e-3;

export function makeStackView(
  { loaded, facts }: LoadedLinks,
  ends: LinkEnds,
  pressed: number,
  unit: LengthUnit,
  nameOf: (pad: string) => string,
): StackView {
  const { horn, screws } = facts;
  const { setup } = loaded;
  const standing = standingFronts(horn, setup, screws);
  const home = closingHeightsUnderPad(horn.keywork, ends.driver, screws);
  const rest = (pad: string): number => standing(pad).standsFront;
  const fronts = frontsUnderPress(horn.keywork, screws, ends.driver, { standing: rest, home }, pressed);
  const key = (pad: string): LinkedKey => ({
    name: nameOf(pad),
    geometry: geometryOf(loaded, pad),
    standsMm: rest(pad) / MM,
    nowMm: inMm(fronts.get(pad) ?? null),
  });
  const link = horn.keywork.links.find((l) => l.driver === ends.driver && l.driven === ends.driven)!;
  const [driver, driven] = [key(ends.driver), key(ends.driven)];
  const valueOf = (mm: number | null): string => (mm === null ? 'cannot say' : openWords(mm, unit));
  const lostMm =
    link.ratio === undefined || driven.nowMm === null
      ? 0
      : Math.max(0, link.ratio * driver.nowMm! + contactOffset(link, screws) / MM - driven.nowMm);
  const holds = link.effect === 'holds shut';
  return {
    drawing: makeStackDrawing({ driver, driven, ratio: link.ratio ?? null, lostMm }, unit),
    driverGeometry: driver.geometry,
    restMm: driver.standsMm,
    homeMm: (home.get(ends.driver) ?? 0) / MM,
    pressed,
    pressedWords: `${driver.name} at ${openWords(driver.nowMm!, unit)}`,
    driverWords: { name: driver.name, value: valueOf(driver.nowMm) },
    drivenWords: { name: driven.name, value: valueOf(driven.nowMm) },
    moving: [...fronts].map(([id, front]) => ({
      id,
      name: nameOf(id),
      value: valueOf(inMm(front)),
      shareOfTen: front === null ? null : papersOf(front / MM) / 10,
    })),
    caption: unbroken(caption(link.ratio !== undefined, holds, driven.name)),
    words: unbroken(
      `Side view to scale. ${driver.name} stands ${valueOf(driver.nowMm)} open at the front, ` +
        `${driven.name} ${valueOf(driven.nowMm)}.`,
    ),
  };
}

function caption(known: boolean, holds: boolean, driven: string): string {
  const touch = holds ? ` ${driven} is drawn with its own touch held down.` : '';
  return known
    ? `Pads, holes, rods and openings to scale, the two keys turned to face each other; the arm meets the driven key where its ratio wants it.${touch}`
    : `The ratio of this link is not known: between rest and home what the driven pad does cannot be said. Read both fronts below.${touch}`;
}

/** An opening as it is read: in both units, or in papers where a wedge no longer reads it. */
export function openWords(mm: number, unit: LengthUnit): string {
  return mm < PAPERS_BELOW_MM ? gapWords(mm, unit) : formatLength(mm, unit);
}

const inMm = (metres: number | null): number | null => (metres === null ? null : metres / MM);

function geometryOf({ horn, setup }: LoadedLinks['loaded'], pad: string): PadGeometry {
  const hole = holeOf(horn, pad);
  const { padRadius, padThickness } = keySetupOf(setup, pad);
  // A link joins pads on hinges only: the documents are checked for it.
  const hinge = hole.hinge!;
  return {
    hingeMm: hinge.distance / MM,
    hingeHeightMm: hinge.height / MM,
    padRadiusMm: padRadius / MM,
    padThicknessMm: padThickness / MM,
    holeRadiusMm: hole.holeRadius / MM,
    chimneyMm: hole.chimney / MM,
    rimMm: hole.rimThickness / MM,
    boreRadiusMm: hole.boreRadius / MM,
  };
}
