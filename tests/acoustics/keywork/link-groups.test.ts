import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { linkGroups, type Keywork, type Link } from '../../../src/acoustics/index.ts';
import { demoHorn } from '../demo-horns.ts';

const names = ({ driver, driven }: Link): string => `${driver} > ${driven}`;

describe('the groups of linked pads', () => {
  const { horn } = demoHorn('alto');
  const groups = linkGroups(horn.keywork, horn.holes);

  it('begin with the stacks, and set their links in the order of common practice', () => {
    // 9, 7, 6 onto 10; 10 onto 11, then 15; 14 onto 15; 17 onto 18; 14 onto 18.
    expect(groups[0].links.map(names)).toEqual([
      'f > f-sharp-auxiliary',
      'e > f-sharp-auxiliary',
      'd > f-sharp-auxiliary',
      'f-sharp-auxiliary > g-sharp',
      'f-sharp-auxiliary > bis',
      'a > bis',
      'b > small-c',
      'a > small-c',
    ]);
    expect(groups[1].pads).toEqual(['low-b-flat', 'low-b', 'low-c-sharp']);
    expect(groups[1].links[0]).toMatchObject({ driver: 'low-b-flat', driven: 'low-b' });
  });

  it('hold every pad once and every link once', () => {
    expect(groups.flatMap((g) => g.pads).sort()).toEqual(horn.holes.map((h) => h.id).sort());
    expect(
      groups
        .flatMap((g) => g.links)
        .map(names)
        .sort(),
    ).toEqual(horn.keywork.links.map(names).sort());
  });

  it('do not depend on the order in which the horn lists its links', () => {
    const turned: Keywork = { ...horn.keywork, links: [...horn.keywork.links].reverse() };
    expect(linkGroups(turned, horn.holes)).toEqual(groups);
  });

  it('never set a link from a pad before all links onto it, whatever the links', () => {
    const pads = Array.from({ length: 7 }, (_, i) => ({ id: `p${i}`, number: i }));
    const link = fc.tuple(fc.integer({ min: 0, max: 6 }), fc.integer({ min: 0, max: 6 }));
    // A hidden order that no link runs against, so that none runs in a circle.
    const shuffled = fc.shuffledSubarray([0, 1, 2, 3, 4, 5, 6], { minLength: 7 });
    fc.assert(
      fc.property(fc.array(link, { maxLength: 14 }), shuffled, (pairs, order) => {
        const links = pairs
          .filter(([a, b]) => order[a] < order[b])
          .map(([a, b]): Link => ({ driver: `p${a}`, driven: `p${b}`, effect: 'closes' }))
          .filter((l, i, all) => all.findIndex((m) => names(m) === names(l)) === i);
        const ordered = linkGroups({ rests: new Map(), touches: [], links }, pads).flatMap((g) => g.links);
        expect(ordered).toHaveLength(links.length);
        ordered.forEach((l, i) => {
          const later = ordered.slice(i + 1);
          expect(later.some((m) => m.driven === l.driver)).toBe(false);
        });
      }),
      { seed: 8, numRuns: 400 },
    );
  });

  it('are refused where links run in a circle', () => {
    const links = (['a b', 'b c', 'c a'] as const).map((pair): Link => {
      const [driver, driven] = pair.split(' ');
      return { driver, driven, effect: 'closes' };
    });
    const pads = ['a', 'b', 'c'].map((id, number) => ({ id, number }));
    expect(() => linkGroups({ rests: new Map(), touches: [], links }, pads)).toThrow(
      'expected no link that drives its own driver',
    );
  });
});
