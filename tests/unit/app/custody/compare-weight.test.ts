import { expect, test } from 'vitest';
import { compareWeight } from '../../../../app/custody/compare-weight.ts';

test.each([[10_234, 10_234, false], [10_254, 10_234, false], [10_214, 10_234, false], [10_255, 10_234, true], [10_213, 10_234, true], [0, 10_234, true]])(
  'reading %i against %i with tolerance 20: differs %s', (weight, expected, differs) => {
    expect(compareWeight(weight, expected, 20)).toEqual({ expectedWeight: expected, tolerance: 20, differs });
  });
test('weights that are no whole units are a fault', () => {
  expect(() => compareWeight(1.5, 1, 0)).toThrow(RangeError);
  expect(() => compareWeight(-1, 1, 0)).toThrow(RangeError);
  expect(() => compareWeight(1, Number.NaN, 0)).toThrow(RangeError);
});
