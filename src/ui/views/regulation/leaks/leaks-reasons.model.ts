import type { LargestLeakReport, LeakingNoteReport, LeakReport } from '../../../../documents/leak-report.ts';
import { noteLabel } from '../../../parts/note-names.ts';
import type { LeakAnswer } from '../../../state/leak-fault.ts';
import type { Reason, ReasonInput } from '../../../state/reasons.ts';
import { gapWords } from '../gap-words.ts';
import type { LeaksManner } from './leaks-words.ts';

/** The figures of the answer, as its sentences say them. */
export interface LeakFigures {
  /** what the worst note loses */
  readonly lost: string;
  /** how wide the leak may be */
  readonly gap: string;
}

/** Why the answer’s figures are what they are. */
export function makeLeakReasons(
  { leak, largest }: LeakAnswer,
  figures: LeakFigures,
  manner: LeaksManner,
): Reason[] {
  return [...worstReason(leak, figures.lost, manner), ...limitReason(largest, figures.gap, manner)];
}

function worstReason(leak: LeakReport, figure: string, manner: LeaksManner): Reason[] {
  const worst = leak.notes.find((note) => note.fingering === leak.worst);
  if (worst === undefined || worst.lostDb === null) return [];
  return [
    {
      kind: 'leak-loss',
      figure,
      of: noteLabel(worst.fingering),
      inputs: playedInputs(worst, manner),
      budget: null,
      remarks: [],
    },
  ];
}

function limitReason(largest: LargestLeakReport, figure: string, manner: LeaksManner): Reason[] {
  const { note, lostDb, fingering } = largest;
  if (note === null) return [];
  return [
    {
      kind: 'leak-gap',
      figure,
      of: `until ${noteLabel(fingering)} loses ${lostDb} dB`,
      inputs: playedInputs(note, manner),
      budget: null,
      remarks: [],
    },
  ];
}

/** A note played with the leak and without: heights in units of the neck’s own impedance. */
function playedInputs(note: LeakingNoteReport, { unit, nameOf }: LeaksManner): ReasonInput[] {
  const { sealed, leaking, lostDb, pads } = note;
  return [
    ...pads.map(({ pad, gapMm }) => ({
      label: `widest gap under ${nameOf(pad)}`,
      value: gapWords(gapMm, unit),
      from: '',
    })),
    { label: 'height, sealed', value: sealed.heightRatio.toFixed(1), from: '' },
    ...(leaking === null
      ? []
      : [{ label: 'height, leaking', value: leaking.heightRatio.toFixed(1), from: '' }]),
    ...(lostDb === null ? [] : [{ label: 'so it loses', value: `${lostDb.toFixed(1)} dB`, from: '' }]),
  ];
}
