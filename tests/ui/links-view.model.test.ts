import { describe, expect, it } from 'vitest';
import { followOpenings, makeAirColumn, ratioFromArms } from '../../src/acoustics/index.ts';
import {
  loadHorn,
  loadSetupOver,
  readHornDocument,
  readSetupDocument,
} from '../../src/documents/to-acoustics.ts';
import { answerArrived, answerAsked } from '../../src/ui/state/asked-answer.ts';
import { makeBenchState, type BenchState } from '../../src/ui/state/bench-state.ts';
import { withHorn } from '../../src/ui/state/horns-on-bench.ts';
import { stepped } from '../../src/ui/state/horn-on-bench.ts';
import { withProposed, withSet } from '../../src/ui/state/key-lengths.ts';
import { toldOver } from '../../src/ui/state/stands-now.ts';
import { linkOf, setupLinkOf, withArms, withDrivenGap, withRatio } from '../../src/ui/state/link-edits.ts';
import { keepLinkText, pickLink, textKey, type LinkFieldId } from '../../src/ui/state/links-state.ts';
import { makeLinksView, type LinkedHornView } from '../../src/ui/views/regulation/links/links-view.model.ts';
import { answerRegulation, REGULATION_REQUESTS } from './demo-regulation.ts';
import { onTheBench, plain } from './demo.ts';

/** mm as the screen writes them, to a tenth. */
const TENTH = 0.051;

const contents = onTheBench('alto');
const fresh: BenchState = {
  ...makeBenchState([{ id: 'demo-alto', label: 'Demo alto' }], contents),
  view: 'links',
};
const E_TO_AUX = { driver: 'e', driven: 'f-sharp-auxiliary' };
const LOW_TO_CSHARP = { driver: 'low-b', driven: 'low-c-sharp' };

const edited = (state: BenchState, change: (c: typeof contents) => typeof contents): BenchState =>
  withHorn(state, (horn) => stepped(horn, change(horn.contents), null));

const lowered = ['d', 'e', 'f'].reduce((state, pad) => edited(state, (c) => withProposed(c, pad, 6)), fresh);

/** The view once the physics of sound has answered. */
function answered(state: BenchState): LinkedHornView {
  const { over } = toldOver(state.horns[state.hornId].contents);
  const report = answerRegulation('follow', { ...REGULATION_REQUESTS.follow, proposed: over });
  const followed = answerArrived(answerAsked(state.links.followed, 1), 1, state.hornId, report);
  return linked({ ...state, links: { ...state.links, followed } });
}

function linked(state: BenchState): LinkedHornView {
  const { horn } = makeLinksView(state);
  if (horn === null) throw new Error('expected links');
  return horn;
}

const mmIn = (text: string): number => Number(/^(\d+\.\d)/.exec(plain(text))![1]);

describe('the page of links, as found', () => {
  const view = linked(fresh);

  it('says that nothing is held down and what cannot be said', () => {
    expect(view.answer.headline).toMatch(/^No link holds a pad down/);
    expect(plain(view.answer.standing)).toContain('cannot be said: the ratio is not known');
    expect(view.tables.pads.find((p) => p.name === 'low C♯')!.allowed).toBe('cannot say');
  });

  it('offers a slider for every driver that nothing drives, the lower stack first', () => {
    expect(view.sliders.map((s) => s.id)).toEqual(['d', 'e', 'f', 'a', 'b', 'low-b-flat']);
    expect(view.sliders.every((s) => s.lowMm < s.foundMm && s.foundMm < s.highMm)).toBe(true);
  });

  it('waits for no answer while nothing is proposed', () => {
    expect(view.waiting).toBe(false);
    expect(view.answer.notes).toBe('');
  });
});

