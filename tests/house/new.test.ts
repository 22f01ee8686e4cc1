import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { layOut } from './lay-out.ts';

const ROOT = new URL('../../', import.meta.url).pathname;
const read = (path: string): string => readFileSync(join(ROOT, path), 'utf8');

/** What a command came to, its words if it failed. */
function run(folder: string, command: string, env: Record<string, string> = {}): string {
  const { status, stdout, stderr } = spawnSync('bash', ['-c', command], {
    cwd: folder,
    encoding: 'utf8',
    env: { ...process.env, ...env },
  });
  return status === 0 ? 'passed' : `${stdout}\n${stderr}`;
}

describe('what is laid out', () => {
  let copy: string;
  const laidOut = [
    ...layOut('view', 'bench-clock', read).keys(),
    ...layOut('hole-model', 'two-plates', read).keys(),
  ];

  beforeAll(() => {
    copy = mkdtempSync(join(tmpdir(), 'ventwright-new-'));
    const parts = ['src', 'tests', 'datasets', 'notes', 'package.json', 'tsconfig.json', 'index.html'];
    parts.push(
      'vite.config.ts',
      'vitest.config.ts',
      'eslint.config.js',
      '.prettierrc.json',
      '.prettierignore',
    );
    for (const part of parts) cpSync(join(ROOT, part), join(copy, part), { recursive: true });
    symlinkSync(join(ROOT, 'node_modules'), join(copy, 'node_modules'));
  });

  afterAll(() => rmSync(copy, { recursive: true }));

  it('passes types, lint, layout and its own tests', () => {
    const env = { VENTWRIGHT_ROOT: copy };
    expect(run(ROOT, 'npx tsx tests/house/new.ts view bench-clock', env)).toBe('passed');
    expect(run(ROOT, 'npx tsx tests/house/new.ts hole-model two-plates', env)).toBe('passed');
    expect(run(copy, 'npx tsc -p src/acoustics && npx tsc -p .')).toBe('passed');
    expect(run(copy, `npx eslint ${laidOut.join(' ')}`)).toBe('passed');
    expect(run(copy, `npx prettier --check ${laidOut.join(' ')}`)).toBe('passed');
    expect(
      run(copy, 'npx vitest run tests/contracts/pad-model.test.ts tests/ui/bench-clock-view.model.test.ts'),
    ).toBe('passed');
    expect(readFileSync(join(copy, 'src/ui/views/workbench/views.ts'), 'utf8')).toContain(
      'vw-bench-clock-view',
    );
  }, 240_000);
});

describe('a name that will not do', () => {
  it.each([
    ['view', 'Low Notes', /small letters/],
    ['view', 'sheet', /taken by a view/],
    ['hole-model', 'hinged-flow', /taken by a model/],
    ['horn', 'kazoo', /expected one of view, hole-model/],
  ])('%s %s is refused in a sentence', (kind, name, sentence) => {
    expect(() => layOut(kind, name, read)).toThrow(sentence);
  });
});
