import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { makeVisit } from '../../src/documents/bench-contents.ts';
import { DAY_STEPS, SAID, saidOf, withSaid } from '../../src/documents/day-steps.ts';
import { readWith } from '../../src/documents/schema-parts.ts';
import { visitSchema, type VisitDocument } from '../../src/documents/visit-document.ts';
import { demoDocument } from '../acoustics/demo-horns.ts';

const SEED = 811;
const { horn, setup } = demoDocument('alto');
let count = 0;
const makeId = (): string => `id-${++count}`;
const plan = { date: '2026-05-31', airC: 22, a4Hz: 442 };
const VISIT = makeVisit({ id: 'alto', document: horn }, setup, plan, makeId).visit.document;

describe('what a person says of the day’s steps', () => {
  it('is the last word on each step, whatever was said before and of the others', () => {
    const word = fc.record({
      step: fc.constantFrom(...DAY_STEPS),
      said: fc.constantFrom(...SAID, null),
    });
    fc.assert(
      fc.property(fc.array(word, { maxLength: 40 }), (words) => {
        const visit = words.reduce((now, { step, said }) => withSaid(now, step, said), VISIT);
        for (const step of DAY_STEPS) {
          expect(saidOf(visit, step)).toBe(words.findLast((w) => w.step === step)?.said ?? null);
        }
        expect(readWith(visitSchema, visit)).toEqual({ ok: true, value: visit });
      }),
      { seed: SEED },
    );
  });

  it('leaves a visit as it was when the last word is taken back', () => {
    expect(withSaid(withSaid(VISIT, 'played', 'not needed'), 'played', null)).toEqual(VISIT);
  });

  it('is told by name, once each, and by one of two words', () => {
    const told = (daySteps: unknown): string[] => {
      const read = readWith(visitSchema, { ...VISIT, daySteps });
      return read.ok ? [] : read.issues.map(({ message }) => message);
    };
    expect(told([{ step: 'coffee', said: 'done' }])).toEqual([
      expect.stringMatching(/^invalid step of the day: "coffee"; expected "horn in" or /),
    ]);
    expect(told([{ step: 'played', said: 'perhaps' }])).toEqual([
      'invalid word on the step: "perhaps"; expected "done" or "not needed"',
    ]);
    const twice = [
      { step: 'played', said: 'done' },
      { step: 'played', said: 'not needed' },
    ];
    expect(told(twice)).toEqual(['invalid steps of the day: one is told twice; expected each once']);
  });

  it('is in the published schema', () => {
    const schema = JSON.parse(
      readFileSync(new URL('../../datasets/schemas/visit-1.schema.json', import.meta.url), 'utf8'),
    ) as object;
    const valid = new Ajv2020({ strict: false, validateFormats: false }).compile(schema);
    const isValid = (visit: VisitDocument): boolean => valid(visit) as boolean;
    expect(isValid(withSaid(VISIT, 'seals and links', 'done'))).toBe(true);
    expect(valid({ ...VISIT, daySteps: [{ step: 'coffee', said: 'done' }] })).toBe(false);
  });
});