describe('the page of links, the lower stack set low', () => {
  const view = answered(lowered);

  it('names the pads held down, the most held first, and what they stand at', () => {
    expect(plain(view.answer.headline)).toMatch(
      /^As proposed, the [DE] key’s arm holds F♯ auxiliary down at 5\.6 ± 0\.3 mm \(.+\), 1\.6 ± 0\.3 mm \(.+\) below its own stop/,
    );
    expect(view.tables.pads.filter((p) => p.held).map((p) => p.name)).toEqual(['F♯ auxiliary', 'G♯', 'bis']);
  });

  it('stands pads where the study of sound stands them', () => {
    const { horn, asFound, proposed } = lowered.horns['demo-alto'].contents;
    const found = loadHorn({ horn: horn.document, setup: asFound.document });
    if (!found.ok) throw new Error('expected a horn');
    const then = loadSetupOver(found.value, proposed.document);
    if (!then.ok) throw new Error('expected a setup');
    const air = makeAirColumn({ mouthpieceC: 26.85 });
    const { pads } = followOpenings(found.value.horn, found.value.setup, then.value.setup, air);
    for (const { pad, after } of pads) {
      const row = view.tables.pads.find(
        (p) => p.name === found.value.horn.holes.find((h) => h.id === pad)!.name,
      );
      if (row !== undefined) expect(Math.abs(mmIn(row.stands) - after.front * 1000)).toBeLessThan(TENTH);
    }
    expect(pads.map((p) => p.pad)).toContain('bis');
  });

  it('lists the notes that suffer, the most hurt first, and counts them', () => {
    expect(view.tables.notes.length).toBeGreaterThan(10);
    expect(view.notesTitle).toBe(`Notes that suffer: ${view.tables.notes.length} of 44`);
    const cents = view.tables.notes.map((n) => Number(plain(n.change).split(' ')[0].replace('−', '-')));
    expect(cents[0]).toBe(Math.min(...cents));
    expect(plain(view.answer.notes)).toContain(`${view.tables.notes.length} of 44 notes suffer`);
  });

  it('takes the link that holds most in hand, until another is picked', () => {
    expect(view.chosen).toMatch(/^[de] > f-sharp-auxiliary$/);
    const picked = { ...lowered, links: pickLink(lowered.links, { driver: 'b', driven: 'small-c' }) };
    expect(linked(picked).chosen).toBe('b > small-c');
  });
});

