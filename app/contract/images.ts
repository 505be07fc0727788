import { z } from 'zod';
import { photographFacts } from '../images/photograph-facts.ts';
import { id } from './common.ts';
import { reads } from './operation.ts';

const outline = z.object({ x: z.number(), y: z.number(), radius: z.number() });

/** Photographs as pictures to be read and measured. */
export const imagesContract = {
  /** What the file says of itself: size, depth, exposure. */
  'images.facts': reads('anyone', z.strictObject({ photographId: id }), photographFacts),
  /** A smaller, upright JPEG for looking at; also of kinds that a window can't draw. */
  'images.preview': reads('anyone', z.strictObject({ photographId: id, longSide: z.number().int().min(64).max(4096) }), z.object({ facts: photographFacts, jpeg: z.instanceof(Uint8Array) })),
  /** Where the stones seem to be, as fractions of the upright photograph: x and radius of its width, y of its height. */
  'images.suggestOutlines': reads('anyone', z.strictObject({ photographId: id }), z.array(outline)),
};
