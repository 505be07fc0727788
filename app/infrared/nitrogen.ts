import type { Component } from './component-shapes.ts';
import { COMPONENT_SHAPES, COMPONENTS, PPM_PER_CM1 } from './component-shapes.ts';
import { nonNegativeLeastSquares } from './non-negative-least-squares.ts';
import { SCALE_ERROR } from './two-phonon.ts';

export type NitrogenAmounts = { readonly A: number; readonly B: number; readonly C: number; readonly Nplus: number };
export type NitrogenFit = {
  /** Absorption coefficient of each component at its own maximum, cm-1 base e. */
  readonly alpha: Readonly<Record<Component, number>>;
  readonly ppm: NitrogenAmounts;
  /** One standard deviation: fit, conversion factor and scale. */
  readonly uncertainty: NitrogenAmounts;
  /** Covariance of A, B, C and N+, ppm², row-major 4×4; its diagonal is the square of the uncertainty. */
  readonly covariance: readonly number[];
  /** Total nitrogen that would have been seen with three standard deviations, ppm. */
  readonly detectionLimitPpm: number;
  /** Standard deviation of the residual, cm-1. */
  readonly residual: number;
  /** Straight background fitted beneath, cm-1, at 1200 cm-1 and per 100 cm-1. */
  readonly background: readonly [number, number];
};

/** One-phonon region with quiet ground on its long side for the background. */
const RANGE = { from: 1000, to: 1500 } as const;
/** Left out: platelet peak, N3VH at 1405, H1a at 1450. */
const MASKS: readonly (readonly [number, number])[] = [[1352, 1386], [1399, 1412], [1444, 1456]];
/** The sharp lines at 1332 and 1344 depend on resolution and count less. */
const SHARP: readonly [number, number] = [1325, 1350];
const SHARP_WEIGHT = 0.3;
/** Neighbouring points share their misfit over about this many points of 1 cm-1 (judgement). */
const CORRELATION_CM1 = 10;
/** Shapes are known to about this share (5 %); their misfit does not average out. */
const SHAPE_ERROR = 0.03;
/** Boron's one-phonon band, cm-1; width from memory. */
const BORON_BAND = { at: 1290, fwhm: 70 } as const;
/** Faceted stones at 4 cm-1 do not reach lower than this, ppm (judgement). */
const LEAST_LIMIT_PPM = 3;

/**
 * Nitrogen by non-negative least squares on the component shapes with a straight background.
 * x ascending cm-1; alpha the absorption coefficient (cm-1, base e). boronSeen lets in boron's band at 1290 cm-1. Null where 1000–1400 cm-1 is not covered.
 */
export function fitNitrogen(x: Float64Array, alpha: Float64Array, boronSeen = false): NitrogenFit | null {
  if (x[0]! > 1010 || x[x.length - 1]! < 1420) return null;
  const picked: number[] = [];
  for (let i = 0; i < x.length; i++) {
    if (x[i]! >= RANGE.from && x[i]! <= RANGE.to && !MASKS.some(([a, b]) => x[i]! > a && x[i]! < b)) picked.push(i);
  }
  const m = picked.length;
  if (m < 40) return null;
  const y = new Float64Array(m);
  const columns = COMPONENTS.map(() => new Float64Array(m));
  // Boron's own one-phonon band would otherwise pass for A aggregates.
  const boron = new Float64Array(m);
  const constant = new Float64Array(m);
  const slope = new Float64Array(m);
  picked.forEach((i, k) => {
    const weight = x[i]! >= SHARP[0] && x[i]! <= SHARP[1] ? SHARP_WEIGHT : 1;
    COMPONENTS.forEach((component, c) => { columns[c]![k] = weight * COMPONENT_SHAPES[component](x[i]!); });
    boron[k] = weight * Math.exp(-4 * Math.LN2 * ((x[i]! - BORON_BAND.at) / BORON_BAND.fwhm) ** 2);
    constant[k] = weight;
    slope[k] = (weight * (x[i]! - 1200)) / 100;
    y[k] = weight * alpha[i]!;
  });
  const all = boronSeen ? [...columns, constant, slope, boron] : [...columns, constant, slope];
  const free = all.map((_, c) => c === COMPONENTS.length || c === COMPONENTS.length + 1);
  const fit = nonNegativeLeastSquares(all, y, free);
  const step = (x[picked[m - 1]!]! - x[picked[0]!]!) / m;
  const inflation = Math.max(1, CORRELATION_CM1 / step);
  const variance = fit.rss / Math.max(1, m - all.length);
  // Errors of components held at zero: as if each were let in alone beside the others, with the background.
  const full = nonNegativeLeastSquares(all, y, all.map(() => true));
  const p = all.length;
  const sum = COMPONENTS.reduce((total, _, c) => total + fit.coefficients[c]!, 0);
  const errorOf = (c: number): number => Math.sqrt(variance * inflation * full.inverse[c * p + c]! + (SHAPE_ERROR * (sum - fit.coefficients[c]!)) ** 2);
  const amount = (component: 'A' | 'B' | 'C' | 'X'): { ppm: number; error: number; fitError: number } => {
    const c = COMPONENTS.indexOf(component);
    const { factor, error } = PPM_PER_CM1[component];
    const a = fit.coefficients[c]!;
    const fitError = errorOf(c) * factor;
    return { ppm: a * factor, fitError, error: Math.hypot(fitError, a * error, a * factor * SCALE_ERROR) };
  };
  const [A, B, C, X] = [amount('A'), amount('B'), amount('C'), amount('X')];
  const four = [A, B, C, X];
  const place = [0, 1, 2, 3].map((c) => ({ c, factor: PPM_PER_CM1[COMPONENTS[c] as 'A' | 'B' | 'C' | 'X'].factor }));
  // Beside the fit, amounts share the scale's error: all of them go up with it together.
  const covariance = place.flatMap((r, i) => place.map((q, j) => (i === j ? four[i]!.error ** 2
    : variance * inflation * full.inverse[r.c * p + q.c]! * r.factor * q.factor + SCALE_ERROR ** 2 * four[i]!.ppm * four[j]!.ppm)));
  // Where nothing is there, the limit is what the commonest components would need to show.
  const limit = 3 * Math.sqrt(variance * inflation) * Math.min(PPM_PER_CM1.A.factor * Math.sqrt(full.inverse[0]!), PPM_PER_CM1.C.factor * Math.sqrt(full.inverse[2 * p + 2]!));
  const value = (c: number): number => fit.coefficients[c]!;
  return {
    alpha: { A: value(0), B: value(1), C: value(2), X: value(3), D: value(4) },
    ppm: { A: A.ppm, B: B.ppm, C: C.ppm, Nplus: X.ppm },
    uncertainty: { A: A.error, B: B.error, C: C.error, Nplus: X.error },
    covariance,
    detectionLimitPpm: Math.max(LEAST_LIMIT_PPM, limit),
    residual: Math.sqrt(variance),
    background: [value(5), value(6)],
  };
}
