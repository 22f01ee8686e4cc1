import { describe, expect, it } from 'vitest';
import { readTable, type TableRow } from '../../datasets/pad-gap/table.ts';
import { endLengthOf, publishedOpenLength, publishedParallelPad } from '../../datasets/pad-gap/plain.ts';

const table = readTable();
const of = (...kinds: string[]): TableRow[] => table.filter((row) => kinds.includes(row.kind));

/** The model at a row, with the hole radius as the unit of length. */
const modelAt = (row: TableRow, change: Partial<TableRow> = {}): number => {
  const r = { ...row, ...change };
  return endLengthOf({
    holeRadius: 1,
    rimThickness: r.rim,
    padRadius: r.pad,
    padThickness: r.thick,
    hingeDistance: r.hinge,
    hingeHeight: r.rod,
    centreHeight: r.height,
    ...(r.body < Infinity ? { bodyBelow: r.body } : {}),
  }).length;
};

const errorsOf = (rows: TableRow[]): { rms: number; worst: number } => {
  const errors = rows.map((row) => Math.abs(modelAt(row) / row.length - 1));
  return {
    rms: Math.sqrt(errors.reduce((sum, e) => sum + e * e, 0) / errors.length),
    worst: Math.max(...errors),
  };
};

/** What the model is held to on the rows it was fitted to. */
const fitTolerance = 0.01;
/** What it is held to on rows it has not seen: parallel, hinged. */
const unseenParallel = 0.015;
const unseenHinged = 0.025;
/** What it reaches on unseen rows (measured; a looser fit would be a regression). */
const reachedWorst = 0.006;
const reachedRms = 0.0015;

describe('the pad model', () => {
  it.each(['open', 'parallel', 'parallelBody', 'thin', 'hinged', 'hingedBody'])(
    'keeps to the table: %s',
    (kind) => {
      expect(errorsOf(of(kind)).worst).toBeLessThan(fitTolerance);
    },
  );

  it.each([
    ['heldParallel', unseenParallel],
    ['heldHinged', unseenHinged],
    ['heldBody', unseenHinged],
  ])('keeps to rows it has not seen: %s', (kind, tolerance) => {
    const rows = of(kind);
    const { rms, worst } = errorsOf(rows);
    expect(rows.length).toBeGreaterThanOrEqual(40);
    expect(worst).toBeLessThan(tolerance);
    expect(worst).toBeLessThan(reachedWorst);
    expect(rms).toBeLessThan(reachedRms);
  });

  it('agrees with the published fit where that holds', () => {
    const overhang = 0.1;
    const rows = of('parallel', 'heldParallel').filter(
      (r) => r.height >= 0.15 && r.pad >= 1 + r.rim + overhang,
    );
    expect(rows.length).toBeGreaterThan(100);
    // The fit's authors' error is not at hand; about a per cent, and five at the widest pads, is what we find.
    const publishedRms = 0.0125;
    const publishedWorst = 0.05;
    const misses = rows.map(
      (r) => (publishedOpenLength(r.rim) + publishedParallelPad(r.height, r.rim, r.pad)) / r.length - 1,
    );
    expect(Math.max(...misses.map(Math.abs))).toBeLessThan(publishedWorst);
    expect(Math.sqrt(misses.reduce((sum, e) => sum + e * e, 0) / misses.length)).toBeLessThan(publishedRms);
  });

  it('shows where the published fit fails: pads smaller than the rim', () => {
    const rows = of('parallel', 'heldParallel').filter((r) => r.height >= 0.15 && r.pad < 1 + r.rim - 0.05);
    const excess = rows.map(
      (r) => (publishedOpenLength(r.rim) + publishedParallelPad(r.height, r.rim, r.pad)) / r.length - 1,
    );
    expect(Math.max(...excess)).toBeGreaterThan(0.1);
  });
});

describe('the tilt in the table', () => {
  const hinged = of('hinged', 'heldHinged');
  const ratio = (row: TableRow): number => row.length / modelAt(row, { hinge: Infinity, rod: 0 });

  it('never vents better than a parallel pad of the same centre opening, for a rod at the rim or above', () => {
    const rows = hinged.filter((row) => row.rod >= 0 && row.height <= 1);
    expect(rows.length).toBeGreaterThan(200);
    // The row's own error, the model's, and the sideways slide of a pad that barely covers the hole.
    for (const row of rows) expect(ratio(row)).toBeGreaterThan(1 - row.error / row.length - 0.003);
    expect(Math.max(...rows.map(ratio))).toBeGreaterThan(1.12);
  });

  it('vents at most a little better where a rod far below the rim slides the pad aside', () => {
    for (const row of hinged) expect(ratio(row)).toBeGreaterThan(0.97);
    expect(Math.min(...hinged.map(ratio))).toBeLessThan(0.985);
  });

  it('refutes the averaging of the gap round the rim', () => {
    // The shortcut: add the admittances of parallel pads with the local openings, as if each sector were a hole of its own.
    const shortcut = (row: TableRow): number => {
      const swing = Math.asin(row.height / row.hinge);
      const open = modelAt(row, { height: Infinity });
      let admittance = 0;
      const sectors = 48;
      for (let k = 0; k < sectors; k++) {
        const height = row.height + Math.sin(swing) * Math.cos((2 * Math.PI * (k + 0.5)) / sectors);
        admittance += 1 / (modelAt(row, { height, hinge: Infinity, rod: 0 }) - open) / sectors;
      }
      return open + 1 / admittance;
    };
    const rows = hinged.filter(
      (r) =>
        Math.abs(r.rod) < 0.15 && r.hinge < 2 && r.height > 0.05 && r.height < 0.8 && r.hinge > r.pad + 0.05,
    );
    expect(rows.length).toBeGreaterThan(40);
    let promised = 0;
    for (const row of rows) {
      const parallel = modelAt(row, { hinge: Infinity, rod: 0 });
      // The flow always loses; the shortcut is always too short, and mostly promises a gain.
      expect(row.length / parallel).toBeGreaterThan(1.005);
      expect(shortcut(row) / row.length).toBeLessThan(0.975);
      if (shortcut(row) < parallel) promised++;
    }
    expect(promised / rows.length).toBeGreaterThan(0.9);
  });
});
