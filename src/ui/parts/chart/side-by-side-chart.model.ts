import { spreadLabels } from './chart.model.ts';

/** One fingering's place on the picture of differences. */
export interface DifferenceMark {
  readonly id: string;
  readonly label: string;
  /** the note's usual fingering, or another way, which stands a little to the right */
  readonly usual: boolean;
  /** in semitones along the axis */
  readonly x: number;
}

/** How far one fingering lies from the reference. */
export interface DifferencePoint {
  readonly value: number;
  /** half width */
  readonly plusMinus: number;
  /** whether it is greater than its ± */
  readonly shown: boolean;
}

/** One of the columns held against the reference. */
export interface DifferenceSeries {
  /** `B` */
  readonly letter: string;
  readonly name: string;
  /** in the marks' order; null where the note is lost or not compared */
  readonly points: Readonly<Record<DifferencePanelId, readonly (DifferencePoint | null)[]>>;
  /** the marks that can be shown to differ most, widest first: they carry their number */
  readonly widest: readonly number[];
}

export type DifferencePanelId = 'pitch' | 'strength';

/** One row of the picture. */
export interface DifferencePanel {
  readonly id: DifferencePanelId;
  readonly title: string;
  readonly unit: string;
  readonly range: readonly [number, number];
  /** from how much a player notices, either way */
  readonly noticedFrom: number;
}

/** Every note of every column against the reference. */
export interface SideBySideChartModel {
  readonly marks: readonly DifferenceMark[];
  readonly ticks: readonly { readonly x: number; readonly label: string; readonly natural: boolean }[];
  readonly xRange: readonly [number, number];
  readonly reference: { readonly letter: string; readonly name: string };
  /** strength is left out where no column’s can be compared */
  readonly panels: readonly DifferencePanel[];
  readonly series: readonly DifferenceSeries[];
  /** the whole picture in words */
  readonly summary: string;
}

/** px */
export interface PictureSize {
  readonly width: number;
  readonly height: number;
}

/** Where the rows lie, px. */
export interface DifferencePlace {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** [upper edge, lower edge] from the top, in the panels' order */
  readonly rows: readonly (readonly [number, number])[];
  /** the same as shares of the height between the margins, from below */
  readonly domains: readonly (readonly [number, number])[];
  readonly pxPerNote: number;
  /** whether names fit beside the picture, or letters only */
  readonly named: boolean;
}

const NARROW_PX = 620;
const TOP_PX = 10;
const BOTTOM_PX = 24;
const LEFT_PX = 54;
const LETTER_PX = 30;
const CHAR_PX = 7.6;
const NAMED_CHARS = 20;
/** Two rows: pitch has the greater part. */
const DOMAINS: readonly (readonly [number, number])[] = [
  [0.37, 1],
  [0, 0.31],
];

export function placeDifferences(model: SideBySideChartModel, size: PictureSize): DifferencePlace {
  const named = size.width >= NARROW_PX;
  const longest = Math.max(
    ...model.series.map(({ name }) => Math.min(name.length, NAMED_CHARS)),
    model.reference.name.length > NAMED_CHARS ? NAMED_CHARS : model.reference.name.length,
  );
  const right = named ? LETTER_PX + CHAR_PX * longest : LETTER_PX;
  const height = size.height - TOP_PX - BOTTOM_PX;
  const domains = model.panels.length === 1 ? ([[0, 1]] as const) : DOMAINS;
  const [from, to] = model.xRange;
  return {
    left: LEFT_PX,
    right,
    top: TOP_PX,
    bottom: BOTTOM_PX,
    rows: domains.map(([low, high]) => [TOP_PX + (1 - high) * height, TOP_PX + (1 - low) * height]),
    domains,
    pxPerNote: (size.width - LEFT_PX - right) / (to - from),
    named,
  };
}

/** How far from its note a series' points stand, semitones, so that none lies on another. */
export function sideStep(series: number, count: number): number {
  return count < 2 ? 0 : (series - (count - 1) / 2) * 0.22;
}

