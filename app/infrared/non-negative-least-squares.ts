import { cholesky, choleskySolve } from '../spectra/cholesky.ts';

export type NonNegativeFit = {
  readonly coefficients: Float64Array;
  /** Inverse of the normal matrix of the active columns, row-major p×p, zero for columns held at zero. */
  readonly inverse: Float64Array;
  readonly active: readonly boolean[];
  readonly rss: number;
};

/** Solves the normal equations restricted to the active columns; null where they are not independent. */
function solveActive(gram: Float64Array, rhs: Float64Array, p: number, active: readonly boolean[]): { x: Float64Array; l: Float64Array; index: number[] } | null {
  const index: number[] = [];
  for (let j = 0; j < p; j++) if (active[j]) index.push(j);
  const m = index.length;
  const l = new Float64Array(m * m);
  const b = new Float64Array(m);
  for (let r = 0; r < m; r++) {
    b[r] = rhs[index[r]!]!;
    for (let c = 0; c < m; c++) l[r * m + c] = gram[index[r]! * p + index[c]!]!;
  }
  if (!cholesky(l, m)) return null;
  choleskySolve(l, m, b);
  const x = new Float64Array(p);
  for (let r = 0; r < m; r++) x[index[r]!] = b[r]!;
  return { x, l, index };
}

/**
 * Least squares with some coefficients held at or above zero: Lawson & Hanson's active set (Solving Least Squares Problems, 1974; from memory) on the normal equations.
 * columns: p arrays of one length n; y: n values; free[j] lets coefficient j take either sign.
 */
export function nonNegativeLeastSquares(columns: readonly Float64Array[], y: Float64Array, free: readonly boolean[]): NonNegativeFit {
  const p = columns.length;
  const n = y.length;
  const gram = new Float64Array(p * p);
  const rhs = new Float64Array(p);
  for (let a = 0; a < p; a++) {
    const ca = columns[a]!;
    for (let b = 0; b <= a; b++) {
      const cb = columns[b]!;
      let s = 0;
      for (let i = 0; i < n; i++) s += ca[i]! * cb[i]!;
      gram[a * p + b] = s;
      gram[b * p + a] = s;
    }
    let s = 0;
    for (let i = 0; i < n; i++) s += ca[i]! * y[i]!;
    rhs[a] = s;
  }
  const active = free.slice();
  let x: Float64Array = new Float64Array(p);
  let solved = solveActive(gram, rhs, p, active);
  if (solved) x = solved.x;
  let scale = 0;
  for (let a = 0; a < p; a++) scale = Math.max(scale, Math.abs(rhs[a]!));
  for (let round = 0; round < 10 * p; round++) {
    let enter = -1;
    let steepest = 1e-12 * scale;
    for (let a = 0; a < p; a++) {
      if (active[a]) continue;
      let w = rhs[a]!;
      for (let b = 0; b < p; b++) w -= gram[a * p + b]! * x[b]!;
      if (w > steepest) { steepest = w; enter = a; }
    }
    if (enter < 0) break;
    active[enter] = true;
    for (;;) {
      const trial = solveActive(gram, rhs, p, active);
      if (trial === null) { active[enter] = false; break; }
      let step = 1;
      for (let a = 0; a < p; a++) {
        if (!active[a] || free[a] || trial.x[a]! > 0) continue;
        const gap = x[a]! - trial.x[a]!;
        step = Math.min(step, gap > 0 ? x[a]! / gap : 0);
      }
      if (step >= 1) { x = trial.x; solved = trial; break; }
      for (let a = 0; a < p; a++) {
        x[a] = x[a]! + step * (trial.x[a]! - x[a]!);
        if (active[a] && !free[a] && trial.x[a]! <= 0 && x[a]! <= 1e-14) { active[a] = false; x[a] = 0; }
      }
      if (!active[enter] ) break;
    }
  }
  const final = solveActive(gram, rhs, p, active) ?? solved;
  const inverse = new Float64Array(p * p);
  if (final) {
    const m = final.index.length;
    const unit = new Float64Array(m);
    for (let c = 0; c < m; c++) {
      unit.fill(0);
      unit[c] = 1;
      choleskySolve(final.l, m, unit);
      for (let r = 0; r < m; r++) inverse[final.index[r]! * p + final.index[c]!] = unit[r]!;
    }
    x = final.x;
  }
  let rss = 0;
  for (let i = 0; i < n; i++) {
    let r = y[i]!;
    for (let a = 0; a < p; a++) r -= x[a]! * columns[a]![i]!;
    rss += r * r;
  }
  return { coefficients: x, inverse, active, rss };
}
