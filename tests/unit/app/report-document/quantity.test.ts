import { expect, test } from 'vitest';
import { decimalText, quantity, quantityOf } from '../../../../app/report-document/quantity.ts';

test('numbers stand as decimal text that any reader takes back unbent', () => {
  for (const value of [0, -0, 0.412, 737.9, -1e-9, 1e21, 333333333.3333333]) {
    const text = decimalText(value);
    expect(Number(text)).toBe(value === 0 ? 0 : value);
    expect(quantity.shape.value.safeParse(text).success).toBe(true);
  }
  expect(decimalText(-0)).toBe('0');
});

test('what is no number is a fault, not a quantity', () => {
  for (const value of [Number.NaN, Number.POSITIVE_INFINITY]) expect(() => decimalText(value)).toThrow(RangeError);
});

test('an uncertainty says what it covers, and nothing is said without one', () => {
  expect(quantityOf(5.31, 'g', 0.002, 'balance')).toEqual({ value: '5.31', unit: 'g', uncertainty: '0.002', covers: 'balance' });
  expect(quantityOf('0.412', 'ct', null, 'balance')).toEqual({ value: '0.412', unit: 'ct', uncertainty: null, covers: '' });
});
