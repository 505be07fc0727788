import { z } from 'zod';
import { airFromRamanShift } from '../spectra/convert-axis.ts';
import { DIAMOND_RAMAN_CM1 } from '../reference/reference-lines.ts';
import { COLOUR_WORDS, colourWord } from './colour-word.ts';
import { dominantWavelength } from './dominant-wavelength.ts';
import { weighedSums } from './matching-functions.ts';
import { swatchOf } from './srgb.ts';
import { chromaticity, tristimulus } from './tristimulus.ts';

export const luminescenceColourResult = z.object({
  /** CIE 1931 chromaticity. */
  x: z.number(), y: z.number(),
  /** Against the equal-energy point, nm in air; null for purples and white. */
  dominantNm: z.number().nullable(),
  /** Excitation purity, 0 to 1. */
  purity: z.number(),
  word: z.enum(COLOUR_WORDS),
  /** #rrggbb, sRGB; paler than the light where the screen can't show it. */
  srgb: z.string(),
  inGamut: z.boolean(),
});
export type LuminescenceColourResult = z.infer<typeof luminescenceColourResult>;

/** How the colour is read (judgement). */
export const COLOUR_DEFAULTS = {
  /** Points nearer to the laser than this may be its own light, nm. */
  laserGuardNm: 4,
  /** Half of the window about the diamond line, which is scattered laser light and no luminescence, nm. */
  ramanHalfNm: 1.5,
  /** The curve must reach at least this far to the red, nm: what lies beyond hardly counts to the eye. */
  leastEndNm: 680,
  /** Where the eye begins: a curve without a laser must start at or below this, nm. */
  eyeFromNm: 410,
  /** Mean light over the dark level, weighed by the matching functions, in standard deviations of a point's noise: below, the dark level itself decides. */
  leastSignal: 10,
  /** Share of the points that count as dark, those with the least light. */
  darkShare: 0.1,
  /** Points looked at for that; more do not tell more. */
  darkPoints: 400,
} as const;

export type ColourInput = {
  /** nm in air, ascending. */
  readonly nm: Float64Array;
  /** Emission, counts or relative power, smoothed and with its spikes taken out. */
  readonly power: Float64Array;
  /** One standard deviation for each point, same unit. */
  readonly noise: Float64Array;
  readonly laserNm?: number;
  /** Resolution, nm, where known: the diamond line's window grows with it. */
  readonly resolutionNm?: number | null;
};

/** The level without light: the median of the darkest points. */
function darkLevel(power: Float64Array): number {
  const stride = Math.max(1, Math.floor(power.length / COLOUR_DEFAULTS.darkPoints));
  const sorted = power.filter((_, i) => i % stride === 0).sort();
  return sorted[Math.floor(0.5 * COLOUR_DEFAULTS.darkShare * (sorted.length - 1))]!;
}

/** Emission over the dark level, with scattered laser light and the diamond line bridged or cut away. */
function luminescence({ nm, power, laserNm, resolutionNm }: ColourInput): Float64Array {
  const dark = darkLevel(power);
  const out = power.map((value) => Math.max(0, value - dark));
  if (laserNm === undefined) return out;
  const raman = airFromRamanShift(laserNm, DIAMOND_RAMAN_CM1);
  const half = COLOUR_DEFAULTS.ramanHalfNm + 1.5 * (resolutionNm ?? 0);
  const first = nm.findIndex((v) => v >= raman - half);
  const after = nm.findIndex((v) => v > raman + half);
  if (first > 0 && after > first) {
    const [a, b] = [out[first - 1]!, out[after]!];
    for (let i = first; i < after; i++) out[i] = Math.min(out[i]!, a + ((b - a) * (nm[i]! - nm[first - 1]!)) / (nm[after]! - nm[first - 1]!));
  }
  for (let i = 0; i < nm.length && nm[i]! < laserNm + COLOUR_DEFAULTS.laserGuardNm; i++) out[i] = 0;
  return out;
}

function covers(nm: Float64Array, laserNm: number | undefined): boolean {
  const from = Math.max(COLOUR_DEFAULTS.eyeFromNm, laserNm === undefined ? 0 : laserNm + 4 * COLOUR_DEFAULTS.laserGuardNm);
  return nm.length > 1 && nm[0]! <= from && nm[nm.length - 1]! >= COLOUR_DEFAULTS.leastEndNm && from < COLOUR_DEFAULTS.leastEndNm;
}

/** Mean light weighed by all three matching functions (the eye's brightness alone would hardly count violet), over the mean noise weighed alike. */
function luminousSignal(nm: Float64Array, power: Float64Array, noise: Float64Array): number {
  const total = (values: Float64Array): number => weighedSums(nm, (i) => values[i]!).reduce((sum, value) => sum + value, 0);
  const scatter = total(noise);
  return scatter > 0 ? total(power) / scatter : 0;
}

/**
 * Colour of luminescence from its spectrum: chromaticity by the CIE 1931 2° observer, dominant wavelength and purity against equal
 * energy, a screen patch and a word. The curve is taken as it is: an instrument whose response is not corrected shifts the colour.
 * Null where the curve does not cover what the eye sees of it, or where there is too little light.
 */
export function luminescenceColour(input: ColourInput): LuminescenceColourResult | null {
  const { nm, noise, laserNm } = input;
  if (!covers(nm, laserNm)) return null;
  const power = luminescence(input);
  if (luminousSignal(nm, power, noise) < COLOUR_DEFAULTS.leastSignal) return null;
  const point = chromaticity(tristimulus(nm, power));
  if (!point) return null;
  const dominant = dominantWavelength(point);
  const swatch = swatchOf(point);
  return { ...point, dominantNm: dominant.nm, purity: dominant.purity, word: colourWord(dominant), srgb: swatch.hex, inGamut: swatch.inGamut };
}
