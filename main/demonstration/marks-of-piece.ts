import type { Mark } from '../../app/piece/mark.ts';
import { arrangeStones } from './arrange-stones.ts';
import { PICTURE_ASPECT } from './draw-piece.ts';
import type { Arrangement } from './scenario-schema.ts';

/** A mark on each stone of a drawn picture, numbered and tied in the order of the stones. */
export const marksOfPiece = (arrangement: Arrangement, stoneIds: readonly string[]): Mark[] =>
  arrangeStones(arrangement, stoneIds.length).map(({ x, y, r }, index) => ({
    id: `mark-${index + 1}`, number: index + 1, stoneId: stoneIds[index]!, x, y: y * PICTURE_ASPECT, radius: r,
  }));
