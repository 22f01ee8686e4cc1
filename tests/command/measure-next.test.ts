import { describe, expect, it } from 'vitest';
import { makeAirColumn, studyVenting } from '../../src/acoustics/index.ts';
import type { MeasureNextReport } from '../../src/documents/measure-next-report.ts';
import { nextForComparison, nextForKey, nextForNote } from '../../src/documents/measure-next-report.ts';
import { plusMinusOf } from '../../src/documents/plus-minus.ts';
import type { LoadedHorn } from '../../src/documents/to-acoustics.ts';
import { demoHorn, fingeringOf } from '../acoustics/demo-horns.ts';
import { run as runProgram } from './run.ts';

const run = (...words: readonly string[]) => runProgram(['measure-next', ...words]);

const ALTO = 'datasets/horns/demo-alto.json';
/** Parts are printed to three digits. */
const PRINTED = 5e-3;

const day = { air: makeAirColumn(), a4Hz: 440 };

/** The demo alto with one key's hinge as an example of its kind has it. */
function withExampleHinge(loaded: LoadedHorn, pad: string): LoadedHorn {
  const { horn, setup } = loaded.documents;
  const holes = horn.holes.map((hole) =>
    hole.id === pad ? { ...hole, readings: { hingeMm: { origin: 'template' as const } } } : hole,
  );
  return { ...loaded, documents: { setup, horn: { ...horn, holes } } };
}

describe('what to measure next', () => {
  const loaded = demoHorn('alto');

  it('of a key with an example’s hinge is that hinge, with what it gains', () => {
    const report = nextForKey(withExampleHinge(loaded, 'd'), 'd', day);
    const [best] = report.next;
    expect(best).toMatchObject({ pad: 'd', kind: 'hingeDistance', unit: 'mm', plusMinus: 4, becomes: 0.2 });
    expect(report.budget!.plusMinus).toBeGreaterThan(1.2 * best.alone);
    expect(report.sentences[0]).toBe(
      `Measure the hinge distance of the D key (now ±4 mm; with a caliper ±0.2 mm): the ± falls from ${report.budget!.plusMinus.toFixed(1)} to ${best.alone.toFixed(1)} mm.`,
    );
  });

  it('of a key is worked out from the study’s own ±', () => {
    const { horn, setup } = loaded;
    const study = studyVenting(horn, setup, 'e', day.air, { points: 2, plusMinus: plusMinusOf(loaded) });
    const report = nextForKey(loaded, 'e', day);
    expect(report.budget!.plusMinus).toBe(study.budgets.diminishingReturn!.plusMinus * 1e3);
    if (study.diminishingReturn.kind === 'none in reach') throw new Error('has an answer');
    expect(report.value).toBe(study.diminishingReturn.at.pose.front * 1e3);
  });

  it('of a pitch says what only playing can tell', () => {
    const report = nextForNote(loaded, fingeringOf('F4'), day);
    expect(report.budget!.wholeHorn).toBe(10);
    expect(report.sentences.join(' ')).toContain('only played notes can narrow those');
    expect(report.next.map(({ kind }) => kind)).not.toContain('temperature');
  });

  it('of a comparison names the horn that is to be measured', () => {
    const example = withExampleHinge(loaded, 'd');
    const low = {
      ...example,
      setup: { keys: new Map(example.setup.keys) },
    };
    const key = low.setup.keys.get('d')!;
    low.setup.keys.set('d', { ...key, opening: { at: 'front', height: 4e-3 } });
    const oneHorn = nextForComparison([example, low], fingeringOf('E4'), day);
    expect(oneHorn.budget!.wholeHorn).toBe(0);
    // The hinge was read once for both, the openings one each.
    const labels = oneHorn.budget!.readings.map(({ label }) => label);
    expect(labels).toContain('hinge distance of the D key');
    expect(labels).toContain('opening of the D key of the second');
    const two = nextForComparison([example, demoHorn('tenor')], fingeringOf('E4'), day);
    expect(two.budget!.wholeHorn).toBeCloseTo(Math.SQRT2 * 10, 12);
    expect(two.budget!.readings.every(({ label }) => /of the (first|second)$/.test(label))).toBe(true);
  });
});

describe('the command', () => {
  it('gives the core’s own ranking as JSON and in words', () => {
    const asJson = run(ALTO, '--question', 'key:7', '--json');
    expect(asJson.code).toBe(0);
    expect(JSON.parse(asJson.out) as MeasureNextReport).toEqual(nextForKey(demoHorn('alto'), 'e', day));
    const asText = run(ALTO, '--question', 'note:F4');
    expect(asText.out).toMatch(/^The pitch of F4, from equal temperament: .* ± \d+\.\d cents\.\n/);
    expect(asText.out).toMatch(/\n1\. .*only played notes/);
  });

  it('lists the parts of the ±, the small ones together last, so that squares add up', () => {
    const { out } = run(ALTO, '--question', 'note:F4');
    const { budget } = nextForNote(demoHorn('alto'), fingeringOf('F4'), day);
    const sizes = [...out.matchAll(/^ {2}.+?: ± ([\d.]+) cents/gm)].map(([, size]) => Number(size));
    expect(Math.abs(Math.hypot(...sizes) / budget!.plusMinus - 1)).toBeLessThan(PRINTED);
    expect(out).toContain(`\n  others, ${budget!.others.count} readings: ± `);
    expect(budget!.others.count).toBeGreaterThan(0);
  });

  it.each([
    [['--question', 'colour'], /invalid --question: "colour"; expected key:7/],
    [['--question', 'key:99'], /"99"; expected 1 \(low-b-flat\)/],
    [['--question', 'note:H4'], /"H4"; expected one of Bb3/],
    [['--question', 'comparison'], /needs a second horn file/],
    [[], /missing --question/],
  ])('refuses %j in a sentence', (words, sentence) => {
    const { code, err } = run(ALTO, ...words);
    expect(code).toBe(2);
    expect(err).toMatch(sentence);
  });
});
