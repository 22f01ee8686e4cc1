import type { LengthUnit } from '../../../../documents/length-format.ts';
import type { ChangedPadReport, FollowedNoteReport } from '../../../../documents/pad-change-report.ts';
import { noteLabel, signedCents } from '../../../parts/note-names.ts';
import type { Reason, ReasonInput } from '../../../state/reasons.ts';
import { fineBoth, signedLength } from './fine-lengths.ts';

/** Why a stop has to move for the old venting. @param figure as its row says it; null where its hinge cannot */
export function restoreReason(
  pad: ChangedPadReport,
  name: string,
  figure: string,
  unit: LengthUnit,
): Reason | null {
  const { restored, before, after } = pad;
  if (restored === null) return null;
  return {
    kind: 'pad-change',
    figure,
    of: `${name} key`,
    inputs: [
      { label: 'thicker by', value: signedLength(pad.thickerMm, unit), from: '' },
      length('front before', before.frontMm, unit),
      length('front after, at the same stop', after.frontMm, unit),
      length('centre before', before.centreMm, unit),
      length('centre after', after.centreMm, unit),
      {
        label: 'vent share',
        value: `${share(pad.ventShareBefore)} → ${share(pad.ventShareAfter)} %`,
        from: '',
      },
      length('front for the old venting', restored.frontMm, unit),
    ],
    budget: null,
    remarks: [],
  };
}

/** Why the note that moves most moves so. @param figure as the headline says it */
export function movedReason(note: FollowedNoteReport, figure: string): Reason {
  const played = (label: string, cents: number | undefined): ReasonInput[] =>
    cents === undefined ? [] : [{ label, value: `${signedCents(cents)} cents`, from: '' }];
  return {
    kind: 'pad-change',
    figure,
    of: noteLabel(note.fingering),
    inputs: [
      ...played('pitch with the pads it has', note.before?.cents),
      ...played('pitch with the other pads', note.after?.cents),
    ],
    budget: null,
    remarks: [],
  };
}

function length(label: string, mm: number, unit: LengthUnit): ReasonInput {
  return { label, value: fineBoth(mm, unit), from: '' };
}

function share(of: number): string {
  return (100 * of).toFixed(1);
}
