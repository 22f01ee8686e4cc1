import { FINGERINGS } from '../../../../acoustics/index.ts';
import type { LeakReport } from '../../../../documents/leak-report.ts';
import { noteLabel, unbroken } from '../../../parts/note-names.ts';
import type { LeakLimit } from '../../../state/leak-fault.ts';

/** One note of the picture. */
export interface LeakColumn {
  readonly id: string;
  readonly label: string;
  /** height of its bar, 0…1 */
  readonly share: number;
  /** dB lost, or `lost`; empty where next to nothing */
  readonly text: string;
  readonly picked: boolean;
}

/** A bar for every note. */
export interface LeakPicture {
  readonly columns: readonly LeakColumn[];
  /** where the limit lies in the picture, 0…1 from below */
  readonly limitShare: number;
  /** the same for who does not see it */
  readonly words: string;
}

/** The picture's least full height, dB. */
const LEAST_FULL_DB = 6;
const LEAST_TOLD_DB = 0.05;

/** What a leak does to every note, and the limit among them. */
export function pictureOf({ notes }: LeakReport, limit: LeakLimit): LeakPicture {
  const lost = new Map(notes.map((n) => [n.fingering, n.lostDb ?? Infinity]));
  const finite = [...lost.values()].filter((db) => db < Infinity);
  const full = Math.max(LEAST_FULL_DB, limit.lostDb * 1.5, ...finite.map((db) => db * 1.1));
  const touched = [...lost].filter(([, db]) => db >= LEAST_TOLD_DB).sort((a, b) => b[1] - a[1]);
  return {
    columns: FINGERINGS.map(({ id }): LeakColumn => {
      const db = lost.get(id) ?? 0;
      return {
        id,
        label: noteLabel(id),
        share: Math.min(1, Math.max(0, db) / full),
        text: db === Infinity ? 'lost' : db >= LEAST_TOLD_DB ? db.toFixed(1) : '',
        picked: id === limit.fingeringId,
      };
    }),
    limitShare: limit.lostDb / full,
    words: unbroken(
      touched.length === 0
        ? 'No note loses a tenth of a decibel.'
        : `Height lost: ${touched
            .slice(0, 5)
            .map(([id, db]) => `${noteLabel(id)} ${db === Infinity ? 'lost' : `${db.toFixed(1)} dB`}`)
            .join(', ')}${touched.length > 5 ? ` and ${touched.length - 5} more` : ''}.`,
    ),
  };
}