describe('what is typed of a link', () => {
  it('goes into the setup as found, and leaves documents that can be read', () => {
    const after = withDrivenGap(contents, E_TO_AUX, 0.05);
    expect(after.horn).toBe(contents.horn);
    expect(setupLinkOf(after.asFound.document, E_TO_AUX)!.drivenGapMm).toBe(0.05);
    expect(readSetupDocument(after.asFound.document, after.horn.document).ok).toBe(true);
    expect(plain(linked(edited(fresh, () => after)).answer.headline)).toBe(
      'Press E home and F♯ auxiliary is left open by 2 papers (0.050 mm).',
    );
  });

  it('is told at the link it belongs to, and where else it shows', () => {
    const early = edited(fresh, (c) =>
      withDrivenGap(c, { driver: 'f-sharp-auxiliary', driven: 'g-sharp' }, -0.05),
    );
    expect(plain(linked(early).answer.headline)).toBe(
      'Press F♯ auxiliary home and G♯, shut first, keeps it open by 2 papers (0.050 mm); it shows under D, E and F too.',
    );
  });

  it('is a ratio of the horn, over a ratio of the setup', () => {
    const { links: _none, ...bare } = contents.asFound.document;
    const own = {
      ...contents,
      asFound: {
        ...contents.asFound,
        document: { ...bare, links: [{ ...E_TO_AUX, travelRatio: 0.5, drivenGapMm: 0.02 }] },
      },
    };
    const after = withRatio(own, E_TO_AUX, 0.8);
    expect(linkOf(after.horn.document, E_TO_AUX)).toMatchObject({
      travelRatio: 0.8,
      ratioOrigin: 'measured',
    });
    expect(setupLinkOf(after.asFound.document, E_TO_AUX)).toEqual({ ...E_TO_AUX, drivenGapMm: 0.02 });
    expect(readHornDocument(after.horn.document).ok).toBe(true);
    const row = linked(edited(fresh, () => after)).tables.links.find(
      (l) => l.value === 'e > f-sharp-auxiliary',
    );
    expect(row!.ratio).toBe('0.80');
  });

  it('may be the arms, which then give the ratio alone', () => {
    const arms = { driverArmMm: 20, drivenArmMm: 18 };
    const after = withArms(contents, LOW_TO_CSHARP, arms);
    const front = (pad: string): number => {
      const hole = contents.horn.document.holes.find((h) => h.id === pad)!;
      return (
        hole.key!.hingeMm + contents.asFound.document.keys.find((k) => k.pad === pad)!.padDiameterMm! / 2
      );
    };
    const ratio = ratioFromArms({
      driverArm: 20,
      drivenArm: 18,
      driverFront: front('low-b'),
      drivenFront: front('low-c-sharp'),
    });
    const row = linked(edited(fresh, () => after)).tables.links.find(
      (l) => l.value === 'low-b > low-c-sharp',
    );
    expect(row!.ratio).toBe(`${ratio.toFixed(2)} from arms`);
    expect(row!.allows).not.toBe('cannot say');
  });

  it('stays in its field when it was refused, with what is still in use', () => {
    const key = textKey(fresh.hornId, E_TO_AUX, 'ratio');
    const wrong = { text: 'nine', problem: 'invalid travel ratio: “nine”; expected a number', value: null };
    const links = keepLinkText(pickLink(fresh.links, E_TO_AUX), key, wrong);
    const { ratio } = linked({ ...fresh, links }).fields;
    expect(ratio.text).toBe('nine');
    expect(ratio.problem).toContain('Still in use: 0.93');
    expect(linked({ ...fresh, links: keepLinkText(links, key, null) }).fields.ratio.text).toBe('0.93');
  });

  it('makes a ratio of two readings, with how far their repeat may throw it', () => {
    const readings: Readonly<Partial<Record<LinkFieldId, number>>> = {
      firstDriver: 7,
      firstDriven: 6.3,
      secondDriver: 2,
      secondDriven: 1.8,
    };
    const links = Object.entries(readings).reduce(
      (now, [field, value]) =>
        keepLinkText(now, textKey(fresh.hornId, E_TO_AUX, field as LinkFieldId), {
          text: String(value),
          problem: null,
          value,
        }),
      pickLink(fresh.links, E_TO_AUX),
    );
    const { fromReadings } = linked({ ...fresh, links }).fields;
    expect(fromReadings.ratio).toBeCloseTo(0.9, 12);
    expect(fromReadings.words).toBe('Ratio 0.90 ± 0.08');
    const near = keepLinkText(links, textKey(fresh.hornId, E_TO_AUX, 'secondDriver'), {
      text: '6.9',
      problem: null,
      value: 6.9,
    });
    expect(linked({ ...fresh, links: near }).fields.fromReadings).toMatchObject({ ratio: null });
    expect(linked({ ...fresh, links: near }).fields.fromReadings.words).toMatch(/^Cannot say/);
  });
});

describe('the page of links, the lower stack proposed and then set low', () => {
  const setting = ['d', 'e', 'f'].reduce(
    (state, pad) => edited(state, (c) => withSet(c, pad, { mm: 6, at: 'front' })),
    lowered,
  );
  const [proposed, set] = [answered(lowered), answered(setting)];

  it('tells it as set, with the same numbers', () => {
    expect([proposed.told, set.told]).toEqual(['as proposed', 'as set']);
    expect(set.answer.headline).toMatch(/^As set, the [DE] key’s arm holds F♯ auxiliary down/);
    expect(set.tables.pads.map((p) => [p.name, mmIn(p.stands)])).toEqual(
      proposed.tables.pads.map((p) => [p.name, mmIn(p.stands)]),
    );
    expect(set.tables.notes).toEqual(proposed.tables.notes);
    expect(set.sliders.find((s) => s.id === 'e')).toMatchObject({ frontMm: 6, told: 'as set' });
    expect(set.sliders.find((s) => s.id === 'a')).toMatchObject({ told: 'as found' });
    expect(set.withdrawn).toBe('as set');
  });

  it('tells what was set though nothing was proposed, and what is proposed beyond it', () => {
    const only = answered(edited(fresh, (c) => withSet(c, 'e', { mm: 6, at: 'front' })));
    expect(only.told).toBe('as set');
    expect(only.proposes).toBe(false);
    expect(only.tables.notes.length).toBeGreaterThan(0);
    const beyond = answered(edited(setting, (c) => withProposed(c, 'a', 4)));
    expect(beyond.told).toBe('as proposed');
    const standing = (view: LinkedHornView, name: string) =>
      mmIn(view.tables.pads.find((p) => p.name === name)!.stands);
    expect(standing(beyond, 'F♯ auxiliary')).toBe(standing(set, 'F♯ auxiliary'));
    expect(standing(beyond, 'bis')).toBeLessThan(standing(set, 'bis'));
    expect(beyond.sliders.find((s) => s.id === 'a')).toMatchObject({ frontMm: 4, told: 'as proposed' });
  });
});

