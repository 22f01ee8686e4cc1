import type { PointReport, StudyReport } from '../state/study-report.ts';
import type { Outcome, PhysicsReply, PhysicsRequest, StudyRequest } from './physics-protocol.ts';

/** What the client needs of a worker: the real one, or a stand-in. */
export interface WorkerPort {
  postMessage(request: PhysicsRequest): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<PhysicsReply>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

export interface PhysicsClient {
  /** Asks for a study; of several waiting only the latest is run. */
  askStudy(request: Omit<StudyRequest, 'kind' | 'id'>): number;
  /** Asks for one opening of the latest study; of several waiting only the latest is run. */
  askPoint(frontMm: number): void;
}

export interface PhysicsListeners {
  readonly study: (id: number, outcome: Outcome<StudyReport>) => void;
  readonly point: (studyId: number, outcome: Outcome<PointReport>) => void;
  /** the worker itself broke */
  readonly broken: (message: string) => void;
}

/**
 * Talks to the physics worker: one request runs at a time, and what waits behind it is only the latest of its
 * kind, so a fast hand never builds a queue.
 */
export function makePhysicsClient(makeWorker: () => WorkerPort, listeners: PhysicsListeners): PhysicsClient {
  let worker = start();
  let count = 0;
  let running: PhysicsRequest | null = null;
  let waitingStudy: StudyRequest | null = null;
  let waitingFrontMm: number | null = null;
  let latestStudy = 0;

  function start(): WorkerPort {
    const port = makeWorker();
    port.onmessage = ({ data }) => finish(data);
    port.onerror = (event) => {
      port.terminate();
      running = null;
      waitingFrontMm = null;
      worker = start();
      listeners.broken(event.message || 'the page could not start its physics worker');
      next();
    };
    return port;
  }

  function finish(reply: PhysicsReply): void {
    const asked = running;
    running = null;
    if (reply.kind === 'study') {
      if (reply.id === latestStudy) listeners.study(reply.id, reply.outcome);
    } else if (asked?.kind === 'point' && asked.studyId === latestStudy) {
      listeners.point(asked.studyId, reply.outcome);
    }
    next();
  }

  function next(): void {
    if (running !== null) return;
    if (waitingStudy !== null) {
      running = waitingStudy;
      waitingStudy = null;
    } else if (waitingFrontMm !== null) {
      running = { kind: 'point', id: ++count, studyId: latestStudy, frontMm: waitingFrontMm };
      waitingFrontMm = null;
    }
    if (running !== null) worker.postMessage(running);
  }

  return {
    askStudy(request) {
      latestStudy = ++count;
      waitingStudy = { ...request, kind: 'study', id: latestStudy };
      // A point of the key before says nothing about this one.
      waitingFrontMm = null;
      next();
      return latestStudy;
    },
    askPoint(frontMm) {
      waitingFrontMm = frontMm;
      next();
    },
  };
}
