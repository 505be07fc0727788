import { expNegative } from './exp-negative.ts';
import { selectKth } from './statistics.ts';
import { workArray } from './work-array.ts';

export type KnotBaselineOptions = {
  /** Penalty of the second difference between neighbouring points. */
  readonly lambda: number;
  readonly iterations: number;
  /** Residual, in standard deviations of the noise, at which a point counts half. */
  readonly cutSigmas: number;
  /** Points from one knot to the next. */
  readonly spacing: number;
  /** Points over which lines may crowd, but not cover everything. */
  readonly period: number;
};

/** Keeps the system solvable across wide gaps without letting a strong line pull. */
const LEAST_WEIGHT = 1e-8;
/** The search runs on every so many points and ends on all of them: neighbours of a smoothed curve know the same. */
const SEARCH_STRIDE = 4;
/** Rounds on all points at the end. */
const FINAL_ROUNDS = 2;
/** The search has arrived where no weight of the mean point moves by more than this. */
const ARRIVED = 0.005;

/** Of every period at least this share of points belongs to the baseline (judgement): on steep edges it would let go of the curve otherwise. */
const LEAST_SHARE = 0.25;

/** Normal equations of the knots: diagonal, first off-diagonal, right side, before the penalty. */
type Normal = { readonly diagonal: Float64Array; readonly off: Float64Array; readonly right: Float64Array };

/** Logistic weights at residuals from -REACH to REACH, by a table with straight pieces: within 4e-6. */
const REACH = 18;
const PER_UNIT = 64;
const WEIGHTS = Float64Array.from({ length: 2 * REACH * PER_UNIT + 2 }, (_, k) => {
  const t = k / PER_UNIT - REACH;
  return Math.max(LEAST_WEIGHT, t >= 0 ? expNegative(t) / (1 + expNegative(t)) : 1 / (1 + expNegative(-t)));
});

/** Weight of a residual `t` = 2 (residual / noise - cut): 1 far below, a half at 0. */
function weightOf(t: number): number {
  if (t >= REACH) return LEAST_WEIGHT;
  if (t <= -REACH) return 1;
  const at = (t + REACH) * PER_UNIT;
  const k = at | 0;
  const here = WEIGHTS[k]!;
  return here + (at - k) * (WEIGHTS[k + 1]! - here);
}

/**
 * Gathers the normal equations of the knots from every `stride`-th point, weighed by its residual over the present knots
 * (evenly where there are none yet). Returns the mean change of weight against `weights`, which are overwritten.
 */
function gather(y: Float64Array, noise: Float64Array, knots: Float64Array | null, options: KnotBaselineOptions, stride: number, weights: Float64Array, allowance: Float64Array, normal: Normal): number {
  const { spacing } = options;
  const perSpacing = 1 / spacing;
  const twiceCut = 2 * options.cutSigmas;
  const { diagonal, off, right } = normal;
  const n = y.length;
  diagonal.fill(0);
  off.fill(0);
  right.fill(0);
  let change = 0;
  let count = 0;
  let i = 0;
  for (let j = 0; i < n; j++) {
    const start = j * spacing;
    const end = Math.min(n, start + spacing);
    const here = knots === null ? 0 : knots[j]!;
    const rise = knots === null ? 0 : knots[j + 1]! - here;
    const allowed = here + allowance[j]!;
    let d0 = 0, d1 = 0, e = 0, r0 = 0, r1 = 0;
    for (; i < end; i += stride) {
      const value = y[i]!;
      const b = (i - start) * perSpacing;
      const a = 1 - b;
      const w = knots === null ? 1 : weightOf((2 * (value - allowed - rise * b)) / noise[i]! - twiceCut);
      change += Math.abs(w - weights[i]!);
      weights[i] = w;
      count++;
      const wa = w * a;
      const wb = w * b;
      d0 += wa * a; e += wa * b; d1 += wb * b;
      r0 += wa * value; r1 += wb * value;
    }
    diagonal[j] = diagonal[j]! + d0;
    diagonal[j + 1] = diagonal[j + 1]! + d1;
    off[j] = off[j]! + e;
    right[j] = right[j]! + r0;
    right[j + 1] = right[j + 1]! + r1;
  }
  return change / count;
}

type Factors = { readonly d: Float64Array; readonly e: Float64Array; readonly f: Float64Array };

