import { describe, expect, test } from 'vitest';
import { foldResults } from '../../../../app/lots/fold-results.ts';
import { newestOf, type LotRecord, type ResultEntry } from '../../../../app/lots/lot-record.ts';

const at = (ordinal: number): string => `2026-11-25T09:0${ordinal}:00.000Z`;
const entered = (ordinal: number, by: string, ...entries: ResultEntry[]): LotRecord => ({ ordinal, at: at(ordinal), by, content: { kind: 'results', source: 'keyed', file: null, entries, note: '' } });

describe('the book of a lot', () => {
  test('a later entry stands, the one before is remembered, one taken back is gone', () => {
    const book = [
      entered(1, 'Ada', { number: 2, outcome: 'natural', was: null }, { number: 1, outcome: 'natural', was: null }),
      entered(2, 'Ben', { number: 2, outcome: 'grown-cvd', was: 'natural' }),
      entered(3, 'Ada', { number: 1, outcome: null, was: 'natural' }, { number: 3, outcome: 'undetermined', was: null }),
    ];
    expect(foldResults(book)).toEqual([
      { number: 2, outcome: 'grown-cvd', at: at(2), by: 'Ben', source: 'keyed', stoneId: null, before: 'natural' },
      { number: 3, outcome: 'undetermined', at: at(3), by: 'Ada', source: 'keyed', stoneId: null, before: null },
    ]);
    expect(newestOf(book, 'plan')).toBeUndefined();
    expect(newestOf(book, 'results')?.ordinal).toBe(3);
  });
});
