import {
  measureNext,
  type Budget,
  type Horn,
  type Reading,
  type ReadingKind,
  type ReadingPart,
} from '../acoustics/index.ts';

/** A ± and what it is made of, in the answer's bench unit. */
export interface BudgetReport {
  readonly plusMinus: number;
  /** signed, the greatest first */
  readonly readings: readonly PartReport[];
  /** readings too small to be listed each: how many have an effect, and what they do together, ≥ 0 */
  readonly others: { readonly count: number; readonly effect: number };
  /** signed */
  readonly padModel: number;
  readonly wholeHorn: number;
  readonly calibration: number;
}

/** One reading's part of a ±. */
export interface PartReport extends ReadingReport {
  /** what its whole ± does to the answer, in the answer's unit */
  readonly effect: number;
}

/** One reading, in its bench unit. */
export interface ReadingReport {
  /** as said at the bench: `hinge distance of the E key` */
  readonly label: string;
  /** pad id; null for a link, and for what is read once */
  readonly pad: string | null;
  readonly kind: ReadingKind;
  readonly unit: '' | 'mm' | '°C' | 'cm³';
  /** as read, in that unit; null where the horn as described is the zero */
  readonly value: number | null;
  readonly plusMinus: number;
  /** a link's two pads; null for what is not a link */
  readonly link: { readonly driver: string; readonly driven: string } | null;
}

/** What to measure next. */
export interface NextReport extends ReadingReport {
  readonly tool: string;
  /** its ± once measured with care, in its unit */
  readonly becomes: number;
  /** the answer's ± once this alone is measured, and once all down to this are */
  readonly alone: number;
  readonly together: number;
}

/** How a reading is said, and how well it can be read with care. */
interface Manner {
  readonly name: string;
  readonly unit: ReadingReport['unit'];
  /** bench units per SI unit: diameters are read, radii reckoned with */
  readonly scale: number;
  readonly tool: string;
  /** in the bench unit, or a share of the value for a ratio; null where only playing can tell */
  readonly attainable: number | null;
}

/**
 * How every kind of reading is said, and read with care.
 *
 * **Source:** the tools' ± from memory, within common practice.
 */
const MANNERS: Readonly<Record<ReadingKind, Manner>> = {
  opening: { name: 'opening', unit: 'mm', scale: 1e3, tool: 'step gauge', attainable: 0.1 },
  padThickness: { name: 'pad thickness', unit: 'mm', scale: 1e3, tool: 'caliper', attainable: 0.1 },
  padRadius: { name: 'pad diameter', unit: 'mm', scale: 2e3, tool: 'caliper', attainable: 0.1 },
  hingeDistance: { name: 'hinge distance', unit: 'mm', scale: 1e3, tool: 'caliper', attainable: 0.2 },
  hingeHeight: { name: 'rod height', unit: 'mm', scale: 1e3, tool: 'caliper', attainable: 0.2 },
  rimThickness: { name: 'rim thickness', unit: 'mm', scale: 1e3, tool: 'caliper', attainable: 0.1 },
  holeRadius: { name: 'hole diameter', unit: 'mm', scale: 2e3, tool: 'caliper', attainable: 0.05 },
  chimney: { name: 'chimney height', unit: 'mm', scale: 1e3, tool: 'caliper', attainable: 0.15 },
  place: { name: 'place on the bore', unit: 'mm', scale: 1e3, tool: 'rule', attainable: 0.5 },
  linkRatio: { name: 'travel ratio', unit: '', scale: 1, tool: 'step gauge', attainable: 0.02 },
  temperature: { name: 'air temperature', unit: '°C', scale: 1, tool: 'played notes', attainable: null },
  mouthpieceVolume: {
    name: 'mouthpiece volume',
    unit: 'cm³',
    scale: 1e6,
    tool: 'played notes',
    attainable: null,
  },
  mouthpiecePlace: {
    name: 'place of the mouthpiece on the cork',
    unit: 'mm',
    scale: 1e3,
    tool: 'played notes',
    attainable: null,
  },
};

/** Readings that do less than this share of the ± are told together. */
const LEAST_LISTED = 0.02;

