import { expect, test } from 'vitest';
import { normaliseCurve, type Normalisation } from '../../../../app/spectra/normalise-curve.ts';

const f = (...values: number[]): Float64Array => Float64Array.from(values);
const by = (how: Normalisation, y: Float64Array, x: Float64Array = f(1, 2, 4)): number[] | string => {
  const out = normaliseCurve({ x, y }, how);
  return out.ok ? [...out.value] : out.error.message;
};

test('by range a curve runs from 0 to 1, a flat one stays at 0', () => {
  expect(by({ way: 'range' }, f(5, 10, 7.5))).toEqual([0, 1, 0.5]);
  expect(by({ way: 'range' }, f(4, 4, 4))).toEqual([0, 0, 0]);
  expect(by({ way: 'range' }, f(Number.NaN, 4, 6))).toEqual([Number.NaN, 0, 1]);
});
test('by the maximum zero stays zero', () => expect(by({ way: 'maximum' }, f(0, 5, 10))).toEqual([0, 0.5, 1]));
test('by area: the trapezia on an uneven and a falling axis', () => {
  // (2+4)/2·1 + (4+0)/2·2 = 7
  expect(by({ way: 'area' }, f(2, 4, 0))).toEqual([2 / 7, 4 / 7, 0]);
  expect(by({ way: 'area' }, f(0, 4, 2), f(4, 2, 1))).toEqual([0, 4 / 7, 2 / 7]);
});
test('by the standard normal variate: mean 0, deviation 1 (n − 1)', () => expect(by({ way: 'snv' }, f(1, 2, 3))).toEqual([-1, 0, 1]));
test('by a position between two points', () => expect(by({ way: 'position', at: 3 }, f(1, 2, 6))).toEqual([0.25, 0.5, 1.5]));
test('by a height, such as that of the diamond line', () => expect(by({ way: 'height', height: 4 }, f(2, 4, 8))).toEqual([0.5, 1, 2]));
test.each<[Normalisation, Float64Array, RegExp]>([
  [{ way: 'maximum' }, f(-3, -2, -1), /not above zero/], [{ way: 'area' }, f(-1, 0, 0), /baseline/], [{ way: 'snv' }, f(2, 2, 2), /the same/],
  [{ way: 'position', at: 9 }, f(1, 1, 1), /covers/], [{ way: 'height', height: Number.NaN }, f(1, 2, 3), /does not stand out/], [{ way: 'range' }, f(Number.NaN, 1, Number.NaN), /too few/],
])('%o of %o is refused in words', (how, y, words) => expect(by(how, y)).toMatch(words));