/** Solves (normal + lambda D2ᵀD2) z = right by LDLᵀ; normal is tridiagonal, the penalty pentadiagonal. */
function solveKnots({ diagonal, off, right }: Normal, lambda: number, z: Float64Array, { d, e, f }: Factors): void {
  const n = z.length;
  let d1 = 0, d2 = 0, e1 = 0, f1 = 0, f2 = 0, g1 = 0, g2 = 0;
  for (let i = 0; i < n; i++) {
    const six = i === 0 || i === n - 1 ? 1 : i === 1 || i === n - 2 ? 5 : 6;
    const four = i === 0 || i === n - 2 ? -2 : -4;
    const di = diagonal[i]! + lambda * six - d1 * e1 * e1 - d2 * f2 * f2;
    const inverse = 1 / di;
    const ei = i < n - 1 ? (off[i]! + lambda * four - d1 * e1 * f1) * inverse : 0;
    const fi = i < n - 2 ? lambda * inverse : 0;
    const gi = right[i]! - e1 * g1 - f2 * g2;
    d[i] = inverse; e[i] = ei; f[i] = fi; z[i] = gi;
    d2 = d1; d1 = di; e1 = ei; f2 = f1; f1 = fi; g2 = g1; g1 = gi;
  }
  let z1 = 0, z2 = 0;
  for (let i = n - 1; i >= 0; i--) {
    const zi = z[i]! * d[i]! - e[i]! * z1 - f[i]! * z2;
    z[i] = zi;
    z2 = z1; z1 = zi;
  }
}

/**
 * Where too few points of a period carry weight, lets points count although they lie higher: `allowance`, one value per knot,
 * raises the cut until LEAST_SHARE of them do. It goes back to zero as the baseline returns to the curve.
 */
function allow(y: Float64Array, noise: Float64Array, knots: Float64Array, options: KnotBaselineOptions, stride: number, weights: Float64Array, allowance: Float64Array, scratch: Float64Array): void {
  const { spacing, cutSigmas } = options;
  const n = y.length;
  const windows = Math.max(1, Math.round(n / options.period));
  const perWindow = Math.ceil((knots.length - 1) / windows);
  for (let first = 0; first < knots.length - 1; first += perWindow) {
    const last = Math.min(knots.length - 1, first + perWindow);
    const from = Math.ceil((first * spacing) / stride) * stride;
    const to = Math.min(n, last * spacing);
    let weight = 0;
    let count = 0;
    for (let i = from; i < to; i += stride, count++) weight += weights[i]!;
    if (count === 0 || (weight >= LEAST_SHARE * count && allowance[first] === 0)) continue;
    count = 0;
    for (let i = from; i < to; i += stride) {
      const j = Math.floor(i / spacing);
      scratch[count++] = y[i]! - knots[j]! - (knots[j + 1]! - knots[j]!) * (i / spacing - j) - cutSigmas * noise[i]!;
    }
    allowance.fill(Math.max(0, selectKth(scratch, count, Math.floor(LEAST_SHARE * count))), first, last);
  }
}

const weightsWork = workArray();
const residualWork = workArray();

/**
 * Whittaker baseline with logistic weights (see baselineUnderLines) on straight pieces between knots: the same penalty and the
 * same points, but as few unknowns as the baseline's own width asks for. y and noise have one length n >= 5 * spacing.
 */
export function knotBaseline(y: Float64Array, noise: Float64Array, options: KnotBaselineOptions): Float64Array {
  const { spacing, iterations, lambda } = options;
  const n = y.length;
  const count = Math.ceil(n / spacing) + 1;
  const normal: Normal = { diagonal: new Float64Array(count), off: new Float64Array(count), right: new Float64Array(count) };
  const factors: Factors = { d: new Float64Array(count), e: new Float64Array(count), f: new Float64Array(count) };
  const knots = new Float64Array(count);
  const weights = weightsWork(n).fill(1);
  const allowance = new Float64Array(count);
  const scratch = residualWork(n);
  const stride = Math.max(1, Math.min(SEARCH_STRIDE, spacing - 1));
  // A point of the search stands for `stride` points, and the knots' second differences for spacing³ of the points'.
  const penalty = lambda / spacing ** 3;
  gather(y, noise, null, options, stride, weights, allowance, normal);
  solveKnots(normal, penalty / stride, knots, factors);
  for (let k = 1; k < iterations - FINAL_ROUNDS; k++) {
    const change = gather(y, noise, knots, options, stride, weights, allowance, normal);
    solveKnots(normal, penalty / stride, knots, factors);
    allow(y, noise, knots, options, stride, weights, allowance, scratch);
    if (change < ARRIVED) break;
  }
  for (let k = 0; k < FINAL_ROUNDS; k++) {
    gather(y, noise, knots, options, 1, weights, allowance, normal);
    solveKnots(normal, penalty, knots, factors);
  }
  const z = new Float64Array(n);
  for (let i = 0, j = 0; i < n; j++) {
    const end = Math.min(n, i + spacing);
    const rise = (knots[j + 1]! - knots[j]!) / spacing;
    for (let value = knots[j]!; i < end; i++, value += rise) z[i] = value;
  }
  return z;
}
