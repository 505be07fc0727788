import type { FitOptions } from './levenberg-marquardt.ts';
import { minimiseSquares } from './levenberg-marquardt.ts';
import type { PeakShape } from './peak-objective.ts';
import { parametersPerPeak, peakObjective } from './peak-objective.ts';

export type PeakGuess = { readonly position: number; readonly height: number; readonly fwhm: number };
export type FittedPeak = {
  readonly position: number;
  readonly height: number;
  readonly fwhm: number;
  /** Lorentzian share, 0 to 1. */
  readonly eta: number;
  readonly positionError: number;
  readonly heightError: number;
  readonly fwhmError: number;
};
export type PeakFit = { readonly peaks: readonly FittedPeak[]; /** Value and slope of the straight baseline at the window's middle. */ readonly baseline: readonly [number, number]; readonly rss: number; readonly converged: boolean };

/** Enough for a position far below the noise; the generic defaults chase the last digits. */
const PEAK_FIT_OPTIONS: FitOptions = { maxIterations: 60, tolerance: 1e-6, gainTolerance: 1e-5 };

/** Keeps widths positive and below the window, shares within 0..1. */
function confineTo(shape: PeakShape, count: number, from: number, to: number): (p: Float64Array) => void {
  const stride = parametersPerPeak(shape);
  const widest = 4 * (to - from);
  return (p) => {
    for (let k = 0; k < count * stride; k += stride) {
      p[k + 1] = Math.min(to, Math.max(from, p[k + 1]!));
      p[k + 2] = Math.min(widest, Math.max(1e-4 * (to - from), Math.abs(p[k + 2]!)));
      if (stride === 4) p[k + 3] = Math.min(1, Math.max(0, p[k + 3]!));
    }
  };
}

/**
 * Fits one or more overlapping peaks and a straight baseline to a window of the curve.
 * x ascending and y have one length, at least 4 points more than parameters; positions and widths in x's unit, heights in y's.
 * Null where there are too few points or the fit ran off.
 */
export function fitPeaks(x: Float64Array, y: Float64Array, guesses: readonly PeakGuess[], shape: PeakShape): PeakFit | null {
  const n = x.length;
  const stride = parametersPerPeak(shape);
  const count = guesses.length;
  if (n < count * stride + 4) return null;
  const from = x[0]!;
  const to = x[n - 1]!;
  const middle = 0.5 * (from + to);
  const start = new Float64Array(count * stride + 2);
  guesses.forEach((guess, k) => {
    start[k * stride] = guess.height;
    start[k * stride + 1] = guess.position;
    start[k * stride + 2] = guess.fwhm;
    if (stride === 4) start[k * stride + 3] = 0.5;
  });
  start[count * stride] = Math.min(y[0]!, y[n - 1]!);
  const fit = minimiseSquares(peakObjective(x, y, n, shape, count, middle), start, n, { ...PEAK_FIT_OPTIONS, confine: confineTo(shape, count, from, to) });
  const p = fit.parameters;
  if (!Number.isFinite(fit.rss)) return null;
  const peaks: FittedPeak[] = [];
  for (let k = 0; k < count; k++) {
    const at = k * stride;
    peaks.push({
      height: p[at]!, position: p[at + 1]!, fwhm: p[at + 2]!,
      eta: shape === 'gaussian' ? 0 : shape === 'lorentzian' ? 1 : p[at + 3]!,
      heightError: fit.errors[at]!, positionError: fit.errors[at + 1]!, fwhmError: fit.errors[at + 2]!,
    });
  }
  return { peaks, baseline: [p[count * stride]!, p[count * stride + 1]!], rss: fit.rss, converged: fit.converged };
}
