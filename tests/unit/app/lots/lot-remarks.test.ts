import { describe, expect, test } from 'vitest';
import { lotRemarks } from '../../../../app/lots/lot-remarks.ts';
import { planOf, resultOf, resultsOf } from './made-lot.ts';

describe('what does not fit in a lot', () => {
  test('what does not fit is said', () => {
    expect(lotRemarks(340, resultsOf([1, 2]), null)).toEqual([]);
    const said = lotRemarks(2, [...resultsOf([1, 2, 3]), resultOf(9, 'natural')], planOf(340, { drawn: 'mixed', seed: null }));
    expect(said[0]).toBe('There are 4 results and 2 stones: count the lot again, or take back the results that are too many.');
    expect(said[1]).toContain('Stones 3, 9 have results, and the lot counts 2');
    expect(said[2]).toContain('The plan was made for 340 stones and the lot now counts 2');
    const plan = planOf(340, { aim: { is: 'own', size: 1 } });
    expect(lotRemarks(340, resultsOf([1, 2, 3]), plan).join(' ')).toMatch(/not in the drawn list/);
  });
  test('a folder that says otherwise, or is tied twice, is named', () => {
    const folders = new Map([['s1', { label: 'A-1', outcome: 'grown-cvd' as const }], ['s2', { label: 'A-2', outcome: null }]]);
    const tied = [resultOf(4, 'natural', { stoneId: 's1' }), resultOf(5, 'natural', { stoneId: 's2' }), resultOf(6, 'grown-cvd', { stoneId: 's1' })];
    const said = lotRemarks(340, tied, null, folders).join(' ');
    expect(said).toContain('Stone 4 was entered otherwise than its folder A-1 now concludes');
    expect(said).toContain('A-2, which has no conclusion any more');
    expect(said).toContain('Stone 6: the same folder is tied');
  });
});
