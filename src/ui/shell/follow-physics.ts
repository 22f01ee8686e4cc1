import type { CalibrationSource } from '../../documents/calibrated.ts';
import {
  dayInHand,
  documentsInHand,
  hornInHand,
  isScaleCurrent,
  proposedInHand,
  type BenchState,
} from '../state/bench-state.ts';
import { isCurrent, proposedMmOf, studyArrived, studyAsked, studyFailed } from '../state/study-in-hand.ts';
import type { SurePointReport } from '../state/study-report.ts';
import { differ } from '../state/asked-answer.ts';
import type { Store } from '../state/bench-store.ts';
import type { ProposedOpenings, ScaleNumbers } from '../state/scale-report.ts';
import {
  handRested,
  loudArrived,
  moveArrived,
  moveFailed,
  scaleArrived,
  scaleAsked,
  scaleFailed,
  surenessArrived,
  surenessFrom,
} from '../state/scale-state.ts';
import { calibrationInUse } from '../state/calibration-source.ts';
import { sideArrived, sideFailed } from '../state/side-by-side-state.ts';
import type { EnoughReport } from '../state/sheet-report.ts';
import {
  enoughArrived,
  enoughParts,
  isSheetCurrent,
  nextUnknown,
  sheetArrived,
  sheetAsked,
  sheetFailed,
} from '../state/sheet-state.ts';
import type { ViewName } from '../state/view-names.ts';
import { calibrationListeners, makeCalibrationFollower } from './follow-calibration.ts';
import { makePadsFollower, padsListeners } from './follow-pads.ts';
import { makePlayerSheetFollower, playerSheetListeners } from './follow-player-sheet.ts';
import { makeProposalFollower, proposalListeners } from './follow-proposal.ts';
import { makeRegulationFollower, regulationListeners } from './follow-regulation.ts';
import { makeSideFollower } from './follow-side-by-side.ts';
import { makePhysicsClient, type PhysicsClient, type WorkerPort } from './physics-client.ts';

/** A hand that has not moved for so long rests, ms. */
const REST_MS = 150;

/** Follows the store with one kind of question. */
interface Follower {
  follow(): void;
  /** What the worker had prepared is gone; it is asked for again at a person's next act, not in a circle. */
  forget(): void;
}

