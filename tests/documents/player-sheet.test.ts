import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { makeAirColumn, studyVenting, ventingAt, type VentingStudy } from '../../src/acoustics/index.ts';
import { setupIn, type BenchContents } from '../../src/documents/bench-contents.ts';
import { compareLoaded } from '../../src/documents/compare-loaded.ts';
import { withSaid } from '../../src/documents/day-steps.ts';
import { formatLength } from '../../src/documents/length-format.ts';
import { lostMotionSentences } from '../../src/documents/lost-motion-words.ts';
import { makeSheetCurve } from '../../src/documents/player-sheet-curve.ts';
import { withSheetWords, withWish, withWishForAll } from '../../src/documents/player-sheet-edits.ts';
import { mainNote } from '../../src/documents/player-sheet-decisions.ts';
import { makeSheetFile } from '../../src/documents/player-sheet-file.ts';
import { both, signed } from '../../src/documents/player-sheet-lengths.ts';
import { makePlayerSheet, type PlayerSheet } from '../../src/documents/player-sheet.ts';
import { plusMinusOf } from '../../src/documents/plus-minus.ts';
import { PROGRAM_VERSION } from '../../src/documents/program-version.ts';
import { readWith } from '../../src/documents/schema-parts.ts';
import { loadHorn, type LoadedHorn } from '../../src/documents/to-acoustics.ts';
import type { SetLike } from '../../src/documents/set-like.ts';
import { visitSchema } from '../../src/documents/visit-document.ts';
import { withFoundLengths, withSet } from '../../src/ui/state/key-lengths.ts';
import { withDone, withLeakingSeat } from '../../src/ui/state/work-edits.ts';
import { LONG_ROUNDING, relative } from '../acoustics/tolerances.ts';
import { everyKeySet, ofTheExample, playerSheetFacts, raisedD, withVisit } from '../ui/demo-player-sheet.ts';
import { withProposed } from '../../src/ui/state/key-lengths.ts';
import { onTheBench } from '../ui/demo.ts';

const AIR_C = 26.85;
const air = makeAirColumn({ mouthpieceC: AIR_C });

function loaded(contents: BenchContents, role: 'asFound' | 'asSet'): LoadedHorn {
  const read = loadHorn({ horn: contents.horn.document, setup: setupIn(contents, role) });
  if (!read.ok) throw new Error(read.issues[0].message);
  return read.value;
}

function sheetOf(contents: BenchContents): PlayerSheet {
  return makePlayerSheet(contents, playerSheetFacts(contents), 'mm');
}

const allSentences = ({ headline, decided, parts, consent }: PlayerSheet) => [
  headline,
  ...decided.sentences,
  ...parts.flatMap(({ sentences }) => sentences),
  consent,
];
const told = (sheet: PlayerSheet, id: string): string =>
  allSentences(sheet).find((sentence) => sentence.id === id)!.text;

/** A visit on which nothing was set and all keys are wished higher or lower. */
function wishingForAll(byMm: number): BenchContents {
  const bare = onTheBench('alto');
  return withVisit(bare, withWishForAll(bare.visit.document, byMm));
}

const wishing = wishingForAll(-1);
const lowered = playerSheetFacts(wishing);
const loweredSheet = makePlayerSheet(wishing, lowered, 'mm');
const raised = raisedD();
const facts = playerSheetFacts(raised);
const sheet = makePlayerSheet(raised, facts, 'mm');
const asSet = loaded(raised, 'asSet');
/** The core’s own study of the D key, all else as it leaves. */
const study: VentingStudy = studyVenting(asSet.horn, asSet.setup, 'd', air, {
  a4: 440,
  plusMinus: plusMinusOf(asSet),
});

