import { describe, expect, it } from 'vitest';
import type { StudyReport } from '../../src/ui/state/study-report.ts';
import { makeAnswerSentences } from '../../src/ui/views/key-study/answer-sentences.ts';
import { makeLinkSentences } from '../../src/ui/views/key-study/link-sentences.ts';
import type { Manner } from '../../src/ui/views/key-study/opening-words.ts';
import { makeStudyLinks } from '../../src/ui/views/key-study/study-links.model.ts';
import { noteLabel, signedCents } from '../../src/ui/parts/note-names.ts';
import type { BenchContents } from '../../src/documents/bench-contents.ts';
import { foundDocuments, withFoundLengths, withProposed, withSet } from '../../src/ui/state/key-lengths.ts';
import { onTheBench, plain, report, sureReport } from './demo.ts';

const MM: Manner = { unit: 'mm', readAt: 'front' };

function words(of: StudyReport, manner = MM): Record<string, string> {
  const told = Object.entries(makeAnswerSentences(of, manner));
  return Object.fromEntries(told.map(([name, text]) => [name, plain(text)]));
}

/** What links say of a key, a pressing sentence after a mark. */
function linkWords(pad: string, proposedMm: number, contents = onTheBench('alto')): string[] {
  const { horn, setup } = foundDocuments(contents);
  const links = makeStudyLinks(contents, pad, proposedMm);
  const sentences = makeLinkSentences(sureReport(pad, {}, { horn, setup }), links, MM, proposedMm);
  return sentences.map(({ text, pressing }) => `${pressing ? '!' : ''}${plain(text)}`);
}

/** The demo alto with some fronts read otherwise. */
const readAt = (fronts: Readonly<Record<string, number>>): BenchContents =>
  Object.entries(fronts).reduce(
    (now, [pad, openingMm]) => withFoundLengths(now, pad, { openingMm, measuredAt: 'front' }),
    onTheBench('alto'),
  );

