import type { Fit, FitOptions, Model } from './levenberg-marquardt.ts';
import { levenbergMarquardt } from './levenberg-marquardt.ts';

export const PEAK_SHAPES = ['gaussian', 'lorentzian', 'pseudo-voigt'] as const;
export type PeakShape = (typeof PEAK_SHAPES)[number];

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

const LN16 = 4 * Math.LN2;
/** Enough for a position far below the noise; the generic defaults chase the last digits. */
const PEAK_FIT_OPTIONS: FitOptions = { maxIterations: 60, tolerance: 1e-6, gainTolerance: 1e-6 };

/** Parameters of a peak: height, position, FWHM and, for pseudo-Voigt only, the Lorentzian share. */
const perPeak = (shape: PeakShape): number => (shape === 'pseudo-voigt' ? 4 : 3);

/** Sum of `count` peaks of one shape on a straight baseline a + b (x - middle). */
export function peakModel(shape: PeakShape, count: number, middle: number): Model {
  const stride = perPeak(shape);
  const last = count * stride;
  return (x, p, g) => {
    let sum = p[last]! + p[last + 1]! * (x - middle);
    g[last] = 1;
    g[last + 1] = x - middle;
    for (let k = 0; k < last; k += stride) {
      const h = p[k]!;
      const w = p[k + 2]!;
      const d = x - p[k + 1]!;
      const u = d / w;
      const eta = shape === 'gaussian' ? 0 : shape === 'lorentzian' ? 1 : p[k + 3]!;
      const gauss = eta === 1 && stride === 3 ? 0 : Math.exp(-LN16 * u * u);
      const lorentz = eta === 0 && stride === 3 ? 0 : 1 / (1 + 4 * u * u);
      const value = (1 - eta) * gauss + eta * lorentz;
      // d/du of the shape
      const slope = (1 - eta) * gauss * -2 * LN16 * u - eta * lorentz * lorentz * 8 * u;
      sum += h * value;
      g[k] = value;
      g[k + 1] = (-h * slope) / w;
      g[k + 2] = (-h * slope * u) / w;
      if (stride === 4) g[k + 3] = h * (lorentz - gauss);
    }
    return sum;
  };
}

/** Keeps widths positive and below the window, shares within 0..1. */
function confineTo(shape: PeakShape, count: number, from: number, to: number): (p: Float64Array) => void {
  const stride = perPeak(shape);
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
  const stride = perPeak(shape);
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
  const fit: Fit = levenbergMarquardt(x, y, peakModel(shape, count, middle), start, { ...PEAK_FIT_OPTIONS, confine: confineTo(shape, count, from, to) });
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
