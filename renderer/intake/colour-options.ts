import { COLOUR_CLASSES, COLOUR_CLASS_WORDS, type ColourClass } from '../../app/domain/colour-class.ts';

/** What is not stated stands first: with the arrow keys one goes on from there. */
export const COLOUR_OPTIONS = [...COLOUR_CLASSES].sort((a, b) => Number(b === 'unknown') - Number(a === 'unknown')).map((value: ColourClass) => ({ value, label: COLOUR_CLASS_WORDS[value] }));
