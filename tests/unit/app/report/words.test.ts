import { expect, test } from 'vitest';
import { STRENGTHS, SUPPORTS } from '../../../../app/domain/finding.ts';
import { capitalise, countWords, listWords } from '../../../../app/report/count-words.ts';
import { findingWords } from '../../../../app/report/finding-words.ts';

test('counts in words', () => {
  expect([0, 1, 2, 12, 13].map((n) => countWords(n, 'stone'))).toEqual(['no stones', 'one stone', 'two stones', 'twelve stones', '13 stones']);
  expect(countWords(2, 'piece of jewellery', 'pieces of jewellery')).toBe('two pieces of jewellery');
});

test('lists and capitals', () => {
  expect([[], ['a'], ['a', 'b'], ['a', 'b', 'c']].map(listWords)).toEqual(['', 'a', 'a and b', 'a, b and c']);
  expect(capitalise('éclat')).toBe('Éclat');
  expect(capitalise('')).toBe('');
});

test('what a finding says', () => {
  expect(findingWords('strong', 'grown-cvd')).toBe('strong for CVD growth');
  expect(findingWords('supporting', 'natural')).toBe('supports natural growth');
  expect(findingWords('strong', 'none')).toBe('no weight alone');
  for (const strength of STRENGTHS) for (const supports of SUPPORTS) expect(findingWords(strength, supports).trim()).toMatch(/\w\w/);
});
