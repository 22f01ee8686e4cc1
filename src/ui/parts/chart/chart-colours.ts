/** Colours the figure takes from the page. */
export interface ChartColours {
  readonly ink: string;
  readonly soft: string;
  readonly edge: string;
  readonly grid: string;
  readonly found: string;
  readonly enough: string;
  readonly proposed: string;
  readonly band: string;
  readonly sheet: string;
  /** what lies under the line of a share */
  readonly filled: string;
  /** one more horn, where three are not enough */
  readonly other: string;
  /** lines that carry their names */
  readonly lines: readonly string[];
}

/** A line's own colour. */
export const tintOf = ({ tint }: { readonly tint: number }, { lines }: ChartColours): string =>
  lines[tint % lines.length];
