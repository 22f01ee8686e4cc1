import { describe, expect, it } from 'vitest';
import {
  compareSetups,
  holeOf,
  makeAirColumn,
  ownPose,
  withOpening,
  type Compared,
  type Setup,
} from '../../src/acoustics/index.ts';
import {
  reportComparison,
  type ComparedNoteReport,
  type NoteDifferenceReport,
} from '../../src/documents/comparison-report.ts';
import { comparisonSentence } from '../../src/documents/comparison-words.ts';
import { noteLabel } from '../../src/documents/note-label.ts';
import { demoHorn } from '../acoustics/demo-horns.ts';
import { LONG_ROUNDING, relative } from '../acoustics/tolerances.ts';

const { horn, setup } = demoHorn('alto');
const air = makeAirColumn();
const side = (label: string, of: Partial<Compared> = {}): Compared => ({ label, horn, setup, air, ...of });
const raised = (id: string, by: number): Setup =>
  withOpening(setup, id, { at: 'front', height: ownPose(horn, setup, id).front + by });

describe('the report of setups side by side', () => {
  const comparison = compareSetups([
    side('as found'),
    side('as set', {
      setup: raised('e', 2e-3),
      air: makeAirColumn({ mouthpieceC: 30, bellC: 25 }),
      a4: 442,
      plusMinus: { keys: new Map([['e', { opening: 2e-4 }]]) },
    }),
    side('the other horn', demoHorn('tenor')),
  ]);
  const report = reportComparison(comparison);

  it('holds the same numbers in bench units', () => {
    report.keys.forEach((key, i) => {
      const inSi = comparison.keys[i].setups[0]!;
      const shown = key.setups[0]!;
      const { holeRadius } = holeOf(horn, key.id);
      expect(relative(shown.frontMm, 1000 * inSi.pose.front)).toBeLessThan(LONG_ROUNDING);
      expect(relative(shown.backOfDiameter, inSi.pose.back / (2 * holeRadius))).toBeLessThan(LONG_ROUNDING);
      expect(relative(shown.equivalentParallelMm, 1000 * inSi.equivalentParallel)).toBeLessThan(
        LONG_ROUNDING,
      );
    });
    const e = report.keys.find(({ id }) => id === 'e')!.differences[0]!;
    expect(relative(e.frontMm, 2)).toBeLessThan(LONG_ROUNDING);
    expect(relative(e.frontPlusMinusMm, 0.2)).toBeLessThan(LONG_ROUNDING);
    report.notes.forEach((note, i) => {
      const { cents, strengthDb } = comparison.notes[i].differences[0]!;
      const shown = note.differences[0]!;
      expect([shown.cents, shown.centsPlusMinus]).toEqual([cents.value, cents.plusMinus]);
      const byHeights = 100 * (note.setups[1].heightRatio! / note.setups[0].heightRatio! - 1);
      expect(Math.abs(shown.strengthPercent! - byHeights)).toBeLessThan(LONG_ROUNDING);
      expect(shown.strengthDb).toBe(strengthDb!.value);
      expect(note.differences[1]).toMatchObject({ strengthDb: null, strengthPercent: null });
    });
  });

  it('has a sentence for every setup after the first, and goes through JSON unharmed', () => {
    expect(report.sentences).toHaveLength(2);
    expect(report.sentences[1]).toMatch(/^“the other horn” beside “as found”: /);
    expect(JSON.parse(JSON.stringify(report))).toEqual(report);
  });

  it('says where the day, the tuning or the kind of horn is another', () => {
    expect(report.warnings.some((w) => /“as set” is played in other air/.test(w))).toBe(true);
    expect(report.warnings.some((w) => /“as set” is measured from A at 442 Hz/.test(w))).toBe(true);
    expect(report.warnings.some((w) => /“the other horn” sounds at another pitch/.test(w))).toBe(true);
    const plain = reportComparison(compareSetups([side('a'), side('b', { setup: raised('e', 1e-3) })]));
    expect(plain.warnings.filter((w) => /air|measured|sounds/.test(w))).toEqual([]);
    expect(report.setups.map(({ sameHornAsFirst }) => sameHornAsFirst)).toEqual([true, true, false]);
  });
});

