import { boxBlur } from './box-blur.ts';
import { brightnessGrid } from './brightness-grid.ts';
import type { Outline, Photograph } from './photograph.ts';

/** Cells along the longer side, blur in cells that closes the dark bands of a pattern, and the share of the brightest that counts as lit (judgement). */
const [LONG_SIDE, BLUR, LIT] = [200, 5, 0.06] as const;
/** This share of the lit cells may lie outside on each side: specks of dust do not widen the outline. */
const OUTLYING = 0.01;

/** One round outline about all that is lit: a single stone between polarisers, whose pattern falls into bright pieces. Null on a dark photograph. */
export function wholeOutline(photograph: Photograph): Outline | null {
  const { width, height, data } = boxBlur(brightnessGrid(photograph, LONG_SIDE), BLUR);
  let top = 0;
  for (const value of data) if (value > top) top = value;
  const [columns, rows]: [number[], number[]] = [[], []];
  data.forEach((value, cell) => { if (top > 0 && value > LIT * top) { columns.push(cell % width); rows.push(Math.floor(cell / width)); } });
  if (columns.length < 50) return null;
  const ends = (values: number[]): readonly [number, number] => { values.sort((a, b) => a - b); const out = Math.floor(OUTLYING * values.length); return [values[out]!, values[values.length - 1 - out]!]; };
  const [[left, right], [upper, lower]] = [ends(columns), ends(rows)];
  // The blur has widened the lit place by about its own reach on both sides.
  const radius = Math.max(1, (right - left + lower - upper) / 4 - BLUR);
  return { x: ((left + right) / 2 + 0.5) / width, y: ((upper + lower) / 2 + 0.5) / height, radius: radius / width };
}
