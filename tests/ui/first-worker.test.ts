import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { WorkerPort } from '../../src/ui/shell/physics-client.ts';

/** Workers begun so far. */
let begun: WorkerPort[] = [];

beforeEach(() => {
  begun = [];
  vi.resetModules();
  vi.stubGlobal(
    'Worker',
    class {
      onerror: WorkerPort['onerror'] = null;
      constructor() {
        begun.push(this as unknown as WorkerPort);
      }
    },
  );
});
afterEach(() => vi.unstubAllGlobals());

const load = () => import('../../src/ui/shell/first-worker.ts');

describe('the first worker', () => {
  it('is begun before it is asked for, and given once', async () => {
    const { takeWorker } = await load();
    expect(begun).toHaveLength(1);
    expect(takeWorker()).toBe(begun[0]);
    expect(takeWorker()).toBe(begun[1]);
    expect(begun).toHaveLength(2);
  });

  it('is made anew where it fell before anybody asked', async () => {
    const { takeWorker } = await load();
    begun[0].onerror?.({} as ErrorEvent);
    expect(takeWorker()).toBe(begun[1]);
  });
});
