import type { LoudChartModel } from '../../parts/chart/loud-figure.ts';

/** One level of playing, as the table behind the picture says it. */
export interface LoudRow {
  /** kPa: `0.1`, `3` */
  readonly pressure: string;
  /** `100 %`, or `cannot be followed` */
  readonly found: string;
  /** null where nothing is proposed otherwise than found */
  readonly proposed: string | null;
}

/** The numbers behind the picture of loud playing, from soft to loud. */
export function makeLoudTable({ pressuresKpa, found, proposed }: LoudChartModel): LoudRow[] {
  return pressuresKpa.map((kpa, i) => ({
    pressure: String(Number(kpa.toPrecision(2))),
    found: strengthWords(found[i]),
    proposed: proposed === null ? null : strengthWords(proposed[i]),
  }));
}

function strengthWords(percent: number | null): string {
  return percent === null ? 'cannot be followed' : `${percent.toFixed(0)} %`;
}
