import type { BenchContents } from '../../../../documents/bench-contents.ts';
import type { LengthUnit } from '../../../../documents/length-format.ts';
import type { TypedText } from '../../../state/horn-on-bench.ts';
import { gapWords, papersOf, papersWords } from '../gap-words.ts';

/** One seat as found: whether it leaks, and how wide. */
export interface SeatView {
  readonly id: string;
  readonly number: number;
  readonly name: string;
  readonly leaks: boolean;
  /** what its field holds */
  readonly text: string;
  readonly echo: string;
  readonly problem: string | null;
}

/** Every pad of the horn, vents too, from the bell up. */
export function makeSeats(
  { horn, visit }: BenchContents,
  typed: Readonly<Record<string, TypedText>>,
  unit: LengthUnit,
): SeatView[] {
  const leaking = new Map((visit.document.leakingSeats ?? []).map((seat) => [seat.pad, seat]));
  return [...horn.document.holes]
    .sort((a, b) => a.number - b.number)
    .map(({ id, number, name }): SeatView => {
      const seat = leaking.get(id);
      const text = typed[`leak ${id}`];
      const gapMm = seat?.gapMm;
      const problem = text?.problem ?? null;
      return {
        ...{ id, number, name },
        leaks: seat !== undefined,
        text: problem !== null ? text!.text : gapMm === undefined ? '' : papersWords(papersOf(gapMm)),
        echo: gapMm === undefined ? 'how wide is not known' : gapWords(gapMm, unit),
        problem,
      };
    });
}
