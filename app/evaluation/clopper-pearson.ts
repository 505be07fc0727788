import { betaQuantile } from './beta-quantile.ts';

export type Interval = { readonly low: number; readonly high: number };

/** Exact limits of a proportion: C. J. Clopper, E. S. Pearson, Biometrika 26 (1934) 404. Two-sided; `confidence` 0.95 unless stated. n = 0 says nothing: 0 to 1. */
export function clopperPearson(count: number, of: number, confidence = 0.95): Interval {
  const tail = (1 - confidence) / 2;
  return {
    low: count === 0 ? 0 : betaQuantile(tail, count, of - count + 1),
    high: count === of ? 1 : betaQuantile(1 - tail, count + 1, of - count),
  };
}

/** Upper limit alone, one-sided: what a count of none still allows. */
export const upperLimit = (count: number, of: number, confidence = 0.95): number => (count === of ? 1 : betaQuantile(confidence, count + 1, of - count));
