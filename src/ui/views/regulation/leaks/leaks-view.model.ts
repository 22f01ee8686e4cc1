import { FINGERINGS } from '../../../../acoustics/index.ts';
import type { LengthUnit } from '../../../../documents/length-format.ts';
import { PAPER_MM } from '../../../../documents/leak-report.ts';
import { noteLabel } from '../../../parts/note-names.ts';
import { isWaiting, reportFor } from '../../../state/asked-answer.ts';
import { documentsInHand, hornInHand, type BenchState } from '../../../state/bench-state.ts';
import type { LeakFault } from '../../../state/leak-fault.ts';
import { notesAndPadsOn, placesOn } from '../../../state/leak-places.ts';
import { memoLast } from '../../../state/memo-last.ts';
import { faultOn, MAP_GAPS_MM } from '../../../state/leaks-state.ts';
import { startSentence } from '../../../state/stands-now.ts';
import { textInField } from '../../../state/text-in-field.ts';
import { sentence, type FieldView } from '../../key-study/measured-fields.model.ts';
import { gapWords, papersOf, papersWords } from '../gap-words.ts';
import { namesOf } from '../links/links-view.model.ts';
import { makeBeside, type BesideView } from './beside.model.ts';
import { pictureOf, type LeakPicture } from './leaks-picture.model.ts';
import { makeLeakMap, type LeakMapView } from './leak-map.model.ts';
import { lossWords, makeLeaksAnswer, type LeaksAnswer } from './leaks-words.ts';

/** One of a few to choose from. */
export interface Option {
  readonly value: string;
  readonly label: string;
}

/** One note of the table. */
export interface LeakNoteRow {
  readonly note: string;
  readonly db: string;
  readonly cents: string;
  readonly rise: string;
}

/** What is known once a leak has been played. */
export interface PlayedLeak extends LeakPicture {
  readonly answer: LeaksAnswer;
  readonly rows: readonly LeakNoteRow[];
  readonly warnings: readonly string[];
}

/** Everything the page of leaks shows. */
export interface LeaksView {
  readonly hornName: string;
  readonly unit: LengthUnit;
  readonly fault: LeakFault;
  readonly pads: readonly Option[];
  readonly sources: readonly Option[];
  readonly source: string;
  readonly papers: number;
  readonly gap: FieldView<'gap'>;
  readonly notes: readonly Option[];
  readonly noteId: string;
  readonly noteLabel: string;
  /** the pad that note speaks under; empty where every pad is shut */
  readonly speaksUnder: string;
  /** pads some note speaks under */
  readonly keys: readonly Option[];
  /** from which openings all of it starts */
  readonly start: string;
  /** null until the note has been compared */
  readonly beside: BesideView | null;
  readonly lostDb: number;
  readonly waiting: boolean;
  readonly problem: string | null;
  readonly played: PlayedLeak | null;
  readonly mapGaps: readonly Option[];
  readonly mapGap: string;
  readonly map: LeakMapView | null;
  readonly mapWaiting: boolean;
  /** the row of the map that is in hand, as {@link placeKey} */
  readonly place: string;
}

const ALL_LINKS = 'all links';
const SEAT = 'seat';

/** The pad's own seat, every link onto it, or one link, as a choice's value. */
export function sourceOf(fault: LeakFault): string {
  const { source } = fault;
  return source.kind === 'seat' ? SEAT : (source.driver ?? ALL_LINKS);
}

/** What a choice's value means: null for the seat, else the driver, null for all. */
export function driverOf(value: string): { readonly driver: string | null } | null {
  return value === SEAT ? null : { driver: value === ALL_LINKS ? null : value };
}

/** A place of the map. */
export function placeKey(pad: string, by: string | null): string {
  return by === null ? pad : `${by} > ${pad}`;
}

export function makeLeaksView(state: BenchState): LeaksView {
  const { leaks, hornId, unit } = state;
  const { horn } = documentsInHand(state);
  const nameOf = namesOf(horn);
  const places = placesOn(horn);
  const fault = faultOn(leaks.fault, places);
  const onto = places.links.filter((l) => l.driven === fault.pad);
  const answer = reportFor(leaks.answer, hornId);
  const map = reportFor(leaks.map, hornId);
  const { noteUnder, padUnder } = notesAndPadsOn(horn);
  return {
    hornName: horn.name,
    unit,
    fault,
    pads: places.pads.map((id) => ({ value: id, label: nameOf(id) })),
    sources: [
      { value: SEAT, label: 'its own seat' },
      ...onto.map(({ driver }) => ({ value: driver, label: `link from ${nameOf(driver)}` })),
      ...(onto.length > 1 ? [{ value: ALL_LINKS, label: 'every link onto it' }] : []),
    ],
    source: sourceOf(fault),
    papers: papersOf(fault.gapMm),
    gap: gapField(state, fault),
    notes: FINGERINGS.map(({ id }) => ({ value: id, label: noteLabel(id) })),
    noteId: leaks.limit.fingeringId,
    noteLabel: noteLabel(leaks.limit.fingeringId),
    speaksUnder: padUnder.get(leaks.limit.fingeringId) ?? '',
    keys: places.pads.flatMap((id) => (noteUnder.has(id) ? [{ value: id, label: nameOf(id) }] : [])),
    start: startSentence(hornInHand(state).contents),
    beside: besideIn(state),
    lostDb: leaks.limit.lostDb,
    waiting: isWaiting(leaks.answer, hornId),
    problem: leaks.answer.problem ?? leaks.beside.problem ?? leaks.map.problem,
    played:
      answer === null
        ? null
        : {
            answer: makeLeaksAnswer(answer, fault, { unit, nameOf }),
            ...pictureOf(answer.leak, leaks.limit),
            rows: answer.leak.notes.map((n) => ({ note: noteLabel(n.fingering), ...lossWords(n) })),
            warnings: answer.leak.warnings,
          },
    mapGaps: MAP_GAPS_MM.map((mm) => ({
      value: String(mm),
      label: papersWords(mm / PAPER_MM),
    })),
    mapGap: String(leaks.mapGapMm),
    map: map === null ? null : makeLeakMap(map, nameOf),
    mapWaiting: isWaiting(leaks.map, hornId),
    place:
      fault.source.kind === 'seat'
        ? placeKey(fault.pad, null)
        : placeKey(fault.pad, fault.source.driver ?? ''),
  };
}

const besideMemo = memoLast(makeBeside);

/** The comparison, where it is of the note asked about. */
function besideIn({ leaks, hornId, unit }: BenchState): BesideView | null {
  const report = reportFor(leaks.beside, hornId);
  return report === null || report.fingering !== leaks.limit.fingeringId ? null : besideMemo(report, unit);
}

function gapField({ leaks, unit }: BenchState, { gapMm }: LeakFault): FieldView<'gap'> {
  const typed = leaks.gapText ?? undefined;
  const echo = gapWords(gapMm, unit);
  return {
    id: 'gap',
    label: 'Gap',
    hint: 'papers or a length',
    text: textInField(typed, gapMm, papersWords(papersOf(gapMm))),
    echo,
    problem: typed?.problem ? `${sentence(typed.problem)} Still in use: ${echo}.` : null,
  };
}