/** px from the top of a value in a row. */
export function valuePx(panel: DifferencePanel, row: readonly [number, number], value: number): number {
  const [low, high] = panel.range;
  const within = Math.min(Math.max(value, low), high);
  return row[1] - ((within - low) / (high - low)) * (row[1] - row[0]);
}

/** A word beside the first row: the reference at its zero, every column at its last note. */
export interface SideLabel {
  /** −1 for the reference */
  readonly series: number;
  readonly text: string;
  readonly y: number;
}

const LABEL_GAP_PX = 16;

export function placeSideLabels(model: SideBySideChartModel, place: DifferencePlace): SideLabel[] {
  const [pitch] = model.panels;
  const row = place.rows[0];
  const last = model.series.map(({ points }) => {
    const known = points.pitch.flatMap((p, i) => (p !== null && model.marks[i].usual ? [p.value] : []));
    return known[known.length - 1] ?? 0;
  });
  const text = ({ letter, name }: { readonly letter: string; readonly name: string }): string =>
    place.named ? `${letter} ${clipped(name)}` : letter;
  const labels = [
    { series: -1, text: text(model.reference), y: valuePx(pitch, row, 0) },
    ...model.series.map((each, i) => ({ series: i, text: text(each), y: valuePx(pitch, row, last[i]) })),
  ];
  const places = spreadLabels(
    labels.map(({ y }) => y),
    LABEL_GAP_PX,
    row[0] + 8,
    row[1] - 8,
  );
  return labels.map((label, i) => ({ ...label, y: places[i] }));
}

function clipped(name: string): string {
  return name.length <= NAMED_CHARS ? name : `${name.slice(0, NAMED_CHARS - 1)}…`;
}

/** A number at a point of the first row. */
export interface PointNumber {
  readonly series: number;
  readonly mark: number;
  readonly x: number;
  /** px from the top, the middle of the number */
  readonly y: number;
  readonly text: string;
}

const NUMBER_HEIGHT_PX = 13;
const NUMBER_CHAR_PX = 6.4;

/** The widest notes' numbers, beyond the end of their whiskers; one that would lie on another is left out. */
export function placeNumbers(
  model: SideBySideChartModel,
  place: DifferencePlace,
  write: (value: number) => string,
): PointNumber[] {
  const [pitch] = model.panels;
  const row = place.rows[0];
  const placed: (PointNumber & { readonly width: number })[] = [];
  const depth = Math.max(0, ...model.series.map(({ widest }) => widest.length));
  for (let rank = 0; rank < depth; rank++) {
    model.series.forEach(({ widest, points }, series) => {
      const mark = widest[rank];
      const point = mark === undefined ? null : points.pitch[mark];
      if (point === null) return;
      const up = point.value > 0;
      const tip = valuePx(pitch, row, point.value + (up ? 1 : -1) * point.plusMinus);
      const y = tip + (up ? -1 : 1) * (NUMBER_HEIGHT_PX / 2 + 3);
      const step = sideStep(series, model.series.length);
      const text = `${model.marks[mark].label} ${write(point.value)}`;
      const width = text.length * NUMBER_CHAR_PX;
      const end = place.left + (model.xRange[1] - model.xRange[0]) * place.pxPerNote;
      const at = place.left + (model.marks[mark].x + step - model.xRange[0]) * place.pxPerNote;
      const x = Math.min(at, end - width / 2);
      const free = placed.every(
        (other) =>
          Math.abs(other.y - y) >= NUMBER_HEIGHT_PX || Math.abs(other.x - x) >= (other.width + width) / 2 + 3,
      );
      if (free && y > row[0] + 4 && y < row[1] - 4) placed.push({ series, mark, x, y, text, width });
    });
  }
  return placed.map(({ series, mark, x, y, text }) => ({ series, mark, x, y, text }));
}
