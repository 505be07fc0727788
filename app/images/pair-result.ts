import { z } from 'zod';
import { alignment } from './align-pair.ts';
import { markLight } from './mark-light.ts';

/** Version of the comparison; stored with its results. Raise it with every change of a number it gives. */
export const PAIR_VERSION = 'photograph pair 1';

export const pairStone = z.object({
  markId: z.string(), number: z.number(), stoneId: z.string().nullable(),
  /** Place on the upright long-wave photograph: x and radius as parts of its width, y of its height. */
  x: z.number(), y: z.number(), radius: z.number(),
  longWave: markLight, shortWave: markLight,
  /** Natural logarithm of short-wave over long-wave, exposure compensated; null where both are dark or clipped. */
  logRatio: z.number().nullable(),
  logRatioError: z.number().nullable(),
  /** A clipped or dark lamp leaves only a bound. */
  bound: z.enum(['none', 'at-least', 'at-most']),
  /** In robust standard deviations from the median of the piece; null where there is nothing to compare with. */
  score: z.number().nullable(),
  standsOut: z.boolean(),
});
export type PairStone = z.infer<typeof pairStone>;

export const pairResult = z.object({
  version: z.string(),
  alignment,
  /** By how many stops the short-wave photograph was exposed more; compensated in the ratios. */
  stops: z.number(),
  /** exif: from both files; stated: written by a person; assumed-equal: neither says. */
  stopsFrom: z.enum(['exif', 'stated', 'assumed-equal']),
  medianLogRatio: z.number().nullable(), scatter: z.number().nullable(),
  stones: z.array(pairStone),
  /** Numbers of marks that lie at the edge or outside on one of the photographs. */
  outside: z.array(z.number()),
  notes: z.array(z.string()),
});
export type PairResult = z.infer<typeof pairResult>;
