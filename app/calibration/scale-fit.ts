import { z } from 'zod';
import { SCALE_UNITS } from './standard.ts';

export const fittedLine = z.object({
  /** As the instrument showed it, with the standard error of its fit. */
  measured: z.number(), standardError: z.number(),
  reference: z.number(),
  /** reference − measured, before, and what of it the fitted scale leaves. */
  deviation: z.number(), residual: z.number(),
  /** False where the line was assigned but left out of the fit. */
  used: z.boolean(),
});
export type FittedLine = z.infer<typeof fittedLine>;

/**
 * A correction of a scale: true position = measured + Σ c_k u^k, with u = (measured − middle)/half. Outside `range` it goes on along
 * the tangent, because a polynomial is worth nothing there.
 */
export const scaleFit = z.object({
  standard: z.string(),
  unit: z.enum(SCALE_UNITS),
  degree: z.number().int().min(1).max(3),
  middle: z.number(), half: z.number().positive(),
  coefficients: z.array(z.number()).min(2).max(4),
  /** Of the coefficients, row by row. */
  covariance: z.array(z.number()),
  /** First and last line that was used, as measured. */
  range: z.tuple([z.number(), z.number()]),
  lines: z.array(fittedLine),
  /** Root mean square of what the fit leaves, and of what it would leave for each line had that line not been used. */
  residualRms: z.number(), leaveOneOutRms: z.number(),
  /** Scatter beyond what the lines' own errors explain, as a standard deviation. */
  misfit: z.number(),
  /** Root mean square and largest of the deviations as found, before correction. */
  deviationRms: z.number(), largestDeviation: z.number(),
  /** Typical full width at half maximum of the lines. */
  fwhm: z.number(),
});
export type ScaleFit = z.infer<typeof scaleFit>;

/** The correction alone, without the lines it was fitted to. */
export const scaleMap = scaleFit.omit({ lines: true });
export type ScaleMap = z.infer<typeof scaleMap>;

type Shape = Pick<ScaleMap, 'degree' | 'middle' | 'half' | 'range'>;

/** What each coefficient is multiplied with at a position: powers of u inside the range, their tangent outside. */
export function scaleTerms({ degree, middle, half, range }: Shape, position: number): number[] {
  const inside = Math.max(range[0], Math.min(range[1], position));
  const u = (inside - middle) / half;
  const beyond = (position - inside) / half;
  return Array.from({ length: degree + 1 }, (_, k) => u ** k + (k === 0 ? 0 : k * u ** (k - 1) * beyond));
}

/** What is to be added to a measured position. */
export const correctionAt = (fit: ScaleMap, position: number): number => scaleTerms(fit, position).reduce((sum, term, k) => sum + term * fit.coefficients[k]!, 0);

/**
 * Standard uncertainty of a corrected position, from the covariance of the coefficients and the scatter that the polynomial does not
 * explain. It holds for the scale alone: a line's own fitting error comes on top.
 */
export function scaleUncertaintyAt(fit: ScaleMap, position: number): number {
  const terms = scaleTerms(fit, position);
  const p = terms.length;
  let variance = fit.misfit ** 2;
  for (let a = 0; a < p; a++) for (let b = 0; b < p; b++) variance += terms[a]! * terms[b]! * fit.covariance[a * p + b]!;
  return Math.sqrt(Math.max(0, variance));
}

const STEPS = 50;
/** The largest standard uncertainty of a corrected position within the range of the lines. */
export function largestUncertainty(fit: ScaleMap): number {
  const [from, to] = fit.range;
  return Math.max(...Array.from({ length: STEPS + 1 }, (_, i) => scaleUncertaintyAt(fit, from + ((to - from) * i) / STEPS)));
}
