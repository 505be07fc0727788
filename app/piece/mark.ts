import { z } from 'zod';

/** Marks on one map at most, and how large one may be: parts of the picture's width. */
export const MARK_LIMITS = { most: 500, highestNumber: 9999, radius: { least: 0.002, most: 0.5, usual: 0.025 } } as const;

/**
 * Where one stone sits on a picture of its piece. `x` is a part of the width and `y` a part of the height of the **upright** picture
 * (its EXIF orientation applied), from the upper left corner; `radius` is a part of the width.
 */
export const mark = z.strictObject({
  id: z.string().min(1).max(60),
  /** Null while it is tied to no stone. */
  stoneId: z.string().min(1).max(60).nullable(),
  number: z.number().int().min(1).max(MARK_LIMITS.highestNumber),
  x: z.number().min(0).max(1),
  y: z.number().min(0).max(1),
  radius: z.number().min(MARK_LIMITS.radius.least).max(MARK_LIMITS.radius.most),
});
export type Mark = z.infer<typeof mark>;

/** What the marks are placed on: a picture of the piece, or a plain grid where there is none. */
export const mapGround = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('photograph'), photographId: z.string().min(1).max(60) }),
  z.strictObject({ kind: z.literal('grid'), columns: z.number().int().min(1).max(40), rows: z.number().int().min(1).max(40) }),
]);
export type MapGround = z.infer<typeof mapGround>;

export const USUAL_GRID: Extract<MapGround, { kind: 'grid' }> = { kind: 'grid', columns: 12, rows: 8 };
