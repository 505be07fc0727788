// Conversion factors: A 16.5 (Boyd et al. 1994, from memory), B 79.4 (Boyd, Kiflawi, Woods, Phil. Mag. B 72 (1995) 351); heights of the component shapes from memory. Test set computed from them.
import { describe, expect, test } from 'vitest';
import { COMPONENT_SHAPES, PPM_PER_CM1 } from '../../../app/infrared/component-shapes.ts';
import { fitNitrogen } from '../../../app/infrared/nitrogen.ts';
import { latticeAbsorption } from '../../../app/infrared/two-phonon.ts';

const alpha = (A: number, B: number, cm1: number): number => (A / PPM_PER_CM1.A.factor) * COMPONENT_SHAPES.A(cm1) + (B / PPM_PER_CM1.B.factor) * COMPONENT_SHAPES.B(cm1);

const SET = [[100, 0, 6.061, 2.433], [0, 100, 1.259, 3.333], [100, 50, 6.69, 4.1], [500, 300, 34.08, 22.16]] as const;
describe.each(SET)('A %f ppm, B %f ppm', (A, B, at1282, at1175) => {
  test('heights', () => {
    expect(alpha(A, B, 1282)).toBeCloseTo(at1282, 2);
    // Within the fourth figure, which depends on how the 1175 height is rounded.
    expect(Math.abs(alpha(A, B, 1175) / at1175 - 1)).toBeLessThan(0.004);
  });
  test('the inversion returns the inputs', () => {
    const x = Float64Array.from({ length: 560 }, (_, i) => 950 + i);
    const fit = fitNitrogen(x, x.map((cm1) => alpha(A, B, cm1)))!;
    expect(fit.ppm.A).toBeCloseTo(A, 6);
    expect(fit.ppm.B).toBeCloseTo(B, 6);
    expect(fit.ppm.C).toBeCloseTo(0, 6);
    expect(fit.ppm.Nplus).toBeCloseTo(0, 6);
  });
});

test('lattice absorption at its anchors (Thomas & Tropf 1994 and later, from memory, ±3 %)', () => {
  expect(latticeAbsorption(1992)).toBeCloseTo(12, 6);
  expect(Math.abs(latticeAbsorption(2030) / 13.1 - 1)).toBeLessThan(0.03);
  expect(Math.abs(latticeAbsorption(2160) / 13.7 - 1)).toBeLessThan(0.03);
  // Path 1 mm gives absorbance 0.521 there.
  expect((latticeAbsorption(1992) * 0.1) / Math.LN10).toBeCloseTo(0.521, 3);
});
