import { z } from 'zod';

/**
 * Where a point of the first photograph lies on the second: turned about the middle of the photograph, then moved.
 * Points of the full photograph; the middle of the first point is 0.
 */
export const placement = z.object({ dx: z.number(), dy: z.number(), degrees: z.number(), scale: z.number() });
export type Placement = z.infer<typeof placement>;

export const AT_REST: Placement = { dx: 0, dy: 0, degrees: 0, scale: 1 };

/** The mapping for photographs (or grids) of this size. */
export function placer({ dx, dy, degrees, scale }: Placement, width: number, height: number): (x: number, y: number) => readonly [number, number] {
  const turn = degrees * Math.PI / 180;
  const [c, s] = [scale * Math.cos(turn), scale * Math.sin(turn)];
  const [cx, cy] = [0.5 * (width - 1), 0.5 * (height - 1)];
  return (x, y) => [cx + dx + c * (x - cx) - s * (y - cy), cy + dy + s * (x - cx) + c * (y - cy)];
}