/** What each of two horns is called beside a reading that was taken on one of them only. */
export type SideNames = Readonly<Record<'first' | 'other', string>>;

/** A ± in bench units. @param scale bench units of the answer per SI unit */
export function reportBudget(horn: Horn, budget: Budget, scale = 1, sides?: SideNames): BudgetReport {
  const isListed = ({ effect }: ReadingPart): boolean => Math.abs(effect) > LEAST_LISTED * budget.plusMinus;
  const listed = budget.readings.filter(isListed);
  const others = budget.readings.filter((part) => !isListed(part));
  return {
    plusMinus: budget.plusMinus * scale,
    readings: listed.map(({ reading, effect, side }) => ({
      ...reportReading(horn, reading, nameOfSide(side, sides)),
      effect: effect * scale,
    })),
    others: { count: others.length, effect: Math.hypot(...others.map(({ effect }) => effect)) * scale },
    padModel: budget.padModel * scale,
    wholeHorn: budget.wholeHorn * scale,
    calibration: budget.calibration * scale,
  };
}

/** What to measure next for an answer, the best first, in bench units. */
export function reportNext(horn: Horn, budget: Budget, scale = 1, sides?: SideNames): NextReport[] {
  const attainable = ({ kind, value }: Reading): number | null => {
    const { attainable: best, scale: own } = MANNERS[kind];
    if (best === null) return null;
    return kind === 'linkRatio' ? best * value : best / own;
  };
  return measureNext(budget, attainable).map(({ reading, side, becomes, alone, together }) => ({
    ...reportReading(horn, reading, nameOfSide(side, sides)),
    tool: MANNERS[reading.kind].tool,
    becomes: becomes * MANNERS[reading.kind].scale,
    alone: alone * scale,
    together: together * scale,
  }));
}

/** `Measure the hinge distance of the D key …: the ± falls from 0.6 to 0.2 mm.` @param unit the answer's */
export function nextSentence(next: NextReport, plusMinus: number, unit: string): string {
  const digits = plusMinus.toFixed(1) === next.alone.toFixed(1) ? 2 : 1;
  const own = next.unit === '' ? '' : ` ${next.unit}`;
  const falls = `falls from ${plusMinus.toFixed(digits)} to ${next.alone.toFixed(digits)} ${unit}`;
  return `Measure the ${next.label} (now ±${plain(next.plusMinus)}${own}; with a ${next.tool} ±${plain(next.becomes)}${own}): the ± ${falls}.`;
}

const plain = (value: number): string => String(Number(value.toPrecision(2)));

function nameOfSide(side: 'first' | 'other' | undefined, sides: SideNames | undefined): string {
  return side === undefined || sides === undefined ? '' : ` of ${sides[side]}`;
}

function reportReading(horn: Horn, reading: Reading, ofSide: string): ReadingReport {
  const { id, kind, plusMinus } = reading;
  const { name, unit, scale } = MANNERS[kind];
  const nameOf = (pad: string): string => horn.holes.find((hole) => hole.id === pad)?.name ?? pad;
  const hole = horn.holes.find((h) => h.id === id);
  const [driver, driven] = id.split(' > ');
  const link = kind === 'linkRatio' ? { driver, driven } : null;
  const of = (): string => {
    if (link !== null) return `${name} from ${nameOf(driver)} to ${nameOf(driven)}`;
    if (hole === undefined) return name;
    return `${name} of the ${hole.name}${hole.hinge === null ? '' : ' key'}`;
  };
  const value = valueOf(horn, reading);
  return {
    label: of() + ofSide,
    pad: hole?.id ?? null,
    kind,
    unit,
    value: value === null ? null : value * scale,
    plusMinus: plusMinus * scale,
    link,
  };
}

/** A reading as the bench has it: places run from the neck’s small end, the mouthpiece is what the horn was given. */
function valueOf({ neckStart }: Horn, { kind, value }: Reading): number | null {
  if (kind === 'mouthpieceVolume' || kind === 'mouthpiecePlace') return null;
  return kind === 'place' ? value - neckStart : value;
}
