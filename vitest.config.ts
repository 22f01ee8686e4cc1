import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    testTimeout: 60_000,
    hookTimeout: 120_000,
    // A busy machine may be slow to show what a test waits for.
    expect: { poll: { timeout: 10_000 } },
    reporters: ['default', './tests/house/tally-reporter.ts'],
  },
});
