import { nonNegativeLeastSquares } from './non-negative-least-squares.ts';
import { median } from '../spectra/statistics.ts';
import { ALPHA_1992, latticeAbsorption } from './two-phonon.ts';

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
  /** What the tabulated lattice absorption is multiplied by to stand on the scale of `alpha`. */
  readonly latticeScale: number;
};

/** Above this absorbance most spectra are limited by stray light (judgement). */
const MOST_ABSORBANCE = 2.3;
/** Where the lattice is compared: without carbon dioxide at 2280–2390; the weaker shoulder where the rest is saturated. */
const WINDOWS: readonly (readonly [number, number])[] = [[1860, 2280], [2390, 2760]];
const SHOULDER: readonly (readonly [number, number])[] = [[2420, 2760]];
/** Foreign bands only add: points this many robust deviations above the fit count ever less. */
const CUT_SIGMAS = 1.5;
const ROUNDS = 12;

type LatticeFit = { readonly perAlpha: number; readonly level: number; readonly tilt: number; readonly agreement: number; readonly misfit: number };

/** Lattice on a straight background, by least squares that lets go of what stands above it. */
function fitLattice(x: Float64Array, y: Float64Array): LatticeFit {
  const m = x.length;
  const lattice = x.map(latticeAbsorption);
  const slope = x.map((value) => (value - 2200) / 1000);
  const root = new Float64Array(m).fill(1);
  const residual = new Float64Array(m);
  let coefficients: Float64Array = new Float64Array(3);
  for (let round = 0; round < ROUNDS; round++) {
    const weigh = (values: Float64Array): Float64Array => values.map((value, i) => value * root[i]!);
    coefficients = nonNegativeLeastSquares([weigh(lattice), root.slice(), weigh(slope)], weigh(y), [false, true, true]).coefficients;
    for (let i = 0; i < m; i++) residual[i] = y[i]! - coefficients[0]! * lattice[i]! - coefficients[1]! - coefficients[2]! * slope[i]!;
    const spread = Math.max(1e-12, 1.4826 * median(residual.map(Math.abs)));
    for (let i = 0; i < m; i++) {
      const over = residual[i]! / (CUT_SIGMAS * spread);
      root[i] = over > 1 ? 1 / over : 1;
    }
  }
  let weight = 0;
  let mean = 0;
  for (let i = 0; i < m; i++) { weight += root[i]! ** 2; mean += root[i]! ** 2 * lattice[i]!; }
  mean /= weight;
  let explained = 0;
  let left = 0;
  for (let i = 0; i < m; i++) {
    explained += root[i]! ** 2 * (coefficients[0]! * (lattice[i]! - mean)) ** 2;
    left += root[i]! ** 2 * residual[i]! ** 2;
  }
  const perAlpha = coefficients[0]!;
  return { perAlpha, level: coefficients[1]!, tilt: coefficients[2]!, agreement: explained / (explained + left), misfit: Math.sqrt(left / weight) / perAlpha };
}

/**
 * Puts an absorbance curve on the scale of the absorption coefficient by the lattice's own absorption.
 * x ascending cm-1; y absorbance (base 10) or, with isCoefficient, cm-1 base e. Null where the two-phonon region is not covered.
 * coefficient: what the lattice absorbs at the minimum near 1992 cm-1, cm-1 base e, on which published values differ.
 */
export function normalise(x: Float64Array, y: Float64Array, isCoefficient: boolean, coefficient: number = ALPHA_1992): Normalisation | null {
  const n = x.length;
  if (x[0]! > 1900 || x[n - 1]! < 2700) return null;
  let highest = -Infinity;
  for (let i = 0; i < n; i++) if (x[i]! > 1940 && x[i]! < 2230) highest = Math.max(highest, y[i]!);
  const saturated = !isCoefficient && highest > MOST_ABSORBANCE;
  const windows = saturated ? SHOULDER : WINDOWS;
  const picked: number[] = [];
  for (let i = 0; i < n; i++) if (windows.some(([a, b]) => x[i]! >= a && x[i]! <= b)) picked.push(i);
  if (picked.length < 30) return null;
  const fit = fitLattice(Float64Array.from(picked, (i) => x[i]!), Float64Array.from(picked, (i) => y[i]!));
  const latticeScale = isCoefficient ? fit.perAlpha : coefficient / ALPHA_1992;
  if (!(fit.perAlpha > 0)) return { pathCm: null, alpha: new Float64Array(n), agreement: 0, misfit: Infinity, saturated, latticeScale };
  const perAlpha = fit.perAlpha / latticeScale;
  const toAlpha = 1 / perAlpha;
  const alpha = new Float64Array(n);
  for (let i = 0; i < n; i++) alpha[i] = (y[i]! - fit.level - (fit.tilt * (x[i]! - 2200)) / 1000) * toAlpha;
  return { pathCm: isCoefficient ? null : perAlpha * Math.LN10, alpha, agreement: fit.agreement, misfit: fit.misfit * latticeScale, saturated, latticeScale };
}
