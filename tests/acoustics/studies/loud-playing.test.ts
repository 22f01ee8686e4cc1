import { describe, expect, it } from 'vitest';
import {
  inputAdmittanceAt,
  makeAirColumn,
  makeNetwork,
  noteFrequency,
  openEndImpedanceAt,
  outletVelocities,
  resonanceNear,
  standingPad,
  strengthAgainstLevel,
  withOpening,
} from '../../../src/acoustics/index.ts';
import { wavesAt } from '../../../src/acoustics/network/walk.ts';
import { demoHorn, fingeringOf } from '../demo-horns.ts';
import { lossless } from '../lossless.ts';

/** What the all but lossless air of the tests still keeps of the power. */
const POWER_BALANCE = 1e-4;

function playF4(frontMm: number, pressures: readonly number[]) {
  const { horn, setup: found } = demoHorn('alto');
  const setup = withOpening(found, 'e', { at: 'front', height: frontMm / 1000 });
  const network = makeNetwork(horn, setup, fingeringOf('F4'), makeAirColumn());
  const soft = resonanceNear(network, noteFrequency('F4', horn.transposition));
  if (!soft.found) throw new Error('F4 has a resonance');
  const openings = new Map(
    [...setup.keys.keys()].map((id) => [id, standingPad(horn, setup, id).pose.centre] as const),
  );
  return {
    network,
    soft: soft.resonance,
    points: strengthAgainstLevel(network, soft.resonance, pressures, { openings }),
  };
}

describe('loud playing', () => {
  it('changes nothing in the limit of soft playing', () => {
    const [point] = playF4(8, [1e-6]).points;
    expect(point.strength).toBeCloseTo(1, 6);
  });

  it('weakens the note the more the louder, and the less the wider the pad stands', () => {
    const levels = [100, 400, 1600, 6400];
    const narrow = playF4(4, levels).points.map((p) => p.strength);
    const wide = playF4(10, levels).points.map((p) => p.strength);
    for (let i = 1; i < levels.length; i++) expect(narrow[i]).toBeLessThan(narrow[i - 1]);
    levels.forEach((_, i) => expect(narrow[i]).toBeLessThan(wide[i]));
  });

  it('is fastest under the first open pad', () => {
    expect(playF4(8, [1000]).points[0].fastest?.id).toBe('e');
  });

  it('soft velocities at the outlets carry away the power that the mouthpiece takes in', () => {
    // Losses off, what goes in leaves by radiation: ½Re Y·|p|² = Σ ½R_i|U_i|² over holes and bell.
    const network = lossless(playF4(8, [1]).network);
    const f = 310;
    const velocities = outletVelocities(network, f);
    const { mouth } = wavesAt(network, f);
    const bell = new Float64Array(4);
    openEndImpedanceAt(network.bellRadius, f, network.bellAir, network.bellCorrection, bell);
    let out = bell[0] / (mouth.re ** 2 + mouth.im ** 2);
    for (const e of network.elements) {
      if (e.kind !== 'hole') continue;
      const velocity = velocities.get(e.hole.id) ?? 0;
      out += e.tube.radiationPerHz2 * f * f * e.tube.area * velocity ** 2;
    }
    const y = new Float64Array(4);
    inputAdmittanceAt(network, f, 'bare', y);
    expect(Math.abs(out / y[0] - 1)).toBeLessThan(POWER_BALANCE);
  });
});
