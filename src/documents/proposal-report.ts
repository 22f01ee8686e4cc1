import {
  ownPose,
  proposalBudgets,
  PROPOSAL_WEIGHTS,
  proposeSetup,
  type AirColumn,
  type Proposal,
  type ProposalOptions,
  type PlusMinus,
  type ProposalWeights,
  type TunedBy,
} from '../acoustics/index.ts';
import { notesPlayed, type Take } from './pitch-log.ts';
import { plusMinusOf } from './plus-minus.ts';
import type { Preference } from './proposal-choices.ts';
import { headline, heldApartSentence, reasonOf, type ProposalReason } from './proposal-words.ts';
import type { LoadedHorn } from './to-acoustics.ts';

/** What each preference changes of the usual weights; our choice. */
export const PREFERENCE_WEIGHTS: Readonly<Record<Preference, Partial<ProposalWeights>>> = {
  balanced: {},
  'in tune': { pitch: 0.04 },
  'low keys': { height: 0.08 },
  'few moves': { stay: 0.3 },
};

/** Choices about a proposal, bench units. */
export interface ProposalChoices {
  readonly air: AirColumn;
  readonly a4Hz?: number;
  readonly neighbours?: boolean;
  /** pad ids */
  readonly locked?: readonly string[];
  /** mm at the front by pad id: as far as it may open */
  readonly mostMm?: ReadonlyMap<string, number>;
  readonly prefer?: Preference;
  readonly weights?: Partial<ProposalWeights>;
  readonly tunedBy?: TunedBy;
  /** as played on the horn as found; takes in another setup are left out */
  readonly takes?: readonly Take[];
  /** default that of every reading */
  readonly plusMinus?: PlusMinus;
}

/** One key of the proposal, mm at the front. */
export interface ProposedKeyReport {
  readonly pad: string;
  readonly number: number;
  readonly name: string;
  readonly foundMm: number;
  readonly proposedMm: number;
  readonly moveMm: number;
  /** of the reading as found */
  readonly plusMinusMm: number;
  /** where more height stops helping; null where that is nowhere within reach */
  readonly enoughMm: number | null;
  readonly reason: ProposalReason;
  /** why, in one or two sentences */
  readonly why: string;
}

/** One note of the proposal, cents. */
export interface ProposedNoteReport {
  readonly fingering: string;
  readonly way: string;
  readonly weight: number;
  readonly foundCents: number;
  readonly proposedCents: number;
  readonly shortListCents: number;
  /** from the mean of what it is tuned by */
  readonly foundAboutCents: number;
  readonly proposedAboutCents: number;
  readonly changeCents: number;
  readonly changePlusMinusCents: number;
}

/** One key of the short list, the one that brings most first. */
export interface ShortListedReport {
  readonly pad: string;
  readonly number: number;
  readonly name: string;
  readonly foundMm: number;
  readonly proposedMm: number;
  readonly moveMm: number;
  /** of the whole gain, up to and with this key */
  readonly sharePercent: number;
  /** where this key and those before it stand when only they move, mm at the front by pad id */
  readonly togetherMm: Readonly<Record<string, number>>;
}

/** A proposal in bench units, with its words. */
export interface ProposalReport {
  readonly horn: string;
  readonly setup: string;
  readonly a4Hz: number;
  readonly prefer: Preference;
  readonly tunedBy: TunedBy;
  /** whether the notes start from where they were played, or from where they are worked out to be */
  readonly pitchFrom: 'playing' | 'model';
  readonly answer: string;
  readonly keys: readonly ProposedKeyReport[];
  readonly shortList: readonly ShortListedReport[];
  readonly notes: readonly ProposedNoteReport[];
  /** how far notes stand from their mean, and what the proposal changes of that */
  readonly spread: {
    readonly foundCents: number;
    readonly proposedCents: number;
    readonly shortListCents: number;
    readonly changeCents: number;
    readonly changePlusMinusCents: number;
  };
  readonly spreadSentence: string;
  /** arms that hold a pad below its own stop, where neither was to move */
  readonly heldApart: readonly string[];
  readonly cautions: readonly string[];
}

/** What to keep in mind at the bench. Common practice, no source. */
export const PROPOSAL_CAUTIONS: readonly string[] = [
  'Seal first: a leak undoes what an opening gives.',
  'A cork or felt changed, or a key bent a little, can be put back. What is filed, cut or soldered cannot: leave that to trained practice.',
  'Move one key, then play. The links come after the heights, since every height moves them.',
];

const MM = 1e-3;
const A4_HZ = 440;

