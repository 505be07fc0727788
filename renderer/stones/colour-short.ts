import { COLOUR_CLASS_WORDS, type ColourClass } from '../../app/domain/colour-class.ts';

/** The class in one word where a column is narrow; the whole stands in the tooltip. */
export const colourShort = (c: ColourClass): string => (c === 'colourless' ? 'colourless' : COLOUR_CLASS_WORDS[c]);
