import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    // A file that waits for a browser leaves room for one that reckons.
    maxWorkers: Math.max(2, availableParallelism() - 1),
    testTimeout: 60_000,
    hookTimeout: 120_000,
    // A busy machine may be slow to show what a test waits for.
    expect: { poll: { timeout: 10_000 } },
    reporters: ['default', './tests/house/tally-reporter.ts'],
  },
});
