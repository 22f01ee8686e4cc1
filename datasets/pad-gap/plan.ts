import { openingAngle } from './solver/fan-map.ts';
import type { FlowCase } from './solver/flow.ts';

/**
 * Which cases the table holds, drawn from fixed seeds so that any row can be made again by itself.
 *
 * `open` no pad; `parallel`, `hinged` free chimney; `parallelBody`, `hingedBody` with a plane body below the rim;
 * `thin` a parallel pad nearly closed.
 * The `held…` kinds cover the whole range, half of them evenly in height, and are never used for a fit.
 */
export const kinds = [
  'open',
  'parallel',
  'parallelBody',
  'hinged',
  'hingedBody',
  'heldParallel',
  'heldHinged',
  'heldBody',
  'thin',
] as const;

export type Kind = (typeof kinds)[number];

export interface PlanRow extends FlowCase {
  kind: Kind;
}

/** How many rows of each kind. */
export const counts: Record<Kind, number> = {
  open: 140,
  parallel: 1500,
  parallelBody: 900,
  hinged: 3000,
  hingedBody: 500,
  heldParallel: 120,
  heldHinged: 240,
  heldBody: 100,
  thin: 300,
};

/** Seeded uniform numbers in 0…1: mulberry32, T. Ettinger, public domain, from memory. */
export const seededUniform = (seed: number): (() => number) => {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
};

const rounded = (x: number): number => (Number.isFinite(x) ? Number(x.toPrecision(4)) : x);

/** The back edge's height above the rim plane, or NaN where the position cannot be reached. */
const backGap = ({ hinge, rod, height, pad }: FlowCase): number => {
  const angle = openingAngle(hinge, rod, height);
  return rod * (1 - Math.cos(angle)) + (hinge - pad) * Math.sin(angle);
};

/** Draws one case; the fit's rows reach a little beyond the range so that its borders are not extrapolated. */
const draw = (kind: Kind, uniform: () => number): FlowCase => {
  const held = kind.startsWith('held');
  const margin = held ? 0 : 0.02;
  const between = (low: number, high: number): number => {
    const pad = margin * (high - low);
    return low - pad + (high - low + 2 * pad) * uniform();
  };
  const logBetween = (low: number, high: number): number => Math.exp(between(Math.log(low), Math.log(high)));
  const rim = uniform() < 0.5 ? between(0.03, 0.35) : logBetween(0.03, 0.35);
  const pad = Math.max(1.02, between(1.03, 1.5));
  const thick = between(0.1, 0.5);
  const mix = uniform();
  const height = mix < 0.45 ? logBetween(0.03, 2) : mix < 0.8 || held ? between(0.15, 0.9) : between(0.03, 2);
  const wide = held && uniform() < 0.5 ? between(0.03, 2) : height;
  const base: FlowCase = { rim, pad, thick, height: wide, hinge: Infinity, rod: 0, body: Infinity };
  if (kind === 'open') base.height = Infinity;
  if (kind === 'thin') base.height = logBetween(0.004, 0.06);
  const bodied = kind === 'parallelBody' || kind === 'hingedBody' || kind === 'heldBody';
  if (bodied || (kind === 'open' && uniform() < 0.7)) {
    const depth = 1 / between(0.125, 5.2);
    base.body = Math.max(0.19, Math.min(8, depth));
  }
  if (
    kind === 'hinged' ||
    kind === 'hingedBody' ||
    kind === 'heldHinged' ||
    (kind === 'heldBody' && uniform() < 0.6)
  ) {
    const nearest = pad + (held ? 0.03 : 0.025);
    const choice = uniform();
    base.hinge =
      choice < 0.55
        ? nearest + 2.8 * uniform() ** 1.5
        : choice < 0.8
          ? nearest + 0.25 * uniform()
          : nearest / (1e-3 + uniform());
    base.hinge = Math.max(base.hinge, nearest);
    base.rod = between(-0.5, 1);
  }
  return base;
};

/** Every row of a kind, in order. */
export const planOf = (kind: Kind): PlanRow[] => {
  const uniform = seededUniform(20260 + 7919 * kinds.indexOf(kind));
  const rows: PlanRow[] = [];
  while (rows.length < counts[kind]) {
    const d = draw(kind, uniform);
    const row: PlanRow = {
      kind,
      rim: rounded(d.rim),
      pad: rounded(d.pad),
      thick: rounded(d.thick),
      height: rounded(d.height),
      hinge: rounded(d.hinge),
      rod: rounded(d.rod),
      body: rounded(d.body),
    };
    if ((kind !== 'thin' && row.height < 0.025) || (row.hinge < Infinity && !(backGap(row) > 0))) continue;
    rows.push(row);
  }
  return rows;
};
