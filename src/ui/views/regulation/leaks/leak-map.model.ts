import type { LeakCellReport, LeakMapReport } from '../../../../documents/leak-report.ts';
import { mapShade } from '../../../parts/note-map.model.ts';
import { noteLabel } from '../../../parts/note-names.ts';
import { memoLast } from '../../../state/memo-last.ts';

/** One note with one fault. */
export interface LeakMapCell {
  /** dB lost: `4.9`, `17`, `✕` where the note is lost, empty where there is next to nothing */
  readonly text: string;
  readonly ground: string;
  readonly ink: string;
  readonly words: string;
}

/** One place of a fault, on every note. */
export interface LeakMapRow {
  readonly pad: string;
  /** the driver of a link; null for the pad's own seat */
  readonly by: string | null;
  readonly label: string;
  /** dB the note it hurts most loses, which the rows are sorted by */
  readonly most: string;
  readonly cells: readonly LeakMapCell[];
}

/** Place × note, the worst place first. */
export interface LeakMapView {
  readonly notes: readonly { readonly id: string; readonly label: string }[];
  readonly rows: readonly LeakMapRow[];
  readonly legend: readonly { readonly text: string; readonly ground: string; readonly ink: string }[];
}

/** What stands for a note that is lost. */
const LOST = '✕';
/** Below this a cell stays bare, dB. */
const LEAST_DB = 0.05;
const LEGEND_DB = [0.1, 0.5, 1, 3, 6, 12];
/** The scale's shades go to 4; here that is 12 dB. */
const DB_PER_SHADE = 3;

/** The same view for the same map, names and all. */
export const makeLeakMap = memoLast((map: LeakMapReport, nameOf: (pad: string) => string): LeakMapView => {
  const notes = map.fingerings.map((id) => ({ id, label: noteLabel(id) }));
  const rows = map.rows
    .map((row) => ({ row, worst: Math.max(0, ...row.cells.map(lostDbOf)) }))
    .sort((a, b) => b.worst - a.worst)
    .map(({ row, worst }): LeakMapRow => {
      const label = row.by === null ? nameOf(row.pad) : `${nameOf(row.by)} → ${nameOf(row.pad)}, late`;
      return {
        pad: row.pad,
        by: row.by,
        label,
        most: worst === Infinity ? LOST : dbText(worst) || '0.0',
        cells: row.cells.map((cell, i) => cellView(cell, label, notes[i].label)),
      };
    });
  return { notes, rows, legend: LEGEND_DB.map((db) => ({ text: dbText(db), ...shadeOf(db) })) };
});

function cellView(cell: LeakCellReport | null, place: string, note: string): LeakMapCell {
  if (cell === null) return { text: '', ...shadeOf(0), words: `${place}: ${note} is not touched` };
  if (cell.lost) return { text: LOST, ...shadeOf(Infinity), words: `${place}: ${note} is lost` };
  const db = cell.lostDb ?? 0;
  const rise = cell.riseChangeMs ?? 0;
  return {
    text: dbText(db),
    ...shadeOf(db),
    words:
      `${place}: ${note} ${db >= 0 ? 'loses' : 'gains'} ${Math.abs(db).toFixed(1)} dB, ` +
      `${Math.abs(cell.changeCents ?? 0).toFixed(1)} cents ${(cell.changeCents ?? 0) < 0 ? 'flat' : 'sharp'}, ` +
      `rise time ${rise < 0 ? '−' : '+'}${Math.abs(rise).toFixed(1)} ms`,
  };
}

function lostDbOf(cell: LeakCellReport | null): number {
  return cell === null ? 0 : cell.lost ? Infinity : (cell.lostDb ?? 0);
}

function dbText(db: number): string {
  if (Math.abs(db) < LEAST_DB) return '';
  const digits = Math.abs(db) < 9.95 ? Math.abs(db).toFixed(1) : Math.abs(db).toFixed(0);
  return db < 0 ? `+${digits}` : digits;
}

/** Orange for height lost, blue for height gained. */
function shadeOf(db: number): { readonly ground: string; readonly ink: string } {
  return mapShade(-db / DB_PER_SHADE);
}
