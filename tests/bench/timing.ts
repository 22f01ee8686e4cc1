/** One thing timed against another; see bench.ts for what the fields mean. */
export interface Comparison {
  readonly name: string;
  readonly ours: number;
  readonly theirs: number;
  readonly ratio: number;
  readonly spread: { readonly ours: number; readonly theirs: number };
  readonly note: string;
}

/** Times a piece of work so many times, ms each. */
export function timeRuns(runs: number, work: () => void): number[] {
  return Array.from({ length: runs }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
}

export function quantile(times: readonly number[], q: number): number {
  const sorted = [...times].sort((a, b) => a - b);
  const at = q * (sorted.length - 1);
  const low = Math.floor(at);
  return sorted[low] + (at - low) * ((sorted[low + 1] ?? sorted[low]) - sorted[low]);
}

export const median = (times: readonly number[]): number => quantile(times, 0.5);
export const spreadOf = (times: readonly number[]): number =>
  (quantile(times, 0.75) - quantile(times, 0.25)) / 2 / median(times);

/** Puts two lists of times side by side. */
export function compare(
  name: string,
  note: string,
  ours: readonly number[],
  theirs: readonly number[],
): Comparison {
  return {
    name,
    ours: median(ours),
    theirs: median(theirs),
    ratio: median(theirs) / median(ours),
    spread: { ours: spreadOf(ours), theirs: spreadOf(theirs) },
    note,
  };
}
