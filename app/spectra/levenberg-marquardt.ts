import { cholesky, choleskySolve } from './cholesky.ts';

/** Value of the model at x; writes its derivatives by each parameter into `gradient`. */
export type Model = (x: number, parameters: Float64Array, gradient: Float64Array) => number;

/**
 * Sum of squared residuals at the parameters. Overwrites the lower triangle of JᵀJ (row-major) and Jᵀr, r = data minus model,
 * J the model's derivatives by the parameters.
 */
export type Objective = (parameters: Float64Array, jtj: Float64Array, jtr: Float64Array) => number;

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

/** Scratch of a fit with m parameters; fits do not nest, so one of each size serves all. */
type Work = { jtj: Float64Array; jtr: Float64Array; nextJtj: Float64Array; nextJtr: Float64Array; readonly trial: Float64Array; readonly step: Float64Array; readonly system: Float64Array; readonly curvature: Float64Array };
const works: (Work | undefined)[] = [];
function workOf(m: number): Work {
  return (works[m] ??= {
    jtj: new Float64Array(m * m), jtr: new Float64Array(m), nextJtj: new Float64Array(m * m), nextJtr: new Float64Array(m),
    trial: new Float64Array(m), step: new Float64Array(m), system: new Float64Array(m * m), curvature: new Float64Array(m),
  });
}

function standardErrors(jtj: Float64Array, m: number, rss: number, freedom: number, work: Work): Float64Array {
  const errors = new Float64Array(m).fill(Number.NaN);
  if (freedom <= 0) return errors;
  // Scaled to a unit diagonal first: parameters of very different size would lose digits otherwise.
  const scale = work.curvature;
  for (let a = 0; a < m; a++) scale[a] = Math.sqrt(jtj[a * m + a]!) || 1;
  const l = work.system;
  for (let a = 0; a < m; a++) for (let b = 0; b <= a; b++) l[a * m + b] = jtj[a * m + b]! / (scale[a]! * scale[b]!);
  if (!cholesky(l, m)) return errors;
  const column = work.step;
  for (let a = 0; a < m; a++) {
    column.fill(0);
    column[a] = 1;
    choleskySolve(l, m, column);
    errors[a] = Math.sqrt((column[a]! * rss) / freedom) / scale[a]!;
  }
  return errors;
}

/** The step that the damped normal equations ask for, in work.step; false where they can't be solved. */
function dampedStep(work: Work, m: number, damping: number): boolean {
  const { jtj, system, curvature } = work;
  system.set(jtj);
  // The damping follows each parameter's own curvature, so units do not matter (J. J. Moré, 1978; from memory).
  for (let a = 0; a < m; a++) {
    // Largest curvature seen: where a line is out of sight its curvature vanishes, and steps must not run away.
    if (jtj[a * m + a]! > curvature[a]!) curvature[a] = jtj[a * m + a]!;
    system[a * m + a] = jtj[a * m + a]! + damping * curvature[a]! + 1e-300;
  }
  if (!cholesky(system, m)) return false;
  work.step.set(work.jtr);
  choleskySolve(system, m, work.step);
  return true;
}

/** Gain in the sum of squares that the linear model promises for the step. */
function predictedGain({ step, jtr, curvature }: Work, m: number, damping: number): number {
  let predicted = 0;
  for (let a = 0; a < m; a++) predicted += step[a]! * (damping * curvature[a]! * step[a]! + jtr[a]!);
  return predicted;
}

/**
 * Least squares by Levenberg–Marquardt with Nielsen's damping rule
 * (K. Madsen, H. B. Nielsen, O. Tingleff, Methods for non-linear least squares problems, 2004; from memory).
 * n: number of data behind the objective, for the standard errors. start is not changed.
 */
export function minimiseSquares(objective: Objective, start: ArrayLike<number>, n: number, options: FitOptions = FIT_DEFAULTS): Fit {
  const p = Float64Array.from(start);
  const m = p.length;
  const work = workOf(m);
  const { trial, step } = work;
  work.curvature.fill(0);
  let damping = 1e-3;
  let growth = 2;
  let converged = false;
  let iterations = 0;
  let rss = objective(p, work.jtj, work.jtr);
  while (iterations < options.maxIterations && Number.isFinite(rss)) {
    iterations++;
    const solvable = dampedStep(work, m, damping);
    if (solvable) {
      for (let a = 0; a < m; a++) trial[a] = p[a]! + step[a]!;
      options.confine?.(trial);
      let largest = 0;
      for (let a = 0; a < m; a++) largest = Math.max(largest, Math.abs(trial[a]! - p[a]!) / (Math.abs(p[a]!) + 1e-12));
      const next = objective(trial, work.nextJtj, work.nextJtr);
      if (next <= rss) {
        const predicted = predictedGain(work, m, damping);
        const gained = rss - next;
        const gain = predicted > 0 ? gained / predicted : 0;
        p.set(trial);
        rss = next;
        [work.jtj, work.nextJtj] = [work.nextJtj, work.jtj];
        [work.jtr, work.nextJtr] = [work.nextJtr, work.jtr];
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
  return { parameters: p, errors: standardErrors(work.jtj, m, rss, n - m, work), rss, converged, iterations };
}

/**
 * Fits a model given point by point, with an analytic Jacobian, to data. x and y have one length; start is not changed.
 */
export function levenbergMarquardt(x: Float64Array, y: Float64Array, model: Model, start: ArrayLike<number>, options: FitOptions = FIT_DEFAULTS): Fit {
  const m = start.length;
  const gradient = new Float64Array(m);
  const objective: Objective = (p, jtj, jtr) => {
    let rss = 0;
    jtj.fill(0);
    jtr.fill(0);
    for (let i = 0; i < x.length; i++) {
      const r = y[i]! - model(x[i]!, p, gradient);
      rss += r * r;
      for (let a = 0; a < m; a++) {
        const ga = gradient[a]!;
        jtr[a] = jtr[a]! + ga * r;
        const row = a * m;
        for (let b = 0; b <= a; b++) jtj[row + b] = jtj[row + b]! + ga * gradient[b]!;
      }
    }
    return rss;
  };
  return minimiseSquares(objective, start, x.length, options);
}
