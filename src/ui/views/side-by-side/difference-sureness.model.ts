import { usualFingerings } from '../../../acoustics/index.ts';
import type {
  ComparedNoteReport,
  ComparisonReport,
  NoteDifferenceReport,
} from '../../../documents/comparison-report.ts';
import type { LengthUnit } from '../../../documents/length-format.ts';
import type { NextReport } from '../../../documents/uncertainty-report.ts';
import { unbroken } from '../../parts/note-names.ts';
import { centsWithPlusMinus } from '../../parts/plus-minus-words.ts';
import { makeSureness, type Sureness } from '../../parts/sureness.model.ts';
import { NOT_SHOWN } from './comparison-tables.model.ts';
import { pitchOrder } from './difference-chart.model.ts';
import { lettered, letterOf } from './letters.ts';

/** How sure one note's difference is, and what to measure next for it. */
export interface DifferenceSureness {
  readonly noteId: string;
  /** `F4, B beside A` */
  readonly heading: string;
  /** `+1.8 ± 0.3 cents`, and whether that can be shown */
  readonly told: string;
  readonly panel: Sureness;
  /** notes that can be asked about, low to high */
  readonly options: readonly { readonly id: string; readonly label: string }[];
}

/** What a person can mend from this page. */
export interface Mendable {
  /** pads of the horn in hand, where it is the one compared with itself; else none */
  readonly keys: ReadonlySet<string>;
  /** whether the first column is that horn as found, whose openings are typed in the key view */
  readonly firstIsFound: boolean;
}

/** @param noteId null for the note that differs most by its usual fingering */
export function makeDifferenceSureness(
  report: ComparisonReport,
  columns: readonly number[],
  noteId: string | null,
  unit: LengthUnit,
  mendable: Mendable,
): DifferenceSureness | null {
  const comparable = report.notes.filter(({ differences }) => differences.some((d) => d !== null));
  const note = comparable.find(({ fingering }) => fingering === noteId) ?? mostApart(comparable);
  if (note === undefined) return null;
  const index = widest(note);
  const difference = note.differences[index]!;
  const panel = makeSureness(difference.budget, difference.next, {
    of: 'cents',
    unit,
    what: 'The difference of pitch',
    keys: mendable.keys,
  });
  const words = (text: string): string => lettered(text, report, columns);
  return {
    noteId: note.fingering,
    heading: unbroken(`${note.label}, ${letterOf(columns[index + 1])} beside ${letterOf(columns[0])}`),
    told: differenceWords(difference),
    panel: {
      ...panel,
      parts: panel.parts.map((part) => ({ ...part, label: words(part.label) })),
      next: panel.next.map((next, i) => ({
        ...next,
        text: words(next.text),
        target: isTyped(difference.next[i], report, mendable) ? next.target : null,
      })),
    },
    options: [...comparable].sort(pitchOrder).map(({ fingering, label }) => ({ id: fingering, label })),
  };
}

function differenceWords({ cents, centsPlusMinus }: NoteDifferenceReport): string {
  const words = `${centsWithPlusMinus(cents, centsPlusMinus)} cents`;
  return unbroken(Math.abs(cents) > centsPlusMinus ? `${words}.` : `${words}: ${NOT_SHOWN}.`);
}

/** The first by the report's own order whose pitch differs; the first of all where none does. */
function mostApart(notes: readonly ComparedNoteReport[]): ComparedNoteReport | undefined {
  const isUsual = usualFingerings(notes.map(({ fingering, note }) => ({ id: fingering, note })));
  const apart = (note: ComparedNoteReport): number => Math.abs(note.differences[widest(note)]!.cents);
  return notes.filter((_, i) => isUsual[i]).sort((a, b) => apart(b) - apart(a))[0];
}

/** Of a note's differences the greatest. @returns its place, the first where none is known */
function widest({ differences }: ComparedNoteReport): number {
  const sizes = differences.map((d) => (d === null ? -1 : Math.abs(d.cents)));
  return sizes.indexOf(Math.max(...sizes));
}

/** What was read in one setup only is typed where that setup is: as found. */
function isTyped(
  { label }: NextReport,
  { setups }: Pick<ComparisonReport, 'setups'>,
  { firstIsFound }: Mendable,
): boolean {
  if (!label.endsWith('”')) return true;
  return firstIsFound && label.endsWith(`of “${setups[0].label}”`);
}
