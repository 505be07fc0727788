import { whittaker, whittakerWork } from './whittaker.ts';

export type AirOptions = { readonly lambda: number; readonly mostIterations: number; /** Sum of what lies below, over the sum of all values, at which it ends. */ readonly tolerance: number };
export const AIR_DEFAULTS = { mostIterations: 15, tolerance: 0.001 } as const;

/**
 * Adaptive iteratively reweighted baseline: points above count nothing, points below ever more the lower they lie. Same length as y (n >= 5).
 * Z.-M. Zhang, S. Chen, Y.-Z. Liang, Analyst 135 (2010) 1138 (from memory), with second differences; the ends weigh as the point nearest below.
 */
export function adaptiveBaseline(y: Float64Array, { lambda, mostIterations, tolerance }: AirOptions): Float64Array {
  const n = y.length;
  const w = new Float64Array(n).fill(1);
  const z = new Float64Array(n);
  const work = whittakerWork(n);
  let all = 0;
  for (let i = 0; i < n; i++) all += Math.abs(y[i]!);
  for (let round = 1; round <= mostIterations; round++) {
    whittaker(y, w, lambda, z, work);
    let below = 0;
    let nearest = -Infinity;
    for (let i = 0; i < n; i++) {
      const d = y[i]! - z[i]!;
      if (d < 0) {
        below -= d;
        if (d > nearest) nearest = d;
      }
    }
    if (below < tolerance * all || below === 0) break;
    for (let i = 0; i < n; i++) {
      const d = y[i]! - z[i]!;
      w[i] = d < 0 ? Math.exp((-round * d) / below) : 0;
    }
    w[0] = w[n - 1] = Math.exp((round * nearest) / below);
  }
  return z;
}

export type ArOptions = { readonly lambda: number; readonly mostIterations: number; /** Relative change of the weights at which it ends. */ readonly tolerance: number };
export const AR_DEFAULTS = { mostIterations: 50, tolerance: 1e-3 } as const;
/** A logistic further out than this is 0 or 1 to the last digit. */
const FAR = 700;

/**
 * Asymmetrically reweighted baseline: a logistic of the residual over the mean and spread of what lies below. Same length as y (n >= 5).
 * S.-J. Baek, A. Park, Y.-J. Ahn, J. Choo, Analyst 140 (2015) 250 (from memory). Where nothing lies below, as on a curve without noise, it has arrived.
 */
export function reweightedBaseline(y: Float64Array, { lambda, mostIterations, tolerance }: ArOptions): Float64Array {
  const n = y.length;
  const w = new Float64Array(n).fill(1);
  const z = new Float64Array(n);
  const work = whittakerWork(n);
  for (let round = 0; round < mostIterations; round++) {
    whittaker(y, w, lambda, z, work);
    let count = 0, sum = 0, squares = 0;
    for (let i = 0; i < n; i++) {
      const d = y[i]! - z[i]!;
      if (d < 0) { count++; sum += d; squares += d * d; }
    }
    const mean = sum / count;
    const spread = Math.sqrt(Math.max(0, squares / count - mean * mean));
    if (count < 2 || !(spread > 0)) break;
    let change = 0, size = 0;
    for (let i = 0; i < n; i++) {
      const next = 1 / (1 + Math.exp(Math.min(FAR, (2 * (y[i]! - z[i]! - (2 * spread - mean))) / spread)));
      change += (next - w[i]!) ** 2;
      size += w[i]! ** 2;
      w[i] = next;
    }
    if (change < tolerance * tolerance * size) break;
  }
  return z;
}
