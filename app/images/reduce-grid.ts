import type { BrightnessGrid } from './photograph.ts';

/** Means over squares of `step` cells; what is left over at the right and below is dropped. */
export function reduceGrid(grid: BrightnessGrid, step: number): BrightnessGrid {
  if (step <= 1) return grid;
  const [width, height] = [Math.floor(grid.width / step), Math.floor(grid.height / step)];
  const data = new Float32Array(width * height);
  for (let y = 0; y < height * step; y++) {
    const row = Math.floor(y / step) * width;
    for (let x = 0; x < width * step; x++) data[row + Math.floor(x / step)]! += grid.data[y * grid.width + x]! / (step * step);
  }
  return { width, height, data };
}
