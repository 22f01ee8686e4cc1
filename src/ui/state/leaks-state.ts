import type { LeakMapReport } from '../../documents/leak-report.ts';
import { nothingAsked, type AskedAnswer } from './asked-answer.ts';
import type { TypedText } from './horn-on-bench.ts';
import type { LeakAnswer, LeakFault, LeakLimit } from './leak-fault.ts';

/** Thicknesses the map is drawn at, mm: one paper, two, four. */
export const MAP_GAPS_MM = [0.025, 0.05, 0.1] as const;

/** The leak in hand, and what is known of it. */
export interface LeaksState {
  readonly fault: LeakFault;
  readonly limit: LeakLimit;
  /** a typed gap, and what became of it */
  readonly gapText: TypedText | null;
  readonly mapGapMm: number;
  readonly answer: AskedAnswer<LeakAnswer>;
  readonly map: AskedAnswer<LeakMapReport>;
}

/** Common practice tests the F♯ auxiliary first; where a horn has no such pad its lowest pad is taken. */
const FIRST_PAD = 'f-sharp-auxiliary';
const FIRST_NOTE = 'D4';

export function makeLeaksState(hornId: string): LeaksState {
  return {
    fault: { pad: FIRST_PAD, source: { kind: 'seat' }, shape: 'ring', arcDeg: 90, gapMm: 0.05 },
    limit: { fingeringId: FIRST_NOTE, lostDb: 3 },
    gapText: null,
    mapGapMm: 0.05,
    answer: nothingAsked(hornId),
    map: nothingAsked(hornId),
  };
}

/** Pads and links a fault may be at. */
export interface FaultPlaces {
  readonly pads: readonly string[];
  readonly links: readonly { readonly driver: string; readonly driven: string }[];
}

/** The fault in hand as this horn can have it: another horn may lack the pad or the link. */
export function faultOn(fault: LeakFault, { pads, links }: FaultPlaces): LeakFault {
  const pad = pads.includes(fault.pad) ? fault.pad : pads[0];
  const { source } = fault;
  const onto = links.filter((l) => l.driven === pad);
  const isThere =
    source.kind === 'seat' ||
    (source.driver === null ? onto.length > 0 : onto.some((l) => l.driver === source.driver));
  if (pad === fault.pad && isThere) return fault;
  return { ...fault, pad, source: isThere ? source : { kind: 'seat' } };
}

/** A fault at another pad: its own seat, as it was shaped. */
export function atPad(leaks: LeaksState, pad: string): LeaksState {
  return { ...leaks, fault: { ...leaks.fault, pad, source: { kind: 'seat' } } };
}

/** A fault of a link. */
export function atLink(leaks: LeaksState, driver: string | null, driven: string): LeaksState {
  const { source } = leaks.fault;
  const shuts = source.kind === 'link' ? source.shuts : 'late';
  return { ...leaks, fault: { ...leaks.fault, pad: driven, source: { kind: 'link', driver, shuts } } };
}

/** A gap checked, with the text it was typed as. */
export function withGap(leaks: LeaksState, gapMm: number, text: TypedText | null): LeaksState {
  return { ...leaks, gapText: text, fault: { ...leaks.fault, gapMm } };
}
