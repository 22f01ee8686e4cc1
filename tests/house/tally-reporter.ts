import type { Reporter, TestModule } from 'vitest/node';

/** Ends a run with one plain line, `N passed, N failed`; a file that did not load counts as a failure. */
export default class TallyReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    let passed = 0;
    let failed = 0;
    for (const module of modules) {
      let inModule = 0;
      for (const test of module.children.allTests()) {
        const { state } = test.result();
        if (state === 'passed') passed++;
        if (state === 'failed') inModule++;
      }
      failed += inModule === 0 && !module.ok() ? 1 : inModule;
    }
    process.stdout.write(`\n${passed} passed, ${failed} failed\n`);
  }
}
