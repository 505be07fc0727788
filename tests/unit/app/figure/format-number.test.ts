import { expect, test } from 'vitest';
import { formatNumber, powerOfTen } from '../../../../app/figure/format-number.ts';

test.each([
  [1332.4, 1, '1332.4'], [-0.04, 1, '0.0'], [-3.25, 1, '−3.3'], [23357, 0, '23357'], [1234567.5, 1, '1\u00a0234\u00a0567.5'], [-123456, 0, '−123\u00a0456'], [Number.NaN, 2, '–'],
])('%d with %d decimals', (value, decimals, text) => {
  expect(formatNumber(value, decimals)).toBe(text);
});

test('powers of ten', () => {
  expect([3, -6, 12].map(powerOfTen)).toEqual(['10³', '10⁻⁶', '10¹²']);
});
