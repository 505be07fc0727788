import { err, ok, type Result } from '../result.ts';
import { resample } from './resample.ts';
import { risingPoints } from './rising-points.ts';

/**
 * range: lowest point 0, highest 1 · maximum: highest point 1, zero stays · area: area over the axis 1 ·
 * snv: mean 0, standard deviation 1 (standard normal variate; Barnes, Dhanoa & Lister, Appl. Spectrosc. 43 (1989) 772, from memory) ·
 * position: value at a position 1 · height: a stated height 1, such as that of the diamond line.
 */
export const NORMALISATIONS = ['range', 'maximum', 'area', 'snv', 'position', 'height'] as const;
export type Normalisation =
  | { readonly way: 'range' | 'maximum' | 'area' | 'snv' }
  | { readonly way: 'position'; /** On the axis of the curve. */ readonly at: number }
  | { readonly way: 'height'; /** In the curve's own ordinate. */ readonly height: number };

export type NormaliseError = { readonly code: 'nothing-to-scale-by'; readonly message: string };
type Points = { readonly x: ArrayLike<number>; readonly y: ArrayLike<number> };

const refuse = (message: string): { readonly ok: false; readonly error: NormaliseError } => err({ code: 'nothing-to-scale-by', message });

/** (y − from)/unit; points that are no number stay so. */
const scaled = (y: ArrayLike<number>, from: number, unit: number): Float64Array => Float64Array.from(y, (value) => (value - from) / unit);

function byRange(y: ArrayLike<number>, [low, high]: readonly [number, number]): Float64Array {
  const span = high - low;
  return span > 0 ? scaled(y, low, span) : Float64Array.from(y, (value) => value - value);
}

/** Area between the curve and zero, by trapezia over the axis. */
function areaOf({ x, y }: Points): number {
  const points = risingPoints(x, y);
  let area = 0;
  for (let i = 1; i < points.x.length; i++) area += 0.5 * (points.x[i]! - points.x[i - 1]!) * (points.y[i]! + points.y[i - 1]!);
  return area;
}

function byDeviation(y: ArrayLike<number>, finite: Float64Array): Result<Float64Array, NormaliseError> {
  const mean = finite.reduce((sum, value) => sum + value, 0) / finite.length;
  const deviation = Math.sqrt(finite.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (finite.length - 1));
  return deviation > 0 ? ok(scaled(y, mean, deviation)) : refuse('All its values are the same: there is nothing to scale by.');
}

/**
 * A curve brought to a common height; points that are no number stay so, a flat curve scaled by its range becomes all zeros.
 * Errors: 'nothing-to-scale-by' where what would become 1 is zero, negative or outside the curve.
 */
export function normaliseCurve({ x, y }: Points, how: Normalisation): Result<Float64Array, NormaliseError> {
  const finite = Float64Array.from(y).filter(Number.isFinite);
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of finite) { low = Math.min(low, value); high = Math.max(high, value); }
  if (finite.length < 2) return refuse('It has too few points to be scaled.');
  switch (how.way) {
    case 'range': return ok(byRange(y, [low, high]));
    case 'maximum': return high > 0 ? ok(scaled(y, 0, high)) : refuse('Its highest point is not above zero: scale it to its own lowest and highest point.');
    case 'area': {
      const area = areaOf({ x, y });
      return area > 0 ? ok(scaled(y, 0, area)) : refuse('The area under it is not above zero: take the baseline off, or scale it in another way.');
    }
    case 'snv': return byDeviation(y, finite);
    case 'position': {
      const [at] = resample(risingPoints(x, y), [how.at], 'linear');
      return at! > 0 ? ok(scaled(y, 0, at!)) : refuse('It has no value above zero at that position: choose a position that every curve covers.');
    }
    case 'height': return how.height > 0 ? ok(scaled(y, 0, how.height)) : refuse('The line it should be scaled by does not stand out in it.');
  }
}
