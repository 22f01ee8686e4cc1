import { describe, expect, it } from 'vitest';
import { makePhysicsClient, type WorkerPort } from '../../src/ui/shell/physics-client.ts';
import type { PhysicsReply, PhysicsRequest } from '../../src/ui/shell/physics-protocol.ts';
import { ALTO, report } from './demo.ts';

const e = report('e');
const asking = { document: ALTO, keyId: 'e', airC: 27, a4Hz: 440 };

/** A worker that answers only when told to. */
function patientWorker(): WorkerPort & {
  readonly requests: PhysicsRequest[];
  answer(): void;
  ended: boolean;
} {
  const requests: PhysicsRequest[] = [];
  return {
    requests,
    ended: false,
    onmessage: null,
    onerror: null,
    postMessage(request) {
      requests.push(request);
    },
    terminate() {
      this.ended = true;
    },
    answer() {
      const { kind, id } = requests[requests.length - 1];
      const data: PhysicsReply =
        kind === 'study'
          ? { kind, id, outcome: { ok: true, value: e } }
          : { kind, id, outcome: { ok: true, value: e.present } };
      this.onmessage!({ data } as MessageEvent<PhysicsReply>);
    },
  };
}

function bench(): {
  workers: ReturnType<typeof patientWorker>[];
  told: string[];
  client: ReturnType<typeof makePhysicsClient>;
} {
  const workers: ReturnType<typeof patientWorker>[] = [];
  const told: string[] = [];
  const client = makePhysicsClient(
    () => {
      const worker = patientWorker();
      workers.push(worker);
      return worker;
    },
    {
      study: (id) => told.push(`study ${id}`),
      point: (studyId) => told.push(`point of ${studyId}`),
      broken: (message) => told.push(`broken: ${message}`),
    },
  );
  return { workers, told, client };
}

describe('the physics client', () => {
  it('runs one request at a time and of those waiting only the latest', () => {
    const { workers, told, client } = bench();
    const first = client.askStudy(asking);
    client.askStudy(asking);
    const last = client.askStudy(asking);
    expect(workers[0].requests.map((r) => r.id)).toEqual([first]);
    workers[0].answer();
    expect(workers[0].requests.map((r) => r.id)).toEqual([first, last]);
    workers[0].answer();
    expect(told).toEqual([`study ${last}`]);
  });

  it('asks a fast slider’s last opening only', () => {
    const { workers, client } = bench();
    client.askStudy(asking);
    workers[0].answer();
    for (const mm of [5, 6, 7, 8]) client.askPoint(mm);
    workers[0].answer();
    const points = workers[0].requests.filter((r) => r.kind === 'point').map((r) => r.frontMm);
    expect(points).toEqual([5, 8]);
  });

  it('drops openings asked of the key before', () => {
    const { workers, told, client } = bench();
    client.askStudy(asking);
    workers[0].answer();
    client.askPoint(5);
    client.askPoint(6);
    const next = client.askStudy(asking);
    workers[0].answer();
    workers[0].answer();
    expect(workers[0].requests.map((r) => r.kind)).toEqual(['study', 'point', 'study']);
    expect(told).toEqual(['study 1', `study ${next}`]);
  });

  it('starts a broken worker again, says so, and goes on with the next request', () => {
    const { workers, told, client } = bench();
    client.askStudy(asking);
    workers[0].onerror!({ message: 'out of memory' } as ErrorEvent);
    expect(told).toEqual(['broken: out of memory']);
    expect(workers[0].ended).toBe(true);
    const next = client.askStudy(asking);
    workers[1].answer();
    expect(told).toContain(`study ${next}`);
  });
});
