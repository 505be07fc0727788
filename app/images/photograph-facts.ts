import { z } from 'zod';
import { exifFacts } from './exif.ts';

/** What a photograph's file says before its points are read. */
export const photographFacts = z.object({
  format: z.enum(['jpeg', 'png', 'tiff']),
  /** Upright: the orientation that the camera noted is honoured. */
  width: z.number().int().positive(), height: z.number().int().positive(),
  bits: z.union([z.literal(8), z.literal(16)]),
  colours: z.enum(['rgb', 'grey', 'cmyk']),
  exif: exifFacts,
});
export type PhotographFacts = z.infer<typeof photographFacts>;
