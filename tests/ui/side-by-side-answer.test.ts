import { describe, expect, it } from 'vitest';
import { makeAirColumn } from '../../src/acoustics/index.ts';
import { setupIn } from '../../src/documents/bench-contents.ts';
import { compareLoaded } from '../../src/documents/compare-loaded.ts';
import { loadHorn, type HornAndSetup, type LoadedHorn } from '../../src/documents/to-acoustics.ts';
import { withProposed } from '../../src/ui/state/key-lengths.ts';
import { compareColumns } from '../../src/ui/state/side-by-side-answer.ts';
import { onTheBench, TENOR } from './demo.ts';

const contents = withProposed(onTheBench('alto'), 'e', 5.5);
const found: HornAndSetup = { horn: contents.horn.document, setup: contents.asFound.document };
const proposed: HornAndSetup = { horn: contents.horn.document, setup: setupIn(contents, 'proposed') };
const loaded = (documents: HornAndSetup): LoadedHorn => {
  const read = loadHorn(documents);
  if (!read.ok) throw new Error(read.issues[0].message);
  return read.value;
};
const broken: HornAndSetup = {
  ...proposed,
  setup: {
    ...proposed.setup,
    keys: proposed.setup.keys.map((key) => ({ ...key, openingMm: -3 })),
  },
};

describe('columns compared', () => {
  it('give the core’s own report, in the day’s air and tuning', () => {
    const air = makeAirColumn({ mouthpieceC: 24 });
    const core = compareLoaded([loaded(found), loaded(proposed)], { air, a4Hz: 442 });
    expect(compareColumns([found, proposed], 24, 442)).toEqual({
      report: core,
      matches: [null, null],
      columns: [0, 1],
      problems: [null, null],
      examples: [false, false],
    });
  });

  it('count a proposal as meant: only as found may be misread, so the ± is that of one reading', () => {
    const { report } = compareColumns([found, proposed], 26.85, 440);
    const e = report!.keys.find(({ id }) => id === 'e')!;
    expect(e.differences[0]!.frontPlusMinusMm).toBeCloseTo(e.setups[0]!.frontPlusMinusMm, 12);
    expect(e.setups[1]!.frontPlusMinusMm).toBe(0);
  });

  it('leave out one that cannot be read, and say what is wrong with it', () => {
    const { report, columns, problems } = compareColumns([found, broken, proposed], 26.85, 440);
    expect(columns).toEqual([0, 2]);
    expect(report!.setups).toHaveLength(2);
    expect(problems[0]).toBeNull();
    expect(problems[1]).toMatch(/^invalid opening: -3 mm; expected 0 to 60 mm\..* And \d+ more\.$/);
  });

  it('compare nothing without the reference, or with it alone', () => {
    expect(compareColumns([broken, found, proposed], 26.85, 440)).toMatchObject({
      report: null,
      columns: [],
    });
    expect(compareColumns([null, found, proposed], 26.85, 440).report).toBeNull();
    expect(compareColumns([found, null], 26.85, 440)).toMatchObject({ report: null, problems: [null, null] });
  });

  it('tell whose bore is an example’s', () => {
    const example = { ...TENOR, horn: { ...TENOR.horn, origin: 'template' as const } };
    const { examples, report } = compareColumns([found, example], 26.85, 440);
    expect(examples).toEqual([false, true]);
    expect(report!.warnings[0]).toContain('has an example’s bore');
  });
});
