import { accepted, refused, rested, stepped } from '../state/horn-on-bench.ts';
import { hornInHand, type BenchState } from '../state/bench-state.ts';
import { withHorn } from '../state/horns-on-bench.ts';
import type { Store } from '../state/bench-store.ts';
import { withProposed } from '../state/key-lengths.ts';
import { withArms, withDrivenGap, withRatio } from '../state/link-edits.ts';
import {
  askedTextKey,
  keepLinkText,
  pickLink,
  press,
  textKey,
  type LinkEnds,
  type LinkFieldId,
  type LinksState,
} from '../state/links-state.ts';
import type { Reading } from './pads-acts.ts';

/** Everything a person can do with the links. */
export interface LinksActs {
  pick(ends: LinkEnds): void;
  /** @param pressed 0 at rest … 1 home */
  press(ends: LinkEnds, pressed: number): void;
  /** Proposes a driver's opening, mm at the front; null as found. */
  propose(pad: string, frontMm: number | null): void;
  type(ends: LinkEnds, field: LinkFieldId, text: string): Promise<void>;
  /** Shows what is in use instead of a refused text. */
  restore(ends: LinkEnds, field: LinkFieldId): void;
  /** Takes a ratio that readings gave into use. */
  useRatio(ends: LinkEnds, ratio: number): void;
  /** Takes the ratio from the arms from now on. */
  useArms(ends: LinkEnds, arms: { readonly driverArmMm: number; readonly drivenArmMm: number }): void;
  askPad(pad: string): void;
  typeAsked(pad: string, text: string): Promise<void>;
  restoreAsked(): void;
  expectTyping(): void;
}

/** A hand that has not moved for so long has ended its movement, ms. */
const MOVEMENT_MS = 600;

export function makeLinksActs(store: Store<BenchState>, reading: Reading): LinksActs {
  const change = (next: (links: LinksState) => LinksState): void =>
    store.update((state) => ({ ...state, links: next(state.links) }));
  let ending: ReturnType<typeof setTimeout> | undefined;

  const withReader = (work: (reader: typeof import('../state/read-links.ts')) => void): Promise<void> =>
    reading(() => import('../state/read-links.ts'), work);

  return {
    pick: (ends) => change((links) => pickLink(links, ends)),
    // What a hand is on stays in hand, whatever else comes to rule meanwhile.
    press: (ends, pressed) => change((links) => press(pickLink(links, ends), pressed)),
    propose: (pad, frontMm) => {
      store.update((state) =>
        withHorn({ ...state, point: null }, (horn) =>
          stepped(horn, withProposed(horn.contents, pad, frontMm), `links ${pad}`),
        ),
      );
      clearTimeout(ending);
      ending = setTimeout(() => store.update((state) => withHorn(state, rested)), MOVEMENT_MS);
    },
    type: (ends, field, text) =>
      withReader(({ readLinkField }) =>
        store.update((state) => {
          const { contents } = hornInHand(state);
          const read = readLinkField(contents, ends, field, text, state.unit);
          const typed = read.ok ? accepted(text, read.value) : refused(text, read.message);
          const kept = {
            ...state,
            links: keepLinkText(pickLink(state.links, ends), textKey(state.hornId, ends, field), typed),
          };
          if (!read.ok) return kept;
          if (field === 'drivenGap') {
            return withHorn(kept, (horn) =>
              stepped(horn, withDrivenGap(horn.contents, ends, read.value), null),
            );
          }
          if (field === 'ratio') {
            return withHorn(kept, (horn) => stepped(horn, withRatio(horn.contents, ends, read.value), null));
          }
          return kept;
        }),
      ),
    restore: (ends, field) =>
      store.update((state) => ({
        ...state,
        links: keepLinkText(state.links, textKey(state.hornId, ends, field), null),
      })),
    useRatio: (ends, ratio) =>
      store.update((state) =>
        withHorn(state, (horn) => stepped(horn, withRatio(horn.contents, ends, ratio), null)),
      ),
    useArms: (ends, arms) =>
      store.update((state) =>
        withHorn(state, (horn) => stepped(horn, withArms(horn.contents, ends, arms), null)),
      ),
    askPad: (pad) => change((links) => ({ ...links, asked: { pad, frontMm: links.asked?.frontMm ?? null } })),
    typeAsked: (pad, text) =>
      withReader(({ readAskedOpening }) =>
        store.update((state) => {
          const read = readAskedOpening(text, state.unit);
          const typed = read.ok ? accepted(text, read.value) : refused(text, read.message);
          const links = keepLinkText(state.links, askedTextKey(state.hornId), typed);
          return { ...state, links: read.ok ? { ...links, asked: { pad, frontMm: read.value } } : links };
        }),
      ),
    restoreAsked: () =>
      store.update((state) => ({
        ...state,
        links: keepLinkText(state.links, askedTextKey(state.hornId), null),
      })),
    expectTyping: () => void withReader(() => undefined),
  };
}
