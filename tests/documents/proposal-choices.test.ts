import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makeVisit } from '../../src/documents/bench-contents.ts';
import {
  lockedOn,
  preferenceOf,
  PREFERENCES,
  withLockToggled,
  withPreference,
} from '../../src/documents/proposal-choices.ts';
import { readWith } from '../../src/documents/schema-parts.ts';
import { visitSchema } from '../../src/documents/visit-document.ts';
import { demoDocument } from '../acoustics/demo-horns.ts';

const SEED = 20261130;
const { horn, setup } = demoDocument('alto');
const plan = { date: '2026-05-31', airC: 22, a4Hz: 440 };
const VISIT = makeVisit({ id: 'alto', document: horn }, setup, plan, () => 'id').visit.document;

describe('what is asked of a visit’s proposal', () => {
  it('is as usual where nobody asked, and is not written then', () => {
    expect([preferenceOf(VISIT), lockedOn(VISIT)]).toEqual(['balanced', []]);
    expect(withPreference(VISIT, 'balanced')).toBe(VISIT);
    const asked = withLockToggled(withPreference(VISIT, 'low keys'), 'e');
    expect(withLockToggled(withPreference(asked, 'balanced'), 'e')).toEqual(VISIT);
  });

  it('locks a pad asked an odd number of times, and reads back as it was written', () => {
    const pads = horn.holes.map(({ id }) => id);
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom(...pads), { maxLength: 40 }),
        fc.constantFrom(...PREFERENCES),
        (toggles, prefer) => {
          const visit = withPreference(toggles.reduce(withLockToggled, VISIT), prefer);
          expect(preferenceOf(visit)).toBe(prefer);
          for (const pad of pads) {
            const odd = toggles.filter((each) => each === pad).length % 2 === 1;
            expect(lockedOn(visit).includes(pad)).toBe(odd);
          }
          expect(readWith(visitSchema, visit)).toEqual({ ok: true, value: visit });
        },
      ),
      { seed: SEED },
    );
  });

  it('says which word of it cannot be read', () => {
    const told = (proposal: unknown): string[] => {
      const read = readWith(visitSchema, { ...VISIT, proposal });
      return read.ok ? [] : read.issues.map(({ message }) => message);
    };
    expect(told({ prefer: 'loud' })).toEqual([
      'invalid preference of the proposal: "loud"; expected "balanced" or "in tune" or "low keys" or "few moves"',
    ]);
    expect(told({ locked: ['e', 'e'] })).toEqual([
      'invalid locked keys: one is told twice; expected each once',
    ]);
  });

  it('is in the published schema', () => {
    const schema = JSON.parse(
      readFileSync(new URL('../../datasets/schemas/visit-1.schema.json', import.meta.url), 'utf8'),
    ) as object;
    const valid = new Ajv2020({ strict: false, validateFormats: false }).compile(schema);
    expect(valid(withLockToggled(withPreference(VISIT, 'few moves'), 'e'))).toBe(true);
    expect(valid({ ...VISIT, proposal: { prefer: 'loud' } })).toBe(false);
  });
});
