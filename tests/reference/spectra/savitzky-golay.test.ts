// Exact rational weights, A. Savitzky, M. J. E. Golay, Anal. Chem. 36 (1964) 1627, with the errata of J. Steinier et al., Anal. Chem. 44 (1972) 1906.
import { describe, expect, test } from 'vitest';
import { savitzkyGolay, savitzkyGolayWeights } from '../../../app/spectra/savitzky-golay.ts';

const ROWS: readonly [points: number, degree: number, derivative: number, norm: number, numerators: number[]][] = [
  [5, 2, 0, 35, [-3, 12, 17, 12, -3]],
  [7, 3, 0, 21, [-2, 3, 6, 7, 6, 3, -2]],
  [9, 2, 0, 231, [-21, 14, 39, 54, 59, 54, 39, 14, -21]],
  [11, 3, 0, 429, [-36, 9, 44, 69, 84, 89, 84, 69, 44, 9, -36]],
  [13, 2, 0, 143, [-11, 0, 9, 16, 21, 24, 25, 24, 21, 16, 9, 0, -11]],
  [15, 3, 0, 1105, [-78, -13, 42, 87, 122, 147, 162, 167, 162, 147, 122, 87, 42, -13, -78]],
  [7, 5, 0, 231, [5, -30, 75, 131, 75, -30, 5]],
  [9, 4, 0, 429, [15, -55, 30, 135, 179, 135, 30, -55, 15]],
  [5, 2, 1, 10, [-2, -1, 0, 1, 2]],
  [7, 1, 1, 28, [-3, -2, -1, 0, 1, 2, 3]],
  [5, 4, 1, 12, [1, -8, 0, 8, -1]],
  [7, 3, 1, 252, [22, -67, -58, 0, 58, 67, -22]],
  [5, 2, 2, 7, [2, -1, -2, -1, 2]],
  [7, 3, 2, 42, [5, 0, -3, -4, -3, 0, 5]],
  [9, 2, 2, 462, [28, 7, -8, -17, -20, -17, -8, 7, 28]],
];

test.each(ROWS)('%i points, degree %i, derivative %i', (points, degree, derivative, norm, numerators) => {
  const weights = savitzkyGolayWeights(points, degree, derivative);
  numerators.forEach((numerator, i) => expect(weights[i]).toBeCloseTo(numerator / norm, 12));
});

describe('worked series, ends by the polynomial of the last full window', () => {
  const y = Float64Array.of(2, 2, 5, 2, 1, 0, 1, 4, 9);
  test('smoothing', () => {
    const s = savitzkyGolay(y, { width: 5, degree: 2 });
    [3.542857142857, 2.857142857143, 0.657142857143, 0.171428571429, 1].forEach((value, i) => expect(s[i + 2]).toBeCloseTo(value, 11));
    expect(s[0]).toBeCloseTo(1.657142857, 8);
    expect(s[1]).toBeCloseTo(3.171428571, 8);
    expect(s[7]).toBeCloseTo(4, 11);
    expect(s[8]).toBeCloseTo(9, 11);
  });
  test('first derivative at spacing 0.5', () => {
    const d = savitzkyGolay(y, { width: 5, degree: 2, derivative: 1, step: 0.5 });
    [4.171428571, 1.885714286, -0.4, -1.6, -2, 0.8, 4, 8, 12].forEach((value, i) => expect(d[i]).toBeCloseTo(value, 8));
  });
});