/** Joins the store to the physics: what an answer on screen depends on changes, that answer is asked for. */
export function followPhysics(store: Store<BenchState>, makeWorker: () => WorkerPort): void {
  const client: PhysicsClient = makePhysicsClient(makeWorker, {
    study: (id, outcome) =>
      store.update((state) =>
        outcome.ok ? studyArrived(state, id, outcome.value) : studyFailed(state, id, outcome.message),
      ),
    point: (_id, outcome) => {
      if (!outcome.ok) return;
      store.update((state) => ({ ...state, point: outcome.value }));
      key.moved(outcome.value);
    },
    scale: (id, outcome) =>
      store.update((state) => ({
        ...state,
        scale: outcome.ok
          ? scaleArrived(state.scale, id, state.hornId, outcome.value)
          : scaleFailed(state.scale, id, outcome.message),
      })),
    move: (id, outcome) => {
      store.update((state) => ({
        ...state,
        scale: outcome.ok
          ? moveArrived(state.scale, outcome.value)
          : moveFailed(state.scale, outcome.message),
      }));
      scale.moved(id);
    },
    loud: (_id, outcome) => {
      if (outcome.ok) {
        store.update((state) => ({ ...state, scale: loudArrived(state.scale, outcome.value) }));
      }
    },
    sure: (id, outcome) => {
      // Where it fails the ± stay unsaid: what they are of stands all the same.
      if (outcome.ok && scale.isLatestSure(id)) {
        store.update((state) => ({ ...state, scale: surenessArrived(state.scale, outcome.value) }));
      }
    },
    sheet: (id, outcome) =>
      store.update((state) => ({
        ...state,
        sheet: outcome.ok
          ? sheetArrived(state.sheet, id, outcome.value)
          : sheetFailed(state.sheet, id, outcome.message),
      })),
    enough: (pad, outcome) => {
      sheet.answered();
      const report: EnoughReport = outcome.ok ? outcome.value : { kind: 'failed', message: outcome.message };
      store.update((state) => {
        const parts = enoughParts(hornInHand(state).contents, pad);
        return { ...state, sheet: enoughArrived(state.sheet, pad, { report, parts }) };
      });
    },
    ...regulationListeners(store),
    ...calibrationListeners(store),
    ...padsListeners(store),
    ...playerSheetListeners(store),
    ...proposalListeners(store),
    compare: (id, outcome) =>
      store.update((state) => ({
        ...state,
        sideBySide: outcome.ok
          ? sideArrived(state.sideBySide, id, outcome.value)
          : sideFailed(state.sideBySide, id, outcome.message),
      })),
    broken: (message) => {
      store.update((state) => ({
        ...state,
        alert: `The page’s physics stopped and was started again: ${message}`,
      }));
      for (const follower of followers) follower.forget();
    },
  });
  const scale = makeScaleFollower(store, client);
  const sheet = makeSheetFollower(store, client);
  const key = makeKeyFollower(store, client);
  // The scale and the sheet first: they answer what the page says biggest.
  const followers: readonly Follower[] = [
    scale,
    sheet,
    makeCalibrationFollower(store, client),
    makeSideFollower(store, client),
    key,
    makeRegulationFollower(store, client),
    makePadsFollower(store, client),
    makePlayerSheetFollower(store, client),
    makeProposalFollower(store, client),
  ];
  const follow = (): void => {
    for (const follower of followers) follower.follow();
  };
  store.subscribe(follow);
  follow();
}

/** What an answer about the horn as found depends on. */
function foundParts(state: BenchState): unknown[] {
  const { horn, setup } = documentsInHand(state);
  const { airC, a4Hz } = dayInHand(state);
  return [state.hornId, horn, setup, airC, a4Hz, calibrationInUse(hornInHand(state).contents)];
}

/** What pitches are to be worked out with, for a request; nothing where that is the horn as described. */
function calibrationOf(state: BenchState): { readonly calibration?: CalibrationSource } {
  const calibration = calibrationInUse(hornInHand(state).contents);
  return calibration === null ? {} : { calibration };
}

/** Views that show the study of the key in hand. */
const NEEDS_STUDY: readonly ViewName[] = ['key', 'scale'];

/** The study of the key in hand, each opening that a hand moves to, and how sure it is where the hand rests. */
function makeKeyFollower(
  store: Store<BenchState>,
  client: PhysicsClient,
): Follower & { moved(to: SurePointReport): void } {
  let asked: readonly unknown[] = [];
  let askedMm: number | null = null;
  let resting: ReturnType<typeof setTimeout> | undefined;
  return {
    forget: () => {
      asked = [];
    },
    moved: ({ changeCents }) => {
      clearTimeout(resting);
      const mm = askedMm;
      if (changeCents !== null || mm === null) return;
      resting = setTimeout(() => {
        if (mm === askedMm && isCurrent(store.get())) client.askPoint(mm, true);
      }, REST_MS);
    },
    follow: () => {
      const state = store.get();
      if (!NEEDS_STUDY.includes(state.view)) return;
      const { keyId } = hornInHand(state);
      const wanted = [...foundParts(state), keyId];
      if (differ(wanted, asked)) {
        asked = wanted;
        askedMm = null;
        const { airC, a4Hz } = dayInHand(state);
        const id = client.askStudy({
          documents: documentsInHand(state),
          keyId,
          airC,
          a4Hz,
          ...calibrationOf(state),
        });
        store.update((s) => studyAsked(s, id));
        return;
      }
      const { report } = state.study;
      if (state.view !== 'key' || report === null || !isCurrent(state)) return;
      const frontMm = Math.min(proposedMmOf(state, report), report.reachMm);
      if (frontMm === askedMm) return;
      askedMm = frontMm;
      client.askPoint(frontMm, false);
    },
  };
}

