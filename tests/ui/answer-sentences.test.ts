import { describe, expect, it } from 'vitest';
import type { StudyReport } from '../../src/ui/state/study-report.ts';
import { makeAnswerSentences, type Manner } from '../../src/ui/views/key-study/answer-sentences.ts';
import { noteLabel, signedCents } from '../../src/ui/parts/note-names.ts';
import { plain, report, sureReport } from './demo.ts';

const MM: Manner = { unit: 'mm', readAt: 'front' };

function words(of: StudyReport, manner = MM, proposedMm = of.present.frontMm): Record<string, string> {
  const { links, ...rest } = makeAnswerSentences(of, manner, proposedMm);
  const told = Object.fromEntries(Object.entries(rest).map(([name, text]) => [name, plain(text)]));
  return { ...told, links: links.map((l) => `${l.pressing ? '!' : ''}${plain(l.text)}`).join(' ') };
}

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
      `to ${answer!.centreMm.toFixed(1)} mm (${(answer!.centreMm / 25.4).toFixed(3)} in) at the centre`,
    );
  });

  it('tells what a further step would buy, and how sure the answer is', () => {
    const told = words(e);
    expect(told.reason).toContain('another 0.5 mm (0.020 in) buys less than 1 cent on any note');
    const { readings, padModel } = e.budgets.answerMm!;
    expect(half).toBeGreaterThan(Math.abs(padModel));
    expect(readings.length).toBeGreaterThan(0);
    expect(told.sure).toBe(
      `± ${half.toFixed(1)} mm (${(half / 25.4).toFixed(3)} in) at the front: what was read and the pad model, ` +
        `together. The opening as found is known to ± ${e.budgets.presentMm.plusMinus.toFixed(1)} mm.`,
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
      `As found it stands at 8.0 mm (0.315 in) at the front: ${(answer!.frontMm - 8).toFixed(1)} ± ${away.toFixed(1)} mm lower; ` +
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

  it('warns of the arm that would hold another pad down, and presses where the proposal runs into it', () => {
    const { belowMm } = e.holdsDown[0];
    const shown = `Set below ${belowMm.toFixed(1)} mm (${(belowMm / 25.4).toFixed(3)} in), its arm would start to hold down F♯ auxiliary.`;
    expect(words(e, MM, belowMm + 0.1).links).toBe(shown);
    expect(words(e, MM, belowMm - 0.1).links).toBe(`!${shown}`);
  });

  it('says that the arm holds the other pad down already, and from where it would let go', () => {
    const low = report('e', { e: { openingMm: 5 } });
    const letGo = e.holdsDown[0].belowMm;
    expect(low.holdsDown[0].belowMm).toBeCloseTo(letGo, 9);
    expect(words(low).links).toBe(
      `!As it stands its arm holds down F♯ auxiliary, and lets go only above ${letGo.toFixed(1)} mm ` +
        `(${(letGo / 25.4).toFixed(3)} in) at the front; the curve leaves what it holds where it is.`,
    );
  });

  it('names two pads in one sentence where both begin at the same height', () => {
    expect(words(report('f-sharp-auxiliary')).links).toMatch(/hold down G♯ and bis\.$/);
  });

  it('names the key that rules where a link sets the opening', () => {
    const bis = report('bis', { a: { openingMm: 4.5 } });
    expect(bis.answer.kind).toBe('set by a link');
    const told = words(bis);
    const link = bis.answer.kind === 'set by a link' ? bis.answer.linkFrontMm : NaN;
    expect(told.headline).toBe(
      `The A key’s arm stops the bis key at ${link.toFixed(1)} mm (${(link / 25.4).toFixed(3)} in) at the front, ` +
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