describe('the player’s sheet', () => {
  it('says why a key was raised, with the core’s own openings and what decided', () => {
    const enough = study.diminishingReturn;
    if (enough.kind !== 'reached') throw new Error('the D key has an answer');
    const half = study.budgets.diminishingReturn!.plusMinus * 1000;
    const enoughMm = enough.at.pose.front * 1000;
    expect(8).toBeLessThan(enoughMm - half);
    expect(8.9).toBeGreaterThan(enoughMm - half);
    expect(8.9).toBeLessThan(enoughMm + half);
    expect(told(sheet, 'decided d')).toBe(
      'The D key was raised from 8.0 to 8.9 mm (0.315 to 0.350 in) at the front because low E was under-vented; that is as good as enough, 9.1 ± 0.3 mm (0.358 in).',
    );
  });

  it('says of a key that is still low, too high, lowered or held by an arm what is so of it', () => {
    const of = (mm: number, pad = 'd'): string =>
      told(sheetOf(withSet(onTheBench('alto'), pad, { mm, at: 'front' })), `decided ${pad}`);
    expect(of(8.3)).toMatch(
      /because low E was under-vented; more height would still help it, up to 9\.1 ± 0\.3 mm/,
    );
    expect(of(10)).toMatch(
      /because low E was under-vented; above 9\.1 ± 0\.3 mm \(0\.358 in\) more height no longer helps\./,
    );
    expect(of(6)).toMatch(
      /was lowered from 8\.0 to 6\.0 mm .* Below 9\.1 ± 0\.3 mm .* height still helps low E: it is \d\.\d ± \d\.\d cents flatter\./,
    );
    expect(of(12, 'low-c')).toMatch(/^The low C key was raised/);
    const high = withSet(onTheBench('alto'), 'low-c', { mm: 8.9, at: 'front' });
    expect(told(sheetOf(high), 'decided low-c')).toMatch(/^The low C key was lowered/);
    const held = sheetOf(everyKeySet());
    expect(told(held, 'links')).toMatch(/Held below its own stop: .*F♯ auxiliary by the D key/);
  });

  it('tells a pad that only follows the key that drives it as following, and its number as reckoned', () => {
    const held = withFoundLengths(onTheBench('alto'), 'd', { openingMm: 7 });
    const raised = withSet(held, 'd', { mm: 8.9, at: 'front' });
    const facts = playerSheetFacts(raised);
    const sheet = makePlayerSheet(raised, facts, 'mm');
    const follower = facts.comparison.keys.find(({ id }) => id === 'f-sharp-auxiliary')!;
    expect([follower.setups[0]!.ruledBy, follower.setups[1]!.ruledBy]).toEqual(['d', null]);
    expect(told(sheet, 'follows f-sharp-auxiliary')).toBe(
      'The F♯ auxiliary key follows the D key, whose arm had held it down: from 6.5 mm (0.256 in) to 7.2 ± 0.2 mm (0.283 in) at the front, reckoned and not read.',
    );
    expect(sheet.headline.text).toMatch(
      /^The D key stands 1\.9 mm \(0\.075 in\) higher, and 3 keys follow; /,
    );
    expect(sheet.decided.sentences[0].id).toBe('decided d');
    expect(told(sheet, 'follows others')).toBe('G♯ and bis follow the keys that drive them.');
    const row = sheet.keys.rows.find(({ pad }) => pad === 'f-sharp-auxiliary')!;
    expect(row.readAt).toBe('reckoned');
    const file = makeSheetFile(raised, facts);
    const cells = file.rows.find(({ pad }) => pad === 'f-sharp-auxiliary')!.cells;
    expect(cells[file.columns.indexOf('set')]).toEqual({ value: '7.20', origin: 'd ±0.2' });
  });

  it('marks on the shop’s page what was read on a visit before, and explains the mark only then', () => {
    const { document } = raised.asFound;
    const on = (readOn: string): BenchContents => {
      const keys = document.keys.map((key) =>
        key.pad === 'e'
          ? { ...key, readings: { ...key.readings, openingMm: { origin: 'measured' as const, readOn } } }
          : key,
      );
      return { ...raised, asFound: { ...raised.asFound, document: { ...document, keys } } };
    };
    const found = (contents: BenchContents, pad: string) => {
      const file = makeSheetFile(contents, playerSheetFacts(contents));
      const { cells } = file.rows.find((row) => row.pad === pad)!;
      return { ...cells[file.columns.indexOf('found')], legend: file.legend };
    };
    const { date } = raised.visit.document;
    expect(found(on('2020-02-03'), 'e')).toMatchObject({ value: '8.00', origin: 'v ±0.2' });
    expect(found(on('2020-02-03'), 'd').origin).toBe('m ±0.2');
    expect(found(on('2020-02-03'), 'e').legend).toContain('v on a visit before');
    expect(found(on(date), 'e').origin).toBe('m ±0.2');
    expect(found(on(date), 'e').legend).not.toContain('visit before');
  });

  it('says what lost motion a raised key leaves in its links, the player’s page the most of it, the shop’s all', () => {
    const [most] = facts.lostMotion;
    expect([most.driver, most.driven]).toEqual(['d', 'f-sharp-auxiliary']);
    expect(told(sheet, 'lost motion').replaceAll('\u00a0', ' ')).toMatch(
      /^Lost motion is left\. D goes 1\.1 ± 0\.\d mm \(0\.0\d\d in\) at the front before F♯ auxiliary stirs, 0\.9 ± 0\.\d mm more than as found\.$/,
    );
    const entry = makeSheetFile(raised, facts).entries.find(({ label }) => label === 'Lost motion')!;
    expect(entry.text).toBe(lostMotionSentences(facts.lostMotion, 'mm').join(' '));
    expect(allSentences(sheetOf(onTheBench('alto'))).some(({ id }) => id === 'lost motion')).toBe(false);
  });

  it('says a length that was worked out alike in both units, and one that was read as it was read', () => {
    for (const [mm, words] of [
      [9.1, '9.1 mm (0.358 in)'],
      [9.142, '9.1 mm (0.358 in)'],
      [6.35, '6.4 mm (0.250 in)'],
      [8.9, '8.9 mm (0.350 in)'],
    ] as const)
      expect(both(mm, 'mm')).toBe(words);
    expect(both(9.142, 'thou')).toBe('0.358 in (9.1 mm)');
  });

  it('has the comparison’s numbers in its tables, at the front and in both units', () => {
    const own = compareLoaded([loaded(raised, 'asFound'), asSet], { air, a4Hz: 440 });
    const key = own.keys.find(({ id }) => id === 'd')!;
    const [found, set] = [key.setups[0]!, key.setups[1]!];
    const opening = (mm: number, half: number): string =>
      `${formatLength(mm, 'mm').replace(' mm', '')} ± ${formatLength(half, 'mm')} (${formatLength(mm, 'thou')})`;
    expect(sheet.keys.rows).toEqual([
      {
        pad: 'd',
        name: 'D',
        found: opening(found.frontMm, found.frontPlusMinusMm),
        set: opening(set.frontMm, set.frontPlusMinusMm),
        vented: `${(100 * found.ventShare).toFixed(0)} ± 1 → ${(100 * set.ventShare).toFixed(0)} ± 1 %`,
        readAt: '',
      },
    ]);
    expect(sheet.keys.rest).toBe('Every other key stands as it was found.');
    expect(sheet.notes.rows.map(({ fingering }) => fingering)).toEqual(['E5', 'E4']);
    for (const row of sheet.notes.rows) {
      const d = own.notes.find(({ fingering }) => fingering === row.fingering)!.differences[0]!;
      expect(Math.abs(d.cents)).toBeGreaterThan(d.centsPlusMinus);
      expect(row.cents).toBe(`${signed(d.cents)} ± ${d.centsPlusMinus.toFixed(1)}`);
    }
    const untold = own.notes.filter(
      ({ fingering, differences: [d] }) => d!.canBeShown && !['E5', 'E4'].includes(fingering),
    );
    const most = Math.max(...untold.map(({ differences: [d] }) => Math.abs(d!.cents)));
    expect(sheet.notes.rest).toBe(
      `${untold.length} more notes changed by ${most.toFixed(1)} cents or less; nothing else by more than can be shown.`,
    );
  });

  it('draws the core’s curve, with the openings as found, as set, wished for and enough', () => {
    const curve = sheet.curve!;
    expect([curve.keyName, curve.noteName]).toEqual(['D', 'low E']);
    study.curve.forEach((point, i) => {
      expect(relative(curve.points[i].frontMm, 1000 * point.pose.front)).toBeLessThan(LONG_ROUNDING);
      expect(relative(curve.points[i].ventPercent, 100 * point.ventShare)).toBeLessThan(LONG_ROUNDING);
    });
    const lowE = study.context.governed.findIndex(({ fingering }) => fingering.id === 'E4');
    const fronts = { 'as found': 8e-3, 'as set': 8.9e-3, wish: 6.5e-3 };
    for (const [mark, front] of Object.entries(fronts)) {
      const point = ventingAt(study.context, front);
      const shown = curve.marks.find((m) => m.mark === mark)!;
      expect(relative(shown.ventPercent, 100 * point.ventShare)).toBeLessThan(LONG_ROUNDING);
      expect(Math.abs(shown.cents! - point.notes[lowE]!.cents)).toBeLessThan(LONG_ROUNDING);
    }
    const enough = curve.marks.find(({ mark }) => mark === 'enough')!;
    if (study.diminishingReturn.kind !== 'reached') throw new Error('the D key has an answer');
    expect(relative(enough.frontMm, 1000 * study.diminishingReturn.at.pose.front)).toBeLessThan(
      LONG_ROUNDING,
    );
    expect(curve.enoughPlusMinusMm).toBe(study.budgets.diminishingReturn!.plusMinus * 1000);
    expect(curve.told).toContain('as set 8.9 mm (0.350 in) at the front, 79 % vented');
  });

  it('tells what the wish would cost note by note, against how the horn leaves', () => {
    const wished = withSet(raised, 'd', { mm: 6.5, at: 'front' });
    const cost = compareLoaded([asSet, loaded(wished, 'asSet')], { air, a4Hz: 440 });
    const [first] = cost.notes;
    const words = told(sheet, 'wish');
    const { cents } = first.differences[0]!;
    expect(words).toContain(
      `With the D key at 6.5 mm (0.256 in) at the front, as wished, ${first.label} would be ${Math.abs(cents).toFixed(1)} ±`,
    );
    expect(words).toMatch(
      / As wished, low E would be under-vented: enough is 9\.1 ± 0\.3 mm \(0\.358 in\)\.$/,
    );
    const near = withVisit(raised, { wishOpeningMm: 9 });
    expect(told(sheetOf(near), 'wish')).toMatch(
      / That is as good as enough, 9\.1 ± 0\.3 mm \(0\.358 in\)\.$/,
    );
    const same = withVisit(raised, { wishOpeningMm: 8.9 });
    expect(told(sheetOf(same), 'wish')).toMatch(/as wished, it stands as it leaves\.$/);
    const far = withVisit(raised, { wishOpeningMm: 59 });
    expect(told(sheetOf(far), 'wish')).toMatch(/^The D key cannot stand as wished: /);
  });

  it('tells what a wish for all keys would cost, the worst notes first, each with its ±', () => {
    const { cost } = lowered.wishedShift!;
    const [first] = cost.notes;
    const { cents, centsPlusMinus } = first.differences[0]!;
    const heard = cost.notes.filter(({ differences: [d] }) => d!.noticedBy === 'the player').length;
    expect(told(loweredSheet, 'wish')).toContain(
      `With every key 1.0 mm (0.039 in) lower at the front than it leaves, you should notice ${heard} notes, most of all ${first.label} by ${Math.abs(cents).toFixed(1)} ± ${centsPlusMinus.toFixed(1)} cents flatter`,
    );
    const { rows, rest } = loweredSheet.wishNotes!;
    expect(rows.map(({ fingering }) => fingering)).toEqual(
      cost.notes.slice(0, rows.length).map(({ fingering }) => fingering),
    );
    expect(rows[0].cents).toBe(`${signed(cents)} ± ${centsPlusMinus.toFixed(1)}`);
    expect(rest).toMatch(/^\d+ more notes would change by \d+\.\d cents or less; /);
    expect(loweredSheet.missing).not.toContain('Say which key the wish is about, or that it is about all.');
  });

  it('marks the wish for all on its curve, with what its note does when every key moves', () => {
    const { wished, wishedShift } = lowered;
    const mark = loweredSheet.curve!.marks.find(({ mark: m }) => m === 'wish')!;
    const note = mainNote(wished!.study)!;
    const alone = wished!.wish!.notes[note.index]!.fromPresentCents;
    const all = wishedShift!.cost.notes.find(({ fingering }) => fingering === note.id)!.differences[0]!;
    expect([mark.label, mark.cents]).toEqual(['as wished', all.cents]);
    expect(all.cents).toBeLessThan(alone);
  });

  it('asks how far where the wish for all does not say, and reckons nothing', () => {
    const unsaid = wishingForAll(0);
    const facts = playerSheetFacts(unsaid);
    expect(facts.wishedShift).toBeNull();
    const sheet = makePlayerSheet(unsaid, facts, 'mm');
    expect(sheet.missing).toContain('Say how much higher or lower the player wants all keys.');
    expect([sheet.wishNotes, allSentences(sheet).some(({ id }) => id === 'wish')]).toEqual([null, false]);
  });

  it('is a sheet to agree on before the work where something is proposed and nothing set', () => {
    const plan = withProposed(withProposed(onTheBench('alto'), 'd', 9.1), 'e', 9);
    const sheet = sheetOf(plan);
    expect(sheet.headline.text).toBe('Nothing is done yet: this is what is proposed.');
    expect(sheet.decided.heading).toBe('What is proposed');
    expect(sheet.decided.sentences.map(({ text }) => text)).toContain(
      'The D key is to go from 8.0 mm (0.315 in) at the front to 9.1 mm (0.358 in) at the front.',
    );
    expect(sheet.consent.text).not.toContain('what was done');
    const many = ['d', 'e', 'f', 'g', 'a', 'b', 'bis', 'low-c', 'low-b', 'e-flat'].reduce(
      (now, pad) => withProposed(now, pad, 6),
      onTheBench('alto'),
    );
    expect(sheetOf(many).decided.sentences).toHaveLength(9);
    expect(sheetOf(many).decided.sentences[8].text).toBe(
      '2 more keys are to move; the shop’s page has them.',
    );
  });

  it('tells a proposal against as found: what it would do to the notes, and where its key would stand', () => {
    const plan = withProposed(onTheBench('alto'), 'd', 8.9);
    const facts = playerSheetFacts(plan);
    const sheet = makePlayerSheet(plan, facts, 'mm');
    const done = playerSheetFacts(withSet(onTheBench('alto'), 'd', { mm: 8.9, at: 'front' })).comparison;
    const centsOf = ({ notes }: typeof done, id: string): number =>
      notes.find(({ fingering }) => fingering === id)!.differences[0]!.cents;
    expect(sheet.isProposal).toBe(true);
    expect(sheet.notes.rows.map(({ fingering }) => fingering)).toContain('E4');
    expect(Math.abs(centsOf(facts.comparison, 'E4') - centsOf(done, 'E4'))).toBeLessThan(LONG_ROUNDING);
    expect(sheet.notes.rest).toMatch(/ would change by /);
    expect(sheet.curve!.marks.map(({ label }) => label)).toEqual(['as found', 'as proposed', 'enough']);
    expect(sheet.keys.rows[0]).toMatchObject({ pad: 'd', set: '8.9 mm (0.350 in)' });
    expect(told(sheet, 'lost motion')).toMatch(/^As proposed, lost motion would be left\. /);
    expect(sheet.missing).toContain('No opening is read as set.');
    const file = makeSheetFile(plan, facts);
    const follower = file.rows.find(({ pad }) => pad === 'f-sharp-auxiliary')!.cells;
    expect(follower[file.columns.indexOf('set')].value).toBe('');
  });

  it('tells a wish beside what is proposed where nothing is set', () => {
    const plan = withProposed(onTheBench('alto'), 'd', 8.9);
    const wishOf = (wish: Parameters<typeof withVisit>[1]): string =>
      told(sheetOf(withVisit(plan, wish)), 'wish');
    expect(wishOf({ wishKey: 'd', wishOpeningMm: 6.5 })).toMatch(
      /^With the D key at 6\.5 mm \(0\.256 in\) at the front, as wished, and not as proposed, E5 would be /,
    );
    expect(wishOf({ wishKey: 'd', wishOpeningMm: 8.9 })).toMatch(/as wished, it stands as is proposed\.$/);
    expect(wishOf({ wishShiftMm: -1 })).toMatch(
      /^With every key 1\.0 mm \(0\.039 in\) lower at the front than is proposed, /,
    );
  });

  it('tells a key that nobody read as found as set, and what is told of it as beside the example', () => {
    const set = withSet(ofTheExample(onTheBench('alto')), 'd', { mm: 8.3, at: 'front' });
    const sheet = sheetOf(set);
    expect(told(sheet, 'decided d')).toMatch(
      /^The D key was set to 8\.3 mm \(0\.327 in\) at the front; how it was found was not read\. (Below|For) /,
    );
    expect(sheet.headline.text).toMatch(
      /^The D key is set to 8\.3 mm \(0\.327 in\) at the front(, and .* follow)?; beside the example, for how (it was|they were) found was not read, /,
    );
    expect(sheet.keys.rows.find(({ pad }) => pad === 'd')!.readAt).toBe('as found the example’s');
    expect(allSentences(sheet).filter(({ text }) => / from 8\.0 to /.test(text))).toEqual([]);
    const plan = withProposed(ofTheExample(onTheBench('alto')), 'd', 8.3);
    expect(told(sheetOf(plan), 'proposed d')).toBe(
      'The D key is to go to 8.3 mm (0.327 in) at the front; how it was found was not read.',
    );
  });

  it('draws no curve of a key that nobody read, unless the player names it', () => {
    const bare = ofTheExample(wishingForAll(-1));
    const none = playerSheetFacts(bare);
    expect(none.wishedShift).not.toBeNull();
    expect(none.wished).toBeNull();
    expect(makePlayerSheet(bare, none, 'mm').curve).toBeNull();
    expect(playerSheetFacts(withFoundLengths(bare, 'e', { openingMm: 8 })).wished!.pad).toBe('e');
    const { document } = bare.visit;
    const named = { ...bare, visit: { ...bare.visit, document: withWish(document, 'd', null) } };
    expect(playerSheetFacts(named).wished!.pad).toBe('d');
  });

  it('says how much of the horn was read, and a pitch’s ± only where the bore is this horn’s', () => {
    const halves = facts.comparison.notes.map(({ setups }) => setups[1]!.centsPlusMinus!);
    const [least, most] = [Math.min(...halves), Math.max(...halves)].map((half) => half.toFixed(0));
    expect(told(sheet, 'limits')).toMatch(
      new RegExp(
        `Every opening was read on this horn\\. A pitch by itself is good to ±${least} to ±${most} cents; `,
      ),
    );
    const some = withFoundLengths(ofTheExample(onTheBench('alto')), 'd', { openingMm: 8 });
    expect(told(sheetOf(some), 'limits')).toMatch(
      /^Worked out, not played\. 1 of 23 openings was read on this horn; the others, bore and mouthpiece are an example’s\. A pitch by itself is the example’s, not this horn’s; /,
    );
    expect(told(sheetOf(some), 'limits')).not.toMatch(/itself is good to/);
  });

  it('says what was not done or not recorded, and invents nothing', () => {
    const bare = onTheBench('alto');
    const empty = sheetOf(bare);
    expect(empty.headline.text).toBe('The horn leaves as it was found: no key stands otherwise.');
    expect([empty.keys.rows, empty.notes.rows, empty.curve, empty.wish]).toEqual([[], [], null, null]);
    expect(allSentences(empty).some(({ id }) => id === 'wish')).toBe(false);
    expect([empty.decided.sentences, empty.keys.rest]).toEqual([[], '']);
    expect(told(empty, 'seals')).toBe('Seals were not recorded.');
    expect(told(empty, 'links')).toBe('Links were not recorded.');
    expect(told(empty, 'played')).toBe('No note was played and measured.');
    expect(told(empty, 'pads')).toBe('No pad of another size or thickness is recorded.');
    expect(empty.missing).toContain('No opening is read as set.');
    const { visit } = bare;
    const said = {
      ...bare,
      visit: { ...visit, document: withSaid(visit.document, 'seals and links', 'done') },
    };
    expect(told(sheetOf(said), 'seals')).toBe('Seals were checked; no leak was recorded.');
    expect(told(sheetOf(said), 'links')).toBe('Links were checked; no reading of them is recorded.');
    const needless = withVisit(bare, withSaid(visit.document, 'seals and links', 'not needed'));
    expect(told(sheetOf(needless), 'seals')).toBe(
      'Seals were not gone over: that was said not to be needed.',
    );
    expect(sheetOf(needless).missing).not.toContain('Seals are not recorded.');
    expect(
      sheetOf(withLeakingSeat(said, 'f', {})).parts.flatMap(({ sentences }) => sentences),
    ).toContainEqual(
      expect.objectContaining({
        text: 'Seals were checked: F leaks as found, and no new seating is recorded, though seals and links were said to be done.',
      }),
    );
  });

  it('tells seats that leaked, those seated anew, and links that were read', () => {
    const leaking = withLeakingSeat(withLeakingSeat(raised, 'e', { gapMm: 0.05 }), 'f', {});
    const mended = withDone(leaking, { move: 'seat e', valueMm: 0, read: true });
    expect(told(sheetOf(mended), 'seals')).toBe(
      'Seals were checked: one pad seated anew (E); F leaks as found, and no new seating is recorded.',
    );
    const linked = withDone(mended, { move: 'link e > f-sharp-auxiliary', valueMm: 0.01, read: true });
    expect(told(sheetOf(linked), 'links')).toMatch(
      /^Links were checked: 1 of 11 links were read, and each shuts both pads within a paper\./,
    );
    const hanging = withDone(linked, { move: 'link f > f-sharp-auxiliary', valueMm: 0.1, read: true });
    expect(told(sheetOf(hanging), 'links')).toContain(
      'F♯ auxiliary is left 0.1 mm (0.004 in, 4.0 papers) open',
    );
  });

  it('tells pads of another thickness and what they alone would have done', () => {
    const { asSet: set } = raised;
    const keys = [
      ...set.document.keys.filter(({ pad }) => pad !== 'e'),
      { pad: 'e', padThicknessMm: 4.6, padDiameterMm: 34 },
    ];
    const padded = { ...raised, asSet: { ...set, document: { ...set.document, keys } } };
    const { pads } = playerSheetFacts(padded);
    expect(pads!.pads.map(({ pad }) => pad)).toEqual(['e']);
    const words = told(sheetOf(padded), 'pads');
    expect(words).toMatch(
      /^One pad changed \(E\)\. At its old stop E, 0\.5 mm \(0\.020 in\) thicker, would have opened /,
    );
    expect(words).toContain(`→ ${formatLength(pads!.pads[0].after.frontMm, 'mm')}`);
    expect(told(sheetOf(padded), 'reversible')).toContain('The old pads do not go back in.');
  });

  it('shows what was heard beside what was worked out', () => {
    const take = { fingering: 'E4', heard: 'tuner' } as const;
    const heard = withVisit(raised, {
      played: [
        { ...take, cents: -6, setup: 'as found' },
        { ...take, cents: -3, setup: 'as set' },
      ],
    });
    const { rows } = sheetOf(heard).notes;
    expect(rows.map(({ fingering, heardCents }) => [fingering, heardCents])).toEqual([
      ['E5', ''],
      ['E4', '+3'],
    ]);
    expect(told(sheetOf(heard), 'played')).toBe(
      'Played and measured: one note as found and one note as set.',
    );
  });

  it('says where an opening was read if not at the front', () => {
    const centre = withSet(onTheBench('alto'), 'd', { mm: 5.5, at: 'centre' });
    expect(sheetOf(centre).keys.rows[0].readAt).toBe('read at the centre');
  });

  it('gives rows to the few keys that matter most and names the others', () => {
    const every = sheetOf(everyKeySet());
    expect(every.keys.rows).toHaveLength(4);
    expect(every.keys.rest).toBe('The other 19 keys changed less in venting (numbers on the shop’s page).');
    const six = ['d', 'e', 'f', 'g', 'a', 'b'].reduce(
      (now, pad) => withSet(now, pad, { mm: 7.5, at: 'front' }),
      onTheBench('alto'),
    );
    expect(sheetOf(six).keys.rest).toMatch(
      /^The other \d keys changed less in venting: [^.]*[↑↓], .* \(numbers/,
    );
    expect(every.headline.text).toMatch(/^23 keys stand otherwise, 13 higher and 10 lower; /);
    expect(every.decided.sentences).toHaveLength(3);
  });

  it('gives lengths in the unit chosen first', () => {
    const inches = makePlayerSheet(raised, facts, 'thou');
    expect(told(inches, 'decided d')).toContain('from 0.315 to 0.350 in (8.0 to 8.9 mm) at the front');
    expect(inches.keys.rows[0].found).toMatch(/^0\.315 ± 0\.\d{3} in \(8\.0 mm\)$/);
  });

  it('reads a curve of its own key where none was named, and none where no key moved', () => {
    const unnamed = withVisit(raised, {});
    const { visit } = unnamed;
    const bare = { ...unnamed, visit: { ...visit, document: withWish(visit.document, null, null) } };
    const known = playerSheetFacts(bare);
    expect([known.wished!.pad, known.wished!.isNamed]).toEqual(['d', false]);
    expect(makeSheetCurve(known, known.wished!, 'mm').marks.map(({ mark }) => mark)).toEqual([
      'as found',
      'as set',
      'enough',
    ]);
  });
});

describe('the wish of a visit', () => {
  const { document } = raised.visit;

  it('is about one key or about all, never both', () => {
    const forAll = withWishForAll(document, -1);
    expect([forAll.wishKey, forAll.wishOpeningMm, forAll.wishShiftMm]).toEqual([undefined, undefined, -1]);
    expect(readWith(visitSchema, forAll).ok).toBe(true);
    expect(withWishForAll(forAll, -1)).toBe(forAll);
    expect(withWish(forAll, 'd', 6.5)).toEqual(document);
    const both = readWith(visitSchema, { ...document, wishShiftMm: -1 });
    expect(both.ok ? [] : both.issues.map(({ path, message }) => [path, message])).toEqual([
      ['wishShiftMm', 'invalid wish: it names one key and all keys at once; expected one or the other'],
    ]);
    const far = readWith(visitSchema, withWishForAll(document, 30));
    expect(far.ok ? '' : far.issues[0].message).toBe(
      'invalid how much higher all keys are wished, at the front: 30 mm; expected -20 to 20 mm',
    );
  });
});

describe('sentences of the player’s sheet', () => {
  const { visit } = raised;
  const limits = sheet.parts.find(({ id }) => id === 'limits')!.sentences[0];

  it('are printed as a person wrote them, and given back to the program', () => {
    const own = withSheetWords(visit.document, limits, '  Trust the differences.  ');
    const rewritten = { ...raised, visit: { ...visit, document: own } };
    expect(readWith(visitSchema, own).ok).toBe(true);
    const after = makePlayerSheet(rewritten, facts, 'mm').parts.find(({ id }) => id === 'limits')!
      .sentences[0];
    expect(after).toMatchObject({ text: 'Trust the differences.', isRewritten: true, isOutdated: false });
    expect(withSheetWords(own, limits, 'Trust the differences. ')).toBe(own);
    expect(withSheetWords(visit.document, limits, null)).toBe(visit.document);
    expect(withSheetWords(own, limits, null)).toEqual(visit.document);
    expect(withSheetWords(own, limits, limits.written)).toEqual(visit.document);
    expect(withSheetWords(own, limits, '').sheetWords).toEqual([
      { id: 'limits', text: '', written: limits.written },
    ]);
  });

  it('are told to be older than the numbers where these changed since', () => {
    const decided = sheet.decided.sentences[0];
    const own = withSheetWords(visit.document, decided, 'D is up to 8.9 mm.');
    const later = withSet({ ...raised, visit: { ...visit, document: own } }, 'd', { mm: 9.4, at: 'front' });
    expect(sheetOf(later).decided.sentences[0]).toMatchObject({
      text: 'D is up to 8.9 mm.',
      isRewritten: true,
      isOutdated: true,
    });
    const now = sheetOf(later).decided.sentences[0];
    const confirmed = withSheetWords(later.visit.document, now, now.text);
    expect(confirmed.sheetWords).toEqual([{ id: 'decided d', text: now.text, written: now.written }]);
  });

  it('are refused where one is rewritten twice or is too long', () => {
    const words = { id: 'limits', text: 'a', written: 'b' };
    const twice = readWith(visitSchema, { ...visit.document, sheetWords: [words, words] });
    expect(twice.ok ? [] : twice.issues.map(({ message }) => message)).toEqual([
      'invalid sentences of the player’s sheet: one is rewritten twice; expected each once',
    ]);
    const long = readWith(visitSchema, {
      ...visit.document,
      sheetWords: [{ ...words, text: 'a'.repeat(1001) }],
    });
    expect(long.ok ? '' : long.issues[0].message).toContain('expected at most 1000 letters');
  });
});

describe('the page for the shop’s file', () => {
  it('has every reading of every hole with its origin and ±', () => {
    const file = makeSheetFile(raised, facts);
    expect(file.rows).toHaveLength(raised.horn.document.holes.length);
    expect(file.rows.every(({ cells }) => cells.length === file.columns.length)).toBe(true);
    const d = file.rows.find(({ pad }) => pad === 'd')!;
    const cell = (column: string) => d.cells[file.columns.indexOf(column)];
    expect(cell('found')).toEqual({ value: '8.00', origin: 'm ±0.2' });
    expect(cell('set')).toEqual({ value: '8.90', origin: 'm ±0.2' });
    expect(cell('prop.')).toEqual({ value: '', origin: '' });
    expect(cell('hinge')).toEqual({ value: '22.50', origin: 'm ±0.5' });
  });

  it('has the day, the links, the work and what was played', () => {
    const done = withDone(raised, { move: 'link e > bis', valueMm: 0.02, read: false });
    const heard = withVisit(done, {
      played: [{ fingering: 'Bb4 bis', cents: 4.2, setup: 'as set', heard: 'tuner' }],
      notes: 'Neck tenon loose.',
    });
    const entry = (label: string) => makeSheetFile(heard, facts).entries.find((e) => e.label === label)?.text;
    expect(entry('Day')).toContain('player Marta Quill; read by Jonas Reed; air 26.85 °C; A4 440 Hz.');
    expect(entry('Work')).toBe('link E > bis 0.02 mm (as asked)');
    expect(entry('Played as set')).toBe('B♭4 bis +4.2 cents');
    expect(entry('Links')).toContain('D closes F♯ auxiliary (ratio 0.93)');
    expect(entry('Notes')).toBe('Neck tenon loose.');
    expect(entry('Seals and links')).toBeUndefined();
    expect(entry('Horn')).toMatch(/^alto; bore and mouthpiece measured on this horn: bore by \d+ points/);
    expect(entry('Horn')).not.toContain('README');
    expect(entry('Calibration')).toBeUndefined();
  });

  it('is signed by the program’s own version', () => {
    const { version } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')) as {
      version: string;
    };
    expect(PROGRAM_VERSION).toBe(version);
    expect(makeSheetFile(raised, facts).head).toContain(`Ventwright ${version}`);
  });
});