describe('the answer in words', () => {
  const e = sureReport('e');
  const answer = e.answer.kind === 'none in reach' ? null : e.answer.point;
  const half = e.budgets.answerMm!.plusMinus;

  it('tells the opening that is enough, in both units, with its measuring point', () => {
    const mm = answer!.frontMm;
    expect(words(e).headline).toBe(
      `Open the E key to ${mm.toFixed(1)} ± ${half.toFixed(1)} mm (${(mm / 25.4).toFixed(3)} in) at the front.`,
    );
  });

  it('puts the inch first when lengths are read in inches', () => {
    const mm = answer!.frontMm;
    expect(words(e, { unit: 'thou', readAt: 'front' }).headline).toContain(
      `to ${(mm / 25.4).toFixed(3)} ± ${(half / 25.4).toFixed(3)} in (${mm.toFixed(1)} mm) at the front`,
    );
  });

  it('tells the same pose at the centre when openings are read there', () => {
    expect(words(e, { unit: 'mm', readAt: 'centre' }).headline).toContain(
      `to ${answer!.centreMm.toFixed(1)} ± ${((half * answer!.centreMm) / answer!.frontMm).toFixed(1)} mm ` +
        `(${(answer!.centreMm / 25.4).toFixed(3)} in) at the centre`,
    );
  });

  it('tells what a further step would buy, and how sure the answer is', () => {
    const told = words(e);
    expect(told.reason).toContain('another 0.5 mm (0.020 in) buys less than 1 cent on any note');
    const { readings, padModel } = e.budgets.answerMm!;
    expect(half).toBeGreaterThan(Math.abs(padModel));
    expect(readings.length).toBeGreaterThan(0);
    expect(told.sure).toBe(
      `± ${half.toFixed(1)} mm (${(half / 25.4).toFixed(3)} in) at the front: what was read and the pad model, together.`,
    );
  });

  it('tells where the key stands and which note lies furthest from there', () => {
    const furthest = e.governed
      .map(({ id }, i) => ({ id, cents: answer!.notes[i]!.fromPresentCents }))
      .sort((a, b) => Math.abs(b.cents) - Math.abs(a.cents))[0];
    expect(furthest.cents).toBeGreaterThan(0);
    const ofNote = e.budgets.changeCents[e.governed.findIndex(({ id }) => id === furthest.id)]!.plusMinus;
    const away = Math.hypot(half, e.budgets.presentMm.plusMinus);
    expect(words(e).standing).toBe(
      `As found it stands at 8.0 ± ${e.budgets.presentMm.plusMinus.toFixed(1)} mm (0.315 in) at the front: ${(answer!.frontMm - 8).toFixed(1)} ± ${away.toFixed(1)} mm lower; ` +
        `${noteLabel(furthest.id)} would rise ${furthest.cents.toFixed(1)} ± ${ofNote.toFixed(1)} cents there, ` +
        `vent share ${Math.round(100 * e.present.ventShare)} ± 1 %.`,
    );
  });

  it('says enough instead of open where the key stands higher already, and fall instead of rise', () => {
    const high = report('e', { e: { openingMm: 13 } });
    const told = words(high);
    expect(told.headline).toMatch(/ at the front is enough for the E key\.$/);
    expect(told.standing).toMatch(/would fall .* cents there/);
  });

  it('says that no difference can be shown where it lies inside its ±, and only there', () => {
    const away = Math.hypot(half, e.budgets.presentMm.plusMinus);
    const inside = words(sureReport('e', { e: { openingMm: answer!.frontMm - 0.9 * away } }));
    expect(inside.headline).toMatch(
      / is enough for the E key, and as far as can be shown it stands there\.$/,
    );
    expect(inside.standing).toContain('from there is no difference that can be shown.');
    const outside = words(sureReport('e', { e: { openingMm: answer!.frontMm - 1.1 * away } }));
    expect(outside.headline).toMatch(/^Open the E key to/);
    expect(outside.standing).not.toContain('can be shown');
    const above = words(sureReport('e', { e: { openingMm: answer!.frontMm + 0.9 * away } }));
    expect(above.standing).toContain('no difference that can be shown');
  });

  it('names the key that rules where a link sets the opening', () => {
    const bis = report('bis', { a: { openingMm: 4.5 } });
    expect(bis.answer.kind).toBe('set by a link');
    const told = words(bis);
    const link = bis.answer.kind === 'set by a link' ? bis.answer.linkFrontMm : NaN;
    expect(told.headline).toBe(
      `The A key’s arm stops the bis key at ${link.toFixed(1)} ± 0.0 mm (${(link / 25.4).toFixed(3)} in) at the front, ` +
        'short of where height stops helping.',
    );
    expect(told.reason).toContain('Raise the A key first.');
  });

  it('gives the reason where no opening within reach is enough', () => {
    const none = report('e', {}, { reach: 0.004 });
    expect(none.answer.kind).toBe('none in reach');
    const told = words(none);
    expect(told.headline).toBe('The E key has no opening within reach where more height stops helping.');
    expect(told.reason).toMatch(
      /Up to 4\.0 mm \(0\.157 in\) at the front.*still helps: the last step within reach/,
    );
    expect(told.sure).toBe('');
  });

  it('says that no note moves rather than naming an opening', () => {
    const still = report('e', {}, { governsCents: 1000 });
    expect(still.governed).toEqual([]);
    expect(words(still).headline).toBe(
      'No note moves by more than a cent with the E key: set it by ear and feel.',
    );
  });
});

