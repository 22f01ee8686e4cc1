import type { ProposedOpenings } from '../state/scale-report.ts';
import type {
  Answers,
  CalibrationRequest,
  CompareRequest,
  Outcome,
  PhysicsKind,
  PhysicsReply,
  PhysicsRequest,
  PlayerSheetRequest,
  ProposalRequest,
  RegulationRequest,
  ScaleRequest,
  SheetRequest,
  StudyRequest,
} from './physics-protocol.ts';

/** What the client needs of a worker: the real one, or a stand-in. */
export interface WorkerPort {
  postMessage(request: PhysicsRequest): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<PhysicsReply>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

/** A request as it is asked; the client numbers it. */
type WithoutId<R> = R extends { readonly id: number } ? Omit<R, 'id'> : never;

/** Of several of a kind that wait only the latest is run. */
export interface PhysicsClient {
  /** Asks for a study. */
  askStudy(request: Omit<StudyRequest, 'kind' | 'id'>): number;
  /** Asks something about links or leaks. */
  askRegulation(request: WithoutId<RegulationRequest>): number;
  /** Asks for one opening of the latest study, and how sure its changes are. */
  askPoint(frontMm: number, sure: boolean): void;
  /** Asks for the whole horn as found. */
  askScale(request: Omit<ScaleRequest, 'kind' | 'id'>): number;
  /** Asks for the horn of the latest scale with some openings otherwise. */
  askMove(proposedMm: ProposedOpenings): number;
  /** Asks what loud playing does to one note of the latest scale. */
  askLoud(proposedMm: ProposedOpenings, fingeringId: string): void;
  /** Asks how sure a few notes of the latest scale are, from one on. */
  askSure(proposedMm: ProposedOpenings, from: number): number;
  /** Asks for the sheet. */
  askSheet(request: Omit<SheetRequest, 'kind' | 'id'>): number;
  /** Asks where more height on one key of the latest sheet stops helping. */
  askEnough(pad: string): void;
  /** Asks what the notes played say of the horn. */
  askCalibration(request: Omit<CalibrationRequest, 'kind' | 'id'>): number;
  /** Asks what differs between setups side by side. */
  askCompare(request: Omit<CompareRequest, 'kind' | 'id'>): number;
  /** Asks for every number of the player’s sheet. */
  askPlayerSheet(question: PlayerSheetRequest['question']): number;
  /** Asks for the proposed setup. */
  askProposal(request: Omit<ProposalRequest, 'kind' | 'id'>): number;
}

type Listener<Kind extends PhysicsKind> = (id: number, outcome: Outcome<Answers[Kind]>) => void;

/** Called with the answer and the number of its request; for a point that of its study. */
export interface PhysicsListeners {
  readonly study: Listener<'study'>;
  readonly follow: Listener<'follow'>;
  readonly leak: Listener<'leak'>;
  readonly 'leak map': Listener<'leak map'>;
  readonly 'height or leak': Listener<'height or leak'>;
  readonly 'pad change': Listener<'pad change'>;
  readonly point: Listener<'point'>;
  readonly scale: Listener<'scale'>;
  readonly move: Listener<'move'>;
  readonly loud: Listener<'loud'>;
  readonly sure: Listener<'sure'>;
  readonly sheet: Listener<'sheet'>;
  /** called with the pad asked about */
  readonly enough: (pad: string, outcome: Outcome<Answers['enough']>) => void;
  readonly calibration: Listener<'calibration'>;
  readonly compare: Listener<'compare'>;
  readonly 'player sheet': Listener<'player sheet'>;
  readonly proposal: Listener<'proposal'>;
  /** the worker itself broke */
  readonly broken: (message: string) => void;
}

/** What is run first when several wait: what a hand is waiting for before what can come later. */
const ORDER: readonly PhysicsKind[] = [
  'sheet',
  'scale',
  'move',
  'compare',
  'player sheet',
  'proposal',
  'calibration',
  'study',
  'point',
  'follow',
  'leak',
  'height or leak',
  'leak map',
  'pad change',
  'loud',
  'sure',
  'enough',
];

/**
 * Talks to the physics worker: one request runs at a time, and what waits behind it is only the latest of its
 * kind, so a fast hand never builds a queue.
 */
export function makePhysicsClient(makeWorker: () => WorkerPort, listeners: PhysicsListeners): PhysicsClient {
  let worker = start();
  let count = 0;
  let running: PhysicsRequest | null = null;
  const waiting = new Map<PhysicsKind, PhysicsRequest>();
  let latestStudy = 0;
  const latestRegulation = new Map<PhysicsKind, number>();
  let latestScale = 0;
  let latestSheet = 0;
  let latestCalibration = 0;
  let latestCompare = 0;
  let latestPlayerSheet = 0;
  let latestProposal = 0;

  function start(): WorkerPort {
    const port = makeWorker();
    port.onmessage = ({ data }) => finish(data);
    port.onerror = (event) => {
      port.terminate();
      running = null;
      // What the broken worker had prepared is gone.
      for (const kind of ['point', 'move', 'loud', 'sure', 'enough'] as const) waiting.delete(kind);
      worker = start();
      listeners.broken(event.message || 'the page could not start its physics worker');
      next();
    };
    return port;
  }

  function finish(reply: PhysicsReply): void {
    const asked = running;
    running = null;
    tell(reply, asked);
    next();
  }

  /** Answers about a key or a horn that was left meanwhile are dropped. */
  function tell(reply: PhysicsReply, asked: PhysicsRequest | null): void {
    switch (reply.kind) {
      case 'follow':
        if (reply.id === latestRegulation.get(reply.kind)) listeners.follow(reply.id, reply.outcome);
        break;
      case 'leak':
        if (reply.id === latestRegulation.get(reply.kind)) listeners.leak(reply.id, reply.outcome);
        break;
      case 'leak map':
        if (reply.id === latestRegulation.get(reply.kind)) listeners[reply.kind](reply.id, reply.outcome);
        break;
      case 'height or leak':
        if (reply.id === latestRegulation.get(reply.kind)) listeners[reply.kind](reply.id, reply.outcome);
        break;
      case 'pad change':
        if (reply.id === latestRegulation.get(reply.kind)) listeners[reply.kind](reply.id, reply.outcome);
        break;
      case 'study':
        if (reply.id === latestStudy) listeners.study(reply.id, reply.outcome);
        break;
      case 'scale':
        if (reply.id === latestScale) listeners.scale(reply.id, reply.outcome);
        break;
      case 'calibration':
        if (reply.id === latestCalibration) listeners.calibration(reply.id, reply.outcome);
        break;
      case 'compare':
        if (reply.id === latestCompare) listeners.compare(reply.id, reply.outcome);
        break;
      case 'player sheet':
        if (reply.id === latestPlayerSheet) listeners[reply.kind](reply.id, reply.outcome);
        break;
      case 'proposal':
        if (reply.id === latestProposal) listeners.proposal(reply.id, reply.outcome);
        break;
      case 'point':
        if (asked?.kind === 'point' && asked.studyId === latestStudy) {
          listeners.point(asked.studyId, reply.outcome);
        }
        break;
      case 'move':
        if (asked?.kind === 'move' && asked.scaleId === latestScale) listeners.move(reply.id, reply.outcome);
        break;
      case 'loud':
        if (asked?.kind === 'loud' && asked.scaleId === latestScale) listeners.loud(reply.id, reply.outcome);
        break;
      case 'sure':
        if (asked?.kind === 'sure' && asked.scaleId === latestScale) listeners.sure(reply.id, reply.outcome);
        break;
      case 'sheet':
        if (reply.id === latestSheet) listeners.sheet(reply.id, reply.outcome);
        break;
      case 'enough':
        if (asked?.kind === 'enough' && asked.sheetId === latestSheet) {
          listeners.enough(asked.pad, reply.outcome);
        }
    }
  }

  function next(): void {
    if (running !== null) return;
    const kind = ORDER.find((k) => waiting.has(k));
    if (kind === undefined) return;
    running = waiting.get(kind)!;
    waiting.delete(kind);
    worker.postMessage(running);
  }

  function ask(request: PhysicsRequest): number {
    waiting.set(request.kind, request);
    next();
    return request.id;
  }

  return {
    askStudy(request) {
      latestStudy = ++count;
      // A point of the key before says nothing about this one.
      waiting.delete('point');
      return ask({ ...request, kind: 'study', id: latestStudy });
    },
    askRegulation(request) {
      const id = ++count;
      latestRegulation.set(request.kind, id);
      return ask({ ...request, id });
    },
    askCalibration(request) {
      latestCalibration = ++count;
      return ask({ ...request, kind: 'calibration', id: latestCalibration });
    },
    askCompare(request) {
      latestCompare = ++count;
      return ask({ ...request, kind: 'compare', id: latestCompare });
    },
    askPlayerSheet(question) {
      latestPlayerSheet = ++count;
      return ask({ question, kind: 'player sheet', id: latestPlayerSheet });
    },
    askProposal(request) {
      latestProposal = ++count;
      return ask({ ...request, kind: 'proposal', id: latestProposal });
    },
    askPoint(frontMm, sure) {
      ask({ kind: 'point', id: ++count, studyId: latestStudy, frontMm, sure });
    },
    askScale(request) {
      latestScale = ++count;
      waiting.delete('move');
      waiting.delete('loud');
      waiting.delete('sure');
      return ask({ ...request, kind: 'scale', id: latestScale });
    },
    askMove(proposedMm) {
      return ask({ kind: 'move', id: ++count, scaleId: latestScale, proposedMm });
    },
    askLoud(proposedMm, fingeringId) {
      ask({ kind: 'loud', id: ++count, scaleId: latestScale, proposedMm, fingeringId });
    },
    askSure(proposedMm, from) {
      return ask({ kind: 'sure', id: ++count, scaleId: latestScale, proposedMm, from });
    },
    askSheet(request) {
      latestSheet = ++count;
      waiting.delete('enough');
      return ask({ ...request, kind: 'sheet', id: latestSheet });
    },
    askEnough(pad) {
      ask({ kind: 'enough', id: ++count, sheetId: latestSheet, pad });
    },
  };
}
