import { describe, expect, it } from 'vitest';
import { makeLoudTable } from '../../src/ui/views/scale/loud-table.model.ts';

const chart = {
  pressuresKpa: [0.1, 0.141, 3],
  found: [97.2, 96, null],
  proposed: null,
  toldKpa: 3,
  summary: '',
};

describe('the table of loud playing', () => {
  it('says what the picture shows, level by level, and what cannot be followed', () => {
    expect(makeLoudTable(chart)).toEqual([
      { pressure: '0.1', found: '97 %', proposed: null },
      { pressure: '0.14', found: '96 %', proposed: null },
      { pressure: '3', found: 'cannot be followed', proposed: null },
    ]);
  });

  it('has the proposal beside it where there is one', () => {
    const rows = makeLoudTable({ ...chart, proposed: [98, null, 41.6] });
    expect(rows.map(({ proposed }) => proposed)).toEqual(['98 %', 'cannot be followed', '42 %']);
  });
});
