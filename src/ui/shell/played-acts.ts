import type { PlayedSetup } from '../../documents/pitch-log.ts';
import { hornInHand, type BenchState } from '../state/bench-state.ts';
import type { Store } from '../state/bench-store.ts';
import { playedIn, type PlayedState } from '../state/played-state.ts';
import { readFile, saveFile } from './files.ts';
import type { Listening } from './microphone.ts';
import type { Reading } from './pads-acts.ts';

type Log = typeof import('../state/played-log.ts');

/** Everything a person can do with played notes. */
export interface PlayedActs {
  setSetup(setup: PlayedSetup): void;
  /** The fingering that is played whatever is heard; null names what is heard. */
  setFingering(fingeringId: string | null): void;
  typeCents(fingeringId: string, text: string): Promise<void>;
  setAside(index: number, leftOut: boolean): Promise<void>;
  remove(index: number): Promise<void>;
  /** The take was played with another fingering. */
  reassign(index: number, fingeringId: string): Promise<void>;
  /** Lays the takes of a fingering open; null shuts them. */
  open(fingeringId: string | null): void;
  listen(): Promise<void>;
  stop(): void;
  fromRecording(file: File): Promise<void>;
  fromTable(file: File): Promise<void>;
  saveTable(): Promise<void>;
  /** Forgets what was told of the last file. */
  dismiss(): void;
}

const visitNow = (state: BenchState): string => hornInHand(state).contents.visit.id;
const playedNow = (state: BenchState): PlayedState => playedIn(state.played, visitNow(state));

export function makePlayedActs(store: Store<BenchState>, reading: Reading): PlayedActs {
  const change = (part: Partial<PlayedState>): void =>
    store.update((state) => ({ ...state, played: { ...playedNow(state), ...part } }));
  // What reads, names and hears notes comes in when a hand first needs it.
  const withLog = (work: (log: Log) => void | Promise<void>): Promise<void> =>
    reading(
      () => import('../state/played-log.ts'),
      (log) => void work(log),
    );
  /** counts who is asked to listen: one asked for later wins */
  let asked = 0;
  let listening: Listening | null = null;

  const stop = (): void => {
    asked += 1;
    listening?.stop();
    listening = null;
    if (playedNow(store.get()).listening === 'off') return;
    change({ listening: 'off' });
    void withLog(({ heardEnough }) => store.update(heardEnough));
  };
  const told = (problem: string): void => {
    stop();
    change({ problem, logged: null });
  };

  const listen = async ({ heardMoment }: Log): Promise<void> => {
    stop();
    const mine = asked;
    change({ listening: 'asking', problem: null, issues: [], logged: null });
    try {
      const microphone = await import('./microphone.ts');
      const begun = await microphone.listen({
        onMoment: (moment) => {
          if (asked !== mine) return;
          // Another visit is in hand: what sounds now is none of its notes.
          if (playedNow(store.get()).listening === 'off') stop();
          else store.update((state) => heardMoment(state, moment));
        },
        onGone: (sentence) => {
          if (asked === mine) told(sentence);
        },
      });
      if (typeof begun === 'string') {
        if (asked === mine) told(begun);
      } else if (asked === mine) {
        listening = begun;
        change({ listening: 'on' });
      } else begun.stop();
    } catch (error) {
      if (asked === mine) told(`What listens could not be fetched: ${String(error)}`);
    }
  };

  const fromRecording = async (file: File, { takeRecording }: Log): Promise<void> => {
    try {
      const visit = visitNow(store.get());
      change({ problem: null, issues: [], logged: `Listening to “${file.name}” …` });
      const { hearRecording, readRecording } = await import('./recording.ts');
      const recording = await readRecording(file);
      if (typeof recording === 'string') return told(recording);
      const notes = await hearRecording(recording);
      if (visitNow(store.get()) !== visit) {
        return told(
          `Another horn was taken in hand while “${file.name}” was listened to: nothing was logged.`,
        );
      }
      store.update((state) => takeRecording(state, notes, file.name));
    } catch (error) {
      told(`What reads recordings could not be fetched: ${String(error)}`);
    }
  };

  return {
    setSetup: (setup) => change({ setup }),
    setFingering: (fingering) => change({ fingering }),
    typeCents: (fingeringId, text) =>
      withLog(({ typeCents }) => store.update((state) => typeCents(state, fingeringId, text))),
    setAside: (index, leftOut) =>
      withLog(({ setAside }) => store.update((state) => setAside(state, index, leftOut))),
    remove: (index) => withLog(({ removeTake }) => store.update((state) => removeTake(state, index))),
    reassign: (index, fingeringId) =>
      withLog(({ reassign }) => store.update((state) => reassign(state, index, fingeringId))),
    open: (open) => change({ open }),
    listen: () => withLog(listen),
    stop,
    fromRecording: (file) => withLog((log) => fromRecording(file, log)),
    fromTable: (file) =>
      withLog(async ({ readTable }) => {
        const read = await readFile(file);
        if (!read.ok) return change({ problem: `${file.name}: ${read.message}` });
        store.update((state) => readTable(state, read.text, file.name));
      }),
    saveTable: () =>
      withLog(({ tableOf }) => {
        const { contents } = hornInHand(store.get());
        const { name } = contents.horn.document;
        saveFile(`${name}, played ${contents.visit.document.date}.csv`, [tableOf(contents)], 'text/csv');
      }),
    dismiss: () => change({ problem: null, issues: [], logged: null }),
  };
}
