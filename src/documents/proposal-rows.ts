import { ownPose, type Proposal, type ProposalBudgets } from '../acoustics/index.ts';
import { notesPlayed, type PlayedSetup, type Take } from './pitch-log.ts';
import { plusMinusOf } from './plus-minus.ts';
import type { ProposedKeyReport, ProposedNoteReport, ShortListedReport } from './proposal-report.ts';
import { reasonOf } from './proposal-words.ts';
import { knownSetupLength } from './sheet-edits.ts';
import type { LoadedHorn } from './to-acoustics.ts';

const MM = 1e-3;

/** A note as it was played on the horn as it stands. */
export type HeardNote = { readonly cents: number; readonly spreadCents: number | null };

/** By fingering id. */
export function heardIn(takes: readonly Take[], playedIn: PlayedSetup = 'as found'): Map<string, HeardNote> {
  const played = notesPlayed(takes.filter(({ setup }) => setup === playedIn));
  return new Map(
    played.flatMap(({ fingering, cents, spreadCents }): [string, HeardNote][] =>
      cents === null ? [] : [[fingering, { cents, spreadCents }]],
    ),
  );
}

/** m at the front: every opening's ±, carried there from where it was read by the ratio of the heights. */
export function frontPlusMinus(loaded: LoadedHorn): Map<string, number> {
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

/** A player repeats a note to some 5 cents. **Source:** from memory; what takes spread by counts where it is more. */
const PLAYED_PLUS_MINUS_CENTS = 5;

/** Every note, cents. */
export function notesOf(
  proposal: Proposal,
  budgets: ProposalBudgets,
  heard: ReadonlyMap<string, HeardNote>,
): ProposedNoteReport[] {
  return proposal.notes.map(({ fingering, weight, found, proposed, shortList: few }) => {
    const { id, way } = fingering;
    const changePlusMinusCents = budgets.notes.get(id)?.plusMinus ?? 0;
    const played = heard.get(id);
    const own = played === undefined ? null : Math.max(PLAYED_PLUS_MINUS_CENTS, played.spreadCents ?? 0);
    return {
      fingering: id,
      way,
      weight,
      foundCents: found.cents,
      foundPlusMinusCents: own ?? budgets.found.get(id)?.plusMinus ?? null,
      proposedCents: proposed.cents,
      proposedPlusMinusCents:
        own === null ? (budgets.proposed.get(id)?.plusMinus ?? null) : Math.hypot(own, changePlusMinusCents),
      shortListCents: few.cents,
      foundAboutCents: found.about,
      proposedAboutCents: proposed.about,
      changeCents: proposed.cents - found.cents,
      changePlusMinusCents,
    };
  });
}

/** mm: a key proposed nearer than this to enough stands there. */
const AT_ENOUGH_MM = 0.05;

/** Pads whose opening was read on this horn, not taken from an example of its kind. */
export function padsRead({ documents }: LoadedHorn): Set<string> {
  const setup = { ...documents.setup, keys: [...documents.setup.keys] };
  const isRead = (pad: string): boolean => knownSetupLength(setup, pad, 'openingMm')?.origin === 'measured';
  return new Set(setup.keys.map(({ pad }) => pad).filter(isRead));
}

/** Every key, mm at the front. */
export function keysOf(
  loaded: LoadedHorn,
  proposal: Proposal,
  plusMinus: ReadonlyMap<string, number>,
  enoughBudgets: ProposalBudgets['enough'],
): ProposedKeyReport[] {
  const { horn } = loaded;
  const read = padsRead(loaded);
  return proposal.keys.map((key) => {
    const hole = horn.holes.find(({ id }) => id === key.id)!;
    const off = plusMinus.get(key.id) ?? 0;
    const enoughMm = key.enough.reached ? key.enough.front / MM : null;
    const sure = enoughBudgets.get(key.id)?.plusMinus ?? null;
    const enoughPlusMinusMm = sure === null ? null : sure / MM;
    const { reason, why } = reasonOf(horn, key, off, enoughPlusMinusMm);
    const isThere = enoughMm !== null && Math.abs(key.proposed / MM - enoughMm) < AT_ENOUGH_MM;
    return {
      pad: key.id,
      number: hole.number,
      name: hole.name,
      isRead: read.has(key.id),
      foundMm: key.found / MM,
      proposedMm: key.proposed / MM,
      moveMm: (key.proposed - key.found) / MM,
      foundPlusMinusMm: off / MM,
      proposedPlusMinusMm: isThere ? enoughPlusMinusMm : null,
      enoughMm,
      enoughPlusMinusMm,
      reason,
      why,
    };
  });
}

/** The short list, the key that brings most first. */
export function shortListOf(keys: readonly ProposedKeyReport[], proposal: Proposal): ShortListedReport[] {
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
