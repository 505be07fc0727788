/** Smallest and largest value; for no values, zeros. Long spectra are too many arguments for Math.min. */
export function extremes(values: Float64Array): { readonly min: number; readonly max: number } {
  let min = values[0] ?? 0;
  let max = min;
  for (const value of values) {
    if (value < min) min = value;
    if (value > max) max = value;
  }
  return { min, max };
}
