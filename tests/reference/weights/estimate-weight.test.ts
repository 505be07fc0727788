import { describe, expect, test } from 'vitest';
import type { Cut, Girdle } from '../../../app/weights/cuts.ts';
import { estimateWeight } from '../../../app/weights/estimate-weight.ts';

const of = (cut: Cut, length: number, width: number, depth: number, girdle: Girdle = 'thin-to-medium') =>
  estimateWeight({ cut, length, width, depth, depthWay: 'measured', girdle, shapePercent: 0 }, 0.05);

describe('estimated weights', () => {
  // Worked examples of public appraisal tutorials: 6.08² × 3.63 × 0.0061 = 0.8185 ct; 10.0² × 6.0 × 0.0061 = 3.66 ct.
  test('published examples', () => {
    expect(of('round', 6.08, 6.08, 3.63).weight).toBe(8185);
    expect(of('round', 10, 10, 6).weight).toBe(36_600);
  });
  // Computed by hand from factor × measures with the printed factors; emerald at length/width 1.4 between 0.0080 at 1.0 and 0.0092 at 1.5.
  test.each<[Cut, number, number, number, Girdle, number]>([
    ['round', 6.5, 6.5, 3.95, 'thin-to-medium', 10_180], ['round', 6.5, 6.5, 3.95, 'slightly-thick', 10_384], ['oval', 8, 6, 3.7, 'thin-to-medium', 11_241],
    ['emerald', 7, 5, 3.3, 'thin-to-medium', 10_349], ['marquise', 10, 5, 3.1, 'thin-to-medium', 8990], ['pear', 9, 6, 3.6, 'thin-to-medium', 11_664],
    ['heart', 6.5, 6.5, 3.9, 'thin-to-medium', 9722], ['triangle', 6, 6, 2.6, 'thin-to-medium', 5335], ['baguette', 4, 2, 1.3, 'thin-to-medium', 952],
  ])('%s %f × %f × %f, girdle %s: %i', (cut, length, width, depth, girdle, weight) => {
    expect(of(cut, length, width, depth, girdle).weight).toBe(weight);
  });
  test('the stated error is what the measures and the factor give when they vary (first order, against finite differences)', () => {
    const u = 0.05;
    const at = (length: number, width: number, depth: number) => 0.0062 * ((length + width) / 2) ** 2 * depth * 1e4;
    const parts = [at(8 + u, 6, 3.7) - at(8, 6, 3.7), at(8, 6 + u, 3.7) - at(8, 6, 3.7), at(8, 6, 3.7 + u) - at(8, 6, 3.7), 0.01 * at(8, 6, 3.7)];
    const { reading, formula, uncertainty } = of('oval', 8, 6, 3.7);
    expect(Math.abs(reading - Math.hypot(...parts))).toBeLessThan(0.02 * reading);
    expect(formula).toBe(Math.round(0.04 * 11_240.6));
    expect(uncertainty).toBe(Math.round(Math.hypot(reading, formula)));
  });
});
