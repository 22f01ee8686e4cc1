import type { LengthUnit } from '../../../../documents/length-format.ts';
import type { LeakingNoteReport, LargestLeakReport, LeakReport } from '../../../../documents/leak-report.ts';
import { noteLabel, signedCents, unbroken } from '../../../parts/note-names.ts';
import type { LeakAnswer, LeakFault } from '../../../state/leak-fault.ts';
import type { Reason } from '../../../state/reasons.ts';
import { gapWords } from '../gap-words.ts';
import { makeLeakReasons } from './leaks-reasons.model.ts';

/** The answer about a leak in words, biggest first. */
export interface LeaksAnswer {
  readonly headline: string;
  /** how far the limit's note is */
  readonly standing: string;
  readonly second: string;
  /** of the figures in its sentences */
  readonly reasons: readonly Reason[];
}

/** What the words need besides the numbers. */
export interface LeaksManner {
  readonly unit: LengthUnit;
  nameOf(pad: string): string;
}

/** Lost heights below this are not worth a word, dB. */
const LEAST_TOLD_DB = 0.05;

export function makeLeaksAnswer(answer: LeakAnswer, fault: LeakFault, manner: LeaksManner): LeaksAnswer {
  const { leak, largest } = answer;
  return {
    headline: together(headline(leak, fault, manner)),
    standing: together(limitSentence(largest, fault, manner)),
    second: together(touchedSentence(leak)),
    reasons: makeLeakReasons(
      answer,
      {
        lost: together(decibels(leak.notes.find((n) => n.fingering === leak.worst)?.lostDb ?? 0)),
        gap: together(gapWords(largest.gapMm ?? 0, manner.unit)),
      },
      manner,
    ),
  };
}

function headline(leak: LeakReport, fault: LeakFault, manner: LeaksManner): string {
  const what = faultWords(fault, manner);
  const worst = leak.notes.find((n) => n.fingering === leak.worst);
  if (worst === undefined)
    return `${capital(what)} spoils no note: every fingering shuts it well by another way.`;
  if (worst.lostDb === null) return `${capital(what)} and ${noteLabel(worst.fingering)} is lost.`;
  if (worst.lostDb < LEAST_TOLD_DB) return `${capital(what)} costs no note as much as a tenth of a decibel.`;
  return `${capital(what)} costs ${noteLabel(worst.fingering)} ${decibels(worst.lostDb)}, more than any other note.`;
}

function decibels(db: number): string {
  return `${db.toFixed(1)} dB`;
}

/** `2 papers (0.050 mm) all round under F♯ auxiliary`. */
export function faultWords(fault: LeakFault, { unit, nameOf }: LeaksManner): string {
  const gap = gapWords(fault.gapMm, unit);
  const pad = nameOf(fault.pad);
  if (fault.source.kind === 'seat') {
    const where = fault.shape === 'ring' ? 'all round' : `over ${fault.arcDeg}° at the ${fault.shape}`;
    return `${gap} ${where} under ${pad}`;
  }
  const by = fault.source.driver === null ? 'every link' : `the link from ${nameOf(fault.source.driver)}`;
  return fault.source.shuts === 'late'
    ? `${gap} at ${pad}’s front because ${by} shuts it late`
    : `${gap} at the driver’s front because ${by} meets ${pad} early`;
}

/** How wide the fault may be before the limit's note has lost too much. */
export function limitSentence(
  largest: LargestLeakReport,
  fault: LeakFault,
  { unit, nameOf }: LeaksManner,
): string {
  const note = noteLabel(largest.fingering);
  if (largest.gapMm === null) return `${noteLabel(largest.reason ?? '')}.`;
  const what =
    fault.source.kind === 'seat'
      ? `${nameOf(fault.pad)} may be off its rim`
      : fault.source.shuts === 'late'
        ? `${nameOf(fault.pad)} may hang`
        : 'the driver may be kept off';
  return `Before ${note} loses ${largest.lostDb} dB, ${what} by ${gapWords(largest.gapMm, unit)}.`;
}

function touchedSentence(leak: LeakReport): string {
  const told = leak.notes.filter((n) => n.lostDb === null || n.lostDb >= LEAST_TOLD_DB).length;
  if (told === 0) return '';
  const moved = leak.notes.flatMap((n) => (n.changeCents === null ? [] : [Math.abs(n.changeCents)]));
  const most = moved.length === 0 ? 0 : Math.max(...moved);
  return `${told} ${told === 1 ? 'note loses' : 'notes lose'} a tenth of a decibel or more; pitch moves by ${most.toFixed(1)} cents at most, so a tuner hardly tells.`;
}

/** A note's losses as they stand in a table. */
export function lossWords(note: LeakingNoteReport): { db: string; cents: string; rise: string } {
  if (note.lostDb === null) return { db: 'lost', cents: '', rise: '' };
  return {
    db: lostText(note.lostDb),
    cents: signedCents(note.changeCents ?? 0),
    rise: `${signedCents(note.riseChangeMs ?? 0)} ms`,
  };
}

/** dB lost, to a tenth; a gain is told with its plus. */
export function lostText(db: number): string {
  const digits = Math.abs(db).toFixed(1);
  if (Number(digits) === 0) return '0.0';
  return db < 0 ? `+${digits}` : `−${digits}`;
}

/** Keeps numbers, their ± and their units on one line, decibels and papers too. */
export function together(text: string): string {
  return unbroken(text).replace(/(\d) (?=±|(?:dB|papers?)\b)/g, '$1\u00a0');
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