describe('a horn set like another', () => {
  /** The demo alto with its D and E keys set, and the horn it is to be like: a twin whose pads stand so far off. */
  const set = ['d', 'e'].reduce(
    (now, pad) => withSet(now, pad, { mm: 7, at: 'front', plusMinusMm: 0.2 }),
    onTheBench('alto'),
  );
  const facts = playerSheetFacts(set);
  const leaves = facts.comparison.keys.flatMap(({ id, setups: [, as] }) =>
    as === null ? [] : [{ id, as: as! }],
  );
  const like = (by: SetLike['by'], offMm: Readonly<Record<string, number>>): SetLike => ({
    horn: 'Second alto',
    by,
    pads: leaves.map(({ id, as }) => ({
      pad: id,
      frontMm: as.frontMm - (offMm[id] ?? 0),
      frontPlusMinusMm: 0.15,
      ventSharePercent: 100 * as.ventShare - (offMm[id] ?? 0),
      ventSharePlusMinusPercent: 0.5,
    })),
  });
  const said = (setLike: SetLike, contents = set, of = facts): string =>
    told(makePlayerSheet(withVisit(contents, { setLike }), of, 'mm'), 'like');

  it('says so, by what, how near it comes and what that changes', () => {
    const words = said(like('front', { d: 0.6, e: 0.1 }));
    const pm = Math.hypot(leaves.find(({ id }) => id === 'd')!.as.frontPlusMinusMm, 0.15);
    expect(words).toMatch(
      /^This horn is set like Second alto, by the same front opening, so that the fingers feel the same\. /,
    );
    expect(words).toContain(
      `Of ${leaves.length} keys that both have, one can be shown to differ; the furthest off is D, 0.6 ± ${pm.toFixed(1)} mm`,
    );
    expect(words).toMatch(/ higher\.$/);
  });

  it('never tells a difference inside its ± as one', () => {
    expect(said(like('front', { d: 0.1 }))).toMatch(
      /none can be shown to differ; the widest, D, 0\.1 ± 0\.\d mm .* lies inside its ±\./,
    );
    expect(said(like('front', {}))).toMatch(/ come to the same, within ± 0\.\d mm/);
    expect(said(like('vent share', { e: -9 }))).toMatch(
      /by the same vent share, so that the notes vent the same\. .*the furthest off is E, 9\.0 ± \d\.\d % vent share less\./,
    );
  });

  it('is to be set so as long as it is only proposed, and asks for no wish besides', () => {
    const planned = withProposed(onTheBench('alto'), 'd', 7);
    const wanted = like('front', {});
    const page = makePlayerSheet(withVisit(planned, { setLike: wanted }), playerSheetFacts(planned), 'mm');
    expect(told(page, 'like')).toMatch(/^This horn is to be set like Second alto/);
    expect(page.missing.join(' ')).not.toContain('which key the wish is about');
  });

  it('is not told where the visit says nothing of it, as every visit written before', () => {
    const before = readWith(visitSchema, set.visit.document);
    expect(before).toEqual({ ok: true, value: set.visit.document });
    expect(sheet.parts.some(({ id }) => id === 'like')).toBe(false);
    const bad = readWith(visitSchema, {
      ...set.visit.document,
      setLike: { ...like('front', {}), by: 'ear' },
    });
    expect(bad.ok ? [] : bad.issues.map(({ message }) => message)).toEqual([
      'invalid what the two horns are to have in common: "ear"; expected "front" or "vent share"',
    ]);
  });
});
