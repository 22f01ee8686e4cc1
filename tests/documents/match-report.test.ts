import { describe, expect, it } from 'vitest';
import { standingPad, withOpening } from '../../src/acoustics/index.ts';
import { reportMatches } from '../../src/documents/match-report.ts';
import { demoHorn } from '../acoustics/demo-horns.ts';

const alto = demoHorn('alto');
const tenor = demoHorn('tenor');
const MM = 1e-3;

describe('the report of a horn set like another', () => {
  it('moves nothing where it stands so already', () => {
    for (const { frontsMm, alike, left } of Object.values(reportMatches(alto, alto))) {
      expect([frontsMm, left]).toEqual([{}, []]);
      expect(alike).toBe(alto.horn.holes.filter(({ hinge }) => hinge !== null).length);
    }
  });

  it('moves a key as far as it is wanted, and lets go none that its arm then no longer holds', () => {
    // With E down the auxiliary is held; raised by the match, E would let it rise, which nobody asked for.
    const down = withOpening(alto.setup, 'e', { at: 'front', height: 4e-3 });
    const held = standingPad(alto.horn, down, 'f-sharp-auxiliary');
    expect(held.ruledBy).not.toBeNull();
    const like = {
      ...alto,
      setup: withOpening(alto.setup, 'f-sharp-auxiliary', { at: 'front', height: held.pose.front }),
    };
    const { front } = reportMatches({ ...alto, setup: down }, like);
    expect(Object.keys(front.frontsMm)).toEqual(expect.arrayContaining(['e', 'f-sharp-auxiliary']));
    const set = Object.entries(front.frontsMm).reduce(
      (now, [pad, mm]) => withOpening(now, pad, { at: 'front', height: mm * MM }),
      down,
    );
    for (const { id } of alto.horn.holes.filter(({ hinge }) => hinge !== null)) {
      expect(standingPad(alto.horn, set, id).pose.front).toBeCloseTo(
        standingPad(alto.horn, like.setup, id).pose.front,
        9,
      );
    }
  });

  it('names what cannot be set so, each with why', () => {
    const without = {
      ...alto,
      horn: { ...alto.horn, holes: alto.horn.holes.filter(({ number }) => number < 21 || number > 22) },
    };
    expect(reportMatches(alto, without).front.left).toEqual([
      'high E and palm F: no such key on the other horn, so they stay as found.',
    ]);
    const wide = {
      ...tenor,
      horn: {
        ...tenor.horn,
        holes: tenor.horn.holes.map((hole) =>
          hole.id === 'e' ? { ...hole, holeRadius: 0.4 * hole.holeRadius } : hole,
        ),
      },
    };
    const { left } = reportMatches(alto, wide)['vent share'];
    expect(
      left.some((s) => /^E stays as found: it vents less than the other’s even at \d+\.\d mm/.test(s)),
    ).toBe(true);
    const loose = {
      horn: { ...alto.horn, keywork: { ...alto.horn.keywork, links: [] } },
      setup: withOpening(alto.setup, 'f-sharp-auxiliary', { at: 'front', height: 9e-3 }),
      documents: alto.documents,
    };
    expect(reportMatches(alto, loose).front.left).toEqual([
      expect.stringMatching(
        /^F♯ auxiliary is wanted at 9\.0 mm \(0\.354 in\), but the arm of .* holds it at .* mm \(.* in\): set that link too\.$/,
      ),
    ]);
  });
});
