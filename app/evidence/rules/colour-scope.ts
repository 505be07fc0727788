import { COLOUR_CLASS_WORDS } from '../../domain/colour-class.ts';
import type { ColourClass } from '../../domain/colour-class.ts';

export type ColourScope = 'inside' | 'outside' | 'unknown';

/** The rules of origin hold for colourless stones: in coloured ones the same signs have other causes. */
export function colourScope(colourClass: ColourClass): ColourScope {
  if (colourClass === 'colourless') return 'inside';
  return colourClass === 'unknown' ? 'unknown' : 'outside';
}

export const outsideScopeReason = (colourClass: ColourClass): string =>
  `The stone is ${COLOUR_CLASS_WORDS[colourClass]}: the rules of this screening hold for colourless to near colourless diamond only.`;

export const NEEDED_FOR_COLOUR = 'Origin and cause of colour of a coloured diamond need absorption, infrared and cooled photoluminescence together, judged by a laboratory equipped for it.';

export const UNKNOWN_COLOUR = 'The colour class is not stated, so no rule of origin may be applied: state it in the item’s description.';
