import type { BrightnessGrid } from './photograph.ts';

/** Running mean along rows, written turned, so that twice gives both directions. Ends repeat the last cell. */
function blurTurned(data: Float32Array, width: number, height: number, radius: number): Float32Array {
  const out = new Float32Array(data.length);
  const share = 1 / (2 * radius + 1);
  for (let y = 0; y < height; y++) {
    const row = y * width;
    const at = (x: number): number => data[row + Math.max(0, Math.min(width - 1, x))]!;
    let sum = 0;
    for (let x = -radius; x <= radius; x++) sum += at(x);
    for (let x = 0; x < width; x++) {
      out[x * height + y] = sum * share;
      sum += at(x + radius + 1) - at(x - radius);
    }
  }
  return out;
}

/** Mean over squares of 2·radius + 1 cells, twice: close to a Gaussian of standard deviation 0.8·(radius + 0.5). */
export function boxBlur(grid: BrightnessGrid, radius: number): BrightnessGrid {
  if (radius < 1) return grid;
  const { width, height } = grid;
  let data = grid.data;
  for (let pass = 0; pass < 2; pass++) data = blurTurned(blurTurned(data, width, height, radius), height, width, radius);
  return { width, height, data };
}
