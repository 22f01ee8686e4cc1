import { describe, expect, it } from 'vitest';
import { makeBenchState } from '../../src/ui/state/bench-state.ts';
import { withProposed } from '../../src/ui/state/key-lengths.ts';
import { makeLinksView } from '../../src/ui/views/regulation/links/links-view.model.ts';
import { onTheBench } from './demo.ts';

const alto = onTheBench('alto');

/** The page of links with keys proposed, mm at the front. */
function linked(proposed: Readonly<Record<string, number>> = {}) {
  const contents = Object.entries(proposed).reduce((now, [pad, mm]) => withProposed(now, pad, mm), alto);
  return makeLinksView(makeBenchState([], contents)).horn!;
}

const value = (inputs: readonly { label: string; value: string }[], label: RegExp): number =>
  Number.parseFloat(inputs.find((input) => label.test(input.label))!.value);

/** Figures are told to a tenth of a millimetre, ratios to a hundredth. */
const TOLD_MM = 0.16;

describe('the reasons of links', () => {
  it('have inputs that make up what an arm allows and what it loses', () => {
    const { tables } = linked();
    for (const { reasons, ratio } of tables.links) {
      if (reasons.allows === null || reasons.lostAtFront === null) continue;
      const { inputs } = reasons.allows;
      const front = value(inputs, /stands at its front/);
      expect(
        Math.abs(value(inputs, /travel ratio/) * front - Number.parseFloat(reasons.allows.figure)),
      ).toBeLessThan(TOLD_MM);
      const lost = reasons.lostAtFront;
      if (lost.figure === 'none') continue;
      const told =
        (value(lost.inputs, /arm allows/) - value(lost.inputs.slice(2), /stands at its front/)) /
        Number.parseFloat(ratio);
      expect(Math.abs(told - Number.parseFloat(lost.figure))).toBeLessThan(2 * TOLD_MM);
    }
  });

  it('say which stop or arm rules, as the row does', () => {
    const { tables } = linked({ e: 5, d: 5, f: 5 });
    const held = tables.pads.filter((row) => row.held);
    expect(held.length).toBeGreaterThan(0);
    for (const row of tables.pads) {
      const [said] = row.reasons.stands.remarks;
      expect(said).toBe(row.rules === 'its own stop' ? 'Its own stop rules.' : `The ${row.rules} rules.`);
      expect(row.reasons.stands.figure).toBe(row.stands);
    }
  });
});
