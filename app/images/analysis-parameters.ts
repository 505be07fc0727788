import { z } from 'zod';
import { digest, id } from '../contract/common.ts';

/** A photograph as an analysis used it. */
export const usedPhotograph = z.object({ photographId: id, sha256: digest });

/** A mark as an analysis used it: fractions of the upright photograph it was placed on. */
export const usedMark = z.object({ id: z.string(), stoneId: id.nullable(), number: z.number(), x: z.number(), y: z.number(), radius: z.number() });
export type UsedMark = z.infer<typeof usedMark>;

const marked = {
  /** The map and its version; null where the places were found by the program. */
  map: z.object({ mapId: id, version: z.number() }).nullable(),
  /** The photograph that the marks were placed on. */
  ground: usedPhotograph,
  marks: z.array(usedMark),
};

export const pairParameters = z.object({
  longWave: usedPhotograph, shortWave: usedPhotograph, ...marked,
  /** Difference of exposure as a person wrote it, stops; null: from the files. */
  statedStops: z.number().nullable(),
});
export type PairParameters = z.infer<typeof pairParameters>;

export const decayParameters = z.object({
  frames: z.array(usedPhotograph.extend({
    /** After the lamp went off. */
    seconds: z.number().min(0),
  })),
  ...marked,
});

export const polariserParameters = z.object({ photograph: usedPhotograph, ...marked });
