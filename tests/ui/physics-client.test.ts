import { describe, expect, it } from 'vitest';
import { makePhysicsClient, type WorkerPort } from '../../src/ui/shell/physics-client.ts';
import type { Answers, PhysicsReply, PhysicsRequest } from '../../src/ui/shell/physics-protocol.ts';
import { compareColumns } from '../../src/ui/state/side-by-side-answer.ts';
import { findEnough, makeSheetReport } from '../../src/ui/state/sheet-numbers.ts';
import { playLoud } from '../../src/ui/state/whole-scale.ts';
import { playerSheetFacts } from './demo-player-sheet.ts';
import { answerProposal } from './demo-proposal.ts';
import { answerRegulation } from './demo-regulation.ts';
import { calibrationOf } from './demo-calibration.ts';
import { ALTO, onTheBench, preparedSheet, report, scale, sheetDocuments } from './demo.ts';

const e = report('e');
const asking = { documents: ALTO, keyId: 'e', airC: 27, a4Hz: 440 };

const whole = scale();
const contents = onTheBench('alto');
const sheet = preparedSheet(contents);
const VALUES: { readonly [Kind in keyof Answers]: Answers[Kind] } = {
  study: e,
  point: { ...e.present, changeCents: null },
  scale: whole.report,
  move: whole.report.found,
  loud: playLoud(whole.prepared, {}, 'F4'),
  sure: { from: 0, found: [], moves: [] },
  sheet: makeSheetReport(sheet),
  enough: findEnough(sheet, 'e'),
  compare: compareColumns([], 27, 440),
  'player sheet': playerSheetFacts(contents),
  proposal: answerProposal(),
  calibration: calibrationOf([]),
  follow: answerRegulation('follow'),
  leak: answerRegulation('leak'),
  'leak map': answerRegulation('leak map'),
  'height or leak': answerRegulation('height or leak'),
  'pad change': answerRegulation('pad change'),
};

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
      const data = { kind, id, outcome: { ok: true, value: VALUES[kind] }, tookMs: 1 } as PhysicsReply;
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
      scale: (id) => told.push(`scale ${id}`),
      move: (id) => told.push(`move ${id}`),
      loud: (id) => told.push(`loud ${id}`),
      sure: (id) => told.push(`sure ${id}`),
      sheet: (id) => told.push(`sheet ${id}`),
      enough: (pad) => told.push(`enough ${pad}`),
      compare: (id) => told.push(`compare ${id}`),
      'player sheet': (id) => told.push(`player sheet ${id}`),
      proposal: (id) => told.push(`proposal ${id}`),
      calibration: (id) => told.push(`calibration ${id}`),
      follow: (id) => told.push(`follow ${id}`),
      leak: (id) => told.push(`leak ${id}`),
      'leak map': (id) => told.push(`leak map ${id}`),
      'height or leak': (id) => told.push(`height or leak ${id}`),
      'pad change': (id) => told.push(`pad change ${id}`),
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
    for (const mm of [5, 6, 7, 8]) client.askPoint(mm, false);
    workers[0].answer();
    const points = workers[0].requests.filter((r) => r.kind === 'point').map((r) => r.frontMm);
    expect(points).toEqual([5, 8]);
  });

  it('drops openings asked of the key before', () => {
    const { workers, told, client } = bench();
    client.askStudy(asking);
    workers[0].answer();
    client.askPoint(5, false);
    client.askPoint(6, false);
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

  it('lets the whole horn go before a study, and loud playing last', () => {
    const { workers, client } = bench();
    client.askStudy(asking);
    client.askLoud({}, 'F4');
    client.askStudy(asking);
    client.askScale(asking);
    client.askMove({ e: 9 });
    client.askLoud({ e: 9 }, 'F4');
    for (let i = 0; i < 5; i++) workers[0].answer();
    expect(workers[0].requests.map((r) => r.kind)).toEqual(['study', 'scale', 'move', 'study', 'loud']);
  });

  it('asks a fast hand’s last move only, and drops moves of the horn before', () => {
    const { workers, told, client } = bench();
    client.askScale(asking);
    workers[0].answer();
    for (const mm of [5, 6, 7]) client.askMove({ e: mm });
    workers[0].answer();
    const moves = workers[0].requests.filter((r) => r.kind === 'move');
    expect(moves.map((r) => r.proposedMm.e)).toEqual([5, 7]);
    client.askScale(asking);
    workers[0].answer();
    workers[0].answer();
    expect(told.filter((t) => t.startsWith('move'))).toHaveLength(1);
    expect(told.at(-1)).toMatch(/^scale/);
  });

  it('asks where height stops helping one key after another, and drops answers of the sheet before', () => {
    const { workers, told, client } = bench();
    const asking = { documents: sheetDocuments(contents), airC: 27, a4Hz: 440 };
    client.askSheet(asking);
    workers[0].answer();
    client.askEnough('e');
    workers[0].answer();
    client.askEnough('g');
    client.askSheet(asking);
    workers[0].answer();
    workers[0].answer();
    expect(told.map((t) => t.replace(/\d+/, ''))).toEqual(['sheet ', 'enough e', 'sheet ']);
  });

  it('drops a comparison that was asked anew meanwhile', () => {
    const { workers, told, client } = bench();
    const columns = [ALTO, ALTO];
    client.askCompare({ columns, bench: ALTO, airC: 27, a4Hz: 440 });
    const second = client.askCompare({ columns, bench: ALTO, airC: 24, a4Hz: 440 });
    workers[0].answer();
    workers[0].answer();
    expect(told).toEqual([`compare ${second}`]);
  });
});
