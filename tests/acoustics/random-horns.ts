import fc from 'fast-check';
import {
  makeAirColumn,
  makeBore,
  radiusAt,
  type AirColumn,
  type BoreStation,
  type Fingering,
  type Horn,
  type KeySetup,
  type Rest,
  type Setup,
  type ToneHole,
} from '../../src/acoustics/index.ts';

/** A random horn with all four things an answer depends on. */
export interface RandomHorn {
  readonly horn: Horn;
  readonly setup: Setup;
  readonly fingering: Fingering;
  readonly air: AirColumn;
}

const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

const hole = fc.record({
  place: between(0.05, 0.98),
  delta: between(0.1, 0.95),
  chimney: between(0.001, 0.008),
  rim: between(0.0003, 0.002),
  overhang: between(1.05, 1.4),
  rests: fc.constantFrom<Rest>('open', 'closed'),
  kind: fc.constantFrom('parallel', 'hinged', 'hinged', 'vent'),
  hinge: between(1.05, 2.5),
  rod: between(-0.2, 0.4),
  at: fc.constantFrom('front' as const, 'centre' as const, 'back' as const),
  opening: between(0, 0.5),
  down: fc.boolean(),
});

const plan = fc.record({
  mouth: between(0.003, 0.008),
  length: between(0.15, 1.2),
  tapers: fc.array(between(-0.004, 0.05), { minLength: 1, maxLength: 5 }),
  step: between(0.9, 1.15),
  reedVolume: between(0, 4e-6),
  holes: fc.array(hole, { maxLength: 6 }),
  mouthpieceC: between(15, 35),
  bellC: between(15, 35),
});

/** Horns of no sense at all: tapers, steps, holes and keys at random, but all buildable. */
export const randomHorns: fc.Arbitrary<RandomHorn> = plan.map(makeRandomHorn);

function makeRandomHorn(p: typeof plan extends fc.Arbitrary<infer T> ? T : never): RandomHorn {
  const stations: BoreStation[] = [{ x: 0, radius: p.mouth }];
  const section = p.length / p.tapers.length;
  p.tapers.forEach((taper, i) => {
    const last = stations[stations.length - 1];
    const radius = Math.max(0.002, last.radius + taper * section);
    stations.push({ x: i === p.tapers.length - 1 ? p.length : (i + 1) * section, radius });
    if (i === 0 && p.tapers.length > 1) stations.push({ x: section, radius: radius * p.step });
  });
  const bore = makeBore(stations, p.mouth);
  const keys = new Map<string, KeySetup>();
  const rests = new Map<string, Rest>();
  const holes: ToneHole[] = [...p.holes]
    .sort((a, b) => a.place - b.place)
    .map((h, i) => {
      const x = h.place * p.length;
      const boreRadius = radiusAt(bore, x);
      const holeRadius = h.delta * boreRadius;
      const padRadius = h.overhang * (holeRadius + h.rim);
      const id = `hole-${i}`;
      rests.set(id, h.rests);
      if (h.kind !== 'vent') {
        keys.set(id, {
          opening: { at: h.at, height: h.opening * padRadius * 0.5 },
          padRadius,
          padThickness: 0.004,
        });
      }
      const hinge =
        h.kind === 'vent'
          ? null
          : h.kind === 'parallel'
            ? { distance: Infinity, height: 0 }
            : { distance: h.hinge * padRadius, height: h.rod * padRadius };
      return {
        id,
        number: i + 1,
        name: id,
        x,
        boreRadius,
        holeRadius,
        chimney: h.chimney,
        rimThickness: h.rim,
        hinge,
      };
    });
  // A pad at the back of a short key cannot rise far: such openings are asked for at the front instead.
  for (const h of holes) {
    const key = keys.get(h.id);
    if (key !== undefined && key.opening.at === 'back') {
      keys.set(h.id, { ...key, opening: { at: 'front', height: key.opening.height } });
    }
  }
  const sorted = [...p.holes].sort((a, b) => a.place - b.place);
  const touches = holes.map((h) => ({
    id: h.id,
    closes: rests.get(h.id) === 'open' ? [h.id] : [],
    opens: rests.get(h.id) === 'closed' ? [{ pad: h.id }] : [],
  }));
  return {
    horn: {
      name: 'random',
      transposition: 0,
      bore,
      neckStart: 0,
      extraMouthpieceVolume: 0,
      reedVolume: p.reedVolume,
      holes,
      keywork: { rests, touches, links: [] },
    },
    setup: { keys },
    fingering: {
      id: 'random',
      note: 'A4',
      way: '',
      touches: holes.filter((_, i) => sorted[i].down).map((h) => h.id),
      register: 1,
    },
    air: makeAirColumn({ mouthpieceC: p.mouthpieceC, bellC: p.bellC }),
  };
}

/** Every length of a horn and its setup multiplied. */
export function scaled(r: RandomHorn, s: number): RandomHorn {
  const bore = makeBore(
    r.horn.bore.stations.map((st) => ({ x: st.x * s, radius: st.radius * s })),
    r.horn.bore.referenceRadius * s,
  );
  return {
    ...r,
    horn: {
      ...r.horn,
      bore,
      reedVolume: r.horn.reedVolume * s ** 3,
      holes: r.horn.holes.map((h) => ({
        ...h,
        x: h.x * s,
        boreRadius: h.boreRadius * s,
        holeRadius: h.holeRadius * s,
        chimney: h.chimney * s,
        rimThickness: h.rimThickness * s,
        hinge: h.hinge === null ? null : { distance: h.hinge.distance * s, height: h.hinge.height * s },
      })),
    },
    setup: {
      keys: new Map(
        [...r.setup.keys].map(([id, k]) => [
          id,
          {
            opening: { at: k.opening.at, height: k.opening.height * s },
            padRadius: k.padRadius * s,
            padThickness: k.padThickness * s,
          },
        ]),
      ),
    },
  };
}
