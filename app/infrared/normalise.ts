import { nonNegativeLeastSquares } from './non-negative-least-squares.ts';
import { latticeAbsorption } from './two-phonon.ts';

export type Normalisation = {
  /** Path through the stone, cm; null where the ordinate already was an absorption coefficient. */
  readonly pathCm: number | null;
  /** Absorption coefficient, cm-1 base e, over the sloping background, same length as x. */
  readonly alpha: Float64Array;
  /** Share of the variance that the lattice explains in the two-phonon region, 0 to 1. */
  readonly agreement: number;
  /** Standard deviation of the misfit there, cm-1. */
  readonly misfit: number;
  readonly saturated: boolean;
};

/** Above this absorbance most spectra are limited by stray light (judgement). */
const MOST_ABSORBANCE = 2.3;
/** Where the lattice is compared: without carbon dioxide at 2280–2390; the weaker shoulder where the rest is saturated. */
const WINDOWS: readonly (readonly [number, number])[] = [[1620, 2280], [2390, 2760]];
const SHOULDER: readonly (readonly [number, number])[] = [[2420, 2760]];

/**
 * Puts an absorbance curve on the scale of the absorption coefficient by the lattice's own absorption.
 * x ascending cm-1; y absorbance (base 10) or, with isCoefficient, cm-1 base e. Null where the two-phonon region is not covered.
 */
export function normalise(x: Float64Array, y: Float64Array, isCoefficient: boolean): Normalisation | null {
  const n = x.length;
  if (x[0]! > 1900 || x[n - 1]! < 2700) return null;
  let highest = -Infinity;
  for (let i = 0; i < n; i++) if (x[i]! > 1940 && x[i]! < 2230) highest = Math.max(highest, y[i]!);
  const saturated = !isCoefficient && highest > MOST_ABSORBANCE;
  const windows = saturated ? SHOULDER : WINDOWS;
  const picked: number[] = [];
  for (let i = 0; i < n; i++) if (windows.some(([a, b]) => x[i]! >= a && x[i]! <= b)) picked.push(i);
  if (picked.length < 30) return null;
  const m = picked.length;
  const lattice = new Float64Array(m);
  const slope = new Float64Array(m);
  const values = new Float64Array(m);
  picked.forEach((i, k) => { lattice[k] = latticeAbsorption(x[i]!); slope[k] = (x[i]! - 2200) / 1000; values[k] = y[i]!; });
  const constant = new Float64Array(m).fill(1);
  const bend = slope.map((s) => s * s);
  const columns = saturated ? [lattice, constant, slope] : [lattice, constant, slope, bend];
  const fit = nonNegativeLeastSquares(columns, values, columns.map((_, k) => k > 0));
  const perAlpha = fit.coefficients[0]!;
  if (!(perAlpha > 0)) return { pathCm: null, alpha: new Float64Array(n), agreement: 0, misfit: Infinity, saturated };
  const toAlpha = isCoefficient ? 1 : 1 / perAlpha;
  const [, level, tilt] = fit.coefficients;
  const alpha = new Float64Array(n);
  for (let i = 0; i < n; i++) alpha[i] = (y[i]! - level! - (tilt! * (x[i]! - 2200)) / 1000) * toAlpha;
  let mean = 0;
  for (const value of lattice) mean += value / m;
  let spread = 0;
  for (const value of lattice) spread += (perAlpha * (value - mean)) ** 2;
  const misfit = Math.sqrt(fit.rss / (m - columns.length)) / perAlpha;
  return { pathCm: isCoefficient ? null : perAlpha * Math.LN10, alpha, agreement: spread / (spread + fit.rss), misfit, saturated };
}
