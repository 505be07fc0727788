import type { Dominant } from './dominant-wavelength.ts';

/** Words for the colour of emitted light; those that an examiner also chooses from, and the two that only a measurement parts. */
export const COLOUR_WORDS = ['violet', 'blue', 'greenish-blue', 'green', 'yellow-green', 'yellow', 'orange', 'red', 'pink', 'purple', 'white'] as const;
export type ColourWord = (typeof COLOUR_WORDS)[number];

/** Below this purity light looks white (common practice, no source). */
export const WHITE_PURITY = 0.12;
/** Up to this purity a purple is called pink (common practice, no source). */
const PINK_PURITY = 0.45;

/** Upper ends of the dominant wavelength, nm, for each word (common practice, no source). */
const UPPER_NM: readonly (readonly [number, ColourWord])[] = [
  [450, 'violet'], [482, 'blue'], [500, 'greenish-blue'], [557, 'green'], [573, 'yellow-green'], [584, 'yellow'], [605, 'orange'],
];

/** A plain word for a colour. */
export function colourWord({ nm, complementaryNm, purity }: Dominant): ColourWord {
  if (purity < WHITE_PURITY || (nm === null && complementaryNm === null)) return 'white';
  if (nm === null) return purity < PINK_PURITY ? 'pink' : 'purple';
  return UPPER_NM.find(([upper]) => nm < upper)?.[1] ?? 'red';
}
