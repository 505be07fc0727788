// NIST Statistical Reference Datasets, nonlinear regression: certified values in the files' own headers.
import { describe, expect, test } from 'vitest';
import type { Model } from '../../../app/spectra/levenberg-marquardt.ts';
import { levenbergMarquardt } from '../../../app/spectra/levenberg-marquardt.ts';
import { readNistStrd } from './read-nist-strd.ts';

/** y = b1 exp(-b2 x) + b3 exp(-(x-b4)²/b5²) + b6 exp(-(x-b7)²/b8²) */
const twoGaussians: Model = (x, p, g) => {
  const decay = Math.exp(-p[1]! * x);
  const u = (x - p[3]!) / p[4]!;
  const v = (x - p[6]!) / p[7]!;
  const first = Math.exp(-u * u);
  const second = Math.exp(-v * v);
  g.set([decay, -p[0]! * x * decay, first, (p[2]! * first * 2 * u) / p[4]!, (p[2]! * first * 2 * u * u) / p[4]!, second, (p[5]! * second * 2 * v) / p[7]!, (p[5]! * second * 2 * v * v) / p[7]!]);
  return p[0]! * decay + p[2]! * first + p[5]! * second;
};
/** y = (b1/b2) exp(-½((x-b3)/b2)²) */
const areaGaussian: Model = (x, p, g) => {
  const u = (x - p[2]!) / p[1]!;
  const e = Math.exp(-0.5 * u * u) / p[1]!;
  g.set([e, (p[0]! * e * (u * u - 1)) / p[1]!, (p[0]! * e * u) / p[1]!]);
  return p[0]! * e;
};

/** Decimal digits in which a value agrees with its reference. */
const digits = (value: number, reference: number): number => -Math.log10(Math.max(1e-16, Math.abs(value - reference) / Math.abs(reference)));

describe.each([['Gauss1', twoGaussians], ['Gauss2', twoGaussians], ['Gauss3', twoGaussians], ['Eckerle4', areaGaussian]] as const)('%s', (name, model) => {
  const set = readNistStrd(name);
  test.each([0, 1] as const)('from start %i', (start) => {
    const fit = levenbergMarquardt(set.x, set.y, model, set.starts[start]);
    expect(fit.converged).toBe(true);
    set.certified.forEach((certified, k) => expect(digits(fit.parameters[k]!, certified)).toBeGreaterThanOrEqual(6));
    set.deviations.forEach((deviation, k) => expect(digits(fit.errors[k]!, deviation)).toBeGreaterThanOrEqual(4));
    expect(digits(fit.rss, set.rss)).toBeGreaterThanOrEqual(9);
  });
});
