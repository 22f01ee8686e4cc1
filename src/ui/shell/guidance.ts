import { saidOf, withSaid, type DayStepName, type Said } from '../../documents/day-steps.ts';
import { hornInHand } from '../state/bench-state.ts';
import { withHorn } from '../state/horns-on-bench.ts';
import { makeStore, type Store } from '../state/bench-store.ts';
import type { StepGoal } from '../state/day-path-facts.ts';
import type { GuidanceState, PathFold } from '../state/guidance-state.ts';
import { stepped } from '../state/horn-on-bench.ts';
import { chooseColumns } from '../state/side-by-side-state.ts';
import { STORY, STORY_HORN } from '../state/story-cards.ts';
import type { ViewName } from '../state/view-names.ts';
import type { Bench } from './bench.ts';
import { isFirstVisit, rememberedFold, rememberFold, rememberStory } from './remembered-guidance.ts';

/** Everything that guides a person round the bench, as calls. */
export interface Guidance {
  readonly store: Store<GuidanceState>;
  fold(fold: PathFold): void;
  /** Says a step of the day is done or not needed, or takes that back: a step of the horn’s history. */
  say(step: DayStepName, said: Said | null): void;
  /** The horn in hand goes into a file. */
  filed(): void;
  /** Shows where a step is worked on, and goes to the field that asks for a hand first. */
  go(goal: StepGoal): void;
  /** Puts how the horn was left on a day before beside how it came today. */
  compareWithLast(visitId: string): Promise<void>;
  /** Shows a card of the story, and the view it speaks of; null leaves the story. */
  turnTo(card: number | null): Promise<void>;
  /** Learns whether the browser may clear its library. */
  askStanding(): Promise<void>;
}

const known = new WeakMap<Bench, Guidance>();

/** The guidance of a bench: one, whichever view asks for it. */
export function guidanceOf(bench: Bench): Guidance {
  const made = known.get(bench) ?? makeGuidance(bench);
  known.set(bench, made);
  return made;
}

function makeGuidance(bench: Bench): Guidance {
  const store = makeStore<GuidanceState>({
    fold: rememberedFold(),
    card: isFirstVisit() ? 0 : null,
    mayBeCleared: null,
  });
  const set = (part: Partial<GuidanceState>): void => store.update((state) => ({ ...state, ...part }));
  if (store.get().card !== null) rememberStory();
  let turns = 0;

  /** Goes to a view, and waits until the bench has followed. */
  const showView = (view: ViewName): Promise<void> =>
    new Promise((done) => {
      const isThere = (): boolean => bench.store.get().view === view;
      if (isThere()) return done();
      const stop = bench.store.subscribe(() => {
        if (!isThere()) return;
        stop();
        done();
      });
      location.hash = view;
    });

  const say: Guidance['say'] = (step, said) =>
    bench.store.update((state) =>
      withHorn(state, (horn) => {
        const { visit } = horn.contents;
        const document = withSaid(visit.document, step, said);
        return stepped(horn, { ...horn.contents, visit: { ...visit, document } }, null);
      }),
    );

  /** A step is done by what was done at the bench; a horn that nothing was done to is left as it is. */
  const settle = (step: DayStepName): void => {
    const { keeping } = bench.store.get();
    const { document } = hornInHand(bench.store.get()).contents.visit;
    if (keeping.kind !== 'untouched' && saidOf(document, step) !== 'done') say(step, 'done');
  };

  // The steps are listed for the view they were asked for at.
  let { view } = bench.store.get();
  bench.store.subscribe(() => {
    const now = bench.store.get().view;
    if (now !== view && store.get().fold === 'open') set({ fold: 'line' });
    view = now;
  });
  addEventListener('afterprint', () => {
    if (bench.store.get().view === 'player-sheet') settle('player’s sheet');
  });

  return {
    store,
    fold(fold) {
      set({ fold });
      // Unfolded is for now; a line or nothing is for good.
      rememberFold(fold === 'away' ? 'away' : 'line');
    },
    say,
    filed: () => settle('shop’s file'),
    go({ view, keyId, field }) {
      if (keyId !== null) bench.chooseKey(keyId);
      if (field?.kind === 'cell') bench.setColumns('openings');
      location.hash = view;
      if (field !== null) void focusWhenThere(field);
    },
    async compareWithLast(visitId) {
      const { hornId } = bench.store.get();
      try {
        const { records } = await (await bench.library()).read([hornId]);
        const last = records.visits.find(({ id }) => id === visitId);
        if (last === undefined) return;
        const { asFound } = hornInHand(bench.store.get()).contents;
        const chosen = [last.document.asSet, asFound.id].map((setupId) => ({ hornId, setupId }));
        bench.sideBySide((side) => chooseColumns(side, chosen));
        location.hash = 'side-by-side';
      } catch (error) {
        bench.tell(`The last visit could not be read: ${String(error)}`);
      }
    },
    async turnTo(card) {
      const turn = ++turns;
      const place = card === null ? null : (STORY[card]?.place ?? null);
      if (place !== null) {
        if (bench.store.get().hornId !== STORY_HORN) await bench.takeHorn(STORY_HORN);
        if (place.keyId !== null) bench.chooseKey(place.keyId);
        await showView(place.view);
      }
      // Turned again meanwhile: the last turn counts.
      if (turn === turns) set({ card });
    },
    async askStanding() {
      try {
        set({ mayBeCleared: (await (await bench.library()).standing()) !== 'kept' });
      } catch {
        // The library itself tells when it cannot be opened; here only a caution is left out.
        set({ mayBeCleared: null });
      }
    },
  };
}

/** As long as a view may take to come, ms. */
const PATIENCE_MS = 4000;

/** Goes to a field once its view stands; a head that is folded is unfolded. */
async function focusWhenThere(field: NonNullable<StepGoal['field']>): Promise<void> {
  const selector =
    field.kind === 'head'
      ? `#sh-${CSS.escape(field.id)}`
      : `input[data-pad="${CSS.escape(field.pad)}"][data-cell="${CSS.escape(field.id)}"]`;
  const until = performance.now() + PATIENCE_MS;
  while (performance.now() < until) {
    const found = document.querySelector<HTMLElement>(selector);
    if (found !== null) {
      const head = found.closest('details');
      if (head !== null) head.open = true;
      found.focus();
      found.scrollIntoView({ block: 'center' });
      return;
    }
    await new Promise((done) => requestAnimationFrame(done));
  }
}
