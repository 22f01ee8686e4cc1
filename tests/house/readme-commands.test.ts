import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const ROOT = new URL('../../', import.meta.url).pathname;

/** Every headless command line in the README's shell blocks. */
const commands = [...readFileSync(`${ROOT}README.md`, 'utf8').matchAll(/^```sh\n([\s\S]*?)^```/gm)]
  .flatMap(([, block]) => block.split('\n'))
  .filter((line) => line.includes('npm run --silent ventwright'));

describe('the README’s headless commands', () => {
  it('are there', () => {
    expect(commands.length).toBeGreaterThanOrEqual(4);
  });

  it.each(commands)('%s runs and prints', (command) => {
    const run = spawnSync('bash', ['-c', command], { cwd: ROOT, encoding: 'utf8', maxBuffer: 1 << 26 });
    expect([run.status, run.stderr]).toEqual([0, '']);
    expect(run.stdout.length).toBeGreaterThan(50);
    if (command.includes('--json') || command.includes('-- hole')) {
      expect(() => JSON.parse(run.stdout) as unknown).not.toThrow();
    }
  });
});
