import { cholesky, choleskySolve } from '../spectra/cholesky.ts';
import { median } from '../spectra/statistics.ts';
import type { Pair } from './assign-lines.ts';
import { scaleTerms, type ScaleFit } from './scale-fit.ts';

/** Degrees tried, and how many lines beyond its coefficients a degree needs. */
export const FIT_SCALE_DEFAULTS = {
  degrees: [1, 2, 3], spare: 2,
  /** A higher degree must make the leave-one-out scatter smaller by this factor (judgement). */
  gain: 0.85,
  /** Lines farther off than this many robust standard deviations are left out, a quarter of all at most (judgement). */
  outlierSigmas: 4.5, outlierShare: 0.25,
  /** Share of the lines, the worst, that does not speak when degrees are compared: one wrong line must not hide a bend. */
  unheard: 0.125,
  /** No line is trusted better than this share of its width: shapes are never quite even (judgement). */
  floorShare: 0.005,
} as const;

type Weighted = { readonly measured: number; readonly deviation: number; readonly sigma: number };
type Solved = { readonly coefficients: number[]; readonly covariance: number[]; readonly residuals: number[]; readonly leaveOneOut: number[]; readonly chiSquare: number };
type Polynomial = Pick<ScaleFit, 'degree' | 'middle' | 'half' | 'range'>;

const rms = (values: readonly number[]): number => Math.sqrt(values.reduce((sum, v) => sum + v * v, 0) / Math.max(1, values.length));

/** Root mean square of all but the worst. */
function trimmed(values: readonly number[]): number {
  const ordered = values.map(Math.abs).sort((a, b) => a - b);
  return rms(ordered.slice(0, ordered.length - Math.ceil(FIT_SCALE_DEFAULTS.unheard * ordered.length)));
}

/** Weighted least squares with its hat values; null where the lines do not determine the polynomial. */
function solve(lines: readonly Weighted[], shape: Polynomial): Solved | null {
  const p = shape.degree + 1;
  const rows = lines.map((line) => scaleTerms(shape, line.measured));
  const normal = new Float64Array(p * p);
  const right = new Float64Array(p);
  lines.forEach(({ deviation, sigma }, i) => {
    const w = 1 / sigma ** 2;
    for (let a = 0; a < p; a++) {
      right[a] = right[a]! + w * rows[i]![a]! * deviation;
      for (let b = 0; b < p; b++) normal[a * p + b] = normal[a * p + b]! + w * rows[i]![a]! * rows[i]![b]!;
    }
  });
  if (!cholesky(normal, p)) return null;
  choleskySolve(normal, p, right);
  const covariance: number[] = new Array<number>(p * p).fill(0);
  for (let a = 0; a < p; a++) {
    const unit = new Float64Array(p);
    unit[a] = 1;
    choleskySolve(normal, p, unit);
    for (let b = 0; b < p; b++) covariance[a * p + b] = unit[b]!;
  }
  const residuals = lines.map(({ deviation }, i) => deviation - rows[i]!.reduce((sum, term, k) => sum + term * right[k]!, 0));
  const leaveOneOut = residuals.map((residual, i) => {
    let hat = 0;
    for (let a = 0; a < p; a++) for (let b = 0; b < p; b++) hat += rows[i]![a]! * covariance[a * p + b]! * rows[i]![b]!;
    return residual / Math.max(1e-6, 1 - hat / lines[i]!.sigma ** 2);
  });
  return { coefficients: [...right], covariance, residuals, leaveOneOut, chiSquare: residuals.reduce((sum, r, i) => sum + (r / lines[i]!.sigma) ** 2, 0) };
}

type Chosen = { readonly shape: Polynomial; readonly solved: Solved };

