import { expect, it } from 'vitest';
import { serveBuiltSite } from '../browser/built-site.ts';
import { torture } from './torture.ts';

const KILLS = 5;

it(`finds every acknowledged edit again after the browser was killed in the middle of writes, ${KILLS} times`, async () => {
  const site = await serveBuiltSite();
  try {
    const report = await torture({ rounds: KILLS, seed: 7, url: site.url });
    expect(report.lost).toEqual([]);
    expect(report.kills).toBe(KILLS);
    // A stream nobody acknowledged, or that never was interrupted, would prove nothing.
    expect(report.acknowledged).toBeGreaterThan(0);
    expect(report.midway).toBeGreaterThan(0);
    expect(report.found).toBeGreaterThanOrEqual(report.acknowledged);
  } finally {
    await site.close();
  }
}, 300_000);
