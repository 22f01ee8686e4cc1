import type { BenchContents, SetupRole } from '../../../documents/bench-contents.ts';
import type { KeyedHole } from '../../../documents/horn-document.ts';
import { formatBoth } from '../../../documents/length-format.ts';
import { noteLabel } from '../../parts/note-names.ts';
import { openingInput, ventingInputs } from '../../state/reason-inputs.ts';
import type { Reason, ReasonInput } from '../../state/reasons.ts';
import type { EnoughReport, StandingReport } from '../../state/sheet-report.ts';
import type { CellManner } from './sheet-cells.model.ts';

/** The key a reason is of. */
interface ReasonedKey {
  readonly pad: string;
  readonly name: string;
}

type ReachedReport = Extract<EnoughReport, { kind: 'reached' }>;

/** The reasons of a row’s figures; null where there is no such figure. */
export interface RowReasons {
  readonly share: Reason | null;
  readonly enough: Reason | null;
  /** of what a key that stands low lacks */
  readonly lack: Reason | null;
}

export const NO_REASONS: RowReasons = { share: null, enough: null, lack: null };

/** A row’s figures as it says them. */
export interface RowFigures {
  readonly share: string;
  readonly enough: string;
  readonly lack: string | null;
}

/** How a key stands now and is to leave, in which of its setups, and where height stops helping. */
interface ReasonedStandings {
  readonly now: StandingReport;
  readonly leaves: StandingReport;
  readonly as: SetupRole;
  readonly enough: EnoughReport | null;
}

/** Why a row’s figures are what they are. */
export function makeRowReasons(
  contents: BenchContents,
  { id: pad, name }: KeyedHole,
  { now, leaves, as, enough }: ReasonedStandings,
  figures: RowFigures,
  manner: Pick<CellManner, 'unit' | 'readAt'>,
): RowReasons {
  const key = { pad, name };
  const share = shareReason(contents, key, { leaves, as }, figures.share, manner);
  if (enough?.kind !== 'reached') return { ...NO_REASONS, share };
  return {
    share,
    enough: enoughReason(contents, key, enough, figures.enough, manner),
    lack: figures.lack === null ? null : lackReason(contents, key, { now, enough }, figures.lack, manner),
  };
}

/** Why a key vents as it does where it is to leave. @param figure as the row says it */
function shareReason(
  contents: BenchContents,
  { pad, name }: ReasonedKey,
  { leaves, as }: Pick<ReasonedStandings, 'leaves' | 'as'>,
  figure: string,
  { unit }: Pick<CellManner, 'unit'>,
): Reason {
  return {
    kind: 'vent-share',
    figure,
    of: as === 'proposed' ? `${name} key as proposed` : `${name} key as it stands`,
    inputs: [...openingsOf(contents, pad, { leaves, as }, unit), ...ventingInputs(contents, pad, unit)],
    budget: { parts: leaves.shareBudget, in: 'share' },
    remarks: ruledWords(leaves, unit),
  };
}

/** Why more height stops helping where it does. @param figure as the row says it */
function enoughReason(
  contents: BenchContents,
  { pad, name }: ReasonedKey,
  enough: ReachedReport,
  figure: string,
  { unit, readAt }: Pick<CellManner, 'unit' | 'readAt'>,
): Reason {
  return {
    kind: 'diminishing-return',
    figure,
    of: `${name} key at the ${readAt}`,
    inputs: [
      { label: 'at the front', value: formatBoth(enough.frontMm, unit), from: '' },
      { label: 'at the centre', value: formatBoth(enough.centreMm, unit), from: '' },
      { label: 'vent share there', value: `${Math.round(100 * enough.ventShare)} %`, from: '' },
      ...ventingInputs(contents, pad, unit),
    ],
    budget: enough.budget === null ? null : { parts: enough.budget, in: 'mm' },
    remarks: decidedWords(enough),
  };
}

/** Why a key lacks as much as it does: where it stands, and where height stops helping. */
function lackReason(
  contents: BenchContents,
  key: ReasonedKey,
  { now, enough }: { readonly now: StandingReport; readonly enough: ReachedReport },
  figure: string,
  manner: Pick<CellManner, 'unit' | 'readAt'>,
): Reason {
  const { unit } = manner;
  return {
    ...enoughReason(contents, key, enough, figure, manner),
    of: `what the ${key.name} key lacks at the front`,
    inputs: [
      { label: 'height stops helping at', value: formatBoth(enough.frontMm, unit), from: '' },
      { label: 'it stands at', value: formatBoth(now.frontMm, unit), from: '' },
      ...openingInput(contents, key.pad, 'asSet', unit),
    ],
    remarks: [
      ...decidedWords(enough),
      'The ± of what it lacks is that of both heights together; the parts below are of where height stops helping.',
    ],
  };
}

function openingsOf(
  contents: BenchContents,
  pad: string,
  { leaves: { frontMm, centreMm }, as }: Pick<ReasonedStandings, 'leaves' | 'as'>,
  unit: CellManner['unit'],
): ReasonInput[] {
  const [read] = openingInput(contents, pad, as, unit);
  const front = formatBoth(frontMm, unit);
  // An opening read at the front that no arm keeps down stands as it was read.
  const isAsRead = read?.label.endsWith('at the front') && read.value.startsWith(front);
  return [
    ...(read === undefined ? [] : [read]),
    ...(isAsRead ? [] : [{ label: 'so it stands at the front', value: front, from: '' }]),
    { label: 'and at the centre', value: formatBoth(centreMm, unit), from: '' },
  ];
}

function ruledWords({ ruledBy }: StandingReport, unit: CellManner['unit']): string[] {
  if (ruledBy === null) return [];
  const own = formatBoth(ruledBy.ownFrontMm, unit);
  return [`The ${ruledBy.driverName} key’s arm holds it down; its own stop would let it open to ${own}.`];
}

function decidedWords({ decidedBy, budget }: ReachedReport): string[] {
  const sure =
    budget === null && decidedBy.by !== 'least opening'
      ? [
          'If the readings or the pad model are off by all they may be, it lies out of reach: no ± can be told.',
        ]
      : [];
  switch (decidedBy.by) {
    case 'pitch':
      return [`${noteLabel(decidedBy.fingering)} is the last note to stop moving.`, ...sure];
    case 'vent share':
      return ['Vent share is the last to stop growing.', ...sure];
    case 'least opening':
      return ['Nothing grows even from the least opening, so there is no ± to it.'];
  }
}
