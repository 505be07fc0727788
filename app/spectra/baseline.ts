import { knotBaseline } from './knot-baseline.ts';
import { whittaker, whittakerWork } from './whittaker.ts';

export type AsymmetricOptions = { readonly lambda: number; readonly p: number; readonly iterations: number };
export const ASYMMETRIC_DEFAULTS: AsymmetricOptions = { lambda: 1e5, p: 0.01, iterations: 10 };

/**
 * Asymmetric least squares baseline, same length as y (n >= 5): points above count with weight p, points below with 1 - p.
 * All weights start at 1; a fixed number of reweightings. Linear time.
 * P. H. C. Eilers, H. F. M. Boelens, Baseline correction with asymmetric least squares smoothing (2005) (from memory).
 */
export function asymmetricLeastSquares(y: Float64Array, options: AsymmetricOptions = ASYMMETRIC_DEFAULTS): Float64Array {
  const n = y.length;
  const w = new Float64Array(n).fill(1);
  const z = new Float64Array(n);
  const work = whittakerWork(n);
  for (let k = 0; k < options.iterations; k++) {
    whittaker(y, w, options.lambda, z, work);
    for (let i = 0; i < n; i++) w[i] = y[i]! > z[i]! ? options.p : 1 - options.p;
  }
  return z;
}

export type BaselineOptions = {
  /** Penalty of the second difference, see lambdaForPeriod. */
  readonly lambda: number;
  readonly iterations: number;
  /** Residual, in standard deviations of the noise, at which a point counts half. */
  readonly cutSigmas: number;
};
export const BASELINE_DEFAULTS = { iterations: 15, cutSigmas: 2 } as const;
/** So many straight pieces to the period that the penalty halves: they bend like the smooth curve within 0.5 % of its height. */
const KNOTS_PER_PERIOD = 32;
const LEAST_KNOTS = 8;

/**
 * Penalty for which a sine of this period, in points, passes a second-difference Whittaker smoother at half its height:
 * gain = 1 / (1 + lambda (2 - 2 cos w)²), w = 2 pi / period, here for small w.
 */
export const lambdaForPeriod = (points: number): number => (points / (2 * Math.PI)) ** 4;

/** The period that lambdaForPeriod would give this penalty. */
const periodForLambda = (lambda: number): number => 2 * Math.PI * lambda ** 0.25;

/**
 * Baseline under lines that stick out of the noise: points weigh by a logistic of their residual over the known local noise,
 * so that the baseline runs through the middle of the noise, not along its lower edge. Same length as y (n >= 5). Linear time.
 * The logistic weight follows S.-J. Baek et al., Analyst 140 (2015) 250 (from memory), with measured instead of estimated noise.
 */
export function baselineUnderLines(y: Float64Array, noise: Float64Array, options: BaselineOptions): Float64Array {
  const period = periodForLambda(options.lambda);
  const spacing = Math.max(1, Math.min(Math.floor(period / KNOTS_PER_PERIOD), Math.floor(y.length / LEAST_KNOTS)));
  return knotBaseline(y, noise, { ...options, spacing, period });
}
