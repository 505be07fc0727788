import { z } from 'zod';
import { colourWord, COLOUR_WORDS } from '../colour/colour-word.ts';
import { dominantWavelength } from '../colour/dominant-wavelength.ts';
import { labFromXyz } from '../colour/lab.ts';
import { D65, swatchOf, xyzFromLinear } from '../colour/srgb.ts';
import { chromaticity } from '../colour/tristimulus.ts';

export const lightColour = z.object({
  x: z.number(), y: z.number(),
  lab: z.tuple([z.number(), z.number(), z.number()]),
  /** nm; null for purples and white. */
  dominantNm: z.number().nullable(),
  purity: z.number(),
  word: z.enum(COLOUR_WORDS),
  srgb: z.string(),
});
export type LightColour = z.infer<typeof lightColour>;

/**
 * Colour of linear sRGB light as the camera's white balance shows it: CIE 1931 x, y, CIELAB against D65 (1 = full scale), dominant
 * wavelength against D65. Channels below zero are taken as zero. Null without light.
 */
export function lightColourOf([r, g, b]: readonly [number, number, number]): LightColour | null {
  const xyz = xyzFromLinear([Math.max(0, r), Math.max(0, g), Math.max(0, b)]);
  const point = chromaticity(xyz);
  if (point === null) return null;
  const dominant = dominantWavelength(point, D65);
  return { ...point, lab: [...labFromXyz(xyz)], dominantNm: dominant.nm, purity: dominant.purity, word: colourWord(dominant), srgb: swatchOf(point).hex };
}
