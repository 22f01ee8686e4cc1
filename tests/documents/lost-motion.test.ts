import { describe, expect, it } from 'vitest';
import { contradictingReadings, contradictionSentence } from '../../src/documents/contradicting-readings.ts';
import { lostMotionOf, type LostMotionReport } from '../../src/documents/lost-motion.ts';
import { lostMotionSentences } from '../../src/documents/lost-motion-words.ts';
import { withOpeningReading } from '../../src/documents/sheet-edits.ts';
import { loadHorn, type LoadedHorn } from '../../src/documents/to-acoustics.ts';
import { demoDocument } from '../acoustics/demo-horns.ts';

const DIGITS = 9;
const AUXILIARY = 'f-sharp-auxiliary';
const { horn, setup } = demoDocument('alto');

/** The demo alto with some fronts otherwise, read or meant. */
function alto(fronts: Readonly<Record<string, number>> = {}, origin = setup.origin): LoadedHorn {
  const over = Object.entries(fronts).reduce(
    (now, [pad, mm]) => withOpeningReading(now, pad, { mm, at: 'front' }, { origin }),
    setup,
  );
  const loaded = loadHorn({ horn, setup: over });
  if (!loaded.ok) throw new Error(loaded.issues[0].message);
  return loaded.value;
}

/** The highest that each pad is named to. */
const frontsOf = (lost: readonly LostMotionReport[]): Record<string, number> =>
  Object.fromEntries(
    lost
      .flatMap(({ takenUpBy }) => takenUpBy.map(({ pad, toMm }) => [pad, toMm] as const))
      .sort((a, b) => a[1] - b[1]),
  );
const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

describe('what a raised key leaves behind', () => {
  it('is nothing where nothing moves', () => {
    expect(lostMotionOf(alto(), alto())).toEqual([]);
  });

  it('is as much lost motion as the key was raised by, in its own link alone', () => {
    const lost = lostMotionOf(alto(), alto({ d: 9 }));
    expect(lost.map(({ driver, driven }) => `${driver} > ${driven}`)).toEqual([`d > ${AUXILIARY}`]);
    expect(lost[0].moreMm).toBeCloseTo(1, DIGITS);
    expect(lost[0].lostMm - lost[0].asFoundMm).toBeCloseTo(1, DIGITS);
    expect(lost[0].shown).toBe(true);
  });

  it('is gone once the pads that are named stand where they are named to', () => {
    for (const moved of [{ d: 9 }, { d: 6 }, { [AUXILIARY]: 6.5 }, { a: 7, b: 6 }]) {
      const lost = lostMotionOf(alto(), alto(moved));
      expect(lost).not.toEqual([]);
      const mended = lostMotionOf(alto(), alto({ ...moved, ...frontsOf(lost) }));
      const told = (of: readonly LostMotionReport[]): string[] => of.map(({ driven }) => driven);
      expect(told(mended).filter((pad) => told(lost).includes(pad))).toEqual([]);
    }
  });

  it('is told with its ±, and with what takes it up', () => {
    const [sentence] = lostMotionSentences(lostMotionOf(alto(), alto({ d: 9 })), 'mm').map(plain);
    expect(sentence).toMatch(
      /^D goes 1\.2 ± \d\.\d mm \(0\.049 in\) at the front before F♯ auxiliary stirs, 1\.0 ± \d\.\d mm more than as found\./,
    );
    expect(sentence).toContain(
      'F♯ auxiliary at 8.1 mm (foot cork 0.23 mm thinner) takes it up, with E at 8.8 mm',
    );
  });
});

describe('readings that contradict', () => {
  it('are a pad read above what the arm of a key that was read lets it', () => {
    const [found, ...others] = contradictingReadings(alto({ d: 7.2 }));
    expect(others).toEqual([]);
    expect(found).toMatchObject({ driver: 'd', driven: AUXILIARY });
    expect(found.read.mm - found.allows.mm).toBeCloseTo(found.apart.mm, DIGITS);
    const sentence = plain(contradictionSentence(found, 'mm'));
    expect(sentence).toContain('F♯ auxiliary 7.2 ± 0.2 mm and D 7.2 ± 0.2 mm');
    expect(sentence).toContain('open to 6.7 ± 0.4 mm only');
  });

  it('are none within their ±, and none where one of them was not read', () => {
    expect(contradictingReadings(alto({ d: 7.5 }))).toEqual([]);
    expect(contradictingReadings(alto({ d: 7.2 }, 'template'))).toEqual([]);
  });
});
