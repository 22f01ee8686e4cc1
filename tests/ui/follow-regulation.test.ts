import { describe, expect, it } from 'vitest';
import { makeRegulationFollower, regulationListeners } from '../../src/ui/shell/follow-regulation.ts';
import type { PhysicsClient } from '../../src/ui/shell/physics-client.ts';
import type { RegulationRequest } from '../../src/ui/shell/physics-protocol.ts';
import { makeBenchState, type BenchState } from '../../src/ui/state/bench-state.ts';
import { chooseKey, withHorn } from '../../src/ui/state/horns-on-bench.ts';
import { makeStore } from '../../src/ui/state/bench-store.ts';
import { isWaiting } from '../../src/ui/state/asked-answer.ts';
import { stepped } from '../../src/ui/state/horn-on-bench.ts';
import { withProposed } from '../../src/ui/state/key-lengths.ts';
import { askedAbout, withGap } from '../../src/ui/state/leaks-state.ts';
import { answerRegulation } from './demo-regulation.ts';
import { onTheBench } from './demo.ts';

/** A bench at a view, and what is asked of the physics meanwhile. */
function following(view: BenchState['view']) {
  const state = makeBenchState([{ id: 'demo-alto', label: 'Demo alto' }], onTheBench('alto'));
  const store = makeStore<BenchState>({ ...state, view });
  const asked: RegulationRequest['kind'][] = [];
  const client: Pick<PhysicsClient, 'askRegulation'> = {
    askRegulation({ kind }) {
      asked.push(kind);
      return asked.length;
    },
  };
  // The follower asks nothing else of the client.
  const follower = makeRegulationFollower(store, client as PhysicsClient);
  store.subscribe(() => follower.follow());
  follower.follow();
  const propose = (mm: number): void =>
    store.update((s) => withHorn(s, (h) => stepped(h, withProposed(h.contents, 'e', mm), null)));
  return { store, asked, follower, propose };
}

/** What the page of leaks asks for when it comes. */
const ALL: readonly RegulationRequest['kind'][] = ['leak', 'height or leak', 'leak map'];

describe('what the pages of links and leaks ask of the physics', () => {
  it('is nothing while another view is shown', () => {
    const { asked, propose } = following('key');
    propose(6);
    expect(asked).toEqual([]);
  });

  it('is what follows a proposal, once for each', () => {
    const { store, asked, propose } = following('links');
    expect(asked).toEqual([]);
    propose(6);
    propose(6.5);
    store.update((s) => ({ ...s, unit: 'thou' }));
    expect(asked).toEqual(['follow', 'follow']);
  });

  it('is the leak, the comparison and the map, and the leak alone when only the leak changes', () => {
    const { store, asked } = following('leaks');
    expect(asked).toEqual(ALL);
    store.update((s) => ({ ...s, leaks: withGap(s.leaks, 0.1, null) }));
    expect(asked).toEqual([...ALL, 'leak']);
    store.update((s) => ({ ...s, leaks: { ...s.leaks, mapGapMm: 0.1 } }));
    expect(asked).toEqual([...ALL, 'leak', 'leak map']);
  });

  it('is the leak and the comparison anew for another note', () => {
    const { store, asked } = following('leaks');
    store.update((s) => ({ ...s, leaks: askedAbout(s.leaks, 'G4') }));
    expect(asked).toEqual([...ALL, 'leak', 'height or leak']);
  });

  it('is about the note under the key that was studied before, or picked on the scale since', () => {
    const { store } = following('key');
    const noteOf = (): string => store.get().leaks.limit.fingeringId;
    expect(noteOf()).toBe('F4');
    store.update((s) => chooseKey(s, 'd'));
    expect(noteOf()).toBe('E4');
    store.update((s) => ({ ...s, noteId: 'G5' }));
    expect(noteOf()).toBe('G5');
  });

  it('is asked again at the next act after the physics broke', () => {
    const { store, asked, follower } = following('leaks');
    follower.forget();
    store.update((s) => ({ ...s, unit: 'thou' }));
    expect(asked).toEqual([...ALL, ...ALL]);
  });
});

describe('an answer about leaks', () => {
  it('is current until something newer is asked, and a refusal is told', () => {
    const { store } = following('leaks');
    const listeners = regulationListeners(store);
    const waiting = (): boolean => isWaiting(store.get().leaks.answer, 'demo-alto');
    expect(waiting()).toBe(true);
    listeners.leak(store.get().leaks.answer.asked, { ok: true, value: answerRegulation('leak') });
    expect(waiting()).toBe(false);
    store.update((s) => ({ ...s, leaks: withGap(s.leaks, 0.1, null) }));
    expect(waiting()).toBe(true);
    listeners.leak(store.get().leaks.answer.asked, { ok: false, message: 'no such link' });
    expect(store.get().leaks.answer.problem).toBe('no such link');
    expect(store.get().leaks.answer.report).not.toBeNull();
  });
});
