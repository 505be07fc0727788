import type { BrightnessGrid } from './photograph.ts';

/** Value between cells (bilinear); outside, the nearest cell's. */
export function sampleGrid({ width, height, data }: BrightnessGrid, x: number, y: number): number {
  const [px, py] = [Math.max(0, Math.min(width - 1.001, x)), Math.max(0, Math.min(height - 1.001, y))];
  const [left, top] = [Math.floor(px), Math.floor(py)];
  const [tx, ty] = [px - left, py - top];
  const at = top * width + left;
  return (1 - ty) * ((1 - tx) * data[at]! + tx * data[at + 1]!) + ty * ((1 - tx) * data[at + width]! + tx * data[at + width + 1]!);
}

/** A square of `side` cells about a middle, each looked up at the place that `place` gives for it. */
export function cutPatch(grid: BrightnessGrid, middleX: number, middleY: number, side: number, place: (x: number, y: number) => readonly [number, number]): Float32Array {
  const out = new Float32Array(side * side);
  for (let j = 0; j < side; j++) {
    for (let i = 0; i < side; i++) {
      const [x, y] = place(middleX + i - side / 2, middleY + j - side / 2);
      out[j * side + i] = sampleGrid(grid, x, y);
    }
  }
  return out;
}
