import { dayInHand, documentsInHand, hornInHand, type BenchState } from '../state/bench-state.ts';
import type { Store } from '../state/bench-store.ts';
import { answerAsked, answerTaken, differ, type AskedAnswer } from '../state/asked-answer.ts';
import { notesAndPadsOn, placesOn } from '../state/leak-places.ts';
import { faultOn, followInHand } from '../state/leaks-state.ts';
import { standingDocuments, toldOver } from '../state/stands-now.ts';
import type { PhysicsClient, PhysicsListeners } from './physics-client.ts';
import type { Outcome } from './physics-protocol.ts';

/** What is done with answers about links and leaks. */
export function regulationListeners(
  store: Store<BenchState>,
): Pick<PhysicsListeners, 'follow' | 'leak' | 'leak map' | 'height or leak'> {
  const taken = <T>(id: number, known: AskedAnswer<T>, outcome: Outcome<T>): AskedAnswer<T> =>
    answerTaken(known, id, store.get().hornId, outcome);
  return {
    follow: (id, outcome) =>
      store.update((s) => ({ ...s, links: { ...s.links, followed: taken(id, s.links.followed, outcome) } })),
    leak: (id, outcome) =>
      store.update((s) => ({ ...s, leaks: { ...s.leaks, answer: taken(id, s.leaks.answer, outcome) } })),
    'height or leak': (id, outcome) =>
      store.update((s) => ({ ...s, leaks: { ...s.leaks, beside: taken(id, s.leaks.beside, outcome) } })),
    'leak map': (id, outcome) =>
      store.update((s) => ({ ...s, leaks: { ...s.leaks, map: taken(id, s.leaks.map, outcome) } })),
  };
}

/** Follows the store with what links and leaks do, each while its view is shown. */
export function makeRegulationFollower(
  store: Store<BenchState>,
  client: PhysicsClient,
): { follow(): void; forget(): void } {
  let followed: readonly unknown[] = [];
  let leaking: readonly unknown[] = [];
  let mapped: readonly unknown[] = [];
  let compared: readonly unknown[] = [];

  const asFound = (state: BenchState) => {
    const { airC, a4Hz } = dayInHand(state);
    return { documents: documentsInHand(state), airC, a4Hz };
  };
  /** A leak is looked for on the horn as it stands. */
  const asItStands = (state: BenchState) => {
    return { ...asFound(state), documents: standingDocuments(hornInHand(state).contents) };
  };

  const followLinks = (state: BenchState): void => {
    const { documents, airC, a4Hz } = asFound(state);
    const { told, over } = toldOver(hornInHand(state).contents);
    // Where nothing is proposed or set nothing follows.
    if (told === 'as found') return;
    const wanted = [documents, over, airC, a4Hz];
    if (!differ(wanted, followed)) return;
    followed = wanted;
    const id = client.askRegulation({ kind: 'follow', documents, proposed: over, airC, a4Hz });
    store.update((s) => ({
      ...s,
      links: { ...s.links, followed: answerAsked(s.links.followed, id) },
    }));
  };

  const followLeak = (state: BenchState): void => {
    const { documents, airC, a4Hz } = asItStands(state);
    const { fault, limit } = state.leaks;
    const wanted = [documents, fault, limit, airC, a4Hz];
    if (!differ(wanted, leaking)) return;
    leaking = wanted;
    const on = faultOn(fault, placesOn(documents.horn));
    const id = client.askRegulation({ kind: 'leak', documents, fault: on, limit, airC, a4Hz });
    store.update((s) => ({ ...s, leaks: { ...s.leaks, answer: answerAsked(s.leaks.answer, id) } }));
  };

  const followBeside = (state: BenchState): void => {
    const { documents, airC, a4Hz } = asItStands(state);
    const { fingeringId } = state.leaks.limit;
    const wanted = [documents, fingeringId, airC, a4Hz];
    if (!differ(wanted, compared)) return;
    compared = wanted;
    const id = client.askRegulation({ kind: 'height or leak', documents, fingeringId, airC, a4Hz });
    store.update((s) => ({ ...s, leaks: { ...s.leaks, beside: answerAsked(s.leaks.beside, id) } }));
  };

  /** Whichever view is shown: the note asked about is known when the page of leaks is. */
  const followNote = (state: BenchState): void => {
    const { hornId, noteId } = state;
    const now = { hornId, noteId, keyId: hornInHand(state).keyId };
    const noteUnder = (key: string) => notesAndPadsOn(documentsInHand(state).horn).noteUnder.get(key);
    const next = followInHand(state.leaks, now, noteUnder);
    if (next !== state.leaks) store.update((s) => ({ ...s, leaks: next }));
  };

  const followMap = (state: BenchState): void => {
    const { documents, airC, a4Hz } = asItStands(state);
    const { mapGapMm } = state.leaks;
    const wanted = [documents, mapGapMm, airC, a4Hz];
    if (!differ(wanted, mapped)) return;
    mapped = wanted;
    const id = client.askRegulation({ kind: 'leak map', documents, gapMm: mapGapMm, airC, a4Hz });
    store.update((s) => ({ ...s, leaks: { ...s.leaks, map: answerAsked(s.leaks.map, id) } }));
  };

  return {
    forget: () => {
      followed = [];
      leaking = [];
      mapped = [];
      compared = [];
    },
    follow: () => {
      followNote(store.get());
      const { view } = store.get();
      if (view === 'links') followLinks(store.get());
      if (view !== 'leaks') return;
      followLeak(store.get());
      followBeside(store.get());
      followMap(store.get());
    },
  };
}
