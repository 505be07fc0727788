import { describe, expect, test } from 'vitest';
import { colourMatchingAt, MATCHING_FUNCTIONS, MATCHING_GRID_NM } from '../../../app/colour/matching-functions.ts';
import { chromaticity, tristimulus } from '../../../app/colour/tristimulus.ts';

const GRID = Float64Array.from(MATCHING_FUNCTIONS, (_, i) => MATCHING_GRID_NM.from + MATCHING_GRID_NM.step * i);
/** Planck's law per wavelength, relative; c2 of CODATA 2018. */
const planck = (nm: number, kelvin: number): number => nm ** -5 / Math.expm1(1.438776877e7 / (nm * kelvin));
const of = (nm: Float64Array, power: (v: number) => number) => chromaticity(tristimulus(nm, nm.map(power)))!;

describe('CIE 1931 2° observer, ISO/CIE 11664-1', () => {
  test('the rows are all there: their sums, 380–780 nm every 5 nm, are those of the published table', () => {
    const sum = (c: 0 | 1 | 2) => MATCHING_FUNCTIONS.reduce((s, row) => s + row[c], 0);
    expect(MATCHING_FUNCTIONS).toHaveLength(81);
    expect(sum(0)).toBeCloseTo(21.37152521, 8);
    expect(sum(1)).toBeCloseTo(21.37132779, 8);
    expect(sum(2)).toBeCloseTo(21.37154021, 8);
  });
  // Chromaticities of monochromatic light from the same table.
  test.each([
    [400, 0.17334, 0.0048], [450, 0.15664, 0.0177], [480, 0.09129, 0.1327], [500, 0.00817, 0.53842], [520, 0.0743, 0.8338], [550, 0.3016, 0.69231],
    [555, 0.33736, 0.65885], [580, 0.51249, 0.48659], [600, 0.62704, 0.37249], [650, 0.72599, 0.27401], [700, 0.73469, 0.26531],
  ])('light of %i nm', (nm, x, y) => {
    const found = chromaticity(colourMatchingAt(nm))!;
    expect(found.x).toBeCloseTo(x, 5);
    expect(found.y).toBeCloseTo(y, 5);
  });
  test('equal energy lies at a third and a third', () => {
    const found = of(GRID, () => 1);
    expect(found.x).toBeCloseTo(1 / 3, 4);
    expect(found.y).toBeCloseTo(1 / 3, 4);
  });
  // Planckian radiators, integrated 360–830 nm every 1 nm with the published 1 nm table.
  test.each([
    [2856, 0.447535, 0.407428], [3000, 0.436931, 0.404074], [5000, 0.345101, 0.351608], [6500, 0.313526, 0.323628], [7000, 0.306374, 0.316513], [10000, 0.280634, 0.288288],
  ])('Planckian radiator at %i K', (kelvin, x, y) => {
    for (const step of [5, 1, 0.25]) {
      const nm = Float64Array.from({ length: 1 + 400 / step }, (_, i) => 380 + step * i);
      const found = of(nm, (v) => planck(v, kelvin));
      expect(Math.abs(found.x - x)).toBeLessThan(1e-4);
      expect(Math.abs(found.y - y)).toBeLessThan(1e-4);
    }
  });
  test('the interpolation joins at the rows without a step, and outside the table there is no sight', () => {
    for (let i = 3; i < MATCHING_FUNCTIONS.length - 3; i++) {
      const nm = MATCHING_GRID_NM.from + MATCHING_GRID_NM.step * i;
      const [left, right] = [colourMatchingAt(nm - 0.001), colourMatchingAt(nm + 0.001)];
      for (let c = 0; c < 3; c++) expect(Math.abs(left[c]! - right[c]!)).toBeLessThan(1e-3);
    }
    expect(colourMatchingAt(379)).toEqual([0, 0, 0]);
    expect(colourMatchingAt(781)).toEqual([0, 0, 0]);
    expect(colourMatchingAt(Number.NaN)).toEqual([0, 0, 0]);
  });
});
