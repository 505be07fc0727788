import { z } from 'zod';
import { decayFit } from './decay-fit.ts';
import { lightColour } from './light-colour.ts';

/** Version of the measurement; stored with its results. */
export const DECAY_VERSION = 'after-glow frames 1';

export const decayStone = z.object({
  markId: z.string(), number: z.number(), stoneId: z.string().nullable(),
  /** Brightness in linear light, stray light taken off, as if every frame were exposed like the first; dark and clipped points are not fitted. */
  points: z.array(z.object({ seconds: z.number(), brightness: z.number(), state: z.enum(['measured', 'dark', 'clipped']) })),
  fit: decayFit.nullable(),
  /** Seconds of the last frame in which it still glowed; null where it glowed in none. */
  seenUntil: z.number().nullable(),
  /** Of the first frame in which it is neither dark nor clipped. */
  colour: lightColour.nullable(),
});
export type DecayStone = z.infer<typeof decayStone>;

export const decayResult = z.object({
  version: z.string(),
  exposures: z.enum(['exif', 'assumed-equal']),
  stones: z.array(decayStone),
  notes: z.array(z.string()),
});
export type DecayResult = z.infer<typeof decayResult>;
