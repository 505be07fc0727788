/**
 * Quantile of ascending values by linear interpolation between the order statistics at 1 + (n − 1) p: definition 7 of
 * R. J. Hyndman, Y. Fan, The American Statistician 50 (1996) 361; the default of R and of most spreadsheets. NaN where there is no value.
 * @param ascending finite numbers in ascending order
 * @param p 0 to 1
 */
export function quantile(ascending: readonly number[], p: number): number {
  const at = (ascending.length - 1) * p;
  const below = ascending[Math.floor(at)];
  const above = ascending[Math.ceil(at)];
  return below === undefined || above === undefined ? Number.NaN : below + (above - below) * (at - Math.floor(at));
}

/** Least, quartiles and greatest of some values, in their unit; null where there are none. */
export type Spread = { readonly n: number; readonly least: number; readonly lower: number; readonly median: number; readonly upper: number; readonly greatest: number };

export function spreadOf(values: readonly number[]): Spread | null {
  if (values.length === 0) return null;
  const ascending = values.toSorted((a, b) => a - b);
  const [least, lower, median, upper, greatest] = [0, 0.25, 0.5, 0.75, 1].map((p) => quantile(ascending, p)) as [number, number, number, number, number];
  return { n: ascending.length, least, lower, median, upper, greatest };
}
