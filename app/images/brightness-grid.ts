import { linearTable } from './linear-light.ts';
import type { BrightnessGrid, Photograph } from './photograph.ts';

/**
 * Brightness of a photograph on a coarser grid: mean of the three channels in linear light, averaged over the points of each cell.
 * The three channels count alike: the eye's weighting would hardly see the blue that most stones glow in.
 * @param longSide at most this many cells along the longer side; a smaller photograph keeps its own grid
 */
export function brightnessGrid(photograph: Photograph, longSide: number): BrightnessGrid {
  const { width, height, data, most } = photograph;
  const linear = linearTable(most);
  const step = Math.max(1, Math.ceil(Math.max(width, height) / longSide));
  const [columns, rows] = [Math.max(1, Math.floor(width / step)), Math.max(1, Math.floor(height / step))];
  const out = new Float32Array(columns * rows);
  const share = 1 / (3 * step * step);
  for (let row = 0; row < rows; row++) {
    for (let y = row * step; y < (row + 1) * step; y++) {
      let at = 3 * y * width;
      for (let column = 0; column < columns; column++) {
        let sum = 0;
        for (const end = at + 3 * step; at < end; at++) sum += linear[data[at]!]!;
        out[row * columns + column] = out[row * columns + column]! + sum * share;
      }
    }
  }
  return { width: columns, height: rows, data: out };
}
