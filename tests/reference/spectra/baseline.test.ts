// Whittaker: exact small system. Asymmetric least squares: definition of Eilers & Boelens (2005), values computed from it with an independent sparse solver.
import { expect, test } from 'vitest';
import { asymmetricLeastSquares } from '../../../app/spectra/baseline.ts';
import { whittaker, whittakerWork } from '../../../app/spectra/whittaker.ts';

const smooth = (y: Float64Array, lambda: number): Float64Array => {
  const z = new Float64Array(y.length);
  whittaker(y, new Float64Array(y.length).fill(1), lambda, z, whittakerWork(y.length));
  return z;
};

test('Whittaker smoother, five points', () => {
  const y = Float64Array.of(1, 2, 4, 2, 1);
  [1.375, 2.25, 2.75, 2.25, 1.375].forEach((value, i) => expect(smooth(y, 1)[i]).toBeCloseTo(value, 12));
  [1.87533156, 2.0530504, 2.14323607, 2.0530504, 1.87533156].forEach((value, i) => expect(smooth(y, 10)[i]).toBeCloseTo(value, 7));
});

test('a straight line comes back unchanged', () => {
  const y = Float64Array.from({ length: 200 }, (_, i) => 3 - 0.25 * i);
  const z = smooth(y, 1e5);
  y.forEach((value, i) => expect(Math.abs(z[i]! - value)).toBeLessThan(1e-6));
});

const signal = Float64Array.from({ length: 101 }, (_, x) => 5 + 0.02 * x + 10 * Math.exp(-((x - 50) ** 2) / 32) + 6 * Math.exp(-((x - 25) ** 2) / 18));
test.each([
  [1e4, 0.001, [4.988767, 5.531758, 6.039798, 6.497643, 6.949222]],
  [1e5, 0.01, [5.018708, 5.576295, 6.086536, 6.53155, 6.963490]],
  [1e6, 0.01, [5.046372, 5.547062, 6.04096, 6.525266, 7.006334]],
])('asymmetric least squares, lambda %f, p %f', (lambda, p, expected) => {
  const z = asymmetricLeastSquares(signal, { lambda, p, iterations: 10 });
  [0, 25, 50, 75, 100].forEach((at, k) => expect(z[at]).toBeCloseTo(expected[k]!, 5));
});
