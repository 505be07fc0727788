import type { Rect } from './drawing.ts';

/** Place of a value on an axis that runs from `range[0]` at `start` to `range[1]` at `end`, px. */
export const toPx = (value: number, range: readonly [number, number], start: number, end: number): number =>
  start + ((value - range[0]) / (range[1] - range[0])) * (end - start);

/** The value at a place, the inverse of toPx. */
export const fromPx = (px: number, range: readonly [number, number], start: number, end: number): number =>
  range[0] + ((px - start) / (end - start)) * (range[1] - range[0]);

/** px of an abscissa within the plot. */
export const xToPx = (x: number, xRange: readonly [number, number], plot: Rect): number => toPx(x, xRange, plot.x, plot.x + plot.width);
/** px of an ordinate within the plot; larger values stand higher. */
export const yToPx = (y: number, yRange: readonly [number, number], plot: Rect): number => toPx(y, yRange, plot.y + plot.height, plot.y);
/** Abscissa under a px of the plot, for cursor and zoom. */
export const pxToX = (px: number, xRange: readonly [number, number], plot: Rect): number => fromPx(px, xRange, plot.x, plot.x + plot.width);
