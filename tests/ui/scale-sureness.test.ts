import { describe, expect, it } from 'vitest';
import { compareSetups, makeAirColumn, scaleBudgets, withOpening } from '../../src/acoustics/index.ts';
import { plusMinusOf } from '../../src/documents/plus-minus.ts';
import { loadHorn } from '../../src/documents/to-acoustics.ts';
import {
  makeScaleState,
  scaleArrived,
  surenessArrived,
  surenessFrom,
} from '../../src/ui/state/scale-state.ts';
import type { ScaleSureness } from '../../src/ui/state/scale-sureness.ts';
import type { ProposedOpenings } from '../../src/ui/state/scale-report.ts';
import { ALTO, scale, scaleSureness } from './demo.ts';

/** Cents: two roads to one resonance end within the search's own tolerance. */
const SAME_CENTS = 1e-5;

const read = loadHorn(ALTO);
if (!read.ok) throw new Error('the demo alto loads');
const { horn, setup } = read.value;
const air = makeAirColumn({ mouthpieceC: ALTO.setup.airC ?? 26.85 });
const plusMinus = plusMinusOf(read.value);
const surenessOf = scaleSureness();
const { report } = scale();
const count = report.fingerings.length;
const at = (id: string): number => report.fingerings.findIndex((f) => f.id === id);

function whole(proposedMm: ProposedOpenings): ScaleSureness {
  const found: ScaleSureness['found'][number][] = [];
  const moves: ScaleSureness['moves'][number][] = [];
  while (found.length < count) {
    const slice = surenessOf(proposedMm, found.length);
    found.push(...slice.found);
    moves.push(...slice.moves);
  }
  return { found, moves };
}

describe('how sure the whole horn is', () => {
  const proposedMm = { e: 9.5, f: 6.5 };
  const sure = whole(proposedMm);

  it('is as sure of every pitch as the core, in one go or in slices', () => {
    const core = scaleBudgets(horn, setup, air, { plusMinus });
    expect(sure.found).toHaveLength(count);
    for (const [id, { cents }] of core) {
      expect(Math.abs(sure.found[at(id)]!.budget.plusMinus - cents.plusMinus)).toBeLessThan(SAME_CENTS);
    }
  });

  it('is as sure of every move as the core is of two setups side by side', () => {
    const keys = new Map(plusMinus.keys);
    for (const id of ['e', 'f']) keys.set(id, { ...keys.get(id), opening: 0 });
    const proposed = ['e', 'f'].reduce(
      (now, id) => withOpening(now, id, { at: 'front', height: proposedMm[id as 'e' | 'f'] / 1000 }),
      setup,
    );
    const { notes } = compareSetups([
      { label: 'as found', horn, setup, air, plusMinus },
      { label: 'proposed', horn, setup: proposed, air, plusMinus: { ...plusMinus, keys } },
    ]);
    const moved = notes.filter(({ fingering }) => sure.moves[at(fingering.id)] !== null);
    expect(moved.length).toBeGreaterThan(10);
    for (const { fingering, differences } of moved) {
      const core = differences[0]!.cents.plusMinus;
      expect(Math.abs(sure.moves[at(fingering.id)]!.budget.plusMinus - core)).toBeLessThan(SAME_CENTS);
    }
  });

  it('is far surer of moves than of pitches, since the whole horn’s model errs alike in both', () => {
    const f4 = at('F4');
    expect(sure.found[f4]!.budget.wholeHorn).toBe(10);
    expect(sure.moves[f4]!.budget.wholeHorn).toBe(0);
    expect(sure.moves[f4]!.budget.plusMinus).toBeLessThan(1);
  });

  it('says nothing of moves where nothing is proposed, and of notes that nothing moves', () => {
    expect(whole({}).moves.every((move) => move === null)).toBe(true);
    expect(sure.moves[at('Bb3')]).toBeNull();
  });
});

describe('sureness as it arrives', () => {
  it('is shown once all of it is there, and asks on from where it stands', () => {
    const fresh = scaleArrived(makeScaleState('alto'), 1, 'alto', report);
    expect(surenessFrom(makeScaleState('alto'))).toBeNull();
    let now = fresh;
    for (let from = surenessFrom(now); from !== null; from = surenessFrom(now)) {
      expect(now.sure).toBeNull();
      now = surenessArrived(now, surenessOf({}, from));
    }
    expect(now.sure!.found).toHaveLength(count);
    expect(now.sure!.of).toBe(now.rested);
    expect(now.surer).toBeNull();
  });

  it('drops a slice that does not continue it', () => {
    const fresh = scaleArrived(makeScaleState('alto'), 1, 'alto', report);
    expect(surenessArrived(fresh, surenessOf({}, 6))).toBe(fresh);
  });
});
