import { expect, test } from 'vitest';
import { expNegative } from '../../../../app/spectra/exp-negative.ts';

test('within 2e-13 of the value from 0 to 700, and 0 beyond', () => {
  for (let t = 0; t < 700; t += 0.0137) expect(Math.abs(expNegative(t) / Math.exp(-t) - 1)).toBeLessThan(2e-13);
  expect(expNegative(0)).toBe(1);
  expect(expNegative(701)).toBe(0);
  expect(expNegative(Infinity)).toBe(0);
});