/** The sheet at once, then where height stops helping key by key, only where what it rests on has changed. */
function makeSheetFollower(store: Store<BenchState>, client: PhysicsClient): Follower & { answered(): void } {
  let asked: readonly unknown[] = [];
  let isAsking = false;
  return {
    forget: () => {
      asked = [];
      isAsking = false;
    },
    answered: () => {
      isAsking = false;
    },
    follow: () => {
      const state = store.get();
      if (state.view !== 'sheet') return;
      const { contents, keyId } = hornInHand(state);
      const { horn, asFound, proposed, asSet } = contents;
      const wanted = [...foundParts(state), proposed.document, asSet.document];
      if (differ(wanted, asked)) {
        asked = wanted;
        isAsking = false;
        const { airC, a4Hz } = dayInHand(state);
        const setups = { asFound: asFound.document, proposed: proposed.document, asSet: asSet.document };
        const id = client.askSheet({
          documents: { horn: horn.document, setups },
          airC,
          a4Hz,
          ...calibrationOf(state),
        });
        store.update((s) => ({ ...s, sheet: sheetAsked(s.sheet, id, s.hornId) }));
        return;
      }
      if (isAsking || !isSheetCurrent(state.sheet, state.hornId)) return;
      const pad = nextUnknown(state.sheet, contents, keyId);
      if (pad === null) return;
      isAsking = true;
      client.askEnough(pad);
    },
  };
}

function makeScaleFollower(
  store: Store<BenchState>,
  client: PhysicsClient,
): Follower & { moved(id: number): void; isLatestSure(id: number): boolean } {
  let asked: readonly unknown[] = [];
  let movedTo: ProposedOpenings = {};
  let lastMove = 0;
  let loudOf: readonly [ScaleNumbers, string] | null = null;
  let sureOf: readonly [ScaleNumbers, number] | null = null;
  let lastSure = 0;
  let resting: ReturnType<typeof setTimeout> | undefined;
  return {
    forget: () => {
      asked = [];
    },
    isLatestSure: (id) => id === lastSure,
    moved: (id) => {
      if (id !== lastMove) return;
      clearTimeout(resting);
      resting = setTimeout(
        () => store.update((state) => ({ ...state, scale: handRested(state.scale) })),
        REST_MS,
      );
    },
    follow: () => {
      const state = store.get();
      if (state.view !== 'scale') return;
      const wanted = foundParts(state);
      if (differ(wanted, asked)) {
        asked = wanted;
        movedTo = {};
        loudOf = null;
        sureOf = null;
        const { airC, a4Hz } = dayInHand(state);
        const id = client.askScale({
          documents: documentsInHand(state),
          airC,
          a4Hz,
          ...calibrationOf(state),
        });
        store.update((s) => ({ ...s, scale: scaleAsked(s.scale, id) }));
        return;
      }
      if (!isScaleCurrent(state)) return;
      const proposedMm = proposedInHand(state);
      if (proposedMm !== movedTo && !(isEmpty(proposedMm) && isEmpty(movedTo))) {
        movedTo = proposedMm;
        lastMove = client.askMove(movedTo);
        return;
      }
      const { rested, proposed } = state.scale;
      if (rested === null || rested !== proposed) return;
      if (loudOf === null || loudOf[0] !== rested || loudOf[1] !== state.noteId) {
        loudOf = [rested, state.noteId];
        client.askLoud(movedTo, state.noteId);
      }
      const from = surenessFrom(state.scale);
      if (from === null || (sureOf !== null && sureOf[0] === rested && sureOf[1] === from)) return;
      sureOf = [rested, from];
      lastSure = client.askSure(movedTo, from);
    },
  };
}

function isEmpty(openings: ProposedOpenings): boolean {
  return Object.keys(openings).length === 0;
}
