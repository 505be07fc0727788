import { z } from 'zod';

/** Colourless-only rules must not be used on coloured stones, so the class is asked for at intake. */
export const COLOUR_CLASSES = ['colourless', 'yellow-orange', 'brown', 'pink-red-purple', 'blue-grey', 'green', 'black', 'unknown'] as const;
export const colourClass = z.enum(COLOUR_CLASSES);
export type ColourClass = z.infer<typeof colourClass>;

export const COLOUR_CLASS_WORDS: Readonly<Record<ColourClass, string>> = {
  colourless: 'colourless to near colourless',
  'yellow-orange': 'yellow to orange',
  brown: 'brown',
  'pink-red-purple': 'pink, red or purple',
  'blue-grey': 'blue or grey',
  green: 'green',
  black: 'black',
  unknown: 'not stated',
};
