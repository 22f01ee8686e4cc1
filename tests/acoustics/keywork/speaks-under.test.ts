import { describe, expect, it } from 'vitest';
import { FINGERINGS, noteUnder, padStates, padUnder } from '../../../src/acoustics/index.ts';
import { DEMO_NAMES, demoHorn, fingeringOf } from '../demo-horns.ts';

describe.each(DEMO_NAMES)('on the demo %s', (name) => {
  const { horn } = demoHorn(name);
  const hinged = horn.holes.filter(({ hinge }) => hinge !== null);

  it('every pad has a lowest note that speaks under it, and that note speaks under that pad', () => {
    for (const { id } of hinged) {
      const note = noteUnder(horn, id);
      expect([id, note === null ? null : padUnder(horn, note)]).toEqual([id, id]);
    }
  });

  it('nothing nearer the mouthpiece than the pad a note speaks under stands fully open', () => {
    for (const fingering of FINGERINGS) {
      const pad = padUnder(horn, fingering);
      const states = padStates(horn.keywork, new Set(fingering.touches));
      const before =
        pad === null
          ? hinged
          : hinged.slice(
              0,
              hinged.findIndex(({ id }) => id === pad),
            );
      const open = before.filter(({ id }) => {
        const state = states.get(id)!;
        return state.open && state.front === undefined;
      });
      expect([fingering.id, open.map(({ id }) => id)]).toEqual([fingering.id, []]);
    }
  });
});

it('low E speaks under D, and low B♭, with every pad shut, under none', () => {
  const { horn } = demoHorn('alto');
  expect(padUnder(horn, fingeringOf('E4'))).toBe('d');
  expect(noteUnder(horn, 'd')?.id).toBe('E4');
  expect(padUnder(horn, fingeringOf('Bb3'))).toBeNull();
});
