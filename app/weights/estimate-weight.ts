import { z } from 'zod';
import { CUTS, FORMULAS, factorAt, GIRDLE_FACTOR, GIRDLES } from './cuts.ts';

const mm = (what: string) => z.number(`Write the ${what} in millimetres.`).min(0.3, `The ${what} is at least 0.3 mm.`).max(60, `The ${what} is at most 60 mm.`);

/** How the depth was found: where it can't be measured it is guessed from the spread, or from what a closed back lets see. */
export const DEPTH_WAYS = ['measured', 'estimated', 'closed-back'] as const;
export type DepthWay = (typeof DEPTH_WAYS)[number];
export const DEPTH_WORDS: Readonly<Record<DepthWay, string>> = { measured: 'measured', estimated: 'estimated', 'closed-back': 'guessed, closed back' };

/** What a mounted stone's estimate rests on. Millimetres; `width` equals the other diameter of a round stone. */
export const weightMeasures = z.strictObject({
  cut: z.enum(CUTS), length: mm('length'), width: mm('width'), depth: mm('depth'),
  depthWay: z.enum(DEPTH_WAYS), girdle: z.enum(GIRDLES),
  /** Further correction for bulge, facets or shape, per cent; common practice, no source. */
  shapePercent: z.number().min(-15, 'At most 15 % either way.').max(15, 'At most 15 % either way.'),
});
export type WeightMeasures = z.infer<typeof weightMeasures>;

/** Relative standard uncertainty of a depth that could not be measured: judgement. */
const DEPTH_UNCERTAINTY: Readonly<Record<DepthWay, number>> = { measured: 0, estimated: 0.1, 'closed-back': 0.15 };
/** Standard uncertainty of the girdle's word, relative: judgement. */
const GIRDLE_UNCERTAINTY = 0.01;

/** Steps of 0.0001 ct. `formula` is the part of the uncertainty that stones of one cut share, `reading` the part that is each stone's own; all standard (k = 1). */
export type WeightEstimate = { readonly weight: number; readonly uncertainty: number; readonly formula: number; readonly reading: number; readonly factor: number };

const CARAT_STEPS = 10_000;

/**
 * Estimates a stone's weight from its measures. `readingMm`: standard uncertainty of one reading in millimetres, a setting of the house.
 * An estimate, never a weighing: u² = (factor)² + (spread)² + (depth)² + (girdle)², first order.
 */
export function estimateWeight({ cut, length, width, depth, depthWay, girdle, shapePercent }: WeightMeasures, readingMm: number): WeightEstimate {
  const formula = FORMULAS[cut];
  const factor = factorAt(cut, Math.max(length, width) / Math.min(length, width));
  const mean = (length + width) / 2;
  const spread = formula.spread === 'mean' ? mean * mean : length * width;
  const weight = CARAT_STEPS * factor * spread * depth * GIRDLE_FACTOR[girdle] * (1 + shapePercent / 100);
  // The mean of two readings is known √2 better than one, and counts twice in its square; a product adds both relative errors.
  const spreadPart = formula.spread === 'mean' ? (Math.SQRT2 * readingMm) / mean : Math.hypot(readingMm / length, readingMm / width);
  const reading = weight * Math.hypot(spreadPart, readingMm / depth, DEPTH_UNCERTAINTY[depthWay], GIRDLE_UNCERTAINTY);
  const shared = weight * formula.uncertainty;
  return { weight: Math.round(weight), uncertainty: Math.round(Math.hypot(shared, reading)), formula: Math.round(shared), reading: Math.round(reading), factor };
}
