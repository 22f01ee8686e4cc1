import { findLeast, HUBER, SQUARES, type Misfits } from '../numerics/damped-least-squares.ts';
import { inverseOfSquares } from '../numerics/linear-system.ts';
import { medianOf, robustScatter, unexplainedScatter, type Residual } from '../numerics/scatter.ts';
import type { LoggedNote } from './calibration.ts';
import type { NoteThere, PlayedThere } from './calibration-playing.ts';
import { EXPECTED, slopeOf, type Unknown } from './calibration-unknowns.ts';
import { MODEL_CENTS } from './uncertainty.ts';

/** With fewer notes to spare than this, scatter cannot be told; ours. */
export const LEAST_FREEDOM = 5;

/** Misfits with the playing they come from. */
interface Weighed extends Misfits {
  readonly playing: PlayedThere;
}

/** A place, the notes there, and how they scatter. */
interface Place {
  readonly x: readonly number[];
  readonly misfits: Weighed;
  readonly scatter: number;
}

/** Where a stage ended. */
interface Stage extends Place {
  /** whether the notes told the scatter, or they are too few */
  readonly from: 'notes' | 'model';
  readonly problem: string | null;
}

/** Scatter and fit depend on each other; so many turns at most. */
const MOST_TURNS = 40;

/** How exactly a stage is finished: cents of scatter that stay, and the last step as a share of what was known. */
const ROBUST = { loss: HUBER, scatterOf: robustScatter, agreed: 1e-2, lastStep: 1e-4 } as const;
const LEAST = { loss: SQUARES, scatterOf: unexplainedScatter, agreed: 1e-9, lastStep: 1e-10 } as const;
type Manner = typeof ROBUST | typeof LEAST;

/** The stages of a fit, over the notes by their place in the log. */
export function makeFit(
  log: readonly LoggedNote[],
  fitting: readonly Unknown[],
  play: (x: readonly number[]) => PlayedThere,
) {
  /** null where one of the notes is not heard there */
  const weighed = (playing: PlayedThere, of: readonly number[], scatter: number): Weighed | null => {
    const heard = of.map((i) => playing.notes[i]);
    if (heard.includes(null)) return null;
    const sigma = of.map((i) => Math.hypot(log[i].plusMinus, scatter));
    const slopes = (heard as NoteThere[]).map(({ answers }, n) =>
      fitting.map(
        (unknown) => (-slopeOf(unknown, answers, log[of[n]].fingering.note) * EXPECTED[unknown]) / sigma[n],
      ),
    );
    const values = (heard as NoteThere[]).map(({ cents }, n) => (log[of[n]].cents - cents) / sigma[n]);
    return { values, slopes, playing };
  };
  const residuals = ({ playing }: Weighed, of: readonly number[]): Residual[] =>
    of.map((i) => ({ value: log[i].cents - playing.notes[i]!.cents, plusMinus: log[i].plusMinus }));
  const covariance = ({ slopes }: Misfits): number[][] =>
    fitting.length === 0
      ? []
      : inverseOfSquares([...slopes, ...fitting.map((_, j) => fitting.map((__, k) => (k === j ? 1 : 0)))]);
  /** notes less what was fitted to them; what was known beforehand needs no notes */
  const freedom = (misfits: Weighed): number =>
    misfits.values.length - fitting.length + covariance(misfits).reduce((sum, row, j) => sum + row[j], 0);

  /** The notes as they go along their slopes from one place: playing without the horn. */
  const alongSlopes =
    (from: readonly number[], playing: PlayedThere) =>
    (x: readonly number[]): PlayedThere => ({
      notes: playing.notes.map((note, i) => {
        if (note === null) return null;
        const moved = fitting.map(
          (unknown, j) =>
            slopeOf(unknown, note.answers, log[i].fingering.note) * EXPECTED[unknown] * (x[j] - from[j]),
        );
        return { ...note, cents: moved.reduce((sum, by) => sum + by, note.cents) };
      }),
    });

  /** One fit, and the scatter that it leaves. */
  const turn = (
    of: readonly number[],
    { x, misfits, scatter }: Place,
    playing: typeof play,
    { loss, scatterOf, lastStep }: Manner,
  ): Stage => {
    const at = (there: readonly number[]): Weighed | null => weighed(playing(there), of, scatter);
    const least = findLeast(at, { x, misfits }, { loss, lastStep });
    const free = freedom(least.misfits);
    const from = free < LEAST_FREEDOM ? 'model' : 'notes';
    const next = from === 'model' ? MODEL_CENTS : scatterOf(residuals(least.misfits, of), free);
    const { playing: there } = least.misfits;
    return { ...least, misfits: weighed(there, of, next)!, scatter: next, from };
  };

  /** Fit and scatter in turns until both stay. */
  const inTurns = (of: readonly number[], start: Place, playing: typeof play, manner: Manner): Stage => {
    let stage = turn(of, start, playing, manner);
    for (let i = 1, before = start.scatter; i < MOST_TURNS; i++) {
      if (Math.abs(stage.scatter - before) <= manner.agreed) break;
      before = stage.scatter;
      stage = turn(of, stage, playing, manner);
    }
    return stage;
  };

  /** As the notes go along their slopes first, which needs no playing; then as they are. */
  const stageFrom = (of: readonly number[], start: Place, manner: Manner): Stage => {
    const misfits = weighed(start.misfits.playing, of, start.scatter)!;
    const begin = { ...start, misfits };
    const guess = inTurns(of, begin, alongSlopes(start.x, misfits.playing), manner);
    const there = weighed(play(guess.x), of, guess.scatter);
    const isBetter =
      there !== null && sumOfSquares(there) <= sumOfSquares(weighed(misfits.playing, of, guess.scatter)!);
    return inTurns(of, isBetter ? { ...guess, misfits: there } : begin, play, manner);
  };

  const robust = (of: readonly number[], misfits: Weighed): Stage => {
    const raw = residuals(misfits, of);
    // An offset that all share is what is to be fitted, not scatter.
    const middle = raw.length === 0 ? 0 : medianOf(raw.map(({ value }) => value));
    const centred = raw.map((r) => ({ ...r, value: r.value - middle }));
    const free = raw.length - fitting.length;
    const scatter = free < LEAST_FREEDOM ? MODEL_CENTS : robustScatter(centred, free);
    return stageFrom(of, { x: fitting.map(() => 0), misfits, scatter }, ROBUST);
  };
  const least = (of: readonly number[], start: Stage): Stage => stageFrom(of, start, LEAST);

  return { weighed, residuals, covariance, robust, least };
}

const sumOfSquares = ({ values }: Misfits): number => values.reduce((sum, u) => sum + u * u, 0);
