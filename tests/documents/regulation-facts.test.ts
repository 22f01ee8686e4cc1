import { describe, expect, it } from 'vitest';
import { ratioFromArms, studyLinks } from '../../src/acoustics/index.ts';
import { reportLinks } from '../../src/documents/links-report.ts';
import { regulationFacts } from '../../src/documents/regulation-facts.ts';
import { loadHorn, type LoadedHorn } from '../../src/documents/to-acoustics.ts';
import { demoDocument, demoHorn } from '../acoustics/demo-horns.ts';

const MM = 1e-3;
const DIGITS = 9;

/** The demo alto with one link known by its arms alone, and one gap left by a screw. */
function armed(): LoadedHorn {
  const { horn, setup } = demoDocument('alto');
  const links = horn.links.map((l) => {
    if (l.driver !== 'a' || l.driven !== 'bis') return l;
    return { driver: l.driver, driven: l.driven, effect: l.effect, driverArmMm: 14, drivenArmMm: 15 };
  });
  const screws = [{ driver: 'e', driven: 'f-sharp-auxiliary', drivenGapMm: 0.05 }];
  const loaded = loadHorn({ horn: { ...horn, links }, setup: { ...setup, links: screws } });
  if (!loaded.ok) throw new Error(loaded.issues[0].message);
  return loaded.value;
}

describe('what documents say for regulation', () => {
  it('makes a ratio of arms where none was read, and leaves one that was read', () => {
    const loaded = armed();
    const { horn, fromArms } = regulationFacts(loaded);
    const keyOf = (id: string) => loaded.documents.horn.holes.find((h) => h.id === id)!.key!;
    const frontOf = (id: string): number => keyOf(id).hingeMm * MM + loaded.setup.keys.get(id)!.padRadius;
    const ratio = ratioFromArms({
      ...{ driverArm: 14 * MM, driverFront: frontOf('a') },
      ...{ drivenArm: 15 * MM, drivenFront: frontOf('bis') },
    });
    const link = (driver: string, driven: string) =>
      horn.keywork.links.find((l) => l.driver === driver && l.driven === driven)!;
    expect(link('a', 'bis').ratio).toBeCloseTo(ratio, DIGITS);
    expect(link('f-sharp-auxiliary', 'bis').ratio).toBe(0.715);
    expect(fromArms).toEqual([{ driver: 'a', driven: 'bis' }]);
    const told = reportLinks(loaded, regulationFacts(loaded)).links;
    expect(told.find((l) => l.driver === 'a' && l.driven === 'bis')).toMatchObject({ ratioFrom: 'arms' });
    expect(told.find((l) => l.driver === 'f')).toMatchObject({ ratioFrom: 'reading' });
    expect(told.find((l) => l.driven === 'low-c-sharp')).toMatchObject({
      ratioFrom: null,
      travelRatio: null,
    });
  });

  it('gives what links leave, in metres', () => {
    const { screws } = regulationFacts(armed());
    expect(screws).toEqual([
      { driver: 'e', driven: 'f-sharp-auxiliary', left: expect.closeTo(0.05 * MM, 12) },
    ]);
  });

  it('turns lost motion at the front into lost motion at the touch by the touch’s own arm', () => {
    const loaded = demoHorn('alto');
    const facts = regulationFacts(loaded);
    const { touchArmMm, hingeMm } = loaded.documents.horn.holes.find((h) => h.id === 'e')!.key!;
    const { padRadius } = loaded.setup.keys.get('e')!;
    const e = studyLinks(facts.horn, loaded.setup, facts).links.find((l) => l.link.driver === 'e')!;
    expect(e.lostAtTouch! / e.lostAtFront!).toBeCloseTo(touchArmMm! / (hingeMm + padRadius / MM), DIGITS);
  });
});
