import { expect, test } from 'vitest';
import { betaQuantile, incompleteBeta, logGamma } from '../../../app/evaluation/beta-quantile.ts';
import { clopperPearson, upperLimit } from '../../../app/evaluation/clopper-pearson.ts';

// Limits computed with scipy 1.17.1 (beta.ppf); 0/50, 3/50 and 10/20 also with R's binom.test.
const LIMITS: readonly (readonly [number, number, number, number, number])[] = [
  [0, 10, 0, 0.3084971078187607, 0.2588655508930522], [0, 30, 0, 0.11570330822202778, 0.09503385285530411], [0, 50, 0, 0.07112173646419764, 0.05815507911697225],
  [0, 100, 0, 0.03621669264517641, 0.029513049607039925], [0, 300, 0, 0.01222097469429355, 0.009936081944457708], [1, 10, 0.0025285785444617865, 0.4450161170281954, 0.39416330243650466],
  [1, 50, 0.0005062279830408294, 0.1064695457114999, 0.09139813071969738], [3, 50, 0.01254858783533406, 0.1654819466037729, 0.147837], [5, 50, 0.033275, 0.218135, 0.198833], [8, 10, 0.443905, 0.974789, 0.963229],
  [10, 20, 0.271958, 0.728042, 0.698046], [50, 100, 0.398321, 0.601679, 0.586378], [2, 1000, 0.000242, 0.007206, 0.006282],
];
const digits = (value: number): number => (String(value).length > 9 ? 13 : 6);

test.each(LIMITS)('%i of %i', (count, of, low, high, oneSided) => {
  const limits = clopperPearson(count, of);
  expect(limits.low).toBeCloseTo(low, digits(low));
  expect(limits.high).toBeCloseTo(high, digits(high));
  expect(upperLimit(count, of)).toBeCloseTo(oneSided, digits(oneSided));
});

test('all of all: the upper limit is one, and the lower mirrors none of all', () => {
  const { low, high } = clopperPearson(100, 100);
  expect(high).toBe(1);
  expect(low).toBeCloseTo(1 - clopperPearson(0, 100).high, 12);
  expect(low).toBeCloseTo(0.963783, 6);
});

test('99 % limits', () => {
  expect(clopperPearson(0, 50, 0.99).high).toBeCloseTo(0.100545, 6);
  expect(clopperPearson(3, 50, 0.99)).toMatchObject({ low: expect.closeTo(0.006872, 6), high: expect.closeTo(0.202706, 6) });
});

test('none of n has its closed form at every size, also where the gamma function is huge', () => {
  for (const n of [1, 7, 299, 8015, 1_000_000]) expect(upperLimit(0, n) / (1 - 0.05 ** (1 / n))).toBeCloseTo(1, 8);
  // The smallest n that allows "at most 1 %" with 95 % confidence.
  expect(upperLimit(0, 298)).toBeGreaterThan(0.01);
  expect(upperLimit(0, 299)).toBeLessThan(0.01);
});

test('the beta function and its inverse agree; known values', () => {
  expect(Math.exp(logGamma(5))).toBeCloseTo(24, 10);
  expect(Math.exp(logGamma(0.5))).toBeCloseTo(Math.sqrt(Math.PI), 12);
  expect(incompleteBeta(0.5, 2, 3)).toBeCloseTo(11 / 16, 13);
  for (const [a, b] of [[0.5, 0.5], [1, 1], [3, 8], [200, 7], [9000, 12]] as const) for (const p of [0.001, 0.025, 0.5, 0.975]) expect(incompleteBeta(betaQuantile(p, a, b), a, b)).toBeCloseTo(p, 9);
});
