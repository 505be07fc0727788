import { expect, test } from 'vitest';
import { lastDigitStep, parseNumber } from '../../../../app/files/parse-number.ts';

test.each<[string, number]>([['1', 1], ['-1.5', -1.5], ['+.5', 0.5], ['5.', 5], ['1e3', 1000], ['1.0D+02', 100], ['−2', -2], ['0.0000000E+00', 0]])('%s is a number', (text, value) => expect(parseNumber(text)).toBe(value));
test.each(['', '.', '-', '1.2.3', '1,5', '1,234.5', 'NaN', 'Infinity', '1e999', '0x10', '1e', '1 2', '--1', '12abc'])('%j is none', (text) => expect(parseNumber(text)).toBeUndefined());
test('decimal comma', () => {
  expect(parseNumber('1,5', true)).toBe(1.5);
  expect(parseNumber('1.234,5', true)).toBeUndefined();
});
test.each<[string, number]>([['97.7404', 1e-4], ['4400.', 1], ['9.313E-9', 1e-12], ['12', 1]])('last digit of %s', (text, step) => expect(lastDigitStep(text)).toBeCloseTo(step, 15));
