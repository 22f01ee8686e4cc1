import { describe, expect, it } from 'vitest';
import { cutAtFigures } from '../../src/ui/parts/reason-view.model.ts';
import { answerArrived, answerAsked } from '../../src/ui/state/asked-answer.ts';
import { makeBenchState } from '../../src/ui/state/bench-state.ts';
import { readCup } from '../../src/ui/state/read-pads.ts';
import { makeLeaksView } from '../../src/ui/views/regulation/leaks/leaks-view.model.ts';
import { makePadFitView } from '../../src/ui/views/regulation/pads/pad-fit-view.model.ts';
import { answerRegulation, REGULATION_REQUESTS, TWO_PAPERS } from './demo-regulation.ts';
import { onTheBench } from './demo.ts';

const alto = onTheBench('alto');
const fresh = makeBenchState([], alto);

describe('the reasons of a leak', () => {
  const limit = { fingeringId: 'D4', lostDb: 3 };
  const report = answerRegulation('leak', { ...REGULATION_REQUESTS.leak, fault: TWO_PAPERS, limit });
  const answer = answerArrived(answerAsked(fresh.leaks.answer, 1), 1, fresh.hornId, report);
  const { played } = makeLeaksView({ ...fresh, leaks: { ...fresh.leaks, fault: TWO_PAPERS, limit, answer } });
  const { headline, standing, reasons } = played!.answer;

  it('stand at the figures of the answer’s sentences', () => {
    const [lost, gap] = reasons;
    expect(cutAtFigures(headline, [lost])).toContain(lost);
    expect(cutAtFigures(standing, [gap])).toContain(gap);
  });

  it('have the two heights that make up what is lost', () => {
    for (const { inputs } of reasons) {
      const told = (label: string): number =>
        Number.parseFloat(inputs.find((input) => input.label === label)!.value);
      const lost = 20 * Math.log10(told('height, sealed') / told('height, leaking'));
      // Heights are told to a tenth, losses too.
      expect(Math.abs(lost - told('so it loses'))).toBeLessThan(0.15);
    }
  });
});

describe('the reason of a cup’s pad', () => {
  it('has lengths that fill the cup, or says what is left over', () => {
    for (const floor of ['4.2 mm', '4.6 mm', '9 mm']) {
      const read = readCup(alto, 'e', 'cupFloorMm', { text: floor, unit: 'mm' });
      if (!read.ok) throw new Error(read.message);
      const { rows } = makePadFitView({ ...makeBenchState([], read.contents), view: 'pads' });
      const { take } = rows.find(({ id }) => id === 'e')!;
      const { inputs, figure } = take!.reason;
      expect(figure).toBe(take!.pad);
      const told = (label: RegExp): number => {
        const input = inputs.find((each) => label.test(each.label));
        return input === undefined ? 0 : Number.parseFloat(input.value);
      };
      const over = told(/too much/) - told(/too little/);
      // Four lengths, each told to a hundredth.
      expect(told(/^pad/) + told(/^bed$/) - told(/seat/) - over).toBeCloseTo(told(/cup floor/), 1);
    }
  });
});
