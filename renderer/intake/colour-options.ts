import { COLOUR_CLASSES, COLOUR_CLASS_WORDS, type ColourClass } from '../../app/domain/colour-class.ts';

export const COLOUR_OPTIONS = COLOUR_CLASSES.map((value: ColourClass) => ({ value, label: COLOUR_CLASS_WORDS[value] }));
