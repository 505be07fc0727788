import { ok, type Result } from '../result.ts';
import { onCommonAxis, type CommonAxisError } from './common-axis.ts';
import type { RisingPoints } from './rising-points.ts';

export const COMBINATIONS = ['difference', 'ratio'] as const;
export type Combination = (typeof COMBINATIONS)[number];

/** Share of the divisor's greatest value below which a ratio says nothing but noise (judgement). */
const LEAST_DIVISOR = 1e-3;

/**
 * First minus second, or first over second, on the points of the coarser of the two within the range that both cover. Where the divisor
 * is nearly nothing the ratio is NaN. Both on one axis, in one unit. Errors: 'no-common-range'.
 */
export function combineCurves(first: { readonly x: ArrayLike<number>; readonly y: ArrayLike<number> }, second: typeof first, how: Combination): Result<RisingPoints, CommonAxisError> {
  const common = onCommonAxis([first, second]);
  if (!common.ok) return common;
  const { x, ys } = common.value;
  const [a, b] = ys as [Float64Array, Float64Array];
  if (how === 'difference') return ok({ x, y: a.map((value, i) => value - b[i]!) });
  const least = LEAST_DIVISOR * b.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  return ok({ x, y: a.map((value, i) => (Math.abs(b[i]!) > least ? value / b[i]! : Number.NaN)) });
}
