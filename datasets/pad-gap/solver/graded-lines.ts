/**
 * Grid lines along one axis, fine where an edge of the metal makes the flow singular and growing geometrically away from it.
 *
 * The flow round a square edge behaves like (distance)^(2/3). Elements that grow in proportion to their distance from the
 * edge give every decade of distance the same share of the error.
 * **Source:** graded hp meshes, Babuška & Guo 1986, from memory.
 */

/** A position every grid must have a line at; `edge` says a sharp metal edge lies on it. */
export interface KeyLine {
  at: number;
  edge: boolean;
}

/** How fine: `finest` element beside an edge (hole radii), `growth` ratio of neighbouring elements (> 1). */
export interface Grading {
  finest: number;
  growth: number;
}

/** Position after `amount` elements starting from a line with first element size `size`: solves dx/dn = size + rate·x. */
const grow = (size: number, rate: number, amount: number): number =>
  (size * (Math.exp(rate * amount) - 1)) / rate;

const countTo = (size: number, rate: number, distance: number): number =>
  Math.log(1 + (rate * distance) / size) / rate;

/**
 * Grid lines through all key lines.
 * @param keys key lines in any order; lines nearer than 1e-9 to each other are merged
 * @returns strictly ascending positions
 */
export const gradedLines = (keys: readonly KeyLine[], { finest, growth }: Grading): number[] => {
  const merged: KeyLine[] = [];
  for (const key of [...keys].sort((a, b) => a.at - b.at)) {
    const last = merged[merged.length - 1];
    if (last && key.at - last.at < 1e-9) last.edge ||= key.edge;
    else merged.push({ ...key });
  }
  const rate = Math.log(growth);
  const size = merged.map((key, i) => {
    if (!key.edge) return Infinity;
    const left = i > 0 ? key.at - merged[i - 1].at : Infinity;
    const right = i + 1 < merged.length ? merged[i + 1].at - key.at : Infinity;
    return Math.min(finest, 0.4 * Math.min(left, right));
  });
  // A fine line also limits its neighbours, or a thin wall would meet one huge element.
  for (let pass = 0; pass < 2; pass++) {
    for (let i = 1; i < merged.length; i++) {
      const distance = merged[i].at - merged[i - 1].at;
      size[i] = Math.min(size[i], size[i - 1] + rate * distance);
      size[i - 1] = Math.min(size[i - 1], size[i] + rate * distance);
    }
  }
  const lines = [merged[0].at];
  for (let i = 1; i < merged.length; i++) {
    const a = merged[i - 1].at;
    const c = merged[i].at;
    const span = c - a;
    // Where growth from the left meets growth from the right.
    const reach = Math.min(span, Math.max(0, (size[i] - size[i - 1] + rate * span) / (2 * rate)));
    const fromLeft = countTo(size[i - 1], rate, reach);
    const fromRight = countTo(size[i], rate, span - reach);
    const count = Math.max(1, Math.round(fromLeft + fromRight));
    const stretch = (fromLeft + fromRight) / count;
    for (let k = 1; k < count; k++) {
      const amount = k * stretch;
      lines.push(
        amount <= fromLeft
          ? a + grow(size[i - 1], rate, amount)
          : c - grow(size[i], rate, fromLeft + fromRight - amount),
      );
    }
    lines.push(c);
  }
  return lines;
};