/** Solves for a loaded horn as it stands and puts the answer in bench units and words. */
export function reportProposal(loaded: LoadedHorn, choices: ProposalChoices): ProposalReport {
  const { prefer = 'balanced', tunedBy = 'each register', a4Hz = A4_HZ } = choices;
  const plusMinus = choices.plusMinus ?? plusMinusOf(loaded);
  const heard = heardIn(choices.takes ?? []);
  const fronts = frontPlusMinus(loaded);
  const playing = {
    a4: a4Hz,
    ...(choices.neighbours === undefined ? {} : { neighbours: choices.neighbours }),
  };
  const options: ProposalOptions = {
    ...playing,
    tunedBy,
    heard,
    plusMinus: fronts,
    locked: new Set(choices.locked ?? []),
    most: new Map([...(choices.mostMm ?? [])].map(([pad, mm]) => [pad, mm * MM])),
    weights: weightsOf(prefer, heard.size > 0, choices.weights),
  };
  const proposal = proposeSetup(loaded.horn, loaded.setup, choices.air, options);
  const budgets = proposalBudgets(loaded.horn, loaded.setup, proposal, choices.air, {
    ...playing,
    plusMinus,
  });
  const keys = keysOf(loaded, proposal, fronts);
  const shortList = shortListOf(keys, proposal);
  const { spread } = proposal;
  const change = spread.proposed - spread.found;
  return {
    horn: loaded.documents.horn.name,
    setup: loaded.documents.setup.name,
    a4Hz,
    prefer,
    tunedBy,
    pitchFrom: heard.size > 0 ? 'playing' : 'model',
    answer: headline(keys, shortList),
    keys,
    shortList,
    notes: proposal.notes.map(({ fingering, weight, found, proposed, shortList: few }) => ({
      fingering: fingering.id,
      way: fingering.way,
      weight,
      foundCents: found.cents,
      proposedCents: proposed.cents,
      shortListCents: few.cents,
      foundAboutCents: found.about,
      proposedAboutCents: proposed.about,
      changeCents: proposed.cents - found.cents,
      changePlusMinusCents: budgets.notes.get(fingering.id)?.plusMinus ?? 0,
    })),
    spread: {
      foundCents: spread.found,
      proposedCents: spread.proposed,
      shortListCents: spread.shortList,
      changeCents: change,
      changePlusMinusCents: budgets.spread.plusMinus,
    },
    spreadSentence: spreadSentence(spread, budgets.spread.plusMinus, { tunedBy, isPlayed: heard.size > 0 }),
    heldApart: proposal.heldApart.map((apart) => heldApartSentence(loaded.horn, apart)),
    cautions: PROPOSAL_CAUTIONS,
  };
}

/**
 * A player repeats a note to some 5 cents where the model of a whole horn may err by 10: what was played counts that
 * much more, in squares.
 */
const PLAYED_COUNTS = 4;

function weightsOf(
  prefer: Preference,
  isPlayed: boolean,
  asked: Partial<ProposalWeights> = {},
): Partial<ProposalWeights> {
  const preferred = { ...PROPOSAL_WEIGHTS, ...PREFERENCE_WEIGHTS[prefer] };
  const pitch = isPlayed ? PLAYED_COUNTS * preferred.pitch : preferred.pitch;
  return { ...preferred, pitch, ...asked };
}

/** Cents by fingering id of the notes that were played as found. */
function heardIn(takes: readonly Take[]): Map<string, number> {
  const asFound = notesPlayed(takes.filter(({ setup }) => setup === 'as found'));
  return new Map(
    asFound.flatMap(({ fingering, cents }): [string, number][] =>
      cents === null ? [] : [[fingering, cents]],
    ),
  );
}

/** m at the front: every opening's ±, carried there from where it was read by the ratio of the heights. */
function frontPlusMinus(loaded: LoadedHorn): Map<string, number> {
  const { horn, setup } = loaded;
  const readings = plusMinusOf(loaded).keys;
  return new Map(
    [...setup.keys].map(([pad, { opening }]) => {
      const pose = ownPose(horn, setup, pad);
      const read = readings.get(pad)?.opening ?? 0;
      const carried = opening.height > 0 ? (read * pose.front) / opening.height : read;
      return [pad, carried];
    }),
  );
}

function keysOf(
  { horn }: LoadedHorn,
  proposal: Proposal,
  plusMinus: ReadonlyMap<string, number>,
): ProposedKeyReport[] {
  return proposal.keys.map((key) => {
    const hole = horn.holes.find(({ id }) => id === key.id)!;
    const off = plusMinus.get(key.id) ?? 0;
    const { reason, why } = reasonOf(horn, key, off);
    return {
      pad: key.id,
      number: hole.number,
      name: hole.name,
      foundMm: key.found / MM,
      proposedMm: key.proposed / MM,
      moveMm: (key.proposed - key.found) / MM,
      plusMinusMm: off / MM,
      enoughMm: key.enough.reached ? key.enough.front / MM : null,
      reason,
      why,
    };
  });
}

function shortListOf(keys: readonly ProposedKeyReport[], proposal: Proposal): ShortListedReport[] {
  const { keys: listed } = proposal.shortList;
  return listed.map(({ id, share, fronts }) => {
    const { pad, number, name, foundMm } = keys.find((key) => key.pad === id)!;
    const proposedMm = listed[listed.length - 1].fronts.get(id)! / MM;
    return {
      pad,
      number,
      name,
      foundMm,
      proposedMm,
      moveMm: proposedMm - foundMm,
      sharePercent: 100 * share,
      togetherMm: Object.fromEntries([...fronts].map(([each, front]) => [each, front / MM])),
    };
  });
}

const TUNED: Readonly<Record<TunedBy, string>> = {
  'each register': 'Notes stand from the mean of their register',
  'all notes': 'Notes stand from the mean of all',
  'equal temperament': 'Notes stand from equal temperament',
};

function spreadSentence(
  spread: Proposal['spread'],
  plusMinus: number,
  { tunedBy, isPlayed }: { readonly tunedBy: TunedBy; readonly isPlayed: boolean },
): string {
  const change = spread.proposed - spread.found;
  const from = `${TUNED[tunedBy]} by ${spread.found.toFixed(1)} cents ${isPlayed ? 'as played' : 'as found'}, ${spread.proposed.toFixed(1)} as proposed`;
  if (Math.abs(change) <= plusMinus) {
    return `${from}: no difference that can be shown (±${plusMinus.toFixed(1)}).`;
  }
  const way = change < 0 ? 'closer' : 'further apart';
  return `${from}: ${Math.abs(change).toFixed(1)} ± ${plusMinus.toFixed(1)} cents ${way}.`;
}