describe('what links say of a key', () => {
  const FREE_MM = report('e').holdsDown[0].belowMm;
  const free = (mm: number): string => `${mm.toFixed(1)} ± 0.4 mm (${(mm / 25.4).toFixed(3)} in)`;

  it('warns of the arm that would hold another pad down, and presses where the proposal runs into it', () => {
    const shown = `Set below ${free(FREE_MM)} at the front, its arm starts to hold F♯ auxiliary down.`;
    expect(linkWords('e', FREE_MM + 0.1)).toEqual([shown]);
    const pressing = linkWords('e', FREE_MM - 0.1);
    expect(pressing[0]).toBe(`!${shown}`);
  });

  it('says that the arm holds the other pad down already, and from where that is free', () => {
    expect(linkWords('e', 6, readAt({ e: 6 }))).toEqual([
      `!As found, its arm holds F♯ auxiliary down; above ${free(FREE_MM)} at this key’s front F♯ auxiliary is free. The curve moves this key alone.`,
    ]);
  });

  it('names the other arm where one holds the pad anyway', () => {
    const [told] = linkWords('d', 8, readAt({ e: 7 }));
    expect(told).toMatch(
      /^Set below 7\.0 ± .*, its arm holds F♯ auxiliary lower than the E key’s arm does anyway\.$/,
    );
    const [both] = linkWords('d', 6, readAt({ d: 6, e: 7 }));
    expect(both).toMatch(/above 7\.0 ± .* at this key’s front the E key’s arm holds it\./);
  });

  it('names two pads in one sentence where both begin at the same height', () => {
    expect(linkWords('f-sharp-auxiliary', 7.2).join(' ')).toMatch(/starts to hold G♯ and bis down\.$/);
  });

  it('tells the motion that a raised key leaves lost, and presses it', () => {
    const [lost, ...rest] = linkWords('d', 9);
    expect(lost).toMatch(
      /^!Set to 9\.0 mm: D goes 1\.2 ± 0\.\d mm before F♯ auxiliary stirs, 1\.0 ± 0\.2 mm more than as found; F♯ auxiliary at .* takes it up\./,
    );
    expect(rest.filter((text) => text.includes('stirs'))).toEqual([]);
    expect(linkWords('d', 8).filter((text) => text.includes('stirs'))).toEqual([]);
  });

  it('tells no lost motion once what takes it up is proposed too, nor that of another key', () => {
    const mended = ['f-sharp-auxiliary', 'e', 'f'].reduce(
      (now, pad) => withProposed(now, pad, { 'f-sharp-auxiliary': 8.2, e: 9, f: 8.8 }[pad]!),
      onTheBench('alto'),
    );
    // Raised with it, the auxiliary leaves the next links behind in its turn.
    expect(linkWords('d', 9, mended).join(' ')).not.toContain('before F♯ auxiliary stirs');
    expect(linkWords('d', 9, mended).join(' ')).toMatch(/before G♯ stirs, .*\. bis is late too\./);
    const raised = withProposed(onTheBench('alto'), 'd', 9);
    expect(linkWords('g', 6.2, raised).join(' ')).not.toContain('stirs');
  });

  it('tells it of the opening as set as well, where that is another', () => {
    const set = withSet(onTheBench('alto'), 'd', { mm: 9, at: 'front' });
    expect(linkWords('d', 8, set)[0]).toMatch(/^!As set at 9\.0 mm: D goes 1\.2 ± /);
    expect(linkWords('d', 9, set).filter((text) => text.includes('stirs'))).toHaveLength(1);
  });
});

describe('note names', () => {
  it('are written as the trade writes them', () => {
    expect(noteLabel('Bb5 one-and-one')).toBe('B♭5 one-and-one');
    expect(noteLabel('F#4 side')).toBe('F♯4 side');
    expect(noteLabel('Bb4 bis')).toBe('B♭4 bis');
    expect(noteLabel('moves Eb6 by 1.2 cents')).toBe('moves E♭6 by 1.2 cents');
  });

  it('come with signed cents, and nothing is plus or minus zero', () => {
    expect(signedCents(2.34)).toBe('+2.3');
    expect(signedCents(-2.34)).toBe('−2.3');
    expect(signedCents(-0.04)).toBe('0.0');
  });
});
