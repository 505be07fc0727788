import { median } from '../spectra/statistics.ts';

/** From this robust score on a value stands out (B. Iglewicz, D. C. Hoaglin, How to Detect and Handle Outliers, ASQC 1993). */
export const STANDS_OUT_FROM = 3.5;
/** A scatter smaller than this can't be told from that of facets and positions; in natural logarithms (judgement). */
export const LEAST_SCATTER = 0.1;
/** With fewer values there is no "rest" to stand out from (judgement). */
export const LEAST_VALUES = 5;

export type RobustScores = { readonly middle: number; readonly scatter: number; score(value: number, error: number): number };

/**
 * Median and MAD (times 1.4826, which makes it a standard deviation for normal values) of some values, and how far a value lies off
 * in units of it, its own error added. Null for fewer than five values.
 */
export function robustScores(values: readonly number[]): RobustScores | null {
  if (values.length < LEAST_VALUES) return null;
  const middle = median(values);
  const scatter = Math.max(LEAST_SCATTER, 1.4826 * median(values.map((value) => Math.abs(value - middle))));
  return { middle, scatter, score: (value, error) => (value - middle) / Math.hypot(scatter, error) };
}