describe('an opening asked of a pad', () => {
  const asking = (state: BenchState, frontMm: number): BenchState => ({
    ...state,
    links: { ...state.links, asked: { pad: 'bis', frontMm } },
  });

  it('begins with the pad that most keys rule', () => {
    expect(linked(fresh).asked.padId).toBe('bis');
    expect(linked(fresh).asked.answer).toBeNull();
  });

  it('is had once what it proposes is proposed', () => {
    const { asked } = linked(asking(fresh, 5.6));
    expect(asked.proposes).not.toBeNull();
    const raised = Object.entries(asked.proposes!).reduce(
      (state, [pad, mm]) => edited(state, (c) => withProposed(c, pad, mm)),
      asking(fresh, 5.6),
    );
    const bis = linked(raised).tables.pads.find((p) => p.name === 'bis')!;
    expect(mmIn(bis.stands)).toBeGreaterThanOrEqual(5.6);
    expect(linked(raised).asked.answer).toContain('is had as it stands');
  });

  it('tells with its ± what a stop needs, and where that is less than can be shown', () => {
    const { asked } = linked(asking(fresh, 5.6));
    expect(plain(asked.answer!)).toMatch(/raised, most of all .+ by \d\.\d ± \d\.\d mm \(0\.\d+ in\)\.$/);
    const [bis, ...drivers] = asked.rows;
    expect(plain(bis.needed)).toBe('5.6 mm (0.220 in)');
    expect(drivers.length).toBeGreaterThan(2);
    for (const { needed, reasons } of drivers) {
      expect(plain(needed)).toMatch(/^\d\.\d ± \d\.\d mm/);
      expect(reasons.map(({ kind }) => kind)).toEqual(['asked-opening', 'asked-opening']);
      expect(reasons[0].figure).toBe(needed);
      expect(reasons[0].budget!.parts.plusMinus).toBeGreaterThan(0);
    }
    const stands = linked(fresh).tables.pads.find((p) => p.name === 'bis')!;
    const bare = linked(asking(fresh, mmIn(stands.stands))).asked;
    expect(plain(bare.rows[0].raise)).toMatch(/^cannot be shown: enough by 0\.0 ± /);
    expect(plain(bare.answer!)).toContain('is had as it stands, though not by more than can be shown');
  });

  it('cannot be had beyond what a hinge reaches, and then proposes nothing', () => {
    const { asked } = linked(asking(fresh, 45));
    expect(asked.answer).toContain('cannot be had');
    expect(asked.proposes).toBeNull();
  });
});

describe('a horn whose links cannot be told', () => {
  it('says so where it has none', () => {
    const none = edited(fresh, (c) => ({
      ...c,
      horn: { ...c.horn, document: { ...c.horn.document, links: [] } },
    }));
    const view = makeLinksView(none);
    expect(view.horn).toBeNull();
    expect(view.problem).toContain('names no links');
  });

  it('says so where a link names a vent', () => {
    const vent = edited(fresh, (c) => {
      const links = [
        ...c.horn.document.links,
        { driver: 'b', driven: 'neck-vent', effect: 'closes' as const },
      ];
      return { ...c, horn: { ...c.horn, document: { ...c.horn.document, links } } };
    });
    const view = makeLinksView(vent);
    expect(view.horn).toBeNull();
    expect(view.problem).toContain('has no hinge');
  });
});
