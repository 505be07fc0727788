import { brightnessGrid } from './brightness-grid.ts';
import type { PairMark } from './compare-pair.ts';
import type { Photograph } from './photograph.ts';
import { OUTLINE_DEFAULTS, suggestOutlines } from './suggest-outlines.ts';

/** Bright places of a photograph as marks that belong to no stone, numbered in reading order. */
export const suggestMarks = (photograph: Photograph): PairMark[] => suggestOutlines(brightnessGrid(photograph, OUTLINE_DEFAULTS.longSide))
  .map((outline, i) => ({ ...outline, id: `found-${i + 1}`, number: i + 1, stoneId: null }));
