/** Part of an axis that is shown, ascending, in the axis' unit. */
export type Range = readonly [number, number];

/** Nearer than this share of the whole nobody needs to look; it also keeps numbers apart as doubles. */
const SMALLEST_SHARE = 1e-4;

const widthOf = ([from, to]: Range): number => to - from;

/** Moved inside the whole without changing its width, as far as that goes. */
export function keepInside(range: Range, whole: Range): Range {
  const width = Math.min(widthOf(range), widthOf(whole));
  const from = Math.min(Math.max(range[0], whole[0]), whole[1] - width);
  return [from, from + width];
}

/** Zooms about a place, which stays where it is on the screen; factor below 1 looks closer. */
export function zoomRange(range: Range, at: number, factor: number, whole: Range): Range {
  const width = Math.min(Math.max(widthOf(range) * factor, widthOf(whole) * SMALLEST_SHARE), widthOf(whole));
  const share = (at - range[0]) / widthOf(range);
  return keepInside([at - share * width, at - share * width + width], whole);
}

/** Moves the view by a distance in the axis' unit. */
export const panRange = (range: Range, by: number, whole: Range): Range => keepInside([range[0] + by, range[1] + by], whole);

/** The range between two places in either order, or null where it is too small to have been meant. */
export function rangeBetween(a: number, b: number, whole: Range): Range | null {
  const from = Math.max(Math.min(a, b), whole[0]);
  const to = Math.min(Math.max(a, b), whole[1]);
  return to - from > widthOf(whole) * SMALLEST_SHARE ? [from, to] : null;
}

/** The same place of the spectrum shown, or everything: kept as null so that a change of the data shows all of it. */
export const isWhole = (range: Range, whole: Range): boolean => range[0] <= whole[0] && range[1] >= whole[1];
