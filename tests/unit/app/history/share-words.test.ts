import { expect, test } from 'vitest';
import { perCent, shareWords } from '../../../../app/history/share-words.ts';

test.each([[0, '0 %'], [0.0000211, 'below 0.01 %'], [0.0004, '0.04 %'], [0.038, '3.8 %'], [0.25, '25 %'], [299 / 300, '99.67 %'], [0.99999, 'above 99.99 %'], [1, '100 %']])('%d is %s', (share, words) => {
  expect(perCent(share)).toBe(words);
});

test('one missed of 300 is not all, and a share stands with its count', () => {
  expect(shareWords({ count: 299, of: 300, limits: { low: 0.9816, high: 0.99992 } })).toBe('299 of 300 (99.67 %; 98 to 99.99 %)');
});