describe('the sentence', () => {
  const labels = [{ label: 'A' }, { label: 'B' }] as unknown as Parameters<
    typeof comparisonSentence
  >[0]['setups'];

  /** A note with this difference: cents ± cents, dB ± dB; or one that is lost. */
  const note = (
    label: string,
    numbers: readonly [number, number, number, number] | null,
  ): ComparedNoteReport => {
    const nothing = { hz: null, cents: null, centsPlusMinus: null, heightRatio: null, cutoffHz: null };
    const blank = { ...nothing, reason: null };
    const rest = { fingering: label, note: label, way: '', register: 1, setups: [blank, blank] };
    if (numbers === null) return { label, ...rest, differences: [null] };
    const [cents, centsPlusMinus, strengthDb, strengthDbPlusMinus] = numbers;
    const pitchShown = Math.abs(cents) > centsPlusMinus;
    const strengthShown = Math.abs(strengthDb) > strengthDbPlusMinus;
    const noticedBy: NoteDifferenceReport['noticedBy'] =
      (pitchShown && Math.abs(cents) >= 10) || (strengthShown && Math.abs(strengthDb) >= 1)
        ? 'the player'
        : pitchShown && Math.abs(cents) >= 7.5
          ? 'a careful player'
          : 'nobody';
    const difference = {
      cents,
      centsPlusMinus,
      budget: {
        plusMinus: centsPlusMinus,
        readings: [],
        padModel: centsPlusMinus,
        others: { count: 0, effect: 0 },
        wholeHorn: 0,
        calibration: 0,
      },
      next: [],
      strengthDb,
      strengthDbPlusMinus,
      strengthPercent: 0,
      cutoffHz: null,
      noticedBy,
      canBeShown: pitchShown || strengthShown,
    };
    return { label, ...rest, differences: [difference] };
  };
  const sentence = (...notes: readonly ComparedNoteReport[]): string =>
    comparisonSentence({ setups: labels, notes, keys: [] }, 0);

  it('names what the player would notice, with the ±, and counts the rest', () => {
    expect(sentence(note('F♯4', [12.14, 0.8, 1.31, 0.1]), note('G4', [2, 0.1, 0, 0]))).toBe(
      '“B” beside “A”: the player would notice F♯4 (12.1 ± 0.8 cents sharper and 1.3 ± 0.1 dB stronger).',
    );
    const many = ['C4', 'D4', 'E4', 'F4', 'G4'].map((label) => note(label, [-11, 1, 0, 0]));
    expect(sentence(...many)).toContain('C4 (11.0 ± 1.0 cents flatter), D4 ');
    expect(sentence(...many)).toMatch(/E4 \([^)]*\) and 2 more\.$/);
    expect(sentence(note('C4', [0, 0, -1.2, 0.5]))).toMatch(/notice C4 \(1\.2 ± 0\.5 dB weaker\)\.$/);
  });

  it('says what a careful player might notice', () => {
    expect(sentence(note('C4', [8, 1, 0.2, 0.1]))).toMatch(
      /: a careful player might notice C4 \(8\.0 ± 1\.0 cents sharper\)\.$/,
    );
  });

  it('says that nothing would be noticed only where that holds to the end of every ±', () => {
    expect(sentence(note('C4', [3, 1, 0.2, 0.1]), note('D4', [0, 0, 0, 0]))).toMatch(
      /: the player would notice nothing; most apart is C4, 3\.0 ± 1\.0 cents sharper\.$/,
    );
    expect(sentence(note('C4', [0, 0, 0, 0]))).toMatch(
      /: the player would notice nothing: they play alike\.$/,
    );
    expect(sentence(note('C4', [3, 6, 0.2, 0.3]))).not.toContain('notice nothing');
    expect(sentence(note('C4', [3, 6, 0.2, 0.3]), note('D4', [2, 1, 0, 0]))).toMatch(
      /: no difference can be shown that a player would notice; most apart is D4, 2\.0 ± 1\.0 cents sharper\.$/,
    );
  });

  it('says of differences inside their ± that none can be shown', () => {
    expect(sentence(note('C4', [-12, 14.2, 0.5, 0.9]))).toMatch(
      /: no difference can be shown: the widest, C4, 12\.0 ± 14\.2 cents flatter, lies inside its ±\.$/,
    );
    expect(sentence(note('C4', [1, 1.5, 0, 0]))).toMatch(
      /: the player would notice nothing; no difference can be shown: the widest, C4, 1\.0 ± 1\.5 cents/,
    );
  });

  it('rests on the usual fingerings, and names no front one that is further apart', () => {
    const front = { ...note('F6 front', [25, 2, 0, 0]), note: 'F6' };
    const usual = note('F6', [-11, 1, 0, 0]);
    for (const order of [
      [front, usual],
      [usual, front],
    ]) {
      expect(sentence(...order)).toMatch(/: the player would notice F6 \(11\.0 ± 1\.0 cents flatter\)\.$/);
    }
    const lost = { ...note('E6 front', null), note: 'E6' };
    expect(sentence(note('E6', [3, 1, 0, 0]), lost)).toMatch(
      /most apart is E6, 3\.0 ± 1\.0 cents sharper\.$/,
    );
    expect(sentence({ ...front, label: 'F6' })).toMatch(/notice F6 \(25\.0/);
  });

  it('says of other fingerings what would be noticed where nothing of the usual ones is', () => {
    const front = { ...note('F6 front', [25, 2, 0, 0]), note: 'F6' };
    expect(sentence(front, note('F6', [3, 1, 0, 0]))).toMatch(
      /: the player would notice nothing; most apart is F6, .* Of other fingerings, the player would notice F6 front \(25\.0 ± 2\.0 cents sharper\)\.$/,
    );
    const bis = { ...note('Bb4 bis', [2, 1, 0, 0]), note: 'Bb4' };
    const side = { ...note('Bb4 side', [0, 0, 0, 0]), note: 'Bb4' };
    expect(sentence(side, bis)).toMatch(
      /they play alike\. Of other fingerings, the player would notice nothing; most apart is Bb4 bis, 2\.0/,
    );
  });

  it('says which notes are not compared', () => {
    expect(sentence(note('C4', [3, 1, 0, 0]), note('F♯6', null))).toMatch(
      /sharper\. F♯6 cannot be compared\.$/,
    );
    expect(sentence(note('F♯6', null))).toBe(
      '“B” beside “A”: no note is played by both. F♯6 cannot be compared.',
    );
  });
});

describe('a note’s label', () => {
  it('has true sharps and flats, and leaves the way as it is', () => {
    expect(noteLabel('F#4 side')).toBe('F♯4 side');
    expect(noteLabel('Bb5 one-and-one')).toBe('B♭5 one-and-one');
    expect(noteLabel('B4')).toBe('B4');
  });
});
