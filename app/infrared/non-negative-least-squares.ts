import { cholesky, choleskySolve } from '../spectra/cholesky.ts';

export type NonNegativeFit = {
  readonly coefficients: Float64Array;
  /** Inverse of the normal matrix of the active columns, row-major p×p, zero for columns held at zero. */
  readonly inverse: Float64Array;
  readonly active: readonly boolean[];
  readonly rss: number;
};

/** Columns made ready for many right sides. */
export type NonNegativeSolver = {
  /** Coefficients alone, for n values y; `out` (p values) takes them. */
  coefficients(y: Float64Array, out?: Float64Array): Float64Array;
  /** With the sum of squared residuals and the covariance's inverse matrix. */
  fit(y: Float64Array): NonNegativeFit;
};

/** A gradient below this share of the largest right side is rounding. */
const ROUNDING = 1e-12;

/** Column-wise dot products with y; five columns in one pass over y, since the pass is what costs. */
function products(columns: readonly Float64Array[], y: Float64Array, out: Float64Array): void {
  const n = y.length;
  const p = columns.length;
  let c = 0;
  for (; c + 5 <= p; c += 5) {
    const c0 = columns[c]!, c1 = columns[c + 1]!, c2 = columns[c + 2]!, c3 = columns[c + 3]!, c4 = columns[c + 4]!;
    let s0 = 0, s1 = 0, s2 = 0, s3 = 0, s4 = 0;
    for (let i = 0; i < n; i++) {
      const v = y[i]!;
      s0 += c0[i]! * v; s1 += c1[i]! * v; s2 += c2[i]! * v; s3 += c3[i]! * v; s4 += c4[i]! * v;
    }
    out[c] = s0; out[c + 1] = s1; out[c + 2] = s2; out[c + 3] = s3; out[c + 4] = s4;
  }
  for (; c < p; c++) {
    const column = columns[c]!;
    let s = 0;
    for (let i = 0; i < n; i++) s += column[i]! * y[i]!;
    out[c] = s;
  }
}

/**
 * Least squares with some coefficients held at or above zero: Lawson & Hanson's active set (Solving Least Squares Problems, 1974; from memory)
 * on the normal equations. columns: p arrays of one length n, not changed afterwards; free[j] lets coefficient j take either sign.
 * The normal matrix is made once, so that each further y costs one pass over the columns.
 */
