/** Value of the model at x; writes its derivatives by each parameter into `gradient`. */
export type Model = (x: number, parameters: Float64Array, gradient: Float64Array) => number;

export type FitOptions = {
  readonly maxIterations: number;
  /** Relative change of all parameters at which the fit has arrived. */
  readonly tolerance: number;
  /** Relative gain in the sum of squares below which a step ends the fit; 0 never does. A parameter near zero has no useful relative change. */
  readonly gainTolerance: number;
  /** Brings parameters back into their allowed range after a step; in place. */
  readonly confine?: (parameters: Float64Array) => void;
};
export const FIT_DEFAULTS: FitOptions = { maxIterations: 400, tolerance: 1e-11, gainTolerance: 0 };

export type Fit = {
  readonly parameters: Float64Array;
  /** Standard errors: square roots of the diagonal of RSS/(n-p)·(JᵀJ)⁻¹; NaN where the data do not determine a parameter. */
  readonly errors: Float64Array;
  readonly rss: number;
  readonly converged: boolean;
  readonly iterations: number;
};

/** In-place Cholesky of the p×p row-major matrix; false where it is not positive definite. */
export function cholesky(a: Float64Array, p: number): boolean {
  for (let j = 0; j < p; j++) {
    let d = a[j * p + j]!;
    const original = d;
    for (let k = 0; k < j; k++) d -= a[j * p + k]! ** 2;
    if (!(d > original * 1e-15)) return false;
    const root = Math.sqrt(d);
    a[j * p + j] = root;
    for (let i = j + 1; i < p; i++) {
      let s = a[i * p + j]!;
      for (let k = 0; k < j; k++) s -= a[i * p + k]! * a[j * p + k]!;
      a[i * p + j] = s / root;
    }
  }
  return true;
}

/** Solves L Lᵀ x = b in place, L from `cholesky`. */
export function choleskySolve(l: Float64Array, p: number, b: Float64Array): void {
  for (let i = 0; i < p; i++) {
    let s = b[i]!;
    for (let k = 0; k < i; k++) s -= l[i * p + k]! * b[k]!;
    b[i] = s / l[i * p + i]!;
  }
  for (let i = p - 1; i >= 0; i--) {
    let s = b[i]!;
    for (let k = i + 1; k < p; k++) s -= l[k * p + i]! * b[k]!;
    b[i] = s / l[i * p + i]!;
  }
}

function residualSum(x: Float64Array, y: Float64Array, model: Model, p: Float64Array, gradient: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < x.length; i++) {
    const r = y[i]! - model(x[i]!, p, gradient);
    sum += r * r;
  }
  return sum;
}

/** JᵀJ (full, row-major) and Jᵀr at the parameters. */
function normalEquations(x: Float64Array, y: Float64Array, model: Model, p: Float64Array, gradient: Float64Array, jtj: Float64Array, jtr: Float64Array): void {
  const m = p.length;
  jtj.fill(0);
  jtr.fill(0);
  for (let i = 0; i < x.length; i++) {
    const r = y[i]! - model(x[i]!, p, gradient);
    for (let a = 0; a < m; a++) {
      const ga = gradient[a]!;
      jtr[a] = jtr[a]! + ga * r;
      const row = a * m;
      for (let b = 0; b <= a; b++) jtj[row + b] = jtj[row + b]! + ga * gradient[b]!;
    }
  }
  for (let a = 0; a < m; a++) for (let b = 0; b < a; b++) jtj[b * m + a] = jtj[a * m + b]!;
}

function standardErrors(jtj: Float64Array, m: number, rss: number, freedom: number): Float64Array {
  const errors = new Float64Array(m).fill(Number.NaN);
  if (freedom <= 0) return errors;
  // Scaled to a unit diagonal first: parameters of very different size would lose digits otherwise.
  const scale = new Float64Array(m);
  for (let a = 0; a < m; a++) scale[a] = Math.sqrt(jtj[a * m + a]!) || 1;
  const l = new Float64Array(m * m);
  for (let a = 0; a < m; a++) for (let b = 0; b < m; b++) l[a * m + b] = jtj[a * m + b]! / (scale[a]! * scale[b]!);
  if (!cholesky(l, m)) return errors;
  const column = new Float64Array(m);
  for (let a = 0; a < m; a++) {
    column.fill(0);
    column[a] = 1;
    choleskySolve(l, m, column);
    errors[a] = Math.sqrt((column[a]! * rss) / freedom) / scale[a]!;
  }
  return errors;
}

/**
 * Least-squares fit of a model with an analytic Jacobian by Levenberg–Marquardt with Nielsen's damping rule
 * (K. Madsen, H. B. Nielsen, O. Tingleff, Methods for non-linear least squares problems, 2004; from memory).
 * x and y have one length; start is not changed.
 */
export function levenbergMarquardt(x: Float64Array, y: Float64Array, model: Model, start: ArrayLike<number>, options: FitOptions = FIT_DEFAULTS): Fit {
  const p = Float64Array.from(start);
  const m = p.length;
  const gradient = new Float64Array(m);
  const jtj = new Float64Array(m * m);
  const jtr = new Float64Array(m);
  const trial = new Float64Array(m);
  const step = new Float64Array(m);
  const system = new Float64Array(m * m);
  // Largest curvature seen of each parameter: where a line is out of sight its curvature vanishes, and steps must not run away.
  const curvature = new Float64Array(m);
  let rss = residualSum(x, y, model, p, gradient);
  let damping = 1e-3;
  let growth = 2;
  let converged = false;
  let iterations = 0;
  normalEquations(x, y, model, p, gradient, jtj, jtr);
  while (iterations < options.maxIterations && Number.isFinite(rss)) {
    iterations++;
    system.set(jtj);
    // The damping follows each parameter's own curvature, so units do not matter (J. J. Moré, 1978; from memory).
    for (let a = 0; a < m; a++) {
      curvature[a] = Math.max(curvature[a]!, jtj[a * m + a]!);
      system[a * m + a] = jtj[a * m + a]! + damping * curvature[a]! + 1e-300;
    }
    step.set(jtr);
    const solvable = cholesky(system, m);
    if (solvable) {
      choleskySolve(system, m, step);
      for (let a = 0; a < m; a++) trial[a] = p[a]! + step[a]!;
      options.confine?.(trial);
      let largest = 0;
      for (let a = 0; a < m; a++) largest = Math.max(largest, Math.abs(trial[a]! - p[a]!) / (Math.abs(p[a]!) + 1e-12));
      const next = residualSum(x, y, model, trial, gradient);
      if (next <= rss) {
        let predicted = 0;
        for (let a = 0; a < m; a++) predicted += step[a]! * (damping * curvature[a]! * step[a]! + jtr[a]!);
        const gain = predicted > 0 ? (rss - next) / predicted : 0;
        const gained = rss - next;
        p.set(trial);
        rss = next;
        normalEquations(x, y, model, p, gradient, jtj, jtr);
        damping = Math.max(1e-15, damping * Math.max(1 / 3, 1 - (2 * gain - 1) ** 3));
        growth = 2;
        if (largest < options.tolerance || (gained <= 1e-15 * rss && largest < 1e-7) || gained < options.gainTolerance * rss) { converged = true; break; }
        continue;
      }
      if (largest < options.tolerance) { converged = true; break; }
    }
    damping *= growth;
    growth *= 2;
    if (damping > 1e30) { converged = solvable; break; }
  }
  return { parameters: p, errors: standardErrors(jtj, m, rss, x.length - m), rss, converged, iterations };
}
