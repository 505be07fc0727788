import { z } from 'zod';
import { alignment } from './align-pair.ts';
import { lightColour } from './light-colour.ts';

/** Version of the comparison; stored with its results. Raise it with every change of a number it gives. */
export const PAIR_VERSION = 'photograph pair 1';

/** A stone under one lamp. Brightness is the mean of R, G and B in linear light, background taken off, 1 = full scale of that photograph. */
const underLamp = z.object({
  brightness: z.number(),
  /** One standard error: noise and background. */
  error: z.number(),
  /** Share of points at the end of the scale. */
  clipped: z.number(),
  state: z.enum(['measured', 'dark', 'clipped']),
  /** Null where it is too dark for a colour. */
  colour: lightColour.nullable(),
});

export const pairStone = z.object({
  markId: z.string(), number: z.number(), stoneId: z.string().nullable(),
  /** Place on the upright long-wave photograph: x and radius as parts of its width, y of its height. */
  x: z.number(), y: z.number(), radius: z.number(),
  longWave: underLamp, shortWave: underLamp,
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
export type UnderLamp = z.infer<typeof underLamp>;