export function nonNegativeSolver(columns: readonly Float64Array[], free: readonly boolean[]): NonNegativeSolver {
  const p = columns.length;
  const gram = new Float64Array(p * p);
  const column = new Float64Array(p);
  for (let a = 0; a < p; a++) {
    products(columns, columns[a]!, column);
    gram.set(column, a * p);
  }
  const rhs = new Float64Array(p);
  const trial = new Float64Array(p);
  const packed = new Float64Array(p);
  const factor = new Float64Array(p * p);
  const index = new Int32Array(p);
  const active = new Uint8Array(p);
  let size = 0;

  /** Solves for the active columns alone, into `trial`; false where they are not independent. */
  const solveActive = (): boolean => {
    size = 0;
    for (let j = 0; j < p; j++) if (active[j] === 1) index[size++] = j;
    for (let r = 0; r < size; r++) {
      const from = index[r]! * p;
      packed[r] = rhs[index[r]!]!;
      for (let c = 0; c <= r; c++) factor[r * size + c] = gram[from + index[c]!]!;
    }
    if (!cholesky(factor, size)) return false;
    choleskySolve(factor, size, packed);
    trial.fill(0);
    for (let r = 0; r < size; r++) trial[index[r]!] = packed[r]!;
    return true;
  };

  /** The column held at zero that would gain most, or -1. */
  const steepest = (x: Float64Array, least: number): number => {
    let enter = -1;
    let most = least;
    for (let a = 0; a < p; a++) {
      if (active[a] === 1) continue;
      let gain = rhs[a]!;
      for (let b = 0; b < p; b++) gain -= gram[a * p + b]! * x[b]!;
      if (gain > most) { most = gain; enter = a; }
    }
    return enter;
  };

  /**
   * Principal pivoting: lets go of every column that would turn negative, takes back every one that would gain, until neither is left,
   * into `trial`. Few solutions where it ends; false where it has not ended after 2 p exchanges, which Lawson & Hanson's order always does.
   * J. J. Júdice, F. M. Pires, Comput. Oper. Res. 21 (1994) 587 (from memory).
   */
  const exchange = (least: number): boolean => {
    active.fill(1);
    for (let round = 0; round < 2 * p; round++) {
      if (!solveActive()) return false;
      let changed = false;
      for (let a = 0; a < p; a++) if (active[a] === 1 && free[a] !== true && trial[a]! <= 0) { active[a] = 0; changed = true; }
      if (changed) continue;
      for (let a = 0; a < p; a++) {
        if (active[a] === 1) continue;
        let gain = rhs[a]!;
        for (let b = 0; b < p; b++) gain -= gram[a * p + b]! * trial[b]!;
        if (gain > least) { active[a] = 1; changed = true; }
      }
      if (!changed) return true;
    }
    return false;
  };

  /** From the feasible x towards the unconstrained optimum of the active columns, dropping those that reach zero on the way. */
  const settle = (x: Float64Array, enter: number): void => {
    while (active[enter] === 1) {
      if (!solveActive()) { active[enter] = 0; return; }
      let step = 1;
      for (let a = 0; a < p; a++) {
        if (active[a] === 0 || free[a] || trial[a]! > 0) continue;
        const gap = x[a]! - trial[a]!;
        step = Math.min(step, gap > 0 ? x[a]! / gap : 0);
      }
      if (step >= 1) { x.set(trial); return; }
      for (let a = 0; a < p; a++) {
        x[a] = x[a]! + step * (trial[a]! - x[a]!);
        if (active[a] === 1 && !free[a] && trial[a]! <= 0 && x[a]! <= 1e-14) { active[a] = 0; x[a] = 0; }
      }
    }
  };

  const coefficients = (y: Float64Array, x: Float64Array = new Float64Array(p)): Float64Array => {
    products(columns, y, rhs);
    let scale = 0;
    for (let a = 0; a < p; a++) scale = Math.max(scale, Math.abs(rhs[a]!));
    if (exchange(ROUNDING * scale)) { x.set(trial); return x; }
    for (let a = 0; a < p; a++) active[a] = free[a] === true ? 1 : 0;
    x.fill(0);
    if (active.includes(1) && solveActive()) x.set(trial);
    for (let round = 0; round < 10 * p; round++) {
      const enter = steepest(x, ROUNDING * scale);
      if (enter < 0) break;
      active[enter] = 1;
      settle(x, enter);
    }
    return x;
  };

  const inverseOf = (): Float64Array => {
    const inverse = new Float64Array(p * p);
    if (!solveActive()) return inverse;
    for (let c = 0; c < size; c++) {
      packed.fill(0);
      packed[c] = 1;
      choleskySolve(factor, size, packed);
      for (let r = 0; r < size; r++) inverse[index[r]! * p + index[c]!] = packed[r]!;
    }
    return inverse;
  };

  return {
    coefficients,
    fit(y) {
      const x = coefficients(y);
      let rss = 0;
      for (let i = 0; i < y.length; i++) {
        let r = y[i]!;
        for (let a = 0; a < p; a++) r -= x[a]! * columns[a]![i]!;
        rss += r * r;
      }
      return { coefficients: x, inverse: inverseOf(), active: Array.from(active, (value) => value === 1), rss };
    },
  };
}

/** One fit, see nonNegativeSolver. y: n values. */
export function nonNegativeLeastSquares(columns: readonly Float64Array[], y: Float64Array, free: readonly boolean[]): NonNegativeFit {
  return nonNegativeSolver(columns, free).fit(y);
}
