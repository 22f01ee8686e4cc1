import type { BenchContents } from './bench-contents.ts';
import { saidOf } from './day-steps.ts';
import type { HornDocument } from './horn-document.ts';
import type { LengthUnit } from './length-format.ts';
import { lostMotionSentences } from './lost-motion-words.ts';
import { noteLabel } from './note-label.ts';
import { notesPlayed, PLAYED_SETUPS, takesIn } from './pitch-log.ts';
import type { PlayerSheetFacts } from './player-sheet-facts.ts';
import { inARow, signed } from './player-sheet-lengths.ts';
import type { SetupDocument } from './setup-document.ts';
import { tenths } from './tenths.ts';

/** One thing written down of a visit, under its name. */
export interface FileEntry {
  readonly label: string;
  readonly text: string;
}

/** All of a visit that is no length of a key, each under its name; empty where nothing is known of it. */
export function fileEntries(contents: BenchContents, facts: PlayerSheetFacts, unit: LengthUnit): FileEntry[] {
  const { horn, visit } = contents;
  const {
    player,
    measuredBy,
    wish,
    notes,
    airC,
    a4Hz,
    leakingSeats = [],
    work = [],
    calibration,
  } = visit.document;
  const said = saidOf(visit.document, 'seals and links');
  const name = (pad: string): string => horn.document.holes.find(({ id }) => id === pad)?.name ?? pad;
  const moveWords = (move: string): string =>
    move
      .split(' ')
      .map((word) => name(word))
      .join(' ');
  return [
    {
      label: 'Day',
      text: `${visit.document.date}; player ${player ?? 'not written down'}; read by ${measuredBy ?? 'nobody written down'}; air ${airC} °C; A4 ${a4Hz} Hz.`,
    },
    { label: 'Wish', text: wish ?? '' },
    { label: 'Notes', text: notes ?? '' },
    { label: 'Wish for all keys', text: wishEntry(facts) },
    { label: 'Seals and links', text: said === null ? '' : `said to be ${said}.` },
    { label: 'Links', text: linkEntry(contents, name) },
    { label: 'Lost motion', text: lostMotionSentences(facts.lostMotion, unit).join(' ') },
    {
      label: 'Leaking seats',
      text: leakingSeats
        .map(({ pad, gapMm }) => `${name(pad)}${gapMm === undefined ? '' : ` ${gapMm.toFixed(2)} mm`}`)
        .join(', '),
    },
    {
      label: 'Work',
      text: work
        .map(
          ({ move, valueMm, read }) =>
            `${moveWords(move)} ${valueMm.toFixed(2)} mm${read ? '' : ' (as asked)'}`,
        )
        .join('; '),
    },
    ...PLAYED_SETUPS.map((setup) => ({
      label: `Played ${setup}`,
      text: notesPlayed(takesIn(visit.document, setup)).map(playedWords).join('; '),
    })),
    {
      label: 'Calibration',
      text:
        calibration === undefined
          ? ''
          : `fitted to the notes played: ${inARow(calibration.unknowns)}; ${calibration.inUse ? 'in use' : 'not in use'}.`,
    },
    { label: 'Horn', text: builtEntry(horn.document) },
  ];
}

/** What all keys as wished would do to every note, as far as it can be shown, the worst first. */
function wishEntry({ wishedShift, isProposal }: PlayerSheetFacts): string {
  if (wishedShift === null) return '';
  const { byMm, cost } = wishedShift;
  const notes = cost.notes.flatMap(({ label, differences: [d] }) => {
    if (d === null || d === undefined || !d.canBeShown) return [];
    return [`${label} ${signed(d.cents)} ±${tenths(d.centsPlusMinus)}`];
  });
  const way = `${Math.abs(byMm).toFixed(2)} mm ${byMm < 0 ? 'lower' : 'higher'} than ${isProposal ? 'as proposed' : 'as set'}`;
  return `${way}, in cents: ${notes.length === 0 ? 'nothing that can be shown' : notes.join(', ')}.`;
}

function playedWords({
  fingering,
  cents,
  spreadCents,
  count,
}: ReturnType<typeof notesPlayed>[number]): string {
  if (cents === null) return `${noteLabel(fingering)} left out`;
  const spread = spreadCents === null ? '' : ` ±${tenths(spreadCents)}`;
  return `${noteLabel(fingering)} ${signed(cents)}${spread}${count > 1 ? ` (${count} takes)` : ''} cents`;
}

/** Every link with its ratio and, where it was read, what it leaves open: as set where set, else as found. */
function linkEntry({ horn, asFound, asSet }: BenchContents, name: (pad: string) => string): string {
  const inSetup = (setup: SetupDocument, link: HornDocument['links'][number]) =>
    setup.links?.find(({ driver, driven }) => driver === link.driver && driven === link.driven);
  return horn.document.links
    .map((link) => {
      const [set, found] = [inSetup(asSet.document, link), inSetup(asFound.document, link)];
      const ratio = set?.travelRatio ?? found?.travelRatio ?? link.travelRatio;
      const gap = set?.drivenGapMm ?? found?.drivenGapMm;
      const told = [
        ...(ratio === undefined ? [] : [`ratio ${ratio.toFixed(2)}`]),
        ...(gap === undefined ? [] : [`gap ${gap.toFixed(3).replace('-', '−')} mm`]),
      ];
      return `${name(link.driver)} ${link.effect} ${name(link.driven)}${told.length === 0 ? '' : ` (${told.join(', ')})`}`;
    })
    .join('; ');
}

function builtEntry({
  bore,
  bellCorrectionMm,
  mouthpiece,
  origin,
  instrument,
  remark,
}: HornDocument): string {
  const points = bore.flatMap((section) => section.points);
  const [first, last] = [points[0], points[points.length - 1]];
  const own = {
    measured: 'measured on this horn',
    template: 'an example’s, not read on this horn',
    derived: 'derived',
  }[origin];
  const volumeMm3 = mouthpiece.reedVolumeMm3;
  return (
    `${instrument}; bore and mouthpiece ${own}: bore by ${points.length} points over ` +
    `${last.positionMm.toFixed(1)} mm, from ${first.diameterMm.toFixed(2)} to ${last.diameterMm.toFixed(1)} mm; bell correction ` +
    `${bellCorrectionMm.toFixed(1)} mm; mouthpiece of ${mouthpiece.pieces.length} pieces, reed ${volumeMm3.toFixed(0)} mm³.` +
    (remark === undefined ? '' : ` ${remark}`)
  ).replace(/ -/g, ' −');
}
