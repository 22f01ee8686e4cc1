import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished, vi } from 'vitest';
import { runProgram } from '../../src/command/program.ts';

interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** A run of the program as a person starts it, with what comes on standard input. */
export function runAsStarted(args: readonly string[], input = ''): Ran {
  const { status, stdout, stderr } = spawnSync('npm', ['run', '--silent', 'ventwright', '--', ...args], {
    input,
    encoding: 'utf8',
    maxBuffer: 1 << 26,
  });
  return { code: status, out: stdout, err: stderr };
}

/** What the program prints for these words, in this process; `input` stands in a file where the words say `-`. */
export function run(args: readonly string[], input?: string): Ran {
  // Paths are from here, wherever the tests were started.
  vi.stubEnv('INIT_CWD', process.cwd());
  return runProgram(input === undefined ? args : args.map((word) => (word === '-' ? inFile(input) : word)));
}

function inFile(text: string): string {
  const folder = mkdtempSync(join(tmpdir(), 'ventwright-'));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  const path = join(folder, 'input.json');
  writeFileSync(path, text);
  return path;
}
