import { clippedFrom, linearTable } from './linear-light.ts';
import type { Photograph } from './photograph.ts';

/** A round place on a full photograph, points. */
export type Disc = { readonly x: number; readonly y: number; readonly radius: number };

export type DiscLight = {
  /** Mean linear light of R, G, B. */
  readonly rgb: readonly [number, number, number];
  /** Mean brightness (of the three channels) in each of eight sectors; their scatter is what the facets make of it. */
  readonly sectors: Float64Array;
  readonly points: number;
  /** Share of points with a channel at its end. */
  readonly clipped: number;
};

export const SECTORS = 8;

/** Which eighth of the circle a direction lies in, 0 to 7 (not in order of angle). */
export const octant = (dx: number, dy: number): number => (dy < 0 ? 4 : 0) + (dx < 0 ? 2 : 0) + (Math.abs(dx) < Math.abs(dy) ? 1 : 0);

/** Linear light of the points in a disc; null where none lies on the photograph or part of it lies outside. */
export function measureDisc({ width, height, data, most }: Photograph, { x, y, radius }: Disc): DiscLight | null {
  const linear = linearTable(most);
  const full = clippedFrom(most);
  if (x - radius < 0 || y - radius < 0 || x + radius > width - 1 || y + radius > height - 1) return null;
  let [r, g, b, points, clipped] = [0, 0, 0, 0, 0];
  const sums = new Float64Array(SECTORS);
  const counts = new Float64Array(SECTORS);
  for (let row = Math.ceil(y - radius); row <= y + radius; row++) {
    for (let column = Math.ceil(x - radius); column <= x + radius; column++) {
      const [dx, dy] = [column - x, row - y];
      if (dx * dx + dy * dy > radius * radius) continue;
      const at = 3 * (row * width + column);
      const [vr, vg, vb] = [data[at]!, data[at + 1]!, data[at + 2]!];
      const [lr, lg, lb] = [linear[vr]!, linear[vg]!, linear[vb]!];
      r += lr; g += lg; b += lb; points += 1;
      if (vr >= full || vg >= full || vb >= full) clipped += 1;
      const sector = octant(dx, dy);
      sums[sector]! += (lr + lg + lb) / 3;
      counts[sector]! += 1;
    }
  }
  if (points === 0) return null;
  return { rgb: [r / points, g / points, b / points], sectors: sums.map((sum, i) => sum / Math.max(1, counts[i]!)), points, clipped: clipped / points };
}
