// Whittaker: exact small system. Asymmetric least squares: definition of Eilers & Boelens (2005); adaptive: Zhang, Chen & Liang (2010);
// reweighted: Baek et al. (2015). Values computed from the definitions with an independent dense or sparse solver.
import { expect, test } from 'vitest';
import { asymmetricLeastSquares } from '../../../app/spectra/baseline.ts';
import { adaptiveBaseline, AIR_DEFAULTS, AR_DEFAULTS, reweightedBaseline } from '../../../app/spectra/penalised-baselines.ts';
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

test('adaptive (airPLS), lambda 1e4, second differences', () => {
  const z = adaptiveBaseline(signal, { ...AIR_DEFAULTS, lambda: 1e4 });
  [4.991196, 5.531931, 6.035774, 6.503186, 6.984116].forEach((value, k) => expect(z[25 * k]).toBeCloseTo(value, 5));
});

test.each([
  [1e4, [5.004104, 5.517246, 6.019176, 6.504362, 6.983445]],
  [1e5, [5.009211, 5.5124, 6.010954, 6.502298, 6.988845]],
])('reweighted (arPLS), lambda %f, on the signal with a ripple', (lambda, expected) => {
  const z = reweightedBaseline(signal.map((value, x) => value + 0.05 * Math.sin(7 * x * x)), { ...AR_DEFAULTS, lambda });
  expected.forEach((value, k) => expect(z[25 * k]).toBeCloseTo(value, 4));
});

test('a straight line is its own baseline by every way', () => {
  const y = Float64Array.from({ length: 200 }, (_, i) => 3 + 0.25 * i);
  for (const z of [asymmetricLeastSquares(y), adaptiveBaseline(y, { ...AIR_DEFAULTS, lambda: 1e5 }), reweightedBaseline(y, { ...AR_DEFAULTS, lambda: 1e5 })]) {
    y.forEach((value, i) => expect(Math.abs(z[i]! - value)).toBeLessThan(1e-6));
  }
});