/** The degree that predicts lines it has not seen best; a higher one only where it is clearly better. */
function chooseDegree(lines: readonly Weighted[], middle: number, half: number): Chosen | null {
  const range: [number, number] = [lines[0]!.measured, lines.at(-1)!.measured];
  let best: Chosen | null = null;
  for (const degree of FIT_SCALE_DEFAULTS.degrees) {
    if (lines.length < degree + 1 + FIT_SCALE_DEFAULTS.spare) break;
    const shape = { degree, middle, half, range };
    const solved = solve(lines, shape);
    if (solved && (best === null || trimmed(solved.leaveOneOut) < FIT_SCALE_DEFAULTS.gain * trimmed(best.solved.leaveOneOut))) best = { shape, solved };
  }
  return best;
}

/** Lines that the others contradict, worst first, one at a time. */
function withoutOutliers(all: readonly Weighted[], middle: number, half: number): { kept: Weighted[]; chosen: Chosen } | null {
  let kept = [...all];
  const least = Math.ceil((1 - FIT_SCALE_DEFAULTS.outlierShare) * all.length);
  for (;;) {
    const chosen = chooseDegree(kept, middle, half);
    if (!chosen) return null;
    const common = 1.4826 * median(chosen.solved.leaveOneOut.map(Math.abs));
    const relative = chosen.solved.leaveOneOut.map((r, i) => Math.abs(r) / Math.hypot(kept[i]!.sigma, common));
    const worst = relative.indexOf(Math.max(...relative));
    if (kept.length <= least || kept.length <= 4 || relative[worst]! <= FIT_SCALE_DEFAULTS.outlierSigmas) return { kept, chosen };
    kept = kept.filter((_, i) => i !== worst);
  }
}

/**
 * Fits a correction of degree 1 to 3 to assigned lines, by least squares weighted with each line's own error; the degree is chosen by
 * leave-one-out scatter, lines that the others contradict are left out and listed. Null where the lines do not determine a scale.
 */
export function fitScale(pairs: readonly Pair[], standard: Pick<ScaleFit, 'standard' | 'unit'>, fwhm: number): ScaleFit | null {
  const weighted = pairs.map(({ measured, reference }): Weighted => ({
    measured: measured.position, deviation: reference.position - measured.position,
    sigma: Math.hypot(measured.standardError, reference.uncertainty, FIT_SCALE_DEFAULTS.floorShare * measured.fwhm),
  })).sort((a, b) => a.measured - b.measured);
  if (weighted.length < 3) return null;
  const [first, last] = [weighted[0]!.measured, weighted.at(-1)!.measured];
  const fitted = withoutOutliers(weighted, 0.5 * (first + last), 0.5 * (last - first));
  if (!fitted) return null;
  const { kept, chosen: { shape, solved } } = fitted;
  const freedom = kept.length - shape.degree - 1;
  const inflation = Math.max(1, solved.chiSquare / freedom);
  const own = kept.reduce((sum, line) => sum + line.sigma ** 2, 0) / kept.length;
  const scatter = solved.residuals.reduce((sum, r) => sum + r * r, 0) / freedom;
  const used = new Set(kept);
  const correction = (position: number): number => scaleTerms(shape, position).reduce((sum, term, k) => sum + term * solved.coefficients[k]!, 0);
  const ordered = [...pairs].sort((a, b) => a.measured.position - b.measured.position);
  return {
    ...standard, ...shape, fwhm,
    coefficients: solved.coefficients, covariance: solved.covariance.map((value) => value * inflation),
    lines: ordered.map(({ measured, reference }, i) => ({
      measured: measured.position, standardError: measured.standardError, reference: reference.position, deviation: weighted[i]!.deviation,
      residual: weighted[i]!.deviation - correction(measured.position), used: used.has(weighted[i]!),
    })),
    residualRms: rms(solved.residuals), leaveOneOutRms: rms(solved.leaveOneOut), misfit: Math.sqrt(Math.max(0, scatter - own)),
    deviationRms: rms(kept.map((line) => line.deviation)), largestDeviation: kept.reduce((most, { deviation }) => (Math.abs(deviation) > Math.abs(most) ? deviation : most), 0),
  };
}
