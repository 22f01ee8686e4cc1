import {
  proposalBudgets,
  PROPOSAL_WEIGHTS,
  proposeSetup,
  type AbsoluteParts,
  type AirColumn,
  type ProposalOptions,
  type PlusMinus,
  type ProposalWeights,
  type TunedBy,
} from '../acoustics/index.ts';
import type { PlayedSetup, Take } from './pitch-log.ts';
import { plusMinusOf } from './plus-minus.ts';
import type { Preference } from './proposal-choices.ts';
import { spreadSentence } from './proposal-pitch-words.ts';
import { frontPlusMinus, heardIn, keysOf, notesOf, padsRead, shortListOf } from './proposal-rows.ts';
import { headline, heldApartSentence, type ProposalReason } from './proposal-words.ts';
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
  /** of the notes played; those in another setup than the one it starts from are left out */
  readonly takes?: readonly Take[];
  /** default as found */
  readonly playedIn?: PlayedSetup;
  /** default that of every reading */
  readonly plusMinus?: PlusMinus;
  /** what else an absolute pitch may be off by; default uncalibrated */
  readonly absolute?: AbsoluteParts;
}

/** One key of the proposal, mm at the front. */
export interface ProposedKeyReport {
  readonly pad: string;
  readonly number: number;
  readonly name: string;
  /** whether its opening was read on this horn; else it is an example’s */
  readonly isRead: boolean;
  /** as it stands before anything proposed is done */
  readonly foundMm: number;
  readonly proposedMm: number;
  readonly moveMm: number;
  /** of that reading */
  readonly foundPlusMinusMm: number;
  /** how sure the place is, which is meant and not read: that of enough where it stands there, else null */
  readonly proposedPlusMinusMm: number | null;
  /** where more height stops helping; null where that is nowhere within reach */
  readonly enoughMm: number | null;
  /** by the readings and the pad model; null where it is not known */
  readonly enoughPlusMinusMm: number | null;
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
  /** of that pitch by itself: of the playing where it was played, else of the whole horn's model too */
  readonly foundPlusMinusCents: number | null;
  readonly proposedCents: number;
  readonly proposedPlusMinusCents: number | null;
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
  const heard = heardIn(choices.takes ?? [], choices.playedIn);
  const fronts = frontPlusMinus(loaded);
  const read = padsRead(loaded);
  const playing = {
    a4: a4Hz,
    ...(choices.neighbours === undefined ? {} : { neighbours: choices.neighbours }),
  };
  const options: ProposalOptions = {
    ...playing,
    tunedBy,
    heard: new Map([...heard].map(([id, { cents }]) => [id, cents])),
    plusMinus: fronts,
    locked: new Set(choices.locked ?? []),
    most: new Map([...(choices.mostMm ?? [])].map(([pad, mm]) => [pad, mm * MM])),
    weights: weightsOf(prefer, heard.size > 0, choices.weights),
    // What nobody read never leads: only where nothing was read is the list of the example's keys.
    ...(read.size === 0 ? {} : { shortListAmong: read }),
  };
  const proposal = proposeSetup(loaded.horn, loaded.setup, choices.air, options);
  const budgets = proposalBudgets(loaded.horn, loaded.setup, proposal, choices.air, {
    ...playing,
    plusMinus,
    ...(choices.absolute === undefined ? {} : { absolute: choices.absolute }),
  });
  const keys = keysOf(loaded, proposal, fronts, budgets.enough);
  const shortList = shortListOf(keys, proposal);
  const notes = notesOf(proposal, budgets, heard);
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
    notes,
    spread: {
      foundCents: spread.found,
      proposedCents: spread.proposed,
      shortListCents: spread.shortList,
      changeCents: change,
      changePlusMinusCents: budgets.spread.plusMinus,
    },
    spreadSentence: spreadSentence(spread, budgets.spread.plusMinus, notes, {
      tunedBy,
      isPlayed: heard.size > 0,
    }),
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
